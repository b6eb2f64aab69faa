"""A steady routine of changes: the saw-tooth that it comes to, and the share that keeps a limit."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from core.advice.state import State
from core.advice.trends import trend


@dataclass(frozen=True, slots=True)
class SawTooth:
    """What a routine comes to after many rounds.

    Attributes
    ----------
    share : float
        New water each time, over 0 up to 1.
    every_days : float
        Days between changes.
    low, high : float
        Right after a change and right before one. [unit of the analyte]
    per_day : float
        What the tank makes in a day. [unit of the analyte]
    """

    share: float
    every_days: float
    low: float
    high: float
    per_day: float


def saw_tooth(per_day: float, source: float, share: float, every_days: float) -> SawTooth:
    """Where a routine ends: each round adds `per_day` times its days and takes its share away.

    Parameters
    ----------
    per_day : float
        What the tank makes in a day, zero or more.
    source : float
        What the new water holds.
    share : float
        New water, over 0 up to 1.
    every_days : float
        Days between changes.

    Notes
    -----
    With high = low + made and low = high - share (high - source), high is the source and
    made / share above it.

    Examples
    --------
    Two a day, a third each week, tap with 5: from 33 to 47.

    >>> found = saw_tooth(2.0, 5.0, 1 / 3, 7.0)
    >>> round(found.low), round(found.high)
    (33, 47)
    """
    made = per_day * every_days
    high = source + made / share
    return SawTooth(share, every_days, high - made, high, per_day)


def share_to_stay_under(
    target: float, per_day: float, source: float, every_days: float
) -> float | None:
    """The share each time that keeps the high under a target; None where no share does."""
    if target <= source:
        return None
    share = per_day * every_days / (target - source)
    return share if 0.0 < share <= 1.0 else None


PACES: Final = (7.0, 3.5, 2.0, 1.0)
"""Days between changes that are tried, the most leisurely first."""


def safe_routine(target: float, per_day: float, source: float, largest: float) -> SawTooth | None:
    """The most leisurely routine that stays under a target, no change larger than is safe.

    Parameters
    ----------
    target, per_day, source : float
        What is to be kept, made in a day, and held by the new water. [unit of the analyte]
    largest : float
        The largest share that the step limits allow at once.

    Examples
    --------
    Two a day under 40 with tap of 5 takes 40 % a week, or 20 % twice a week:

    >>> safe_routine(40.0, 2.0, 5.0, 0.5).share, safe_routine(40.0, 2.0, 5.0, 0.3).every_days
    (0.4, 3.5)
    """
    for days in PACES:
        share = share_to_stay_under(target, per_day, source, days)
        if share is not None and share <= largest:
            return saw_tooth(per_day, source, share, days)
    return None


def made_per_day(state: State, analyte: str) -> float | None:
    """What the tank makes in a day by its own readings between changes; None where unsure."""
    found = trend(state, analyte)
    return found.per_day if found is not None and found.is_sure and found.per_day > 0.0 else None
