"""What is wrong in a tank, said before a list of what is due: no list may look like all is well."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Final

from bot.chat import emergencies, what_now
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import agenda as words
from bot.chat.words import change_talk
from bot.chat.words.emergencies import WHAT_NOW
from bot.chat.words.findings import line as finding_line
from bot.chat.words.text import _
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.advice.calls import Danger
from core.advice.findings import Finding, stands

LOOKED_AT: Final = 8
"""So many tanks are looked at, the one in use first."""

TESTED_AGAIN: Final = frozenset({"ammonia", "nitrite"})
"""Dangers whose change follows on a test, not on a day."""


@dataclass(frozen=True, slots=True)
class Standing:
    """Lines of what is wrong, the button that leads to its steps, and the facts of the lines."""

    lines: list[str]
    choices: list[Choice]
    facts: dict[str, Any]


async def standing(turn: Turn, *, elsewhere: bool = False) -> Standing:
    """What is wrong in the chat's tanks by their readings, their record or a call of the day.

    With `elsewhere` the tank in use is left out.
    """
    used = turn.current_tank
    others = [tank for tank in turn.tanks if used is None or tank.id != used.id]
    tanks = others if elsewhere or used is None else [used, *others]
    tanks = tanks[:LOOKED_AT]
    lines: list[str] = []
    choices: list[Choice] = []
    found: list[dict[str, Any]] = []
    dangers: dict[str, Danger] = {}
    for tank in tanks:
        danger, finding = await _in(turn, tank)
        if finding is not None:
            lines.append(words.wrong_there(tank.name, finding_line(finding)))
            fact = {"id": finding.id, "severity": finding.severity, **finding.facts}
            found.append({"tank": tank.name, **fact})
        if danger is None:
            continue
        dangers[tank.name] = danger
        if finding is None:
            lines.append(words.called_there(tank.name))
        if not choices:
            held = {"tank": tank.id, "danger": danger}
            choices = [Choice(_(WHAT_NOW), "what_now", "", held)]
    if TESTED_AGAIN & {*dangers.values()}:
        lines += change_talk.next_change(emergency=True)
    facts = {"findings": found, "dangers": dangers} if lines else {}
    return Standing(lines, choices, facts)


async def _in(turn: Turn, tank: StoredTank) -> tuple[Danger | None, Finding | None]:
    """The danger of a tank with the finding that shows it; a finding alone is of an old poison."""
    danger = await what_now.unsettled(turn, tank)
    state = await state_of(turn, tank, turn.now)
    if danger is not None:
        return danger, what_now.shown_by(emergencies.what_stands(state), state.tank, danger)
    every = stands(state, frozenset(state.readings))
    return None, next((each for each in every if each.id == "not_retested"), None)
