"""A reading written in any unit, order, separator and language is read back the same."""

from __future__ import annotations

from importlib.resources import files

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from core.analytes import ANALYTES
from core.message import lexicon, parse
from core.units import FACTORS, from_canonical, to_canonical
from tests.messages import corpus

LANGUAGES = [language for language in lexicon.LANGUAGES if language != "common"]
SAID = {
    "°dH": ["°dH", "dH", "°dh"],
    "ppm": ["ppm", "PPM"],
    "mg/L": ["mg/l", "mg/L"],
    "µg/L": ["µg/l", "ug/L", "μg/l"],
    "°fH": ["°fH", "°f"],  # a bare "fh" is one key from "dh": asked about
    "°e": ["°e", "clark"],
    "gpg": ["gpg"],
    "meq/L": ["meq/l", "mval/l", "meq"],
    "mmol/L": ["mmol/l"],
    "°C": ["°C", "C", "ºC"],
    "°F": ["°F", "F"],
    "SG": ["SG"],
    "ppt": ["ppt", "‰"],
    "PSU": ["psu"],
    "g/kg": ["g/kg"],
    "µS/cm": ["µS/cm", "us/cm", "µS"],
    "mS/cm": ["mS/cm", "mS"],
    "mV": ["mV"],
}
"""Spellings of our units."""
BETWEEN_NAME_AND_NUMBER = (" ", ": ", ":", "=", " = ", "  ")
BETWEEN_PAIRS = (" ", ", ", "; ", " | ", "\n", " / ", ",\n", " - ")


_ASKED = {"k", "cl", "k+", "no3-", "no2-"}
"""Names that are asked about: one letter, two things, or a hyphen that may have lost its -n."""


def names() -> dict[tuple[str, str], list[tuple[str, str | None]]]:
    """(language, analyte) → (word, basis): the language's own words and the symbols.

    Words that mean something else in another language are left out: alone they are asked about.
    """
    found: dict[tuple[str, str], list[tuple[str, str | None]]] = {}
    several = lexicon.lexicon().several
    for source in ("common", *LANGUAGES):
        text = (files("core.message") / "words" / f"{source}.txt").read_text(encoding="utf-8")
        for category, meaning, word, _ in lexicon.read(text, source):
            plain = " ".join(lexicon.pieces(lexicon.fold(word)))
            if category != "analyte" or plain in several or word in _ASKED:
                continue
            analyte, _, basis = meaning.partition("@")
            for language in LANGUAGES if source == "common" else (source,):
                found.setdefault((language, analyte), []).append((word, basis or None))
    return found


NAMES = names()


def units_of(analyte: str) -> list[str | None]:
    """The units that the analyte may be written in; None for none."""
    found: list[str | None] = [unit for other, unit in FACTORS if other == analyte and unit in SAID]
    if ANALYTES[analyte].high > 20:
        found = [unit for unit in found if unit != "µg/L"]
    if analyte == "temperature":
        found.append("°F")
    if analyte == "salinity":
        found.append("SG")
    return [*found, None]


@st.composite
def reading(
    draw: st.DrawFn, language: str, analyte: str
) -> tuple[str, str, str, float, str | None]:
    """Name, number, unit as written; the canonical value; the basis that the name states."""
    row = ANALYTES[analyte]
    name, basis = draw(st.sampled_from(NAMES[language, analyte]))
    unit = draw(st.sampled_from(units_of(analyte)))
    decimals = 4 if unit == "SG" else draw(st.integers(0, 2))
    low, high = max(row.low, 0.1), min(row.high, 37.0 if analyte == "temperature" else row.high)
    if analyte == "salinity":
        low, high = 2.0, 45.0
    value = draw(st.floats(low, high))
    number = f"{from_canonical(analyte, value, unit, basis):.{decimals}f}"
    if draw(st.booleans()):
        number = number.replace(".", ",")
    written = float(number.replace(",", "."))
    canonical = to_canonical(analyte, written, unit, basis)
    assume(row.low <= canonical <= row.high)
    assume(not (analyte == "temperature" and unit is None and written >= 38))
    assume(not (analyte == "salinity" and unit is None and written < 1.05))
    assume(len(number.replace(",", ".")) <= 12)
    said = "" if unit is None else draw(st.sampled_from(SAID[unit]))
    return name, number, said, canonical, basis


@st.composite
def message(draw: st.DrawFn) -> tuple[str, dict[str, tuple[float, str | None]]]:
    language = draw(st.sampled_from(LANGUAGES))
    known = sorted(analyte for lang, analyte in NAMES if lang == language and analyte in ANALYTES)
    chosen = draw(st.lists(st.sampled_from(known), min_size=1, max_size=5, unique=True))
    number_first = draw(st.booleans())
    gap = draw(st.sampled_from(BETWEEN_NAME_AND_NUMBER))
    parts, wanted = [], {}
    for analyte in chosen:
        name, number, unit, canonical, basis = draw(reading(language, analyte))
        assume(not (number_first and name == "mg"))  # "1 mg" is a milligram: asked about
        space = draw(st.sampled_from(["", " "]))
        amount = f"{number}{space}{unit}" if unit else number
        parts.append(f"{amount} {name}" if number_first else f"{name}{gap}{amount}")
        wanted[analyte] = (canonical, basis)
    text = draw(st.sampled_from(BETWEEN_PAIRS)).join(parts)
    if draw(st.booleans()):
        text = text.upper() if draw(st.booleans()) else text.capitalize()
    return text, wanted


@settings(max_examples=400)
@given(message())
def test_what_is_written_is_read_back(
    case: tuple[str, dict[str, tuple[float, str | None]]],
) -> None:
    text, wanted = case
    parsed = parse(text, corpus.context())
    found = {value.analyte: (value.canonical, value.basis) for value in parsed.values}
    assert found.keys() == wanted.keys(), parsed.doubts
    for analyte, (canonical, basis) in wanted.items():
        assert found[analyte] == (pytest.approx(canonical, rel=1e-9), basis)
    assert parsed.doubts == ()
