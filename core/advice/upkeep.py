"""What a reef uses up in a day, and what holds a value once it is right."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from core.advice import limits
from core.advice.ammonia_gate import gate_limit, upper_total
from core.advice.outlook import Outlook, Stage, staged, steepness
from core.advice.plan import Upkeep, Weighed
from core.advice.scheduling import per_gram, saturation_after, steps_of
from core.advice.state import Measured, State
from core.advice.trends import consumption

USED_UP: Final = frozenset({"kh", "calcium", "magnesium"})
"""What corals and calcareous algae take up."""


def upkeep_of(
    state: State,
    analyte: str,
    name: str,
    volume_l: float,
    outlook: Outlook | None,
    stages: Sequence[Stage],
) -> Upkeep | None:
    """Work out the daily need of the sea for an analyte.

    Parameters
    ----------
    state : State
        With its history and events.
    analyte : str
        kh, calcium or magnesium.
    name : str
        The substance that makes up for it.
    volume_l : float
        Net volume. [L]
    outlook : Outlook or None
        The water now.
    stages : sequence of Stage
        The water after each part of the correction.

    Returns
    -------
    Upkeep or None
        None outside the sea, and where two readings surely show no use.
    """
    if not state.tank.is_sea or outlook is None or analyte not in USED_UP:
        return None
    pair = undisturbed_pair(state, analyte)
    used = None if pair is None else consumption(*pair)
    if used is None or not used.is_sure:
        return None
    gives = per_gram(name, analyte)
    if used.per_day > steps_of(state)[analyte] or gives <= 0.0:
        return Upkeep(analyte, used, None)
    salt = Weighed(name, used.per_day * volume_l / gives)
    bears = _is_borne(state, outlook, stages[-1], salt, volume_l)
    return Upkeep(analyte, used, salt if bears else None)


def undisturbed_pair(state: State, analyte: str) -> tuple[Measured, Measured] | None:
    """The last two readings of an analyte, where nothing was done to the water between them."""
    told = state.past.between(analyte, state.now - limits.NEED_LOOKED_BACK, state.now)
    if len(told) < 2 or state.events is None or not told[-1].is_fresh(state.now):
        return None
    earlier, later = told[-2:]
    if any(e.disturbs and earlier.at <= e.at <= later.at for e in state.events):
        return None
    return earlier, later


def _is_borne(state: State, outlook: Outlook, last: Stage, salt: Weighed, volume_l: float) -> bool:
    """Whether the daily amount breaks no limit when it goes in at one time."""
    part = [(salt.substance, salt.grams)]
    (after,) = staged(replace(outlook, water=last.water), [part], volume_l)
    if steepness(outlook, last, after) > limits.PH_STEP + limits.PH_ROUNDING:
        return False
    if saturation_after(last.water, part, volume_l, after) > limits.SATURATION_REFUSED:
        return False
    total = upper_total(state)
    worst = max(after.at_once, after.expected if outlook.co2_known else after.leaves)
    return total is None or total * after.share(worst) <= gate_limit(state)
