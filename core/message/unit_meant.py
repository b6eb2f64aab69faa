"""Which unit a value is in: the one that was written, or what its name and size tell."""

from __future__ import annotations

from typing import Final

from core.analytes import ANALYTES, FREE
from core.message import doubts, guesses, terms
from core.message.candidates import Candidate
from core.message.model import Context
from core.message.quantities import Quantity
from core.units import FACTORS

TINY: Final = frozenset({"µg/L", "ppb", "µmol/L"})
"""Units of traces."""
_TRACE: Final = FREE["iodine"]


def unit_meant(
    candidate: Candidate, quantity: Quantity, context: Context
) -> tuple[str | None, str | None]:
    """Our spelling of the unit meant, and the problem with it."""
    analyte, unit = candidate.analyte, quantity.unit
    if unit is None or unit == "°":
        return _bare(candidate, quantity, context)
    if quantity.of in {"kh", "gh"} and quantity.of != analyte and unit != "gpg":
        return unit, doubts.WRONG_UNIT
    if analyte in {"kh", "gh"}:
        if unit == "°F" and quantity.unit_text in {"°f", "° f"}:
            unit = "°fH"
        if unit == "drops":
            return unit, None
    elif unit == "drops":
        return unit, None
    if unit in TINY and ANALYTES.get(analyte, _TRACE).high > 20.0:
        return unit, doubts.WRONG_UNIT  # nobody counts calcium in millionths: a slip
    if unit in TINY and quantity.value is not None and 0 < quantity.value < 1:
        return unit, doubts.WRONG_UNIT  # nor parts of a microgram
    if unit == "mg" and (analyte, "mg/L") in FACTORS:
        unit = "mg/L"
    if (analyte, unit) in FACTORS or (analyte, unit) in {
        ("temperature", "°F"),
        ("salinity", "SG"),
        ("salinity", "g/L"),
    }:
        return unit, None
    return unit, doubts.WRONG_UNIT


def _bare(
    candidate: Candidate, quantity: Quantity, context: Context
) -> tuple[str | None, str | None]:
    """No unit, or a lone degree sign."""
    analyte = candidate.analyte
    number = quantity.value if quantity.value is not None else quantity.high
    if analyte == "temperature":
        return _temperature(number, context, said=quantity.unit is not None)
    if quantity.unit == "°":
        return ("°dH", None) if analyte in {"kh", "gh"} else ("°", doubts.WRONG_UNIT)
    if analyte == "salinity" and number is not None:
        dense = (candidate.tank or "") in context.seas and number > 1.0
        return _salinity(number, quantity, dense=dense or terms.means(candidate.name, "gravity"))
    return None, None


def _salinity(number: float, quantity: Quantity, *, dense: bool) -> tuple[str | None, str | None]:
    """Specific gravity where it is written like one, in three decimals, else where it must be one.

    `dense` tells that it can be nothing else, as 1.02 in the sea, or by its name. Else it may be
    as many grams: asked, and so is what may be a gravity whose point slipped (1.25).
    """
    if guesses.SLIPPED <= number < 1.4:
        return None, doubts.AMBIGUOUS_UNIT
    low = quantity.low if quantity.low is not None else number
    if not (0.99 <= number < guesses.SLIPPED and low >= 0.99):
        return None, None
    if quantity.integer and number == 1:
        return None, None  # nobody writes a gravity so: 1 g/kg
    fine = quantity.low is not None or quantity.grouped is not None or round(number, 2) != number
    if fine or dense:
        return "SG", None
    return None, doubts.AMBIGUOUS_UNIT


def _temperature(
    number: float | None, context: Context, *, said: bool
) -> tuple[str | None, str | None]:
    """Celsius under 38, Fahrenheit over 50, asked in between.

    In a chat that reads Fahrenheit a bare 33 to 38 may be cold water in Fahrenheit: asked too.
    """
    if number is None:
        return None, None
    if number > 50:
        return "°F", None
    if number >= 38 or (context.fahrenheit and number >= 33):
        return None, doubts.AMBIGUOUS_UNIT
    return ("°C" if said else None), None
