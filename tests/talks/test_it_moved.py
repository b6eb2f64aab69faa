"""What is to be moved without its name: the value that was just told, or asked about."""

from __future__ import annotations

import pytest

from core.message.it_moved import it_moved
from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    return talk


@pytest.mark.parametrize(
    "line",
    [
        "want it 5", "raise it to 5", "auf 5 bringen", "bring it up to 5 please", "le monter à 5",
        "subirlo a 5", "quero 5", "alzarlo a 5", "omhoog brengen naar 5", "chcę 5",
        "höj det till 5",
    ],
)  # fmt: skip
async def test_right_after_a_reading_it_is_that_value(fern: Talk, line: str) -> None:
    await fern.say("kh 3")
    facts = await fern.facts(line)
    assert (facts["from"], facts["to"]) == (3.0, 5.0), line


@pytest.mark.parametrize("line", ["kh 12 fish hiding", "kh 12 was 4, discus"])
async def test_what_is_said_beside_the_reading_leaves_it_the_value(fern: Talk, line: str) -> None:
    await fern.say(line)
    assert "KH is lowered" in await fern.text("how do i get it down")


async def test_of_several_the_one_with_a_finding_is_meant(fern: Talk) -> None:
    await fern.say("kh 3 ph 7 no3 80 ammonia 0")
    assert "KH may rise by 1 °dH a day" in await fern.text("raise it")


async def test_where_that_is_open_it_is_asked(talk: Talk) -> None:
    await talk.say("/tank new Lagoon 150 l marine")
    await talk.say("alk 7.5 ph 8.1 ammonia 0")
    (reply,) = await talk.say("want it 8.5")
    assert [each.label for each in reply.buttons[:2]] == ["raise kh to 8.5", "raise ph to 8.5"]
    await talk.press(1)
    assert talk.last[0].facts["to"] == 8.5


@pytest.mark.parametrize("line", ["5", "5.", "want it 5", "to 5"])
async def test_the_value_that_was_asked_for(fern: Talk, line: str) -> None:
    await fern.say("kh 3 ph 7 ammonia 0")
    await fern.say("raise it")
    facts = await fern.facts(line)
    assert (facts["from"], facts["to"]) == (3.0, 5.0), line


async def test_after_a_plan_of_another_value_it_is_not_the_one_before(fern: Talk) -> None:
    await fern.say("gh 6")
    await fern.say("kh 3 ph 7 ammonia 0")
    await fern.say("dose gh 8")
    assert (await fern.say("want it 5"))[0].facts.get("from") != 3.0


async def test_what_nobody_wishes_for_is_not_raised(fern: Talk) -> None:
    await fern.say("nitrate 20")
    assert "to" not in (await fern.say("raise it to 60"))[0].facts


@pytest.mark.parametrize(
    ("line", "told"),
    [("how do i get it down", "cool it 1 °C an hour"), ("raise it to 25", "warm it 1 °C an hour")],
)
async def test_warmth_goes_by_its_pace(fern: Talk, line: str, told: str) -> None:
    await fern.say("temp 24")
    assert told in await fern.text(line)


@pytest.mark.parametrize(
    "line",
    ["it went up", "up", "up to 6", "drop it", "i need 20 l", "make it 8", "raise kh", "it is 6"],
)
def test_what_is_no_such_wish(line: str) -> None:
    assert it_moved(line) is None


@pytest.mark.parametrize(
    "line",
    [
        "how do i raise the temperature", "how fast can i warm it", "wie kann ich aufheizen",
        "comment chauffer", "cómo subo la temperatura", "hoe snel opwarmen",
    ],
)  # fmt: skip
async def test_how_it_is_warmed(fern: Talk, line: str) -> None:
    await fern.say("temp 20")
    (reply,) = await fern.say(line)
    assert reply.text.startswith("Fern, 20 °C: warm it 1 °C an hour and 2 °C a day at most."), line
    assert reply.facts == {"step": 1.0, "temperature": 20.0}


async def test_to_get_to_a_number_after_how_much_to_change_is_of_nitrate(talk: Talk) -> None:
    for line in (
        "/tank new Shed 100 l fresh",
        "/source tap ph 7.6 kh 8 gh 10 no3 5 temp 24",
        "kh 7.5, gh 9.5, ph 7.5, no3 40, 24 c, ammonia 0, nitrite 0",
        "how much should i change",
    ):
        await talk.say(line)
    (plan, *_more) = await talk.say("to get to 20")
    assert plan.facts["before"]["nitrate"] == 40.0
    assert plan.facts["share"] == pytest.approx(20 / 35, abs=0.02)
