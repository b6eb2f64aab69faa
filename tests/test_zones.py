"""Zones by name, and the machine's own."""

from __future__ import annotations

from datetime import UTC
from zoneinfo import ZoneInfo

import pytest

from bot.zones import UnknownZone, local_zone, machine_zone, zone_named


@pytest.mark.parametrize("name", ["Europe/Lisbon", "UTC", "Asia/Kolkata", "Etc/GMT+5"])
def test_a_zone_by_its_name(name: str) -> None:
    assert zone_named(name).key == name


@pytest.mark.parametrize(
    ("name", "suggestion", "why"),
    [
        ("europe/lisbonn", "Europe/Lisbon", "one letter too many"),
        ("lisbon", "Europe/Lisbon", "the town alone"),
        ("new york", "America/New_York", "a town of two words"),
        ("Europe", None, "a folder of zones"),
        ("../../etc/passwd", None, "a path"),
        ("/etc/localtime", None, "another"),
        ("", None, "nothing"),
        ("x\x00y", None, "a control character"),
    ],
)
def test_a_name_that_no_zone_has(name: str, suggestion: str | None, why: str) -> None:
    with pytest.raises(UnknownZone) as caught:
        zone_named(name)
    if suggestion is not None:
        assert caught.value.suggestion == suggestion, why


@pytest.mark.parametrize(
    ("said", "name", "why"),
    [
        ("Asia/Tokyo", "Asia/Tokyo", "a name"),
        (":Asia/Tokyo", "Asia/Tokyo", "a name as POSIX marks it"),
        ("CET-1CEST", None, "a rule"),
        ("Asia/Tokio", None, "misspelt"),
    ],
)
def test_the_machines_zone(
    said: str, name: str | None, why: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("TZ", said)
    assert machine_zone() == name, why
    assert local_zone() == (ZoneInfo(name) if name else UTC), why
