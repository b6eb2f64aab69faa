"""How many changes of a keeper's own share reach a value, a day apart, none past a limit."""

from __future__ import annotations

import math
from dataclasses import replace

from core.advice import limits
from core.advice.change_limits import TINY
from core.advice.change_plan import ChangePlan, follow, schedule
from core.advice.changes import Mixed, Waters, mixed


def toward(plan: ChangePlan, waters: Waters, counted: Waters, whole: float) -> ChangePlan:
    """The plan of one change of a share, made again a day apart until a whole share is replaced.

    Parameters
    ----------
    plan : ChangePlan
        Of one change, of the share that the keeper would change.
    waters, counted : Waters
        As for `plan_change`.
    whole : float
        The share that would reach the value at once, over 0 and under 1.

    Returns
    -------
    ChangePlan
        With the steps that together replace `whole`: of the keeper's own share where every one of
        them is within the limits, else smaller ones; none where no safe ones do.

    Notes
    -----
    After n changes of s, what is left of the old water is (1 - s)^n.
    """
    each = min(plan.share, 0.99)
    afters: tuple[Mixed, ...] = ()
    count = max(1, math.ceil(math.log(1.0 - min(whole, 0.99)) / math.log(1.0 - each) - TINY))
    if not plan.broken and count <= limits.MOST_CHANGES:
        begun = (counted,) if counted is waters else (counted, waters)
        safe, made = follow(begun, counted.source_n, each, count, emergency=plan.emergency)
        afters = made if safe and (len(safe) == len(begun) or not plan.emergency) else ()
    if not afters:
        largest = min(each, plan.largest_safe_share)
        end = mixed(waters, whole)
        afters = schedule(waters, end, largest, counted=counted, emergency=plan.emergency)
    return replace(plan, steps=tuple(each.share for each in afters), afters=afters)
