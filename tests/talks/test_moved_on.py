"""What puts right or tells an amount right behind what was not understood, or of another thing.

The words are ours, no source.
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

FRESH = ("/tank new Fern 100 l fresh", "kh 4 gh 6 ph 7 ammonia 0")


async def kh_now(talk: Talk) -> float:
    (value,) = (await talk.facts("what is kh now"))["values"]
    return float(value["canonical"])


@pytest.mark.parametrize(
    "line",
    ["no, 5", "waren doch 5", "i meant 5", "5 not 4", "sorry 5", "non, 5", "perdón, era 5"],
)
async def test_a_number_puts_nothing_older_right(talk: Talk, line: str) -> None:
    await talk.say(FRESH[0])
    await talk.say("kh 4")
    assert "I did not find" in await talk.text("3 blorps into the zonk")
    assert "5 of what?" in await talk.text(line)
    assert await kh_now(talk) == 4.0


async def test_right_behind_the_reading_it_does(talk: Talk) -> None:
    await talk.say(FRESH[0])
    await talk.say("3 blorps into the zonk")
    await talk.say("kh 4")
    assert "Corrected" in await talk.text("no, 5")
    assert await kh_now(talk) == 5.0


@pytest.mark.parametrize(
    "between", ["gh 7", "dosed 2 g epsom", "ca needs to go to 420", "gh 9 blorp"]
)
@pytest.mark.parametrize("line", ["put 3 g in", "half in"])
async def test_an_amount_is_asked_about_when_another_thing_was_spoken_of(
    talk: Talk, between: str, line: str
) -> None:
    for each in (*FRESH, "dose kh 5", between):
        await talk.say(each)
    (reply,) = await talk.say(line)
    assert "events" not in reply.facts
    if between == "ca needs to go to 420" and line == "half in":
        # the line between was not understood: nothing is offered
        assert "How much of what went in?" in reply.text
        assert [button.label for button in reply.buttons] == ["nothing went in"]
        return
    assert "of what?" in reply.text
    (logged,) = await talk.press(1)
    assert logged.facts["events"][0]["substance"] == "sodium bicarbonate"


@pytest.mark.parametrize("between", ["ph 7.1", "kh 4", "kh 4 gh 6", "is that safe", "ammonia 0"])
async def test_what_is_of_the_plan_leaves_it_spoken_of(talk: Talk, between: str) -> None:
    for each in (*FRESH, "dose kh 5", between):
        await talk.say(each)
    (event,) = (await talk.facts("put 3 g in"))["events"]
    assert (event["grams"], event["substance"]) == (3.0, "sodium bicarbonate")


async def test_done_behind_the_question_logs_nothing_but_what_was_told(talk: Talk) -> None:
    for each in (*FRESH, "dose kh 5", "gh 7", "put 3 g in"):
        await talk.say(each)
    assert all("events" not in reply.facts for reply in await talk.say("done"))
