"""What was not done is not stored; what was told of it last, and only that, is taken back."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def tank(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 100 l fresh")
    return talk


@pytest.mark.parametrize(
    "text",
    [
        "didnt really dose copper", "really didnt dose the copper", "dont think i dosed the copper",
        "ich hab gar kein kupfer gegeben", "non ho messo rame", "no copper went in",
    ],
)  # fmt: skip
async def test_a_denied_dose_is_not_stored(tank: Talk, text: str) -> None:
    (reply,) = await tank.say(text)
    assert "nothing is stored" in reply.text or "no dose of copper is on record" in reply.text
    assert not reply.buttons
    assert "nothing" in (await tank.text("undo")).casefold()


async def test_nor_a_denied_death_or_change(tank: Talk) -> None:
    for text in ("fish hasnt died", "i didnt actually change the water", "almost dosed 10 g salt"):
        (reply,) = await tank.say(text)
        assert "stored" in reply.text
        assert not reply.buttons
    assert "nothing" in (await tank.text("undo")).casefold()


async def test_a_dose_of_another_substance_stays(tank: Talk) -> None:
    await tank.say("dosed 2 g epsom salt")
    (reply,) = await tank.say("never put the baking soda in")
    assert "no baking soda is on record" in reply.text
    assert "Taken back" in await tank.text("i never put the epsom salt in")


async def test_an_older_dose_is_taken_back_by_a_button(tank: Talk) -> None:
    await tank.say("dosed 10 g salt")
    await tank.say("kh 4")
    (asked,) = await tank.say("never put the salt in")
    assert "On record is Fern: dosed 10 g sodium chloride" in asked.text
    (undone,) = await tank.press(1, asked)
    assert "Taken back: Fern: dosed 10 g sodium chloride" in undone.text


async def test_a_dose_that_was_put_right_is_taken_back_whole(tank: Talk) -> None:
    await tank.say("dosed 3 g baking soda")
    await tank.say("no, 2 g")
    await tank.say("i never put the baking soda in")
    assert "nothing" in (await tank.text("undo")).casefold()


@pytest.mark.parametrize(
    "text", ["nope theyre fine, was just sleeping", "nope theyre fine", "fish hasnt died"]
)
async def test_a_loss_is_taken_back_in_words_and_put_back_by_its_button(
    tank: Talk, text: str
) -> None:
    await tank.say("a fish died")
    (undone,) = await tank.say(text)
    assert "Taken back: Fern: lost fish" in undone.text
    (again, *_more) = await tank.press(1, undone)
    assert again.text.startswith("Fern: lost fish")


async def test_who_may_be_the_others_are_asked_about(tank: Talk) -> None:
    await tank.say("a fish died")
    (asked,) = await tank.say("theyre fine")
    assert "On record is Fern: lost fish" in asked.text
    (undone,) = await tank.press(1, asked)
    assert "Taken back" in undone.text


async def test_only_the_last_that_was_told(tank: Talk) -> None:
    await tank.say("a fish died")
    await tank.say("kh 5")
    assert "Taken back" not in await tank.text("nope theyre fine")


async def test_copper_never_put_in_is_taken_back(talk: Talk) -> None:
    await talk.say("/tank new Shed 100 l fresh")
    await talk.say("dosed copper 2 ml")
    (told,) = await talk.say("i never put the copper in")
    assert "Taken back" in told.text
    (again, *_more) = await talk.press(1, told)
    assert again.text.startswith("Shed: dosed 2 mL copper")


@pytest.mark.parametrize(
    "text", ["no deaths", "no losses today", "keine todesfälle", "geen sterfgevallen"]
)
async def test_no_deaths_is_heard(talk: Talk, text: str) -> None:
    await talk.say("/tank new Shed 100 l fresh")
    (told,) = await talk.say(text)
    assert "no loss" in told.text
    assert not told.facts.get("events")


@pytest.mark.parametrize(
    "text", ["didnt dose salt, kh 5", "salz nicht dosiert, kh 5", "didnt dose salt but kh 5"]
)
async def test_a_reading_behind_what_is_denied_is_kept(talk: Talk, text: str) -> None:
    await talk.say("/tank new Shed 100 l fresh")
    await talk.say("dosed 3 g salt")
    denied, read = await talk.say(text)
    assert "Taken back" in denied.text
    assert read.facts["values"][0]["canonical"] == 5.0


@pytest.mark.parametrize("line", ["never put that in", "didnt dose it", "nie reingetan"])
async def test_a_dose_of_the_day_is_offered_to_be_taken_back(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("added 2 g baking soda")
    await talk.say("how much baking soda to kh 20")
    (asked,) = await talk.say(line)
    assert "nothing is stored" not in asked.text
    assert "dosed 2 g" in asked.text
    (back,) = await talk.press(1, asked)
    assert "Taken back" in back.text
