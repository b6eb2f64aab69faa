"""No good verdict while a number is open, not understood, or the last test is doubted."""

from __future__ import annotations

import pytest

from core.message.disowned import disowned
from tests.chat.harness import Talk

WELL = "Change nothing"
ASKED = ("all good?", "am i ok", "what should i do", "is my water ok", "should i change water")


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("ammonia 0 nitrite 0 ph 7.4 temp 25")
    return talk


@pytest.mark.parametrize("asked", ASKED)
@pytest.mark.parametrize("text", ["ammonia 3 ??", "shook the bottle properly now ammonia 3"])
async def test_a_number_that_is_asked_about_counts_as_true(
    fern: Talk, text: str, asked: str
) -> None:
    await fern.say(text)
    (reply,) = await fern.say(asked)
    assert "cannot tell: is “ammonia 3” right" in reply.lines[0].text
    assert "Ammonia is dangerous" in reply.lines[1].text
    (supposed,) = reply.facts["supposed"]
    assert supposed["id"] == "ammonia"
    assert WELL not in reply.text
    assert "asks for a water change" not in reply.text


async def test_a_harmless_number_that_is_asked_about_is_asked_about_all_the_same(
    fern: Talk,
) -> None:
    await fern.say("kh 6 ??")
    (reply,) = await fern.say("all good?")
    assert "“kh 6”" in reply.text
    assert WELL not in reply.text
    assert "supposed" not in reply.facts


async def test_left_out_it_is_settled(fern: Talk) -> None:
    await fern.say("ammonia 3 ??")
    await fern.press(2)
    assert WELL in await fern.text("all good?")


async def test_read_anew_it_is_settled(fern: Talk) -> None:
    await fern.say("ammonia 3 ??")
    await fern.say("ammonia 0")
    assert WELL in await fern.text("all good?")


async def test_taken_it_is_judged(fern: Talk) -> None:
    await fern.say("ammonia 3 ??")
    await fern.press(1)
    (reply,) = await fern.say("all good?")
    assert "ammonia" in {each["id"] for each in reply.facts["findings"]}
    assert "supposed" not in reply.facts


async def test_of_another_tank_it_says_nothing(fern: Talk) -> None:
    await fern.say("/tank new Quarry 60 l fresh")
    await fern.say("Fern: ammonia 3 ??")
    await fern.say("Quarry: ammonia 0 nitrite 0 ph 7.4")
    assert WELL in await fern.text("quarry: is my water ok")


@pytest.mark.parametrize("text", ["the test says zorp 2 now", "retested zorp, 2"])
@pytest.mark.parametrize("asked", ASKED)
async def test_a_number_without_a_name_leaves_it_open(fern: Talk, text: str, asked: str) -> None:
    await fern.say(text)
    (reply,) = await fern.say(asked)
    assert "cannot tell yet" in reply.lines[0].text
    assert "did not understand" in reply.lines[1].text
    assert WELL not in reply.text


DISOWNED = (
    "wait i used expired kit",
    "forgot to shake the bottle",
    "the kit was expired",
    "oh no, my strips got wet",
    "wrong reagent",
    "i misread the test",
    "der test war abgelaufen",
    "flasche nicht geschüttelt",
    "le kit était périmé",
    "el kit estaba caducado",
    "il kit era scaduto",
    "o kit estava vencido",
    "de test was verlopen",
    "test był przeterminowany",
    "glömde skaka flaskan",
)
OWNED = (
    "is my kit expired?",
    "the kit is not expired",
    "kit expires in may",
    "shake the bottle",
    "what if the kit is off",
    "does a wet strip read wrong",
    "fish look bad",
    "i have a test kit",
    "strips",
    "if the kit was expired i would buy one",
)


@pytest.mark.parametrize("text", DISOWNED)
def test_a_doubted_test_is_heard(text: str) -> None:
    assert disowned(text)


@pytest.mark.parametrize("text", OWNED)
def test_a_test_that_is_asked_about_or_fine_is_none(text: str) -> None:
    assert not disowned(text)


@pytest.mark.parametrize("asked", ASKED)
async def test_a_doubted_test_bears_no_verdict_until_the_next(fern: Talk, asked: str) -> None:
    (reply,) = await fern.say("wait i used expired kit")
    assert "proves nothing" in reply.text
    (reply,) = await fern.say(asked)
    assert "cannot tell: you doubt the last test" in reply.lines[0].text
    assert WELL not in reply.text
    await fern.say("ammonia 0 nitrite 0 ph 7.4")
    assert WELL in await fern.text("all good?")


async def test_a_bad_reading_stands_before_the_doubt(fern: Talk) -> None:
    await fern.say("nitrite 2")
    await fern.say("forgot to shake the bottle")
    (reply,) = await fern.say("all good?")
    assert "Nitrite 2" in reply.lines[0].text
    assert "doubt the last test" in reply.text
