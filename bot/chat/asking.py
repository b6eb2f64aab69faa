"""Questions back to the keeper about what is doubtful; nothing of it is stored yet."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict
from datetime import UTC
from typing import Any

from bot.chat import dangers_supposed, how_many, open_told
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import readings as words
from bot.chat.words.numbers import when
from bot.chat.words.text import _
from bot.store.offers import Choice
from core.message import kinds, nearest, parse
from core.message.doubts import (
    AMBIGUOUS_TANK,
    IMPLAUSIBLE,
    NO_NUMBER,
    PLANNED,
    UNKNOWN_NAME,
    UNKNOWN_TANK,
    UNKNOWN_WORD,
)
from core.message.guesses import as_one
from core.message.model import Doubt, Parsed, Value

_MAY_NAME = frozenset({UNKNOWN_WORD, UNKNOWN_TANK, AMBIGUOUS_TANK})
"""Doubts about a word that may be a tank's name."""
ASKED = 3
"""Reasons told, and single guesses with a button, in one question."""


async def ask(turn: Turn, doubts: Sequence[Doubt], parsed: Parsed) -> Reply:
    """Turn doubts into one question; each guess has its button, and nothing is stored yet."""
    by_reason: dict[str, list[str]] = {}
    for doubt in doubts:
        by_reason.setdefault(doubt.reason, []).append(doubt.text)
    lines = [words.doubt(texts, reason) for reason, texts in list(by_reason.items())[:ASKED]]
    apart = _of_other_tanks(turn, doubts, parsed)
    choices = [] if apart else _guesses(turn, doubts, parsed)
    counts = [doubt for doubt in doubts if doubt.reason == NO_NUMBER]
    if len(doubts) == len(counts) == 1 and not choices:
        return await _how_many(turn, counts[0])
    said, supposed = await dangers_supposed.of(turn, doubts, parsed)
    lines += said
    if choices:
        together = len(doubts) > 1 and "only" not in choices[0].arguments
        told = [choice.label for choice in choices]
        lines.append(words.meant(told, together=together, tank=_tank(turn, doubts, parsed)))
        choices.append(Choice(_(words.LEAVE_OUT), "leave_out", "no"))
        choices.append(Choice(_(words.TYPE_AGAIN), "type_again"))
    elif set(by_reason) == {PLANNED}:
        lines.append(words.ask_for_reminder())
    else:
        lines.append(words.send_with_tank() if apart else words.send_instead())
    asked = [{"reason": d.reason, "text": d.text[:200]} for d in doubts]
    facts = {"doubts": asked, **supposed}
    await open_told.keep(turn)
    return await turn.reply(lines, choices=choices, facts=facts)


def _tank(turn: Turn, doubts: Sequence[Doubt], parsed: Parsed) -> str | None:
    """The one of several tanks that the guesses would be of; None with one tank, or of several."""
    if len(turn.tanks) < 2 or parsed.command is not None:
        return None
    used = turn.current_tank.name if turn.current_tank is not None else None
    sure = [each for each in doubts if each.value is not None or each.reason == IMPLAUSIBLE]
    of = {doubt.tank or parsed.tank or used for doubt in sure}
    return of.pop() if len(of) == 1 else None


def _of_other_tanks(turn: Turn, doubts: Sequence[Doubt], parsed: Parsed) -> bool:
    """Whether words that nobody knows stand beside two values of one thing at one time.

    They may be the names of tanks: no button may keep both in one, nor the second beside a first
    that is kept already (`betty kh 2, cube kh 4`).
    """
    told = [
        (doubt.value.analyte, doubt.value.canonical, _moment(turn, parsed, doubt.value))
        for doubt in doubts
        if doubt.reason in _MAY_NAME and doubt.value is not None
    ]
    kept = [(each.analyte, each.canonical, _moment(turn, parsed, each)) for each in parsed.values]
    return any(
        analyte == of and number != other and at == moment
        for place, (analyte, number, at) in enumerate(told)
        for of, other, moment in (*told[:place], *kept)
    )


async def _how_many(turn: Turn, doubt: Doubt) -> Reply:
    """Ask for the number of animals that came, which a bare number then answers."""
    name = kinds.said_in(doubt.text) or doubt.text  # of births it is the word for the young
    return await turn.reply(
        words.how_many_came(doubt.text, name),
        expects=how_many.COUNT,
        context={"text": turn.incoming.text, "name": name},
        facts={"doubts": [{"reason": doubt.reason, "text": doubt.text[:200]}]},
    )


def _guesses(turn: Turn, doubts: Sequence[Doubt], parsed: Parsed) -> list[Choice]:
    """The buttons of what was probably meant: all doubts together first, then one by one.

    A bare yes means all together as they are named first; where one doubt alone could be two
    things, neither.
    """
    meant = [
        [_held(turn, doubt, text, parsed) for text in doubt.choices or (doubt.suggestion,) if text]
        for doubt in doubts
    ]
    guessed = [options for options in meant if options]
    if not guessed:
        return []
    sure = all(len(options) == 1 for options in guessed)
    choices = []
    clash = sure and _clash(turn, [options[0] for options in guessed])
    if clash:  # kh 4 kh 3: one of them, by one press
        return [_choice(options, "", only=True) for options in guessed[:ASKED]]
    if len(guessed) > 1 and len({len(options) for options in guessed}) == 1:
        together = zip(*guessed, strict=True)
        choices = [_choice(list(parts), "" if at else "yes") for at, parts in enumerate(together)]
    clear = [options[0] for options in guessed if len(options) == 1]
    if not choices and len(clear) > 1:  # one of several is two things: the others at once
        return [_choice(clear, ""), *_one_by_one(guessed, len(clear))]
    if sure or not choices:
        alone = "yes" if sure and len(guessed) == 1 else ""
        choices += [_choice([held], alone) for options in guessed[:ASKED] for held in options]
    return choices


def _one_by_one(guessed: Sequence[list[dict[str, Any]]], clear: int) -> list[Choice]:
    """The buttons beside one of all that is clear: what is not, and then each of few."""
    open_ = [held for options in guessed if len(options) > 1 for held in options]
    alone = [options[0] for options in guessed if len(options) == 1] if clear < ASKED else []
    return [_choice([held], "") for held in (*open_[: ASKED - 1], *alone)]


def _clash(turn: Turn, parts: Sequence[dict[str, Any]]) -> bool:
    """Whether guesses give one thing of one tank at one time two numbers."""
    numbers: dict[tuple[str, str | None, str | None], set[Any]] = {}
    for part in parts:
        read = parse(part["text"], turn.context()).values
        for value in (unpacked(part["value"]),) if "value" in part else read:
            of = (value.analyte, part["tank"] or value.tank, part.get("at"))
            numbers.setdefault(of, set()).add(value.canonical)
    return any(len(told) > 1 for told in numbers.values())


def _choice(parts: Sequence[dict[str, Any]], meaning: str, *, only: bool = False) -> Choice:
    texts = [part.get("label", part["text"]) for part in parts]
    held = {"parts": list(parts), "only": True} if only else {"parts": list(parts)}
    return Choice(words.guess(as_one(texts)), "take_doubt", meaning, held)


def of_tank(turn: Turn, parsed: Parsed) -> list[Choice]:
    """The button that stores what was told of another water as readings of the tank in use."""
    tank = turn.current_tank
    if tank is None:
        return []
    parts = [
        {
            "text": value.analyte,
            "doubt": turn.incoming.text[value.start : value.end],
            "tank": tank.name,
            "value": _packed(value),
            "at": _moment(turn, parsed, value),
        }
        for value in parsed.values
    ]
    return [Choice(words.it_is(tank.name), "take_doubt", "", {"parts": parts})]


async def ask_stray(turn: Turn, name: str, parsed: Parsed) -> Reply:
    """Ask what to do with readings of a tank that the chat does not have; nothing is stored yet."""
    at = (parsed.at or turn.now).astimezone(UTC).isoformat()
    held: dict[str, Any] = {
        "values": [_packed(value) for value in parsed.values],
        "events": [{**asdict(event), "at": None} for event in parsed.events],
        "at": at,
        "text": turn.incoming.text,
    }
    new = as_name(name)
    choices = [Choice(words.add_tank(new), "keep_stray", "yes", {**held, "new": new})]
    choices += [
        Choice(words.it_is(tank.name), "keep_stray", "", {**held, "tank_id": tank.id})
        for tank in turn.tanks[:4]
    ]
    choices.append(Choice(_(words.LEAVE_OUT), "leave_out", "no"))
    warned, supposed = dangers_supposed.of_stray(turn, parsed)
    return await turn.reply(
        [*words.no_such_tank(name), *warned],
        choices=choices,
        facts={"doubts": [{"reason": UNKNOWN_TANK, "text": name}], **supposed},
    )


async def ask_tank(turn: Turn) -> Reply:
    """Ask which tank a message is about, and keep the message until the answer comes."""
    held = {"text": turn.incoming.text, "at": turn.now.isoformat()}
    choices = [
        Choice(tank.name, "for_tank", "", {**held, "tank_id": tank.id}) for tank in turn.tanks[:8]
    ]
    names = [tank.name for tank in turn.tanks]
    return await turn.reply(
        words.which_tank(names), choices=choices, expects="tank_for_text", context=held
    )


def unpacked(packed: dict[str, Any]) -> Value:
    """A value as it was before an offer kept it."""
    held = dict(packed)
    if isinstance(held["canonical"], list):
        held["canonical"] = tuple(held["canonical"])
    return Value(**held)


def as_name(said: str) -> str:
    """A tank's name from how it was first typed, with a capital: `tank A` is Tank A."""
    return said[:1].upper() + said[1:40]


def _held(turn: Turn, doubt: Doubt, text: str, parsed: Parsed) -> dict[str, Any]:
    """What taking a guess needs: the value with its moment and tank, or a text to read again."""
    tank = doubt.tank or parsed.tank
    held: dict[str, Any] = {"text": text, "doubt": doubt.text, "tank": tank}
    if (at := doubt.at or parsed.at) is not None:
        held["at"] = at.astimezone(UTC).isoformat()
    if doubt.value is not None and text == doubt.suggestion:
        held |= {
            "value": _packed(doubt.value),
            "at": _moment(turn, parsed, doubt.value),
            "tank": doubt.value.tank or tank,
        }
    if doubt.reason in {UNKNOWN_WORD, UNKNOWN_NAME} and doubt.at is None and parsed.at is None:
        held |= _at_meant(turn, text)
    return held


def _at_meant(turn: Turn, text: str) -> dict[str, str]:
    """The moment that a misspelt word for a time means, and the guess with it: `yestrday 8pm`."""
    said = nearest.with_time(turn.incoming.text)
    read = None if said is None else parse(said, turn.context())
    moments = () if read is None else (read.at, *(doubt.at for doubt in read.doubts))
    at = next((moment for moment in moments if moment is not None), None)
    if at is None or at > turn.now:
        return {}
    told = when(at.astimezone(turn.chat.zone), turn.local_now)
    return {"at": at.astimezone(UTC).isoformat(), "label": f"{text} · {told}"}


def _packed(value: Value) -> dict[str, Any]:
    return {**asdict(value), "at": None}


def _moment(turn: Turn, parsed: Parsed, value: Value) -> str:
    return (value.at or parsed.at or turn.now).astimezone(UTC).isoformat()
