"""Where a plan stands: how much today, is it finished, may the first part go in now."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def begun(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 gh 6 ph 7.0 temp 24 ammonia 0")
    await talk.say("dose kh 5")
    await talk.say("put the first part in")


@pytest.mark.parametrize(
    "text",
    [
        "how much today", "how much more today", "so finished?", "am i finished", "carry on?",
        "wie viel heute", "la suite?", "cuánto hoy", "quanto hoje", "quanto oggi",
        "hoeveel vandaag", "ile dzisiaj", "hur mycket idag", "so now?", "all done?",
    ],
)  # fmt: skip
async def test_after_the_retest_the_next_part_is_worked_out(talk: Talk, text: str) -> None:
    await begun(talk)
    assert "2 of 3 parts are left" in await talk.text(text), text
    await talk.wait(days=1)
    assert "then ask: dose kh 5" in await talk.text(text), text
    await talk.say("kh 3.5 ph 7.1 ammonia 0")
    facts = await talk.facts(text)
    assert (facts["from"], facts["to"]) == (3.5, 5), text


@pytest.mark.parametrize(
    "text",
    [
        "whens the next part", "wann kommt die zweite portion", "cuando echo la otra",
        "and tmrw again?", "morgen nochmal?", "demain encore ?", "should i keep testing",
        "muss ich weiter testen?",
    ],
)  # fmt: skip
async def test_the_next_waits_for_its_test(talk: Talk, text: str) -> None:
    await begun(talk)
    assert "Test KH, pH and ammonia from tomorrow 12:00" in await talk.text(text), text


async def test_a_part_told_in_other_words_counts(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 gh 6 ph 7.0 temp 24 ammonia 0")
    await talk.say("dose kh 4")
    await talk.say("hab 2.7 g natron rein")
    assert "1 of 2 parts is left" in await talk.text("how much more today")
    await talk.wait(days=1)
    assert "1 of 2 parts is left" in await talk.text("wann kommt die zweite portion")


async def test_the_ammonia_that_a_plan_asked_for_lets_it_go_on(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 gh 6 ph 7.0 temp 24")
    await talk.say("dose kh 5")
    told = await talk.text("so when can i dose")
    assert told.startswith("Only if total ammonia is under")
    assert "The first: 2.7 g" in told
    await talk.say("ammonia 0")
    facts = await talk.facts("so now?")
    assert len(facts["parts"]) == 3
    assert "only_if_ammonia_below" not in facts


async def test_ammonia_that_came_since_gives_no_part(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 gh 6 ph 7.4 temp 24")
    await talk.say("dose kh 5")
    await talk.say("ammonia 3")
    for text in ("so now?", "how much today", "so when can i dose", "am i finished"):
        told = await talk.text(text)
        assert "2.7 g" not in told, text
        assert "send: done" not in told, text


async def test_the_end_of_a_plan_is_told(talk: Talk) -> None:
    await begun(talk)
    await talk.say("put all of it in")
    assert "Give no more" in await talk.text("so finished?")
    await talk.wait(days=1)
    await talk.say("kh 5 ph 7.3 ammonia 0")
    (reply,) = await talk.say("so finished?")
    assert "parts" not in reply.facts


@pytest.mark.parametrize(
    "text",
    [
        "finished feeding", "its over", "the test is good", "all my fish are done",
        "how much food today", "i test daily", "morgen", "is my filter finished",
    ],
)  # fmt: skip
async def test_what_only_sounds_like_it_is_not_of_the_plan(talk: Talk, text: str) -> None:
    await begun(talk)
    told = await talk.text(text)
    assert "parts are left" not in told, text
    assert "from tomorrow" not in told, text
    assert "3 of 3" not in await talk.text("what is left"), text


@pytest.mark.parametrize("text", ["how much today", "am i finished", "carry on?", "la suite?"])
async def test_without_a_plan_none_is_made_up(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 5 ph 7.3")
    (reply,) = await talk.say(text)
    assert "parts" not in reply.facts, text


@pytest.mark.parametrize(
    "text",
    [
        "i will put it in", "gonna put it in", "i'll put the first part in now", "put it in?",
        "going to dose the first part", "im going to put it in", "shall it be put in",
        "ich werde den ersten teil reingeben", "je vais mettre la première partie",
        "voy a echar la primera parte", "how much do i put in today then", "do i put it in now",
        "what do i put in first", "did everything go in", "did i put it in", "did it all go in",
        "do i put both in", "wie viel rein heute", "combien je mets",
        "vou pôr a primeira parte", "ik ga het erin doen",
    ],
)  # fmt: skip
async def test_what_is_only_meant_to_be_done_is_not_logged(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 gh 6 ph 7.0 temp 24 ammonia 0")
    await talk.say("dose kh 5")
    await talk.say(text)
    assert "None of the 3 parts is on record yet" in await talk.text("what is left"), text


@pytest.mark.parametrize("asked", ["so how long do i wait now", "when can i add the next part"])
@pytest.mark.parametrize("dosed", ["dosed 80 g baking soda", "dosed 12 g baking soda"])
async def test_after_too_much_nothing_goes_in_whatever_the_plan_says(
    talk: Talk, dosed: str, asked: str
) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 3 ph 7 temp 25 ammonia 0")
    await talk.say("dose kh 6")
    await talk.say(dosed)
    told = await talk.text(asked)
    assert "Stop dosing" in told or "Add nothing more" in told
    assert "parts" not in told


async def test_after_too_much_without_a_plan_the_wait_is_told_as_well(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 3 ph 7 temp 25 ammonia 0")
    await talk.say("dosed 80 g baking soda")
    assert "Stop dosing" in await talk.text("so how long do i wait now")


async def test_after_a_part_the_plan_tells_the_wait(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 3 ph 7 temp 25 ammonia 0")
    await talk.say("dose kh 6")
    await talk.say("dosed 3.6 g")
    assert "24 h apart" in await talk.text("so how long do i wait now")
