"""What is asked where a dose is told to be in for another one that is on record."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.doses import of
from bot.chat.words.text import _


def whether(grams: float, substance: str, before: float, other: str) -> list[str]:
    """Whether a dose went in for the one on record, or as well. [g]"""
    told = _("Did {meant} go in for the {before} on record, or as well? Nothing is stored yet.")
    return [
        told.format(
            meant=of(grams, names.substance(substance)), before=of(before, names.substance(other))
        )
    ]


def in_its_place() -> str:
    """A button: the dose on record did not go in, this one did."""
    return _("in its place")


def as_well() -> str:
    """A button: both went in."""
    return _("as well")
