"""What a plan needs yet is said piece by piece, in any order, and the plan follows at once."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def _last(talk: Talk, *lines: str) -> dict[str, object]:
    facts: dict[str, object] = {}
    for line in lines:
        *_, last = await talk.say(line)
        facts = last.facts
    return facts


@pytest.mark.parametrize(
    "lines",
    [
        ("how much baking soda from kh 4 to 5", "90 l"),
        ("how much baking soda from kh 4 to 5", "90"),
        ("wie viel natron von kh 4 auf 5", "es sind 90 liter"),
        ("dose kh 5", "90 l", "kh 4"),
        ("dose kh 5", "90 l", "4"),
        ("dose kh 5", "90 l", "its 4 now"),
        ("dose kh 5", "90 l", "kh 4 gh 6"),
        ("how much baking soda for my tank", "its 90l", "kh 4", "5"),
        ("need to raise kh", "90 l", "5", "4"),
        ("need to raise kh", "90 l", "want it 5", "kh 4"),
        ("kh is 4 want 5", "90 l"),
        ("my kh is 4, i want 5, tank 90 l",),
        ("90 l, kh 4, want 5",),
        ("kh 4 objectif 5", "90 l"),
        ("90l", "kh 4", "i want like 5"),
        ("90l", "kh 4", "whats a good kh for neons", "ok lets do 5"),
        ("90 l fresh", "kh 4", "how much baking soda do i need", "whats kh", "i'd like 5"),
        ("90 l fresh", "how much baking soda do i need", "mine is 4", "to 5"),
        ("how much buffer should i use for a 90 litre tank with kh 4", "baking soda", "to 5"),
        ("wie viel puffer für mein 90 liter becken mit kh 4", "ich habe natron", "5"),
        ("got a 90 litre malawi tank kh 4 how much buffer", "target 5", "yep bicarb"),
        ("my kh is 4, 90l, do i need crushed coral or bicarb", "bicarb then how much", "5 then"),
        ("how much buffer for 90 l", "use bicarb", "want 5", "kh 4"),
        ("90 l", "kh 4", "how much buffer", "i have baking soda", "5"),
    ],
)
async def test_a_wish_is_planned_once_all_is_told(talk: Talk, lines: tuple[str, ...]) -> None:
    facts = await _last(talk, *lines)
    assert (facts["from"], facts["to"], facts["volume_l"]) == (4.0, 5.0, 90.0)
    # 1 °dH is 0.3567 meq/L, 84.007 g/mol of sodium bicarbonate: 29.96 mg/L (stoichiometry)
    assert facts["grams"] == pytest.approx(0.35663 * 84.007 * 90 / 1000, rel=5e-3)


async def test_a_wish_that_no_water_has_in_degrees_is_in_ppm(talk: Talk) -> None:
    facts = await _last(talk, "how much bicarb for my 90 litre tank with kh 4", "want about 100")
    assert facts["to"] == pytest.approx(100 / 17.848, rel=1e-3)  # mg/L CaCO3 in 1 °dH


async def test_no_buffer_is_read_as_copper(talk: Talk) -> None:
    for line in ("my betta 20 litre kh 3 does it need buffer", "how much buffer to get to 5"):
        assert "copper" not in await talk.text(line), line


async def test_a_measured_value_told_for_a_plan_is_a_reading(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("dose kh 6")
    reading, plan = await talk.say("4")
    assert reading.facts["values"][0]["canonical"] == 4.0
    assert plan.facts["from"] == 4.0
    (again,) = await talk.say("dose kh 6")
    assert again.facts["from"] == 4.0


async def test_another_value_told_first_leaves_the_wish_waiting(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("dose kh 6")
    await talk.say("ph 7")
    _reading, plan = await talk.say("kh 4")
    assert (plan.facts["from"], plan.facts["to"]) == (4.0, 6.0)


async def test_the_tank_that_is_named_is_the_one_planned_for(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("/tank new quarry 240 l fresh")
    _reading, plan = await talk.say("fern: kh 3, want 5")
    assert (plan.facts["tank"], plan.facts["volume_l"]) == ("fern", 90.0)


async def test_poison_beside_the_value_stands_before_the_plan(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("dose kh 6")
    _reading, plan = await talk.say("kh 4 ph 8.4 temp 27 ammonia 2")
    assert "refused" in plan.facts
    assert "grams" not in plan.facts


async def test_a_wish_below_the_value_is_one_of_a_change(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("/source tap ph 7 kh 4 gh 6 no3 0 temp 20")
    reading, change = await talk.say("nitrate 40 want 20")
    assert reading.facts["values"][0]["canonical"] == 40.0
    assert "largest_safe_share" in change.facts or "refused" in change.facts


@pytest.mark.parametrize("line", ["lost 20 l", "4?", "kh 72", "there are 4 fish", "or 90 l?"])
async def test_what_fills_nothing_is_no_plan(talk: Talk, line: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("dose kh 6")
    assert not any("grams" in reply.facts for reply in await talk.say(line))


async def test_a_number_long_after_fills_nothing(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("dose kh 6")
    await talk.wait(hours=5)
    assert not any("grams" in reply.facts for reply in await talk.say("4"))


async def test_talk_of_others_in_a_group_fills_nothing(group: Talk) -> None:
    await group.say("/tank new fern 90 l fresh")
    await group.say("dose kh 6", addressed=True)
    assert not any("grams" in reply.facts for reply in await group.say("4", addressed=False))


@pytest.mark.parametrize(
    "lines", [("raise gh", "60 l", "8", "gh 6"), ("need gh up", "60 l", "want it 8", "6 gh")]
)
async def test_litres_told_for_a_wish_are_those_of_the_first_tank(
    talk: Talk, lines: tuple[str, ...]
) -> None:
    facts = await _last(talk, *lines)
    assert facts["goals"] == [{"analyte": "gh", "from": 6.0, "to": 8.0}]
    assert facts["volume_l"] == 60.0
    (later,) = await talk.say("how much baking soda from kh 4 to 5")
    assert later.facts["volume_l"] == 60.0


@pytest.mark.parametrize(
    ("line", "delta"),
    [
        ("want kh up by 1", 1.0), ("my kh should go up by 1", 1.0), ("kh muss hoch um 1", 1.0),
        ("i need kh up 1", 1.0),
    ],
)  # fmt: skip
async def test_a_wish_without_a_verb_is_one(talk: Talk, line: str, delta: float) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("kh 4")
    (plan,) = await talk.say(line)
    assert plan.facts["to"] == 4.0 + delta


@pytest.mark.parametrize("line", ["kh went up by 1", "kh up", "kh should match gh", "kh up by 1"])
async def test_what_happened_is_no_wish(talk: Talk, line: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("kh 4")
    assert not any("grams" in reply.facts for reply in await talk.say(line))


@pytest.mark.parametrize(
    "lines",
    [
        ("60l tank", "kh 40 ppm", "want 80 ppm"),
        ("60l tank", "kh 40 ppm", "want 80"),
        ("kh is 40ppm and want 80", "60 l"),
        ("60l tank", "kh 40 ppm", "want 500", "no 80 ppm"),
    ],
)
async def test_a_wish_is_in_the_unit_that_the_value_was_told_in(
    talk: Talk, lines: tuple[str, ...]
) -> None:
    facts = await _last(talk, *lines)
    # 1 °dH is 17.848 ppm as CaCO3 (definition of the German degree: 10 mg/L CaO)
    assert facts["from"] == pytest.approx(40 / 17.848, rel=2e-3)
    assert facts["to"] == pytest.approx(80 / 17.848, rel=2e-3)


async def test_a_number_in_the_place_of_a_reading_is_no_wish(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("kh 3")
    (corrected,) = await talk.say("no, 4")
    assert "grams" not in corrected.facts
    assert "Corrected" in corrected.text


async def test_the_line_that_made_a_tank_is_understood(talk: Talk) -> None:
    await talk.say("45l tank")
    await talk.say("kh 2 ph 7 ammonia 0")
    replies = await talk.say("kh to 4")
    assert not any("not understand" in reply.text for reply in replies)


async def test_what_now_before_anything_was_told_is_no_call(talk: Talk) -> None:
    (first,) = await talk.say("whats next")
    assert "emergency" not in first.facts
    assert "/help" in first.text


@pytest.mark.parametrize(
    "reading", ["alk 1.1 meq/l ammonia 0", "alk 1.1 meq/l", "alk 1.1 meq/l ph 7 ammonia 0"]
)
async def test_more_of_what_was_told_in_another_unit_is_more(talk: Talk, reading: str) -> None:
    await talk.say("90 l fresh")
    await talk.say(reading)
    (plan,) = await talk.say("want it at 1.8")
    # 1 meq/L is 2.804 °dH (1 °dH is 0.35663 meq/L, by definition 10 mg/L CaO)
    assert plan.facts["from"] == pytest.approx(1.1 / 0.35663, rel=2e-3)
    assert plan.facts["to"] == pytest.approx(1.8 / 0.35663, rel=2e-3)


async def test_warmth_that_is_wished_is_no_dose(talk: Talk) -> None:
    await talk.say("90 l fresh")
    await talk.say("temp 75f")
    (told,) = await talk.say("want it at 78")
    assert "step" in told.facts


@pytest.mark.parametrize(
    ("lines", "grams"),
    [
        (["200 l", "kh 40 ppm", "how much baking soda", "80 ppm"], 13.4),
        (["200 l", "kh 40 ppm want 80"], 13.4),
        (["kh 2.2 meq/l, want 3 meq", "200 l"], 13.4),
        (["my tank is 200 l, kh is 40 ppm, i want it at 80 ppm"], 13.4),
        (["200 l", "kh 2 ph 7 and i want kh 5"], 18.0),
        (["200 l", "how much baking soda do i need kh is 2", "get it to 5"], 18.0),
    ],
)
async def test_a_wish_has_the_unit_that_it_is_told_in(
    talk: Talk, lines: list[str], grams: float
) -> None:
    """Sodium bicarbonate 84.007 g/mol, one equivalent a mole: 0.0300 g a litre and °dH."""
    for line in lines:
        replies = await talk.say(line)
    assert replies[-1].facts["grams"] == pytest.approx(grams, abs=0.15)


async def test_with_its_unit_it_is_measured_where_nothing_was(talk: Talk) -> None:
    await talk.say("200 l")
    await talk.say("how much baking soda")
    (kept, *_) = await talk.say("mine is 80 ppm")
    assert kept.facts["values"]


@pytest.mark.parametrize(
    "told",
    [
        "its kh is 2. i'd like 5. how much soda",
        "kh 2 want 5, how much baking soda",
        "kh is 2 and i want kh 5, how much soda do i need",
    ],
)
async def test_how_much_asked_behind_value_and_wish_is_of_the_wish(talk: Talk, told: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    first, plan = await talk.say(told)
    assert first.facts["values"][0]["canonical"] == 2.0
    assert (plan.facts["from"], plan.facts["to"]) == (2.0, 5.0)
    assert plan.facts["substance"] == "sodium bicarbonate"


async def test_of_a_salt_that_raises_none_no_grams_are_told(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    replies = await talk.say("kh 2, want kh 5, how much epsom salt")
    assert not any("grams" in reply.facts for reply in replies)


@pytest.mark.parametrize(
    "told",
    [
        "my tank is 100 litres, kh is 3 i want it higher",
        "my tank is 100 litres, kh is 3, want it higher",
    ],
)
async def test_a_value_that_shall_go_higher_is_kept_and_to_where_is_asked(
    talk: Talk, told: str
) -> None:
    replies = await talk.say(told)
    assert any(reply.facts.get("values") for reply in replies)
    assert "To which value?" in replies[-1].text
    plan = await talk.facts("6")
    assert (plan["from"], plan["to"]) == (3.0, 6.0)


async def test_a_value_that_is_wanted_is_no_reading(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    (reply,) = await talk.say("kh 3 wanted")
    assert "values" not in reply.facts


async def test_29g_before_a_tank_is_gallons_and_they_may_be_imperial(talk: Talk) -> None:
    await talk.say("my 29g tank kh 3 ph 7")
    us = await talk.facts("how much baking soda to get to kh 5")
    assert us["volume_l"] == pytest.approx(109.8, abs=0.1)
    (*_said, plan) = await talk.say("imperial gallons mate")
    assert plan.facts["volume_l"] == pytest.approx(131.8, abs=0.1)
