"""New animals home: the order of work, by how the bag's water differs from the tank's; pure data.

After a long journey the bag is not opened for a slow drip (`bags` tells why): it floats closed for
the warmth, and then the animals go at once into clean water that is like the bag's.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final, Literal

from core.advice import limits
from core.advice.bags import (
    BagAmmonia,
    Difference,
    bag_ammonia,
    differences_of,
    foreign_to,
    ph_apart,
)
from core.advice.findings import find
from core.advice.livestock import Misfit, Species, fits
from core.advice.state import Measured, State

LONG_JOURNEY: Final = 3.0
"""Hours in a closed bag after which it is full of carbon dioxide; common practice."""

FLOAT_MINUTES: Final = 15.0
MIX_MINUTES: Final = 15.0
"""At least so long each: text headed "7.5 Acclimatizing fish", in a copy (grade B); attributed
from memory to FAO Fisheries Technical Paper 589."""

PH_APART: Final = 0.5
PH_HOURS: Final = 24.0
"""pH further apart than this: at least a day (the same text, grade B)."""

WARMTH_APART: Final = 5.0
"""Further apart than this a floating bag bridges nothing: 1 °C an hour; common practice. [°C]"""
SOLIDS_A_DAY: Final = 1.5
"""Factor of dissolved solids that animals follow in a day; common practice, no source."""

MINUTES_PER_DEGREE_WARMTH: Final = 5.0
MINUTES_PER_DEGREE_HARDNESS: Final = 10.0
WARMTH_FREE: Final = 2.0
HARDNESS_FREE: Final = 2.0
LONGEST_DRIP: Final = 120.0
"""Common practice, no source. [min per °C or °dH, °C, °dH, min]"""


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
    deciding : str or None
        The analyte that asks for most of the days.
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
    deciding: str | None = None

    @property
    def minutes(self) -> float:
        """All steps together, without days of waiting. [min]"""
        return sum(step.minutes for step in self.steps)


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
    differences = differences_of(bag, state)
    ammonia = bag_ammonia(bag, state)
    keep_closed = hours is None or hours >= LONG_JOURNEY
    keep_closed = keep_closed or (ammonia is not None and ammonia.is_dangerous)
    misfits = tuple(m for row in kinds for m in fits(row, state) if m.certain)
    slow = 2.0 if any(row.level("change") == "high" for row in kinds) else 1.0
    # Whose kind is not known may be an invertebrate.
    invertebrates = not kinds or any(row.is_invertebrate for row in kinds)
    apart = ph_apart(bag, state, fresh=not keep_closed)
    deciding, days = _days(differences, apart, invertebrates=invertebrates)
    steps = _steps(differences, keep_closed, slow, days)
    if (problem := _not_ready(state)) is not None:
        steps = (Step("not_yet", 0.0, {"reason": problem}), *steps)
    salt_unknown = state.salinity > limits.SALT_WATER and "salinity" not in bag
    foreign = foreign_to(bag, state, kinds, salt_water=salt_water)
    if foreign is not None:
        steps, deciding, days, misfits = (Step("not_this_water"),), None, 0.0, ()
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
        deciding,
    )


def _days(
    differences: Sequence[Difference], ph_apart: float, *, invertebrates: bool
) -> tuple[str | None, float]:
    """Days in water of their own, where hours cannot bridge to the tank's, and what asks for most.

    Conductivity and dissolved solids count where no hardness tells what they are made of.
    """
    known = {difference.analyte: difference for difference in differences}
    buffer = "kh" if "kh" in known else "ph"
    asked: dict[str, float] = {}
    if abs(ph_apart) > PH_APART + 1e-9 and buffer in known:
        asked[buffer] = PH_HOURS / 24.0
    if (warmth := known.get("temperature")) is not None and abs(warmth.change) > WARMTH_APART:
        asked["temperature"] = 1.0
    if (salt := known.get("salinity")) is not None:
        up = limits.SALINITY_UP
        step = up if salt.change > 0.0 or invertebrates else limits.SALINITY_DOWN
        if abs(salt.change) > step:
            asked["salinity"] = math.ceil(abs(salt.change) / step - 1e-9)
    for name in () if {"kh", "gh"} & known.keys() else ("conductivity", "tds"):
        solids = known.get(name)
        if solids is not None and min(solids.bag, solids.tank) > 0.0:
            apart = abs(math.log(solids.bag / solids.tank)) / math.log(SOLIDS_A_DAY)
            asked |= {name: math.ceil(apart - 1e-9)} if apart > 1.0 else {}
    most = max(asked, key=lambda name: asked[name], default=None)
    return most, asked[most] if most is not None else 0.0


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
    for finding in find(state, frozenset({"ammonia", "nitrite", "chlorine", "total_chlorine"})):
        if finding.severity == "alarm" or finding.id in {"cycling_ammonia", "cycling_nitrite"}:
            return finding.id
    return None
