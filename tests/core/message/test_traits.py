"""What is told of a tank for good, in the words that keepers use."""

from __future__ import annotations

from datetime import UTC, date, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.message.model import Context
from core.message.traits import read

NOW = datetime(2026, 3, 9, 12, tzinfo=UTC)
HERE = Context(NOW, tanks=("Fern", "Quarry"))

FIRST_DAYS = [
    ("fern was set up on 3 march", "Fern", date(2026, 3, 3)),
    ("set up fern 2 weeks ago", "Fern", date(2026, 2, 23)),
    ("Fern set up today", "Fern", date(2026, 3, 9)),
    ("fern is 3 weeks old", "Fern", date(2026, 2, 16)),
    ("my tank is a month old", None, date(2026, 2, 7)),
    ("fern is two years old", "Fern", date(2024, 3, 19)),
    ("fern was set up 2 years ago", "Fern", date(2024, 3, 19)),
    ("quarry was started on 2026-01-05", "Quarry", date(2026, 1, 5)),
    ("fern läuft seit 1. März", "Fern", date(2026, 3, 1)),
    ("fern wurde am 3.3. eingerichtet", "Fern", date(2026, 3, 3)),
    ("fern: mis en route le 3 mars", "Fern", date(2026, 3, 3)),
    ("fern montado el 3 de marzo", "Fern", date(2026, 3, 3)),
    ("fern avviato il 3 marzo", "Fern", date(2026, 3, 3)),
    ("fern opgestart op 3 maart", "Fern", date(2026, 3, 3)),
    ("fern startades 3 mars", "Fern", date(2026, 3, 3)),
    ("fern was set up on 30 april", "Fern", date(2025, 4, 30)),
]


@pytest.mark.parametrize(("text", "tank", "day"), FIRST_DAYS, ids=[row[0] for row in FIRST_DAYS])
def test_the_first_day(text: str, tank: str | None, day: date) -> None:
    found = read(text, HERE)
    assert found is not None
    assert found.kind == "set_up"
    assert found.tank == tank
    assert found.at is not None
    assert found.at.date() == day


def test_a_first_day_to_come_is_asked_about() -> None:
    found = read("fern was set up tomorrow", HERE)
    assert found is not None
    assert found.at is None
    assert found.problem == "future"


@pytest.mark.parametrize(
    ("text", "has"),
    [
        ("fern has co2", True),
        ("Fern has CO₂ injection", True),
        ("fern uses pressurised co2", True),
        ("I inject co2", True),
        ("fern hat keine CO2-Anlage", False),
        ("fern has no co2", False),
        ("co2 is off on fern", False),
    ],
)
def test_carbon_dioxide(text: str, has: bool) -> None:
    found = read(text, HERE)
    assert found is not None
    assert found.kind == "co2"
    assert found.has is has


@pytest.mark.parametrize(
    ("text", "analyte", "until"),
    [
        ("kit kh expires 2026-05", "kh", date(2026, 5, 31)),
        ("my no3 test is good until may 2026", "nitrate", date(2026, 5, 31)),
        ("kit kh expires 31.5.2026", "kh", date(2026, 5, 31)),
        ("the ammonia kit expired in 02/26", "ammonia", date(2026, 2, 28)),
        ("fern: kh kit best before 11/2027", "kh", date(2027, 11, 30)),
        ("KH-Test haltbar bis 05/2027", "kh", date(2027, 5, 31)),
        ("gh kit expires 4 june 2026", "gh", date(2026, 6, 4)),
        ("ph kit expires 2028-02", "ph", date(2028, 2, 29)),
    ],
)
def test_a_month_is_good_to_its_last_day(text: str, analyte: str, until: date) -> None:
    found = read(text, HERE)
    assert found is not None
    assert (found.kind, found.analyte, found.until) == ("kit_expiry", analyte, until)


@pytest.mark.parametrize("text", ["kh kit expires 2026-13", "kh kit expires 31.2.2026"])
def test_a_day_of_no_calendar_is_asked_about(text: str) -> None:
    found = read(text, HERE)
    assert found is not None
    assert found.until is None
    assert found.problem == "bad_time"


@pytest.mark.parametrize(
    "text",
    [
        "set up a reminder tomorrow",
        "i set up the heater yesterday",
        "my neon is 3 weeks old",
        "when was fern set up",
        "was fern set up on 3 march?",
        "fern set up today ph 7",
        "how much co2 does fern have",
        "co2 20",
        "fern co2 25",
        "co2",
        "is co2 ok",
        "my fish has co2 poisoning",
        "kit kh 0.5 per drop",
        "test until sunday",
        "remind me that the kh kit expires may 2026",
        "",
        "kh kit expires " + "9" * 500,
    ],
)
def test_other_things_are_none(text: str) -> None:
    assert read(text, HERE) is None


@given(
    st.lists(
        st.sampled_from(
            "fern has no co2 kit kh expires 2026-05 was set up on 31 feb march 0 99 old is a"  # noqa: SIM905
            " weeks - / . haltbar bis until".split()
        ),
        max_size=12,
    ).map(" ".join)
)
def test_any_order_of_its_words_is_answered(text: str) -> None:
    found = read(text, HERE)
    assert found is None or found.kind in {"set_up", "co2", "kit_expiry"}


@pytest.mark.parametrize(
    ("text", "tank", "setup"),
    [
        ("fern is planted", "Fern", "planted"),
        ("Fern is a planted tank", "Fern", "planted"),
        ("fern has plants", "Fern", "planted"),
        ("fern has no plants", "Fern", "unplanted"),
        ("fern is unplanted", "Fern", "unplanted"),
        ("fern ist bepflanzt", "Fern", "planted"),
        ("fern ohne pflanzen", "Fern", "unplanted"),
        ("quarry is a reef tank", "Quarry", "reef"),
        ("quarry has corals", "Quarry", "reef"),
        ("quarry is fish only", "Quarry", "fish_only"),
        ("my tank is planted", None, "planted"),
    ],
)
def test_what_a_tank_is_made_for(text: str, tank: str | None, setup: str) -> None:
    found = read(text, HERE)
    assert found is not None
    assert (found.kind, found.tank, found.setup) == ("setup", tank, setup)


@pytest.mark.parametrize(
    ("text", "has"), [("fern is planted with co2", True), ("fern is planted, no co2", False)]
)
def test_plants_and_carbon_dioxide_in_one(text: str, has: bool) -> None:
    found = read(text, HERE)
    assert found is not None
    assert (found.kind, found.has, found.setup) == ("co2", has, "planted")


@pytest.mark.parametrize(
    "text",
    [
        "i planted 5 anubias in fern",
        "planted",
        "reef",
        "is fern planted?",
        "how much iron for a planted tank",
        "the reef shop has corals",
        "fern is planted and a reef",
        "quarry has no corals",
        "fern: plants are dying",
    ],
)
def test_other_talk_of_plants_and_reefs_is_none(text: str) -> None:
    assert read(text, HERE) is None
