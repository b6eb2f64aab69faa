"""Doses other than buffer, from the words to the words; masses against periodictable."""

from __future__ import annotations

import re

import periodictable
import pytest

from tests.chat.harness import Talk

DEGREE = 0.010 / periodictable.formula("CaO").mass
"""Moles of hardness in a litre at one °dH (grade B)."""


def mass(formula: str) -> float:
    return float(periodictable.formula(formula).mass)


def grams_in(text: str) -> list[str]:
    return re.findall(r"\d[\d.,]* ?g\b", text)


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 gh 4 ph 7.2 temp 25 ammonia 0 no3 5")
    return talk


async def test_epsom_salt_for_two_degrees(talk: Talk) -> None:
    facts = await talk.facts("how much epsom salt for 100 l to raise gh by 2")
    assert facts["grams"] == pytest.approx(2 * DEGREE * 100 * mass("MgSO4(H2O)7"), rel=1e-3)
    assert facts["delta"] == 2
    assert "from" not in facts


async def test_a_salt_sold_in_two_forms_gets_both_amounts_each_named(talk: Talk) -> None:
    (reply,) = await talk.say("how much calcium chloride for 90 l gh 4 to 6")
    amounts = {form["substance"]: form["grams"] for form in reply.facts["forms"]}
    assert amounts == {
        "calcium chloride": pytest.approx(2 * DEGREE * 90 * mass("CaCl2"), rel=1e-3),
        "calcium chloride dihydrate": pytest.approx(
            2 * DEGREE * 90 * mass("CaCl2(H2O)2"), rel=1e-3
        ),
    }
    assert grams_in(reply.lines[0].text) == []
    assert "grams" not in reply.facts
    caution = reply.text.index("gets hot")
    assert caution < reply.text.index(grams_in(reply.text)[0])


async def test_two_rises_and_a_wished_calcium_to_magnesium(fern: Talk) -> None:
    """By stoichiometry; calcium to magnesium 4:1 by amount is 6.6:1 by mass (periodictable)."""
    (reply,) = await fern.say("raise gh by 2 and kh by 1, ca:mg 4:1")
    amounts = {salt["substance"]: salt["grams"] for salt in reply.facts["salts"]}
    assert amounts == {
        "calcium chloride dihydrate": pytest.approx(
            0.8 * 2 * DEGREE * 120 * mass("CaCl2(H2O)2"), rel=1e-3
        ),
        "magnesium sulfate heptahydrate": pytest.approx(
            0.2 * 2 * DEGREE * 120 * mass("MgSO4(H2O)7"), rel=1e-3
        ),
        "sodium bicarbonate": pytest.approx(1 * 2 * DEGREE * 120 * mass("NaHCO3"), rel=1e-3),
    }
    assert f"{4 * mass('Ca') / mass('Mg'):.1f}:1 in mg/L" in await fern.text("more")


async def test_two_targets_with_calcium_to_magnesium_three_to_one(fern: Talk) -> None:
    (reply,) = await fern.say("dose kh 6 gh 8")
    amounts = {salt["substance"]: salt["grams"] for salt in reply.facts["salts"]}
    assert amounts["sodium bicarbonate"] == pytest.approx(
        2 * 2 * DEGREE * 120 * mass("NaHCO3"), rel=1e-3
    )
    calcium = amounts["calcium chloride dihydrate"] / mass("CaCl2(H2O)2")
    magnesium = amounts["magnesium sulfate heptahydrate"] / mass("MgSO4(H2O)7")
    assert calcium + magnesium == pytest.approx(4 * DEGREE * 120, rel=1e-3)
    assert calcium / magnesium == pytest.approx(3.0, rel=1e-3)
    assert len(reply.facts["salts"][0]["parts"]) == 2, "GH moves two degrees a day at most"
    await fern.press(1, reply)
    async with fern.app.database.read() as uow:
        assert len(await uow.log.events(1)) == 3


async def test_a_bucket_of_ro(talk: Talk) -> None:
    (reply,) = await talk.say("how much salt for 20 l ro to gh 6 kh 4")
    amounts = {salt["substance"]: salt["grams"] for salt in reply.facts["salts"]}
    assert amounts["sodium bicarbonate"] == pytest.approx(
        2 * 4 * DEGREE * 20 * mass("NaHCO3"), rel=1e-3
    )
    assert reply.facts["ph_stood"][0] < reply.facts["ph_stood"][1]
    assert "without animals" in reply.text


async def test_plant_food_by_its_basis(fern: Talk) -> None:
    (reply,) = await fern.say("dose nitrate 15")
    assert reply.facts == {"ask": "basis", "analyte": "nitrate"}
    (answer,) = await fern.press(1, reply)
    assert answer.facts["grams"] == pytest.approx(
        10 / 1000 * 120 * mass("KNO3") / mass("NO3"), rel=1e-3
    )
    assert answer.facts["potassium_mg_l"] == pytest.approx(10 * mass("K") / mass("NO3"), rel=1e-3)
    assert "settled already" in (await fern.press(1, reply))[0].text
    assert (await fern.facts("dose no3 15"))["to"] == 15


async def test_calcium_in_the_sea_at_twenty_a_day_and_never_beside_buffer(talk: Talk) -> None:
    await talk.say("/tank new Lagoon 150 l marine")
    await talk.say("ca 380 kh 7 ph 8.2 temp 25 ammonia 0")
    (reply,) = await talk.say("dose calcium 420")
    assert reply.facts["grams"] == pytest.approx(
        40 / 1000 * 150 * mass("CaCl2(H2O)2") / mass("Ca"), rel=1e-3
    )
    assert len(reply.facts["parts"]) == 2
    assert "Never calcium and buffer in one place" in reply.text


async def test_thiosulfate_with_a_quarter_more(talk: Talk) -> None:
    """Two moles a mole of Cl2, 7.00 mg of the pentahydrate a mg (check values R10, computed)."""
    facts = await talk.facts("how much thiosulfate for 100 l chlorine 2")
    amounts = {form["substance"]: form["grams"] for form in facts["forms"]}
    assert amounts["sodium thiosulfate pentahydrate"] == pytest.approx(1.25 * 7.0 * 0.2, rel=2e-3)
    assert facts["ammonia_freed"] == pytest.approx(0.395, abs=0.002)
    (reply,) = await talk.say("how much thiosulfate for 100 l")
    assert reply.facts["chlorine"] == 4.0
    assert "as nobody measured it" in reply.text


async def test_salt_for_nitrite_asks_who_lives_there(talk: Talk) -> None:
    """Ten times nitrite by mass: SRAC 462 (grade B); unsaid basis counts as N, the worse."""
    (reply,) = await talk.say("how much salt for 100 l nitrite 1")
    assert grams_in(reply.text) == []
    assert "channel catfish" in reply.text
    (answer,) = await talk.press(1, reply)
    nitrite = mass("NO2") / mass("N")
    assert answer.facts["grams"] == pytest.approx(
        10 * nitrite / 1000 * 100 * mass("NaCl") / mass("Cl"), rel=1e-3
    )
    (declined,) = await talk.press(2, reply)
    assert grams_in(declined.text) == []


async def test_animals_on_record_that_mind_salt_get_none(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("added 6 corydoras")
    (reply,) = await talk.say("how much salt for fern nitrite 1")
    assert reply.facts["refused"] == "salt_species"
    assert grams_in(reply.text) == []


async def test_a_fishless_cycle_only_without_any_animal(talk: Talk) -> None:
    (reply,) = await talk.say("how much ammonium chloride for 100 l to ammonia 2 as n")
    assert grams_in(reply.text) == []
    (answer,) = await talk.press(1, reply)
    assert answer.facts["grams"] == pytest.approx(2 / 10 * mass("NH4Cl") / mass("N"), rel=1e-3)
    (declined,) = await talk.press(2, reply)
    assert declined.facts["refused"] == "animals_on_record"
    facts = await talk.facts("how much ammonium chloride for 100 l to ammonia 8 as n")
    assert facts["refused"] == "cycling_implausible"
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("added 6 neon tetras")
    facts = await talk.facts("how much ammonium chloride for fern to ammonia 2 as n")
    assert facts["refused"] == "animals_on_record"


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("dose ph 6.5", "ph_target"),
        ("dose gh 40", "target_implausible"),
        ("dose gh 3", "target_reached"),
        ("dose calcium 60", "use_gh"),
        ("dose gh 8 with potassium nitrate", "salt_does_not"),
        ("dose phosphate 1 as po4", "reading_unknown"),
        ("how much salt for 20 l ro to gh 6 kh 0.5", "kh_too_low"),
    ],
)
async def test_what_gets_no_dose(fern: Talk, text: str, reason: str) -> None:
    (reply,) = await fern.say(text)
    assert reply.facts["refused"] == reason
    assert grams_in(reply.text) == []


async def test_a_number_that_was_not_understood_gets_no_dose(talk: Talk) -> None:
    replies = await talk.say("how much thiosulfate for 100 l chlorine 90")
    assert [reply.facts["doubts"][0]["reason"] for reply in replies] == ["incomplete_question"]
    assert grams_in(replies[0].text) == []


async def test_salt_for_the_sea_is_sea_salt(talk: Talk) -> None:
    """Sodium chloride alone would leave out calcium, magnesium and potassium: common practice."""
    await talk.say("/tank new Lagoon 150 l marine")
    await talk.say("salinity 33 temp 25 kh 8 ph 8.1 ammonia 0")
    assert (await talk.facts("how much salt to get to 35 ppt"))["substance"] == "sea salt"
    raised = await talk.facts("how much salt to raise salinity from 1.023 to 1.025")
    assert raised["substance"] == "sea salt"


async def test_a_bucket_of_sea_water(talk: Talk) -> None:
    """35 g in each kilogram: 20 L of 0.997 kg/L take 19.94 · 35 / 965 kg of salt, by hand."""
    facts = await talk.facts("how much salt for 20 l ro to 35 ppt")
    assert facts["salts"] == [{"substance": "sea salt", "grams": pytest.approx(723.2, abs=0.1)}]


async def test_to_keep_what_is_used_up_is_a_dose(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4 ph 7 temp 25 ammonia 0")
    assert (await talk.facts("keep kh at 5"))["substance"] == "sodium bicarbonate"


@pytest.mark.parametrize(
    ("wish", "species", "highest"),
    [("dose gh 20", "neon tetra", 10), ("dose kh 12", "neon tetra", 8)],
)
async def test_no_plan_ends_past_what_the_animals_suit(
    fern: Talk, wish: str, species: str, highest: float
) -> None:
    """Neon tetra up to GH 10 and KH 8: the animals' table, common practice."""
    await fern.say("added 10 neon tetra")
    (reply,) = await fern.say(wish)
    assert reply.facts["refused"] == "past_animals"
    assert (reply.facts["species"], reply.facts["highest"]) == (species, highest)
    assert grams_in(reply.text) == []
    assert "refused" not in await fern.facts("dose gh 6")


async def test_salt_that_animals_do_not_bear_is_said_before_its_numbers(talk: Talk) -> None:
    """Guppies up to 5 g/kg: the animals' table; 1000 g in 60 L are 16.7 g/kg."""
    await talk.say("/tank new Fr 60 l fresh")
    await talk.say("added 6 guppy")
    (reply,) = await talk.say("what does 1 kg salt do")
    assert reply.lines[0].text.startswith("Not with guppy")
    assert reply.facts["salinity"] == pytest.approx(1000 / 60)


async def test_the_very_volume_of_the_tank_means_its_animals(talk: Talk) -> None:
    await talk.say("/tank new Cat 100 l fresh")
    await talk.say("added 6 corydoras")
    await talk.say("nitrite 2 ph 7.5 kh 5 temp 25")
    assert (await talk.facts("how much salt for 100 l nitrite 2"))["refused"] == "salt_species"


async def test_a_measured_tap_tells_its_chlorine(talk: Talk) -> None:
    await talk.say("/tank new Cat 100 l fresh")
    await talk.say("/source tap ph 7.6 kh 8 gh 10 temp 20 total chlorine 3")
    assert (await talk.facts("how much thiosulfate for 50 l"))["chlorine"] == 3


async def test_what_salt_is_for_is_asked_and_none_is_given_for_disease(talk: Talk) -> None:
    await talk.say("/tank new Cat 100 l fresh")
    assert "What is the salt for?" in await talk.text("how much salt for my guppies")
    assert (await talk.facts("how much aquarium salt for 50 l ich"))["refused"] == "medicine"


async def test_an_overdose_is_answered_like_one(talk: Talk) -> None:
    """30 g of baking soda in 30 L: KH +33 (stoichiometry, 30 mg/L a degree)."""
    await talk.say("/tank new Col 30 l fresh")
    await talk.say("gh 6 kh 4 ph 7 temp 24")
    (reply,) = await talk.say("dosed 30 g baking soda")
    assert "Add nothing more" in reply.text
    assert [button.label for button in reply.buttons][-1] == "what now"
    (first_aid,) = await talk.press(2, reply)
    assert first_aid.facts["emergency"] == "overdose"
    assert "A very large change" in await talk.text("changed 90%")
    assert "very large" not in await talk.text("changed 30%")


async def test_a_yes_that_was_taken_is_not_taken_again(talk: Talk) -> None:
    await talk.say("/tank new New 60 l fresh")
    await talk.say("how much ammonium chloride for 60 l to ammonia 2 as n")
    assert "grams" in await talk.facts("yes")
    assert "Nothing is waiting" in await talk.text("yes")


async def test_salt_to_a_salinity_is_planned_as_one(talk: Talk) -> None:
    await talk.say("/tank new Sea 100 l marine")
    facts = await talk.facts("how much salt to get from 28 to 35")
    assert facts["goals"] == [{"analyte": "salinity", "from": 28, "to": 35}]
    assert facts["substance"] == "sea salt"
    assert len(facts["parts"]) == 7


async def test_a_basis_that_was_said_is_not_called_unsaid(talk: Talk) -> None:
    await talk.say("how much salt for 100 l nitrite 1 as no2")
    assert "unsaid" not in await talk.text("yes")
    await talk.say("how much salt for 100 l nitrite 1")
    assert "unsaid counts as N" in await talk.text("yes")


async def test_no_salt_where_there_is_no_nitrite(talk: Talk) -> None:
    assert (await talk.text("how much salt for 100 l nitrite 0")).startswith("No salt")


@pytest.mark.parametrize(
    ("line", "goal"),
    [
        ("how much magnesium sulfate for 1300", "magnesium"),
        ("quanto solfato di magnesio per 1300", "magnesium"),
        ("wie viel calciumchlorid für 430", "calcium"),
        ("combien de sel pour 35", "salinity"),
        ("ile soli żeby było 35", "salinity"),
    ],
)
async def test_a_bare_number_beside_a_salt_of_the_sea_is_what_it_raises(
    talk: Talk, line: str, goal: str
) -> None:
    await talk.say("/tank new Mar 200 l marine")
    await talk.say("mg 1200 ca 400 sal 33 alk 8 ph 8.1 temp 25 ammonia 0")
    facts = await talk.facts(line)
    (goals,) = facts.get("goals") or facts["forms"][0]["goals"]
    assert goals["analyte"] == goal
    assert goals["to"] == float(line.split()[-1])


@pytest.mark.parametrize(
    "line", ["how much magnesium sulfate for 1300", "how much potassium sulfate for 20"]
)
async def test_a_known_salt_is_never_called_unknown(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 4 gh 6 ph 7 temp 25 ammonia 0")
    assert (await talk.text(line)).startswith("How much of what?")


async def test_what_nobody_has_in_the_sea_may_be_litres(talk: Talk) -> None:
    await talk.say("/tank new Mar 200 l marine")
    await talk.say("ca 400 sal 35 alk 8 ph 8.1 temp 25 ammonia 0")
    assert (await talk.text("how much calcium chloride for 20")).startswith("How much of what?")


async def test_of_two_forms_the_one_that_went_in_is_logged_once(talk: Talk) -> None:
    await talk.say("/tank new Reef 300 l marine")
    await talk.say("kh 8 ph 8.2 temp 25 salinity 35 ammonia 0 mg 1200 calcium 400")
    await talk.wait(hours=1)
    facts = await talk.facts("dose mg 1300 with magnesium chloride")
    grams = {form["substance"]: form["parts"][0] for form in facts["forms"]}
    (which,) = await talk.say("log it")
    assert which.facts["forms"] == list(grams)
    (logged,) = await talk.say("magnesium chloride hexahydrate")
    (event,) = logged.facts["events"]
    assert event["substance"] == "magnesium chloride hexahydrate"
    assert event["grams"] == grams["magnesium chloride hexahydrate"]
    assert "events" not in await talk.facts("log it")
    (again,) = await talk.say("magnesium chloride")
    assert "events" not in again.facts


async def test_done_asks_which_form_as_well(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 4 gh 8 ph 7.4 temp 25 ammonia 0 iron 0")
    await talk.say("dose iron 0.1 with iron gluconate")
    assert (await talk.facts("done"))["ask"] == "form"


async def test_salt_against_nitrite_is_logged(talk: Talk) -> None:
    await talk.say("/tank new Crib 100 l fresh")
    await talk.say("kh 4 gh 8 ph 7.4 temp 25 ammonia 0 nitrite 1 as no2")
    await talk.wait(hours=1)
    await talk.say("how much salt")
    facts = await talk.facts("yes")
    (goal,) = facts["goals"]
    assert goal == {"analyte": "chloride", "from": 0.0, "to": facts["chloride_mg_l"]}
    (logged,) = await talk.say("log it")
    (event,) = logged.facts["events"]
    assert event["substance"] == "sodium chloride"
    assert event["grams"] == facts["parts"][0]
    assert "ten times the nitrite already" in await talk.text("how much salt")
    await talk.wait(hours=1)
    await talk.say("changed 25%")
    (asked,) = await talk.say("how much salt to replace")
    assert asked.facts["ask"] == "bears_salt"
    again = await talk.facts("yes")
    assert again["grams"] == pytest.approx(facts["grams"] / 4.0)


async def test_salt_against_nitrite_is_bound_by_what_went_in_today(talk: Talk) -> None:
    """The limits: up to 100 mg/L chloride a day; nitrite 15 as NO2 asks for 150."""
    await talk.say("/tank new Crib 100 l fresh")
    await talk.say("kh 4 gh 8 ph 7.4 temp 25 ammonia 0 nitrite 15 as no2")
    await talk.wait(hours=1)
    await talk.say("how much salt")
    assert len((await talk.facts("yes"))["parts"]) == 2
    await talk.say("log it")
    assert (await talk.facts("how much salt"))["refused"] == "moved_today"
    await talk.wait(hours=23)
    await talk.say("nitrite 15 as no2")
    await talk.say("how much salt")
    assert len((await talk.facts("yes"))["parts"]) == 1


async def test_two_wishes_are_one_button_that_plans_both(talk: Talk) -> None:
    await talk.say("/tank new Cube 60 l fresh")
    await talk.say("kh 2 gh 4 ph 7 temp 25 ammonia 0")
    (asked,) = await talk.say("what do i need to get to kh 3 and gh 6")
    assert asked.buttons[0].label == "dose kh 3 gh 6"
    (planned,) = await talk.press(1)
    assert [goal["analyte"] for goal in planned.facts["goals"]] == ["kh", "gh"]
