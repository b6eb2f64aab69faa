"""The only place that tells the time; everything else is handed one of these."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import Protocol


class Clock(Protocol):
    """Something that tells the time."""

    def now(self) -> datetime:
        """The present moment, aware, in UTC."""
        ...


class SystemClock:
    """The machine's own clock."""

    def now(self) -> datetime:
        """The present moment by the machine's clock, aware, in UTC."""
        return datetime.now(UTC)


class SimulatedClock:
    """A clock that stands still until it is moved; never backwards.

    Parameters
    ----------
    start : datetime
        Where it stands at first; aware.
    """

    def __init__(self, start: datetime) -> None:
        self._now = start.astimezone(UTC)

    def now(self) -> datetime:
        """The moment at which the clock stands, in UTC."""
        return self._now

    def move_to(self, moment: datetime) -> None:
        """Set the clock to a later moment; an earlier one leaves it where it stands."""
        self._now = max(self._now, moment.astimezone(UTC))

    def move_by(self, span: timedelta) -> None:
        """Set the clock on by elapsed time, across daylight saving too."""
        self.move_to(self._now + span)
