"""No new animals while poison is warned of, or before a harm of late was looked into."""

from __future__ import annotations

from bot.chat.told import Told
from bot.chat.words import after_call as called_words
from bot.chat.words import findings as finding_words
from bot.chat.words import levels as words
from core.advice.emergencies import standing_call
from core.advice.readiness import POISONS, deaths, poison
from core.advice.state import State


def no_newcomers(state: State, tank: str) -> list[str]:
    """Say that no animals may come now, and why; nothing where nothing speaks against it."""
    if (called := standing_call(state)) is not None:
        return [words.not_before_tested(tank), *called_words.not_gone(called)]
    found = poison(state)
    if found is None:
        return words.after_deaths(tank) if deaths(state) else []
    if found.id not in POISONS:
        return [words.not_before_tested(tank), finding_words.line(found)]
    return [words.no_newcomers(tank, POISONS[found.id]), finding_words.line(found)]


def beside(told: Told, state: State) -> list[str]:
    """The same behind animals that were just told to have come."""
    came = any(event.what.kind in {"added", "moved_in"} for event in told.events)
    if not came or any(reading.what.analyte in POISONS.values() for reading in told.readings):
        return []
    found = poison(state)
    return [] if found is None else [finding_words.line(found)]
