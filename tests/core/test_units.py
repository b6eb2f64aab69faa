"""The plain table of factors against pint, seawater against GSW, and the inverses."""

from __future__ import annotations

import gsw
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core import units
from core.analytes import MEASURABLE
from core.errors import OutOfRange
from core.water.density import density, grams_from_practical

HARDNESS = ("°dH", "ppm", "°fH", "°e", "gpg", "meq/L")


@pytest.mark.parametrize("unit", HARDNESS)
@pytest.mark.parametrize("analyte", ["kh", "gh"])
def test_hardness_factors_equal_pint(analyte: str, unit: str) -> None:
    assert units.to_canonical(analyte, 3.7, unit) == pytest.approx(units.convert(3.7, unit, "°dH"))


def test_millimoles_of_hardness_are_twice_those_of_alkalinity() -> None:
    # Hardness counts Ca and Mg (two charges each), alkalinity counts acid used up (one).
    assert units.to_canonical("gh", 1, "mmol/L") == pytest.approx(units.convert(1, "mmol/L", "°dH"))
    assert units.to_canonical("kh", 1, "mmol/L") == units.to_canonical("kh", 1, "meq/L")


def mass_pairs() -> list[tuple[str, str]]:
    wanted = {"mg/L", "µg/L", "ppb", "g/L"}
    return [
        (analyte, unit)
        for analyte, unit in units.FACTORS
        if unit in wanted and MEASURABLE[analyte].unit == "mg/L"
    ]


@pytest.mark.parametrize(("analyte", "unit"), mass_pairs())
def test_mass_factors_equal_pint(analyte: str, unit: str) -> None:
    assert units.to_canonical(analyte, 0.3, unit) == pytest.approx(units.convert(0.3, unit, "mg/L"))


@pytest.mark.parametrize(
    ("analyte", "unit", "to"), [("conductivity", "mS/cm", "µS/cm"), ("temperature", "°F", "°C")]
)
def test_other_factors_equal_pint(analyte: str, unit: str, to: str) -> None:
    assert units.to_canonical(analyte, 51.3, unit) == pytest.approx(units.convert(51.3, unit, to))


@pytest.mark.parametrize(
    ("value", "unit", "expected"),
    [
        # USGS "Water Hardness and Alkalinity": 1 grain per US gallon is 17.1 mg/L CaCO3 (B).
        (17.1, "ppm", ("gpg", 1.0)),
        # DIN: 1 °dH is 10 mg/L CaO, 17.8 mg/L CaCO3; common practice in every kit's table.
        (1.0, "°dH", ("ppm", 17.85)),
        # 1 French degree is 10 mg/L CaCO3 by definition.
        (1.0, "°fH", ("ppm", 10.0)),
        # 1 degree Clark is one grain in an imperial gallon, 14.3 mg/L.
        (1.0, "°e", ("ppm", 14.25)),
        # 2.8 °dH is 1 meq/L (trade's rounding).
        (1.0, "meq/L", ("°dH", 2.804)),
    ],
)
def test_hardness_against_published_roundings(
    value: float, unit: str, expected: tuple[str, float]
) -> None:
    to, number = expected
    assert units.convert(value, unit, to) == pytest.approx(number, rel=2e-3)


@pytest.mark.parametrize(
    ("analyte", "basis", "factor"),
    # The conversions of check-value tables: x4.43, x3.28, x3.07 (computed from atomic weights, C).
    [("nitrate", "N", 4.427), ("nitrite", "N", 3.285), ("phosphate", "P", 3.066)],
)
def test_bases(analyte: str, basis: str, factor: float) -> None:
    assert units.to_canonical(analyte, 1.0, None, basis) == pytest.approx(factor, rel=1e-3)


def test_ammonia_stays_as_given() -> None:
    assert units.to_canonical("ammonia", 0.5, "mg/L", "NH4") == 0.5


@pytest.mark.parametrize("salinity", [0.0, 1.0, 5.0, 20.0, 35.0, 40.0])
def test_density_equals_the_reference_library(salinity: float) -> None:
    # GSW is TEOS-10, the table's formula EOS-80; they differ by at most a few g/m³ here.
    absolute = gsw.SA_from_SP(salinity, 0, 0, 0)
    expected = gsw.rho(absolute, gsw.CT_from_t(absolute, 25.0, 0), 0)
    found = 1000.0 * density(25.0, grams_from_practical(salinity))
    assert found == pytest.approx(float(expected), abs=0.03)


def test_gravity_of_standard_seawater() -> None:
    # Density 1023.343 at S 35, 25 °C (UNESCO 1983, EOS-80 check value, from memory) over 997.048.
    found = units.from_canonical("salinity", 35 * units.SP_TO_G_KG, "SG")
    assert found == pytest.approx(1.02637, abs=2e-5)


@given(st.floats(0.0, 45.0))
def test_gravity_and_salinity_are_inverse(salinity: float) -> None:
    there = units.from_canonical("salinity", salinity, "SG")
    assert units.to_canonical("salinity", there, "SG") == pytest.approx(salinity, abs=1e-6)


@given(st.data())
def test_to_and_from_canonical_are_inverse(data: st.DataObject) -> None:
    pairs = [*units.FACTORS, ("temperature", "°F"), ("salinity", "SG"), ("salinity", "g/L")]
    analyte, unit = data.draw(st.sampled_from(pairs))
    row = MEASURABLE[analyte]
    value = data.draw(st.floats(max(row.low, 0.01), min(row.high, 45.0)))
    written = units.from_canonical(analyte, value, unit)
    assert units.to_canonical(analyte, written, unit) == pytest.approx(value, rel=1e-6, abs=1e-6)


@pytest.mark.parametrize(("analyte", "unit"), [("ph", "ppm"), ("kh", "µS/cm"), ("redox", "°C")])
def test_a_wrong_unit_is_refused_by_name(analyte: str, unit: str) -> None:
    with pytest.raises(units.WrongUnit) as caught:
        units.to_canonical(analyte, 1.0, unit)
    assert (caught.value.analyte, caught.value.unit) == (analyte, unit)
    with pytest.raises(units.WrongUnit):
        units.from_canonical(analyte, 1.0, unit)


def test_unlike_units_are_not_converted() -> None:
    with pytest.raises(units.WrongUnit):
        units.convert(1.0, "°dH", "°C")
    with pytest.raises(units.WrongUnit):
        units.convert(1.0, "furlong", "cm")


@pytest.mark.parametrize("told", [0.98, 1.05])
def test_a_gravity_without_a_salinity_is_refused(told: float) -> None:
    with pytest.raises(OutOfRange):
        units.to_canonical("salinity", told, "SG")
    with pytest.raises(OutOfRange):
        units.from_canonical("salinity", 61.0, "SG")


def test_one_registry() -> None:
    assert units.registry() is units.registry()


def test_labels_are_readable() -> None:
    assert [units.label(unit) for unit in ("°dH", "SG", "drops")] == ["°dH", "SG", "drops"]
