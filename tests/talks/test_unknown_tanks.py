"""Values of several tanks that nobody told of are no one tank's."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "text", ["A ph 7 kh 4, B ph 7.2 kh 5, C ph 8 kh 9", "kitchen kh 4, bedroom kh 6"]
)
async def test_nothing_is_stored_of_them(talk: Talk, text: str) -> None:
    assert "Nothing is stored" in await talk.text(text)
    assert "Tank" not in await talk.text("/tank")


async def test_once_told_each_keeps_its_own(talk: Talk) -> None:
    await talk.say("/tank new A 90 l fresh")
    await talk.say("/tank new B 60 l fresh")
    told = await talk.text("A ph 7 kh 4, B ph 7.2 kh 5")
    assert "A: pH 7" in told
    assert "B: pH 7.2" in told


@pytest.mark.parametrize(
    "line", ["back kh 3, temp 11, o2 8", "back: kh 3", "the back pond kh 3", "lounge kh 3"]
)
async def test_a_place_that_is_on_no_record_is_asked(talk: Talk, line: str) -> None:
    await talk.say("tank Front 2000 l pond")
    (asked,) = await talk.say(line)
    assert "There is no tank" in asked.text
    assert "values" not in asked.facts
    await talk.press(1, asked)
    assert "KH 3" in await talk.text("kh?")


@pytest.mark.parametrize("line", ["front kh 3", "today kh 3", "first kh 3"])
async def test_a_reading_of_the_tank_on_record_is_kept(talk: Talk, line: str) -> None:
    await talk.say("tank Front 2000 l pond")
    assert (await talk.facts(line))["tank"] == "Front"


async def test_a_reminder_of_another_place_is_not_of_the_only_tank(talk: Talk) -> None:
    await talk.say("tank Front 2000 l pond")
    assert (await talk.facts("remind me thursday back kh"))["reminder"]["tank"] is None
    assert (await talk.facts("remind me thursday front kh"))["reminder"]["tank"] == "Front"
    assert (await talk.facts("remind me friday to clean"))["reminder"]["tank"] == "Front"


@pytest.mark.parametrize("line", ["back ammonia 3 ph 8", "tank 3 ammonia 3 ph 8"])
async def test_a_danger_in_a_strange_tank_is_told_at_once(talk: Talk, line: str) -> None:
    await talk.say("tank Front 2000 l pond")
    (asked,) = await talk.say(line)
    assert "Until then take it as true: Ammonia is dangerous" in asked.text
    assert asked.facts["supposed"][0]["severity"] == "alarm"


@pytest.mark.parametrize("text", ["hall: kh 6", "Hall: kh 6, ph 7", "halte: kh 6", "bedroom: kh 6"])
async def test_a_name_with_a_colon_is_asked_whatever_it_is_like(talk: Talk, text: str) -> None:
    await talk.say("kitchen 60 l, kh 3 ph 7")
    (asked,) = await talk.say(text)
    assert "There is no tank" in asked.text
    assert "parts" not in asked.facts
    assert "kitchen: KH 3" in await talk.text("kitchen")


@pytest.mark.parametrize("text", ["dose: kh 6", "keep kh 6", "håll kh 6"])
async def test_a_verb_as_it_is_spelt_stays_one(talk: Talk, text: str) -> None:
    await talk.say("kitchen 60 l, kh 3 ph 7")
    assert "There is no tank" not in await talk.text(text)


async def test_tanks_told_apart_by_letters_are_made_and_keep_their_own(talk: Talk) -> None:
    (asked,) = await talk.say("tank A kh 4, tank B kh 6, tank C kh 9")
    assert "Nothing is stored yet" in asked.text
    kept = await talk.press(1, asked)
    assert [reply.facts["tank"] for reply in kept] == ["Tank A", "Tank B", "Tank C"]
    assert (await talk.facts("tank A is 50 litres"))["tank"] == "Tank A"
    assert (await talk.facts("tank B holds 100 l"))["tank"] == "Tank B"
    assert (await talk.facts("b kh 7"))["tank"] == "Tank B"
    assert "KH 9" in await talk.text("tank C")
    plan = await talk.facts("raise tank A to kh 6")
    assert (plan["tank"], plan["volume_l"]) == ("Tank A", 50.0)


async def test_tanks_that_are_not_to_be_made_are_left_out(talk: Talk) -> None:
    (asked,) = await talk.say("A kh 4 ph 7, B kh 6 ph 7.5")
    await talk.press(2, asked)
    assert "A:" not in await talk.text("/tank")


@pytest.mark.parametrize("text", ["my tank c kh 5", "tank A kh 5", "tank a: kh 5"])
async def test_a_tank_of_a_letter_is_not_the_one_in_use(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (asked,) = await talk.say(text)
    assert "There is no tank" in asked.text
    assert "Fern: no readings" in await talk.text("fern kh?")


@pytest.mark.parametrize("text", ["l'acquario ha kh 4", "mi acuario y kh 4", "tank: kh 4"])
async def test_a_word_of_one_letter_names_no_tank(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "There is no tank" not in await talk.text(text)


@pytest.mark.parametrize(
    "text",
    [
        "back: kh 6", "add: kh 6", "den: kh 6", "Den: ph 7, kh 6", "down: kh 6", "meer: kh 6",
        "cup: kh 6",
    ],
)  # fmt: skip
async def test_a_label_that_is_a_word_elsewhere_is_of_no_other_tank(talk: Talk, text: str) -> None:
    await talk.say("kitchen 60 l, kh 3 ph 7")
    (asked,) = await talk.say(text)
    assert "There is no tank" in asked.text
    assert "values" not in asked.facts
    assert "kitchen: KH 3" in await talk.text("kitchen")


@pytest.mark.parametrize("name", ["back", "add", "den"])
async def test_a_label_that_is_a_word_elsewhere_is_the_tank_so_named(talk: Talk, name: str) -> None:
    await talk.say(f"/tank new {name} 60 l fresh")
    await talk.say("kitchen 60 l, kh 3 ph 7")
    assert (await talk.facts(f"{name}: kh 6"))["tank"] == name


@pytest.mark.parametrize(
    "text",
    ["today: kh 6", "results: kh 6", "Werte: kh 6", "bitte: kh 6", "update: kh 6", "so: kh 6"],
)
async def test_a_day_or_a_greeting_is_no_label(talk: Talk, text: str) -> None:
    await talk.say("kitchen 60 l, kh 3 ph 7")
    assert (await talk.facts(text))["tank"] == "kitchen"


@pytest.mark.parametrize(
    "text",
    ["sump 40l kh 6", "sump: 40 l, kh 6", "my sump is 40 l, kh 6 ph 7", "filter 20 l kh 6"],
)  # fmt: skip
async def test_values_of_a_sump_with_its_litres_are_asked_about(talk: Talk, text: str) -> None:
    await talk.say("kitchen 120 l, kh 3 ph 7")
    (asked,) = await talk.say(text)
    assert "There is no tank" in asked.text
    assert "values" not in asked.facts
    assert "kitchen: KH 3" in await talk.text("kitchen")
    await talk.press(2, asked)
    assert "KH 6" in await talk.text("kitchen")


async def test_the_sump_that_is_a_tank_on_record_has_its_own_values(talk: Talk) -> None:
    await talk.say("/tank new Sump 40 l fresh")
    await talk.say("/tank new Kitchen 120 l fresh")
    assert (await talk.facts("sump kh 6"))["tank"] == "Sump"
    assert (await talk.facts("kitchen kh 5, the filter is clean"))["tank"] == "Kitchen"


@pytest.mark.parametrize(
    "text",
    [
        "den: changed 30%",
        "den: water change 30%",
        "den: 30% water change",
        "shed: did a 30% water change",
        "shed: changed 30%",
        "shrimp den: 30% wc",
    ],
)
@pytest.mark.parametrize("tanks", [1, 2])
async def test_a_deed_of_a_tank_that_is_on_no_record_is_asked(
    talk: Talk, text: str, tanks: int
) -> None:
    await talk.say("tank small 30 l")
    if tanks > 1:
        await talk.say("tank big 120 l")
    (asked,) = await talk.say(text)
    assert "There is no tank" in asked.text
    assert "events" not in asked.facts
    (kept,) = await talk.press(1, asked)
    assert kept.facts["events"][0]["percent"] == 30.0
    assert kept.facts["tank"] not in {"small", "big"}


@pytest.mark.parametrize("text", ["today: changed 30%", "update: changed 30%", "done: changed 30%"])
async def test_a_day_before_a_deed_is_no_tank(talk: Talk, text: str) -> None:
    await talk.say("tank big 120 l")
    assert (await talk.facts(text))["tank"] == "big"


@pytest.mark.parametrize("text", ["plan: water change 30%", "tomorrow: water change 30%"])
async def test_a_plan_of_a_deed_is_not_stored(talk: Talk, text: str) -> None:
    await talk.say("tank big 120 l")
    assert "events" not in await talk.facts(text)
