"""How nitrate and hardness are lowered: with how much of which water.

Mixing by amounts: nitrate 40 and a quarter of water with 5 leave 40 - 0.25 * 35 = 31.25.
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

FERN = ("/tank new Fern 100 l fresh", "kh 6 ph 7.2 gh 8 no3 40 temp 24 ammonia 0")
TAP = "/source tap ph 7.4 kh 7 gh 9 no3 5 temp 24"


async def test_the_new_water_is_asked_for(talk: Talk) -> None:
    for line in FERN:
        await talk.say(line)
    (reply,) = await talk.say("how do i lower nitrate")
    assert reply.lines[0].text.startswith("Change water for some with less nitrate")
    assert reply.facts["refused"] == "source_unknown"


@pytest.mark.parametrize("line", ["how do i lower nitrate", "wie senke ich nitrat"])
async def test_nitrate_within_its_limit_is_lowered_all_the_same(talk: Talk, line: str) -> None:
    for each in (*FERN, TAP):
        await talk.say(each)
    (reply,) = await talk.say(line)
    assert reply.lines[0].text.startswith("No need: nitrate 40 is within 44.")
    assert reply.facts["share"] == pytest.approx(0.25)
    assert reply.facts["at_once"]["nitrate"] == pytest.approx(31.25, abs=0.1)
    assert reply.facts["largest_safe_share"] >= reply.facts["share"]


async def test_hardness_is_lowered_with_pure_water_and_never_below_what_holds_ph(
    talk: Talk,
) -> None:
    for each in (*FERN, TAP, "kh 4"):
        await talk.say(each)
    facts = await talk.facts("how do i lower gh")
    assert facts["source"] == "RO"
    assert facts["at_once"]["kh"] >= 3.36  # 60 mg/L as CaCO3, the limit of `low_kh`
    await talk.say("kh 3")
    assert "must not get lower" in await talk.text("how do i lower kh")


async def test_a_wish_by_so_much_is_one_to_a_value(talk: Talk) -> None:
    for each in (*FERN, TAP):
        await talk.say(each)
    assert (await talk.facts("lower nitrate by 7"))["share"] == pytest.approx(0.2)


async def test_how_many_are_there_comes_before_how_many_fit(talk: Talk) -> None:
    for each in FERN:
        await talk.say(each)
    assert "on record" not in await talk.text("how many neons")
    await talk.say("added 7 neons")
    (reply,) = await talk.say("how many neons")
    assert reply.lines[0].text == "Fern, on record of neons: 7."
    assert reply.facts["stock"] == {"Fern": {"neons": 7}}


REEF = ("/tank new Reef 200 l marine", "alk 13 sal 35 ca 430 ph 8.2 temp 25 ammonia 0")


@pytest.mark.parametrize(
    "line",
    [
        "how do i lower alk",
        "how do i get alk down to 9",
        "wie senke ich kh",
        "how do i lower ca",
        "comment baisser le kh",
        "cómo bajo el kh",
        "como baixar o kh",
        "come abbasso il kh",
        "hoe verlaag ik kh",
        "jak obniżyć kh",
        "hur sänker jag kh",
    ],
)
async def test_in_the_sea_nothing_of_the_salt_is_lowered_with_ro(talk: Talk, line: str) -> None:
    """RO thins all of sea salt alike: alkalinity for its salinity stays what it was."""
    for each in (*REEF, "/source ro kh 0 gh 0"):
        await talk.say(each)
    (reply,) = await talk.say(line)
    text = " ".join(told.text for told in reply.lines)
    assert "not with RO or tap, that only thins the salt" in text
    assert "new salt water, as salty as the tank" in text
    assert "share" not in reply.facts
    assert reply.facts["value"] == (430 if line.endswith("ca") else 13)


async def test_in_the_sea_salt_water_with_less_is_what_lowers_it(talk: Talk) -> None:
    for each in (*REEF, "/source saltmix salinity 35 kh 7"):
        await talk.say(each)
    facts = await talk.facts("how do i lower alk")  # the only source: it fills the tank
    assert facts["source"] == "saltmix"
    assert facts["at_once"]["kh"] < 13
    assert facts["at_once"]["salinity"] == pytest.approx(35)
    await talk.say("/source ro kh 0 gh 0")
    await talk.say("/source ro for reef")
    assert "what if i change 10% with saltmix" in await talk.text("how do i lower alk")
