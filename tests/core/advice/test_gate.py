"""The interim pH of the gate lies on the cautious side of PHREEQC, as it claims."""

from __future__ import annotations

import phreeqpython
import pytest

from core.advice.ammonia_gate import standing_ph

KH = (1.0, 2.0, 4.0, 6.0, 10.0, 15.0)


@pytest.fixture(scope="module")
def phreeqc() -> phreeqpython.PhreeqPython:
    return phreeqpython.PhreeqPython()


def stood(phreeqc: phreeqpython.PhreeqPython, kh: float, celsius: float) -> float:
    """Sodium bicarbonate water at rest in air of 420 µatm, by PHREEQC (phreeqc.dat)."""
    millimoles = kh * 0.356652
    water = phreeqc.add_solution_simple({"NaHCO3": millimoles}, temperature=celsius)
    water.equalize(["CO2(g)"], [-3.3768])  # log10 of 420e-6
    return float(water.pH)


@pytest.mark.parametrize("kh", KH)
def test_at_25_degrees_it_is_a_tenth_to_three_tenths_above(
    phreeqc: phreeqpython.PhreeqPython, kh: float
) -> None:
    assert 0.05 < standing_ph(kh) - stood(phreeqc, kh, 25.0) < 0.35


@pytest.mark.parametrize("celsius", [2.0, 10.0, 20.0, 30.0, 38.0])
@pytest.mark.parametrize("kh", KH)
def test_over_the_range_of_tanks_it_is_never_below(
    phreeqc: phreeqpython.PhreeqPython, kh: float, celsius: float
) -> None:
    assert standing_ph(kh) >= stood(phreeqc, kh, celsius) - 0.01
