"""Waters that a wish itself tells of, blends in talk, and a source asked about by its name."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("text", "litres"),
    [
        ("my tap is kh 12 how much distilled water for kh 4 in 30 litres", 20.0),
        ("mix tap gh 16 with ro to gh 6 for 20 l", 12.5),
    ],
)
async def test_a_told_water_is_thinned(talk: Talk, text: str, litres: float) -> None:
    """Shares by amount: 1 - 4/12 of 30 L and 1 - 6/16 of 20 L are without minerals."""
    facts = await talk.facts(text)
    (pure,) = [part["share"] for part in facts["parts"] if part["source"] in {"RO", "distilled"}]
    assert pure * facts["volume_l"] == pytest.approx(litres)


async def test_what_the_question_tells_of_its_source_wins_over_the_record(talk: Talk) -> None:
    await talk.say("tap: kh 8")
    facts = await talk.facts("my tap is kh 12 how much ro for kh 4 in 30 l")
    assert {part["source"]: part["share"] for part in facts["parts"]}["tap"] == pytest.approx(1 / 3)


@pytest.mark.parametrize(
    "text",
    [
        "my water is 1 part ro 1 part tap",
        "i use half ro half tap",
        "new water is 50% ro 50% tap",
        "ich nehme 50% osmosewasser und 50% leitungswasser",
    ],
)
async def test_a_blend_told_in_talk_is_the_tanks_source(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("tap: kh 9 gh 15")
    assert (await talk.facts(text))["mixed"]["kh"] == pytest.approx(4.5)
    await talk.say("kh 5 gh 8 ph 7.2 ammonia 0 temp 25")
    assert (await talk.facts("what if i change 20%"))["source"] == "mix"


@pytest.mark.parametrize("text", ["how is my tap", "what is my tap?", "tap"])
async def test_a_source_is_shown_by_its_name(talk: Talk, text: str) -> None:
    await talk.say("tap: kh 9")
    assert (await talk.facts(text))["values"][0]["canonical"] == 9.0


@pytest.mark.parametrize("text", ["the fish love rain", "tap is off", "i use tap"])
async def test_talk_of_waters_stays_talk(talk: Talk, text: str) -> None:
    await talk.say("tap: kh 9")
    (reply,) = await talk.say(text)
    assert "values" not in reply.facts
    assert "mixed" not in reply.facts


async def test_a_named_salt_takes_its_part_of_a_recipe(talk: Talk) -> None:
    """KH 2 in 20 L by potassium bicarbonate: 2 · 35.70 mg/L · 20 L (C, formula weights)."""
    facts = await talk.facts("remineralize 20 l of ro to gh 4 and kh 2 with potassium bicarbonate")
    grams = {salt["substance"]: salt["grams"] for salt in facts["salts"]}
    assert grams["potassium bicarbonate"] == pytest.approx(1.428, rel=2e-3)
    assert "sodium bicarbonate" not in grams
    assert "calcium chloride dihydrate" in grams


async def test_to_dechlorinate_so_much_is_no_reading_of_the_tank(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    facts = await talk.facts("dechlorinate 100 l chloramine 3 ppm")
    assert (facts["volume_l"], facts["chlorine"]) == (100.0, 3.0)


async def test_a_product_is_called_by_its_own_name(talk: Talk) -> None:
    facts = await talk.facts("product buffer plus: 10 ml per 40 l raises kh by 0.5")
    assert facts["product"]["name"] == "buffer plus"


@pytest.mark.parametrize(
    "text",
    ["what would 50% ro and 50% tap give", "what does half ro half tap give?",
     "was ergibt 50% Osmosewasser und 50% Leitungswasser"],
)  # fmt: skip
async def test_a_blend_is_told_before_it_is_mixed(talk: Talk, text: str) -> None:
    """Half of KH 9 and GH 12, by amounts."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/source tap ph 7.4 kh 9 gh 12 temp 24")
    facts = await talk.facts(text)
    assert facts["mixed"]["kh"] == pytest.approx(4.5, rel=1e-3)
    assert facts["mixed"]["gh"] == pytest.approx(6.0, rel=1e-3)
    assert {part["share"] for part in facts["parts"]} == {0.5}
