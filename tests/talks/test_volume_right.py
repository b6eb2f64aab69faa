"""How much a tank holds is put right where its number is told not to be, asked where it is open."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def with_tank(talk: Talk, volume: str, *lines: str) -> None:
    await talk.say(f"/tank new Fern {volume} fresh")
    for line in lines:
        await talk.say(line)


@pytest.mark.parametrize(
    "text",
    [
        "its actually 400 not 4000",
        "the tank is actually 400 l, not 4000",
        "fern is 400 not 4000",
        "es sind eigentlich 400, nicht 4000",
        "en fait c'est 400 pas 4000",
        "sono 400 non 4000",
        "actually its a 400 l tank sorry not 4000",
        "its 400 not 4000 by the way",
        "oops 400 l, sorry, not 4000",
    ],
)
async def test_a_volume_with_the_wrong_number_is_put_right(talk: Talk, text: str) -> None:
    await with_tank(talk, "4000 l", "added 12 kg salt")
    first = (await talk.say(text))[0]
    assert first.facts["volume_l"] == 400.0
    assert "reckoned for 4000 L do not hold" in first.text
    assert "12000 g" in await talk.text("how much salt did i add this week")


async def test_a_dose_with_the_wrong_number_goes_before_the_volume(talk: Talk) -> None:
    await with_tank(talk, "100 l", "added 100 g salt")
    assert "dosed 10 g" in await talk.text("its 10 not 100")


async def test_the_tank_is_meant_where_it_is_named(talk: Talk) -> None:
    await with_tank(talk, "100 l", "added 100 g salt")
    assert (await talk.say("the tank is 80 not 100"))[0].facts["volume_l"] == 80.0


async def test_a_number_that_nothing_has_puts_nothing_right(talk: Talk) -> None:
    await with_tank(talk, "100 l", "nitrate 40")
    assert "nothing is put right" in await talk.text("its actually 400 not 4000")


async def test_one_reading_of_several_is_put_right(talk: Talk) -> None:
    await with_tank(talk, "100 l", "kh 5 ph 7")
    assert (await talk.text("its actually 6 not 5")).startswith("Corrected: KH 6")


async def test_a_plan_is_told_anew_for_the_volume_meant(talk: Talk) -> None:
    await with_tank(talk, "100 l", "kh 3 ph 7 ammonia 0", "dose kh 5")
    changed, anew = await talk.say("its actually 80 not 100")
    assert "reckoned for 100 L do not hold" in changed.text
    assert anew.facts["volume_l"] == 80.0


async def test_another_wish_than_the_plans_is_no_dose(talk: Talk) -> None:
    await with_tank(talk, "100 l", "kh 3 ph 7 ammonia 0", "dose kh 6")
    assert (await talk.say("its 5 not 6"))[0].facts["to"] == 5.0


async def test_gallons_are_put_right_and_taken_back(talk: Talk) -> None:
    await with_tank(talk, "100 l")
    await talk.say("tank is 23 gallons")
    assert (await talk.facts("no its 26 gallons"))["volume_l"] == pytest.approx(98.42, abs=0.01)
    assert (await talk.facts("undo"))["volume_l"] == pytest.approx(87.06, abs=0.01)


async def test_a_resize_is_undone_by_its_button_once(talk: Talk) -> None:
    await with_tank(talk, "100 l")
    (resized,) = await talk.say("the tank is 40 l")
    assert (await talk.press(1, resized))[0].facts["volume_l"] == 100.0
    assert "settled already" in (await talk.press(1, resized))[0].text


async def test_nothing_is_stored_of_less_than_nothing(talk: Talk) -> None:
    await with_tank(talk, "100 l")
    assert "less than nothing" in await talk.text("tank is -5 l")
    assert (await talk.facts("/tank fern"))["volume_l"] == 100.0


@pytest.mark.parametrize(
    ("text", "volume"),
    [
        ("there's only 40 l in it at the moment", 40.0),
        ("es sind momentan nur 40 l", 40.0),
        ("its half full though", 50.0),
        ("das Becken ist nur halb voll", 50.0),
        ("the tank is only half full right now", 50.0),
        ("tank is half drained", 50.0),
        ("there is only 40 litres in it atm", 40.0),
        ("only 60 l left in it", 60.0),
        ("i drained it to 40 l", 40.0),
        ("das Becken ist nur zu drei Viertel voll", 75.0),
    ],
)
async def test_what_is_in_it_now_is_asked_and_settled_before_a_plan(
    talk: Talk, text: str, volume: float
) -> None:
    await with_tank(talk, "100 l", "kh 3 ph 7 ammonia 0")
    (asked,) = await talk.say(text)
    assert asked.facts["told_l"] == volume
    assert [button.meaning for button in asked.buttons] == ["yes", "no"]
    (first,) = await talk.say("dose kh 5")
    assert first.facts["volume_l"] == volume
    assert "grams" not in first.facts


async def test_once_answered_the_plan_is_for_what_is_in_it(talk: Talk) -> None:
    await with_tank(talk, "100 l", "kh 3 ph 7 ammonia 0", "its half full though")
    await talk.say("yes")
    (plan,) = await talk.say("dose kh 5")
    assert plan.facts["volume_l"] == 50.0


@pytest.mark.parametrize("text", ["tank heute 30 l", "tank today 30 l"])
async def test_a_day_is_no_name_and_its_volume_is_asked(talk: Talk, text: str) -> None:
    await with_tank(talk, "100 l")
    assert "Does Fern hold 30 L" in await talk.text(text)
    assert (await talk.facts("/tank fern"))["volume_l"] == 100.0


@pytest.mark.parametrize("text", ["is it half full?", "half full of algae", "is it 80 not 100?"])
async def test_what_is_asked_changes_no_volume(talk: Talk, text: str) -> None:
    await with_tank(talk, "100 l")
    await talk.say(text)
    assert (await talk.facts("/tank fern"))["volume_l"] == 100.0


async def test_a_tank_called_by_a_number_is_named(talk: Talk) -> None:
    await talk.say("/tank new one 100 l fresh")
    await talk.say("/tank new two 60 l fresh")
    (changed,) = await talk.say("one is actually 80 l")
    assert (changed.facts["tank"], changed.facts["volume_l"]) == ("one", 80.0)


@pytest.mark.parametrize(
    ("text", "volume"),
    [
        ("its really 60 l filled", 60.0),
        ("actual water volume is closer to 70 l", 70.0),
        ("il ne reste que 50 l", 50.0),
        ("quedan 50 l", 50.0),
    ],
)
async def test_what_it_really_holds_is_asked_and_settled_before_a_plan(
    talk: Talk, text: str, volume: float
) -> None:
    await with_tank(talk, "100 l", "kh 3 ph 7 ammonia 0")
    (asked,) = await talk.say(text)
    assert [button.meaning for button in asked.buttons] == ["yes", "no"]
    (first,) = await talk.say("dose kh 5")
    assert first.facts["volume_l"] == volume
    assert "grams" not in first.facts
    assert "Nothing is waiting" in await talk.text("done")
    *_, plan = await talk.press(1, first)
    assert plan.facts["volume_l"] == volume


async def test_no_other_volume_gives_the_plan_for_the_one_on_record(talk: Talk) -> None:
    await with_tank(talk, "100 l", "kh 3 ph 7 ammonia 0", "its 60 l not 100 i measured")
    await talk.say("dose kh 5")
    *_, plan = await talk.say("no")
    assert plan.facts["volume_l"] == 100.0
    assert "logged 3 g" in await talk.text("done")


NOT_UNDERSTOOD = [
    "id say 70 l once you take off the stones", "100 is the label, really 75", "i took out 30 l",
    "drained half of it",
]  # fmt: skip


@pytest.mark.parametrize("text", NOT_UNDERSTOOD)
@pytest.mark.parametrize("between", [(), ("kh 3.2",), ("zzz blah blubb xx",)])
async def test_no_plan_while_another_volume_may_be_told(
    talk: Talk, text: str, between: tuple[str, ...]
) -> None:
    await with_tank(talk, "100 l", "kh 3 ph 7 ammonia 0", text, *between)
    (first,) = await talk.say("dose kh 5")
    assert "grams" not in first.facts
    assert f"I did not understand “{text}”" in first.text
    *_, plan = await talk.press(1)
    assert plan.facts["volume_l"] == 100.0


@pytest.mark.parametrize("settled", [("fern is 70 l",), ("there are only 70 l in it", "no")])
async def test_once_the_volume_is_told_a_dose_says_nothing_of_it(
    talk: Talk, settled: tuple[str, ...]
) -> None:
    await with_tank(talk, "100 l", "kh 3 ph 7 ammonia 0", NOT_UNDERSTOOD[0], *settled)
    assert len(await talk.say("dose kh 5")) == 1


@pytest.mark.parametrize(
    "text",
    ["the fish eat 5 flakes", "changed 20 l with weird stuff", "is it 70 l or what do u say"],
)
async def test_other_talk_leaves_a_dose_as_it_is(talk: Talk, text: str) -> None:
    await with_tank(talk, "100 l", "kh 3 ph 7 ammonia 0", text)
    assert len(await talk.say("dose kh 5")) == 1


async def test_a_volume_told_behind_wait_is_asked_about(talk: Talk) -> None:
    await with_tank(talk, "300 l", "kh 4 ammonia 0")
    (asked,) = await talk.say("wait its only 120 litres")
    assert "120 L" in asked.text
    assert asked.buttons


@pytest.mark.parametrize(
    ("text", "volume"),
    [("oh sorry its 54 gallons", 204.4), ("hmm its 150 l actually, sorry", 150.0)],
)
async def test_with_words_of_regret_around_it_the_plan_is_anew(
    talk: Talk, text: str, volume: float
) -> None:
    await with_tank(talk, "200 l", "kh 3 ph 7 ammonia 0")
    await talk.say("dose kh 5")
    *_, plan = await talk.say(text)
    assert plan.facts["volume_l"] == pytest.approx(volume, abs=0.1)
    assert plan.facts["parts"]


@pytest.mark.parametrize(
    ("text", "volume"),
    [
        ("sorry 78 f, its 60 l not 200", 60.0),
        ("actually no 54 L i looked at the sticker", 54.0),
    ],
)
async def test_a_volume_among_words_that_nobody_knows_is_asked(
    talk: Talk, text: str, volume: float
) -> None:
    await with_tank(talk, "200 l", "kh 3 ph 7 ammonia 0")
    *_, asked = await talk.say(text)
    assert asked.facts["volume_l"] == volume
    assert "before you have answered" in (await talk.say("dose kh 5"))[0].text
