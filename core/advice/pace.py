"""How soon a value is met by the last two readings, or by a plan of changes."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from core.advice.state import State
from core.advice.trends import DAY, with_doubt
from core.advice.upkeep import undisturbed_pair
from core.advice.used_up import Consumption, consumption


@dataclass(frozen=True, slots=True)
class Pace:
    """How an analyte moves by its last two readings, nothing done between.

    Attributes
    ----------
    used : Consumption
        What is used up a day; negative where it builds up. [unit/day]
    value : float
        The newer reading. [unit]
    age : float
        Days since it.
    """

    used: Consumption
    value: float
    age: float

    @property
    def is_sure(self) -> bool:
        """Whether it moves at all, whatever the kit's doubt."""
        return self.used.low > 0.0 or self.used.high < 0.0

    def days_to(self, limit: float) -> tuple[float, float, float] | None:
        """Days from now to a value: expected, soonest, latest; None where it moves away from it.

        Examples
        --------
        >>> Pace(Consumption(2.0, 1.0, 4.0), 20.0, 0.0).days_to(10.0)
        (5.0, 2.5, 10.0)
        >>> Pace(Consumption(2.0, 1.0, 4.0), 20.0, 0.0).days_to(30.0) is None
        True
        """
        fall = self.value - limit
        if fall * self.used.per_day <= 0.0:
            return None
        rates = (self.used.per_day, self.used.low, self.used.high)
        days = [fall / rate if fall * rate > 0.0 else math.inf for rate in rates]
        expected, soonest, latest = days[0], min(days), max(days)
        return (
            max(expected - self.age, 0.0),
            max(soonest - self.age, 0.0),
            max(latest - self.age, 0.0),
        )


def pace_of(state: State, analyte: str) -> Pace | None:
    """The pace of an analyte; None where two readings do not tell it."""
    pair = undisturbed_pair(state, analyte)
    used = None if pair is None else consumption(*map(with_doubt, pair))
    if pair is None or used is None:
        return None
    return Pace(used, pair[1].value, (state.now - pair[1].at).total_seconds() / DAY)


def changes_to(facts: Mapping[str, Any], analyte: str, limit: float) -> int | None:
    """After how many changes of a plan a value is met, by the facts of its answer.

    Returns
    -------
    int or None
        One at least; None where the plan has no figures of it, or ends before it.

    Notes
    -----
    Each change takes the same share of what is left between both waters; what is made between
    them is not counted.
    """
    steps = facts.get("steps") or ()
    before = (facts.get("before") or {}).get(analyte)
    after = (facts.get("first") or facts.get("at_once") or {}).get(analyte)
    if not steps or before is None or after is None or not 0.0 < steps[0] < 1.0:
        return None
    new = before + (after - before) / steps[0]
    if (before - limit) * (before - new) <= 0.0 or (limit - new) * (before - new) <= 0.0:
        return None
    count = math.ceil(math.log((limit - new) / (before - new)) / math.log(1.0 - steps[0]) - 1e-6)
    return count if count <= len(steps) else None


def parts_to(facts: Mapping[str, Any], analyte: str, limit: float) -> tuple[int, int] | None:
    """After how many parts of how many of a dose a value is met, by the facts of its answer.

    Examples
    --------
    >>> parts_to({"from": 3.0, "to": 6.0, "parts": [2.7, 2.7, 2.7]}, "kh", 5.0)
    (2, 3)
    """
    goals: Sequence[Mapping[str, Any]] = facts.get("goals") or [{"analyte": "kh", **facts}]
    goal: Mapping[str, Any] = next((each for each in goals if each.get("analyte") == analyte), {})
    start, end = goal.get("from"), goal.get("to")
    salts = facts.get("salts") or [facts]
    parts = len(salts[0].get("parts") or ())
    if not parts or start is None or end is None or not start < limit <= end + 1e-9:
        return None
    return math.ceil((limit - start) / (end - start) * parts - 1e-6), parts
