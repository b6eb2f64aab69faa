"""Doubt: deterministic, right where the answer is known, and honest about what fails."""

from __future__ import annotations

import subprocess
import sys
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.errors import OutOfRange
from core.water import Interval, from_readings, in_air, mix, sample, solve
from core.water.doubt import NoFigure


def same(**readings):
    return dict(readings)


def test_median_and_interval_of_a_plain_reading():
    estimate = sample(same, {"ph": Interval(7.0, 8.0)})["ph"]
    assert estimate.median == pytest.approx(7.5, abs=0.002)
    assert estimate.low == pytest.approx(7.05, abs=0.002)
    assert estimate.high == pytest.approx(7.95, abs=0.002)


def test_sum_of_two_uniform_readings_is_a_triangle():
    def total(a, b):
        return {"sum": a + b}

    estimate = sample(total, {"a": Interval(0.0, 1.0), "b": Interval(0.0, 1.0)})["sum"]
    assert estimate.median == pytest.approx(1.0, abs=0.01)
    assert estimate.low == pytest.approx(0.1**0.5, abs=0.01)  # s²/2 = 0.05
    assert estimate.high == pytest.approx(2.0 - 0.1**0.5, abs=0.01)


@pytest.mark.parametrize("dimensions", [1, 2, 3, 5, 8])
def test_every_reading_is_spread_evenly_and_none_follows_another(dimensions):
    names = [f"r{n}" for n in range(dimensions)]
    seen: dict[str, np.ndarray] = {}

    def keep(**readings):
        seen.update(readings)
        return {"one": 1.0}

    sample(keep, {name: Interval(0.0, 1.0) for name in names})
    for name in names:
        counts, _ = np.histogram(seen[name], bins=20, range=(0.0, 1.0))
        assert counts.min() > 40
        assert counts.max() < 60
    for one, two in pairwise(names):
        assert abs(np.corrcoef(seen[one], seen[two])[0, 1]) < 0.05


def change(ph, kh, tap_ph, tap_kh):
    tank = from_readings(ph=ph, kh=kh, gh=4.0, temperature=25.0)
    tap = from_readings(ph=tap_ph, kh=tap_kh, gh=10.0, temperature=15.0)
    mixed = mix([(tank, 60.0), (tap, 60.0)])
    return {"at once": solve(mixed).ph, "stood": in_air(mixed, 420.0).ph}


READINGS = {
    "ph": Interval(6.3, 6.7),
    "kh": Interval(0.5, 1.5),
    "tap_ph": Interval(7.2, 7.8),
    "tap_kh": Interval(7.5, 8.5),
}


def test_same_input_same_answer():
    assert sample(change, READINGS) == sample(change, READINGS)


def test_agrees_with_a_hundred_times_as_many_random_draws():
    rng = np.random.default_rng(7)
    drawn = {
        name: rng.uniform(interval.low, interval.high, 100_000)
        for name, interval in READINGS.items()
    }
    few = sample(change, READINGS)
    for name, figures in change(**drawn).items():
        low, median, high = np.percentile(figures, (5, 50, 95))
        assert few[name].median == pytest.approx(median, abs=0.005)
        assert few[name].low == pytest.approx(low, abs=0.01)
        assert few[name].high == pytest.approx(high, abs=0.01)


def test_certain_readings_stay_plain_numbers():
    def figures(ph, kh):
        assert isinstance(kh, float)
        return {"co2": solve(from_readings(ph=ph, kh=kh, temperature=25.0)).co2_mg_l}

    estimate = sample(figures, {"ph": Interval(7.0, 7.0), "kh": 4.0})["co2"]
    exact = solve(from_readings(ph=7.0, kh=4.0, temperature=25.0)).co2_mg_l
    assert estimate.low == estimate.high == pytest.approx(exact)


def test_nothing_uncertain_at_all():
    assert sample(same, {"kh": 4.0})["kh"].median == 4.0


@settings(max_examples=30)
@given(st.floats(6.0, 8.0), st.floats(0.0, 0.5), st.floats(1.0, 10.0))
def test_interval_holds_the_median_and_the_plain_answer(ph, doubt, kh):
    def co2(ph, kh):
        return {"co2": solve(from_readings(ph=ph, kh=kh, temperature=25.0)).co2_mg_l}

    estimate = sample(co2, {"ph": Interval(ph - doubt, ph + doubt), "kh": kh}, size=200)["co2"]
    assert estimate.low <= estimate.median <= estimate.high
    plain = co2(ph, kh)["co2"]
    assert estimate.median == pytest.approx(plain, rel=0.02)


def test_possibilities_without_a_figure_are_left_out():
    def root(x):
        with np.errstate(invalid="ignore"):
            return {"root": np.sqrt(x)}

    estimate = sample(root, {"x": Interval(-1.0, 1.0)})["root"]
    assert estimate.median == pytest.approx(0.5**0.5, abs=0.01)


def test_no_figure_at_all_is_named():
    with pytest.raises(NoFigure) as caught:
        sample(lambda x: {"nothing": x * np.nan}, {"x": Interval(0.0, 1.0)})
    assert caught.value.what == "nothing"


@pytest.mark.parametrize(
    "interval", [Interval(2.0, 1.0), Interval(float("nan"), 1.0), Interval(0.0, float("inf"))]
)
def test_an_interval_upside_down_is_refused(interval):
    with pytest.raises(OutOfRange):
        sample(same, {"x": interval})


def test_plain_numbers_never_load_numpy():
    code = (
        "import sys\n"
        "from core.water import *\n"
        "water = Water.from_readings(ph=7.2, kh=4.0, gh=8.0, temperature=25.0)\n"
        "other = Water.from_readings(salinity=20.0, kh=6.0, ph=8.0, temperature=25.0)\n"
        "mixed = mix([(water, 1.0), (other, 1.0)])\n"
        "solution = in_air(add(mixed, 'sodium bicarbonate', 1.0, 10.0), 420.0)\n"
        "saturation_index(solution), rest_on_mineral(water, 'aragonite', 800.0)\n"
        "un_ionised_fraction(8.0, 25.0, 10.0), oxygen_saturation(25.0), buffer_intensity(water)\n"
        "sys.exit('numpy was loaded' if 'numpy' in sys.modules else 0)\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
