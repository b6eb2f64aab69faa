"""A change of the last day: whether it may be the cause of trouble, and what it makes old."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final

from core.advice import limits
from core.advice.findings._buffer import is_kept_soft
from core.advice.first_aid import NewWater
from core.advice.state import State
from core.message.waters import PURE, kind_of

_A_DAY: Final = timedelta(days=1)

ENOUGH: Final = 0.5
"""The most of first aid at once (the limits): after more no other before a test."""

LOOKED_BACK: Final = timedelta(days=14)
"""A change longer ago than this is behind readings that are old by themselves."""

OUTDATES: Final = 0.25
"""A change from which on readings before it tell of other water; common practice, no source."""


@dataclass(frozen=True, slots=True)
class Changed:
    """A change of the last day, of which what went in may be the cause.

    `share` of the water (None where untold), of `source` as the keeper calls it ("" where untold),
    `hours` ago, `chlorine` of that source in mg/L where it was read; `pure` of RO or rain. It is
    `after_trouble` where animals had died or help was called before: then it is no cause of that.
    `tested` since: by what its poison would show in.
    """

    share: float | None
    source: str
    hours: float
    chlorine: float | None = None
    pure: bool = False
    after_trouble: bool = False
    tested: bool = False

    @property
    def is_enough(self) -> bool:
        """Whether so much went out that no more should before a new test."""
        return self.share is not None and self.share > ENOUGH and not self.tested


def changed_lately(
    state: State, new: NewWater | None, within: timedelta = _A_DAY
) -> Changed | None:
    """The newest change of late, with the chlorine that its source was read to hold."""
    done = [
        each
        for each in state.events or ()
        if each.what.kind == "water_change" and timedelta() <= state.now - each.at < within
    ]
    if not done:
        return None
    latest = max(done, key=lambda each: (each.at, each.order))
    share, said = latest.what.percent, latest.what.substance or ""
    if share is None and latest.what.litres and state.tank.volume_l:
        share = 100.0 * latest.what.litres / state.tank.volume_l
    chlorine = None
    if new is not None and said.casefold() in {"", new.name.casefold()}:
        read = [new.state.last(name) for name in ("total_chlorine", "chlorine")]
        chlorine = max((r.value for r in read if r is not None and r.value > 0.0), default=None)
    hours = (state.now - latest.at) / timedelta(hours=1)
    return Changed(
        None if share is None else share / 100.0,
        said,
        hours,
        chlorine,
        pure=kind_of(said.casefold()) in PURE,
        after_trouble=_was_trouble(state, latest.at),
        tested=any(not latest.is_after(reading) for reading in state.readings.values()),
    )


def outdated(state: State) -> Changed | None:
    """Give the change that made all readings before it old; None where none did.

    So it is however long ago the change was, as long as nothing was measured since. A quarter of
    the water, common practice: less moves no reading by more than its kit's doubt.
    """
    made = changed_lately(state, None, LOOKED_BACK)
    if made is None or made.tested or not state.readings:
        return None
    return made if made.share is not None and made.share >= OUTDATES else None


def _was_trouble(state: State, at: datetime) -> bool:
    """Whether animals had died within two days before a moment, or pH was far too low by then."""
    lost = [e.at for e in state.events or () if e.what.kind == "lost"]
    ph = state.fresh("ph")
    acid = ph is not None and ph.at <= at and has_crashed(state)
    return acid or any(timedelta() <= at - each < 2 * _A_DAY for each in lost)


def has_crashed(state: State) -> bool:
    """Whether pH and KH, by fresh readings, show a buffer used up.

    Water that is soft on purpose is acid by nature, and kinds at home in it bear that. pH under 6
    with a KH under 1 °dH: common practice, no source.
    """
    ph, kh = state.fresh("ph"), state.fresh("kh")
    if ph is None or kh is None or state.tank.is_sea or is_kept_soft(state):
        return False
    return ph.value < CRASHED_PH and kh.value < limits.KH_SOFT


CRASHED_PH: Final = 6.0
"""Under it, with the buffer gone, most fish of tap water suffer; common practice, no source."""
