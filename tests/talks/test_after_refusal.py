"""What is said after no amount was given; the words are ours, no source."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def refused(talk: Talk) -> None:
    for line in ("/tank new Fern 90 l fresh", "kh 3 ph 7.8 ammonia 2 temp 26", "dose kh 6"):
        await talk.say(line)


@pytest.mark.parametrize(
    "line",
    [
        "why wont you just tell me", "ok but why can't i", "aber warum nicht", "pourquoi pas",
        "¿por qué no puedo?", "perché no", "waarom niet", "dlaczego nie", "varför inte",
    ],
)  # fmt: skip
async def test_its_reason_is_told(talk: Talk, line: str) -> None:
    await refused(talk)
    answer = await talk.text(line)
    assert "No buffer now" in answer
    assert "share of NH3" in answer


@pytest.mark.parametrize(
    "line", ["so do nothing??", "what then", "was soll ich dann tun", "que faire alors", "co teraz"]
)
async def test_what_to_do_instead_are_the_steps(talk: Talk, line: str) -> None:
    await refused(talk)
    assert (await talk.facts(line))["emergency"] == "ammonia"


@pytest.mark.parametrize(
    "line",
    ["when can i dose", "so can i ever get to 6", "wann kann ich", "quand puis-je", "never?"],
)
async def test_when_it_may_be_is_told(talk: Talk, line: str) -> None:
    await refused(talk)
    await talk.say("so do nothing??")  # talk of it does not end it
    assert "As soon as ammonia is 0" in await talk.text(line)


@pytest.mark.parametrize(
    "line", ["no i wont change water, last time fish died", "ich kann kein wasser wechseln"]
)
async def test_who_will_not_change_water_is_told_the_rest(talk: Talk, line: str) -> None:
    await refused(talk)
    answer = await talk.text(line)
    assert answer.startswith("Then no food, strong air")
    assert "Nothing that raises pH" in answer


async def test_another_refusal_is_talked_of_as_itself(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3 ph 7")
    await talk.say("lower ph to 6 with vinegar")
    assert "Lower KH with RO" in await talk.text("what then")
    assert "ammonia" not in await talk.text("when can i")


@pytest.mark.parametrize(
    "line", ["why is my kh low", "when is my next test", "kh 4", "nothing new"]
)
async def test_what_is_of_something_else_is_left_alone(talk: Talk, line: str) -> None:
    await refused(talk)
    for reply in await talk.say(line):
        assert "As soon as" not in reply.text
        assert "refused" not in reply.facts


async def test_after_a_plan_it_is_talk_of_the_plan(talk: Talk) -> None:
    await refused(talk)
    for line in ("ammonia 0", "dose kh 4"):
        await talk.say(line)
    assert "No buffer now" not in await talk.text("why not")


async def test_another_answer_ends_the_talk_of_it(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4 ph 7")
    await talk.say("can i mix bleach and vinegar to clean the glass")
    await talk.say("how fast may gh rise")
    assert "poison line" not in await talk.text("what now")


@pytest.mark.parametrize("asked", ["half dose ok?", "just a little then", "4 tablespoons?"])
@pytest.mark.parametrize("before", ["got the copper medicine", "can i use vinegar to lower ph"])
async def test_a_smaller_amount_gets_the_same_no(talk: Talk, before: str, asked: str) -> None:
    await talk.say("100 l kh 4")
    await talk.say(before)
    (reply,) = await talk.say(asked)
    assert reply.lines[0].text.startswith("No")
    assert "refused" in reply.facts


async def test_half_of_the_water_is_no_smaller_amount(talk: Talk) -> None:
    await talk.say("100 l kh 4")
    await talk.say("got the copper medicine")
    reply = (await talk.say("can i change half of the water"))[0]
    assert "not so much" not in reply.text


@pytest.mark.parametrize("asked", ["so go ahead then?", "go ahead with it anyway?", "keep going?"])
async def test_going_on_is_asked_against_what_stands(talk: Talk, asked: str) -> None:
    for line in ("95 l", "kh 3 want kh 8", "ammonia .5"):
        await talk.say(line)
    reply = (await talk.say(asked))[0]
    assert "I did not find" not in reply.text
    assert "grams" not in reply.facts
    assert reply.lines[0].text.startswith(("No", "Tank: No"))


@pytest.mark.parametrize("asked", ["should i still do the last one", "do i do the next one"])
async def test_the_last_one_is_not_given_past_the_goal(talk: Talk, asked: str) -> None:
    for line in ("100 l", "kh 3 want kh 6", "kh 9"):
        await talk.say(line)
    assert "Give nothing more" in await talk.text(asked)


@pytest.mark.parametrize(
    "asked",
    [
        "no baking soda here but got soda crystals, same thing right",
        "got garden lime, is it the same",
    ],
)
async def test_washing_soda_is_not_the_same(talk: Talk, asked: str) -> None:
    await talk.say("90 l kh 1 ph 7")
    (reply,) = await talk.say(asked)
    assert reply.facts["refused"] == "carbonate"


@pytest.mark.parametrize(
    "asked", ["want ph 7 so how much bicarb", "raise ph to 7 with baking soda"]
)
async def test_a_known_salt_is_not_called_unknown(talk: Talk, asked: str) -> None:
    await talk.say("100 l kh 3 ph 6.5")
    (reply,) = await talk.say(asked)
    assert "I do not know what is in it" not in reply.text
    assert "No dose to a pH" in reply.text


@pytest.mark.parametrize("asked", ["big water change 90% now yeah?", "90% wc right?"])
async def test_a_change_asked_by_its_last_word_is_judged(talk: Talk, asked: str) -> None:
    for line in ("60 l kh 4 ammonia 4", "fish gasping"):
        await talk.say(line)
    assert "a tenth to a quarter" in await talk.text(asked)
    assert "changed" not in (await talk.text("what went in today")).lower()
