"""Which salts do the same where one of the usual is not to be had, or not wanted."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import Final

WAYS: Final[Mapping[str, tuple[tuple[str, ...], ...]]] = {
    "kh": (("sodium bicarbonate", "potassium bicarbonate"),),
    "gh": (
        ("calcium chloride dihydrate", "calcium sulfate dihydrate"),
        ("magnesium sulfate heptahydrate", "magnesium chloride hexahydrate"),
    ),
    "calcium": (("calcium chloride dihydrate", "calcium sulfate dihydrate"),),
    "magnesium": (("magnesium chloride hexahydrate", "magnesium sulfate heptahydrate"),),
    "potassium": (("potassium sulfate", "potassium chloride"),),
}
"""For each analyte rows of salts that do the same, the usual one first (common practice). Hardness
is of calcium and of magnesium, and has a row for each."""


def without(
    excluded: str, analytes: Collection[str], had: Collection[str] = ()
) -> tuple[str, ...] | None:
    """Give salts for some analytes, none of which is the excluded one or holds its ion.

    Parameters
    ----------
    excluded : str
        A salt by its name, of any hydrate, or an ion: chloride.
    analytes : collection of str
        What is to be raised.
    had : collection of str, optional
        Salts that the keeper named, which go before the usual.

    Returns
    -------
    tuple of str or None
        Full names; None where no such salt is left for one of them.

    Examples
    --------
    >>> without("calcium chloride", ["gh"])
    ('calcium sulfate dihydrate', 'magnesium sulfate heptahydrate')
    >>> without("sodium", ["kh"]), without("bicarbonate", ["kh"])
    (('potassium bicarbonate',), None)
    """
    found: dict[str, None] = {}
    for analyte in analytes:
        rows = [[s for s in row if not holds(s, excluded)] for row in WAYS.get(analyte, ())]
        firsts = [next((s for s in row if s in had), row[0]) for row in rows if row]
        if not firsts:
            return None
        found |= dict.fromkeys(firsts)
    return tuple(found)


def holds(salt: str, excluded: str) -> bool:
    """Whether a salt is the excluded one, of any hydrate, or has its ion in its name."""
    return f" {excluded} " in f" {salt} "
