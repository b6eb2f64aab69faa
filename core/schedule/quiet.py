"""Hours of the day in which nothing is said."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, time, timedelta, tzinfo

from core.schedule.errors import BadRule
from core.schedule.localtime import moment_at
from core.schedule.rules import aware

_DAY = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Quiet:
    """A span of the local day, over midnight where it ends before it starts.

    Attributes
    ----------
    start, end : time
        Local times of day, which differ; the start belongs to the span, the end does not.
    """

    start: time
    end: time

    def __post_init__(self) -> None:
        if self.start == self.end:
            raise BadRule("quiet hours", self.end)

    def release(self, moment: datetime, zone: tzinfo) -> datetime:
        """Tell when something that is due may be said.

        Both ends follow `core.schedule.localtime`: an end in a gap is the first valid minute
        after it, an end that comes twice is the first of the two. Where the next span begins in
        the same gap, it is quiet until that one ends.

        Parameters
        ----------
        moment : datetime
            When it is due; aware.
        zone : tzinfo
            The zone whose clocks are meant.

        Returns
        -------
        datetime
            In UTC: the moment itself outside the quiet hours, else the end of the quiet span.

        Examples
        --------
        >>> from datetime import UTC
        >>> night = Quiet(time(22), time(7))
        >>> night.release(datetime(2026, 3, 1, 23, tzinfo=UTC), UTC).isoformat()
        '2026-03-02T07:00:00+00:00'
        """
        moment = aware(moment, "moment")
        today = moment.astimezone(zone).date()
        for day in (today - _DAY, today):
            start = moment_at(day, self.start, zone)
            end = moment_at(day if self.start < self.end else day + _DAY, self.end, zone)
            if start <= moment < end:
                return self.release(end, zone)
        return moment

    def __str__(self) -> str:
        return f"{self.start:%H:%M}-{self.end:%H:%M}"
