"""Water changes seen before they are done, from the words to the words."""

from __future__ import annotations

import pytest

from core.water.ammonia import un_ionised_fraction
from tests.chat.harness import Talk
from tests.core.advice.tank_water import at_rest, fresh_water, own_pressure, phreeqc


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ph 7.2 kh 4.5 gh 8 no3 40 temp 25 ammonia 0.25")
    await talk.say("/source tap ph 7.6 kh 8.5 gh 10 no3 5 temp 25")
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
    assert 1.0 - left == pytest.approx(0.5, abs=1e-6)
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
    """40 with 5: (40 - 20) / (40 - 5) of the water."""
    facts = await fern.facts("get nitrate under 20")
    assert facts["share"] == pytest.approx(20 / 35)
    left = 1.0
    for step in facts["steps"]:
        left *= 1.0 - step
    assert 5 + 35 * left == pytest.approx(20.0)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("nitrate under 50", "No change for that"),
        ("nitrate under 4", "No change with this water gets there"),
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
    (reply,) = await talk.say("what if i change 50%")
    assert reply.facts["at_once"]["nitrate"] == pytest.approx(25.0)
    assert "ph" not in reply.facts["at_once"]
    assert "largest_safe_share" not in reply.facts


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
    assert 6 * left == pytest.approx(3.0)


async def test_ph_alone_is_not_chased(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (reply,) = await talk.say("how do i lower ph")
    assert reply.facts["refused"] == "ph_target"
    assert "chasing it swings the water" in reply.text
