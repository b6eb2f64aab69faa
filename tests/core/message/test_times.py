"""Times of a message in the chat's zone, daylight saving included."""

from __future__ import annotations

from datetime import UTC, datetime
from zoneinfo import ZoneInfo

import pytest

from core.message import parse
from core.message.model import Context

LISBON = ZoneInfo("Europe/Lisbon")


def at(text: str, now: str, zone: ZoneInfo | None = None) -> str | None:
    parsed = parse(f"{text} kh 4", Context(now=datetime.fromisoformat(now), zone=zone))
    return None if parsed.at is None else parsed.at.isoformat()


@pytest.mark.parametrize(
    ("text", "now", "expected"),
    [
        # `now` is in another offset than the chat's zone: local words count in the zone.
        ("yesterday 20:00", "2026-07-10T00:30:00+00:00", "2026-07-09T20:00:00+01:00"),
        ("yesterday", "2026-07-09T23:30:00+00:00", "2026-07-09T12:00:00+01:00"),
        # Summer time began on 29 March 2026, 01:00 UTC: the offset is that of the day meant.
        ("28.3.", "2026-04-02T12:00:00+01:00", "2026-03-28T12:00:00+00:00"),
        # Two hours ago is elapsed time, across the change too.
        ("2h ago", "2026-03-29T02:30:00+01:00", "2026-03-28T23:30:00+00:00"),
        # An hour that is there twice is the first one (25 October 2026).
        ("2026-10-25 01:30", "2026-10-26T12:00:00+00:00", "2026-10-25T01:30:00+01:00"),
        # A written offset is kept as the instant and told in the zone.
        ("2026-03-04T19:30+02:00", "2026-03-10T12:00:00+00:00", "2026-03-04T17:30:00+00:00"),
        ("2026-03-04T19:30Z", "2026-03-10T12:00:00+00:00", "2026-03-04T19:30:00+00:00"),
        # Today before noon without an hour is now, not a time to come.
        ("2026-03-10", "2026-03-10T09:00:00+00:00", "2026-03-10T09:00:00+00:00"),
        ("tue", "2026-03-10T09:00:00+00:00", "2026-03-10T09:00:00+00:00"),
        ("29.2.2024", "2026-03-10T09:00:00+00:00", "2024-02-29T12:00:00+00:00"),
    ],
)
def test_time_in_the_zone(text: str, now: str, expected: str) -> None:
    assert at(text, now, LISBON) == expected


def test_without_a_zone_the_offset_of_now_is_it() -> None:
    assert at("yesterday 20:00", "2026-03-10T15:00:00-05:00") == "2026-03-09T20:00:00-05:00"
    assert at("today", "2026-03-10T15:00:00-05:00") is None


@pytest.mark.parametrize("text", ["1.1.0001", "9999 days ago", "2026-99-99", "00:60"])
def test_times_that_do_not_exist_are_asked(text: str) -> None:
    parsed = parse(f"{text} kh 4", Context(now=datetime(2026, 3, 10, 12, tzinfo=UTC)))
    assert not parsed.values or parsed.at is None
    assert parsed.doubts


def test_a_wrong_clock_does_no_harm() -> None:
    for now in (datetime(1970, 1, 1, tzinfo=UTC), datetime(2400, 2, 29, tzinfo=UTC)):
        for text in ("yesterday kh 4", "5000 days ago kh 4", "mon kh 4", "24.12. kh 4"):
            parse(text, Context(now=now, zone=LISBON))
