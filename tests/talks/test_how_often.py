"""How often, right after a plan of small changes: that plan again, never the usual share."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

OFTEN = (
    "how often then",
    "how often should i do it",
    "how often should i repeat it",
    "wie oft soll ich das machen",
    "à quelle fréquence",
    "cada cuánto",
    "com que frequência",
    "ogni quanto",
    "hoe vaak moet ik dat doen",
    "jak często to powtarzać",
    "hur ofta ska jag göra det",
)


@pytest.fixture
async def oak(talk: Talk) -> Talk:
    """Old-tank water beside hard tap water: a little of it moves pH far."""
    await talk.say("/tank new Oak 180 l fresh")
    await talk.say("/source tap ph 7.8, kh 10, gh 15, no3 20, temp 15")
    await talk.say("ph 6.4 kh 1 gh 5 no3 80 ammonia 0.5")
    return talk


async def test_how_often_repeats_the_routine_of_the_plan(oak: Talk) -> None:
    routine = (await oak.facts("what if i change 50%"))["as_routine"]
    for asked in OFTEN:
        (reply,) = await oak.say(asked)
        assert reply.facts == routine
        assert "every 3 days" in reply.lines[0].text


async def test_a_few_changes_are_one_a_day(oak: Talk) -> None:
    steps = (await oak.facts("what if i change 5%"))["steps"]
    (reply,) = await oak.say("how often")
    assert reply.facts == {"share": steps[0], "count": len(steps)}
    assert "once a day, 3 times" in reply.lines[0].text


async def test_the_usual_share_is_not_told_where_it_is_not_safe(oak: Talk) -> None:
    facts = await oak.facts("how often should i change water")
    assert facts["share"] == pytest.approx(0.25)
    assert facts["as_routine"]["share"] < 0.05


async def test_what_the_finding_says_to_ask_is_not_refused(talk: Talk) -> None:
    await talk.say("/tank new Oak 180 l fresh")
    await talk.say("/source tap ph 7.8, kh 10, gh 15, no3 20, temp 15")
    said = await talk.text("ph 6.4 kh 1 gh 5 no3 80 ammonia 0.5")
    ask = said.split("Ask: ")[1].splitlines()[0]
    facts = await talk.facts(ask)
    assert facts["share"] <= facts["largest_safe_share"]


async def test_within_the_limits_the_usual_is_told(talk: Talk) -> None:
    await talk.say("/tank new Oak 180 l fresh")
    await talk.say("/source tap ph 7.2, kh 5, gh 8, no3 5, temp 25")
    await talk.say("ph 7.2 kh 5 gh 8 no3 20 temp 25 ammonia 0")
    await talk.say("what if i change 20%")
    assert "a tenth to a quarter a week" in await talk.text("how often")
