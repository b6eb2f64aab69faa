"""Whether a value is high is told by the one on record, and what a change since left of it."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

FERN = "/tank new Fern 100 l fresh"


@pytest.mark.parametrize(
    "line",
    [
        "is no3 high", "is my no3 too high?", "ist no3 hoch", "le no3 est trop haut ?",
        "¿está alto el no3?", "is het no3 hoog", "czy no3 jest wysokie", "är no3 högt",
        "o no3 está alto?", "il no3 è alto?",
    ],
)  # fmt: skip
async def test_the_value_on_record_is_judged(talk: Talk, line: str) -> None:
    await talk.say(FERN)
    await talk.say("no3 60")
    first = (await talk.text(line)).splitlines()[0]
    assert "60 mg/L is over 44" in first


@pytest.mark.parametrize("line", ["is kh important", "is nitrate important"])
async def test_what_is_asked_in_general_is_not_judged(talk: Talk, line: str) -> None:
    await talk.say(FERN)
    await talk.say("no3 60 kh 5")
    assert "Fern: " not in (await talk.text(line)).splitlines()[0]


async def test_nitrate_that_fell_but_is_still_too_much_is_said_again_once(talk: Talk) -> None:
    await talk.say(FERN)
    await talk.say("no3 60")
    assert "45 mg/L is over 44" in await talk.text("no3 45")
    assert "is over" not in await talk.text("no3 46")


async def test_a_change_since_the_test_is_reckoned_with(talk: Talk) -> None:
    await talk.say(FERN)
    await talk.say("no3 60")
    await talk.say("changed 50%")
    (reply,) = await talk.say("good for goldfish?")
    assert "is over 44:" not in reply.text
    assert "about 30" in reply.text
    await talk.say("no3 50")
    assert "50 mg/L is over 44:" in await talk.text("is no3 high")
    await talk.say("changed 5%")
    assert "47.5" not in await talk.text("is no3 high")
    assert "50 mg/L is over 44:" in await talk.text("is no3 high")


@pytest.mark.parametrize(
    ("told", "text", "said"),
    [
        ("nitrate 40", "is that bad", "44 mg/L"),
        ("ph 7", "is that ok", "betta"),
        ("ph 7", "ist das schlimm?", "betta"),
    ],
)
async def test_what_that_means_is_judged_by_its_own_range(
    talk: Talk, told: str, text: str, said: str
) -> None:
    for line in ("/tank new Cube 20 l fresh", "added 1 betta", told):
        await talk.say(line)
    (reply,) = await talk.say(text)
    assert said in reply.lines[1].text
