"""Answers about animals in words."""

from __future__ import annotations

import pytest

from bot.chat.words.animals import arrival, could_live, keep, step, which
from core.advice import livestock
from core.advice.arrivals import Step, arrive
from core.advice.keeping import can_keep
from core.advice.livestock import lookup, species
from tests.core.advice.waters import by_kit, read, state, tank

HOME = state(by_kit("gh", 6), by_kit("ph", 6.8), read("temperature", 25.0), by_kit("kh", 4))


def test_the_first_line_says_it_and_six_are_enough() -> None:
    answers = {
        "Yes: ": can_keep(species("neon tetra"), HOME),
        "No, not in Fern": can_keep(species("tropheus"), HOME),
        "Only with care": can_keep(species("betta"), state(by_kit("gh", 6), of=tank("guppy"))),
        "Retest first": can_keep(species("neon tetra"), state(by_kit("gh", 11))),
        "I know nothing of the water": can_keep(species("guppy"), state()),
    }
    for first, answer in answers.items():
        lines = keep(answer, "Fern")
        assert lines[0].startswith(first)
        assert 2 <= len(lines) <= 6


def test_a_range_is_told_with_its_source() -> None:
    lines = keep(can_keep(species("tropheus"), HOME), "Fern")
    assert "pH 6.8 is outside 8–9; FishBase 2013." in lines


@pytest.mark.parametrize(
    ("said", "start"),
    [
        ("angelfish", "“angelfish” can be several kinds: freshwater angelfish"),
        ("neon tetar", "I do not know “neon tetar”. Did you mean neon tetra"),
        ("gryphon", "I do not know “gryphon”. Send its scientific name"),
        ("x" * 500, "I do not know “xxx"),
    ],
)
def test_an_unknown_name_is_asked(said: str, start: str) -> None:
    (line,) = which(said, lookup(said))
    assert line.startswith(start)
    assert len(line) < 300


def test_what_could_live_is_told_by_company() -> None:
    lines = could_live(livestock.could_live({"gh": 4.0, "kh": 2.0}), "tap")
    assert lines[0].startswith("tap as it is suits ")
    assert any(line.startswith("soft water: ") for line in lines)
    assert len(lines) <= 6
    assert could_live([], "tap")[0].startswith("Tell me GH and KH of tap")


def test_a_foul_bag_is_warned_of_first() -> None:
    bag = {
        "ammonia": read("ammonia", 3.0), "ph": read("ph", 6.4), "kh": read("kh", 4.0),
        "temperature": read("temperature", 24.0),
    }  # fmt: skip
    lines = arrival(arrive(bag, HOME, hours=10))
    assert lines[0].startswith("Keep the bag closed: open, its pH rises from 6.4 to 8")
    assert lines[-1].startswith("No food today")


def test_a_tank_with_nitrite_is_no_home() -> None:
    held = state(read("nitrite", 1.0, basis="ion"), of=tank("guppy"))
    assert arrival(arrive({}, held))[1].startswith("Not yet: there is nitrite")


@pytest.mark.parametrize(
    "one",
    [
        Step("not_yet", 0.0, {"reason": "ammonia"}), Step("dim_light"), Step("float_closed", 20.0),
        Step("prepare_container"), Step("open_and_move"),
        Step("add_tank_water", 15.0, {"parts": 3.0}),
        Step("hold_in_quarantine", 0.0, {"days": 2.0}), Step("net_over"),
        Step("discard_bag_water"), Step("watch", 0.0, {"hours": 24.0}),
    ],
    ids=lambda one: one.id,
)  # fmt: skip
def test_each_step_is_one_line(one: Step) -> None:
    assert step(one).endswith(".")
    assert "\n" not in step(one)
