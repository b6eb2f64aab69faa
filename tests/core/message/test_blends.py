"""New water in shares: what is a blend, what is how much is changed, and what each part is."""

from __future__ import annotations

import math
from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.message import parse
from core.message.blends import find
from core.message.facets import split
from core.message.model import Context
from core.message.waters import kind_of, mentioned, words

NOW = Context(now=datetime(2026, 3, 1, 12, tzinfo=UTC), tanks=("Fern",))

SAID = [
    # text, parts, rest, why
    ("changed 40 l with half ro", {"ro": 0.5}, 0.5, "one part leaves the rest"),
    ("changed 40 l, half with ro", {"ro": 0.5}, 0.5, "the amount stands before"),
    ("changed 20 l 50% ro", {"ro": 0.5}, 0.5, "litres are the amount already"),
    ("what if i change 30% with 50/50 ro tap", {"ro": 0.5, "tap": 0.5}, 0.0, "a ratio"),
    ("30% with 70% ro and 30% tap", {"ro": 0.7, "tap": 0.3}, 0.0, "percent each"),
    ("ro/tap 70/30", {"ro": 0.7, "tap": 0.3}, 0.0, "the ratio behind"),
    ("2:1 ro and rain", {"ro": 2 / 3, "rain": 1 / 3}, 0.0, "parts of a ratio"),
    ("half and half ro and tap", {"ro": 0.5, "tap": 0.5}, 0.0, "a ratio in words"),
    ("3 parts ro 1 part tap", {"ro": 0.75, "tap": 0.25}, 0.0, "parts are counted"),
    ("60% ro rest tap", {"ro": 0.6, "tap": 0.4}, 0.0, "the rest is a share"),
    ("1/3 ro 2/3 tap", {"ro": 1 / 3, "tap": 2 / 3}, 0.0, "fractions"),
    ("60% garden 40% ro", {"garden": 0.6, "ro": 0.4}, 0.0, "a name that we do not know"),
    ("30% mit 60% Osmosewasser und 40% Leitungswasser",
     {"Osmosewasser": 0.6, "Leitungswasser": 0.4}, 0.0, "German"),
    ("changé 30% avec moitié osmosée moitié robinet",
     {"osmosée": 0.5, "robinet": 0.5}, 0.0, "French"),
    ("cambié 30% con 70% ósmosis y 30% grifo",
     {"ósmosis": 0.7, "grifo": 0.3}, 0.0, "Spanish"),
    ("what if i change 10% with a mix of 40% ro and 60% tap",
     {"ro": 0.4, "tap": 0.6}, 0.0, "a mix"),
    ("keep nitrate under 20 with half ro", {"ro": 0.5}, 0.5, "with tells it without an amount"),
    ("podmiana 30% z 50% ro 50% kran", {"ro": 0.5, "kran": 0.5}, 0.0, "Polish"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "parts", "rest", "why"), SAID, ids=[row[3] for row in SAID])
def test_a_blend_is_read(text: str, parts: dict[str, float], rest: float, why: str) -> None:
    blend = find(text)
    assert blend is not None, why
    assert {part.name: part.share for part in blend.parts} == pytest.approx(parts)
    assert blend.rest == pytest.approx(rest)
    assert blend.adds_up


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("changed 30% with ro", "the share is the change's"),
        ("change 30% ro", "likewise without a word between"),
        ("changed half with ro", "likewise in words"),
        ("changed 50% of 40 l with ro", "a share of a volume"),
        ("changed 30% with ro 40 l", "litres of one water"),
        ("nitrate 20 in the tap", "no share at all"),
        ("changed 30% quarry 20% fern", "no water at all"),
    ],
)
def test_no_blend_is_made_of_an_amount(text: str, why: str) -> None:
    assert find(text) is None, why


def test_shares_that_do_not_add_up_and_shares_that_are_missing() -> None:
    wrong = find("what if i change 30% with 60% ro 60% tap")
    assert wrong is not None
    assert not wrong.adds_up
    assert wrong.total == pytest.approx(1.2)
    open_ = find("what if i change 30% with ro and tap")
    assert open_ is not None
    assert open_.total is None


@given(st.integers(1, 99))
def test_a_share_that_is_written_is_the_share_that_is_read(share: int) -> None:
    blend = find(f"what if i change 20% with {share}% ro {100 - share}% tap")
    assert blend is not None
    assert [part.share for part in blend.parts] == pytest.approx([share / 100, 1 - share / 100])


@given(st.text(max_size=80))
def test_any_text_is_read_without_an_error(text: str) -> None:
    blend = find(f"{text} with 60% ro")
    assert blend is None or all(math.isfinite(part.share or 0.0) for part in blend.parts)
    assert isinstance(split(text), tuple)


@pytest.mark.parametrize(
    ("text", "percent", "litres", "substance"),
    [
        ("changed 40 l with half ro", None, 40.0, "half ro"),
        ("changed 30% with 60 % ro 40 % tap", 30.0, None, "60 % ro 40 % tap"),
        ("changed 10 l ro and 30 l tap", None, 40.0, "10 l ro and 30 l tap"),
        ("changed 30% with ro", 30.0, None, "ro"),
    ],
)
def test_an_event_keeps_its_own_amount(
    text: str, percent: float | None, litres: float | None, substance: str
) -> None:
    (event,) = parse(text, NOW).events
    assert (event.percent, event.litres, event.substance) == (percent, litres, substance)


def test_a_question_keeps_its_own_amount() -> None:
    question = parse("what if i change 30% with 50/50 ro tap", NOW).question
    assert question is not None
    assert (question.percent, question.substance) == (30.0, "50/50 ro tap")


def test_every_water_is_known_in_its_own_words() -> None:
    assert [kind_of(name) for name in ("Regenwasser", "eau du robinet", "ósmosis", "Fern")] == [
        "rain", "tap", "ro", None,
    ]  # fmt: skip
    assert [kind for *_, kind in mentioned("rain water, then kranwasser or Leitung")] == [
        "rain", "tap",
    ]  # fmt: skip
    assert set(words().share.values()) <= {0.25, 1 / 3, 0.5, 2 / 3, 0.75}


FACETS = [
    ("fresh ph 6.8", [("ph 6.8", False, None)]),
    ("fresh ph 6.8 stood ph 7.9", [("ph 6.8", False, None), ("ph 7.9", True, None)]),
    ("ph 7 from the tap, 7.8 after a day standing", [("ph 7", False, None), ("7.8", True, None)]),
    ("frisch ph 7, abgestanden ph 7,9", [("ph 7", False, None), ("ph 7,9", True, None)]),
    ("kh 5, ph 6.8, 7.9 stood", [("kh 5, ph 6.8", None, None), ("7.9", True, None)]),
    ("winter kh 4 gh 6", [("kh 4 gh 6", None, "winter")]),
    ("winter kh 4 summer kh 7", [("kh 4", None, "winter"), ("kh 7", None, "summer")]),
    ("ph 7.6 kh 8", [("ph 7.6 kh 8", None, None)]),
]


@pytest.mark.parametrize(("text", "pieces"), FACETS, ids=[text for text, _ in FACETS])
def test_what_is_told_apart_of_a_source(
    text: str, pieces: list[tuple[str, bool | None, str | None]]
) -> None:
    assert [(piece.text, piece.stood, piece.season) for piece in split(text)] == pieces
