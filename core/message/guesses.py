"""Doubts about a value, with what was probably meant."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from core.analytes import MEASURABLE
from core.errors import CoreError
from core.message import doubts, hearsay, waters
from core.message.candidates import Candidate
from core.message.model import Doubt, Value
from core.message.quantities import Quantity
from core.units import to_canonical

_NEVER_STORED = frozenset({doubts.CHANGE, doubts.WISH, doubts.OTHER_WATER, doubts.PAST})


_STORED_ON_YES = frozenset(
    {
        doubts.UNKNOWN_WORD, doubts.UNKNOWN_TANK, doubts.QUESTIONED, doubts.AMBIGUOUS_TANK,
        doubts.AMBIGUOUS_DATE, doubts.FUTURE, doubts.BAD_TIME, doubts.AMBIGUOUS_WORD,
        doubts.CONFLICT, doubts.UNKNOWN_UNIT, doubts.PRICE,
    }
)  # fmt: skip


def unclear_name(candidate: Candidate, source: str) -> Doubt:
    """Doubts of names that are no analyte of ours."""
    written = number_text(candidate.quantity)
    fragment = source[candidate.start : candidate.end]
    if candidate.problem is not None and candidate.analyte == "":
        choices = tuple(
            f"{choice} {written}".strip()
            for choice in candidate.choices
            if _fits(choice, candidate.quantity)
        )
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


def may_be_nitrate(candidate: Candidate, source: str) -> bool:
    """Whether ``na`` is typed in small letters for a number that a nitrate kit shows.

    A report writes the ion with its capital or its charge, or its unit behind it.
    """
    name = source[candidate.start : candidate.start + 3]
    typed = name[:2] == "na" and name[2:] not in {"+", "⁺"} and not name[2:].isalpha()
    bare = candidate.quantity.unit is None and candidate.problem is None
    value = candidate.quantity.value
    shown = value is not None and value <= _MOST_OF_A_KIT
    return candidate.analyte == "sodium" and typed and bare and shown


_MOST_OF_A_KIT: Final = 200.0
"""Where the scales of nitrate kits end. [mg/L]"""


def sodium_or_nitrate(candidate: Candidate, source: str) -> Doubt:
    """The doubt of a bare ``na 40``."""
    start, end = candidate.start, candidate.end
    written = number_text(candidate.quantity)
    choices = (f"nitrate {written}", f"sodium {written}")
    return Doubt(source[start:end], start, end, doubts.AMBIGUOUS_NAME, None, None, choices)


def _fits(choice: str, quantity: Quantity) -> bool:
    """Whether the number is one that the analyte offered can have."""
    analyte = choice.lower().replace(" ", "_")
    numbers = (quantity.value, quantity.low, quantity.high)
    return all(believable(analyte, n, quantity.unit) for n in numbers if n is not None)


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


LOWEST_STEPS: Final = {
    "ammonia": 0.25,
    "nitrite": 0.25,
    "nitrate": 5.0,
    "phosphate": 0.25,
    "copper": 0.25,
    "iron": 0.1,
}
"""The first step above 0 that most colour charts show; common practice, no source. [mg/L]"""


def doubt(candidate: Candidate, made: Value, problem: str, source: str) -> Doubt:
    """The doubt about a value, with what would be stored if the keeper says yes to it."""
    start, end = candidate.start, candidate.end
    fragment = source[start:end]
    if problem in _NEVER_STORED:
        return Doubt(
            fragment, start, end, problem, _other_meaning(candidate, made, problem, source)
        )
    if problem == doubts.UNKNOWN_WORD and (why := hearsay.reason(source, start, end)):
        return Doubt(fragment, start, end, why)
    if problem == doubts.TRACE:
        step = LOWEST_STEPS.get(candidate.analyte)
        told = None if step is None else f"{_word(candidate)} {step:g}"
        return Doubt(fragment, start, end, problem, told)
    if problem in _EITHER and (both := _either(candidate, made, source)) is not None:
        return both
    believable = _sound(made)
    unsound = problem in _STORED_ON_YES and made.canonical is not None and not believable
    guessed = doubts.IMPLAUSIBLE if unsound else problem
    choices = candidate.choices or _guesses(candidate, guessed)
    if problem == doubts.BAD_TIME and len(re.findall(r"\d+", fragment)) > 1:
        # no3 30 Feb 12: which of the two was the value?
        return Doubt(fragment, start, end, problem)
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


_EITHER: Final = frozenset({doubts.UNKNOWN_WORD, doubts.STRAY_NUMBER})
_POISONS: Final = frozenset(
    {"ammonia", "nitrite", "nitrate", "chlorine", "total_chlorine", "copper"}
)
"""Of two numbers that one may be, the higher counts until it is told which."""

_OR: Final = re.compile(
    r"(?<![\d.,])(?P<first>\d{1,6}(?:[.,]\d{1,4})?)\s{0,3}(?P<unit>ppm|mg/?l|mg)?[\s,/]{0,3}"
    r"(?:(?:or|maybe|perhaps|possibly|oder|vielleicht|ou|peut-être|o|quizás|quizá|talvez|forse|of"
    r"|misschien|lub|albo|może|eller|kanske|even|more like|could be"
    r"|it could be|might be|was it|is it|its)[\s,]+){1,4}"
    r"(?P<other>\d+(?:[.,]\d+)?)(?![\d.,]*\s*(?:x\b|times|days?|hours?|weeks?|min|fish|l\b|%))",
    re.IGNORECASE,
)
REACH: Final = 70
"""Characters behind a name within which both numbers stand."""


def _either(candidate: Candidate, made: Value, source: str) -> Doubt | None:
    """One value of which two numbers are told: `0.25 or maybe 2.5`; None where it is none of that.

    Each is offered. What stands in the doubt until it is answered is the worse of a poison.
    """
    start = candidate.start
    found = _OR.search(source, start, start + REACH)
    if found is None or made.value is None or not isinstance(made.canonical, float):
        return None
    first, other = (float(found[name].replace(",", ".")) for name in ("first", "other"))
    if first != made.value or other == first or candidate.analyte == "temperature":
        return None
    if candidate.end > found.end("other") and re.search(r"\d", source[found.end() : candidate.end]):
        return None
    factor = made.canonical / first if first else 1.0
    second = replace(made, value=other, canonical=other * factor)
    if not (_sound(made) and _sound(second)):
        return None
    end = max(found.end("other"), candidate.end)
    unit = f" {made.unit}" if made.unit else ""
    texts = tuple(f"{_word(candidate)} {number:.6g}{unit}" for number in (first, other))
    is_second = candidate.analyte in _POISONS and other > first
    held, text = (second, texts[1]) if is_second else (made, texts[0])
    return Doubt(source[start:end], start, end, doubts.CONFLICT, text, held, texts)


def without_parts(found: Sequence[Doubt]) -> list[Doubt]:
    """Doubts without those that are a part of a value that may be either of two numbers."""
    either = [d for d in found if d.reason == doubts.CONFLICT and len(d.choices) > 1]
    return [
        d
        for d in found
        if d in either or not any(e.start <= d.start and d.end <= e.end for e in either)
    ]


def _sound(made: Value) -> bool:
    """Whether the value could be stored as it stands."""
    row = MEASURABLE[made.analyte]
    ends = made.canonical if isinstance(made.canonical, tuple) else (made.canonical,)
    return all(end is not None and row.low <= end <= row.high for end in ends)


_SHOWN = {"ph": "pH", "gh": "GH", "kh": "KH", "co2": "CO2", "tds": "TDS"}


def name_for(analyte: str) -> str:
    """How a suggestion writes an analyte's name, so that it is read back."""
    return _SHOWN.get(analyte, analyte.replace("_", " "))


def _word(candidate: Candidate) -> str:
    basis = candidate.basis
    word = name_for(candidate.analyte)
    return f"{word}-{basis}" if basis in {"N", "P"} else word


def _other_meaning(candidate: Candidate, made: Value, problem: str, source: str) -> str | None:
    """The line that does what was probably meant, where there is one."""
    number = made.value
    if problem == doubts.CHANGE and made.high is not None:
        unit = f" {made.unit}" if made.unit else ""
        return f"{_word(candidate)} {made.high:.6g}{unit}"
    if number is None:
        return None
    if problem == doubts.WISH and candidate.analyte in _SET:
        return _asked_for(candidate, number)
    if problem == doubts.WISH and candidate.analyte == "ph" and candidate.means:
        return f"get ph to {number:.6g} with {candidate.means}"
    if problem == doubts.OTHER_WATER:
        named = waters.mentioned(source[: candidate.start])
        if not named:
            return None  # the other tank's, a friend's: no source of ours
        return f"/source {named[-1][2]} {candidate.analyte} {number:.6g}"
    return None


_SET = frozenset(
    {"kh", "gh", "calcium", "magnesium", "potassium", "nitrate", "phosphate", "iron", "salinity"}
)
"""Analytes that a salt raises, so that a wish for them can be asked for."""


def _asked_for(candidate: Candidate, number: float) -> str | None:
    """The question that a wish is, in the unit that it was told in."""
    quantity = candidate.quantity
    short = candidate.analyte in {"kh", "gh"}
    unit = "" if quantity.unit in {None, "°"} else f" {quantity.unit}"
    said = f"{candidate.analyte if short else _word(candidate)}"
    if quantity.qualifier == "<":
        return f"get {said} under {number:.6g}{unit}"
    by = f" with {candidate.means}" if candidate.means else ""
    return f"dose {said} {number:.6g}{unit}{by}" if quantity.qualifier in {"=", "~"} else None


SLIPPED: Final = 1.05
"""From here on no water is so dense: a gravity has lost a digit (1.25 for 1.025)."""


def _guesses(candidate: Candidate, problem: str) -> tuple[str, ...]:
    """Texts that would be understood instead, the likeliest first."""
    analyte, quantity = candidate.analyte, candidate.quantity
    number = quantity.value
    word = _word(candidate)
    if problem == doubts.AMBIGUOUS_UNIT and number is not None and analyte == "salinity":
        gravity = f"{number:.3f}" if number < SLIPPED else f"{1 + (number - 1) / 10:.6g}"
        return (f"{word} {gravity} SG", f"{word} {number:.6g} g/kg")
    if problem == doubts.AMBIGUOUS_UNIT and number is not None:
        return tuple(
            f"{word} {number:.6g} {one}" for one in ("°C", "°F") if believable(analyte, number, one)
        )
    if problem == doubts.BAD_NUMBER and quantity.grouped is not None and number is not None:
        both = (number, quantity.grouped)
        unit = f" {quantity.unit}" if quantity.unit else ""
        return tuple(
            f"{word} {one:.6g}{unit}" for one in both if believable(analyte, one, quantity.unit)
        )
    other = quantity.of  # kh 5 dgh: the name or the unit is the slip
    if problem == doubts.WRONG_UNIT and {analyte, other} == {"kh", "gh"} and number is not None:
        return tuple(f"{name_for(one)} {number:.6g} °dH" for one in (analyte, other) if one)
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
    ppm = analyte in {"kh", "gh"} and unit is None and believable(analyte, number, "ppm")
    # A strip's steps are round; a drop kit's lost point would leave its half degrees.
    of_strip = ppm and (number >= 100 or number % 10 == 0)
    if of_strip:
        out.append(f"{word} {number:.6g} ppm")
    if analyte == "salinity" and unit is None and 990 <= number < 1000 * SLIPPED:
        return (f"{word} {number / 1000:.4g} SG",)  # nobody writes 10.25 so
    if analyte == "conductivity" and unit is None:
        out.append(f"{word} {number:.6g} mS/cm")
    said = f" {unit}" if unit else ""
    for divisor in (10.0, 100.0, 1000.0):
        warm = analyte == "temperature" and unit is None and number / divisor > 50.0
        one = "°F" if warm else unit
        if number == int(number) and believable(analyte, number / divisor, one):
            out.append(f"{word} {number / divisor:.6g}{' °F' if warm else said}")
            break
    if ppm and not of_strip:
        out.append(f"{word} {number:.6g} ppm")
    return tuple(out)


def believable(analyte: str, number: float, unit: str | None) -> bool:
    """Whether a number in a unit is one that the analyte can have."""
    row = MEASURABLE[analyte]
    try:
        canonical = to_canonical(analyte, number, None if unit == "drops" else unit)
    except CoreError:
        return False
    return row.low <= canonical <= row.high


def as_one(wishes: Sequence[str]) -> list[str]:
    """Several wishes for doses as the one line that plans them together; other texts as they are.

    Examples
    --------
    >>> as_one(["dose kh 3", "dose gh 6"]), as_one(["kh 3", "dose gh 6"])
    (['dose kh 3 gh 6'], ['kh 3', 'dose gh 6'])
    """
    doses = [wish.removeprefix(_DOSE) for wish in wishes if wish.startswith(_DOSE)]
    if len(doses) < 2 or len(doses) < len(wishes):
        return list(wishes)
    return [_DOSE + " ".join(doses)]


_DOSE: Final = "dose "
