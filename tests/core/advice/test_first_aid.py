"""The change that first aid allows does no harm, by the numbers of the limits, over many waters."""

from __future__ import annotations

from itertools import product

import pytest

from core.advice.first_aid import NewWater, safe_share
from core.advice.state import State
from core.water import Water, in_air, mix, solve, un_ionised_fraction
from core.water.solution import with_ph
from tests.core.advice.waters import NOON, read, state, tank

TANKS = ((6.4, 2.0), (7.2, 2.0), (7.2, 8.0), (8.2, 2.0), (8.2, 8.0))
SOURCES = tuple(product((7.0, 9.0), (1.0, 12.0)))


def source_of(ph: float, kh: float) -> NewWater:
    """A new water without chloramine, so that its ammonia is none."""
    readings = {r.analyte: r for r in (read("ph", ph), read("kh", kh), read("total_chlorine", 0))}
    return NewWater("tap", State(tank(), NOON, readings), chlorinated=False)


@pytest.mark.parametrize(("ph", "kh"), TANKS)
@pytest.mark.parametrize(("new_ph", "new_kh"), SOURCES)
def test_no_share_sets_poison_free(ph: float, kh: float, new_ph: float, new_kh: float) -> None:
    """At most half, pH up by 0.5 at most, un-ionised ammonia not over its value now or 0.05."""
    here = state(read("ph", ph), read("kh", kh), read("ammonia", 1.5), read("temperature", 25))
    share = safe_share(here, source_of(new_ph, new_kh), poisoned=True, most=0.5)
    assert share is not None
    if share.most == 0.0:
        return
    assert 0.05 <= share.most <= 0.5
    old = with_ph(Water.from_readings(kh=kh, temperature=25.0), ph)
    new = Water.from_readings(kh=new_kh, ph=new_ph, temperature=25.0)
    cut = mix([(new, 1.0 - share.ro_share), (Water(25.0), share.ro_share)])
    mixed = mix([(old.water, 1.0 - share.most), (cut, share.most)])
    at_once = solve(mixed).ph
    stood = in_air(mixed, old.pco2).ph
    total = 1.5 * (1.0 - share.most)
    most = max(1.5 * un_ionised_fraction(ph, 25.0), 0.05)
    assert at_once - ph <= 0.5 + 1e-6
    assert total * un_ionised_fraction(at_once, 25.0) <= most + 1e-6
    assert total * un_ionised_fraction(stood, 25.0) <= most + 1e-6


def test_salinity_binds_first_aid_too() -> None:
    """A day allows 1 g/kg, either way."""
    sea = tank(kind="marine")
    here = state(read("ph", 8.2), read("kh", 8), read("salinity", 35), read("ammonia", 1), of=sea)
    thin = {r.analyte: r for r in (read("ph", 8.2), read("kh", 8), read("salinity", 25))}
    share = safe_share(here, NewWater("mix", State(tank(), NOON, thin)), poisoned=True, most=0.5)
    assert share is not None
    assert share.most <= 0.1 + 1e-9


@pytest.mark.parametrize("missing", ["ph", "kh", "source ph", "source kh"])
def test_of_too_little_known_there_is_no_share(missing: str) -> None:
    readings = {"ph": read("ph", 7.2), "kh": read("kh", 4)}
    kept = [reading for name, reading in readings.items() if name != missing]
    new = {name: r for name, r in readings.items() if f"source {name}" != missing}
    water = NewWater("tap", State(tank(), NOON, new))
    assert safe_share(state(*kept), water, poisoned=True, most=0.5) is None
    assert safe_share(state(*kept), None, poisoned=True, most=0.5) is None
