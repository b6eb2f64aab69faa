"""Single additions against a poison or for a cycle: thiosulfate, salt, ammonium chloride."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Final

from core.advice import limits
from core.advice.dosing import volume_for
from core.advice.outlook import temperature_of
from core.advice.plan import Fact, Refusal
from core.advice.potassium import dosed_so_far
from core.advice.salted import salted
from core.advice.since import A_DAY
from core.advice.state import State, ammonia_as_n, nitrite_as_no2
from core.water import (
    ammonia_freed,
    chloride_needed,
    substance,
    thiosulfate_needed,
    un_ionised_fraction,
)

CHLORINE_HIGHEST: Final = 20.0
"""A wish over this is a slip; common practice. [mg/L]"""

NITRITE_HIGHEST: Final = 50.0
"""As above. [mg/L NO2]"""

MINDS_SALT: Final = (
    "cory", "catfish", "loach", "pleco", "otocinclus", "snail", "shrimp", "mussel", "tetra",
)  # fmt: skip
"""Words of animals that bear salt badly; common practice."""

BEARS_NO_CHLORIDE: Final = ("bass", "sunfish", "bluegill")
"""Largemouth bass get no protection: Tomasso 1986 (grade A, abstract)."""


@dataclass(frozen=True, slots=True)
class Dechlorination:
    """Thiosulfate against chlorine or chloramine, and the ammonia that chloramine would free.

    Attributes
    ----------
    pentahydrate, anhydrous : float
        Mass in either form, excess included. [g]
    chlorine : float
        Total chlorine reckoned with. [mg/L]
    assumed : bool
        True where nobody measured it.
    freed_n : float
        Total ammonia if all of it is chloramine. [mg/L as N]
    freed_nh3_n : float or None
        Of that the poisonous part at the tank's pH; None without a pH. [mg/L as N]
    """

    volume_l: float
    pentahydrate: float
    anhydrous: float
    chlorine: float
    assumed: bool
    freed_n: float
    freed_nh3_n: float | None


@dataclass(frozen=True, slots=True)
class NitriteSalt:
    """Sodium chloride until chloride is ten times nitrite; parts of 100 mg/L chloride at most.

    `chloride_dosed` is what logged doses left of `chloride_now`, less what changes took. [mg/L]
    """

    volume_l: float
    grams: float
    count: int
    nitrite: float
    chloride: float
    chloride_now: float
    chloride_assumed: bool
    chloride_dosed: float = 0.0


@dataclass(frozen=True, slots=True)
class Cycling:
    """Ammonium chloride that feeds a tank without animals."""

    volume_l: float
    grams: float
    start: float
    target: float


def dechlorinate(
    chlorine: float | None, volume_l: float | None, state: State
) -> Dechlorination | Refusal:
    """Work out thiosulfate for a volume of tap water.

    Parameters
    ----------
    chlorine : float or None
        Total chlorine; None where it was not measured. [mg/L]
    volume_l : float or None
        Water to treat; None takes the tank's. [L]
    state : State
        The tank that it goes into, for its pH and temperature.
    """
    volume = volume_for(volume_l, state)
    if isinstance(volume, Refusal):
        return volume
    assumed = chlorine is None
    amount = limits.CHLORINE_ASSUMED if chlorine is None else chlorine
    if not 0.0 < amount <= CHLORINE_HIGHEST:
        return Refusal("chlorine_implausible", {"chlorine": amount})
    needed = thiosulfate_needed(amount, limits.THIOSULFATE_EXCESS) * volume / 1000.0
    dry = substance("sodium thiosulfate").molar_mass
    wet = substance("sodium thiosulfate pentahydrate").molar_mass
    freed = ammonia_freed(amount)
    ph = state.fresh("ph")
    share = None
    if ph is not None:
        warm, _ = temperature_of(state)
        share = un_ionised_fraction(ph.value, warm, state.salinity)
    return Dechlorination(
        volume,
        needed,
        needed * dry / wet,
        amount,
        assumed,
        freed,
        None if share is None else freed * share,
    )


def salt_for_nitrite(
    nitrite: float | None, volume_l: float | None, state: State
) -> NitriteSalt | Refusal:
    """Work out sodium chloride against nitrite, for animals that bear it.

    Parameters
    ----------
    nitrite : float or None
        As the ion; None takes the tank's reading, its cautious upper end. [mg/L NO2]
    volume_l : float or None
        Net volume; None takes the tank's. [L]
    state : State
        The tank and its readings.
    """
    volume = volume_for(volume_l, state)
    if isinstance(volume, Refusal):
        return volume
    if state.tank.is_sea or state.salinity > limits.SALT_ENOUGH:
        return Refusal("salt_enough", {"salinity": state.salinity})
    if nitrite is None:
        reading = state.fresh("nitrite")
        if reading is None:
            return Refusal("reading_unknown", {"analyte": "nitrite"})
        top = reading.high if math.isfinite(reading.high) else reading.value
        nitrite = nitrite_as_no2(top, reading.basis)
    if not 0.0 < nitrite <= NITRITE_HIGHEST:
        return Refusal("nitrite_implausible", {"nitrite": nitrite})
    if (before := salted(state)) is not None and before.unweighed:
        return Refusal("salt_unweighed")
    held = state.last("chloride")
    dosed = dosed_so_far(state, "chloride")
    now = (held.low if held is not None else 0.0) + dosed
    lacking = chloride_needed(nitrite, limits.CHLORIDE_PER_NITRITE) - now
    if lacking <= 0.0:
        return Refusal("chloride_enough", {"chloride": now, "nitrite": nitrite})
    if (refusal := _given_today(state, now, lacking)) is not None:
        return refusal
    per_gram = substance("sodium chloride").milligrams_per_gram("chloride")
    count = math.ceil(lacking / limits.CHLORIDE_DOSE - 1e-9)
    return NitriteSalt(
        volume, lacking * volume / per_gram, count, nitrite, lacking, now, held is None, dosed
    )


def _given_today(state: State, now: float, lacking: float) -> Refusal | None:
    """Refuse what would be more than a day's chloride with what went in within a day."""
    late = tuple(
        each
        for each in state.events or ()
        if each.what.kind == "dose" and state.now - A_DAY < each.at <= state.now
    )
    given = dosed_so_far(replace(state, events=late), "chloride")
    step = limits.CHLORIDE_DOSE
    if given <= 0.0 or given + min(lacking, step) <= step * limits.WEIGHED:
        return None
    first = min(each.at for each in late)
    hours = 24.0 - (state.now - first).total_seconds() / 3600.0
    facts: dict[str, Fact] = {"analyte": "chloride", "was": now - given, "step": step}
    return Refusal("moved_today", facts | {"hours": hours})


def minds_salt(state: State) -> tuple[str, ...]:
    """Animals on record that bear salt badly, as the keeper calls them."""
    return tuple(
        stock.species
        for stock in state.tank.stock
        if stock.count > 0 and any(word in stock.species.casefold() for word in MINDS_SALT)
    )


def cycle(target_n: float, volume_l: float | None, state: State) -> Cycling | Refusal:
    """Work out ammonium chloride for a tank without any animals.

    The caller has asked and was told that there are none; animals on record refuse it anyway.
    """
    if any(stock.count > 0 for stock in state.tank.stock):
        return Refusal("animals_on_record")
    volume = volume_for(volume_l, state)
    if isinstance(volume, Refusal):
        return volume
    if not 0.0 < target_n <= limits.CYCLING_AMMONIA:
        return Refusal("cycling_implausible", {"to": target_n, "highest": limits.CYCLING_AMMONIA})
    held = state.fresh("ammonia")
    start = 0.0 if held is None else ammonia_as_n(held.value, held.basis)
    if target_n <= start:
        return Refusal("target_reached", {"analyte": "ammonia", "from": start, "to": target_n})
    per_gram = substance("ammonium chloride").milligrams_per_gram("ammonia")
    return Cycling(volume, (target_n - start) * volume / per_gram, start, target_n)
