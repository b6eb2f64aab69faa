"""What is said of several tanks at once, and of the one in use."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.text import _


def in_use(name: str) -> list[str]:
    """Which tank is spoken of."""
    return [_("{tank} is the one in use. Send another's name to switch.").format(tank=name)]


def none_in_use(names: Sequence[str]) -> list[str]:
    """That no tank is spoken of yet."""
    return [_("None is in use yet. Send a name: {names}").format(names=", ".join(names))]


def worst_first(name: str) -> list[str]:
    """Which tank is to be looked after first, by what is on record."""
    return [_("By what is on record, look after {tank} first.").format(tank=name)]


def none_worse() -> list[str]:
    """That what is on record does not tell one tank from the others."""
    return [_("What is on record does not show which one is worse.")]


def not_all_measured(names: Sequence[str]) -> list[str]:
    """That tanks cannot be told apart while one of them has no reading."""
    told = _("I cannot tell which is worse: nothing is measured in {names}.")
    return [told.format(names=", ".join(names))]


def whether_of(told: str, tank: str) -> list[str]:
    """Ask whether what was just told is of a tank that was named after it."""
    return [_("Or was this of {tank}? {told}").format(tank=tank, told=told)]


def of_tank(tank: str) -> str:
    """The button for yes, it was."""
    return _("of {tank}").format(tank=tank)
