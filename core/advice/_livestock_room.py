"""How many of a kind: the room that they need, the company of their own, and rivals."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final, Literal

from core.advice._livestock_names import species
from core.advice._livestock_table import Species
from core.advice._livestock_words import Sex, Sexes

__all__ = [
    "NOBODY_TOLD",
    "SHOAL",
    "Rivalry",
    "Sex",
    "Sexes",
    "least_volume",
    "rival_of",
    "species",
    "volume_for",
]

LITRES_PER_LENGTH: Final = 0.25
"""Under so much water for the square of its grown length a fish is cramped for sure: a lenient
bound of our own, far under what the trade recommends. Common practice. [L/cm²]"""

SHORTEST_JUDGED: Final = 10.0
"""Of smaller fish the number decides. [cm]"""

LITRES_PER_CM: Final = 0.5
OF_EACH: Final = 0.25
IN_THE_SEA: Final = 2.0
"""Each of many small fish needs half a litre a centimetre, each large one a quarter of what one
alone needs, sea fish twice as much: lenient bounds of our own, half or less of what the trade
recommends. Common practice, no source. [L/cm, share, factor]"""

NOBODY_TOLD: Final = Sexes()

SHOAL: Final = 6
"""Fewer than so many of a kind that lives in groups are uneasy; common practice."""


def least_volume(kept: Species) -> float | None:
    """Water under which a grown fish is cramped for sure; None where that is not judged. [L]

    Examples
    --------
    >>> least_volume(species("oscar")), least_volume(species("neon tetra"))
    (256.0, None)
    """
    if kept.being != "fish" or kept.length is None or kept.length < SHORTEST_JUDGED:
        return None
    return LITRES_PER_LENGTH * kept.length**2


def volume_for(kept: Iterable[tuple[Species, int]]) -> float:
    """Water under which so many grown fish are too many for sure. [L]

    Parameters
    ----------
    kept : iterable of Species and int
        Kinds with their numbers; what is no fish counts nothing.

    Examples
    --------
    >>> volume_for([(species("goldfish"), 10)]), volume_for([(species("neon tetra"), 10)])
    (390.625, 20.0)
    """
    return sum(count * _litres_each(row) for row, count in kept)


def _litres_each(row: Species) -> float:
    if row.being != "fish" or row.length is None:
        return 0.0
    each = max(LITRES_PER_CM * row.length, OF_EACH * LITRES_PER_LENGTH * row.length**2)
    return each * (IN_THE_SEA if row.water == "marine" else 1.0)


Rivalry = Literal["sure", "perhaps"]


def rival_of(kept: Species, count: int, sexes: Sexes = NOBODY_TOLD) -> Rivalry | None:
    """Whether so many of a kind fight each other.

    Parameters
    ----------
    kept : Species
        The kind.
    count : int
        How many there are or would be.
    sexes : Sexes
        How many of them are males and females, as far as told.

    Returns
    -------
    str or None
        "sure"; "perhaps" where the sexes decide, or females may; None where they bear each other.

    Examples
    --------
    >>> betta, gourami = species("betta"), species("dwarf gourami")
    >>> rival_of(betta, 2), rival_of(betta, 4, Sexes(1, 3)), rival_of(betta, 2, Sexes(0, 2))
    ('sure', 'sure', 'perhaps')
    >>> rival_of(gourami, 2), rival_of(gourami, 2, Sexes(2, 0)), rival_of(gourami, 3, Sexes(1, 2))
    ('perhaps', 'sure', None)
    """
    if kept.rivals is None or count < (3 if kept.rivals == "pair" else 2):
        return None
    untold = count - sexes.male - sexes.female
    if kept.rivals == "males":
        if sexes.male > 1:
            return "sure"
        return "perhaps" if sexes.male + untold > 1 else None
    return "perhaps" if untold <= 0 and not sexes.male else "sure"
