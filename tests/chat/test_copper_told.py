"""Copper told without an amount is kept, and is no water for invertebrates before it reads 0."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

TOLD = [
    "copper med in yesterday", "treated with copper last week", "added copper",
    "added 10 ml of ich med, contains copper", "added 10 ml plant food and copper med",
    "hab gestern kupfer reingetan", "mit kupfer behandelt", "kupferkur gestern",
    "traité au cuivre hier", "tratado con cobre", "tratei com cobre ontem",
    "trattato con rame ieri", "gisteren met koper behandeld", "wlałem miedź wczoraj",
    "behandlade med koppar igår",
]  # fmt: skip

NOT_TOLD = [
    "should i use copper", "no copper added", "copper free food added", "copper 0",
    "will treat with copper tomorrow", "my friend treated with copper", "copper test arrived",
    "added 2 copper tetras", "is copper med ok", "copper med in the shop", "can i add copper?",
    "nearly added copper", "kein kupfer reingetan", "je n'ai pas mis de cuivre",
    "treated with copper in the quarantine tank", "geen koper toegevoegd",
]  # fmt: skip


@pytest.mark.parametrize("told", TOLD)
async def test_copper_that_went_in_is_kept_and_refuses_invertebrates(talk: Talk, told: str) -> None:
    await talk.say("/tank new Fern 100 l")
    replies = await talk.say(told)
    done = [event for reply in replies for event in reply.facts.get("events", ())]
    assert "copper" in [event["substance"] for event in done]
    await talk.wait(hours=1)
    for asked in (
        "can i put amano shrimp in",
        "is the water ok for shrimps",
        "is it ok for snails",
    ):
        (reply,) = await talk.say(asked)
        assert reply.text.startswith("No, ")
        assert reply.facts["verdict"] == "no"


@pytest.mark.parametrize("told", NOT_TOLD)
async def test_what_tells_of_no_copper_keeps_none(talk: Talk, told: str) -> None:
    await talk.say("/tank new Fern 100 l")
    replies = await talk.say(told)
    done = [event for reply in replies for event in reply.facts.get("events", ())]
    assert "copper" not in [event.get("substance") for event in done]


async def test_only_a_zero_clears_it(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l")
    await talk.say("treated with copper")
    await talk.wait(days=1)
    await talk.say("ph 7 gh 8 kh 5 temp 24 copper 0.1")
    await talk.wait(days=5)
    (reply,) = await talk.say("can i add cherry shrimp")
    assert reply.text.startswith("No, ")
    (reply,) = await talk.say("is it dangerous for shrimps")
    assert "deadly for shrimps" in reply.text
    await talk.say("copper 0")
    assert "copper" not in await talk.text("can i add cherry shrimp")


async def test_fish_are_judged_as_before(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l")
    await talk.say("treated with copper")
    await talk.wait(hours=1)
    assert "copper reads 0" not in await talk.text("can i add guppies")
