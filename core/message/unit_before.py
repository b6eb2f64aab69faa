"""A hardness without a unit, held against the unit that the tank was told in before.

Who told 2.3 meq/L tells 2.6 next in meq/L: as degrees it would be a leap to a third of it.
"""

from __future__ import annotations

from typing import Final

from core.message import doubts
from core.message.guesses import name_for
from core.message.model import Doubt, Value

LOOKED_AT: Final = frozenset({"kh", "gh"})
"""What is told in many units, degrees where none is written."""
NEAR: Final = 1.5
"""So many times the number before, or so much less, fits its unit; ours."""
LEAP: Final = 1.6
"""So many times the value before, or so much less, is a leap; ours."""


def doubted(value: Value, before: Value) -> Doubt | None:
    """What is asked about a bare value that fits the unit before and is a leap without it.

    Examples
    --------
    >>> def kh(number, unit=None, canonical=None):
    ...     return Value("kh", number, None, None, "=", unit, canonical or number, "°dH", None)
    >>> doubted(kh(2.6), kh(2.3, "meq/L", 6.45)).choices
    ('KH 2.6 meq/L', 'KH 2.6 °dH')
    >>> doubted(kh(7.5), kh(2.3, "meq/L", 6.45)), doubted(kh(2.6), kh(6.4))
    (None, None)
    """
    told, held, last = value.value, before.value, before.canonical
    if value.analyte not in LOOKED_AT or value.unit is not None or value.qualifier != "=":
        return None
    if before.unit in {None, "°dH", "drops"} or not isinstance(last, float | int):
        return None
    if not told or not held or not last:
        return None
    if not 1 / NEAR <= told / held <= NEAR or 1 / LEAP < told / last < LEAP:
        return None
    name = name_for(value.analyte)
    choices = (f"{name} {told:.6g} {before.unit}", f"{name} {told:.6g} °dH")
    text = f"{name} {told:.6g}"
    return Doubt(text, value.start, value.end, doubts.LAST_UNIT, choices[0], None, choices)
