"""Water changes seen before they are done, from the words to the words."""

from __future__ import annotations

import re

import pytest

from core.water.ammonia import un_ionised_fraction
from tests.chat.harness import Talk
from tests.core.advice.tank_water import at_rest, fresh_water, own_pressure, phreeqc


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ph 7.2 kh 4.5 gh 8 no3 40 temp 25 ammonia 0.25")
    await talk.say("/source tap ph 7.6 kh 8.5 gh 10 no3 5 temp 25 total chlorine 0")
    return talk


async def test_a_change_mixes_by_amounts_and_ph_as_phreeqc_does(fern: Talk) -> None:
    """Half and half, shut off from air; then at the tank's own CO2; issue's limit 0.02 pH."""
    facts = await fern.facts("what if i change 50%")
    assert facts["before"] == pytest.approx(
        {"ph": 7.2, "kh": 4.5, "gh": 8, "nitrate": 40, "temperature": 25, "nh3_n": 0.0023}, rel=0.1
    )
    assert facts["at_once"]["kh"] == pytest.approx(6.5, rel=1e-3)
    assert facts["at_once"]["gh"] == pytest.approx(9.0, rel=1e-3)
    assert facts["at_once"]["nitrate"] == pytest.approx(22.5)
    assert facts["litres"] == pytest.approx(45.0)
    tank, tap = fresh_water(4.5, 25, 8, ph=7.2), fresh_water(8.5, 25, 10, ph=7.6)
    pressure = own_pressure(tank)
    mix = phreeqc().mix_solutions({tank: 0.5, tap: 0.5})
    at_once = float(mix.pH)
    stood, open_air = at_rest(mix, pressure), at_rest(mix, 420.0)
    assert facts["at_once"]["ph"] == pytest.approx(at_once, abs=0.02)
    assert facts["stood"]["ph"] == pytest.approx(stood, abs=0.02)
    assert facts["if_co2_leaves"]["ph"] == pytest.approx(open_air, abs=0.02)
    for stage, ph in (("at_once", at_once), ("stood", stood), ("if_co2_leaves", open_air)):
        poison = 0.125 * un_ionised_fraction(ph, 25.0)
        assert facts[stage]["nh3_n"] == pytest.approx(poison, rel=0.06)


async def test_too_much_is_said_first_with_the_largest_safe_share_and_steps(fern: Talk) -> None:
    """KH 4.5 to 8.5 may move one degree a day: a quarter of the water."""
    (reply,) = await fern.say("what if i change 50%")
    facts = reply.facts
    assert reply.lines[0].text.startswith("Fern: not 50 % at once: KH")
    assert facts["broken"] == ["kh"]
    assert facts["largest_safe_share"] == pytest.approx(0.25, abs=0.006)
    left = 1.0
    for step in facts["steps"]:
        assert step <= facts["largest_safe_share"]
        left *= 1.0 - step
    assert 0.5 <= 1.0 - left <= 0.5 + 0.01 * len(facts["steps"])  # told in whole percents
    assert all(step == pytest.approx(round(step, 2)) for step in facts["steps"])
    assert len(reply.lines) <= 6


@pytest.mark.parametrize("asked", [30, 50, 57, 73, 90])
async def test_what_is_advised_is_within_the_limits_when_it_is_asked_about(
    fern: Talk, asked: int
) -> None:
    (refused,) = await fern.say(f"what if i change {asked}%")
    found = re.search(r"changes? of ([\d.]+) %", refused.lines[0].text)
    assert found is not None
    assert "within the limits" in await fern.text(f"what if i change {found[1]}%")
    more = re.search(r"Largest safe share at once: ([\d.]+) %", await fern.text("more"))
    assert more is not None
    assert "within the limits" in await fern.text(f"what if i change {more[1]}%")


@pytest.mark.parametrize("text", ["what if i change 10%", "what if i change 50%"])
async def test_chlorine_stands_beside_the_answer_and_six_lines_are_all(
    fern: Talk, text: str
) -> None:
    await fern.say("/source city ph 7.6 kh 8.5 gh 10 no3 5 temp 12")
    (reply,) = await fern.say(f"{text} with city")
    assert reply.lines[1].text.startswith("Dechlorinate tap water first")
    assert len(reply.lines) <= 6


async def test_a_small_change_is_within_the_limits(fern: Talk) -> None:
    (reply,) = await fern.say("what if i change 20%")
    assert reply.lines[0].text == "Fern: 20 % (18 L) at once is within the limits."
    assert "broken" not in reply.facts
    assert reply.facts["steps"] == [pytest.approx(0.2)]


async def test_litres_are_a_share_of_the_tank(fern: Talk) -> None:
    facts = await fern.facts("what if i change 18 l")
    assert facts["share"] == pytest.approx(0.2)


async def test_nitrate_under_20_takes_the_share_that_mixes_to_it(fern: Talk) -> None:
    """40 with 5: (40 - 20) / (40 - 5) of the water, in whole percents and so no less."""
    facts = await fern.facts("get nitrate under 20")
    assert facts["share"] == pytest.approx(0.58)  # 20 / 35
    left = 1.0
    for step in facts["steps"]:
        left *= 1.0 - step
    assert 19.0 < 5 + 35 * left <= 20.0


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("nitrate under 50", "No change for that"),
        ("get nitrate under 4", "No change with this water gets there"),
        ("what if i change 150%", "between 1 and 100 %"),
    ],
)
async def test_what_no_change_does(fern: Talk, text: str, said: str) -> None:
    assert said in await fern.text(text)


async def test_old_acid_water_with_ammonia_is_not_shocked(talk: Talk) -> None:
    """Worked in the check values with PHREEQC: pH 6.0, KH 1, 2 mg/L N; half of it tap water."""
    await talk.say("/tank new Old 100 l fresh")
    await talk.say("ph 6.0 kh 1.0 gh 3 temp 25 ammonia 2")
    await talk.say("/source tap ph 7.6 kh 8 gh 10 temp 25")
    (reply,) = await talk.say("what if i change 50%")
    facts = reply.facts
    assert "not 50 % at once" in reply.lines[0].text
    assert "ammonia" in facts["broken"]
    assert facts["at_once"]["ph"] == pytest.approx(6.9, abs=0.05)
    assert facts["if_co2_leaves"]["ph"] == pytest.approx(8.35, abs=0.03)
    assert facts["at_once"]["nh3_n"] / facts["before"]["nh3_n"] == pytest.approx(4, rel=0.3)
    assert facts["if_co2_leaves"]["nh3_n"] / facts["before"]["nh3_n"] == pytest.approx(99, rel=0.1)


async def test_poison_is_the_greater_danger(talk: Talk) -> None:
    """PH 8.2, 25 °C, 2 mg/L N: 0.17 mg/L NH3-N by Emerson; half at a time, only poison binds."""
    await talk.say("/tank new Quarry 200 l fresh")
    await talk.say("ph 8.2 kh 12 gh 14 temp 25 ammonia 2")
    await talk.say("/source tap ph 7.6 kh 8 gh 10 temp 25")
    facts = await talk.facts("what if i change 50%")
    assert facts["emergency"] is True
    assert facts["steps"] == [pytest.approx(0.5)]
    assert (await talk.facts("what if i change 80%"))["broken"] == ["share"]


async def test_an_acid_tank_in_an_emergency_gets_water_cut_to_its_kh(talk: Talk) -> None:
    """PH 6.8, 25 °C, 19 mg/L N is over the acute criterion of EPA 2013."""
    await talk.say("/tank new Old 100 l fresh")
    await talk.say("ph 6.8 kh 2.0 gh 4 temp 25 ammonia 19")
    await talk.say("/source tap ph 7.6 kh 8 gh 10 temp 25")
    (reply,) = await talk.say("what if i change 40%")
    assert reply.facts["ro_share"] == pytest.approx(0.75, abs=0.01)
    assert reply.facts["at_once"]["kh"] == pytest.approx(2.0, abs=0.02)
    assert "RO or rain" in reply.text


async def test_unknown_water_is_asked_for(talk: Talk) -> None:
    assert "Which tank" in await talk.text("what if i change 50%")
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("no3 40 temp 25")
    assert "do not know the new water" in await talk.text("what if i change 50%")
    await talk.say("/source tap no3 10 gh 10")
    (reply,) = await talk.say("what if i change 10%")
    assert reply.facts["at_once"]["nitrate"] == pytest.approx(37.0)
    assert "ph" not in reply.facts["at_once"]
    assert reply.facts["largest_safe_share"] == pytest.approx(0.15)


async def test_without_ammonia_the_first_sentence_is_conditional(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ph 7.2 kh 4.5 gh 8 temp 25")
    await talk.say("/source tap ph 7.6 kh 8.5 gh 10 temp 25")
    (reply,) = await talk.say("what if i change 20%")
    assert reply.lines[0].text.startswith("Only if total ammonia is under")
    assert reply.facts["only_if_ammonia_below"] > 0
    assert "nh3_n" not in reply.facts["at_once"]


async def test_ro_alone_never_takes_kh_under_one(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ph 6.8 kh 1.5 gh 3 temp 25 ammonia 0")
    (reply,) = await talk.say("what if i change 50% with ro")
    assert "kh_floor" in reply.facts["broken"]
    assert "no minerals" in reply.text


async def test_lowering_hardness_blends_in_pure_water_where_no_source_is_known(talk: Talk) -> None:
    """Half of KH 4 and GH 6 away: half of the water, in steps of a degree of KH."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ph 7.2 kh 4.5 gh 6 temp 25 ammonia 0")
    facts = await talk.facts("lower gh to 3")
    assert (facts["source"], facts["share"]) == ("RO", pytest.approx(0.5))
    left = 1.0
    for step in facts["steps"]:
        left *= 1.0 - step
    assert 2.9 < 6 * left <= 3.0


async def test_ph_alone_is_not_chased(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (reply,) = await talk.say("how do i lower ph")
    assert reply.facts["refused"] == "ph_target"
    assert "chasing it swings the water" in reply.text


# What a source brings, and what nobody measured -----------------------------------------------


@pytest.fixture
async def sea(talk: Talk) -> Talk:
    await talk.say("/tank new Sea 200 l marine")
    await talk.say("added 2 clownfish")
    await talk.say("added 2 cleaner shrimp")
    await talk.say("salinity 35 ph 8.2 kh 8 temp 25 ammonia 0")
    return talk


async def test_fresh_water_never_goes_into_the_sea_by_a_change(sea: Talk) -> None:
    """Half of 35 g/kg is 17.5 by volume; by mass a little more."""
    await sea.say("/source tap ph 7.6 kh 8 gh 10 no3 5 temp 25 total chlorine 0")
    (reply,) = await sea.say("what if i change 50%")
    assert reply.lines[0].text.startswith("Sea: not with fresh water: 50 % would let salinity fall")
    assert "no salinity on record, so I count it as fresh" in reply.text
    facts = reply.facts
    assert facts["before"]["salinity"] == pytest.approx(35.0)
    assert facts["at_once"]["salinity"] == pytest.approx(17.5, abs=0.3)
    assert facts["stood"]["salinity"] == facts["at_once"]["salinity"]
    assert (facts["broken"], facts["steps"]) == (["salinity"], [])


@pytest.mark.parametrize(
    ("salinity", "share", "allowed"),
    [
        (25, 50, False),  # 35 -> 30
        (32, 30, True),  # 35 -> 34.1
        (32, 50, False),  # 35 -> 33.5: with shrimps no more than 1 either way
        (38, 30, True),  # 35 -> 35.9
        (38, 40, False),  # 35 -> 36.2
    ],
)
async def test_salinity_binds_a_mix_that_is_known(
    sea: Talk, salinity: float, share: int, allowed: bool
) -> None:
    await sea.say(f"/source mix ph 8.2 kh 8 salinity {salinity} temp 25")
    facts = await sea.facts(f"what if i change {share}%")
    assert ("salinity" not in facts.get("broken", [])) is allowed
    assert bool(facts["steps"]) is allowed


async def test_a_brackish_tank_of_unknown_salinity_is_asked_for_it(talk: Talk) -> None:
    await talk.say("/tank new Brack 100 l brackish")
    await talk.say("ph 8 kh 6 temp 26 ammonia 0")
    await talk.say("/source tap ph 7.6 kh 6 gh 10 temp 26")
    (reply,) = await talk.say("what if i change 20%")
    assert reply.facts["refused"] == "salinity_unknown"
    assert "steps" not in reply.facts


async def shrimps(talk: Talk, source: str) -> None:
    await talk.say("/tank new Al 100 l fresh")
    await talk.say("added 5 cherry shrimp")
    await talk.say("ammonia 0 nitrite 0 ph 7.4 kh 5 gh 8 temp 25")
    await talk.say(f"/source tap ph 7.4 kh 5 gh 8 temp 25 {source}")


@pytest.mark.parametrize(
    ("source", "broken"),
    [
        ("total chlorine 0 copper 0.05", ["copper"]),
        ("total chlorine 0 nitrite 2", ["nitrite"]),
        ("total chlorine 0 ammonia 6", ["ammonia"]),
        ("total chlorine 0 copper < 0.05", []),
        ("total chlorine 0 nitrite 0", []),
    ],
)
async def test_what_the_source_brings_is_looked_at(
    talk: Talk, source: str, broken: list[str]
) -> None:
    await shrimps(talk, source)
    facts = await talk.facts("what if i change 50%")
    assert facts.get("broken", []) == broken


async def test_free_chlorine_found_later_beats_an_older_total_of_none(talk: Talk) -> None:
    await shrimps(talk, "total chlorine 0")
    assert "Dechlorinate" not in await talk.text("what if i change 30%")
    await talk.wait(days=1)
    await talk.say("/source tap chlorine 2")
    assert "Dechlorinate" in await talk.text("what if i change 30%")


async def test_water_without_minerals_is_refused_where_it_leaves_too_few(talk: Talk) -> None:
    await talk.say("/tank new Soft 60 l fresh")
    await talk.say("ph 5.5 kh 0 gh 1 temp 27 ammonia 0")
    facts = await talk.facts("what if i change 90% with distilled water")
    assert (facts["broken"], facts["steps"]) == (["gh_floor"], [])


async def test_minerals_nobody_knows_bind_at_15_percent(talk: Talk) -> None:
    """Pure water would move conductivity by just that; two that are as rich move nothing."""
    await talk.say("/tank new Mud 60 l fresh")
    await talk.say("ph 7.2 kh 5 temp 25 no3 200 ammonia 0")
    await talk.say("/source tap ph 7.2 kh 5 no3 0 temp 25 total chlorine 0")
    (reply,) = await talk.say("what if i change 90%")
    assert reply.facts["broken"] == ["minerals"]
    assert reply.facts["largest_safe_share"] == pytest.approx(0.15)
    assert "Send GH" in reply.text
    await talk.say("conductivity 300")
    await talk.say("/source tap conductivity 200")
    facts = await talk.facts("what if i change 90%")  # a third less at most: 0.45 of it is 15 %
    assert facts["broken"] == ["conductivity"]
    assert facts["largest_safe_share"] == pytest.approx(0.45)


async def test_the_first_line_counts_chloramine_that_nobody_measured(talk: Talk) -> None:
    """4 mg/L of it leave 0.79 mg/L as N; at pH 8.4, 26 °C about a seventh is poison."""
    await talk.say("/tank new Quarry 240 l fresh")
    await talk.say("kh 12 gh 12 ph 8.6 temp 27 ammonia 0")
    await talk.say("/source tap ph 8.6 kh 12 gh 12 temp 27")
    (reply,) = await talk.say("what if i change 90%")
    assert reply.lines[0].text.startswith("Quarry: not 90 % at once")
    assert reply.facts["broken"] == ["chloramine"]
    assert max(reply.facts["steps"]) <= reply.facts["largest_if_chloramine"]
    assert reply.facts["largest_without_chlorine"] == 1.0


@pytest.mark.parametrize("size", ["big", "large", "full"])
async def test_a_large_change_of_neglected_water_is_refused_in_the_first_word(
    talk: Talk, size: str
) -> None:
    await talk.say("/tank new Old 120 l fresh")
    await talk.say("ph 5.8 kh 1 gh 4 no3 150 ammonia 2 temp 25")
    (reply,) = await talk.say(f"can i do a {size} water change")
    assert reply.lines[0].text.startswith("Old: no, small ones")


@pytest.mark.parametrize("water", ["salt water", "new salt water", "saltwater"])
async def test_salt_water_is_a_water_and_no_salt(talk: Talk, water: str) -> None:
    """Nothing is said of grams of salt, which the tank holds already."""
    await talk.say("/tank new Reef 200 l reef")
    await talk.say("kh 7 ca 400 mg 1280 salinity 35 ph 8.1 temp 25")
    text = await talk.text(f"what if i change 20% with {water}")
    assert "not before I know that water" in text
    assert "dosed" not in text
