"""Blends: amounts are linear, pH is solved; seasons, age and carbon dioxide of a source."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.advice.blending import blended, pure
from core.advice.changes import source_water
from core.advice.gassing import rising
from core.advice.outlook import with_premises
from core.advice.seasons import in_force, outdated, season_at
from core.advice.state import Measured, State
from core.tank import Tank
from core.water import Water, mix, solve

NOW = datetime(2026, 3, 1, 12, tzinfo=UTC)


def water(**readings: float) -> State:
    return with_premises(State(Tank(name="tap"), NOW), readings)


def test_ph_of_a_blend_is_solved_and_never_averaged() -> None:
    """Half pH 6.0 and half pH 7.0, KH 1 both: 6.26, not 6.5 (PHREEQC, phreeqc.dat; grade C)."""
    parts = [(water(ph=6.0, kh=1.0, gh=2.0, temperature=25.0), 0.5),
             (water(ph=7.0, kh=1.0, gh=2.0, temperature=25.0), 0.5)]  # fmt: skip
    ph = blended(parts, "mix").last("ph")
    assert ph is not None
    assert ph.value == pytest.approx(6.26, abs=0.02)


SHARES = st.floats(0.0, 1.0)
KH = st.floats(0.5, 20.0)
PH = st.floats(6.3, 8.4)


@given(SHARES, KH, KH, st.floats(0.0, 30.0), st.floats(0.0, 100.0))
@settings(max_examples=60)
def test_amounts_mix_in_proportion(
    share: float, kh: float, other_kh: float, gh: float, nitrate: float
) -> None:
    one = water(kh=kh, gh=gh, nitrate=nitrate)
    other = water(kh=other_kh, gh=0.0, nitrate=0.0)
    found = blended([(one, share), (other, 1.0 - share)], "mix")
    expected = {"kh": kh * share + other_kh * (1.0 - share), "gh": gh * share}
    for name, value in expected.items():
        reading = found.last(name)
        assert reading is not None
        assert reading.value == pytest.approx(value, abs=1e-9)


@given(st.floats(0.05, 0.95), KH, PH)
@settings(max_examples=25)
def test_a_blend_goes_into_a_tank_as_its_parts_would(share: float, kh: float, ph: float) -> None:
    """What the change reckons with is, to a hundredth, the exact mix of the parts' carbon."""
    tap, ro = water(kh=kh, ph=ph, gh=kh, temperature=25.0), pure("RO", NOW)
    tank = Water(25.0)
    parts = [(tap, share), (ro, 1.0 - share)]
    exact = solve(mix([(source_water(state, tank), part) for state, part in parts])).ph
    found = solve(source_water(blended(parts, "mix", warm=25.0), tank)).ph
    assert found == pytest.approx(exact, abs=0.01)


def test_what_one_part_lacks_is_not_known_of_the_blend() -> None:
    found = blended([(water(kh=8.0, gh=12.0), 0.5), (water(kh=4.0), 0.5)], "mix")
    assert found.last("gh") is None
    assert found.last("ph") is None
    cold = blended([(water(kh=8.0, temperature=10.0), 0.5), (pure("RO", NOW), 0.5)], "mix", warm=20)
    warmth = cold.last("temperature")
    assert warmth is not None
    assert warmth.value == pytest.approx(15.0)


def test_ammonia_of_two_kits_is_added_as_nitrogen() -> None:
    as_ion = Measured("ammonia", 1.288, 1.288, 1.288, NOW, basis="NH4")
    tap = State(Tank(name="tap"), NOW, readings={"ammonia": as_ion})
    found = blended([(tap, 0.5), (pure("RO", NOW), 0.5)], "mix").last("ammonia")
    assert found is not None
    assert found.basis == "N"
    # 1.288 mg/L NH4 is 1.000 mg/L N: atomic weights N 14.007, H 1.008.
    assert found.value == pytest.approx(0.5, abs=0.001)


@pytest.mark.parametrize(
    ("month", "latitude", "season"),
    [
        (1, 52.5, "winter"), (7, 52.5, "summer"), (5, 52.5, "summer"), (11, 52.5, "winter"),
        (1, -42.9, "summer"), (7, -42.9, "winter"), (7, 1.3, None), (7, None, None),
    ],
)  # fmt: skip
def test_the_season_of_a_place(month: int, latitude: float | None, season: str | None) -> None:
    assert season_at(datetime(2026, month, 15, tzinfo=UTC), latitude) == season


def kh(value: float, days_ago: float) -> Measured:
    return Measured("kh", value, value, value, NOW - timedelta(days=days_ago))


def test_the_profile_of_the_season_is_in_force() -> None:
    held = {"winter": [kh(4.0, 50.0)], "summer": [kh(7.0, 200.0)]}
    found = in_force([kh(9.0, 300.0)], held, NOW, 52.5)
    assert (found.season, found.readings["kh"].value, found.certain) == ("winter", 4.0, True)
    assert found.other["kh"].value == 7.0
    south = in_force([], held, NOW, -42.9)
    assert (south.season, south.readings["kh"].value) == ("summer", 7.0)


def test_what_was_measured_since_in_the_same_season_counts() -> None:
    found = in_force([kh(5.0, 3.0)], {"winter": [kh(4.0, 50.0)]}, NOW, 52.5)
    assert found.readings["kh"].value == 5.0


def test_where_nothing_tells_the_season_the_last_measured_counts() -> None:
    held = {"winter": [kh(4.0, 50.0)], "summer": [kh(7.0, 20.0)]}
    found = in_force([], held, NOW, None)
    assert (found.season, found.certain) == ("summer", False)


@pytest.mark.parametrize(
    ("days", "latitude", "is_old", "why"),
    [
        (100, 52.5, False, "November is the same winter"),
        (130, 52.5, True, "October is the other season, a quarter of a year ago"),
        (150, None, False, "under half a year, and no season known"),
        (190, None, True, "over half a year"),
    ],
)
def test_a_source_grows_old(days: int, latitude: float | None, is_old: bool, why: str) -> None:
    assert (outdated({"kh": kh(4.0, days)}, NOW, latitude) is not None) is is_old, why


def test_a_water_full_of_carbon_dioxide_rises() -> None:
    """PH 6.8 and KH 6: 3 KH 10^(7-pH) gives 29 mg/L (common practice, some 10 % low)."""
    found = rising(water(ph=6.8, kh=6.0, gh=8.0, temperature=20.0))
    assert found is not None
    assert 28.0 < found.co2 < 36.0
    assert 7.6 < found.low < found.high < 8.8
    assert rising(water(ph=7.8, kh=6.0)) is None
    assert rising(water(kh=6.0)) is None
