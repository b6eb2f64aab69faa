"""A name and a quantity made one value, or the doubt that keeps them apart."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from core.analytes import ANALYTES
from core.errors import CoreError
from core.message import doubts
from core.message.model import Basis, Context, Doubt, Kit, Qualifier, Value
from core.message.quantities import Quantity
from core.units import FACTORS, to_canonical

_COARSE = 1.0
"""From this kit resolution on, a mark before three digits divides thousands."""
_FINE = 0.05
_NO_KIT = Kit()


@dataclass(slots=True)
class Candidate:
    """A value on its way: bound, but not yet judged."""

    analyte: str
    basis: str | None
    quantity: Quantity
    start: int
    end: int
    name: str = ""
    problem: str | None = None
    choices: tuple[str, ...] = ()
    at: datetime | None = None
    tank: str | None = None
    own_time: bool = False


def settle(candidate: Candidate, context: Context, source: str) -> Value | Doubt:
    """The value that a candidate is, or the doubt about it.

    The order is: what was said about the number (change, wish, another water), the number, the
    unit, the span.
    """
    analyte = candidate.analyte
    if analyte not in ANALYTES:
        return _unclear_name(candidate, source)
    quantity = candidate.quantity
    unit, problem = _unit(analyte, quantity, context)
    hidden = quantity.problem if quantity.problem == doubts.INVISIBLE else None
    said = hidden or _sign(candidate, quantity) or candidate.problem or quantity.problem
    problem = said or problem
    value, problem = _thousands(analyte, quantity, unit, problem)
    numbers = _numbers(quantity, value)
    kit = _kit(context, candidate.tank, analyte)
    basis = quantity.basis or candidate.basis or kit.basis
    canonical, problem = _canonical(analyte, numbers, unit, basis, kit, problem)
    made = _value(candidate, value, unit, basis, canonical)
    if problem is None:
        return made
    return _doubt(candidate, made, problem, source)


def _value(
    candidate: Candidate,
    value: float | None,
    unit: str | None,
    basis: str | None,
    canonical: float | tuple[float, float] | None,
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
        ANALYTES[candidate.analyte].unit,
        based,
        candidate.tank,
        candidate.at,
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


def _unit(analyte: str, quantity: Quantity, context: Context) -> tuple[str | None, str | None]:
    """Our spelling of the unit meant, and the problem with it."""
    unit = quantity.unit
    if unit is None or unit == "°":
        return _bare(analyte, quantity, context)
    if quantity.of in {"kh", "gh"} and quantity.of != analyte:
        return unit, doubts.WRONG_UNIT
    if analyte in {"kh", "gh"}:
        if unit == "°F" and quantity.unit_text in {"°f", "° f"}:
            unit = "°fH"
        if unit == "drops":
            return unit, None
    elif unit == "drops":
        return unit, None
    if unit in {"µg/L", "ppb", "µmol/L"} and ANALYTES[analyte].high > 20.0:
        return unit, doubts.WRONG_UNIT  # nobody counts calcium in millionths: a slip
    if unit == "mg" and (analyte, "mg/L") in FACTORS:
        unit = "mg/L"
    if (analyte, unit) in FACTORS or (analyte, unit) in {
        ("temperature", "°F"),
        ("salinity", "SG"),
        ("salinity", "g/L"),
    }:
        return unit, None
    return unit, doubts.WRONG_UNIT


def _bare(analyte: str, quantity: Quantity, context: Context) -> tuple[str | None, str | None]:
    """No unit, or a lone degree sign."""
    number = quantity.value if quantity.value is not None else quantity.high
    if analyte == "temperature":
        return _temperature(number, context, said=quantity.unit is not None)
    if quantity.unit == "°":
        return ("°dH", None) if analyte in {"kh", "gh"} else ("°", doubts.WRONG_UNIT)
    if analyte == "salinity" and number is not None and 0.99 <= number < 1.05:
        low = quantity.low if quantity.low is not None else number
        if 0.99 <= low < 1.05:
            return "SG", None
    return None, None


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
    row = ANALYTES[analyte]
    small, large = (_believable(analyte, number, unit) for number in (value, grouped))
    if large and not small:
        return grouped, None
    if small and not large and (row.resolution <= _FINE or unit in {"SG", "mS/cm"}):
        return value, None
    if large and row.resolution >= _COARSE and quantity.mark != "." and row.high >= 400:
        return grouped, None
    if small and row.resolution <= _FINE and quantity.mark == ".":
        return value, None
    return value, doubts.BAD_NUMBER if large else doubts.IMPLAUSIBLE


def _believable(analyte: str, number: float, unit: str | None) -> bool:
    row = ANALYTES[analyte]
    try:
        canonical = to_canonical(analyte, number, None if unit == "drops" else unit)
    except CoreError:
        return False
    return row.low <= canonical <= row.high


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
    row = ANALYTES[analyte]
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


# --- doubts -----------------------------------------------------------------------------------


def _unclear_name(candidate: Candidate, source: str) -> Doubt:
    """Doubts of names that are no analyte of ours."""
    written = number_text(candidate.quantity)
    fragment = source[candidate.start : candidate.end]
    if candidate.problem is not None and candidate.analyte == "":
        choices = tuple(f"{choice} {written}".strip() for choice in candidate.choices)
        only = choices[0] if len(choices) == 1 else None
        return Doubt(
            fragment,
            candidate.start,
            candidate.end,
            candidate.problem,
            only,
            None,
            () if only else choices,
        )
    if candidate.analyte == "free_ammonia":
        return Doubt(
            fragment, candidate.start, candidate.end, doubts.FREE_AMMONIA, f"ammonia {written}"
        )
    choices = (f"chlorine {written}", f"chloride {written}")
    return Doubt(
        fragment, candidate.start, candidate.end, doubts.AMBIGUOUS_NAME, None, None, choices
    )


def number_text(quantity: Quantity) -> str:
    """A quantity written so that it is read back the same."""
    if quantity.low is not None and quantity.high is not None:
        text = f"{quantity.low:.6g}-{quantity.high:.6g}"
    elif quantity.value is not None:
        text = f"{quantity.value:.6g}"
    else:
        return "nd" if quantity.qualifier == "<" else ""
    prefix = "" if quantity.qualifier == "=" else quantity.qualifier
    unit = f" {quantity.unit}" if quantity.unit else ""
    return f"{prefix}{text}{unit}"


def _doubt(candidate: Candidate, made: Value, problem: str, source: str) -> Doubt:
    start, end = candidate.start, candidate.end
    fragment = source[start:end]
    if problem in _NEVER_STORED:
        return Doubt(fragment, start, end, problem, _other_meaning(candidate, made, problem))
    believable = _sound(made)
    unsound = problem in _STORED_ON_YES and made.canonical is not None and not believable
    guessed = doubts.IMPLAUSIBLE if unsound else problem
    choices = candidate.choices or _guesses(candidate, made, guessed)
    suggestion = choices[0] if choices else None
    sure = suggestion is None and believable and problem in _STORED_ON_YES
    if sure:
        suggestion = f"{_word(candidate)} {number_text(candidate.quantity)}"
    return Doubt(
        fragment,
        start,
        end,
        problem,
        suggestion,
        made if sure else None,
        choices if len(choices) > 1 else (),
    )


def _sound(made: Value) -> bool:
    """Whether the value could be stored as it stands."""
    row = ANALYTES[made.analyte]
    ends = made.canonical if isinstance(made.canonical, tuple) else (made.canonical,)
    return all(end is not None and row.low <= end <= row.high for end in ends)


_NEVER_STORED = frozenset({doubts.CHANGE, doubts.WISH, doubts.OTHER_WATER, doubts.PAST})
_STORED_ON_YES = frozenset(
    {
        doubts.UNKNOWN_WORD, doubts.UNKNOWN_TANK, doubts.QUESTIONED, doubts.AMBIGUOUS_TANK,
        doubts.AMBIGUOUS_DATE, doubts.FUTURE, doubts.BAD_TIME, doubts.AMBIGUOUS_WORD,
        doubts.CONFLICT, doubts.UNKNOWN_UNIT,
    }
)  # fmt: skip


def _word(candidate: Candidate) -> str:
    basis = candidate.basis
    word = {"ph": "pH", "gh": "GH", "kh": "KH", "co2": "CO2", "tds": "TDS"}.get(
        candidate.analyte, candidate.analyte.replace("_", " ")
    )
    return f"{word}-{basis}" if basis in {"N", "P"} else word


def _other_meaning(candidate: Candidate, made: Value, problem: str) -> str | None:
    """The line that does what was probably meant, where there is one."""
    number = made.value
    if problem == doubts.CHANGE and made.high is not None:
        unit = f" {made.unit}" if made.unit else ""
        return f"{_word(candidate)} {made.high:.6g}{unit}"
    if number is None:
        return None
    if problem == doubts.WISH and candidate.analyte in {"kh", "gh"}:
        return f"dose {candidate.analyte} {number:.6g}"
    if problem == doubts.OTHER_WATER:
        return f"/source tap {candidate.analyte} {number:.6g}"
    return None


def _guesses(candidate: Candidate, made: Value, problem: str) -> tuple[str, ...]:
    """Texts that would be understood instead, the likeliest first."""
    analyte, quantity = candidate.analyte, candidate.quantity
    number = quantity.value
    word = _word(candidate)
    if problem == doubts.AMBIGUOUS_UNIT and number is not None:
        return tuple(
            f"{word} {number:.6g} {one}"
            for one in ("°C", "°F")
            if _believable(analyte, number, one)
        )
    if problem == doubts.BAD_NUMBER and quantity.grouped is not None and number is not None:
        both = (number, quantity.grouped)
        unit = f" {quantity.unit}" if quantity.unit else ""
        return tuple(
            f"{word} {one:.6g}{unit}" for one in both if _believable(analyte, one, quantity.unit)
        )
    if quantity.mark == "|" and number is not None:
        return (f"{word} {number_text(quantity)}",)
    if problem == doubts.IMPLAUSIBLE and number is not None:
        return _plausible_guesses(analyte, word, number, quantity.unit)
    if problem == doubts.NEGATIVE and number is not None:
        return (f"{word} {number_text(quantity)}",)
    return ()


def _plausible_guesses(analyte: str, word: str, number: float, unit: str | None) -> tuple[str, ...]:
    """A lost point, a unit left out: what the number would be believable as."""
    out = []
    ppm = analyte in {"kh", "gh"} and unit is None and _believable(analyte, number, "ppm")
    if ppm and number >= 100:
        out.append(f"{word} {number:.6g} ppm")
    if analyte == "conductivity" and unit is None:
        out.append(f"{word} {number:.6g} mS/cm")
    said = f" {unit}" if unit else ""
    for divisor in (10.0, 100.0, 1000.0):
        if number == int(number) and _believable(analyte, number / divisor, unit):
            out.append(f"{word} {number / divisor:.6g}{said}")
            break
    if ppm and number < 100:
        out.append(f"{word} {number:.6g} ppm")
    return tuple(out)
