"""What a verdict must not pass over: traces of poison, leaps over a change, deaths, an old KH."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def told(talk: Talk, *texts: str) -> str:
    """The answer to the last of several messages."""
    for text in texts[:-1]:
        await talk.say(text)
    return await talk.text(texts[-1])


@pytest.fixture
async def neons(talk: Talk) -> Talk:
    await told(talk, "/tank new Fern 120 l fresh", "added 10 neons")
    return talk


@pytest.mark.parametrize("asked", ["bad?", "hows it", "all good?", "is my water ok", "alles gut?"])
async def test_ammonia_that_a_kit_sees_is_never_well(neons: Talk, asked: str) -> None:
    await told(neons, "ph 6.9 kh 4 no2 0", "changed 30%")
    await neons.wait(days=1)
    said = await told(neons, "nh4 0.2", asked)
    assert "should be 0" in said
    assert "Change nothing" not in said


async def test_ammonia_that_rose_from_0_is_named_so(neons: Talk) -> None:
    said = await told(neons, "ammonia 0", "nh4 0.2 ph 6.9")
    assert "rose from 0" in said
    assert "rose from 0" not in await told(neons, "nh4 0.3", "bad?")


async def test_a_trace_of_nitrite_is_never_well(neons: Talk) -> None:
    await neons.say("ammonia 0 nitrite 0 ph 7 kh 4")
    await neons.wait(hours=1)
    said = await told(neons, "nitrite 0.05 as no2", "all good?")
    assert "rose from 0" in said
    assert "Change nothing" not in said


async def test_warmth_after_a_broken_heater_comes_back_slowly(talk: Talk) -> None:
    """1 °C an hour, common practice."""
    await told(talk, "/tank new Fern 100 l fresh", "heater broke its 19 degrees", "temp 23")
    assert "faster than the 1 °C an hour" in await talk.text("too fast?")


async def test_warmth_that_comes_back_slowly_is_well(talk: Talk) -> None:
    await told(talk, "/tank new Fern 100 l fresh", "heater broke its 19 degrees")
    await talk.wait(hours=3)
    assert "faster than" not in await talk.text("temp 22")


async def test_a_ph_that_fell_is_held_against_the_kh_of_the_day_before(talk: Talk) -> None:
    """3 · 5 · 10^0.8 is 95 mg/L; 104 by the constants."""
    await told(talk, "/tank new Fern 60 l fresh", "kh 5")
    await talk.wait(days=1)
    said = await told(talk, "ph dropped to 6.2", "should i worry")
    assert "104 mg/L" in said
    assert "Retest KH" in said


@pytest.mark.parametrize(
    ("kind", "before", "changed", "after"),
    [
        ("marine", "sal 35 ca 410", "changed 25 l salt water", "sal 1.024"),
        ("fresh", "gh 8 kh 5", "changed 10%", "gh 14"),
        ("fresh", "kh 5", "changed 10%", "kh 12"),
        ("fresh", "no3 10", "changed 20%", "no3 80"),
        ("fresh", "temp 25", "changed 10%", "temp 20"),
    ],
)
async def test_a_change_does_not_hide_what_it_cannot_explain(
    talk: Talk, kind: str, before: str, changed: str, after: str
) -> None:
    await told(talk, f"/tank new Fern 250 l {kind}", before, changed)
    await talk.wait(hours=1)
    assert "more than what was changed can explain" in await talk.text(after)
    assert "more than what was changed can explain" in await talk.text("hows that")


@pytest.mark.parametrize(
    ("before", "changed", "after"),
    [
        ("gh 14", "changed 50%", "gh 8"),
        ("no3 40", "changed 50%", "no3 20"),
        ("temp 25", "changed 50%", "temp 21"),
        ("gh 8", "changed some water", "gh 14"),
    ],
)
async def test_what_a_change_may_have_done_is_no_leap(
    talk: Talk, before: str, changed: str, after: str
) -> None:
    await told(talk, "/tank new Fern 250 l fresh", before, changed)
    await talk.wait(hours=1)
    assert "went from" not in await talk.text(after)


@pytest.mark.parametrize("asked", ["all good?", "how is fern", "bad?"])
async def test_a_death_is_named_until_all_was_measured(neons: Talk, asked: str) -> None:
    await neons.say("one died")
    await neons.wait(hours=1)
    said = await told(neons, "temp 23", asked)
    assert "lost 1 of late" in said
    assert "Test ammonia, nitrite and pH now" in said
    said = await told(neons, "ammonia 0 nitrite 0 ph 7 temp 23", asked)
    assert "of late" not in said


@pytest.mark.parametrize("asked", ["last kh values", "kh?", "and kh?"])
async def test_who_asks_for_a_value_gets_it_first_and_no_verdict(talk: Talk, asked: str) -> None:
    said = await told(talk, "/tank new Fern 120 l fresh", "kh 4 ph 7", "kh was 5 sorry", asked)
    assert said.startswith("Fern: KH 5")
    assert "Change nothing" not in said
    assert "within the limits" not in said


@pytest.mark.parametrize("dismay", ["mince", "oops", "oh no", "mist", "oj"])
@pytest.mark.parametrize("deed", ["i cleaned the filter with tap water", "added 20 g baking soda"])
async def test_dismay_after_a_bad_deed_repeats_what_to_do(
    neons: Talk, deed: str, dismay: str
) -> None:
    await told(neons, "no2 0 nh3 0", deed)
    said = await neons.text(dismay)
    assert "No harm" not in said
    assert "est ammonia" in said or "Stop dosing" in said
    assert "undo" in said


async def test_dismay_after_a_mere_reading_is_small_talk(neons: Talk) -> None:
    assert "No harm" in await told(neons, "no2 0 nh3 0", "oops")


async def test_after_too_much_no_more_by_a_reading_that_does_not_show_it(talk: Talk) -> None:
    """20 g of sodium bicarbonate in 250 L are 2.7 °dH: 84 g/mol, so that 7.2 becomes 9.9."""
    await told(
        talk, "/tank new Fern 250 l marine", "alk 7.2", "want alk 8.5", "added 20g baking soda"
    )
    await talk.wait(days=1)
    await talk.say("alk 7.8")
    (reply,) = await talk.say("dose kh 8.5")
    assert reply.facts["refused"] == "unlike_dose"
    assert "should be about 9.9" in reply.text
    assert "grams" not in reply.facts
    await talk.wait(hours=1)
    await talk.say("alk 7.8")
    assert "unlike_dose" not in str(await talk.facts("dose kh 8.5"))


async def test_a_part_that_shows_is_followed_by_the_next(talk: Talk) -> None:
    await told(talk, "/tank new Fern 250 l marine", "alk 7.2 ph 8.1 temp 25 ammonia 0")
    await told(talk, "dose kh 8.5", "added 5 g baking soda")
    await talk.wait(days=1)
    await talk.say("alk 7.6 ph 8.1 temp 25 ammonia 0")
    assert "grams" in await talk.facts("dose kh 8.5")
