"""Tanks introduced with their animals, in words."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.numbers import litres
from bot.chat.words.text import _


def how_many(kinds: Sequence[str]) -> list[str]:
    """Ask for the numbers of kinds that are kept without one."""
    told = _("How many {kinds}? I judge by the kinds until then; send for example: 6 {first}")
    return [told.format(kinds=", ".join(kinds), first=kinds[0])]


def tank_as_well(name: str) -> list[str]:
    """What was told with a tank is taken back: whether the tank is too."""
    return [_("Shall I take back the tank {tank} as well?").format(tank=name)]


def take_back() -> str:
    """The button that takes the tank itself back."""
    return _("undo the tank")


def whether_another(volume_l: float, names: Sequence[str]) -> list[str]:
    """Ask whether a tank is one more than those on record."""
    told = _("Is that another tank, {volume}, beside {tanks}? Nothing is stored yet.")
    return [told.format(volume=litres(volume_l), tanks=", ".join(names))]


def another() -> str:
    """The button that makes it a further tank."""
    return _("yes, another tank")


def ask_take_back(name: str) -> list[str]:
    """Ask whether a tank that was introduced goes, with what is kept in it."""
    told = _("Take {name} back, with what is kept in it? It is no longer listed then.")
    return [told.format(name=name)]


def with_all() -> str:
    """The button that takes a tank back with what is kept in it."""
    return _("yes, the tank and all in it")
