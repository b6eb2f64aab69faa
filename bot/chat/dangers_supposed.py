"""A danger in a number that is only asked about: it is told with the question, not after it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

from bot.chat import unheard
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import findings as finding_words
from bot.chat.words import standing as words
from core.advice.findings import Finding, find
from core.advice.outlook import with_premises
from core.advice.state import State
from core.message.model import Doubt, Parsed
from core.tank import Tank

POISONS: Final = frozenset({"ammonia", "nitrite", "chlorine", "copper"})
"""What kills within a day, so that a warning of it does not wait for an answer either."""


async def of(
    turn: Turn, doubts: Sequence[Doubt], parsed: Parsed
) -> tuple[list[str], dict[str, Any]]:
    """The worst that doubtful numbers would mean, where that is a danger, and its facts."""
    values = unheard.in_doubt(doubts)
    if not values or not turn.incoming.addressed:
        return [], {}
    named = next((d.value.tank for d in doubts if d.value is not None and d.value.tank), None)
    stored = turn.tank_named(named or parsed.tank or "") or turn.current_tank
    if stored is None:
        state = State(turn.first or Tank(name=""), turn.local_now)
    else:
        state = await state_of(turn, stored, turn.now)
    return _worst(state, values)


def of_stray(turn: Turn, parsed: Parsed) -> tuple[list[str], dict[str, Any]]:
    """Likewise of readings of a tank that is not on record, by nothing but themselves."""
    values: dict[str, float] = {}
    for value in parsed.values:
        number = max(value.canonical) if isinstance(value.canonical, tuple) else value.canonical
        if number is not None:
            values[value.analyte] = number
    kind = "fresh" if turn.current_tank is None else turn.current_tank.tank.kind
    return _worst(State(Tank(name="", kind=kind), turn.local_now), values)


def _worst(state: State, values: Mapping[str, float]) -> tuple[list[str], dict[str, Any]]:
    found = find(with_premises(state, values), frozenset(values))
    worst = next((each for each in found if _is_danger(each)), None)
    if worst is None:
        return [], {}
    told = {"id": worst.id, "severity": worst.severity, **worst.facts}
    return [words.if_so(finding_words.line(worst))], {"supposed": [told]}


def _is_danger(found: Finding) -> bool:
    poison = found.id.partition("_")[0] in POISONS
    return found.severity == "alarm" or (found.severity == "warn" and poison)
