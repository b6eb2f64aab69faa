"""One line of a water report: which of its numbers is the value, and in what unit.

Conversions are by atomic weights, as in `core.units`; published values beside them: 1 °dH is
0.178 mmol/L, 7.14 mg/L Ca or 4.33 mg/L Mg, and 21.8 mg/L HCO3 (Naturland Niederösterreich, Härte –
Einheiten und Umrechnungsfaktoren); 1 meq/L is 2.805 °dH (FAO glossary); KS4.3 in mmol/L is
multiplied by 2.8 (common practice of the trade).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from core.analytes import ANALYTES, plausible
from core.errors import CoreError
from core.message.fold import fold
from core.message.model import Basis, Qualifier
from core.message.report_amounts import Amount, Unclear, middle
from core.message.report_units import (
    AT_DEGREES,
    BICARBONATE,
    CALCIUM,
    CARBONATE,
    FIGURE,
    NITROGEN,
    RANGE,
    SPELT,
    UNIT,
)
from core.message.report_words import heading, headings, whole
from core.units import CA, CAO, MG, C, H, O, to_canonical

HCO3: Final = H + C + 3 * O
DH_PER_MEQ: Final = CAO / 20.0
"""Degrees in one milliequivalent a litre: 1 °dH is 10 mg/L CaO. [°dH L/meq]"""

CA_PER_DH: Final = 10.0 * CA / CAO
MG_PER_DH: Final = 10.0 * MG / CAO
"""Milligrams of calcium, of magnesium, in a degree. [mg/L]"""

MOST_ANSWERS: Final = 5
"""More numbers than this behind one name are a table that we do not know."""

FROM_20: Final = 1.116
"""Conductivity at 25 °C over that at 20 °C (EN 27888:1993, ISO 7888, table; from memory)."""

LIMITS: Final[Mapping[str, tuple[float, ...]]] = {
    "nitrate": (50.0,), "nitrite": (0.5, 0.1), "ammonium": (0.5,), "sodium": (200.0,),
    "chloride": (250.0,), "sulfate": (250.0,), "iron": (0.2, 200.0), "copper": (2.0, 2000.0),
    "conductivity": (2500.0, 2790.0), "ph": (6.5, 9.5),
}  # fmt: skip
"""Parametric values of Directive (EU) 2020/2184, annex I (from memory): a second number in a row
without headings that is one of these is the limit."""

ANALYTE: Final[Mapping[str, tuple[str, Basis | None]]] = {
    "nitrate_n": ("nitrate", "N"),
    "nitrite_n": ("nitrite", "N"),
    "ammonium": ("ammonia", "NH4"),
}


@dataclass(frozen=True, slots=True)
class _Figure:
    number: float
    sign: str
    kind: str | None
    dashed: bool


HARDNESSES: Final = frozenset({"gh", "kh", "alkalinity"})


def amount_of(
    name: str, text: str, columns: Sequence[str], answer: str | None
) -> Amount | Unclear | None:
    """What the text behind a name says; None where there is nothing to keep.

    Parameters
    ----------
    name : str
        Id of the name in ``reports.txt``.
    text : str
        What stands behind it.
    columns : sequence of str
        What the columns of numbers are, where the report has headings.
    answer : str or None
        What the keeper said of it: a unit, or `#1` for the second number.
    """
    plain = fold(text)
    at_20 = False
    if name != "temperature":
        at_20 = any(found["degrees"] == "20" for found in AT_DEGREES.finditer(plain))
        plain = AT_DEGREES.sub(" ", plain)
    unit = _unit(plain)
    if name == "temperature" and unit == "°fH":
        unit = "°F"
    figures = _figures(UNIT.sub(" ", plain))
    if not figures:
        return _not_found(name) if whole("none").search(plain) else None
    kept = _values(name, figures, columns)
    if kept is None and answer is not None and answer.startswith("#"):
        place = int(answer[1:]) if answer[1:].isdigit() else 0
        kept = [figures[min(place, len(figures) - 1)]]
    if kept is None and len(figures) > MOST_ANSWERS:
        return None
    if kept is None:
        options = [
            (f"#{place}", made)
            for place, figure in enumerate(figures)
            if isinstance(made := _made(name, [figure], unit, plain, at_20), Amount)
        ]
        return Unclear(name, "number", tuple(options)) if options else None
    if answer is not None and not answer.startswith("#"):
        unit = answer
    return _made(name, kept, unit, plain, at_20)


def from_ions(amounts: Mapping[str, Amount]) -> Amount | None:
    """GH that calcium and magnesium make up. [°dH]"""
    calcium, magnesium = (amounts.get(name) for name in ("calcium", "magnesium"))
    if calcium is None or magnesium is None:
        return None
    ca, mg = middle(calcium.canonical), middle(magnesium.canonical)
    if ca is None or mg is None:
        return None
    return Amount("gh", None, ca / CA_PER_DH + mg / MG_PER_DH, how="ions")


def _unit(plain: str) -> str | None:
    found = UNIT.search(plain)
    return None if found is None else SPELT[str(found.lastgroup)]


def _figures(plain: str) -> list[_Figure]:
    """The numbers of a text, each with the word before it that says what it is."""
    plain = RANGE.sub(lambda found: f"{found[1]} - {found[2]}", plain)
    out: list[_Figure] = []
    end = 0
    for found in FIGURE.finditer(plain):
        gap = plain[end : found.start()]
        said = [heading(match) for match in headings().finditer(gap)]
        dashed = bool(out) and gap.strip() == "-"
        kind = out[-1].kind if dashed else said[-1] if said else None
        sign = "<" if whole("less").search(gap) else found[1]
        out.append(_Figure(float(found[2].replace(",", ".")), sign, kind, dashed))
        end = found.end()
    return out


def _values(name: str, figures: list[_Figure], columns: Sequence[str]) -> list[_Figure] | None:
    """The figures that are the value, or the ends of its range; None where it is not clear."""
    if not any(figure.kind for figure in figures) and len(columns) == len(figures):
        figures = [replace(f, kind=kind) for f, kind in zip(figures, columns, strict=True)]
    kept = [figure for figure in figures if figure.kind != "limit"]
    if not kept:
        return []
    by_kind = {figure.kind: figure for figure in kept if figure.kind is not None}
    for kind in ("mean", "result"):
        if kind in by_kind and sum(figure.kind == kind for figure in kept) == 1:
            return [by_kind[kind]]
    if "low" in by_kind and "high" in by_kind:
        return [by_kind["low"], by_kind["high"]]
    if len(kept) == 1:
        return kept
    if len(kept) == 2 and kept[1].dashed:
        return kept
    limits = LIMITS.get(name, ())
    rest = [figure for figure in kept if figure.number not in limits]
    if len(rest) == 1 and len(kept) > 1:
        return rest
    if len(kept) == 3 and kept[0].number <= kept[1].number <= kept[2].number:
        return [kept[1]]  # least, mean and most
    return None


def _not_found(name: str) -> Amount | None:
    analyte, basis = ANALYTE.get(name, (name, None))
    if analyte not in ANALYTES or analyte in {"ph", "temperature", "conductivity", "gh", "kh"}:
        return None
    return Amount(analyte, None, None, qualifier="<", basis=basis)


def _made(
    name: str, figures: list[_Figure], unit: str | None, plain: str, at_20: bool
) -> Amount | Unclear | None:
    """The amount of these figures in a unit; what could be in several is unclear."""
    if not figures:
        return None
    units = [unit] if unit is not None else _likely(name, figures[0].number)
    made = [(each, _in_unit(name, figures, each, plain, at_20)) for each in units]
    options = [(str(each), amount) for each, amount in made if amount is not None]
    if len(options) > 1:
        return Unclear(name, "unit", tuple(options))
    return options[0][1] if options else None


def _likely(name: str, number: float) -> list[str | None]:
    """The units that a number without one may be in."""
    if name in HARDNESSES:
        if number <= 6.0:
            return ["mmol/L", "°dH"]
        return ["°dH", "°fH"] if number <= 35.0 else ["mg/L", "°fH"]
    if name == "acid_capacity":
        return ["mmol/L"]
    if name == "conductivity":
        return ["µS/cm"] if number >= 150.0 else ["µS/cm", "mS/m"]
    if name in {"iron", "copper"} and number > 5.0:
        return ["µg/L"]
    return [None if name in {"ph", "temperature"} else "mg/L"]


def _in_unit(
    name: str, figures: list[_Figure], unit: str | None, plain: str, at_20: bool
) -> Amount | None:
    if name in {"nitrate", "nitrite"} and NITROGEN.search(plain):
        name = f"{name}_n"
    analyte, basis = ANALYTE.get(name, (name, None))
    how = name if name in {"bicarbonate", "acid_capacity", "alkalinity"} else None
    analyte = "kh" if how is not None else analyte
    if analyte == "ammonia" and NITROGEN.search(plain):
        basis = "N"
    told = [figure.number for figure in figures]
    known = [_canonical(name, analyte, number, unit, plain, basis) for number in told]
    if any(number is None or not plausible(analyte, number) for number in known):
        return None
    warm = FROM_20 if at_20 and analyte == "conductivity" else 1.0
    numbers = [number * warm for number in known if number is not None]
    sign: Qualifier = "<" if figures[0].sign in {"<", "≤"} else "="
    sign = ">" if figures[0].sign in {">", "≥"} else sign
    if unit is not None and (unit == "mS/m" or (analyte == "gh" and CALCIUM.search(plain))):
        told, unit = list(numbers), ANALYTES[analyte].unit
    made = Amount(
        analyte, None, None, unit=unit, qualifier=sign, basis=basis, how=how, at_20=warm != 1.0
    )
    if len(numbers) == 2:
        return replace(made, canonical=(numbers[0], numbers[1]), low=told[0], high=told[1])
    return replace(made, canonical=numbers[0], value=told[0])


def _canonical(
    name: str, analyte: str, number: float, unit: str | None, plain: str, basis: Basis | None
) -> float | None:
    """A number in the analyte's canonical unit; None where the unit does not fit."""
    if name == "bicarbonate" or (name == "alkalinity" and BICARBONATE.search(plain)):
        if unit == "mg/L" and not CARBONATE.search(plain):
            return number / HCO3 * DH_PER_MEQ
        return number * DH_PER_MEQ if unit in {"mmol/L", "meq/L"} else _plain(analyte, number, unit)
    if name == "acid_capacity" and unit == "mg/L" and not CARBONATE.search(plain):
        return None
    if analyte == "gh" and unit == "mg/L" and CALCIUM.search(plain):
        return number / CA_PER_DH
    if unit == "mS/m":
        return number * 10.0 if analyte == "conductivity" else None
    return _plain(analyte, number, unit, "N" if basis == "N" else None)


def _plain(analyte: str, number: float, unit: str | None, basis: str | None = None) -> float | None:
    try:
        return to_canonical(analyte, number, unit, basis)
    except CoreError:
        return None
