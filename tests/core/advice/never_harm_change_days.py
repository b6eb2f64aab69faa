"""The water of a tank from one change to the next, and the new water, worked out by themselves."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

import periodictable

from core.water import Water, in_air, solve, un_ionised_fraction
from core.water.solution import with_ph
from tests.core.advice.never_harm_change_cases import STEPS, Change

CONSERVED = (
    "salinity", "alkalinity", "carbon", "calcium", "magnesium", "sodium", "potassium", "chloride",
    "sulfate", "borate",
)  # fmt: skip
READ = ("kh", "gh", "temperature", "salinity", "ph")


def _mass(formula: str) -> float:
    return float(periodictable.formula(formula).mass)


NO2_PER_N = _mass("NO2") / _mass("N")
N_PER_CHLORINE = _mass("N") / _mass("Cl2")
"""Of monochloramine told as chlorine: one nitrogen for one Cl2."""


@dataclass(frozen=True)  # no slots: what is asked for again is kept
class Day:
    """A tank right after a change, or at rest before one.

    `own` is total ammonia, `freed` what chloramine added today, which a filter eats by tomorrow;
    `minerals` is conductivity, `warm` what the heater holds. Amounts in mg/L, nitrite as the ion.
    """

    water: Water
    pressure: float
    warm: float
    low: float
    own: float
    freed: float
    copper: float
    nitrite: float
    minerals: float | None

    @classmethod
    def of_tank(cls, case: Change, bears: float) -> Day:
        """The tank now; of unknown CO2 that of a stocked one."""
        told = {name: case.tank[name] for name in READ if name in case.tank}
        water = Water.from_readings(**{**told, "salinity": case.salinity or 0.0})  # type: ignore[arg-type]
        if "ph" in told:
            solved = with_ph(water, told["ph"])
            pressure, water = min(max(solved.pco2, 0.01), 1e6), solved.water
        else:
            pressure = 2000.0
            water = in_air(water, pressure).water
        poisons = (
            _upper(case.tank, "ammonia") if "ammonia" in case.tank else bears,
            0.0,
            _upper(case.tank, "copper"),
            _upper(case.tank, "nitrite") * NO2_PER_N,
        )
        return cls(
            water, pressure, water.temperature, case.kh_low, *poisons, case.tank.get("conductivity")
        )

    def changed(self, source: Day, share: float) -> Day:
        """Right after so much new water."""

        def mixed(mine: float, new: float) -> float:
            return mine + (new - mine) * share

        known = self.minerals is not None and source.minerals is not None
        return Day(
            _mixed(self.water, source.water, share),
            self.pressure,
            self.warm,
            mixed(self.low, source.low),
            mixed(self.own, source.own),
            source.freed * share,
            mixed(self.copper, source.copper),
            mixed(self.nitrite, source.nitrite),
            mixed(self.minerals or 0.0, source.minerals or 0.0) if known else None,
        )

    @cached_property
    def warmed(self) -> Water:
        return replace(self.water, temperature=self.warm)

    def rested(self) -> Day:
        """A day later."""
        return replace(self, water=in_air(self.warmed, self.pressure).water, freed=0.0)

    @cached_property
    def phs(self) -> tuple[float, float, float]:
        """At once, stood, and in open air."""
        stood, outdoors = (in_air(self.warmed, p).ph for p in (self.pressure, 420.0))
        return solve(self.water).ph, stood, outdoors

    @property
    def poison(self) -> float:
        """The most un-ionised ammonia, at once and stood. [mg/L as N]"""
        at_once, stood, _ = self.phs
        return max(self._poison(at_once, self.water), self._poison(stood, self.warmed))

    @property
    def poison_if_co2_leaves(self) -> float:
        return self._poison(max(self.phs), self.warmed)

    def _poison(self, ph: float, water: Water) -> float:
        total = self.own + self.freed
        return total * un_ionised_fraction(ph, water.temperature, water.salinity)


def source_of(case: Change, ro_share: float) -> Day:
    """The new water: what nobody measured of its salt is none, of its chlorine the most allowed."""
    told = {name: case.source[name] for name in READ if name in case.source}
    if told["kh"] == 0.0:
        told.pop("ph", None)
    water = Water.from_readings(**told)  # type: ignore[arg-type]
    bound = case.source.get("total_chlorine", 4.0 * case.treated) - case.source.get("chlorine", 0.0)
    keep = 1.0 - ro_share
    pure = Water(water.temperature)
    return Day(
        _mixed(water, pure, ro_share) if ro_share else water,
        420.0,
        water.temperature,
        told["kh"] * keep,
        _upper(case.source, "ammonia") * keep,
        max(bound, 0.0) * N_PER_CHLORINE * keep,
        _upper(case.source, "copper"),
        _upper(case.source, "nitrite") * NO2_PER_N,
        case.source.get("conductivity"),
    )


def _upper(readings: dict[str, float], name: str) -> float:
    """The upper end of a reading; of none, and of one that shows none, nothing."""
    value = readings.get(name, 0.0)
    return value + STEPS[name] if value > 0.0 else 0.0


def _mixed(water: Water, source: Water, share: float) -> Water:
    """By mass, shut off from air; volumes weigh by density."""
    old, new = (1.0 - share) * water.density, share * source.density
    parts = {
        name: (getattr(water, name) * old + getattr(source, name) * new) / (old + new)
        for name in (*CONSERVED, "temperature")
    }
    return replace(water, **parts)
