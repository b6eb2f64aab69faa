"""What is asked for after "remind me to"."""

from __future__ import annotations

from datetime import datetime, tzinfo

from core.schedule.model import Problem, Request


def parse_request(text: str, now: datetime, zone: tzinfo) -> Request | Problem:
    """Read the words that follow "remind me to"."""
    raise NotImplementedError
