"""What stands beside a reading: a question, litres, plain talk; none of it may cost the reading."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize("line", ["ammonia 3 today its hot", "nitrite 5 blorp"])
async def test_a_danger_is_told_with_the_question_about_its_number(talk: Talk, line: str) -> None:
    (asked,) = await talk.say(line)
    assert asked.facts["supposed"][0]["id"].partition("_")[0] in {"ammonia", "nitrite"}
    assert "take it as true" in asked.text
    assert asked.buttons


async def test_a_number_that_is_no_danger_is_only_asked_about(talk: Talk) -> None:
    (asked,) = await talk.say("just dipped a strip: no3 20")
    assert "supposed" not in asked.facts


@pytest.mark.parametrize(
    ("line", "kind", "litres", "kh"),
    [
        ("my betta 20 litre kh 3 does it need buffer", "fresh", 20.0, 3.0),
        ("alk 6.5 in my reef 300l, was 8", "marine", 300.0, 6.5),
    ],
)
async def test_the_tank_told_beside_a_value_and_a_question(
    talk: Talk, line: str, kind: str, litres: float, kh: float
) -> None:
    made, *kept = await talk.say(line)
    assert (made.facts["kind"], made.facts["volume_l"]) == (kind, litres)
    assert kept[0].facts["values"][0]["canonical"] == kh
    assert "is low" in kept[0].text


@pytest.mark.parametrize(
    "line", ["ph was 7.4 this morning and 6.6 now why", "ph was 7.4 this morning, now 6.6 why"]
)
async def test_both_values_before_why_are_kept_and_the_fall_is_told(talk: Talk, line: str) -> None:
    told = await talk.text(line)
    assert "pH went from 7.4 to 6.6" in told


async def test_a_word_of_the_trade_is_no_misspelt_analyte(talk: Talk) -> None:
    assert "copper" not in await talk.text("how much buffer to get to 5")


@pytest.mark.parametrize(
    ("text", "note", "warm"),
    [
        ("put hot water in, its 27 now", "put hot water in", 27.0),
        ("added some hot water, it's 25.5 now", "added some hot water", 25.5),
        ("put 5 l cold water in and its 24.5c now", "put 5 l cold water in", 24.5),
        ("warmes wasser reingekippt, jetzt 26", "warmes wasser reingekippt", 26.0),
    ],
)
async def test_how_warm_it_is_since_hot_water_went_in_is_kept_with_the_deed(
    talk: Talk, text: str, note: str, warm: float
) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    facts = await talk.facts(text)
    assert [(v["analyte"], v["canonical"]) for v in facts["values"]] == [("temperature", warm)]
    assert [event["text"] for event in facts["events"]] == [note]


@pytest.mark.parametrize("text", ["should i put hot water in, its 27 now?", "no hot water, its 27"])
async def test_hot_water_that_is_only_thought_of_is_no_deed(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    assert not (await talk.facts(text)).get("events")


async def test_a_dose_told_without_a_tank_is_said_back_before_an_amount(talk: Talk) -> None:
    await talk.say("my brother gave a spoon of baking soda")
    assert "dosed 1 teaspoon sodium bicarbonate" in await talk.text("ok how much now")
    (plan, *_) = await talk.say("how much soda for 100 l from kh 3 to 6")
    assert "1 teaspoon sodium bicarbonate, and nothing tested since" in plan.text.splitlines()[0]


async def test_without_a_dose_told_nothing_stands_before_the_amount(talk: Talk) -> None:
    (plan, *_) = await talk.say("how much soda for 100 l from kh 3 to 6")
    assert "nothing tested since" not in plan.text
