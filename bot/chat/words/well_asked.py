"""A pH that goes up and down, against what it may move."""

from __future__ import annotations

from bot.chat.words.numbers import plain
from bot.chat.words.text import _
from core.advice import limits


def swung(by: float) -> str:
    """More than animals are moved by in a day."""
    told = _(
        "A pH swing of {by} is more than the {limit} a day that I keep to: a low KH lets it swing."
        " With CO2, in a pond or reef look at its own usual swing."
    )
    return told.format(by=plain(by, 2), limit=plain(limits.PH_MOVED, 1))


def swung_little(by: float) -> str:
    """No more than that."""
    told = _("A pH swing of {by} is within the {limit} a day that I keep to.")
    return told.format(by=plain(by, 2), limit=plain(limits.PH_MOVED, 1))
