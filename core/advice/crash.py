"""Whether buffer is running out so fast that it may be raised at the pace of an emergency."""

from __future__ import annotations

from typing import Final

from core.advice import limits
from core.advice.findings import low_kh_limit, ph_moved
from core.advice.state import State

ORDINARY: Final = limits.KH_STEP
FALLEN: Final = -limits.PH_DANGER + 1e-9


def kh_step(state: State, *, called: bool = False) -> float:
    """Most that KH may rise in a day: twice as much where pH is crashing. [°dH]

    Parameters
    ----------
    state : State
        The tank and its readings.
    called : bool, optional
        True where the keeper calls it an emergency or says that pH crashed.

    Returns
    -------
    float
        `limits.KH_STEP`; more only in an emergency, and then never more than doubles the low end
        of the reading.

    Notes
    -----
    An emergency is: KH and pH of the last three days, KH under what holds pH in this kind of water
    but its low end at least 1 °dH, total ammonia measured, and either pH fallen by 0.5 or more,
    like with like, or the keeper's word for it with pH under `limits.PH_CRASHED`. Never where the
    water is kept soft on purpose. The other limits bind as always.
    """
    kh, ph = state.fresh("kh"), state.fresh("ph")
    if kh is None or ph is None or state.fresh("ammonia") is None or state.tank.soft:
        return ORDINARY
    thin = kh.low >= limits.KH_BLIND_BELOW and kh.value < low_kh_limit(state)
    if not thin or kh.is_limit or ph.is_limit:
        return ORDINARY
    moved = ph_moved(state)
    fell = moved is not None and moved.id == "ph_moved" and float(moved.facts["change"]) <= FALLEN
    if not fell and not (called and ph.value < limits.PH_CRASHED):
        return ORDINARY
    return max(ORDINARY, min(limits.KH_STEP_EMERGENCY, kh.low * (limits.KH_FACTOR - 1.0)))
