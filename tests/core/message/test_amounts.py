"""Volumes, lengths and masses as typed into /tank."""

from __future__ import annotations

import pytest

from core.message.amount_named import FILE, amount_named
from core.message.amounts import LITRES, grams, length_cm, volume_litres
from core.message.wordfile import spelt
from core.units import PINT_NAMES, registry


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("90 l", 90.0),
        ("90l", 90.0),
        ("90 litres", 90.0),
        ("90 Liter", 90.0),
        ("90,5 l", 90.5),
        ("20 gal", 75.708),  # US gallon, 3.785411784 L exactly
        ("20 gallons", 75.708),
        ("20 uk gal", 90.922),  # imperial gallon, 4.54609 L exactly
        ("20 imperial gallons", 90.922),
        ("90", None),  # litres or gallons: no guess
        ("0 l", None),
        ("-5 l", None),
        ("1,000 l", None),  # one litre or a thousand
        ("90 kg", None),
        ("90 l 5", None),
        ("", None),
        ("a lot", None),
        ("9" * 400, None),
    ],
)
def test_volume(text: str, expected: float | None) -> None:
    found = volume_litres(text)
    assert found == (None if expected is None else pytest.approx(expected, abs=1e-3))


def test_a_chat_may_mean_imperial_gallons() -> None:
    assert volume_litres("20 gal", us_gallons=False) == pytest.approx(90.9218)
    assert volume_litres("20 us gal", us_gallons=True) == pytest.approx(75.708, abs=1e-3)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("60", 60.0),
        ("60 cm", 60.0),
        ("60cm", 60.0),
        ("600 mm", 60.0),
        ("1.2 m", 120.0),
        ("24 in", 60.96),
        ('24"', 60.96),
        ("2 ft", 60.96),
        ("60 kg", None),
        ("cm", None),
        ("0", None),
        ("6 0", None),
    ],
)
def test_length(text: str, expected: float | None) -> None:
    found = length_cm(text)
    assert found == (None if expected is None else pytest.approx(expected))


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("5 g", 5.0),
        ("5g", 5.0),
        ("1.5 kg", 1500.0),
        ("250 mg", 0.25),
        ("1 oz", 28.3495),
        ("1 lb", 453.592),
        ("5", None),
        ("5 ml", None),
        ("2 tsp", None),  # a spoon is no mass
    ],
)
def test_mass(text: str, expected: float | None) -> None:
    found = grams(text)
    assert found == (None if expected is None else pytest.approx(expected, rel=1e-5))


@pytest.mark.parametrize(
    ("unit", "name"),
    [
        ("L", "liter"),
        ("mL", "milliliter"),
        ("gal", "US_liquid_gallon"),
        ("uk gal", "imperial_gallon"),
    ],
)
def test_each_unit_of_volume_has_its_litres(unit: str, name: str) -> None:
    assert LITRES[unit] == pytest.approx(float(registry()(name).to("liter").magnitude))


def test_no_unit_of_volume_is_without_litres() -> None:
    volumes = {unit for unit, name in PINT_NAMES.items() if registry()(name).check("[volume]")}
    assert volumes == set(LITRES)


def _units() -> list[str]:
    told = spelt(FILE, {"word", "unit"})
    return [way for section, _meaning, ways in told if section == "unit" for way in ways]


@pytest.mark.parametrize("unit", _units())
def test_an_amount_of_water_is_read_in_each_unit_that_it_has(unit: str) -> None:
    named = amount_named(f"no 6 {unit}")
    assert named is not None
    assert named.value is not None
    assert named.unit in {"percent", "litre"}


def test_a_chat_may_mean_imperial_gallons_of_a_change() -> None:
    american, british = amount_named("no 6 gal"), amount_named("no 6 gal", us_gallons=False)
    assert american is not None
    assert british is not None
    assert (american.value, british.value) == pytest.approx((22.7125, 27.2765), abs=1e-3)
