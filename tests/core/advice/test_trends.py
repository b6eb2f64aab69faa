"""Slopes against SciPy's, trends against noise, days to a limit, consumption, nitrate's acid."""

from __future__ import annotations

import math
import random
import warnings
from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from core.advice._slopes import is_moving, pooled_slope
from core.advice.trends import (
    FEWEST_POINTS,
    MOST_POINTS,
    drift_from_source,
    long_trend,
    series,
    theil_sen,
    trend,
)
from core.advice.used_up import consumption, kh_lost_to_nitrate
from tests.bench.steady_series import alarms
from tests.core.advice.waters import NOON, by_kit, done, read, state

DAYS = st.integers(0, 120).map(float)
TENTHS = st.integers(-200, 200).map(lambda n: n / 10)
POINTS = st.lists(st.tuples(DAYS, TENTHS), min_size=2, max_size=30)


@settings(max_examples=150)
@given(POINTS, st.sampled_from([0.9, 0.95, 0.99]))
def test_slopes_are_those_of_scipys_theilslopes(
    points: list[tuple[float, float]], certainty: float
) -> None:
    """SciPy `stats.theilslopes`: Sen 1968's interval (grade C, recomputed by another code)."""
    times, values = zip(*points, strict=True)
    ours = theil_sen(times, values, certainty)
    if ours is None:
        assert len(set(times)) == 1
        return
    if len(set(times)) < 2:
        return
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # ties on both sides may leave it no variance: infinite
        theirs = stats.theilslopes(values, times, certainty)
    assert ours.per_day == pytest.approx(theirs[0], abs=1e-9)
    if math.isfinite(ours.low):
        assert ours.low == pytest.approx(theirs[2], abs=1e-9)
        assert ours.high == pytest.approx(theirs[3], abs=1e-9)


@settings(max_examples=100)
@given(POINTS, st.randoms(use_true_random=False))
def test_order_and_outliers_of_one_time_do_not_matter(
    points: list[tuple[float, float]], chance: random.Random
) -> None:
    mixed = points[:]
    chance.shuffle(mixed)
    one = theil_sen(*zip(*points, strict=True))
    assert one == theil_sen(*zip(*mixed, strict=True))


def test_one_wild_reading_moves_nothing_much() -> None:
    times = [float(day) for day in range(12)]
    values = [10.0 - 0.2 * day for day in times]
    values[5] = 400.0
    found = theil_sen(times, values)
    assert found is not None
    assert found.per_day == pytest.approx(-0.2, abs=0.02)


def weekly(analyte: str, values: list[float], every: float = 7.0) -> list:
    """Readings a week apart, the last one now."""
    last = len(values) - 1
    return [read(analyte, value, (last - i) * every) for i, value in enumerate(values)]


def test_size_tells_where_ranks_cannot() -> None:
    """Five weekly readings that climb by six steps of the kit: z = slope · √Σ(t-t̄)² / noise."""
    climbing = trend(state(*weekly("nitrate", [15, 22, 28, 35, 42])), "nitrate")
    assert climbing is not None
    assert climbing.is_sure
    error = 5.0 / math.sqrt(sum((7.0 * week) ** 2 for week in (-2, -1, 0, 1, 2)))
    reach = stats.norm.ppf(0.999) * error
    assert (climbing.low, climbing.high) == pytest.approx(
        (climbing.per_day - reach, climbing.per_day + reach)
    )
    wavering = trend(state(*weekly("nitrate", [15, 20, 15, 20, 25])), "nitrate")
    assert wavering is not None
    assert not wavering.is_sure


def test_readings_that_stray_more_than_the_kit_are_doubted_more() -> None:
    straight, straying = [10, 20, 30, 40, 50], [10, 35, 15, 55, 50]
    found = [trend(state(*weekly("nitrate", told)), "nitrate") for told in (straight, straying)]
    assert [each is not None and each.is_sure for each in found] == [True, False]


# What a trend is ------------------------------------------------------------------------------


def test_a_fall_of_kh_is_sure_and_its_days_are_told() -> None:
    falling = [read("kh", 9.0 - 0.25 * day, 12 - day, step=0.5) for day in range(13)]
    found = trend(state(*falling), "kh")
    assert found is not None
    assert found.is_sure
    assert found.per_day == pytest.approx(-0.25)
    expected, soonest, latest = found.days_to(3.0) or (0, 0, 0)
    assert soonest <= expected <= latest
    assert expected == pytest.approx((6.0 - 3.0) / 0.25, rel=0.05)


@pytest.mark.parametrize("limit", [9.0, 6.0], ids=["behind it", "where it stands"])
def test_a_limit_that_is_not_ahead_is_never_reached(limit: float) -> None:
    falling = [read("kh", 9.0 - 0.25 * day, 12 - day, step=0.5) for day in range(13)]
    found = trend(state(*falling), "kh")
    assert found is not None
    assert found.days_to(limit) is None


def test_a_fall_within_the_kits_step_is_no_trend() -> None:
    falling = [read("kh", 5.0 - 0.08 * day, 12 - day, step=1.0) for day in range(13)]
    found = trend(state(*falling), "kh")
    assert found is not None
    assert not found.is_sure


@pytest.mark.parametrize("kind", ["water_change", "dose", "moved", "top_up", "media"])
def test_what_was_done_begins_a_new_story(kind: str) -> None:
    falling = [read("kh", 9.0 - 0.25 * day, 12 - day, step=0.5) for day in range(13)]
    held = state(*falling, events=(done(kind, 4.5, percent=20.0),))
    assert len(series(held, "kh", held.disturbed())) == 5
    assert trend(state(*falling[:-1], events=(done(kind, 0.5),)), "kh") is None
    season = long_trend(held, "kh")
    assert season is not None
    assert season.count == 13


def test_stretches_between_changes_are_pooled() -> None:
    """KH used up by 0.12 a day, tested every four days, changed every fortnight: too few each."""
    readings = [read("kh", 9.0 - 0.12 * (day % 14), 56 - day, step=0.5) for day in range(1, 57, 4)]
    held = state(*readings, events=tuple(done("water_change", 56 - day) for day in range(0, 57, 14)
                                         if day < 56))  # fmt: skip
    found = trend(held, "kh")
    assert found is not None
    assert found.stretches >= 3
    assert found.is_sure
    assert found.per_day == pytest.approx(-0.12)
    season = long_trend(held, "kh")
    assert season is not None
    assert not season.is_sure


@pytest.mark.parametrize("kind", ["fed", "note", "filter", "lost"])
def test_what_does_not_touch_the_water_does_not(kind: str) -> None:
    falling = [read("kh", 9.0 - 0.25 * day, 12 - day, step=0.5) for day in range(13)]
    held = state(*falling, events=(done(kind, 4.5),))
    assert held.disturbed() is None


def test_gaps_duplicates_and_disorder_do_no_harm() -> None:
    days = [0, 1, 1, 2, 30, 31, 60, 60, 61]
    readings = [read("kh", 4.0 + 0.1 * day, day, step=0.1) for day in days]
    random.Random(5).shuffle(readings)  # noqa: S311 - an order, the same each time
    found = trend(state(*readings), "kh")
    assert found is not None
    assert found.per_day == pytest.approx(-0.1)
    assert found.count == len(days)


def test_ends_of_the_scale_another_basis_and_the_future_are_left_out() -> None:
    falling = [read("nitrate", 10.0 + 3 * day, 9 - day, basis="ion") for day in range(10)]
    odd = [
        read("nitrate", 160.0, 0.5, high=math.inf, qualifier=">"),
        read("nitrate", 2.0, 5.5, basis="N"),
        read("nitrate", 500.0, -2.0, basis="ion"),
    ]
    found = trend(state(*falling, *odd), "nitrate")
    assert found is not None
    assert found.count == 10
    assert found.per_day == pytest.approx(3.0)


def test_five_years_are_cut_to_what_tells_of_now() -> None:
    held = state(*(read("kh", 5.0, day / 2) for day in range(3650)))
    assert len(series(held, "kh")) == MOST_POINTS


@pytest.mark.parametrize("count", range(FEWEST_POINTS))
def test_too_few_readings_are_no_trend(count: int) -> None:
    assert trend(state(*weekly("kh", [9.0, 7.0, 5.0, 3.0][:count])), "kh") is None


def test_readings_of_one_day_are_no_trend() -> None:
    assert trend(state(*weekly("ph", [6.6, 6.8, 7.0, 7.2, 7.4, 7.6], every=0.1)), "ph") is None


# False alarms ---------------------------------------------------------------------------------


def test_steady_noisy_series_alarm_in_fewer_than_one_of_a_hundred_weeks() -> None:
    """The bench runs a thousand years; here some forty, from a seed."""
    weeks, false = alarms(years=8, seed=11)
    assert weeks >= 400
    assert false / weeks < 0.01


# Consumption, nitrate's acid, drift -------------------------------------------------------------


def test_consumption_of_alkalinity_with_the_kits_doubt() -> None:
    used = consumption(read("kh", 8.0, 2, low=7.5), read("kh", 7.0, 0, low=6.5))
    assert used is not None
    assert (used.per_day, used.low, used.high) == (0.5, 0.25, 0.75)
    assert used.is_sure


@pytest.mark.parametrize(
    ("earlier", "later"),
    [
        (read("kh", 8.0, 0.01), read("kh", 7.0)),
        (read("kh", 7.0), read("kh", 8.0, 2)),
        (read("kh", 8.0, 2, high=math.inf, qualifier=">"), read("kh", 7.0)),
        (read("nitrate", 8.0, 2, basis="N"), read("nitrate", 7.0, basis="ion")),
    ],
    ids=["minutes apart", "wrong order", "off the scale", "another basis"],
)
def test_what_cannot_be_compared_has_no_consumption(earlier: object, later: object) -> None:
    assert consumption(earlier, later) is None  # type: ignore[arg-type]


def test_a_drop_within_the_kit_is_no_sure_consumption() -> None:
    used = consumption(by_kit("kh", 8, 2), by_kit("kh", 7))
    assert used is not None
    assert not used.is_sure


def test_nitrates_acid_by_stoichiometry_grade_c() -> None:
    """One equivalent a mole, net of food: 0.45 °dH for 10 mg/L; twice from ammonium salts."""
    assert kh_lost_to_nitrate(10.0) == pytest.approx(10.0 / 62.004 / 0.356652, rel=1e-4)
    assert round(kh_lost_to_nitrate(10.0), 2) == 0.45
    assert round(kh_lost_to_nitrate(10.0, from_ammonium=True), 2) == 0.90


def test_drift_from_the_source_only_beyond_both_kits() -> None:
    away = drift_from_source(state(by_kit("kh", 4), source=[by_kit("kh", 9)]), "kh")
    assert away is not None
    assert away.away == -5.0
    assert drift_from_source(state(by_kit("kh", 8), source=[by_kit("kh", 9)]), "kh") is None
    assert drift_from_source(state(by_kit("kh", 8)), "kh") is None


def test_the_last_reading_before_a_moment() -> None:
    readings = [read("kh", 5.0, ago) for ago in (1, 4, 2)]
    past = state(*readings).past
    assert past.before("kh", NOON - timedelta(days=2)) == readings[1]
    assert past.before("kh", NOON - timedelta(days=1.5)) == readings[2]
    assert past.before("kh", NOON - timedelta(days=9)) is None
    assert past.before("gh", NOON) is None
    assert past.first == readings[1].at


@pytest.mark.parametrize("kind", ["moved_in", "moved_out"])
def test_animals_that_moved_begin_a_trend_anew(kind: str) -> None:
    """KH fell while they were there and is steady since: the steady stretch is what is told."""
    told = [read("kh", 9.0 - 0.3 * (12 - ago), ago) for ago in range(12, 6, -1)]
    told += [read("kh", 7.2, ago) for ago in range(6, -1, -1)]
    without = trend(state(*told, events=()), "kh")
    moved = trend(state(*told, events=(done(kind, 6.5, count=3, species="guppy"),)), "kh")
    assert without is not None
    assert without.per_day < 0.0
    assert moved is not None
    assert moved.per_day == 0.0


@settings(max_examples=200)
@given(st.lists(POINTS, min_size=1, max_size=3), st.sampled_from([0.5, 0.9, 0.98]))
def test_kendalls_test_agrees_with_the_interval_of_the_slopes(
    stretches: list[list[tuple[float, float]]], certainty: float
) -> None:
    told = tuple(tuple(stretch) for stretch in stretches)
    slope = pooled_slope(told, certainty)
    leaves_out_zero = slope is not None and (slope.low > 0.0 or slope.high < 0.0)
    assert is_moving(told, certainty) == leaves_out_zero
