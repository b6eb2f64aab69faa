"""What a tank's water will be after something is put in: at once, and after standing.

A tank is not in balance with the air. Its own carbon dioxide, told by its last pH and KH, is what
is expected to stay; beside it stands the water that has lost it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from core.advice import limits
from core.advice.state import Measured, State
from core.errors import CoreError
from core.water import Water, add, in_air, solve, un_ionised_fraction
from core.water._elementwise import functions_for
from core.water.solution import with_ph

Dose = Sequence[tuple[str, float]]
"""What goes in at one time: names of `core.water.substances` and grams."""

READ: Final = ("ph", "gh", "salinity", "calcium", "magnesium", "chloride", "nitrate", "sodium")
"""Readings besides KH and temperature that a water is made of; pH comes after the rest."""


@dataclass(frozen=True, slots=True)
class Outlook:
    """A tank's water now, with what decides its pH later.

    Attributes
    ----------
    water : Water
        Now: with the carbon that its pH tells, else in air of a stocked tank.
    ph : float or None
        The reading that tells its carbon dioxide; None where there is none young enough.
    pressure : float
        Carbon dioxide that it is expected to keep. [µatm]
    temperature_assumed : bool
        True where none was measured: then it is the warmest.
    ph_now, ph_open_air : float
        Of `water`, and of the same in open air.
    """

    water: Water
    ph: float | None
    pressure: float
    temperature_assumed: bool
    ph_now: float
    ph_open_air: float

    @property
    def co2_known(self) -> bool:
        """True where the tank's own carbon dioxide is known."""
        return self.ph is not None

    @property
    def ph_leaves(self) -> float:
        """PH now if the carbon dioxide left; never under the pH that was read."""
        if self.ph is None:
            return self.ph_open_air
        return functions_for(self.ph).maximum(self.ph_open_air, self.ph)


@dataclass(frozen=True, slots=True)
class Stage:
    """The water after one part.

    Attributes
    ----------
    water : Water
        At rest with the carbon dioxide that is expected.
    at_once : float
        pH right after mixing.
    expected : float
        pH after standing with the tank's own carbon dioxide.
    open_air : float
        pH after standing in open air.
    """

    water: Water
    at_once: float
    expected: float
    open_air: float

    @property
    def leaves(self) -> float:
        """PH if the carbon dioxide leaves: the highest of all three.

        Where plants take the carbon dioxide a tank holds less of it than the air would give.
        """
        return max(self.open_air, self.at_once, self.expected)

    def share(self, ph: float) -> float:
        """Share of total ammonia that is poisonous in this water at a pH."""
        return un_ionised_share(self.water, ph)


def un_ionised_share(water: Water, ph: float, temperature: float | None = None) -> float:
    """Share of total ammonia that is un-ionised in a water at a pH, as warm as it is or as said."""
    warmth = water.temperature if temperature is None else temperature
    xp = functions_for(warmth)
    within = xp.minimum(xp.maximum(warmth, 0.0), 50.0)
    return un_ionised_fraction(ph, within, water.salinity)


def temperature_of(state: State) -> tuple[float, bool]:
    """Temperature to reckon with, and whether it is only assumed (the warmest). [°C]"""
    known = state.fresh("temperature")
    if known is None:
        return limits.WARMEST_ASSUMED, True
    return min(max(known.value, 0.0), 45.0), False


def outlook_of(state: State, kh: float, *, kh_is_fresh: bool = True) -> Outlook:
    """Make the water of a tank from its readings.

    Parameters
    ----------
    state : State
        The tank and its readings.
    kh : float
        KH to reckon with. [°dH]
    kh_is_fresh : bool
        False where it is too old to tell, with the pH, how much carbon dioxide there is.

    Returns
    -------
    Outlook
        Without a fresh pH and KH, its own carbon dioxide is unknown.

    Raises
    ------
    CoreError
        If the readings are no water that can be.
    """
    temperature, assumed = temperature_of(state)
    given: dict[str, float] = {"kh": kh, "temperature": temperature}
    for name in READ[1:]:
        reading = state.last(name)
        if reading is not None and not reading.is_limit:
            given[name] = reading.value
    if state.salinity > 0.0:
        given["salinity"] = state.salinity
    ph = state.fresh("ph")
    if ph is not None and (not kh_is_fresh or ph.is_limit):
        ph = None
    water = _made(given)  # without a pH: in open air
    outdoors = solve(water).ph
    if ph is None:
        here = in_air(water, limits.STOCKED_AIR)
        return Outlook(here.water, None, limits.STOCKED_AIR, assumed, here.ph, outdoors)
    here = with_ph(water, ph.value)
    pressure = min(max(here.pco2, 0.01), 1e6)
    return Outlook(here.water, ph.value, pressure, assumed, ph.value, outdoors)


def outlook_for_buffer(state: State, kh: Measured) -> Outlook:
    """The water of a tank that is to be given buffer.

    With next to no KH the kit's doubt decides: a KH of 0 with a pH of 6.4 would mean less carbon
    dioxide than open air gives, and a part of buffer would seem to lift pH far more than it can.
    Then as much KH is taken as gives the pH in open air, where the kit leaves so much open.
    """
    made = outlook_of(state, kh.value, kh_is_fresh=kh.is_fresh(state.now))
    if kh.low >= limits.KH_BLIND_BELOW or not made.co2_known or made.pressure >= limits.OPEN_AIR:
        return made
    # At one pH the pressure is linear in KH.
    less, more = kh.value + KIT_HALF_STEP / 2.0, kh.value + KIT_HALF_STEP
    low, high = (outlook_of(state, each).pressure for each in (less, more))
    there = less + (limits.OPEN_AIR - low) * (more - less) / (high - low)
    return outlook_of(state, there) if kh.value < there <= more else made


KIT_HALF_STEP: Final = 0.5
"""Half a drop of the usual kit, which may be in a water that turns at the first. [°dH]"""


def _made(given: Mapping[str, float]) -> Water:
    """Make a water; ions that do not fit the rest are left out rather than the answer."""
    try:
        return Water.from_readings(**given)  # type: ignore[arg-type]
    except CoreError:
        least = {k: v for k, v in given.items() if k in {"kh", "temperature", "salinity"}}
        return Water.from_readings(**least)  # type: ignore[arg-type]


def staged(outlook: Outlook, parts: Iterable[Dose], volume_l: float) -> Iterator[Stage]:
    """Follow the water through the parts of a plan, at rest between them.

    Parameters
    ----------
    outlook : Outlook
        The water now.
    parts : iterable of Dose
        What goes in each time.
    volume_l : float
        Net volume. [L]
    """
    water = outlook.water
    for part in parts:
        for name, grams in part:
            water = add(water, name, grams, volume_l)
        stage = stage_of(outlook, water)
        yield stage
        water = stage.water


def stage_of(outlook: Outlook, mixed: Water) -> Stage:
    """Follow a water that was just mixed to its rest."""
    at_once = solve(mixed).ph
    rested = in_air(mixed, outlook.pressure)
    return Stage(rested.water, at_once, rested.ph, in_air(mixed, limits.OPEN_AIR).ph)


def steepness(outlook: Outlook, before: Stage | None, stage: Stage) -> float:
    """Largest change of pH that a part makes, like with like: at once, and stood."""
    rest = outlook.ph_now if before is None else before.expected
    open_air = outlook.ph_open_air if before is None else before.open_air
    return max(
        abs(stage.at_once - rest), abs(stage.expected - rest), abs(stage.open_air - open_air)
    )


def with_premises(state: State, premises: Mapping[str, float]) -> State:
    """Let the question's own conditions stand for readings of now."""
    if not premises:
        return state
    told = {
        name: Measured(name, value, value, value, state.now) for name, value in premises.items()
    }
    return replace(state, readings={**state.readings, **told})
