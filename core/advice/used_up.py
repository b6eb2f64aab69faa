"""What is used up: by animals between two readings, and of KH by the nitrate that builds up."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from core.advice.state import NO3_PER_N, Measured, State
from core.advice.trends import DAY, Course


@dataclass(frozen=True, slots=True)
class Consumption:
    """What is used up a day, from the least to the most that the kit leaves open. [unit/day]"""

    per_day: float
    low: float
    high: float

    @property
    def is_sure(self) -> bool:
        """Whether anything is used up at all, whatever the kit's doubt."""
        return self.low > 0.0


def consumption(earlier: Measured, later: Measured) -> Consumption | None:
    """What animals take out of the water between two readings with nothing done in between.

    Parameters
    ----------
    earlier, later : Measured
        Of one analyte, not at the ends of the kit's scale.

    Returns
    -------
    Consumption or None
        None where the two cannot be compared: under an hour apart, in the wrong order, off the
        kit's scale, or on another basis.
    """
    days = (later.at - earlier.at).total_seconds() / DAY
    if earlier.is_limit or later.is_limit or earlier.basis != later.basis or days < 1.0 / 24.0:
        return None
    return Consumption(
        (earlier.value - later.value) / days,
        (earlier.low - later.high) / days,
        (earlier.high - later.low) / days,
    )


KH_PER_NITRATE: Final = 1.0 / (NO3_PER_N * 14.007) / 0.356652
"""KH that the acid of one mg/L of nitrate, formed net of food, takes away. [°dH per mg/L NO3]"""


def kh_lost_to_nitrate(nitrate: float, *, from_ammonium: bool = False) -> float:
    """KH that was used up while so much nitrate built up.

    Parameters
    ----------
    nitrate : float
        Nitrate that was formed, zero or more. [mg/L NO3]
    from_ammonium : bool, optional
        True for a tank that is fed an ammonium salt: twice as much.

    Returns
    -------
    float
        KH. [°dH]

    Notes
    -----
    Nitrification of ammonium takes two equivalents a mole; the nitrogen of food gives one back
    as it is set free.

    Examples
    --------
    >>> round(kh_lost_to_nitrate(10.0), 2), round(kh_lost_to_nitrate(10.0, from_ammonium=True), 2)
    (0.45, 0.9)
    """
    return nitrate * KH_PER_NITRATE * (2.0 if from_ammonium else 1.0)


def acid_of_nitrate(state: State) -> float | None:
    """How much KH a day the nitrate that surely builds up takes; None where none does. [°dH/day]"""
    course = Course(state, "nitrate")
    nitrate = course.since_disturbed() or course.season()
    if nitrate is None or not nitrate.is_sure or nitrate.per_day <= 0.0:
        return None
    return kh_lost_to_nitrate(nitrate.per_day)
