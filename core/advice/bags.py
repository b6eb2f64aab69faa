"""The water of a bag against the tank's: what differs, and what its ammonia comes to once open.

A bag closed for hours is full of carbon dioxide and ammonium. Opened, the gas leaves within
minutes, pH rises, and the ammonium turns into ammonia while the animals still sit in it.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from core.advice import limits
from core.advice.livestock import Species, foreign_water
from core.advice.state import Measured, State, ammonia_as_n
from core.errors import CoreError
from core.water.ammonia import un_ionised_fraction
from core.water.solution import in_air
from core.water.water import Water


@dataclass(frozen=True, slots=True)
class Difference:
    """An analyte in the bag and in the tank. [canonical unit]"""

    analyte: str
    bag: float
    tank: float

    @property
    def change(self) -> float:
        """What the animals must follow: tank less bag."""
        return self.tank - self.bag


@dataclass(frozen=True, slots=True)
class BagAmmonia:
    """Ammonia of the bag before and after its carbon dioxide has left. [mg/L as N, pH]

    Of a bag whose pH nobody told only what it comes to once open is known.
    """

    total_n: float
    ph: float | None
    nh3_n: float | None
    ph_open: float
    nh3_n_open: float
    kh_assumed: bool

    @property
    def is_dangerous(self) -> bool:
        """Whether an open bag would pass what harms fish."""
        return self.nh3_n_open >= limits.NH3_ALARM


COMPARED: Final = ("temperature", "salinity", "ph", "gh", "kh", "conductivity", "tds")


SALT_IN_BAG: Final = 5.0
"""Over this a bag of animals that nobody named is of salt water; common practice. [g/kg]"""


def foreign_to(
    bag: Mapping[str, Measured], state: State, kinds: Sequence[Species], *, salt_water: bool
) -> tuple[str, str] | None:
    """The water of the newcomers, or of their bag, and the tank's, where no way leads over."""
    here = "fresh" if state.tank.kind == "pond" else state.tank.kind
    salt = state.last("salinity")
    for row in kinds:
        if foreign_water(row, state.tank, None if salt is None else salt.value):
            return row.water, here
    salty = salt_water or ("salinity" in bag and bag["salinity"].value > SALT_IN_BAG)
    return ("salt", here) if salty and not kinds and here == "fresh" else None


def differences_of(bag: Mapping[str, Measured], state: State) -> tuple[Difference, ...]:
    """What is known of both waters, the largest share of the tank's value first."""
    found = []
    for analyte in COMPARED:
        inside, outside = bag.get(analyte), state.last(analyte)
        if inside is not None and outside is None and analyte == "salinity" and not salty(state):
            found.append(Difference(analyte, inside.value, 0.0))
        if inside is not None and outside is not None:
            found.append(Difference(analyte, inside.value, outside.value))
    return tuple(sorted(found, key=lambda d: -abs(d.change) / max(abs(d.tank), 1.0)))


def salty(state: State) -> bool:
    """Whether a tank's water may hold salt: it is none of fresh water, as far as it is told."""
    return state.tank.kind not in {"fresh", "pond"}


def bag_ammonia(bag: Mapping[str, Measured], state: State) -> BagAmmonia | None:
    """Ammonia in the bag now, and once its carbon dioxide has left into open air.

    Parameters
    ----------
    bag : mapping of analyte to Measured
        Total ammonia is needed; KH of the tank stands in where the bag's is unknown.
    state : State
        The tank.

    Notes
    -----
    The pH of the open bag is that of its alkalinity in balance with 420 µatm: the worst it can
    come to.
    """
    total, ph = bag.get("ammonia"), bag.get("ph")
    kh = bag.get("kh") or state.last("kh")
    if total is None or kh is None or kh.value <= 0.0:
        return None
    warm = bag.get("temperature") or state.last("temperature")
    temperature = min(max(warm.value if warm else limits.WARMEST_ASSUMED, 0.0), 45.0)
    salinity = _salt(bag, state)
    acidity = None if ph is None else min(max(ph.value, 2.0), 12.0)
    open_ph = _open_ph(kh.value, temperature, salinity)
    if open_ph is None:
        return None
    total_n = ammonia_as_n(total.high if math.isfinite(total.high) else total.value, total.basis)
    open_ph = open_ph if acidity is None else max(open_ph, acidity)
    closed = None if acidity is None else un_ionised_fraction(acidity, temperature, salinity)
    return BagAmmonia(
        total_n,
        acidity,
        None if closed is None else total_n * closed,
        open_ph,
        total_n * un_ionised_fraction(min(open_ph, 12.0), temperature, salinity),
        kh_assumed="kh" not in bag,
    )


def _open_ph(kh: float, temperature: float, salinity: float) -> float | None:
    try:
        water = Water.from_readings(kh=kh, temperature=temperature, salinity=salinity)
        return in_air(water, limits.OPEN_AIR).ph
    except CoreError:
        return None


def ph_apart(bag: Mapping[str, Measured], state: State, *, fresh: bool) -> float:
    """How far the tank's pH is from the bag's, like with like: both stood in open air.

    A closed bag's own pH is low from the carbon dioxide in it, which leaves whatever is done. So
    the buffers are compared; without them a measured pH counts only where the bag was closed
    lately, or where the tank's is lower still.
    """
    here, there = state.last("kh"), bag.get("kh")
    if here is not None and there is not None and min(here.value, there.value) > 0.0:
        stood = [_open_ph(kh.value, 25.0, _salt(bag, state)) for kh in (here, there)]
        if stood[0] is not None and stood[1] is not None:
            return stood[0] - stood[1]
    ph, bag_ph = state.last("ph"), bag.get("ph")
    if ph is None or bag_ph is None:
        return 0.0
    apart = ph.value - bag_ph.value
    return apart if fresh or apart < 0.0 else 0.0


def _salt(bag: Mapping[str, Measured], state: State) -> float:
    salt = bag["salinity"].value if "salinity" in bag else state.salinity
    return min(max(salt, 0.0), 50.0)
