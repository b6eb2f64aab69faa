"""Questions that need no plan: safe or not, carbon dioxide, units."""

from __future__ import annotations

import pytest

from bot.chat.words.terms import ENTRIES
from core.message.terms import meanings
from tests.chat.harness import Talk


async def test_is_it_safe_answers_first_and_stores_nothing(talk: Talk) -> None:
    """Emerson 1975: at pH 8.2, 26 °C 8.9 % of total ammonia is un-ionised (computed, grade C)."""
    await talk.say("/tank new Fern 90 l fresh")
    (reply,) = await talk.say("is ammonia 0.5 safe at ph 8.2 and 26 c?")
    assert reply.lines[0].text.startswith("That is not safe.")
    assert reply.facts["nh3_n"] == pytest.approx(0.5 * 0.089, abs=0.001)
    async with talk.app.database.read() as uow:
        assert await uow.log.readings(1) == []


async def test_ammonia_under_its_limits_is_still_never_called_safe(talk: Talk) -> None:
    (reply,) = await talk.say("is ammonia 0.1 safe at ph 7 and 26 c?")
    assert "never called safe" in reply.text
    assert [each["severity"] for each in reply.facts["findings"]] == ["note"]


async def test_co2_of_the_question_and_of_the_tank(talk: Talk) -> None:
    """The rule of thumb 3·KH·10^(7−pH) is 4 to 12 % low at 25 °C: common practice, no source."""
    facts = await talk.facts("co2 at ph 6.8 kh 4")
    rule = 3 * 4 * 10 ** (7 - 6.8)
    assert rule * 1.03 < facts["co2_mg_l"] < rule * 1.13
    assert facts["co2_span"][0] < facts["co2_mg_l"] < facts["co2_span"][1]
    await talk.say("/tank new Fern 90 l fresh")
    told = await talk.facts("ph 6.8 kh 4 temp 25")
    assert told["co2_mg_l"] == pytest.approx(facts["co2_mg_l"], rel=1e-3)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("convert 8 dkh to ppm", "143 ppm"),
        ("convert 10 dgh to meq/l", "3.57 meq/L"),
        ("convert 78 f to c", "25.6 °C"),
        ("convert 20 gal to l", "75.7 L"),
    ],
)
async def test_conversions(talk: Talk, text: str, expected: str) -> None:
    """°dH: Internetchemie/ChemLin lexicon, 'Deutscher Haertegrad', grade B."""
    assert expected in await talk.text(text)


async def test_history_lists_the_newest_first(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "no readings" in await talk.text("history of kh")
    for kh in range(3, 13):
        await talk.say(f"kh {kh}")
        await talk.wait(days=1)
    (reply,) = await talk.say("history of kh")
    assert [value["value"] for value in reply.facts["values"]] == [12, 11, 10, 9, 8, 7, 6, 5]
    assert "KH 4" in await talk.text("more")


async def test_how_fast_a_value_moves_is_told_only_where_it_surely_does(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    for nitrate, kh in ((15, 8), (22, 7), (28, 7), (35, 6), (42, 5), (49, 4)):
        await talk.say(f"nitrate {nitrate} kh {kh} temp 25")
        await talk.wait(days=7)
    (climbs,) = await talk.say("how fast does nitrate rise")
    assert climbs.facts["per_day"] == pytest.approx(0.96, abs=0.05)
    assert "+0.97 mg/L a day, by 6 readings over 35 days" in climbs.text
    # 0.452 °dH of KH go with 10 mg/L of nitrate: one equivalent a mole, as `core/water` reckons.
    (falls,) = await talk.say("how fast does kh fall")
    assert falls.facts["kh_to_nitrate_per_day"] == pytest.approx(
        0.0452 * climbs.facts["per_day"], rel=0.001
    )
    assert "acid from the nitrate" in falls.text
    assert "does not surely move" in await talk.text("how fast does temp rise")


async def test_a_wish_without_a_value_is_told_the_pace(talk: Talk) -> None:
    await talk.say("/tank new Lagoon 150 l marine")
    assert (await talk.facts("how fast can i raise calcium"))["step"] == 20.0
    assert "1 °dH a day at most" in await talk.text("how fast can i raise kh")
    assert "How much of what" in await talk.text("dose")


async def test_who_may_join_a_tank(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ph 7.4 kh 6 gh 9 temp 24")
    assert (await talk.facts("can i keep neon tetras"))["verdict"] in {"yes", "care", "retest"}
    (reply,) = await talk.say("can i keep discus with goldfish")
    assert reply.lines[0].text.startswith("No")
    assert reply.facts["species"].startswith("Symphysodon")
    assert "I know no animal or plant called" in await talk.text("can i keep xyzzys")


async def test_why_is_answered_from_the_tanks_own_data(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "nothing that I have on record" in await talk.text("why is my tank odd")
    assert "A low pH comes of" in await talk.text("why is my ph dropping")
    await talk.say("ph 6.8 kh 1 gh 6 temp 24")
    (reply,) = await talk.say("why is my ph dropping")
    assert reply.lines[0].text.startswith("Fern: KH 1 is low")
    assert "KH is what holds pH" in await talk.text("more")


async def test_spoons_are_told_roughly_and_warned_of(talk: Talk) -> None:
    """A level teaspoon of baking soda 4.6 g: USDA FoodData Central, from memory."""
    (reply,) = await talk.say("convert 2 tsp baking soda to grams")
    assert reply.facts["grams"] == pytest.approx(9.2)
    assert "no measure for a dose" in reply.text
    assert "Weigh it" in await talk.text("convert 1 tsp calcium chloride to grams")
    assert (await talk.facts("how many grams is a teaspoon of epsom salt"))["grams"] == 5


async def test_to_raise_a_number_asks_by_or_to(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("gh 4 kh 4 ph 7 temp 25 ammonia 0")
    (asked,) = await talk.say("how much epsom salt to raise gh 2")
    assert [button.label.split()[-2:] for button in asked.buttons[:2]] == [["by", "2"], ["to", "2"]]
    (reply,) = await talk.press(1)
    assert reply.facts["goals"] == [{"analyte": "gh", "from": 4, "to": 6}]


async def test_the_basis_that_a_question_says_counts(talk: Talk) -> None:
    """1 mg/L of N is 14.007 of 17.031 more than 1 mg/L of NH3."""
    as_n = await talk.facts("if ammonia 1 nh4-n at ph 8 and 25 c is that safe")
    as_nh3 = await talk.facts("is ammonia 1 safe at ph 8 and 25 c")
    assert as_n["nh3_n"] >= as_nh3["nh3_n"]
    assert as_n["nh3_n"] == pytest.approx(0.053, abs=0.003)  # Emerson 1975: 5.4 % at 25 °C, pH 8


async def test_a_call_for_help_keeps_its_readings(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    replies = await talk.say("help ammonia 2 ph 8.2 temp 26")
    assert "ammonia 2 mg/L" in replies[0].text
    (history,) = await talk.say("history of ammonia")
    assert "ammonia 2" in history.text


async def test_what_could_live_is_asked_without_a_name(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("/source tap ph 7.6 kh 5 gh 7 no3 5 temp 25")
    for text in ("what could live in my water", "welche Fische passen zu meinem Wasser"):
        assert (await talk.facts(text))["species"]


async def test_may_i_put_so_much_of_a_salt_in_is_answered_by_what_it_does(talk: Talk) -> None:
    await talk.say("/tank new Nano 20 l fresh")
    await talk.say("kh 4 gh 4 ph 7.2 temp 25 ammonia 0")
    facts = await talk.facts("can i put 5 g epsom salt in nano?")
    assert facts["substance"] == "magnesium sulfate heptahydrate"
    assert facts["gh"] > 2


async def test_less_than_nothing_is_asked_about(talk: Talk) -> None:
    (reply,) = await talk.say("what does -5 g baking soda do in 100 l")
    assert "-5 g" in reply.text
    assert "kh" not in reply.facts


async def test_what_is_too_warm_is_judged_without_a_no_that_could_mean_either(talk: Talk) -> None:
    """Tropical animals at 22 to 28 °C: common practice, no source."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("temp 25")
    (reply,) = await talk.say("is 30 c too hot")
    assert reply.lines[0].text.startswith("30 °C is too warm")
    assert reply.text.index("Aerate first") > 0
    assert "within 22 to 28" in await talk.text("is 26 c too warm")
    assert "too cold" in await talk.text("is 16 c too cold")


async def test_what_a_reef_uses_up_stands_with_its_readings(talk: Talk) -> None:
    await talk.say("/tank new Reef 200 l marine")
    await talk.say("reef: kh 8.5 ca 420")
    await talk.wait(days=2)
    await talk.say("kh 7.2")
    facts = await talk.facts("how much alk do my corals eat")
    assert facts["consumption"]["per_day"] == pytest.approx((8.5 - 7.2) / 2)
    low, high = facts["consumption"]["between"]
    assert low < (8.5 - 7.2) / 2 < high
    assert "consumption" not in await talk.facts("daily calcium consumption")  # one reading only


@pytest.mark.parametrize(
    "text",
    [
        "dose 20 g calcium chloride and 20 g baking soda together ok?",
        "can i dose calcium and alk together",
        "can i add baking soda and calcium chloride at the same time",
    ],
)
async def test_calcium_and_buffer_never_go_in_together(talk: Talk, text: str) -> None:
    await talk.say("/tank new Reef 200 l marine")
    (reply,) = await talk.say(text)
    assert reply.facts["refused"] == "together"
    assert reply.lines[0].text.startswith("No, not together")


async def test_to_get_somewhere_is_a_change_from_above_and_a_dose_from_below(talk: Talk) -> None:
    await talk.say("/tank new Cube 30 l fresh")
    await talk.say("kh 6 gh 8 ph 7.4 temp 25 nh3 0")
    assert (await talk.facts("get kh to 4"))["share"] == pytest.approx(0.34)  # a third
    assert (await talk.facts("get gh to 10"))["goals"] == [{"analyte": "gh", "from": 8, "to": 10}]


async def test_salinity_comes_down_by_fresh_water_in_steps(talk: Talk) -> None:
    """At most 1 g/kg a day with invertebrates: common practice, no source."""
    await talk.say("/tank new Reef 200 l marine")
    await talk.say("sal 36.5 kh 8 ph 8 temp 25 nh3 0 no3 10")
    facts = await talk.facts("get salinity down to 35")
    assert facts["share"] == pytest.approx(0.042)  # 1.5 / 36.5, in tenths of a percent
    assert len(facts["steps"]) >= 2


async def test_new_sea_water_needs_its_salinity(talk: Talk) -> None:
    await talk.say("/tank new Reef 200 l marine")
    assert "which salinity" in await talk.text("how much salt do i need to mix for 40 l")
    facts = await talk.facts("mix 40 l of salt water to 35 ppt")
    assert facts["to"] == {"salinity": 35}
    assert facts["salts"][0]["grams"] == pytest.approx(40 * 1.023 * 36.0, rel=0.03)


POISONED = [
    ("is it dangerous to have ammonia 1", "Ammonia is dangerous", "a word between"),
    ("is ammonia 1 a problem", "Ammonia is dangerous", "a noun for danger"),
    ("is ammonia 4 at ph 8.5 deadly", "Ammonia is dangerous", "an adjective that is no animal"),
    ("is ammonia 0.5-4 ok", "Ammonia is dangerous", "of a range its upper end"),
    ("is nitrite 5 toxic", "harms fish", "likewise for nitrite"),
    ("no3 200 bad?", "Nitrate 200 mg/L is over", "an adjective behind the number"),
    ("is ph 9 ok for neon tetra", "pH 9 is high for neon tetra", "for a kind that is named"),
]


@pytest.mark.parametrize(("text", "expected", "_why"), POISONED)
async def test_a_number_in_a_question_is_judged_itself(
    talk: Talk, text: str, expected: str, _why: str
) -> None:
    """Whatever the tank has on record: its ammonia 0 says nothing of ammonia 1."""
    await talk.say("/tank new Emer 100 l fresh")
    await talk.say("added 10 guppy")
    await talk.say("ph 7.6 kh 8 gh 10 temp 25 ammonia 0 nitrite 0 nitrate 5")
    told = await talk.text(text)
    assert expected in told
    assert not told.startswith(("No.", "Emer: nothing"))


LEVELS = [
    ("safe ammonia level at ph 8", "no amount of it is called safe"),
    ("how much ammonia is safe", "no amount of it is called safe"),
    ("what ammonia level is safe", "no amount of it is called safe"),
    ("safe nitrite level", "Nitrite should be 0"),
    ("safe nitrate level", "over 44 mg/L"),
    ("what is a safe level of copper", "Copper should be 0"),
    ("safe ph", "depends on who lives there"),
    ("is ph 9 too high", "too high for"),
]


@pytest.mark.parametrize(("text", "expected"), LEVELS)
async def test_a_limit_that_is_asked_for_is_told(talk: Talk, text: str, expected: str) -> None:
    """44 mg/L: Camargo, Alonso & Salamanca 2005 (grade A); the others common practice."""
    assert expected in await talk.text(text)


async def test_ammonia_that_is_warned_of_at_a_ph(talk: Talk) -> None:
    """Emerson 1975: at pH 8.2, 26 °C 8.9 % is un-ionised, so 0.02 mg/L of it is 0.22 in all."""
    assert "over 0.22 mg/L" in await talk.text("safe ammonia at ph 8.2 and 26 c")


async def test_limits_of_the_animals_on_record(talk: Talk) -> None:
    await talk.say("/tank new Emer 100 l fresh")
    await talk.say("added 10 guppy")
    assert "For guppy: pH 7–8.2." in await talk.text("safe ph")


async def test_a_word_that_is_no_animal_is_not_sought_among_them(talk: Talk) -> None:
    assert "is the buffer" in await talk.text("is kh important")
    assert "no animal or plant called “string”" in await talk.text("can i put string in")
    assert "nerite" not in await talk.text("my co2 is too high, should i aerate")


async def test_a_rise_that_is_asked_about_is_planned(talk: Talk) -> None:
    await talk.say("/tank new Emer 100 l fresh")
    await talk.say("ph 7.6 kh 3 temp 25 ammonia 0")
    assert "KH 3 → 6 °dH in 3 parts" in await talk.text("is it safe to raise kh by 3")


async def test_an_element_that_is_only_kept_is_explained(talk: Talk) -> None:
    assert "I keep strontium" in await talk.text("is strontium important")


async def test_the_words_of_the_answers_are_explained(talk: Talk) -> None:
    assert meanings() == ENTRIES.keys()
    assert "reverse osmosis" in await talk.text("what is RO water?")
    assert "17.8 ppm" in await talk.text("what is °dH")
    assert "the part of total ammonia that poisons" in await talk.text("what is un-ionised ammonia")
    assert "not chlorine" in await talk.text("what is chloride")
    assert "takes part of the tank's water out" in await talk.text("was ist ein Wasserwechsel")
    assert await talk.say("what is ro", group=True, addressed=False) == []


async def test_a_number_whose_meaning_is_asked_is_judged(talk: Talk) -> None:
    assert "pH 9" in await talk.text("what does ph 9 mean")
    assert "not safe" in await talk.text("what does ammonia 0.2 mean")


async def test_salt_is_too_much_for_a_fresh_tank_and_too_little_for_the_sea(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    assert "too high" in await talk.text("is salinity 10 safe")
    await talk.say("/tank new Reef 200 l marine")
    assert "low for most animals of warm seas" in await talk.text("reef: is salinity 10 safe")


async def test_much_co2_beside_ammonia_gets_no_air_unasked(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("ph 6.2 kh 3 temp 25 ammonia 0")
    assert "move the surface" in await talk.text("co2")
    await talk.say("ammonia 1")
    said = await talk.text("co2")
    assert "only if they gasp" in said
    assert "move the surface" not in said
