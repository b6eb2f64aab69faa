"""Words about the drops of a kit."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.numbers import plain
from bot.chat.words.text import _


def which(analyte: str, number: str, per_drop: float) -> list[str]:
    """Ask whether a number is of drops or of degrees."""
    told = _("Is {number} the drops of {name}, at {each} °dH a drop, or the °dH? Not stored yet.")
    return [told.format(number=number, name=names.said(analyte), each=plain(per_drop, 3))]


def drops(analyte: str, number: str) -> str:
    """The button for drops."""
    return _("{name} {number} drops").format(name=names.said(analyte), number=number)


def degrees(analyte: str, number: str) -> str:
    """The button for degrees."""
    return _("{name} {number} °dH").format(name=names.said(analyte), number=number)
