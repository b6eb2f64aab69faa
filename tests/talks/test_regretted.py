"""`kh was 5 sorry`, `no, eran dos`: what was just told is put right; the words are ours."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("told", "line", "value"),
    [
        ("kh 4 ph 7", "kh was 5 sorry", 5.0), ("kh 4 ph 7", "kh 5 oops", 5.0),
        ("temp 25c", "78f sorry", 25.56), ("kh 4", "kh 5, entschuldigung", 5.0),
        ("kh 4", "kh 5 pardon", 5.0), ("kh 4", "kh 5 perdón", 5.0),
    ],
)  # fmt: skip
async def test_a_value_with_regret_puts_the_one_before_right(
    talk: Talk, told: str, line: str, value: float
) -> None:
    await talk.say("/tank new Fern 300 l fresh")
    await talk.say(told)
    (reply,) = await talk.say(line)
    assert reply.text.startswith("Corrected")
    name = "temperature" if "temp" in told else "kh"
    (now,) = (await talk.facts(f"what is {name} now"))["values"]
    assert now["canonical"] == pytest.approx(value, abs=0.01)


async def test_a_value_of_another_name_is_told_anew(talk: Talk) -> None:
    await talk.say("/tank new Fern 300 l fresh")
    await talk.say("kh 4")
    assert "Corrected" not in await talk.text("gh 7 sorry")


@pytest.mark.parametrize(
    ("told", "line", "count"),
    [
        ("one died", "no 2", 2), ("una gamba muerta", "no, eran dos", 2),
        ("one neon died", "no, two", 2), ("ein neon ist gestorben", "nein, es waren zwei", 2),
        ("added one betta", "sorry 3", 3),
    ],
)  # fmt: skip
async def test_a_count_in_words_is_put_right(talk: Talk, told: str, line: str, count: int) -> None:
    await talk.say("/tank new Fern 300 l fresh")
    await talk.say(told)
    replies = await talk.say(line)
    assert replies[0].text.startswith("Corrected")
    assert replies[0].facts["events"][0]["count"] == count


@pytest.mark.parametrize("line", ["was more like 15", "waren eher 15", "era piuttosto 15"])
async def test_more_like_so_much(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 300 l fresh")
    await talk.say("changed 20 l")
    assert (await talk.facts(line))["events"][0]["litres"] == 15.0


@pytest.mark.parametrize("between", ["whats left", "what is left"])
async def test_asking_what_is_left_parts_no_dose_from_its_correction(
    talk: Talk, between: str
) -> None:
    for line in ("/tank new Fern 300 l fresh", "kh 6 ph 7.8 ammonia 0", "dose kh 9", "put in 8 g"):
        await talk.say(line)
    await talk.say(between)
    assert "Corrected" in await talk.text("sorry only 6 g")
    total = (await talk.facts("how much soda did i use today"))["total"]
    assert total[0]["grams"] == 6.0


async def test_no_one_is_no_number(talk: Talk) -> None:
    await talk.say("/tank new Fern 300 l fresh")
    await talk.say("changed 20 l")
    assert "Corrected" not in await talk.text("no one")


@pytest.mark.parametrize(
    "text",
    [
        "oh wait cube ph was 6.5 not 6.8",
        "wait, cube ph was 6.5 not 6.8",
        "ach quatsch, cube ph war 6,5 nicht 6,8",
        "attends, cube ph était 6,5 pas 6,8",
        "aspetta, cube ph era 6,5 non 6,8",
        "wacht, cube ph was 6,5 niet 6,8",
    ],
)
async def test_the_tank_that_is_named_is_put_right(talk: Talk, text: str) -> None:
    await talk.say("/tank new cube 30 l fresh")
    await talk.say("/tank new big 100 l fresh")
    await talk.say("cube ph 6.8")
    await talk.say("big ph 7.2")
    await talk.say(text)
    assert "pH 6.5" in await talk.text("ph in cube?")
    assert "pH 7.2" in await talk.text("ph in big?")


@pytest.mark.parametrize(
    "line", ["nitrate: 30 (sorry, wrong)", "nitrate 30 (typo)", "nitrat 30 (falsch, sorry)"]
)
async def test_what_is_called_wrong_in_one_breath_is_not_stored(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 300 l fresh")
    (reply,) = await talk.say(line)
    assert "which you say is wrong. What is the right number of nitrate?" in reply.text
    assert not reply.buttons
    (asked,) = await talk.say("20")
    assert "Did you mean nitrate 20?" in asked.text


async def test_what_stands_beside_it_is_kept(talk: Talk) -> None:
    await talk.say("/tank new Fern 300 l fresh")
    kept, asked = await talk.say("kh 4, nitrate 30 (sorry, wrong), ph 7")
    assert [each["analyte"] for each in kept.facts["values"]] == ["kh", "ph"]
    assert "nitrate 30" in asked.text


@pytest.mark.parametrize("line", ["nitrate 30 (lol)", "nitrate 30 (correction)"])
async def test_other_brackets_call_nothing_wrong(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 300 l fresh")
    assert "you say is wrong" not in await talk.text(line)


@pytest.mark.parametrize("line", ["closer to 7.2", "its closer to 7.2", "more like 7.2"])
async def test_nearly_so_much_is_put_right_as_about_that(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 300 l fresh")
    await talk.say("ph 7")
    (reply,) = await talk.say(line)
    assert reply.text.startswith("Corrected: pH about 7.2")
