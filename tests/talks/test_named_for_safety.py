"""Is it safe for animals that are named: no yes, no no; poison first, then what was judged."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

ASKED = [
    "are neocaridina safe in there",
    "got neocaridina too, is that still safe",
    "is it safe for neocaridina",
    "are nerite snails safe in there",
    "is it dangerous for neocaridina in there",
    "sind neocaridina da drin sicher",
    "les neocaridina sont en sécurité ?",
    "son seguros los neocaridina ahí?",
    "gli neocaridina sono al sicuro?",
    "neocaridina estão seguros aí?",
    "zijn neocaridina daar veilig",
    "czy neocaridina są tam bezpieczne",
    "är neocaridina säkra där",
    "are discus safe in there",
]
YES_OR_NO = ("yes", "no ", "no,", "no:")


async def _first(talk: Talk, told: str, asked: str) -> str:
    await talk.say("/tank new Fern 60 l fresh")
    await talk.say(told)
    replies = await talk.say(asked)
    return "\n".join(reply.text for reply in replies)


@pytest.mark.parametrize("asked", ASKED)
async def test_ammonia_is_named_first(talk: Talk, asked: str) -> None:
    told = "ph 7 kh 4 gh 8 temp 24 nitrite 0 ammonia 0.5"
    first = (await _first(talk, told, asked)).splitlines()[0]
    assert "there is ammonia in Fern" in first, first
    assert not first.casefold().startswith(YES_OR_NO)


@pytest.mark.parametrize("asked", ASKED)
async def test_the_first_word_is_no_yes_and_no_no(talk: Talk, asked: str) -> None:
    text = await _first(talk, "ph 7 kh 4 gh 8 temp 24", asked)
    assert not text.casefold().startswith(YES_OR_NO), text
    assert "Fern" in text


async def test_untested_ammonia_comes_before_what_suits(talk: Talk) -> None:
    text = await _first(talk, "ph 7 kh 4 gh 8", "are neocaridina safe in there")
    lines = text.splitlines()
    assert lines[0].startswith("I cannot tell for Fern: test ammonia and nitrite first")
    assert lines[1] == "What was measured of Fern suits neocaridina: pH, GH and KH."
    assert "Not measured yet: temperature." in text


async def test_potassium_of_doses_is_judged_too(talk: Talk) -> None:
    """6 g of KNO3 in 100 l bring 23 mg/L: over 20 with shrimps, not over 50 without."""
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("ph 7 kh 4 gh 8 temp 24 ammonia 0 nitrite 0")
    for _ in range(2):
        await talk.say("dosed 3 g kno3")
        await talk.wait(days=2)
    await talk.say("ammonia 0 nitrite 0")
    (reply,) = await talk.say("are neocaridina safe in there")
    assert {"potassium_sum"} <= {each["id"] for each in reply.facts["findings"]}, reply.text
    assert "otassium" in "\n".join(reply.text.splitlines()[:3])


async def test_whether_they_may_be_kept_is_still_answered_with_a_yes(talk: Talk) -> None:
    text = await _first(talk, "ph 7 kh 4 gh 8 temp 24", "can i keep neocaridina")
    assert text.startswith("Yes: what I know of Fern suits neocaridina.")


async def test_but_not_where_the_filter_is_growing(talk: Talk) -> None:
    told = "ph 7 kh 4 gh 8 temp 24 nitrite 0 ammonia 0.5"
    text = await _first(talk, told, "can i keep neocaridina")
    assert text.startswith("Not yet: there is ammonia in Fern")
