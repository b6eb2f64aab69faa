"""Answers about animals in words."""

from __future__ import annotations

import pytest

from bot.chat.words.animals import which
from bot.chat.words.could_live import could_live
from bot.chat.words.keeping import keep
from core.advice import livestock
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
        ("gryphon", "I know no animal or plant called “gryphon”"),
        ("x" * 500, "I know no animal or plant called “xxx"),
    ],
)
def test_an_unknown_name_is_asked(said: str, start: str) -> None:
    line, *_remedy = which(said, lookup(said))
    assert line.startswith(start)
    assert len(line) < 300


def test_what_could_live_is_told_by_company() -> None:
    lines = could_live(livestock.could_live({"gh": 4.0, "kh": 2.0}), "tap", {"gh", "kh"})
    assert lines[0].startswith("tap as it is suits ")
    assert any(line.startswith("soft water: ") for line in lines)
    assert len(lines) <= 6
    assert could_live([], "tap", {"ph"})[0].startswith("Tell me GH and KH of tap")
