"""Atomic weights and the molar mass of a formula."""

from __future__ import annotations

import re
from functools import lru_cache
from types import MappingProxyType
from typing import Final

from core.errors import CoreError

ATOMIC_WEIGHT: Final = MappingProxyType(
    {
        "H": 1.008,
        "B": 10.81,
        "C": 12.011,
        "N": 14.007,
        "O": 15.999,
        "F": 18.998,
        "Na": 22.990,
        "Mg": 24.305,
        "P": 30.974,
        "S": 32.06,
        "Cl": 35.45,
        "K": 39.098,
        "Ca": 40.078,
        "Fe": 55.845,
        "Br": 79.904,
        "Sr": 87.62,
        "I": 126.90,
    }
)
"""Conventional and abridged standard weights, IUPAC 2021 (Prohaska et al. 2022, Pure Appl. Chem.
94:573), from memory and checked against `periodictable` in the tests. [g/mol]"""

_TOKEN: Final = re.compile(r"([A-Z][a-z]?)(\d*)|(\()|\)(\d*)")


class UnreadableFormula(CoreError):
    """A formula holds something that is no element of the table.

    Attributes
    ----------
    formula : str
        The formula as given.
    position : int
        Where reading stopped.
    """

    def __init__(self, formula: str, position: int) -> None:
        self.formula = formula
        self.position = position
        super().__init__(f"cannot read {formula!r} from position {position}")


@lru_cache(maxsize=256)
def molar_mass(formula: str) -> float:
    """Molar mass of a formula such as ``Ca(OH)2`` or ``Na2CO3.10H2O``.

    Parameters
    ----------
    formula : str
        Elements with counts, brackets (not nested); water of crystallisation after a full stop.

    Returns
    -------
    float
        Molar mass. [g/mol]

    Raises
    ------
    UnreadableFormula
        If a part is no element of `ATOMIC_WEIGHT`, or a bracket has no partner.

    Examples
    --------
    >>> round(molar_mass("NaHCO3"), 3)
    84.006
    >>> round(molar_mass("CaCl2.2H2O"), 2)
    147.01
    """
    total = 0.0
    start = 0
    for part in formula.split("."):
        count = re.match(r"\d*", part)
        digits = count.group() if count else ""
        total += int(digits or 1) * _mass_of_part(formula, start + len(digits), start + len(part))
        start += len(part) + 1
    return total


def _mass_of_part(formula: str, position: int, end: int) -> float:
    """Sum the elements and groups from `position` to `end`, which must hold at least one."""
    outer, mass, inside = 0.0, 0.0, False
    if position == end:
        raise UnreadableFormula(formula, position)
    while position < end:
        token = _TOKEN.match(formula, position, end)
        element, count, opening, group_count = token.groups() if token else (None,) * 4
        if element is not None and element in ATOMIC_WEIGHT:
            mass += ATOMIC_WEIGHT[element] * int(count or 1)
        elif opening and not inside:
            outer, mass, inside = mass, 0.0, True
        elif group_count is not None and inside:
            outer, mass, inside = 0.0, outer + mass * int(group_count or 1), False
        else:
            raise UnreadableFormula(formula, position)
        position = token.end() if token else end
    if inside:
        raise UnreadableFormula(formula, end)
    return mass
