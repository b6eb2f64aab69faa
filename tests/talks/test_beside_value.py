"""What stands beside a value is answered too; a dose of one amount or another is asked about."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    return talk


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("no2 1, next?", "Stop feeding"),
        ("no2 1 und jetzt?", "Stop feeding"),
        ("no2 1, et maintenant?", "Stop feeding"),
        ("kh 5 ph 6.4 drop checker yellow", "Yellow means too much CO2"),
        ("kh 5, co2 dauertest grün", "Green means about 30 mg/L"),
    ],
)
async def test_what_follows_a_value_is_answered(fern: Talk, line: str, says: str) -> None:
    replies = await fern.say(line)
    assert "Fern: " in replies[0].text
    assert any(says in reply.text for reply in replies[1:])


async def test_with_ammonia_a_yellow_checker_calls_for_no_air(fern: Talk) -> None:
    replies = await fern.say("amm 1 kh 5 ph 7 drop checker yellow")
    assert not any("give more air now" in reply.text for reply in replies)


async def test_of_two_amounts_none_is_kept_until_it_is_told_which(fern: Talk) -> None:
    (asked,) = await fern.say("dosed 3 g baking soda… or was it 5")
    assert "Not stored" in asked.text
    assert "dosed 3 g sodium bicarbonate or dosed 5 g" in asked.text
    (kept,) = await fern.press(2, asked)
    assert "Fern: dosed 5 g sodium bicarbonate" in kept.text


async def test_a_room_may_be_a_tank_and_its_tap_is_none(talk: Talk) -> None:
    assert "Added Kitchen" in await talk.text("tank Kitchen 54 l")
    assert "Kitchen: KH 5" in await talk.text("kitchen kh 5")
    assert "Not stored" in await talk.text("kitchen tap kh 8")
    assert "Not stored" in await talk.text("kitchen sink kh 8")


async def test_a_strip_that_was_dipped_tells_its_values(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    said = await talk.text("dipped a strip: no3 25 no2 0 gh 8 kh 6 ph 7.2 cl 0")
    assert "KH 6" in said
    assert "pH 7.2" in said
    assert "chlorine 0 or chloride 0" in said


async def test_all_that_is_clear_has_one_button(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    asked = await talk.say("bloop strip: no3 25 no2 0 gh 8 kh 6 ph 7.2 cl 0")
    assert asked[0].buttons[0].label == "nitrate 25, nitrite 0, GH 8, KH 6, pH 7.2"
    assert "KH 6" in (await talk.press(1, asked[0]))[0].text


async def test_a_hardness_is_guessed_in_the_unit_told_before(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    assert "KH 8.5 or KH 85 ppm" in await talk.text("kh 85")
    await talk.say("kh 60 ppm")
    assert "KH 85 ppm or KH 8.5" in await talk.text("kh 85")


@pytest.mark.parametrize(
    ("told", "kept"),
    [
        ("chlorine looks a tiny bit pink maybe 0.5", "free chlorine 0.5 mg/L"),
        ("nitrate is orange, about 20", "nitrate 20 mg/L"),
        ("ammonia looks slightly green so 0.25", "ammonia 0.25 mg/L"),
    ],
)
async def test_a_number_read_off_a_colour_is_that_number(fern: Talk, told: str, kept: str) -> None:
    assert kept in await fern.text(told)


async def test_what_was_read_off_a_colour_can_be_asked_about(fern: Talk) -> None:
    await fern.say("chlorine looks a tiny bit pink maybe 0.5")
    assert "burns gills" in await fern.text("is 0.5 bad")


async def test_a_colour_without_a_number_keeps_none(fern: Talk) -> None:
    assert "mg/L" not in (await fern.text("chlorine is pink")).partition("\n")[0]
