"""The same change again and again: it ends where the new water is, whatever one alone does."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from core.advice.change_limits import broken
from core.advice.change_plan import rested
from core.advice.changes import Waters, mixed, nh3_now

LOOKED_AT: Final = 20
"""Changes that are followed; after so many the tank is nearly its new water, or is near it."""


def safe_times(waters: Waters, share: float) -> tuple[int, tuple[str, ...]]:
    """How often a change can be made, a day apart, and what the next one would break.

    Parameters
    ----------
    waters : Waters
        The tank's water and the new one.
    share : float
        New water each time, over 0 up to 1.

    Returns
    -------
    tuple of int and tuple of str
        At most `LOOKED_AT`, then nothing is broken; the limits are ids of `ChangePlan.broken`.
    """
    waters = replace(waters, leaves_first=nh3_now(waters)[1])
    for times in range(LOOKED_AT):
        after = mixed(waters, share)
        found = tuple(k for k, v in broken(waters, after, emergency=False).items() if v)
        if found:
            return times, found
        waters = rested(waters, after)
    return LOOKED_AT, ()


def in_a_day(share: float, times: int) -> float:
    """The share of a tank that several changes of one day together renew.

    Examples
    --------
    >>> in_a_day(0.5, 2)
    0.75
    """
    return share if times == 1 else float(1.0 - (1.0 - share) ** times)
