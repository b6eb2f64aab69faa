"""How fast a value may change. The limits are the house's own steps (common practice); a degree of
hardness is 17.848 mg/L as CaCO3 (DIN 38409-6 as handbooks give it), 9 °F are 5 K."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

FERN = "/tank new Fern 90 l fresh"


@pytest.mark.parametrize(
    ("line", "analyte", "change", "most"),
    [
        ("is 2 dkh a day ok", "kh", 2.0, 1.0),
        ("is 36 ppm kh a day too much?", "kh", 2.017, 1.0),
        ("can i raise gh 5 at once", "gh", 5.0, 2.0),
        ("is 4 °C an hour too much", "temperature", 4.0, 2.0),
        ("is a drop of 4 degrees overnight bad", "temperature", 4.0, 2.0),
        ("is 9 f a day ok for temperature", "temperature", 5.0, 2.0),
        ("ist 0,5 pH am tag ok", "ph", 0.5, 0.3),
        ("czy 2 dkh dziennie to za dużo", "kh", 2.0, 1.0),
    ],
)
async def test_a_change_too_fast_is_called_so(
    talk: Talk, line: str, analyte: str, change: float, most: float
) -> None:
    await talk.say(FERN)
    (reply,) = await talk.say(line)
    assert reply.text.startswith("No, ")
    assert reply.facts["analyte"] == analyte
    assert reply.facts["change"] == pytest.approx(change, rel=1e-3)
    assert reply.facts["most"] == most


async def test_a_slow_one_is_within_the_limit(talk: Talk) -> None:
    await talk.say(FERN)
    assert (await talk.text("is 0.5 dkh per day safe")).startswith("0.5 °dH is within the limit")


@pytest.mark.parametrize(
    "line",
    [
        "whats max i can change kh per day", "how fast can kh rise", "alk swings ok?",
        "wie schnell darf kh steigen",
        "quanto velocemente può salire il kh", "hoe snel mag kh stijgen",
        "jak szybko może rosnąć kh", "hur snabbt får kh stiga",
    ],
)  # fmt: skip
async def test_the_limit_is_told(talk: Talk, line: str) -> None:
    await talk.say(FERN)
    assert "At most 1 °dH a day for KH." in await talk.text(line)


@pytest.mark.parametrize(
    "line",
    [
        "how fast does nitrate rise", "how fast will kh drop", "kh drops 1 a day", "kh 4",
        "is 5 g of soda a day ok", "how much kh is used per day", "is kh 4 ok", "is ph 7 ok",
        "ph 7.2 kh 4 at once",
    ],
)  # fmt: skip
async def test_what_asks_something_else_is_not_taken_for_it(talk: Talk, line: str) -> None:
    await talk.say(FERN)
    for reply in await talk.say(line):
        assert "At most" not in reply.text
        assert "too fast" not in reply.text
