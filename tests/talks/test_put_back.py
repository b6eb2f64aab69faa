"""Out again with too much: how much may be changed, after an overdose and where a value is high."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

CAVE = (
    "/tank new Cave 60 l fresh", "added 10 guppies", "kh 3 gh 6 ph 6.8 temp 25 ammonia 0.5",
    "/source tap kh 3 gh 6 ph 7.6 chlorine 0",
)  # fmt: skip
REEF = ("/tank new Reef 300 l marine", "salinity 37.3 kh 8 ph 8.2 temp 25 ammonia 0")
BACK = (
    "how do i get it back down",
    "how do i lower it again",
    "wie bekomme ich das wieder runter",
    "comment je fais redescendre",
    "cómo lo vuelvo a bajar",
    "como baixo de novo",
    "come lo riporto giù",
    "hoe krijg ik het weer omlaag",
    "jak to zbić",
    "hur får jag ner det igen",
)


async def told(talk: Talk, *lines: str) -> None:
    for line in lines:
        await talk.say(line)


@pytest.mark.parametrize("asked", ["what if i change 50%", "how much can i change", *BACK])
async def test_after_an_overdose_half_may_go_whatever_kh_it_takes(talk: Talk, asked: str) -> None:
    """30 g in 60 L: KH 3 → 19.7; half of it with KH 3 is 11.3 (by amounts)."""
    await told(talk, *CAVE)
    await talk.wait(hours=2)
    await told(talk, "dosed 30 g baking soda")
    (reply,) = await talk.say(asked)
    assert reply.lines[0].text.startswith("Cave: the overdose is the greater danger: 50 % (30 L)")
    assert reply.facts["share"] == pytest.approx(0.5)
    assert reply.facts["before"]["kh"] == pytest.approx(19.7, abs=0.05)
    assert reply.facts["at_once"]["kh"] == pytest.approx(11.35, abs=0.05)
    assert reply.facts["dosed_since"] == {"kh": reply.facts["before"]["kh"]}
    assert len(reply.lines) <= 6
    if asked in BACK:
        assert reply.lines[1].text.startswith("That is the sodium bicarbonate that went in")
        assert reply.facts["findings"][0]["id"] == "overdose"


async def test_a_retest_shows_whether_it_is_still_an_emergency(talk: Talk) -> None:
    await told(talk, *CAVE)
    await talk.wait(hours=2)
    await told(talk, "dosed 30 g baking soda")
    await talk.wait(hours=1)
    await told(talk, "kh 18 ph 7.6 ammonia 0")
    facts = await talk.facts("what if i change 50%")
    assert facts["emergency"]
    assert facts["at_once"]["kh"] == pytest.approx(10.5, abs=0.05)
    assert "dosed_since" not in facts


async def test_no_share_of_first_aid_breaks_what_binds_in_an_emergency(talk: Talk) -> None:
    """A rise of pH over 0.5 at once binds all the same: new water of pH 8.6 and much buffer."""
    await told(talk, *CAVE[:3], "/source tap kh 14 gh 6 ph 8.6 chlorine 0")
    await talk.wait(hours=2)
    await told(talk, "dosed 6 g baking soda")
    facts = await talk.facts("what if i change 50%")
    rise = facts["at_once"]["ph"] - facts["before"]["ph"]
    assert ("ph" in facts.get("broken", ())) == (rise > 0.5)
    assert facts["emergency"]


async def test_a_few_degrees_back_are_no_second_step(talk: Talk) -> None:
    """KH 3, 2 °dH put in: a change that leads back towards 3 goes no further from it."""
    await told(talk, *CAVE[:2], "kh 3 gh 6 ph 7 temp 25 ammonia 0", CAVE[3])
    await talk.wait(hours=2)
    await told(talk, "dosed 3.6 g baking soda")
    await talk.wait(hours=1)
    await told(talk, "kh 5 ph 7.2 ammonia 0")
    facts = await talk.facts("what if i change 30%")
    assert "refused" not in facts
    assert facts["at_once"]["kh"] == pytest.approx(4.4, abs=0.01)


async def test_spoons_are_judged_by_the_least_that_they_weigh(talk: Talk) -> None:
    await told(talk, *CAVE)
    (reply,) = await talk.say("dosed 6 spoons of baking soda")
    assert "Too much for one day: at least" in reply.text
    assert (await talk.facts("how do i get it back down"))["emergency"]


async def test_without_a_source_the_cause_is_told(talk: Talk) -> None:
    await told(talk, *CAVE[:3])
    await talk.wait(hours=2)
    await told(talk, "dosed 30 g baking soda")
    (reply,) = await talk.say("how do i get it back down")
    assert "change a tenth to a quarter now" in reply.lines[0].text
    assert "only new water takes it out" in reply.lines[1].text
    assert "/source" in reply.text


@pytest.mark.parametrize("asked", ["how do i lower salinity", *BACK])
async def test_a_high_salinity_is_lowered_a_little_a_day(talk: Talk, asked: str) -> None:
    """The limits: 1 g/kg a day beside invertebrates, so 37.3 → 35 takes three days at least."""
    await told(talk, *REEF)
    (reply,) = await talk.say(asked)
    assert "asks for a water change now" not in reply.text
    assert "Salinity is lowered by taking out water" in reply.text
    assert len(reply.facts["steps"]) >= 3
    assert reply.facts["before"]["salinity"] - reply.facts["first"]["salinity"] <= 1.0
    assert len(reply.lines) <= 6


async def test_the_sea_is_as_salty_as_the_sea(talk: Talk) -> None:
    await told(talk, REEF[0], "salinity 35 kh 8 ph 8.2 temp 25 ammonia 0")
    assert "no need: salinity 35" in await talk.text("how do i lower salinity")


async def test_salt_that_went_in_is_counted_before_it_is_measured(talk: Talk) -> None:
    """600 g of sea salt in 300 L are 2 g/kg."""
    await told(talk, REEF[0], "salinity 35 kh 8 ph 8.2 temp 25 ammonia 0")
    await talk.wait(hours=1)
    await told(talk, "dosed 600 g sea salt")
    facts = await talk.facts("how do i lower salinity")
    assert facts["before"]["salinity"] == pytest.approx(37.0, abs=0.05)


async def test_where_nothing_is_high_the_routine_stays(talk: Talk) -> None:
    await told(talk, *CAVE[:2], "kh 5 gh 9 ph 7.2 temp 25 ammonia 0", CAVE[3])
    assert "asks for a water change now" in await talk.text("should i change water")


async def test_should_i_change_water_is_answered_with_the_share(talk: Talk) -> None:
    await told(talk, *CAVE)
    await talk.wait(hours=2)
    await told(talk, "dosed 30 g baking soda")
    (reply,) = await talk.say("should i change water")
    assert reply.lines[0].text.startswith("Cave: yes. Too much for one day: 30 g")
    assert "50 % (30 L) at once" in reply.lines[1].text
    assert len(reply.lines) <= 6


async def test_salt_in_fresh_water_goes_out_with_the_water(talk: Talk) -> None:
    """600 g in 100 L are 6 g/kg, which nobody needs to measure first."""
    await told(talk, "/tank new Crib 100 l fresh", "kh 4 gh 8 ph 7.4 temp 25 ammonia 0", CAVE[3])
    await talk.wait(hours=1)
    await told(talk, "dosed 600 g salt")
    facts = await talk.facts("how do i get it back down")
    assert facts["emergency"]
    assert 0.0 < facts["share"] <= 0.5


async def test_a_small_dose_beside_ammonia_is_told_why(talk: Talk) -> None:
    await told(talk, *CAVE)
    await talk.wait(hours=2)
    (reply,) = await talk.say("dosed 1.8 g baking soda")
    assert "Too much with the ammonia that is there" in reply.lines[1].text
    assert not (await talk.facts("what if i change 20%")).get("emergency")
