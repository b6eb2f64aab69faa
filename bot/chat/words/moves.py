"""Animals that were moved between tanks, in words."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import names
from bot.chat.words.text import _

NAMED = 4
"""Tanks that are named in a line."""


def whence(names: Sequence[str]) -> list[str]:
    """Ask which tank they left."""
    asked = _("Which tank did they leave? {names}. Nothing is stored yet.")
    return [asked.format(names=", ".join(names))]


def none_on_record(species: str | None, tanks: Sequence[str]) -> list[str]:
    """Animals that left, of which no tank has any."""
    name = species or _("animals")
    where = names.either(list(tanks)[:NAMED]) if tanks else ""
    told = (
        _("No {name} are on record in {tanks}, so there are none to take off. Nothing is stored.")
        if where
        else _("No {name} are on record, so there are none to take off. Nothing is stored.")
    )
    return [told.format(name=name, tanks=where)]


def how_many_left(species: str, tank: str, count: int) -> list[str]:
    """Ask for the number of those that left."""
    asked = _("How many {name}? {count} are on record in {tank}. Send the number.")
    return [asked.format(name=species, count=f"{count:,}", tank=tank)]


def how_many_died(species: str, tank: str, count: int) -> list[str]:
    """Ask for the number of the dead, which the record does not tell."""
    asked = _(
        "How many {name} died? Nothing is stored yet; {count} are on record in {tank}."
        " Send the number."
    )
    return [asked.format(name=species, count=f"{count:,}", tank=tank)]


def all_of_them(count: int) -> str:
    """The button that says that all left."""
    return _("all {count}").format(count=f"{count:,}")


def too_many(count: int) -> list[str]:
    """More animals than a tank holds, most likely a slip."""
    asked = _("{count} moved at once? That is a great many, so nothing is stored. Send it again.")
    return [asked.format(count=f"{count:,}")]


def moved_out(animals: str, to: str | None) -> str:
    """Animals that left a tank, for another or for good."""
    if to is None:
        return _("moved {animals} away").format(animals=animals)
    return _("moved {animals} to {tank}").format(animals=animals, tank=to)


def moved_in(animals: str, whence: str | None) -> str:
    """Animals that came to a tank from another."""
    if whence is None:
        return _("{animals} moved in").format(animals=animals)
    return _("{animals} moved in from {tank}").format(animals=animals, tank=whence)
