"""All that is due in one list: reminders, the parts of plans and their tests."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def begun(talk: Talk) -> None:
    """A reminder in three days, and a plan of three parts whose first went in."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("remind me to clean the filter in 3 days at 10:00")
    await talk.say("kh 2 gh 6 ph 7.0 temp 24 ammonia 0")
    await talk.say("dose kh 5")
    await talk.say("put the first part in")


@pytest.mark.parametrize(
    "text",
    [
        "whats due", "what's coming up", "what reminders do i have", "what did i have to do",
        "was steht an", "welche erinnerungen hab ich", "que tengo pendiente",
        "qu'est-ce que j'ai de prévu", "o que tenho pendente", "cosa c'è in programma",
        "wat staat er op de planning", "jakie mam przypomnienia", "vad är på gång",
    ],
)  # fmt: skip
async def test_the_soonest_stands_first(talk: Talk, text: str) -> None:
    await begun(talk)
    (reply,) = await talk.say(text)
    first, second = (line.text for line in reply.lines)
    assert "test KH, pH and ammonia tomorrow 12:00, then ask: dose kh 5" in first, text
    assert second.startswith("1. Fern: clean the filter"), text
    assert [(each["tank"], each["left"]) for each in reply.facts["plans"]] == [("Fern", 2)]


async def test_days_are_asked_about(talk: Talk) -> None:
    await begun(talk)
    assert (await talk.text("what's due today?")).startswith("Nothing is due then.")
    for text in ("do i have anything tomorrow", "qué tengo para mañana", "was steht morgen an"):
        told = await talk.text(text)
        assert "dose kh 5" in told, text
        assert "filter" not in told, text
    await talk.wait(days=1)
    assert "test KH, pH and ammonia now" in await talk.text("what's due today")
    assert "filter" in await talk.text("was steht diese woche an")


async def test_a_plan_is_followed_to_its_end(talk: Talk) -> None:
    await begun(talk)
    await talk.wait(days=1)
    await talk.say("kh 3")
    assert "the next part; ask: dose kh 5" in await talk.text("whats due")
    await talk.say("added 5.4 g baking soda")
    assert "all parts are in; test KH, pH and ammonia" in await talk.text("whats due")
    await talk.wait(days=1)
    await talk.say("kh 5")
    (reply,) = await talk.say("whats due")
    assert "plans" not in reply.facts


async def test_a_plan_that_waits_for_ammonia_says_so(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 gh 6 ph 7.0 temp 24")
    await talk.say("dose kh 5")
    assert (await talk.text("whats due")).startswith("Only if total ammonia is under")
    await talk.say("ammonia 2")
    told = await talk.text("whats due")
    assert "older than your last readings" in told
    assert " g" not in told


async def test_a_number_answers_the_reminder_that_had_it(talk: Talk) -> None:
    await begun(talk)
    await talk.say("whats due")
    assert "Done" in await talk.text("done 1")


@pytest.mark.parametrize(
    "text",
    [
        "do i have ammonia", "do i have enough fish", "what do i have to buy", "what's up",
        "is my plant due to die", "what do i have in the tank", "i have anything",
    ],
)  # fmt: skip
async def test_what_only_sounds_like_it_lists_nothing(talk: Talk, text: str) -> None:
    await begun(talk)
    (reply, *_) = await talk.say(text)
    assert "reminders" not in reply.facts, text


async def test_what_is_wrong_goes_before_what_is_to_do(talk: Talk) -> None:
    await begun(talk)
    await talk.say("ammonia 4 ph 8.2")
    (reply, *_) = await talk.say("what did i have to do")
    assert "reminders" not in reply.facts


@pytest.mark.parametrize(
    "line",
    [
        "what should i do tomorrow", "whats on tomorrow", "anything tomorrow?",
        "was soll ich morgen tun", "was steht morgen an?",
    ],
)  # fmt: skip
async def test_what_is_on_tomorrow_is_listed(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "Nothing is due" in await talk.text(line), line
    await talk.say("remind me to test kh tomorrow at 19:00")
    assert "test kh" in await talk.text(line), line


async def test_what_to_do_at_all_is_of_the_water(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("no3 80")
    await talk.say("remind me to test kh tomorrow at 19:00")
    assert "Nitrate 80" in await talk.text("what should i do")


@pytest.mark.parametrize(
    "text", ["what reminders have i got", "list my reminders", "any reminders set?"]
)
async def test_that_no_reminder_is_set_is_said_beside_a_plan(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert (await talk.text(text)).startswith("No reminder is set. Try")
    await talk.say("kh 2 gh 6 ph 7.0 temp 24 ammonia 0")
    await talk.say("dose kh 5")
    assert (await talk.text(text)).startswith("No reminder is set. What waits")
    assert "No reminder" not in await talk.text("what's due")
