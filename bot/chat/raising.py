"""``how do i raise the ph``, ``should i add baking soda``: the gate is looked at before all else.

A higher pH makes poison of ammonia, so no way to raise it, no example of one and no step is told
before the tank's ammonia was.
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat import dose_reply, just_told, poison_first, what_for
from bot.chat.model import Line, Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import raising as words
from core.advice.ammonia_gate import shown
from core.advice.buffers import BUFFERS, STRONG
from core.advice.calls import takes_alike
from core.advice.dosing import is_blind
from core.advice.may_rise import is_measured, raising_refused
from core.advice.plan import Refusal
from core.advice.state import State
from core.message import emergency_talk, parse, raise_asked
from core.message.add_asked import so_much
from core.message.model import Parsed, Question
from core.message.plan_said import substances_named
from core.message.should_not import why_not
from core.message.waters import names_pure
from core.substances import MEDIA

KINDS = frozenset({"dose", "change", "effect", "safe"})
"""Questions that a wish to raise is read as."""

MISREAD = frozenset({("dose", "change"), ("dose", "safe")})
"""What was heard and what was read instead: `how do i get kh up`, `ph too low, how do i …`."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """What the gate says to a wish to raise KH or pH; None where it passes, or for another."""
    if (reasoned := await _why_not(turn, parsed)) is not None:
        return reasoned
    if (weighed := await _so_much(turn, parsed)) is not None:
        return weighed
    if parsed.question is not None:
        parsed = replace(parsed, question=just_told.with_soda(turn, parsed.question))
    asked = _asked(turn, parsed)
    if asked is None:
        return None
    stored = turn.tank_named(asked.tank) if asked.tank else turn.current_tank
    if stored is not None and asked.substance not in MEDIA:  # those are judged where they lie
        if (poisoned := await poison_first.refused(turn, stored)) is not None:
            return [poisoned]
        state = await state_of(turn, stored, turn.now)
        if (refusal := raising_refused(state)) is not None:
            return [await dose_reply.refuse(turn, refusal, stored.name)]
        if (gated := await _first(turn, state, asked, stored.name)) is not None:
            return gated
        unmeasured = asked.substance in {None, *BUFFERS} and not is_measured(state)
        if unmeasured and asked.analyte != "ph" and _how_much(parsed.question):
            turn.asked = {"text": turn.incoming.text, "changes": {}}
            asked = parsed.question or asked
        how = await _how(turn, asked, stored.name) if unmeasured and not turn.products else None
        if how is not None:
            return [_led(how, words.measure_first())]
    misread = parsed.question is None or (asked.kind, parsed.question.kind) in MISREAD
    misread = misread or (parsed.question is not None and _needs(turn, parsed.question))
    if misread and turn.route is not None and (asked.analyte or asked.substance):
        return await turn.route(turn, Parsed("question", question=asked))
    return None


async def taken_for_soda(turn: Turn) -> list[Reply] | None:
    """No, where washing soda or lime is taken for baking soda: `soda crystals, same thing right`.

    Read only where nothing else understood it.
    """
    text, stored = turn.incoming.text, turn.current_tank
    if not (substances_named(text) & STRONG) or not takes_alike(text):
        return None
    if stored is not None and stored.tank.is_sea:
        return None
    name = None if stored is None else stored.name
    return [await dose_reply.refuse(turn, Refusal("carbonate"), name)]


async def _why_not(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """The same of `why not raise the ph`, which asks as `should i` does; None where it is none."""
    told = parsed.values or parsed.events or parsed.command
    text = why_not(turn.incoming.text) if turn.incoming.addressed and not told else None
    if text is None or turn.typed is None:
        return None
    asked = parse(text, turn.context()).question
    of_doing = asked is not None and asked.kind in KINDS
    of_water = raise_asked.asked(text) or so_much(text) or raise_asked.lowering_asked(text)
    if not (of_doing or of_water or emergency_talk.meant(text) == "feed"):
        return None
    turn.incoming = replace(turn.incoming, text=text)
    return await turn.typed(turn)


async def _first(turn: Turn, state: State, asked: Question, name: str) -> list[Reply] | None:
    """What stands before a buffer that is asked for: ammonia, or a KH too low to plan by."""
    heard = raise_asked.asked(turn.incoming.text)
    named = substances_named(turn.incoming.text) & BUFFERS
    if heard is None or not (named or (heard.kind == "effect" and heard.substance is None)):
        return None
    salt = min(named, default="sodium bicarbonate")
    of_kh = replace(asked, kind="dose", analyte="kh", substance=salt)
    kh = None if state.tank.is_sea else state.last("kh")
    if kh is not None and is_blind(kh):
        return [await dose_reply.ask_value(turn, of_kh)]
    ammonia = shown(state)
    if ammonia is None or not ammonia.is_fresh(state.now) or ammonia.value <= 0.0:
        return None
    how = await dose_reply.ask_value(turn, of_kh)
    return [_led(how, words.ammonia_first(name, ammonia.value))]


async def _so_much(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """What so much would do, where it is asked whether it may go in; None where it is not."""
    told = parsed.values or parsed.events or parsed.question or parsed.command
    said = so_much(turn.incoming.text) if turn.incoming.addressed and not told else None
    if said is None or turn.route is None:
        return None
    if (poisoned := await poison_first.refused(turn, turn.current_tank)) is not None:
        return [poisoned]
    text = f"what does {said} do"
    turn.incoming = replace(turn.incoming, text=text)
    return await turn.route(turn, parse(text, turn.context()))


def _needs(turn: Turn, asked: Question | None) -> bool:
    """Whether it is asked if or how much buffer a tank needs, and was not read as of KH yet."""
    read = asked is not None and asked.analyte is not None
    return not read and raise_asked.needs_buffer(turn.incoming.text)


def _asked(turn: Turn, parsed: Parsed) -> Question | None:
    """The wish to raise KH or pH of a tank in use, as it was read or as its words say it."""
    text, asked = turn.incoming.text, parsed.question
    told = parsed.values or parsed.events or parsed.command is not None
    if told or not turn.incoming.addressed or names_pure(text):
        return None
    if _needs(turn, asked):
        of = asked.tank if asked is not None else parsed.tank
        return Question("dose", tank=of, analyte="kh", text=text)
    if asked is not None and asked.substance not in {
        None,
        raise_asked.SODA,
        *BUFFERS,
        *STRONG,
        *MEDIA,
    }:
        return None  # what else it is, and that it raises none, its own topic tells
    if asked is None or (asked.kind in KINDS and not _has_amount(asked)):
        heard = raise_asked.asked(text)
        if heard is not None:
            return replace(heard, tank=asked.tank if asked else parsed.tank)
    return asked if asked is not None and _raises(asked) else None


def _has_amount(asked: Question) -> bool:
    amounts = (asked.target, asked.delta, asked.grams, asked.percent, asked.litres, asked.volume_l)
    return any(each is not None for each in amounts)


def _raises(asked: Question) -> bool:
    """Whether a question leads to raising by itself: to a pH, or of a buffer without its amount."""
    if asked.kind == "dose" and asked.analyte == "ph":
        return asked.substance is None and asked.volume_l is None
    if _has_amount(asked):
        return False
    if asked.kind == "dose" and asked.analyte == "kh":
        return True
    return asked.kind in {"dose", "effect", "safe"} and asked.substance in {*BUFFERS, *STRONG}


async def _how(turn: Turn, asked: Question, name: str) -> Reply | None:
    """What is said of a wish that passes; None for whether a thing is safe."""
    if asked.kind == "safe":
        return None
    if asked.analyte == "ph":
        return await dose_reply.no_ph(turn, name)
    wished = asked.kind == "dose" and asked.substance in BUFFERS
    if (
        asked.substance is not None
        and not wished
        and (use := await what_for.of(turn, asked.substance))
    ):
        return use[0]
    return await dose_reply.ask_value(turn, replace(asked, kind="dose", analyte="kh"))


def _how_much(asked: Question | None) -> bool:
    """Whether it is asked how much of a buffer, or of what raises KH."""
    if asked is None or asked.kind != "dose":
        return False
    return asked.analyte == "kh" and asked.substance in {None, *BUFFERS}


def _led(reply: Reply, lead: str) -> Reply:
    return replace(reply, lines=(Line(lead), *reply.lines))
