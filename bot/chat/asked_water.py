"""``is my tap ok for neons``: the water that is named is judged, not the tank's."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

from bot.chat import animals, plants
from bot.chat.model import Reply
from bot.chat.standing import about
from bot.chat.state import state_of
from bot.chat.supply import Supply
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from bot.chat.words import findings as finding_words
from bot.chat.words import lowering as lowering_words
from bot.chat.words import sources as words
from core.advice import limits
from core.advice.findings import find
from core.advice.outlook import with_premises
from core.advice.state import State
from core.advice.tapped import bad_in, softened
from core.message import water_asked
from core.message.after import is_of_harm
from core.message.model import Question
from core.message.plants import named as plants_named
from core.message.waters import mentioned
from core.tank import Stock, Tank

JUDGED: Final = ("ph", "gh", "kh", "salinity")
"""What of a new water must suit animals; it can be warmed, and is thinned with the tank's."""

JUDGED_BAD: Final = ("copper", "ammonia", "nitrite", "ph")
"""What is bad whatever lives there; chlorine is taken out of any tap."""

BUFFERED: Final = 1.0
"""KH under which water alone holds no pH; common practice, as in the plans. [°dH]"""


async def judged(turn: Turn, question: Question) -> list[Reply] | None:
    """Judge a source for the animals named, else the tank's; None where no water is named."""
    text = question.text or ""
    waters = mentioned(text)
    if len(waters) != 1 or question.premises or question.analyte is not None:
        return None
    start, end, kind = waters[0]
    supply = await (await Waters.of(turn)).of_name(text[start:end])
    if supply is None or not _values(supply):
        return [await turn.reply(words.unmeasured(kind))]
    whom = animals.named(question)
    stored = about(turn, question)
    if not whom and plants_named(text):
        bad = [words.bad(name, value) for name, value in bad_in(supply.state, JUDGED_BAD)]
        return [await plants.of_water(turn, supply.name, _values(supply), bad)]
    if not whom and stored is not None:
        stock = (await state_of(turn, stored, turn.now)).tank.stock
        return [await _against(turn, supply, stock, text)]
    return [await judge(turn, supply, whom, text)]


async def judge(
    turn: Turn,
    supply: Supply,
    whom: Sequence[str],
    text: str,
    context: Mapping[str, Any] | None = None,
) -> Reply:
    """Judge a water for kinds of animals; `context` is kept for what is said next."""
    return await _against(turn, supply, tuple(Stock(name, 1) for name in whom), text, context)


async def _against(
    turn: Turn,
    supply: Supply,
    kept: tuple[Stock, ...],
    text: str,
    context: Mapping[str, Any] | None = None,
) -> Reply:
    values = _values(supply)
    state = with_premises(State(Tank(name=supply.name, stock=kept), turn.local_now), values)
    found = [f for f in find(state, frozenset(values)) if f.id == "does_not_suit"]
    against = [finding_words.line(finding) for finding in found[:3]]
    against += [words.bad(name, value) for name, value in bad_in(supply.state, JUDGED_BAD)]
    if (hardness := softened(supply.readings)) is not None:
        against.append(words.softened(supply.name, *hardness))
    if values.get("kh", BUFFERED) < BUFFERED:
        against.append(words.no_buffer())
    facts = {
        "source": supply.name,
        "verdict": "no" if against else "yes",
        "values": [{"analyte": name, "value": value} for name, value in values.items()],
        "findings": [{"id": f.id, "severity": f.severity, **f.facts} for f in found],
    }
    said = ", ".join(words.figure(name, value) for name, value in values.items())
    lines = words.does_not_suit(supply.name, against) if against else words.suits(supply.name, said)
    if is_of_harm(text):  # there a yes would mean the opposite
        lines = words.of_harm(supply.name, against, said)
    waits: dict[str, Any] = {"context": context, "expects": "followup"} if context else {}
    return await turn.reply(lines, facts=facts, **waits)


def _values(supply: Supply) -> dict[str, float]:
    read = {name: supply.state.last(name) for name in JUDGED}
    return {name: reading.value for name, reading in read.items() if reading is not None}


async def salt_topped_up(turn: Turn) -> Reply | None:
    """Salt water in the place of what evaporated: salinity rises, slowly in the sea."""
    tank = turn.current_tank
    if not (turn.incoming.addressed and tank and water_asked.tops_up_salted(turn.incoming.text)):
        return None
    step = limits.SALINITY_UP
    lines = lowering_words.salt_topped_up(step, sea=tank.tank.is_sea)
    return await turn.reply(lines, facts={"step": step} if tank.tank.is_sea else {})
