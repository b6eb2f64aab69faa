"""Copper told without an amount is kept, and is no water for invertebrates before it reads 0."""

from __future__ import annotations

import pytest

from core.message.copper_told import may_use
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


MAY_USE = (
    "can i use copper to kill hydra",
    "can i use copper with my shrimp",
    "have shrimp in there too. can i use copper",
    "can i dose copper",
    "can i dose copper to 0.2",
    "is it safe to add some copper",
    "kann ich kupfer gegen hydra benutzen",
    "puis-je utiliser du cuivre",
    "puedo usar cobre",
    "czy mogę użyć miedzi",
)
NOT_USED = (
    "can i add shrimp after copper",
    "can i use a copper test",
    "can i use copper pipes",
    "whats my copper",
    "copper 0.1",
)


@pytest.mark.parametrize("asked", MAY_USE)
async def test_copper_may_not_go_where_shrimps_live(talk: Talk, asked: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("added 5 shrimp, added 4 discus")
    (reply,) = await talk.say(asked)
    assert reply.facts["verdict"] == "no"
    assert "shrimp" in reply.lines[0].text
    assert " mg" not in reply.text


@pytest.mark.parametrize("asked", MAY_USE)
async def test_copper_for_fish_alone_is_a_vets(talk: Talk, asked: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("added 4 discus")
    (reply,) = await talk.say(asked)
    assert reply.facts["verdict"] == ("no" if "shrimp" in asked else "care")
    assert "vet" in reply.text
    assert " mg" not in reply.text


@pytest.mark.parametrize("text", NOT_USED)
def test_other_talk_of_copper_asks_for_no_use(text: str) -> None:
    assert not may_use(text)


@pytest.mark.parametrize(
    "text", ["just dosed copper, 10 ml", "just dosed copper 10 ml", "added copper, 10 ml"]
)
async def test_copper_with_its_amount_behind_it_is_logged(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("added 5 shrimp")
    (reply,) = await talk.say(text)
    (event,) = reply.facts["events"]
    assert (event["substance"], event["millilitres"]) == ("copper", 10.0)
    (first,) = await talk.say("shrimp are dropping dead")
    assert "Copper kills" in first.text
    (now,) = await talk.say("what now")
    assert now.facts["emergency"] == "copper"
    assert "shrimps" in now.lines[0].text


@pytest.mark.parametrize("text", ["should i have added copper, 5 ml", "copper 5 ml"])
async def test_an_amount_that_did_not_go_in_is_none(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    replies = await talk.say(text)
    assert not any(reply.facts.get("events") for reply in replies)


@pytest.mark.parametrize("text", ["didnt add any copper", "i never used copper"])
async def test_copper_that_did_not_go_in_is_compared_with_the_record(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    assert "no copper is on record" in await talk.text(text)
    await talk.say("dosed 10 ml copper")
    assert "Taken back" in await talk.text(text)


@pytest.mark.parametrize("between", ["hmm let me think", "ok thanks"])
async def test_a_line_between_leaves_copper_what_was_done(talk: Talk, between: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("can i use copper to kill hydra")
    await talk.say(between)
    (event,) = (await talk.facts("did it"))["events"]
    assert event["substance"] == "copper"


async def test_another_plan_between_is_what_was_done(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("can i use copper to kill hydra")
    await talk.say("how much soda to kh 5 from 3")
    assert "copper" not in await talk.text("did it")
