"""Words for short questions of the value, the change or the plan that was told last."""

from __future__ import annotations

from typing import Final, Literal

from bot.chat.words.levels import unit
from bot.chat.words.names import capital, label
from bot.chat.words.numbers import plain
from bot.chat.words.text import N_, _

Course = Literal["better", "worse", "up", "down", "same"]
"""How a value stands against the one before: judged, or only which way it went."""

COURSES: Final[dict[Course, str]] = {
    "better": N_("Better: {name} went down from {before} to {now}{unit}."),
    "worse": N_("Worse: {name} went up from {before} to {now}{unit}."),
    "up": N_("{name} went up from {before} to {now}{unit}."),
    "down": N_("{name} went down from {before} to {now}{unit}."),
    "same": N_("{name} is {now}{unit} as before: no better and no worse."),
}


def course(analyte: str, before: float, now: float, how: Course) -> str:
    """A value against the one before it. [canonical unit]"""
    told = _(COURSES[how]).format(
        name=label(analyte), before=plain(before, 2), now=plain(now, 2), unit=unit(analyte)
    )
    return told if told.startswith("pH") else capital(told)


def reached(tank: str, analyte: str, value: float, goal: float) -> str:
    """A goal is measured. [canonical unit]"""
    told = _("{tank}: the goal is reached: {name} {value}{unit}, wished {goal}.")
    return told.format(
        tank=tank,
        name=label(analyte),
        value=plain(value, 2),
        unit=unit(analyte),
        goal=plain(goal, 2),
    )


def not_reached(tank: str, analyte: str, value: float, goal: float) -> str:
    """A goal is not measured yet. [canonical unit]"""
    told = _("{tank}: not there yet: {name} {value}{unit}, wished {goal}: {missing} is missing.")
    if value > goal:
        told = _("{tank}: not there yet: {name} {value}{unit}, wished {goal}: {missing} too much.")
    return told.format(
        tank=tank,
        name=label(analyte),
        value=plain(value, 2),
        unit=unit(analyte),
        goal=plain(goal, 2),
        missing=plain(abs(goal - value), 2),
    )


def wait_for_test() -> str:
    """Whether it is changed once more right after a change."""
    return _(
        "Wait some hours, and test first: what it reads then decides. Sooner only if they gasp or"
        " lie down: then say so."
    )


def retest() -> str:
    """When it is tested after a change."""
    return _(
        "Yes: test a day after the change, before the next one: pH, KH, ammonia and what the"
        " change was for. Then send it."
    )


def salt_in(tank: str, strength: float, grams: float) -> list[str]:
    """The salt in the water by the record. [g/L, g]"""
    told = _("{tank}: by what you told me about {strength} g of salt a litre, {grams} g in all.")
    return [
        told.format(tank=tank, strength=plain(strength, 2), grams=plain(grams, 0)),
        _("Changes are counted as with unsalted water; what evaporates leaves its salt behind."),
    ]
