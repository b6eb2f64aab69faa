"""New animals on their way: whose water is told, how long the way was, what it is not."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.message.homecoming import BY_POST, read
from core.message.model import Context

HERE = Context(datetime(2026, 3, 9, 12, tzinfo=UTC), tanks=("Fern", "Quarry"))

BAGS = [
    ("new fish home, bag ph 6.4 kh 2 temp 22", {"ph": 6.4, "kh": 2.0, "temperature": 22.0}),
    ("bringing home 6 tetras, bag: ph 6.5 kh 1", {"ph": 6.5, "kh": 1.0}),
    ("ph in the bag is 6.4, kh 2", {"ph": 6.4, "kh": 2.0}),
    ("ph 6.4 kh 2 in the bag", {"ph": 6.4, "kh": 2.0}),
    ("the bag water has ph 6.8 and kh 3, fern ph 7.4 kh 8", {"ph": 6.8, "kh": 3.0}),
    ("fern ph 7.4 kh 8, bag ph 6.8", {"ph": 6.8}),
    ("bag: ammonia 3 mg/l, ph 6.2; tank is ph 7.4", {"ammonia": 3.0, "ph": 6.2}),
    ("Neue Fische zu Hause, Beutel pH 6,4 KH 2", {"ph": 6.4, "kh": 2.0}),
    ("poissons dans le sac: ph 6,4 kh 2", {"ph": 6.4, "kh": 2.0}),
    ("peces en la bolsa ph 6.4 gh 5", {"ph": 6.4, "gh": 5.0}),
    ("pesci, busta ph 6,4 kh 2", {"ph": 6.4, "kh": 2.0}),
    ("garnalen in zakje, ph 6,4 kh 2", {"ph": 6.4, "kh": 2.0}),
    ("bag temp 68F", {"temperature": 20.0}),
]


@pytest.mark.parametrize(("text", "values"), BAGS, ids=[text for text, _ in BAGS])
def test_the_bags_water(text: str, values: dict[str, float]) -> None:
    found = read(text, HERE)
    assert found is not None
    assert {v.analyte: v.canonical for v in found.bag} == pytest.approx(values)


def test_the_tanks_own_water_is_kept_apart() -> None:
    found = read("bag ph 6.8, fern ph 7.4 kh 8", HERE)
    assert found is not None
    assert found.rest is not None
    assert {(v.analyte, v.canonical, v.tank) for v in found.rest.values} == {
        ("ph", 7.4, "Fern"), ("kh", 8.0, "Fern"),
    }  # fmt: skip


@pytest.mark.parametrize(
    ("text", "hours"),
    [
        ("new fish, 3 h in the bag", 3.0),
        ("new fish, bag closed 40 min", 40 / 60),
        ("fish in the bag for half an hour", 0.5),
        ("shrimps came by post in a bag", BY_POST),
        ("Beutel seit 2 Stunden zu, neue Fische", 2.0),
        ("new fish in a bag", None),
    ],
)
def test_how_long_the_way_was(text: str, hours: float | None) -> None:
    found = read(text, HERE)
    assert found is not None
    assert found.hours == (pytest.approx(hours) if hours is not None else None)
    assert found.bag == ()


@pytest.mark.parametrize(
    ("text", "marks"),
    [
        ("how do i add the new fish", {"adding", "animals"}),
        ("how do i acclimate shrimps", {"home", "animals"}),
        ("comment acclimater des crevettes", {"home", "animals"}),
        ("wie setze ich neue fische ein", {"adding", "animals"}),
        ("brought home 6 cherry shrimps", {"home", "animals"}),
        ("new neon tetras arrived", {"home"}),
        ("how do i quarantine 6 tetras", {"quarantine"}),
        ("Quarantäne", {"quarantine"}),
        ("how do i add baking soda", {"adding"}),
        ("bag of baking soda 500 g", {"about_bag"}),
    ],
)
def test_what_it_speaks_of(text: str, marks: set[str]) -> None:
    found = read(text, HERE)
    assert found is not None
    assert found.bag == ()
    of = ("about_bag", "quarantine", "home", "adding", "animals")
    assert {name for name in of if getattr(found, name)} == marks


@pytest.mark.parametrize("text", ["ph 7.2 kh 4", "changed 30%", "added 6 tetras", "", "x" * 500])
def test_other_messages_are_none(text: str) -> None:
    assert read(text, HERE) is None


@given(
    st.lists(
        st.sampled_from(
            "bag tank fern is ph 6.4 kh 2 , . new fish home 3 h in the of quarantine 99999 -"  # noqa: SIM905
            " busta beutel min".split()
        ),
        max_size=14,
    ).map(" ".join)
)
def test_any_order_of_its_words_is_answered(text: str) -> None:
    found = read(text, HERE)
    assert found is None or found.hours is None or found.hours >= 0.0
