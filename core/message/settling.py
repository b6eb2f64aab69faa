"""A name and a quantity made one value, or the doubt that keeps them apart."""

from __future__ import annotations

from datetime import datetime

from core.analytes import ANALYTES, MEASURABLE
from core.errors import CoreError
from core.message import doubts, guesses, sea_slips
from core.message.candidates import Candidate
from core.message.model import Basis, Context, Doubt, Kit, Qualifier, Value
from core.message.numbers import Number
from core.message.quantities import Quantity
from core.message.unit_meant import TINY, unit_meant
from core.units import FACTORS, to_canonical

_COARSE = 1.0
"""From this kit resolution on, a mark before three digits divides thousands."""


_FINE = 0.05


_NO_KIT = Kit()


def settle(candidate: Candidate, context: Context, source: str) -> Value | Doubt:
    """The value that a candidate is, or the doubt about it.

    The order is: what was said about the number (change, wish, another water), the number, the
    unit, the span. A value has no time yet, which may be the whole message's; a doubt's has.
    """
    analyte = candidate.analyte
    if guesses.may_be_nitrate(candidate, source):
        return guesses.sodium_or_nitrate(candidate, source)
    plain = _plainest(candidate, context)
    if plain is not None:
        return plain
    if analyte not in MEASURABLE:
        return guesses.unclear_name(candidate, source)
    quantity = candidate.quantity
    unit, problem = unit_meant(candidate, quantity, context)
    hidden = quantity.problem if quantity.problem == doubts.INVISIBLE else None
    said = hidden or _sign(candidate, quantity) or candidate.problem or quantity.problem
    problem = said or problem
    value, problem = _thousands(analyte, quantity, unit, problem)
    numbers = _numbers(quantity, value)
    kit = _kit(context, candidate.tank, analyte)
    basis = quantity.basis or candidate.basis or kit.basis
    canonical, problem = _canonical(analyte, numbers, unit, basis, kit, problem)
    if problem is None and _slips(analyte, candidate.tank, context):
        name = guesses.name_for(analyte)
        slip, choices = sea_slips.problem(analyte, quantity, unit, name)
        if slip is not None:
            start, end = candidate.start, candidate.end
            return sea_slips.doubt(source[start:end], start, end, slip, choices)
    at = None if problem is None else candidate.at
    made = _value(candidate, value, unit, basis, canonical, at)
    if problem is None:
        return made
    return guesses.doubt(candidate, made, problem, source)


def bare(analyte: str, number: Number, context: Context) -> float | None:
    """The value of a sound number that stands without a unit; None where more must be asked of it.

    It is in the analyte's canonical unit.
    """
    value = number.value
    if (
        value is None
        or number.problem is not None
        or number.grouped is not None
        or context.kits
        or analyte in {"sodium", *_READ_BY_SIZE}
        or (context.seas and analyte in sea_slips.LOOKED_AT)
    ):
        return None
    row = ANALYTES[analyte]
    return value if row.low <= value <= row.high else None


def _slips(analyte: str, tank: str | None, context: Context) -> bool:
    """Whether a value is one of a sea whose unit may have slipped."""
    return analyte in sea_slips.LOOKED_AT and (tank or "") in context.seas


def _plainest(candidate: Candidate, context: Context) -> Value | None:
    """The value of one sound number in a plain unit, which is what most values are."""
    quantity, analyte = candidate.quantity, candidate.analyte
    value, unit = quantity.value, quantity.unit
    if (
        value is None
        or candidate.problem is not None
        or quantity.problem is not None
        or quantity.grouped is not None
        or quantity.sign
        or quantity.plus is not None
        or quantity.of is not None
        or context.kits
        or analyte in _READ_BY_SIZE
        or _slips(analyte, candidate.tank, context)
    ):
        return None
    row = MEASURABLE.get(analyte)
    factor = 1.0 if unit is None else FACTORS.get((analyte, unit))
    if row is None or factor is None or unit in TINY:
        return None
    basis: Basis | None = quantity.basis or candidate.basis  # type: ignore[assignment]
    canonical = value * factor if basis is None else to_canonical(analyte, value, unit, basis)
    if not row.low <= canonical <= row.high:
        return None
    return Value(
        analyte,
        value,
        None,
        None,
        quantity.qualifier,  # type: ignore[arg-type]
        unit,
        canonical,
        row.unit,
        basis,
        candidate.tank,
        None,
        candidate.start,
        candidate.end,
    )


_READ_BY_SIZE = frozenset({"temperature", "salinity"})
"""Analytes whose unit, left out, is told by the size of the number."""


def _value(
    candidate: Candidate,
    value: float | None,
    unit: str | None,
    basis: str | None,
    canonical: float | tuple[float, float] | None,
    at: datetime | None,
) -> Value:
    quantity = candidate.quantity
    low, high = quantity.low, quantity.high
    if quantity.plus is not None and value is not None:
        low, high = value - quantity.plus, value + quantity.plus
    qualifier: Qualifier = quantity.qualifier  # type: ignore[assignment]
    based: Basis | None = basis  # type: ignore[assignment]
    return Value(
        candidate.analyte,
        value,
        low,
        high,
        qualifier,
        unit,
        canonical,
        MEASURABLE[candidate.analyte].unit,
        based,
        candidate.tank,
        at,
        candidate.start,
        candidate.end,
    )


def _kit(context: Context, tank: str | None, analyte: str) -> Kit:
    if not context.kits:
        return _NO_KIT
    for name in (tank or "", ""):
        kit = context.kits.get(name, {}).get(analyte)
        if kit is not None:
            return kit
    return _NO_KIT


def _sign(candidate: Candidate, quantity: Quantity) -> str | None:
    """What a sign before the number means: nothing (a dash), a change, or less than zero."""
    if not quantity.sign:
        return None
    if quantity.sign == "+":
        return doubts.CHANGE
    if candidate.analyte == "redox" and quantity.value is not None:
        quantity.value = -quantity.value
        quantity.sign = ""
        return None
    return doubts.NEGATIVE


def _thousands(
    analyte: str, quantity: Quantity, unit: str | None, problem: str | None
) -> tuple[float | None, str | None]:
    """Which of the two readings of "1,250" is meant; asked where both could be."""
    value = quantity.value
    grouped = quantity.grouped
    if grouped is None:
        return value, problem
    if problem is not None or value is None or quantity.low is not None:
        return value, problem or doubts.BAD_NUMBER
    row = MEASURABLE[analyte]
    small, large = (guesses.believable(analyte, number, unit) for number in (value, grouped))
    if large and not small:
        return grouped, None
    if small and not large and (row.resolution <= _FINE or unit in {"SG", "mS/cm"}):
        return value, None
    if large and row.resolution >= _COARSE and quantity.mark != "." and row.high >= 400:
        return grouped, None
    if small and row.resolution <= _FINE and quantity.mark == ".":
        return value, None
    return value, doubts.BAD_NUMBER if large else doubts.IMPLAUSIBLE


def _numbers(quantity: Quantity, value: float | None) -> tuple[float, ...]:
    if quantity.low is not None and quantity.high is not None:
        return (quantity.low, quantity.high)
    return () if value is None else (value,)


def _canonical(
    analyte: str,
    numbers: tuple[float, ...],
    unit: str | None,
    basis: str | None,
    kit: Kit,
    problem: str | None,
) -> tuple[float | tuple[float, float] | None, str | None]:
    """The canonical number or ends, and a problem where they are not believable."""
    row = MEASURABLE[analyte]
    if unit == "drops":
        per_drop = kit.per_drop or (1.0 if analyte in {"kh", "gh"} else None)
        if per_drop is None:
            return None, problem or doubts.WRONG_UNIT
        unit, numbers = None, tuple(number * per_drop for number in numbers)
    try:
        done = [to_canonical(analyte, number, unit, basis) for number in numbers]
    except CoreError:
        return None, problem or (doubts.IMPLAUSIBLE if unit == "SG" else doubts.WRONG_UNIT)
    if problem is None and not all(row.low <= number <= row.high for number in done):
        problem = doubts.IMPLAUSIBLE
    if not done:
        return None, problem
    return (done[0] if len(done) == 1 else (done[0], done[1])), problem
