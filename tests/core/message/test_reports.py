"""Water reports as suppliers write them: names, units, limits, ranges, columns, what is unclear."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.analytes import ANALYTES
from core.message.report_values import CA_PER_DH, DH_PER_MEQ, HCO3, MG_PER_DH
from core.message.reports import looks_like_one, read, title

GERMAN = """Trinkwasseranalyse 2025
Probenahme 12.03.2025
Parameter    Einheit   Grenzwert   Messwert
pH-Wert (20 °C)   -   6,5 - 9,5   7,62
Leitfähigkeit bei 25 °C  µS/cm  2790  634
Säurekapazität bis pH 4,3  mmol/l  -  4,82
Gesamthärte  °dH  -  15,9
Calcium  mg/l  -  88,3
Magnesium  mg/l  -  15,4
Nitrat  mg/l  50  14,6
Nitrit  mg/l  0,5  <0,02
Blei  mg/l  0,01  <0,001
Uran µg/l 10 0,8"""

ENGLISH = """Parameter  Min  Mean  Max  PCV
Hardness (mg/l CaCO3) 250 268 281
Alkalinity as CaCO3 mg/l 190 201 214
Nitrate mg/l NO3 21.0 25.1 30.4 50
Iron µg Fe/l <5 12.1 44 200
E. coli /100ml 0 0 0 0"""


def held(text: str) -> dict[str, float | tuple[float, float] | None]:
    return {amount.analyte: amount.canonical for amount in read(text).amounts}


def test_factors_are_the_published_ones() -> None:
    """1 °dH: 7.14 mg/L Ca, 4.33 Mg, 21.8 HCO3 (Naturland Niederösterreich, conversion page; B);
    1 meq/L: 2.805 °dH (FAO glossary as copied; B)."""
    assert pytest.approx(7.14, abs=0.01) == CA_PER_DH
    assert pytest.approx(4.33, abs=0.01) == MG_PER_DH
    assert pytest.approx(21.8, abs=0.05) == HCO3 / DH_PER_MEQ
    assert pytest.approx(2.805, abs=0.002) == DH_PER_MEQ


LINES = [
    # line, analyte, canonical, why
    ("Total hardness 14.2 °dH", "gh", 14.2, "as it is"),
    ("Gesamthärte (Summe Erdalkalien) 2,53 mmol/l", "gh", 2.53 * 5.608, "1 mmol/L is 5.608 °dH"),
    ("Dureté totale 28,4 °f", "gh", 28.4 / 1.7848, "French degrees"),
    ("Hardness 110 mg/l as Ca", "gh", 110 / 7.147, "counted as calcium"),
    ("Hardness 268 mg/l CaCO3", "gh", 268 / 17.848, "counted as carbonate"),
    ("Hydrogencarbonate 240 mg/l", "kh", 240 / 21.76, "21.76 mg/L a degree"),
    ("Bicarbonatos 240 mg/l", "kh", 240 / 21.76, "Spanish"),
    ("Wodorowęglany 240 mg/l", "kh", 240 / 21.76, "Polish"),
    ("Säurekapazität KS4,3 4,1 mmol/l", "kh", 4.1 * 2.8042, "2.8 °dH a millimole"),
    ("TAC 22,5 °f", "kh", 22.5 / 1.7848, "French alkalinity"),
    ("Alkalinity 150 mg/l", "kh", 150 / 17.848, "as carbonate where nothing is said"),
    ("Nitrate 8.5 mg/l (limit 50)", "nitrate", 8.5, "the limit is no value"),
    ("Nitrat Grenzwert 50 mg/l 14,6 mg/l", "nitrate", 14.6, "the limit may come first"),
    ("Nitrat mg/l 50 14,6", "nitrate", 14.6, "50 is the limit of the directive"),
    ("Nitrate as N 5 mg/l", "nitrate", 5 * 4.4266, "nitrogen"),
    ("pH value 7.6", "ph", 7.6, "no unit"),
    ("pH-Wert bei 20 °C 7,62", "ph", 7.62, "degrees are no pH"),
    ("Conductivity 512 µS/cm at 25 °C", "conductivity", 512.0, "at 25 °C as we keep it"),
    ("Leitfähigkeit 51,2 mS/m", "conductivity", 512.0, "millisiemens a metre"),
    ("Iron 12.1 µg/l", "iron", 0.0121, "micrograms"),
    ("Chloride 20 - 36 mg/l", "chloride", (20.0, 36.0), "a range"),
    ("Sulfate min 30 mean 44 max 61 mg/l", "sulfate", 44.0, "the mean of three"),
    ("Sulfat unter 10 mg/l", "sulfate", 10.0, "less than, in words"),
    ("Sodium 1,250 mg/l; Nitrate 8.5 mg/l", "sodium", 1250.0, "a comma for thousands"),
    ("Natrium 1,250 mg/l; Nitrat 8,5 mg/l", "sodium", 1.25, "a decimal comma"),
    ("Natrium\nmg/l\n12,1", "sodium", 12.1, "a value on a line below"),
]


@pytest.mark.parametrize(("line", "analyte", "canonical", "why"), LINES, ids=[x[3] for x in LINES])
def test_a_line_is_read(
    line: str, analyte: str, canonical: float | tuple[float, float], why: str
) -> None:
    assert held(line)[analyte] == pytest.approx(canonical, rel=2e-3), why


def test_conductivity_at_20_degrees_is_made_one_at_25() -> None:
    """Times 1.116 (EN 27888:1993, table; from memory)."""
    (amount,) = read("conductivity 512 µS/cm at 20 °C").amounts
    assert amount.canonical == pytest.approx(571.4, abs=0.1)
    assert amount.at_20


def test_what_is_under_the_kits_sight_is_a_limit() -> None:
    (nitrite,) = read("Nitrit < 0,02 mg/l").amounts
    assert (nitrite.qualifier, nitrite.canonical) == ("<", 0.02)
    (none,) = read("Nitrit nicht nachweisbar").amounts
    assert (none.qualifier, none.canonical) == ("<", None)


def test_a_table_with_headings() -> None:
    report = read(GERMAN)
    found = {amount.analyte: amount.value for amount in report.amounts}
    assert found == {
        "ph": 7.62, "conductivity": 634.0, "kh": 4.82, "gh": 15.9, "calcium": 88.3,
        "magnesium": 15.4, "nitrate": 14.6, "nitrite": 0.02,
    }  # fmt: skip
    assert report.passed == ("Blei", "Uran")
    assert report.sampled == date(2025, 3, 12)
    assert not report.unclear


def test_least_mean_and_most() -> None:
    report = read(ENGLISH)
    found = {amount.analyte: amount.value for amount in report.amounts}
    assert found == {"gh": 268.0, "kh": 201.0, "nitrate": 25.1, "iron": 12.1}
    assert report.passed == ("E. coli",)


def test_one_line_holds_a_whole_report() -> None:
    text = "Total hardness 14.2 °dH / Calcium 82 mg/L / Lead 0.001 mg/l; pH 7.6"
    assert held(text) == {"gh": 14.2, "calcium": 82.0, "ph": 7.6}
    assert read(text).passed == ("Lead",)


def test_hardness_follows_from_calcium_and_magnesium() -> None:
    """82 / 7.147 + 12 / 4.334 = 14.24 °dH."""
    assert held("Calcium 82 mg/l\nMagnesium 12 mg/l")["gh"] == pytest.approx(14.24, abs=0.01)
    report = read("Total hardness 8 °dH\nCalcium 82 mg/l\nMagnesium 12 mg/l")
    assert held("Total hardness 8 °dH\nCalcium 82 mg/l\nMagnesium 12 mg/l")["gh"] == 8.0
    assert [(said.analyte, said.canonical) for said, _ in report.conflicts] == [("gh", 8.0)]


def test_a_hardness_without_a_unit_is_asked_unless_the_ions_tell() -> None:
    (unclear,) = read("hardness 2.5").unclear
    assert [answer for answer, _ in unclear.options] == ["mmol/L", "°dH"]
    answered = read("hardness 2.5", {"gh": "mmol/L"})
    assert not answered.unclear
    assert answered.amounts[0].canonical == pytest.approx(14.02, abs=0.01)
    assert held("hardness 2.5\nCalcium 82\nMagnesium 12")["gh"] == pytest.approx(14.02, abs=0.01)


def test_two_numbers_without_headings_are_asked() -> None:
    (unclear,) = read("Nitrat 8 12 mg/l").unclear
    assert [amount.value for _, amount in unclear.options] == [8.0, 12.0]
    (picked,) = read("Nitrat 8 12 mg/l", {"nitrate": "#1"}).amounts
    assert picked.value == 12.0


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("tap water report: pH 7.6", ("tap", "pH 7.6")),
        ("tap winter water report:\nph 7", ("tap winter", "ph 7")),
        ("Trinkwasseranalyse:\nNitrat 8 mg/l", ("tap", "Nitrat 8 mg/l")),
        ("well water analysis: ph 7", ("well", "ph 7")),
        ("what is in my water report?", None),
        ("water analysis: ph 7 kh 4", None),
    ],
)
def test_a_report_is_announced(text: str, found: tuple[str, str] | None) -> None:
    assert title(text) == found


def test_a_keepers_own_readings_are_no_report() -> None:
    assert not looks_like_one("ph 7.6 kh 8 gh 12 no3 10 temp 12")
    assert looks_like_one(GERMAN)
    assert looks_like_one("pH 7.6\nBicarbonate 240 mg/l")


@given(st.text(max_size=200))
@settings(max_examples=150)
def test_any_text_is_read_without_an_error(text: str) -> None:
    for amount in read(f"Calcium {text}\nhardness {text}").amounts:
        assert amount.analyte in ANALYTES
        amount.as_value()


@given(st.floats(1.0, 400.0).map(lambda x: round(x, 1)), st.sampled_from([".", ","]))
@settings(max_examples=60)
def test_a_written_number_is_the_number_read(number: float, point: str) -> None:
    text = f"Chlorid  mg/l  {number}".replace(".", point)
    assert held(text)["chloride"] == pytest.approx(number)
