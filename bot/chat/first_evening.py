"""The first evening: a tank just bought, filled or set up, where to begin, when it is ready.

What is told makes a tank or its first day; what is asked is answered by the filter's own record
where there is one. Whether nobody lives in a tank is asked before it is kept, since ammonia is
then no poison to anybody.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any, Final

from bot.chat import inhabitants, poisoned, readings, traits
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.tank_volumes import facts
from bot.chat.turn import Turn
from bot.chat.words import first_evening as words
from bot.chat.words import readiness as readiness_words
from bot.chat.words import tanks as tank_words
from bot.chat.words.names import first_tank
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.advice import limits
from core.advice.inhabitants import is_animal
from core.advice.livestock import lookup, named_in
from core.advice.nobodys import NOBODY, is_nobodys
from core.advice.readiness import ready
from core.advice.state import State
from core.message import parse
from core.message.first_evening import Told, began, to_buy, told
from core.message.model import Event, Parsed
from core.message.none_live import tells_none
from core.message.traits import Trait, read
from core.tank import Tank, TankKind

ASKED: Final = "can i add"
"""How what may be bought is asked, for what reads it."""

SHOWN: Final = {"reef": "reef", "big": "big", "small": "small", "fresh": "second"}
"""What another tank is called by, of what was said of it."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer what is told or asked of a new tank; None for other talk."""
    if turn.incoming.group or parsed.values or parsed.command is not None:
        return None
    text = turn.incoming.text
    if (bought := await _may_buy(turn, text)) is not None:
        return bought
    said = told(text, us_gallons=turn.chat.us_gallons)
    if said is None and turn.current_tank is not None and tells_none(text):
        state = await state_of(turn, turn.current_tank, turn.now)
        if state.tank.stock:
            return None  # who left it is asked
        return await _nobody(turn, turn.current_tank, state, is_cycling=False)
    if said is None:
        day = began(text)
        found = None if day is None else read(f"set up {day}", turn.context())
        return None if found is None or found.kind != "set_up" else await traits.answer(turn, found)
    if said.meaning in {"tank", "another_tank"}:
        return await _tank(turn, said)
    if parsed.question is not None and said.meaning == "may_buy":
        return None  # can i add fish
    if said.meaning == "begin":
        return [await turn.reply(words.begin())]
    if said.meaning == "bacteria":
        return [await turn.reply(words.bacteria())]
    stored = turn.current_tank
    if stored is None:
        return [await turn.reply(words.no_tank(said.meaning))]
    if said.meaning in {"set_up", "filled"}:
        return await _set_up(turn, stored, said)
    state = await state_of(turn, stored, turn.now)
    if said.meaning in {"nobody", "fishless"}:
        return await _nobody(turn, stored, state, is_cycling=said.meaning == "fishless")
    if said.meaning == "ammonia_dosed":
        return await _ammonia(turn, stored, state, said)
    return [await how_far(turn, stored, state, asks_long=said.meaning == "how_long")]


async def _may_buy(turn: Turn, text: str) -> list[Reply] | None:
    """`can i get 10 tetras`, `morgen 6 neons kaufen?`: asked as `can i add` is."""
    rest = to_buy(text)
    if rest is None or turn.route is None or text.startswith(ASKED) or not _names_animals(rest):
        return None
    whole = turn.incoming
    turn.incoming = replace(whole, text=f"{ASKED} {rest}")
    asked = parse(turn.incoming.text, turn.context())
    replies = await turn.route(turn, asked) if asked.question is not None else None
    turn.incoming = whole
    return replies


def _names_animals(text: str) -> bool:
    """Whether a text names a kind of animal, be it one of several of that name."""
    return bool(named_in(text)) or any(is_animal(lookup(word)) for word in text.split())


async def _tank(turn: Turn, said: Told) -> list[Reply] | None:
    """A tank by its litres: the first, or another one beside those on record."""
    litres = said.litres or 0.0
    if not limits.VOLUME_SMALLEST <= litres <= limits.VOLUME_LARGEST:
        return [await turn.reply(tank_words.volume_implausible(litres))]
    kind: TankKind = "marine" if "reef" in said.classes else "fresh"
    if not turn.tanks:
        made = await turn.add_tank(Tank(first_tank(), kind=kind, volume_l=litres, named=False))
        return [await _made(turn, made, said, first=True)]
    plainly = said.classes & {"another", "big", "small", "reef", "fresh"}
    held = turn.tanks[0].tank
    unsized = len(turn.tanks) == 1 and held.volume_l in {None, litres}
    if said.meaning == "tank" or (unsized and not plainly):
        return None  # whether it is one of those on record stays open
    made = await turn.add_tank(Tank(_free_name(turn, said), kind=kind, volume_l=litres))
    await turn.use_tank(made)
    return [await _made(turn, made, said, first=False)]


async def _made(turn: Turn, stored: StoredTank, said: Told, *, first: bool) -> Reply:
    if said.classes & {"done", "done_now", "filled"}:
        at = turn.now - timedelta(days=said.days_ago)
        stored = await turn.change_tank(stored, set_up_at=at)
    lines = tank_words.made(stored.tank, adopted=False)
    lines += words.first_steps() if first else words.rename(stored.name)
    return await turn.reply(lines, facts=facts(stored))


def _free_name(turn: Turn, said: Told) -> str:
    """A name that no tank has yet."""
    trait = next((word for word in SHOWN if word in said.classes), "second")
    name = words.called(SHOWN.get(trait, "second"))
    return turn.free_name(name)


async def _set_up(turn: Turn, stored: StoredTank, said: Told) -> list[Reply] | None:
    """The first day of a tank; what was filled may be a change where a tank is in use already."""
    state = await state_of(turn, stored, turn.now)
    if _in_use(state) or (said.meaning == "filled" and state.tank.stock):
        return None
    at = turn.now - timedelta(days=said.days_ago)
    return await traits.answer(turn, Trait("set_up", stored.name, at=at))


def _in_use(state: State) -> bool:
    """Whether a tank has been read or changed for more than two days."""
    began = state.now - timedelta(days=2)
    done = [each.at for each in state.events or ()]
    return any(at < began for at in (*done, *(each.at for each in state.readings.values())))


async def how_far(turn: Turn, stored: StoredTank, state: State, *, asks_long: bool) -> Reply:
    """How far the filter of a tank is, by what ammonia and nitrite have shown."""
    found = ready(state)
    lines = poisoned.no_newcomers(state, stored.name)
    if not lines:
        lines = readiness_words.told(found, stored.name)
    if asks_long and found.verdict in {"unmeasured", "cycling", "unproven", "poison"}:
        lines = [words.how_long(), *lines]
    return await turn.reply(lines[:6], facts={"tank": stored.name, "verdict": found.verdict})


async def _nobody(
    turn: Turn, stored: StoredTank, state: State, *, is_cycling: bool
) -> list[Reply] | None:
    """Ask whether no animal at all lives in it, before ammonia is judged for nobody."""
    if state.tank.stock:
        return [await turn.reply(words.still_there(stored.name), facts={"tank": stored.name})]
    if is_nobodys(state):
        return [await how_far(turn, stored, state, asks_long=False)]
    came = [Event("note", text=NOBODY)]
    choices = [
        inhabitants.choice(turn, stored, words.none_at_all(), came, "yes"),
        Choice(words.some_live(), "leave_out", "no"),
    ]
    lines = words.ask_nobody(stored.name, is_cycling=is_cycling)
    held: dict[str, Any] = {"tank": stored.name, "ask": "nobody"}
    return [await turn.reply(lines, choices=choices, facts=held)]


async def _ammonia(turn: Turn, stored: StoredTank, state: State, said: Told) -> list[Reply] | None:
    """Ammonia put in to feed the filter; what the water reads is not known by that."""
    level = said.litres or 0.0
    if state.tank.stock:
        return None
    if level > limits.CYCLING_AMMONIA:
        return [await turn.reply(words.too_much_ammonia(), facts={"tank": stored.name})]
    note = Event("note", text=f"ammonia to {level:.3g} mg/L")
    kept = await readings.keep(turn, Parsed("event", events=(note,)), stored)
    lines = words.ammonia_dosed(is_nobodys=is_nobodys(state))
    return [*kept, await turn.reply(lines, facts={"tank": stored.name})]
