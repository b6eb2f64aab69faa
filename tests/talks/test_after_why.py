"""Why a plan is as it is, in words that fit what it raises; steps of the day are the limits'."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

SLOW = (
    "why not all at once",
    "why so slow",
    "why 3 parts",
    "warum so langsam",
    "warum nicht alles auf einmal",
    "pourquoi pas d'un coup",
    "por qué tan lento",
    "por que não de uma vez",
    "perché non tutto insieme",
    "waarom zo langzaam",
    "dlaczego tak wolno",
    "varför så långsamt",
)


@pytest.mark.parametrize("line", SLOW)
async def test_why_a_buffer_goes_in_slowly(talk: Talk, line: str) -> None:
    await talk.say("/tank new Bac 100 l fresh")
    await talk.say("kh 2 gh 6 ph 6.8 temp 24 ammonia 0")
    await talk.say("dose kh 5")
    (reply,) = await talk.say(line)
    assert reply.lines[0].text.startswith("KH may rise by 1 °dH a day, and never more than double")
    assert (reply.facts["step"], reply.facts["count"]) == (1.0, 3)
    assert "fast rise of pH" in reply.text


@pytest.mark.parametrize("line", SLOW)
async def test_why_calcium_goes_in_slowly(talk: Talk, line: str) -> None:
    await talk.say("/tank new Mar 300 l marine")
    await talk.say("ca 380 sal 35 alk 8 mg 1300 ph 8.1 temp 25 ammonia 0")
    await talk.say("dose calcium 430")
    (reply,) = await talk.say(line)
    assert reply.lines[0].text == "Calcium may rise by 20 mg/L a day at most, so 3 parts."
    assert "salinity" not in reply.text.casefold()


async def test_why_water_is_changed_in_small_steps(talk: Talk) -> None:
    await talk.say("/tank new Bac 100 l fresh")
    await talk.say("kh 2 gh 6 ph 6.8 temp 24 ammonia 0")
    await talk.say("/source tap kh 14 gh 16 ph 7.8 temp 24 total chlorine 0")
    await talk.say("what if i change 50%")
    assert (await talk.text("why so slow")).startswith("Because at once KH would move too far")
    await talk.say("what if i change 2%")
    assert "nothing needs to be slower" in await talk.text("why so slow")


async def test_one_part_is_not_slow(talk: Talk) -> None:
    await talk.say("/tank new Bac 100 l fresh")
    await talk.say("kh 4 gh 6 ph 7 temp 24 ammonia 0")
    await talk.say("dose kh 5")
    assert "one part already" in await talk.text("why so slow")


@pytest.mark.parametrize(
    "line",
    ["why not sodium", "warum nicht natrium", "pourquoi pas sodium", "por qué no sodio",
     "perché non sodio", "waarom geen natrium", "dlaczego nie sód", "varför inte natrium"],
)  # fmt: skip
async def test_another_salt_would_do(talk: Talk, line: str) -> None:
    await talk.say("/tank new Bac 100 l fresh")
    await talk.say("kh 4 gh 6 ph 7 temp 24 ammonia 0")
    await talk.say("dose kh 5 with potassium bicarbonate")
    facts = await talk.facts(line)
    assert facts["other"] == "sodium bicarbonate"
    again = await talk.facts("with sodium bicarbonate")  # still what is spoken of
    assert again["substance"] == "sodium bicarbonate"
    assert "with sodium bicarbonate (baking soda) already" in await talk.text(line)
    assert "brings no KH" in await talk.text("why not epsom salt")


async def test_a_carbonate_is_never_said_to_do(talk: Talk) -> None:
    await talk.say("/tank new Bac 100 l fresh")
    await talk.say("kh 4 gh 6 ph 7 temp 24 ammonia 0")
    await talk.say("dose kh 5")
    for line in ("why not washing soda", "why not sodium carbonate", "why not potassium carbonate"):
        assert "would do" not in await talk.text(line)


@pytest.mark.parametrize("line", ["why not sodium", "why so slow"])
async def test_without_a_plan_it_is_asked_of_the_record(talk: Talk, line: str) -> None:
    await talk.say("/tank new Bac 100 l fresh")
    await talk.say("kh 4 gh 6 ph 7 temp 24 ammonia 0")
    assert "a day" not in (await talk.text(line)).splitlines()[0]
