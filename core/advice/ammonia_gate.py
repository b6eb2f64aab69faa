"""May a plan be carried out while there is ammonia? A higher pH frees the poison.

The gate looks at every stage of a plan, at once and stood: with the carbon dioxide that the tank
is expected to keep, and if that leaves.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Final, Literal

from core.advice import limits, livestock
from core.advice._livestock_words import is_young
from core.advice.day_ph import daily_rise
from core.advice.nobodys import is_nobodys
from core.advice.outlook import Outlook, Stage, un_ionised_share
from core.advice.state import Measured, State, ammonia_as_n
from core.water import chronic_criterion, un_ionised_fraction

STILL_WARNS: Final = timedelta(days=14)
"""So long ammonia that was never measured again stands in the way; common practice."""

TENDER: Final = ("shrimp", "prawn", "mussel", "clam", "crayfish")
"""Words of animals on record that have the stricter gate."""


@dataclass(frozen=True, slots=True)
class Gate:
    """What a plan that passed rests on.

    Attributes
    ----------
    only_below : float or None
        The highest total ammonia that the plan bears, where ammonia is unknown or old; None
        where a fresh reading decided. [mg/L as N]
    nh3_n : tuple of float, or None
        Un-ionised ammonia after the plan: expected, and if the carbon dioxide leaves; None where
        total ammonia is unknown. [mg/L as N]
    keep_co2 : bool
        True where the plan holds only while aeration and carbon dioxide stay as they are.
    limit : float or None
        Un-ionised ammonia that the gate allows; None where no animal lives. [mg/L as N]
    temperature : float
        Temperature that the gate reckoned with. [°C]
    temperature_assumed : bool
        True where no temperature was known.
    bears : float
        The highest total ammonia under which the plan holds, read now or later. [mg/L as N]
    """

    only_below: float | None
    nh3_n: tuple[float, float] | None
    keep_co2: bool
    limit: float | None
    temperature: float
    temperature_assumed: bool
    bears: float


@dataclass(frozen=True, slots=True)
class Shares:
    """Poisonous shares of total ammonia: the highest of all stages, and of the water now."""

    expected: float
    leaves: float
    leaves_now: float

    @property
    def raises(self) -> bool:
        """True where the plan raises the figure if CO2 leaves by more than it may."""
        return self.leaves > limits.NH3_RAISE * self.leaves_now

    def bears(self, limit: float) -> float:
        """The highest total ammonia under which the plan passes. [mg/L as N]"""
        return limit / (max(self.expected, self.leaves) if self.raises else self.expected)


def gate_for(
    state: State, outlook: Outlook, stages: Sequence[Stage]
) -> Gate | Literal["ammonia", "ammonia_old", "ammonia_stalls", "temperature_unknown"]:
    """Judge a plan by the last total ammonia.

    Parameters
    ----------
    state : State
        The tank and its readings.
    outlook : Outlook
        Its water now.
    stages : sequence of Stage
        The water after each part.

    Returns
    -------
    Gate or str
        The gate passed, or the reason for refusing.

    Notes
    -----
    Refused where the expected figure is over the limit, or where the figure if CO2 leaves is
    over it and the plan raises that figure by more than a quarter; also where the last reading is
    old but of late, and more than the plan would bear. Without a pH the tank's own
    carbon dioxide is unknown, and the figure if CO2 leaves counts as what is expected. A pH that
    was higher earlier in the day rises as far above what the plan leads to. Where no animal at all
    lives there is no such limit: ammonia feeds the filter, up to what stalls it.
    """
    if is_nobodys(state):
        return _for_a_filter(state, outlook, stages)
    limit = gate_limit(state)
    shares = shares_of(outlook, stages, rise=daily_rise(state))
    bears = shares.bears(limit)
    total = upper_total(state)
    warmth = stages[-1].water.temperature, outlook.temperature_assumed
    if total is None:
        if not state.tank.is_sea:
            bears = min(bears, _chronic(outlook, stages))
        held = _rounded_down(bears)
        if (before := old_total(state)) is not None and before > held:
            return "ammonia_old"
        return Gate(held, None, held * shares.leaves > limit, limit, *warmth, held)
    if total > bears:
        if outlook.temperature_assumed and total * _cooler(outlook, shares) <= limit:
            return "temperature_unknown"
        return "ammonia"
    last = stages[-1]
    after = total * last.share(last.expected), total * last.share(last.leaves)
    return Gate(None, after, total * shares.leaves > limit, limit, *warmth, _rounded_down(bears))


def _for_a_filter(
    state: State, outlook: Outlook, stages: Sequence[Stage]
) -> Gate | Literal["ammonia_stalls"]:
    most, total = limits.CYCLING_AMMONIA, upper_total(state)
    if total is not None and total > most:
        return "ammonia_stalls"
    warmth = stages[-1].water.temperature, outlook.temperature_assumed
    return Gate(most if total is None else None, None, False, None, *warmth, most)


def _chronic(outlook: Outlook, stages: Sequence[Stage]) -> float:
    """Total ammonia over which animals are harmed in the long run, plan or no plan. [mg/L as N]

    Under pH 7 the ammonium itself counts, so the un-ionised part alone would allow far too much.
    """
    water = stages[-1].water
    highest = max(outlook.ph_now, *(max(each.at_once, each.expected) for each in stages))
    warmth = min(max(water.temperature, 0.0), 30.0)
    return float(chronic_criterion(min(max(highest, 6.5), 9.0), warmth))


def _rounded_down(total: float) -> float:
    """Two digits that can be kept in mind, never more than it is. [mg/L as N]"""
    tens = 100.0 if total < 1.0 else 10.0
    return math.floor(total * tens + 1e-9) / tens


def shares_of(outlook: Outlook, stages: Sequence[Stage], *, rise: float = 0.0) -> Shares:
    """The highest poisonous shares that a plan leads to, with the rise of pH within a day."""
    risen = max(each.share(each.expected + rise) for each in stages) if rise else 0.0
    now = un_ionised_share(outlook.water, outlook.ph_leaves)
    if rise:
        now = max(now, un_ionised_share(outlook.water, outlook.ph_now + rise))
    return Shares(
        max(risen, *(max(_expected(outlook, each), each.share(each.at_once)) for each in stages)),
        max(risen, *(each.share(each.leaves) for each in stages)),
        now,
    )


def gate_limit(state: State) -> float:
    """Un-ionised ammonia that no plan may pass. [mg/L as N]"""
    return limits.NH3_GATE_TENDER if is_tender(state) else limits.NH3_GATE


def is_tender(state: State) -> bool:
    """True for the sea, and where fry or kinds that bear less ammonia are on record.

    The table knows the kinds in all languages; words such as fry are in no table.
    """
    kept = [stock.species.casefold() for stock in state.tank.stock if stock.count > 0]
    if state.tank.is_sea or any(word in species for species in kept for word in TENDER):
        return True
    if any(is_young(species) for species in kept):
        return True
    return bool(state.tank.stock) and livestock.is_tender(state.tank)


def upper_total(state: State) -> float | None:
    """Total ammonia that counts: the upper end of a fresh reading. [mg/L as N]

    None where it is unknown or old; infinite where the kit's scale ended.
    """
    total = state.fresh("ammonia")
    return None if total is None else ammonia_as_n(_upper(total), total.basis)


def shown(state: State) -> Measured | None:
    """The last reading of total ammonia where it shows any, and is of late enough to warn."""
    total = state.last("ammonia")
    if total is None or total.qualifier == "<" or total.value <= 0.0:
        return None
    return total if total.age(state.now) <= STILL_WARNS else None


def old_total(state: State) -> float | None:
    """Total ammonia of a reading that is too old to decide, and of late enough to warn. [mg/L]"""
    total = state.last("ammonia")
    if total is None or total.is_fresh(state.now) or total.age(state.now) > STILL_WARNS:
        return None
    return ammonia_as_n(_upper(total), total.basis)


def _upper(total: Measured) -> float:
    return math.inf if total.qualifier == ">" else total.high


def _expected(outlook: Outlook, stage: Stage) -> float:
    return stage.share(stage.expected if outlook.co2_known else stage.leaves)


def _cooler(outlook: Outlook, shares: Shares) -> float:
    """The deciding share at the coolest temperature, with the pH as it was reckoned."""
    deciding = max(shares.expected, shares.leaves) if shares.raises else shares.expected
    # One pH holds both shares: the cooler one follows from the odds, which the constant scales.
    odds = deciding / max(1.0 - deciding, 1e-12)
    water = outlook.water
    warm, cool = (
        un_ionised_fraction(8.0, t, water.salinity)
        for t in (min(max(water.temperature, 0.0), 50.0), limits.COOLEST_ASSUMED)
    )
    cooler = odds * (cool / (1.0 - cool)) / (warm / (1.0 - warm))
    return cooler / (1.0 + cooler)
