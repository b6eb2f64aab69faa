"""What new water may bring that no mixing makes harmless: chlorine, copper, nitrite."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any, Final

from core.advice import limits
from core.advice.livestock import kept_in
from core.advice.state import Measured, State, nitrite_as_no2

NONE: Final = (0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Taint:
    """Poisons of the tank and of the new water that a change mixes, worst ends of the readings.

    Attributes
    ----------
    copper : tuple of float
        Of the tank and of the new water; 0 where nobody measured. [mg/L]
    copper_kills : bool
        True with invertebrates on record, which no copper spares.
    nitrite : tuple of float
        The same. [mg/L NO2]
    nitrite_limit : float or None
        Most nitrite that a change may lead to; None in salt water, where kits see no poison.
    """

    copper: tuple[float, float] = NONE
    copper_kills: bool = False
    nitrite: tuple[float, float] = NONE
    nitrite_limit: float | None = None

    def after(self, share: Any) -> Taint:
        """The same once a share was changed."""
        return replace(
            self,
            copper=(_mixed(self.copper, share), self.copper[1]),
            nitrite=(_mixed(self.nitrite, share), self.nitrite[1]),
        )

    def excesses(self, share: Any) -> dict[str, Any]:
        """By how much a change of a share brings more poison than the tank may hold. [mg/L]"""
        found: dict[str, Any] = {}
        if self.copper_kills and self.copper[1] > self.copper[0]:
            found["copper"] = (self.copper[1] - self.copper[0]) * share
        if self.nitrite_limit is not None and self.nitrite[1] > self.nitrite[0]:
            found["nitrite"] = _mixed(self.nitrite, share) - self.nitrite_limit + TINY
        return found


TINY: Final = 1e-9
"""At the limit itself is over it."""

UNTAINTED: Final = Taint()


def taint_of(tank: State, source: State) -> Taint:
    """Copper and nitrite of both waters; what a kit cannot see counts as nothing."""
    kept = kept_in(tank.tank)
    salty = tank.tank.is_sea or tank.salinity > limits.SALT_ENOUGH
    return Taint(
        copper=(_most(tank.last("copper")), _most(source.last("copper"))),
        copper_kills=any(row.is_invertebrate for row in kept.kinds),
        nitrite=(_nitrite(tank), _nitrite(source)),
        nitrite_limit=None if salty else limits.NITRITE_WARN,
    )


def total_chlorine(water: State) -> float | None:
    """Total chlorine by the newest word on it: what is free is part of it. [mg/L]

    An older total says nothing of a day on which more than that is free; None where only free
    chlorine was measured and none of it found, since chloramine shows in the total alone.
    """
    total, free = water.last("total_chlorine"), water.last("chlorine")
    if free is None or free.qualifier == "<" or free.value <= limits.CHLORINE_WARN:
        return None if total is None else total.value
    if total is None or (free.at >= total.at and free.value > total.value):
        return free.value
    return total.value


def chlorine_measured(water: State) -> bool:
    """Whether somebody measured what chloramine shows in, and nothing has gainsaid it since."""
    total = water.last("total_chlorine")
    return total is not None and total_chlorine(water) == total.value


def _nitrite(water: State) -> float:
    found = water.last("nitrite")
    return 0.0 if found is None else nitrite_as_no2(_most(found), found.basis)


def _most(reading: Measured | None) -> float:
    """The upper end of a reading; of one under the kit's scale nothing."""
    if reading is None or reading.qualifier == "<":
        return 0.0
    return reading.value if reading.high == float("inf") else reading.high


def _mixed(pair: tuple[Any, float], share: Any) -> Any:
    return pair[0] + (pair[1] - pair[0]) * share
