"""A number alone is asked about as the value told last; the words are ours, no source."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "line",
    [
        "now its 45",
        "45",
        "und heute 45",
        "today 45",
        "it's 45",
        "maintenant 45",
        "teraz 45",
        "back at 45",
        "45 tho",
        "tested again, 45",
        "ich glaube 45",
    ],
)
async def test_it_is_offered_as_the_value_told_last(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("no3 40")
    (reply,) = await talk.say(line)
    assert "Did you mean nitrate 45?" in reply.text
    (stored,) = await talk.press(1, reply)
    assert "nitrate 45" in stored.text


async def test_it_is_of_the_tank_that_was_told(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/tank new Quarry 240 l fresh")
    await talk.say("kh 12")
    await talk.say("/tank Fern")
    assert "Did you mean Quarry: KH 11?" in await talk.text("11")


async def test_of_two_values_none_is_guessed(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4 ph 7")
    assert "Did you mean" not in await talk.text("now 5")


async def test_a_number_that_it_cannot_have_is_not_offered(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ph 7")
    assert "Did you mean" not in await talk.text("45")


@pytest.mark.parametrize("line", ["how big a change", "how big should my water change be"])
async def test_how_large_a_change_asks_for_its_share(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4 gh 6 ph 7 temp 25")
    assert "I do not know the new water" in await talk.text(line)


@pytest.mark.parametrize(
    ("asked", "number", "meant"),
    [("ph?", "7.8", "pH 7.8"), ("and temp?", "24", "temperature 24"), ("last gh?", "8", "GH 8")],
)
async def test_it_answers_what_was_asked_about_and_never_read(
    talk: Talk, asked: str, number: str, meant: str
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4")
    await talk.say(asked)
    assert f"Did you mean {meant}?" in await talk.text(number)


async def test_it_answers_for_the_tank_that_was_asked_about(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/tank new small 20 l fresh")
    await talk.say("/tank Fern")
    await talk.say("kh in the small one?")
    (reply,) = await talk.say("4")
    (stored,) = await talk.press(1, reply)
    assert stored.text.startswith("small: KH 4")


@pytest.mark.parametrize("line", ["water is 21 degrees", "das wasser hat 21 grad"])
async def test_degrees_of_the_water_are_its_warmth(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4")
    assert "Did you mean temperature 21?" in await talk.text(line)


async def test_a_plan_is_still_spoken_of_after_a_value_was_asked_about(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4 ph 7 ammonia 0 temp 25")
    await talk.say("dose kh 6")
    await talk.say("nitrite?")
    assert "None of the 2 parts is on record" in await talk.text("what now")


@pytest.mark.parametrize("line", ["0.25", "still 0.25", "noch immer 0,25", "its 0.25"])
async def test_a_number_behind_the_reminder_of_one_test_is_asked_to_be_of_it(
    talk: Talk, line: str
) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("kh 4")
    await talk.say("remind me to test ammonia every day at 19:00")
    await talk.wait(days=1)
    (asked,) = await talk.say(line)
    assert asked.buttons[0].label == "ammonia 0.25"
    (kept,) = await talk.press(1, asked)
    assert kept.facts["values"][0]["analyte"] == "ammonia"


async def test_about_so_much_is_offered_as_that(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("no3 40")
    (reply,) = await talk.say("i think its around 45 now")
    assert "Did you mean nitrate ~45?" in reply.text
    assert "nitrate about 45" in (await talk.press(1, reply))[0].text


@pytest.mark.parametrize(
    ("told", "line", "kept"),
    [
        ("ammonia .5!!", "now its 0.25", "ammonia 0.25"),
        ("nitrite 1", "its down to 0.1", "nitrite 0.1"),
        ("nitrite 1", "its 0 now", "nitrite 0"),
        ("kh 2", "now its 3", "KH 3"),
    ],
)
async def test_how_it_stands_now_right_after_a_warning_is_kept(
    talk: Talk, told: str, line: str, kept: str
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/tank new Quarry 240 l fresh")
    await talk.say("/tank Fern")
    await talk.say(f"quarry {told}")
    (reply,) = await talk.say(line)
    assert reply.text.startswith(f"Quarry: {kept}")
    assert "Corrected" not in reply.text


@pytest.mark.parametrize(
    ("told", "line"),
    [
        ("ammonia .5!!", "now its 7"),  # pH, maybe
        ("kh 2", "its 7 now"),
        ("kh 2", "3"),
        ("kh 6", "now its 5"),  # nothing was warned of
        ("kh 36 ppm", "now its 3"),
        ("ammonia .5!!", "down to 0.1"),
    ],
)
async def test_any_other_number_alone_is_asked(talk: Talk, told: str, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say(told)
    (reply,) = await talk.say(line)
    assert "Not stored" in reply.text
    assert not reply.facts.get("values")


@pytest.mark.parametrize("line", ["quarry 6.5 and 2", "quarry: 6.5, 2", "quarry 6.5 2"])
async def test_numbers_of_a_tank_are_asked_in_the_order_of_those_told_before(
    talk: Talk, line: str
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/tank new Quarry 240 l fresh")
    await talk.say("fern: ph 7.5 kh 6")
    (reply,) = await talk.say(line)
    assert "Did you mean Quarry: pH 6.5, KH 2?" in reply.text
    (kept,) = await talk.press(1, reply)
    assert kept.text.startswith("Quarry: pH 6.5, KH 2")


@pytest.mark.parametrize("line", ["quarry 6.5 and 2", "quarry 5.2", "quarry 40 and 2"])
async def test_numbers_of_a_tank_that_could_be_anything_are_asked_by_its_name(
    talk: Talk, line: str
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/tank new Quarry 240 l fresh")
    (reply,) = await talk.say(line)
    assert reply.text.startswith("Quarry: of which value")
    assert all(number in reply.text for number in line.split()[1:] if number != "and")
    assert "values" not in reply.facts


@pytest.mark.parametrize(
    "text", ["betty kh 2, cube kh 4, big one kh 3", "alpha is kh 2 and beta is kh 4"]
)
async def test_values_that_may_be_of_several_tanks_are_not_offered_for_one(
    talk: Talk, text: str
) -> None:
    await talk.say("my tank is 100 l")
    (asked,) = await talk.say(text)
    assert "Of which tank is each?" in asked.text
    assert not asked.buttons
    assert "KH" not in await talk.text("tank")


async def test_a_value_beside_one_that_is_kept_is_not_offered_for_the_same_tank(
    talk: Talk,
) -> None:
    await talk.say("/tank new Betty 40 l fresh")
    *_, asked = await talk.say("betty kh 2, xqube kh 4")
    assert not any("KH 4" in button.label for button in asked.buttons)


async def test_two_numbers_of_one_thing_are_kept_by_one_press_alone(talk: Talk) -> None:
    await talk.say("my tank is 100 l")
    (asked,) = await talk.say("kh 4 kh 3")
    assert [button.label for button in asked.buttons[:2]] == ["kh 4", "kh 3"]
    assert "kh 4 or kh 3" in asked.text
    await talk.press(1, asked)
    await talk.press(2, asked)
    kept = await talk.text("tank")
    assert "KH 4" in kept
    assert "KH 3" not in kept


async def test_different_things_beside_unknown_words_are_offered_together(talk: Talk) -> None:
    await talk.say("my tank is 100 l")
    (asked,) = await talk.say("blah kh 4, blub gh 6")
    assert any("KH 4" in button.label for button in asked.buttons)


@pytest.mark.parametrize(
    ("text", "value"),
    [("is 4 ok", 4), ("4 ok?", 4), ("ist 6 gut", 6), ("is 14 too high?", 14)],
)
@pytest.mark.parametrize("before", [("kh 4",), ("kh 4", "raise kh to 6")])
async def test_a_number_that_is_judged_is_of_the_value_spoken_of_and_not_stored(
    talk: Talk, before: tuple[str, ...], text: str, value: int
) -> None:
    await talk.say("tank big 100 l")
    for each in before:
        await talk.say(each)
    (reply,) = await talk.say(text)
    assert f"KH {value} °dH is" in reply.text
    assert "KH 4" in await talk.text("kh?")


@pytest.mark.parametrize("text", ["ok its 4", "ok 4"])
async def test_a_number_behind_an_ok_is_asked_about_still(talk: Talk, text: str) -> None:
    await talk.say("tank big 100 l")
    await talk.say("kh 4")
    assert "Did you mean KH 4" in await talk.text(text)


async def test_a_poison_is_judged_as_one(talk: Talk) -> None:
    await talk.say("tank big 100 l")
    await talk.say("ammonia 2")
    assert "not safe" in await talk.text("is 2 ok")


@pytest.mark.parametrize("text", ["fern is 70l", "tank fern is 70 l", "fern is 70 litres"])
async def test_litres_behind_a_tank_are_of_no_value(talk: Talk, text: str) -> None:
    await talk.say("tank fern 60 l")
    await talk.say("fern kh 4")
    assert (await talk.facts(text))["volume_l"] == 70.0
    assert "of which value" in await talk.text("fern 70")


async def test_a_number_behind_a_torn_one_is_of_its_name(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    await talk.say("kh 4 ph 7 1")
    assert (await talk.text("7.1")).startswith("Fern: pH 7.1")
    await talk.say("gh 8 ph 6 5")
    other = await talk.say("7")
    assert "Did you mean pH 7?" in other[0].text
    assert not other[0].facts.get("values")


async def test_a_number_behind_what_was_understood_since_is_of_that(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    await talk.say("kh 4 ph 7 1")
    await talk.say("kh 5")
    assert "KH 7.1?" in await talk.text("7.1")
