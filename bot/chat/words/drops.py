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


def by_colour(analyte: str, colour: str, count: int | None) -> list[str]:
    """What a colour says where no number is told: nothing, before it is known to be the end."""
    name = names.label(analyte)
    lines = [
        _(
            "Nothing is stored: the {name} test counts drops until its colour changes. Which colour"
            " is the end stands in the kit's leaflet."
        ).format(name=name)
    ]
    if count is None:
        end = _("Is {colour} the end? Send how many drops it took, for example: {wish} 4 drops")
        lines.append(end.format(colour=colour, wish=names.said(analyte)))
    elif count <= 1:
        end = _(
            "Is {colour} the end, from the first drop on: {name} is under one drop, nearly none."
            " Then pH can fall fast: no acid, test pH and ammonia, and send: {wish} <1 drop"
        )
        lines.append(end.format(colour=colour, name=name, wish=names.said(analyte)))
    else:
        end = _("Is {colour} the end: send {wish} {count} drops")
        lines.append(end.format(colour=colour, wish=names.said(analyte), count=count))
    lines.append(
        _("Is it the colour of the start: go on drop by drop, shake, count until it turns.")
    )
    return lines
