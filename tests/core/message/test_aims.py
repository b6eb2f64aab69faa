"""What is wished right after a plan, in nine languages; the words are ours, no source."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from core.message.aims import read
from core.message.model import Context

CONTEXT = Context(now=datetime(2026, 3, 1, 12, tzinfo=UTC), tanks=("Fern", "Quarry"))


@pytest.mark.parametrize(
    ("text", "analyte", "target"),
    [
        ("and gh to 9", "gh", 9.0),
        ("und gh auf 9", "gh", 9.0),
        ("et gh à 9", "gh", 9.0),
        ("y calcio a 430", "calcium", 430.0),
        ("e gh a 9", "gh", 9.0),
        ("e il gh a 9", "gh", 9.0),
        ("en gh naar 9", "gh", 9.0),
        ("a gh na 9", "gh", 9.0),
        ("och gh till 9", "gh", 9.0),
        ("and with kh 2", "kh", 2.0),
        ("mit kh 5", "kh", 5.0),
        ("avec kh 5", "kh", 5.0),
        ("con kh 5", "kh", 5.0),
        ("com kh 5", "kh", 5.0),
        ("met kh 5", "kh", 5.0),
        ("z kh 5", "kh", 5.0),
        ("med kh 5", "kh", 5.0),
        ("at kh 5", "kh", 5.0),
        ("up to kh 6", "kh", 6.0),
        ("maybe kh 4.5", "kh", 4.5),
        ("vielleicht kh 4,5", "kh", 4.5),
        ("peut-être kh 5", "kh", 5.0),
        ("quizás kh 5", "kh", 5.0),
        ("talvez kh 5", "kh", 5.0),
        ("forse kh 5", "kh", 5.0),
        ("misschien kh 5", "kh", 5.0),
        ("może kh 5", "kh", 5.0),
        ("kanske kh 5", "kh", 5.0),
        ("want no3 15", "nitrate", 15.0),
        ("and calcium to 430 mg/l", "calcium", 430.0),
    ],
)
def test_its_words_can_only_wish(text: str, analyte: str, target: float) -> None:
    (aim,) = read(text, CONTEXT)
    assert (aim.analyte, aim.target, aim.sure) == (analyte, target, True)


@pytest.mark.parametrize(
    "text",
    [
        "and gh 9",
        "und gh 9",
        "et gh 9",
        "y gh 9",
        "och gh 9",
        "kh à 5",
        "kh at 5",
        "kh bei 5",
        "nur kh 5",
        "seulement kh 5",
        "solo kh 5",
        "só kh 5",
        "alleen kh 5",
        "tylko kh 5",
        "bara kh 5",
        "kh 5 dann",
        "kh 5 is enough",
    ],
)
def test_its_words_may_tell_what_was_measured_as_well(text: str) -> None:
    (aim,) = read(text, CONTEXT)
    assert not aim.sure


@pytest.mark.parametrize(
    "text",
    [
        "gh 9",
        "kh 4 gh 8",
        "kh is 5",
        "und kh ist 5",
        "and kh is now 5",
        "e il ph è 7",
        "kh steht bei 5",
        "and ammonia 0",
        "and temp 26",
        "kh 5 today",
        "quarry kh 5",
        "kh 5, the fish are fine",
        "",
    ],
)
def test_no_wish_is_read_into_what_is_told(text: str) -> None:
    assert read(text, CONTEXT) == ()


def test_several_are_read_together() -> None:
    found = read("y calcio a 430 y mg a 1300", CONTEXT)
    assert [(aim.analyte, aim.target) for aim in found] == [
        ("calcium", 430.0),
        ("magnesium", 1300.0),
    ]
