"""What lies in the filter or the tank: lime that dissolves until the water is full, and leaves."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final

from core.advice import limits
from core.advice.ammonia_gate import gate_for
from core.advice.bounds import Bound, past_animals
from core.advice.findings import is_kept_soft
from core.advice.outlook import Outlook, Stage, outlook_of
from core.advice.plan import Refusal
from core.advice.scheduling import ammonia_facts, conflict
from core.advice.state import State
from core.errors import CoreError
from core.water import Water, in_air, rest_on_mineral, saturation_index, with_organic_acid
from core.water.minerals import Mineral

LIME: Final[Mapping[str, Mineral]] = {
    "crushed coral": "aragonite",
    "aragonite": "aragonite",
    "shells": "aragonite",
    "limestone": "calcite",
    "calcium carbonate": "calcite",
}
ACID_MEDIA: Final = frozenset({"peat", "leaves", "driftwood"})

ORGANIC: Final = 0.2
"""Weak acid of water like dark tea: check values R15 (grade A). [mmol/L]"""

WORTH: Final = 0.2
"""A rise of KH smaller than this is called nothing; within every kit. [°dH]"""


@dataclass(frozen=True, slots=True)
class End:
    """Where a water ends over a medium: with its own carbon dioxide, and if that leaves."""

    ph: float
    kh: float
    gh: float


@dataclass(frozen=True, slots=True)
class Lime:
    """What lime does in a tank.

    Attributes
    ----------
    substance : str
        The medium.
    outlook : Outlook
        The water now.
    saturation_index : float
        Of the water with its own carbon dioxide; over 0 it does nothing.
    acts : bool
        True where it would raise KH by what a kit can hope to see.
    end, end_leaves : End
        Where the water ends if it lies there long enough.
    only_below : float or None
        Total ammonia that the end bears, where it is unknown. [mg/L as N]
    bound : Bound or None
        The animal on record that the end would suit least, where it is past what it suits.
    soft : bool
        True where a tank is kept soft, on purpose or for what lives in it.
    thin : bool
        True where a tank's KH is so low that any rise lifts pH far.
    """

    substance: str
    outlook: Outlook
    saturation_index: float
    acts: bool
    end: End
    end_leaves: End
    only_below: float | None = None
    bound: Bound | None = None
    soft: bool = False
    thin: bool = False

    @property
    def is_for_it(self) -> bool:
        """False where lime would act and this tank is not one for it."""
        return not (self.acts and (self.bound or self.soft or self.thin))


@dataclass(frozen=True, slots=True)
class Leaves:
    """What leaves, wood or peat can do: pH at rest before and with water like dark tea."""

    substance: str
    outlook: Outlook
    ph_before: float
    ph_after: float


def lime_in(name: str, state: State) -> Lime | Refusal:
    """Tell whether a lime does anything in a tank, and where the water would end.

    Parameters
    ----------
    name : str
        A key of `LIME`.
    state : State
        The tank and its readings.

    Returns
    -------
    Lime or Refusal
        Refusals: kh_unknown, contradiction, and as for any plan that raises pH ammonia,
        ammonia_old, temperature_unknown.
    """
    outlook = _outlook(state)
    if isinstance(outlook, Refusal):
        return outlook
    mineral = LIME[name]
    here = in_air(outlook.water, outlook.pressure)
    index = saturation_index(here, mineral)
    end, leaves = (
        _end(outlook.water, mineral, pressure) for pressure in (outlook.pressure, limits.OPEN_AIR)
    )
    acts = index < 0.0 and end.kh - outlook.water.kh > WORTH
    only_below = None
    if acts and state.tank.name:
        gate = gate_for(state, outlook, [Stage(outlook.water, end.ph, end.ph, leaves.ph)])
        if isinstance(gate, str):
            return Refusal(gate, ammonia_facts(state))
        only_below = gate.only_below
    found = Lime(name, outlook, float(index), acts, end, leaves, only_below)
    return _judged(found, state) if acts and state.tank.name else found


def _judged(found: Lime, state: State) -> Lime:
    """What lime that acts is to this tank: to its animals, and to a KH next to nothing."""
    now, end = found.outlook, found.end
    ends = {"kh": (now.water.kh, end.kh), "gh": (now.water.gh, end.gh)}
    if now.ph is not None:
        ends["ph"] = (now.ph, end.ph)
    thin = now.water.kh < limits.KH_BLIND_BELOW
    return replace(found, bound=past_animals(state, ends), soft=is_kept_soft(state), thin=thin)


def leaves_in(name: str, state: State) -> Leaves | Refusal:
    """Tell how far leaves, wood or peat can move pH at this KH."""
    outlook = _outlook(state)
    if isinstance(outlook, Refusal):
        return outlook
    tea = with_organic_acid(outlook.water, ORGANIC)
    return Leaves(
        name,
        outlook,
        in_air(outlook.water, outlook.pressure).ph,
        in_air(tea, outlook.pressure).ph,
    )


def _outlook(state: State) -> Outlook | Refusal:
    kh = state.last("kh")
    if kh is None or kh.is_limit:
        return Refusal("kh_unknown")
    if (problem := conflict(state)) is not None:
        return problem
    try:
        return outlook_of(state, kh.value, kh_is_fresh=kh.is_fresh(state.now))
    except CoreError:
        return Refusal("contradiction", {"kh": kh.value})


def _end(water: Water, mineral: Mineral, pressure: float) -> End:
    rest = rest_on_mineral(water, mineral, pco2=pressure)
    return End(rest.solution.ph, rest.solution.water.kh, rest.solution.water.gh)
