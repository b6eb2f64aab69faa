"""Single moments in words: "in 1 hour", "this evening", "until 4 May"; and quiet hours."""

from __future__ import annotations

from datetime import datetime, tzinfo

from core.schedule.model import Problem
from core.schedule.quiet import Quiet


def parse_moment(text: str, now: datetime, zone: tzinfo) -> datetime | Problem:
    """Read one moment to come ("in 1 hour", "this evening", "tomorrow"), in UTC."""
    raise NotImplementedError


def parse_until(text: str, now: datetime, zone: tzinfo) -> datetime | Problem:
    """Read when a holiday ends ("until 4 May", "for 2 weeks"): as that day begins, in UTC."""
    raise NotImplementedError


def parse_quiet(text: str) -> Quiet | Problem:
    """Read quiet hours ("22:00-07:00")."""
    raise NotImplementedError
