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


@pytest.mark.parametrize(
    ("text", "danger"),
    [
        ("son also had a lick of the ph down bottle is that bad", "swallowed"),
        ("he drank some of the ph down, my son", "swallowed"),
        ("ph up was in his mouth, my toddler", "swallowed"),
        ("test kit drops in my kid's mouth", "swallowed"),
        ("husband tasted some of the ph minus, what can i do", "swallowed"),
        ("my niece took a sip of the test liquid", "swallowed"),
        ("he ate some of the kh plus", "swallowed"),
        ("ph down licked by my dog", "pet"),
        ("heater was on, put my hand in the tank and it tingled", "electric"),
        ("i put my hand in and it tingled", "electric"),
        ("got a little shock from the tank light", "electric"),
        ("felt electricity in the water", "electric"),
        ("bottle is leaking in the bedroom can i sleep there", "co2_air"),
        ("co2 bottle is leaking can i sleep there", "co2_air"),
        ("cylinder is hissing in the cabinet", "co2_air"),
        ("the whole co2 bottle emptied overnight, windows shut", "co2_air"),
    ],
)
def test_people_go_first_in_any_order_of_words(text: str, danger: str) -> None:
    assert recognise(text) == danger


@pytest.mark.parametrize(
    "text",
    [
        "my fish licked the ph down",
        "how much ph down for 100 l",
        "what if he drinks the ph down",
        "what is ph shock",
        "my hands tingle from the cold water",
        "can a co2 bottle leak",
        "the ph down bottle is leaking in the cupboard",
        "how do i check the co2 bottle for leaks",
        "is the drinking water conditioner safe",
    ],
)
def test_what_sounds_like_it_and_is_none(text: str) -> None:
    assert recognise(text) is None


@pytest.mark.parametrize(
    "text", ["snails are closing up what do i do", "nerites shut tight since yesterday"]
)
def test_a_closing_snail_is_a_sign(text: str) -> None:
    assert distressed(text)
