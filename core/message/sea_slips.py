"""Values of a sea whose unit or point slipped: what no sea has is asked about, never stored.

Alkalinity of the sea is told in milliequivalents as often as in degrees, and a bare number below
five is believable only as the former (2.3 to 4 meq/L is 6.5 to 11 °dH: common practice; Boyd gives
100 to 130 mg/L as CaCO3 for full-strength sea water). A degree of KH is 0.357 meq/L.
"""

from __future__ import annotations

from typing import Final

from core.message import doubts
from core.message.model import Doubt, Value
from core.message.quantity import Quantity
from core.units import to_canonical

LOOKED_AT: Final = frozenset({"kh", "calcium", "magnesium"})
"""Analytes whose unit or point slips in a sea."""

EQUIVALENTS: Final = (1.5, 4.5)
"""Bare numbers that a sea has in meq/L and hardly ever in °dH."""

_DEGREES: Final = (5.0, 15.0)
"""KH that seas are kept at, with a margin; common practice. [°dH]"""

_LEAST: Final = {"calcium": 100.0, "magnesium": 300.0}
"""Less is no sea: a quarter of what sea water has (410 and 1280 mg/L). [mg/L]"""

_USUAL: Final = {"calcium": (300.0, 600.0), "magnesium": (900.0, 1700.0)}
"""What a lost point or other unit is taken back to. [mg/L]"""


Told = Quantity | Value
"""A number as it was told."""


def of_value(value: Value, name: str) -> Doubt | None:
    """The doubt about a value that was read before it was known to be a sea's, if there is one."""
    reason, choices = problem(value.analyte, value, value.unit, name)
    if reason is None:
        return None
    text = f"{name} {_written(value)}{f' {value.unit}' if value.unit else ''}"
    return doubt(text, value.start, value.end, reason, choices)


def doubt(text: str, start: int, end: int, reason: str, choices: tuple[str, ...]) -> Doubt:
    """What is asked about a value of a sea; nothing is offered where nothing is likely."""
    first = choices[0] if choices else None
    return Doubt(text, start, end, reason, first, None, choices if len(choices) > 1 else ())


def problem(
    analyte: str, quantity: Told, unit: str | None, name: str
) -> tuple[str | None, tuple[str, ...]]:
    """Why a value of a sea is asked about, and what was probably meant; (None, ()) for a sound one.

    Parameters
    ----------
    analyte : str
        The analyte's id.
    quantity : Told
        The number as it was told.
    unit : str or None
        The unit that it was told in.
    name : str
        How a suggestion writes the analyte.
    """
    numbers = [n for n in (quantity.value, quantity.low, quantity.high) if n is not None]
    if analyte not in LOOKED_AT or not numbers or unit == "drops":
        return None, ()
    if analyte == "kh":
        return _alkalinity(quantity, numbers, unit, name)
    least = _LEAST[analyte]
    told = [to_canonical(analyte, number, unit, quantity.basis) for number in numbers]
    if all(number >= least for number in told) or quantity.qualifier == ">":
        return None, ()
    return doubts.IMPLAUSIBLE, _shifted(analyte, quantity, name)


def _alkalinity(
    quantity: Told, numbers: list[float], unit: str | None, name: str
) -> tuple[str | None, tuple[str, ...]]:
    low, high = EQUIVALENTS
    if unit is None:
        if not all(low <= number <= high for number in numbers):
            return None, ()
        written = _written(quantity)
        return doubts.SEA_ALKALINITY, (f"{name} {written} meq/L", f"{name} {written} °dH")
    least, most = _DEGREES
    if unit not in {"meq/L", "mmol/L", "ppm", "mg/L"}:
        return None, ()
    told = [to_canonical("kh", number, unit) for number in numbers]
    as_degrees = all(least <= number <= most for number in numbers)
    if not as_degrees or all(low <= number <= most for number in told):
        return None, ()
    return doubts.IMPLAUSIBLE, (f"{name} {_written(quantity)} °dH",)


def _shifted(analyte: str, quantity: Told, name: str) -> tuple[str, ...]:
    """The number with its point where a sea has it."""
    low, high = _USUAL[analyte]
    if quantity.value is None or quantity.low is not None:
        return ()
    found = (quantity.value * factor for factor in (10.0, 100.0, 1000.0))
    return tuple(f"{name} {number:.6g}" for number in found if low <= number <= high)[:1]


def _written(quantity: Told) -> str:
    if quantity.low is not None and quantity.high is not None:
        return f"{quantity.low:.6g}-{quantity.high:.6g}"
    prefix = "" if quantity.qualifier == "=" else quantity.qualifier
    return f"{prefix}{quantity.value or 0.0:.6g}"
