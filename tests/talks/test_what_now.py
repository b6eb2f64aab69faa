"""``what now``: what kills first is said first, whether it was measured, logged or only told."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def _kept(talk: Talk, told: str, *, kind: str = "fresh", water: str) -> None:
    await talk.say(f"/tank new Fern 100 l {kind}")
    await talk.say(f"fern has {told}")
    await talk.say("yes")
    await talk.wait(hours=1)
    await talk.say(water)


@pytest.mark.parametrize(
    ("told", "kind", "water", "danger"),
    [
        ("6 discus", "fresh", "ph 6.8 kh 3 temp 36 ammonia 0.5 nitrite 0", "heater_hot"),
        ("6 discus", "fresh", "ph 6.8 kh 3 temp 18", "heater_cold"),
        ("2 clownfish", "marine", "salinity 35 ph 8.2 kh 2 temp 17", "heater_cold"),
        ("10 guppies", "fresh", "ph 9.8 kh 8 temp 25 ammonia 0", "ph_high"),
        ("10 guppies", "fresh", "ph 4.5 kh 0 temp 25 ammonia 0", "ph_crash"),
        ("20 cherry shrimp", "fresh", "ph 7.4 kh 4 temp 23 copper 0.05", "copper"),
    ],
)
async def test_what_kills_first_goes_before_kh(
    talk: Talk, told: str, kind: str, water: str, danger: str
) -> None:
    await _kept(talk, told, kind=kind, water=water)
    assert "what now" in [button.label for reply in talk.last for button in reply.buttons]
    (reply,) = await talk.say("what now")
    assert reply.facts["emergency"] == danger
    assert "dose kh" not in reply.lines[0].text or danger == "ph_crash"


async def test_copper_is_named_and_the_new_water_is_free_of_it(talk: Talk) -> None:
    await _kept(talk, "20 cherry shrimp", water="ph 7.4 kh 4 gh 8 temp 23 copper 0.05")
    (reply,) = await talk.say("what now")
    assert "Copper 0.05 mg/L" in reply.lines[0].text
    assert reply.facts["copper"] == pytest.approx(0.05)
    assert "reads 0 copper" in reply.text


async def test_a_change_with_chlorine_on_record_is_the_first_suspect(talk: Talk) -> None:
    await _kept(talk, "12 guppies", water="ph 7.2 kh 5 gh 8 temp 25 ammonia 0 nitrite 0")
    await talk.say("tap ph 7.6 kh 7 gh 9 temp 15 chlorine 2")
    await talk.say("changed 50% with tap")
    await talk.wait(hours=1)
    (reply,) = await talk.say("fish gasping")
    assert "Air now" in reply.lines[0].text
    assert "You changed 50 %" in reply.lines[1].text
    assert "chlorine 2 mg/L" in reply.lines[1].text
    assert reply.facts["changed"] == {"share": 0.5, "chlorine": 2.0}
    (again,) = await talk.say("what now")
    assert again.facts["emergency"] == "gasping"
    await talk.wait(hours=30)
    assert "emergency" not in (await talk.say("what now"))[0].facts


async def test_pure_water_put_in_is_named_with_the_minerals_that_left(talk: Talk) -> None:
    await _kept(talk, "20 cherry shrimp", water="ph 7.4 kh 4 gh 8 temp 23 ammonia 0 nitrite 0")
    await talk.say("changed 80% with ro")
    (reply,) = await talk.say("shrimp lie on their side")
    assert "with pure water" in reply.text
    assert "GH by 2 °dH a day" in reply.text


async def test_deaths_of_late_leave_no_false_calm(talk: Talk) -> None:
    await _kept(talk, "10 guppies", water="ph 7.2 kh 5 temp 25 ammonia 0 nitrite 0")
    await talk.say("5 guppies died")
    (reply,) = await talk.say("what now")
    assert reply.facts["emergency"] == "general"
    assert "Animals died" in reply.text
    await talk.wait(days=2, hours=1)
    assert "Animals died" not in await talk.text("what now")


async def test_an_accident_told_in_words_is_remembered(talk: Talk) -> None:
    await _kept(talk, "10 guppies", water="ph 7 kh 4 temp 25 ammonia 0 nitrite 0")
    assert (await talk.facts("i poured vinegar in the tank"))["emergency"] == "overdose"
    assert (await talk.facts("what now"))["emergency"] == "overdose"


async def test_what_was_put_in_by_mistake_is_weighed(talk: Talk) -> None:
    await _kept(talk, "10 guppies", water="ph 7 kh 4 temp 25 ammonia 0 nitrite 0")
    stored, steps = await talk.say("i put 100 g baking soda in by mistake")
    assert stored.facts["events"][0]["substance"] == "sodium bicarbonate"
    assert "Too much for one day" in stored.text
    assert steps.facts["emergency"] == "overdose"


@pytest.mark.parametrize(
    "text", ["left: what now", "what now left", "Left, what should i do", "what now with left?"]
)
async def test_a_tank_may_be_named(talk: Talk, text: str) -> None:
    await talk.say("/tank new Left 100 l fresh")
    await talk.say("/tank new Right 100 l marine")
    await talk.say("left: ammonia 2 ph 8.2 temp 26 kh 10")
    await talk.say("right: salinity 35")
    (reply,) = await talk.say(text)
    assert reply.facts["tank"] == "Left"
    assert reply.facts["emergency"] == "ammonia"


async def test_gasping_in_no_named_tank_asks_for_the_poisoned_one(talk: Talk) -> None:
    await talk.say("/tank new Left 100 l fresh")
    await talk.say("/tank new Right 100 l marine")
    await talk.say("left: ammonia 2 ph 8.2 temp 26 kh 10")
    await talk.say("right: salinity 35")
    (reply,) = await talk.say("fish gasping")
    assert "Air now" in reply.lines[0].text
    assert "Left" in reply.lines[1].text
    assert "ammonia 2 mg/L" in reply.lines[1].text


async def test_deaths_after_newcomers_speak_of_illness_not_of_kh(talk: Talk) -> None:
    await _kept(talk, "20 neon tetras", water="ph 6.5 kh 2 gh 4 temp 25 ammonia 0 nitrite 0")
    assert "dose kh" not in talk.last[0].text
    await talk.wait(days=2)
    await talk.say("added 4 neon tetras")
    await talk.wait(days=2)
    await talk.say("3 neon tetras died")
    await talk.say("ammonia 0 nitrite 0 ph 6.5 temp 25 kh 2")
    for text in ("what now", "why do they die"):
        (reply,) = await talk.say(text)
        assert "an illness may have come with them" in reply.text
        assert "dose kh" not in reply.text


async def test_a_cold_pond_is_not_warmed(talk: Talk) -> None:
    await _kept(talk, "8 koi", kind="pond", water="temp 1 ph 7.2 kh 6 ammonia 0 nitrite 0")
    told = talk.last[0].text
    assert "do not warm it" in told
    assert "1 °C an hour" not in told
    assert "heater" not in await talk.text("what now")


async def test_who_needs_air_reads_that_first(talk: Talk) -> None:
    await _kept(talk, "6 guppies", water="ph 7 kh 4 temp 25 ammonia 0 nitrite 0")
    first, *_stored = await talk.say("3 guppies dead others gasping")
    assert first.facts["emergency"] == "gasping"


async def test_a_logged_change_is_named_where_animals_died_after_it(talk: Talk) -> None:
    await _kept(talk, "6 guppies", water="ph 7 kh 4 temp 25 ammonia 0 nitrite 0")
    await talk.say("changed 50%")
    await talk.wait(hours=2)
    assert "You changed 50 % within a day" in await talk.text("2 guppies died")
