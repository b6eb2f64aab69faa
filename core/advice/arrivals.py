"""New animals home: the bag against the tank, the order of work, and quarantine; pure data.

A bag closed for hours is full of carbon dioxide and ammonium. Opened, the gas leaves within
minutes, pH rises, and the ammonium turns into ammonia while the animals still sit in it. After a
long journey the bag is therefore not opened for a slow drip: it floats closed for the warmth, and
then the animals go at once into clean water that is like the bag's.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final, Literal

from core.advice import limits
from core.advice.livestock import Misfit, Species, fits, foreign_water
from core.advice.state import Measured, State, ammonia_as_n
from core.errors import CoreError
from core.water.ammonia import un_ionised_fraction
from core.water.solution import in_air
from core.water.water import Water

LONG_JOURNEY: Final = 3.0
"""Hours in a closed bag after which it is full of carbon dioxide; common practice."""

FLOAT_MINUTES: Final = 15.0
MIX_MINUTES: Final = 15.0
"""At least so long each: text headed "7.5 Acclimatizing fish", in a copy (grade B); attributed
from memory to FAO Fisheries Technical Paper 589."""

PH_APART: Final = 0.5
PH_HOURS: Final = 24.0
"""pH further apart than this: at least a day (the same text, grade B)."""

MINUTES_PER_DEGREE_WARMTH: Final = 5.0
MINUTES_PER_DEGREE_HARDNESS: Final = 10.0
WARMTH_FREE: Final = 2.0
HARDNESS_FREE: Final = 2.0
LONGEST_DRIP: Final = 120.0
"""Common practice, no source. [min per °C or °dH, °C, °dH, min]"""

QUARANTINE_DAYS: Final = 28
"""Common practice, no source."""

StepId = Literal[
    "not_this_water",
    "not_yet",
    "dim_light",
    "float_closed",
    "prepare_container",
    "open_and_move",
    "add_tank_water",
    "hold_in_quarantine",
    "net_over",
    "discard_bag_water",
    "watch",
]


@dataclass(frozen=True, slots=True)
class Step:
    """One step of the order of work, its length, and its numbers."""

    id: StepId
    minutes: float = 0.0
    facts: Mapping[str, float | str] | None = None


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
    """Ammonia of the bag before and after its carbon dioxide has left. [mg/L as N, pH]"""

    total_n: float
    ph: float
    nh3_n: float
    ph_open: float
    nh3_n_open: float
    kh_assumed: bool

    @property
    def is_dangerous(self) -> bool:
        """Whether an open bag would pass what harms fish."""
        return self.nh3_n_open >= limits.NH3_ALARM


@dataclass(frozen=True, slots=True)
class Arrival:
    """How to bring animals home.

    Attributes
    ----------
    differences : tuple of Difference
        What is known of both waters, the largest share first.
    ammonia : BagAmmonia or None
        None where the bag's ammonia or pH is unknown.
    keep_closed : bool
        True where the bag must not stand open.
    steps : tuple of Step
        In this order.
    days : float
        Days in water of their own before the tank; 0 where minutes do.
    misfits : tuple of Misfit
        What of the tank does not suit them at all: then not yet, or not this tank.
    salt_unknown : bool
        True where the tank is salty and nobody measured how salt the bag is.
    foreign : tuple of str or None
        The water that they live in and the tank's, where these are two: then no way leads in.
    copper : float or None
        Copper in the bag, none of which may get into the tank. [mg/L]
    """

    differences: tuple[Difference, ...]
    ammonia: BagAmmonia | None
    keep_closed: bool
    steps: tuple[Step, ...]
    days: float
    misfits: tuple[Misfit, ...]
    salt_unknown: bool = False
    foreign: tuple[str, str] | None = None
    copper: float | None = None

    @property
    def minutes(self) -> float:
        """All steps together, without days of waiting. [min]"""
        return sum(step.minutes for step in self.steps)


COMPARED: Final = ("temperature", "salinity", "ph", "gh", "kh", "conductivity")


def arrive(
    bag: Mapping[str, Measured],
    state: State,
    kinds: Sequence[Species] = (),
    hours: float | None = None,
    *,
    salt_water: bool = False,
) -> Arrival:
    """Plan the way from a bag into a tank.

    Parameters
    ----------
    bag : mapping of analyte to Measured
        What was measured in the bag's water; may be empty.
    state : State
        The tank.
    kinds : sequence of Species, optional
        The animals; tender ones get twice the time.
    hours : float, optional
        Since the bag was closed; None where nobody knows, which is taken for long.
    salt_water : bool
        Whether the bag's water was called salt water.

    Returns
    -------
    Arrival
        Steps as data; the first is ``not_yet`` where the tank is no place for them now.
    """
    differences = _differences(bag, state)
    ammonia = bag_ammonia(bag, state)
    keep_closed = hours is None or hours >= LONG_JOURNEY
    keep_closed = keep_closed or (ammonia is not None and ammonia.is_dangerous)
    misfits = tuple(m for row in kinds for m in fits(row, state) if m.certain)
    slow = 2.0 if any(row.level("change") == "high" for row in kinds) else 1.0
    # Whose kind is not known may be an invertebrate.
    invertebrates = not kinds or any(row.is_invertebrate for row in kinds)
    apart = _ph_apart(bag, state, fresh=not keep_closed)
    days = _days(differences, apart, invertebrates=invertebrates)
    steps = _steps(differences, keep_closed, slow, days)
    if (problem := _not_ready(state)) is not None:
        steps = (Step("not_yet", 0.0, {"reason": problem}), *steps)
    salt_unknown = state.salinity > limits.SALT_WATER and "salinity" not in bag
    foreign = _foreign(bag, state, kinds, salt_water=salt_water)
    if foreign is not None:
        steps, days, misfits = (Step("not_this_water"),), 0.0, ()
    copper = bag.get("copper")
    return Arrival(
        differences,
        ammonia,
        keep_closed,
        steps,
        days,
        misfits,
        salt_unknown,
        foreign,
        copper.value if copper is not None and copper.value > 0.0 else None,
    )


SALT_IN_BAG: Final = 5.0
"""Over this a bag of animals that nobody named is of salt water; common practice. [g/kg]"""


def _foreign(
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


def _differences(bag: Mapping[str, Measured], state: State) -> tuple[Difference, ...]:
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
        Total ammonia and pH are needed; KH of the tank stands in where the bag's is unknown.
    state : State
        The tank.

    Notes
    -----
    The pH of the open bag is that of its alkalinity in balance with 420 µatm: the worst it can
    come to.
    """
    total, ph = bag.get("ammonia"), bag.get("ph")
    kh = bag.get("kh") or state.last("kh")
    if total is None or ph is None or kh is None or kh.value <= 0.0:
        return None
    warm = bag.get("temperature") or state.last("temperature")
    temperature = min(max(warm.value if warm else limits.WARMEST_ASSUMED, 0.0), 45.0)
    salinity = _salt(bag, state)
    acidity = min(max(ph.value, 2.0), 12.0)
    open_ph = _open_ph(kh.value, temperature, salinity)
    if open_ph is None:
        return None
    total_n = ammonia_as_n(total.high if math.isfinite(total.high) else total.value, total.basis)
    open_ph = max(open_ph, acidity)
    return BagAmmonia(
        total_n,
        acidity,
        total_n * un_ionised_fraction(acidity, temperature, salinity),
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


def _ph_apart(bag: Mapping[str, Measured], state: State, *, fresh: bool) -> float:
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


def _days(differences: Sequence[Difference], ph_apart: float, *, invertebrates: bool) -> float:
    """Days in water of their own, where the tank's differs more than hours can bridge."""
    days = PH_HOURS / 24.0 if abs(ph_apart) > PH_APART + 1e-9 else 0.0
    for difference in differences:
        change = difference.change
        if difference.analyte == "salinity":
            up = limits.SALINITY_UP
            step = up if change > 0.0 or invertebrates else limits.SALINITY_DOWN
            if abs(change) > step:
                days = max(days, math.ceil(abs(change) / step - 1e-9))
    return days


def _steps(
    differences: Sequence[Difference], keep_closed: bool, slow: float, days: float
) -> tuple[Step, ...]:
    apart = {difference.analyte: abs(difference.change) for difference in differences}
    warmth = max(0.0, apart.get("temperature", 0.0) - WARMTH_FREE)
    hardness = max(0.0, max(apart.get("gh", 0.0), apart.get("kh", 0.0)) - HARDNESS_FREE)
    floating = FLOAT_MINUTES + MINUTES_PER_DEGREE_WARMTH * warmth
    mixing = min((MIX_MINUTES + MINUTES_PER_DEGREE_HARDNESS * hardness) * slow, LONGEST_DRIP)
    steps = [Step("dim_light"), Step("float_closed", floating)]
    apart_much = hardness > 0.0 or days > 0.0
    if days > 0.0:
        steps += [Step("prepare_container", 0.0, {"like": "bag"}), Step("open_and_move", 1.0)]
        steps += [Step("hold_in_quarantine", 0.0, {"days": days})]
    elif keep_closed and apart_much:
        steps += [Step("prepare_container", 0.0, {"like": "bag"}), Step("open_and_move", 1.0)]
        steps += [Step("add_tank_water", mixing, {"parts": parts_of(mixing)}), Step("net_over")]
    elif keep_closed:
        steps += [Step("open_and_move", 1.0)]
    else:
        steps += [Step("add_tank_water", mixing, {"parts": parts_of(mixing)}), Step("net_over")]
    return (*steps, Step("discard_bag_water"), Step("watch", 0.0, {"hours": 24.0}))


def parts_of(minutes: float) -> float:
    """In how many portions tank water is added: one every five minutes; common practice."""
    return float(max(3, math.ceil(minutes / 5.0)))


def _not_ready(state: State) -> str | None:
    """Why no animal should go into this tank now."""
    from core.advice.findings import find  # it builds on half of the advice

    for finding in find(state, frozenset({"ammonia", "nitrite", "chlorine", "total_chlorine"})):
        if finding.severity == "alarm" or finding.id in {"cycling_ammonia", "cycling_nitrite"}:
            return finding.id
    return None


# Quarantine -----------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Duty:
    """Something to do with a quarantine tank, every so many days until it ends."""

    id: Literal["look", "test", "change"]
    every_days: int


QUARANTINE: Final[tuple[Duty, ...]] = (Duty("look", 1), Duty("test", 2), Duty("change", 3))
"""A tank of its own with its own nets and reminders, for `QUARANTINE_DAYS`; common practice, no
source. No medicine by guess: a fish vet decides."""
