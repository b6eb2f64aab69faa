"""What a message that nothing understood is asked back as, in plain words."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.message.amount_named import numbers_in
from core.message.model import Context
from core.message.parser import parse
from core.message.restated import restated

NOW = datetime(2026, 3, 2, 18, tzinfo=UTC)

WORDS = (
    "did", "gave", "put", "should", "can i", "kitchen", "baking soda", "salt", "5 g", "3 tsp",
    "2 kg", "50 %", "half", "20 l", "10 gal", "water", "change", "changed", "kh", "ph", "nitrate",
    "to 6", "want 5", "under 20", "cold", "ok?", "tomorrow", "maybe", "not", "today", "7", "12",
)  # fmt: skip


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("did 50 % cold", ["changed 50 %"]),
        ("change 100% with hot tap", ["changed 100 %", "what if i change 100 %"]),
        ("half the water swapped today", ["changed half today"]),
        ("gave kitchen 5 g baking soda", ["Kitchen: added 5 g baking soda"]),
        ("baking soda 2 kg ok?", ["what does 2 kg baking soda do"]),
        ("kh 3 and get it to 5", ["kh 3, dose kh 5"]),
        ("want kh 5, have 2, 90 liters", ["dose kh from 2 to 5 for 90 liters"]),
        ("kh 2 want 5 90 l", ["dose kh from 2 to 5 for 90 l"]),
        ("want kh 5 in 2 days", []),
        ("ph went from 6.8 to 8.2 in an hr", []),
        ("no3 should get to 20", ["get no3 under 20"]),
        ("bought 500 g baking soda", []),
        ("my bucket holds 12 l of water", []),
        ("gave 5 g salt 3", []),
        ("salt 3 g per l good?", []),
        ("nitratos por debajo de 5", []),
    ],
)
def test_a_message_is_said_in_plain_words(text: str, told: list[str]) -> None:
    assert [each.text for each in restated(text, ["Kitchen", "Hall"])] == told


def test_what_is_not_done_is_never_told_as_a_deed() -> None:
    for mood in ("will give", "forgot", "not gave", "maybe put", "can i put"):
        assert not any(each.stores for each in restated(f"{mood} 5 g baking soda"))


@given(st.lists(st.sampled_from(WORDS), min_size=1, max_size=7))
def test_no_number_is_lost_and_none_is_made(words: list[str]) -> None:
    text = " ".join(words)
    for each in restated(text, ["Kitchen"]):
        assert sorted(map(str, numbers_in(each.text))) == sorted(map(str, numbers_in(text)))
        parsed = parse(each.text, Context(now=NOW, tanks=("Kitchen",)))
        assert parsed.question is not None or parsed.events or parsed.values or parsed.doubts
