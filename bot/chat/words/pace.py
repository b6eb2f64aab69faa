"""How much a value may move in a day, and whether a change keeps to it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words.levels import unit
from bot.chat.words.names import label
from bot.chat.words.numbers import plain
from bot.chat.words.text import N_, _
from core.advice import limits

NOTES: Final[Mapping[str, str]] = {
    "kh": N_(
        "Never to more than double in a day, and only where ammonia is 0: pH goes up with it."
    ),
    "gh": N_("Slower where shrimps or young fish live."),
    "ph": N_(
        "Compare the same hour: with light, plants and animals it swings each day by itself. What"
        " holds it steady is KH."
    ),
    "temperature": N_("New water as warm as the tank; animals from a bag slowly."),
    "salinity": N_(
        "That is for a rise. It may fall by {down} a day with fish alone, by {most} with shrimps,"
        " snails or corals."
    ),
    "calcium": N_("Never at the same time and place as what raises KH."),
    "magnesium": N_("In parts, and measured between them."),
}


def told(analyte: str, most: float, change: float | None) -> list[str]:
    """The limit of a day, with the verdict on a change where one was told.

    Parameters
    ----------
    analyte : str
        Whose change it is.
    most : float
        The most by which it may move in a day. [canonical unit]
    change : float or None
        The change to judge. [canonical unit]
    """
    if change is None:
        first = _("At most {most}{unit} a day for {name}.")
    elif change > most + 1e-9:
        first = _("No, {change}{unit} is too fast: at most {most}{unit} a day for {name}.")
    else:
        first = _("{change}{unit} is within the limit: {most}{unit} a day for {name}.")
    line = first.format(
        name=label(analyte),
        most=plain(most, 1),
        unit=unit(analyte),
        change="" if change is None else plain(change, 2),
    )
    note = _(NOTES[analyte]).format(
        most=plain(limits.SALINITY_UP, 0), down=plain(limits.SALINITY_DOWN, 0)
    )
    return [line, note]
