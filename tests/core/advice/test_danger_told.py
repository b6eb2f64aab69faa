"""Dangers told in passing; which steps each leads to is common practice, no source."""

from __future__ import annotations

import pytest

from core.advice.calls import distressed, recognise


@pytest.mark.parametrize(
    ("text", "danger"),
    [
        ("fish breathing like crazy since dinner, also whats gh", "gasping"),
        ("die fische atmen wie verrückt", "gasping"),
        ("les poissons respirent très vite", "gasping"),
        ("dropped a battery in", "contaminated"), ("spilled my beer in", "contaminated"),
        ("a coin fell in", "contaminated"), ("batterie ins becken gefallen", "contaminated"),
        ("they sprayed for roaches in the room today", "contaminated"),
        ("painted the room yesterday", "contaminated"),
        ("il y a des morts, au fait bonne année", "general"),
        ("all of them look dead", "general"),
    ],
)  # fmt: skip
def test_a_danger_is_heard_in_what_is_told(text: str, danger: str) -> None:
    assert recognise(text) == danger


@pytest.mark.parametrize(
    "text", ["shrimps are flipping out, oh and happy new year", "corals closed now"]
)
def test_distress_is_heard_where_nothing_else_is(text: str) -> None:
    assert distressed(text)


@pytest.mark.parametrize(
    "text",
    [
        "poured myself a coffee, kh 4", "the battery of my meter is flat", "beer for the weekend",
        "can i drop a coin in", "my fish are crazy about food", "corals closed at night",
        "new battery air pump in", "what paint is safe for the stand",
    ],
)  # fmt: skip
def test_talk_of_the_same_things_is_none(text: str) -> None:
    assert recognise(text) is None
    assert not distressed(text)
