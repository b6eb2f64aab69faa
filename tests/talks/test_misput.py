"""A dose that went into another tank counts where it is, and nowhere else."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

NOT_FERN = "Nothing of it is counted for Fern: its plan stands as it was."


@pytest.fixture
async def planned(talk: Talk) -> Talk:
    """Two tanks, and a plan for the first of them: 2.7 g a part."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/tank new Quarry 40 l fresh")
    await talk.say("quarry: kh 3 ph 6.8 ammonia 0 temp 24")
    await talk.say("fern: kh 3 ph 6.8 ammonia 0 temp 24")
    await talk.say("dose kh 5")
    return talk


@pytest.mark.parametrize(
    "text",
    [
        "gave ferns dose to quarry by mistake",
        "i put it in the wrong tank",
        "i put it in quarry",
        "the dose went into quarry",
        "ich hab die Dosis von Fern in Quarry gekippt",
        "je l'ai mis dans le mauvais bac",
        "eché la dosis de Fern en Quarry",
        "coloquei a dose do Fern no Quarry",
        "ho messo la dose di Fern in Quarry",
        "ik heb het in de verkeerde bak gedaan",
        "wsypałem dawkę Fern do Quarry",
        "jag hällde Ferns dos i Quarry",
    ],
)
async def test_a_part_is_on_record_and_judged_where_it_went(planned: Talk, text: str) -> None:
    got, not_there = await planned.say(text)
    assert got.text.startswith("Quarry: logged 2.7 g sodium bicarbonate.")
    assert "Too much for one day: 2.7 g" in got.text  # in 40 l: KH +2.2
    assert not_there.text == NOT_FERN
    assert (await planned.text("dose kh 5")).startswith("Quarry: No second dose yet")
    (of_fern,) = await planned.say("fern: dose kh 5")
    assert len(of_fern.facts["parts"]) == 2  # its own are all to come


async def test_a_part_that_is_on_record_is_moved_and_may_be_logged_again(planned: Talk) -> None:
    await planned.say("log it")
    moved, not_there = await planned.say("oops that went into quarry")
    assert moved.text.startswith("Moved to Quarry: Quarry: dosed 2.7 g sodium bicarbonate.")
    assert "Too much for one day: 2.7 g" in moved.text
    assert not_there.text == NOT_FERN
    again = await planned.text("i put it in fern")
    assert again.startswith("Fern: logged 2.7 g sodium bicarbonate.")


async def test_the_button_logs_a_part_whose_first_one_was_moved(planned: Talk) -> None:
    (plan,) = await planned.say("dose kh 5")
    await planned.press(1, plan)
    await planned.say("that was quarry")
    assert (await planned.press(1, plan))[0].text.startswith("Fern: logged 2.7 g")
    assert (await planned.press(1, plan))[0].text == "That is settled already; nothing was changed."


async def test_of_three_tanks_the_one_is_asked_for(talk: Talk) -> None:
    for name in ("Fern", "Quarry", "Moss"):
        await talk.say(f"/tank new {name} 90 l fresh")
    await talk.say("fern: gh 3 kh 4 ph 6.8 ammonia 0 temp 24")
    await talk.say("dose gh 7")
    (asked,) = await talk.say("i put it in the wrong tank")
    assert asked.text.startswith("Which tank got it: Quarry, Moss?")
    assert [button.label for button in asked.buttons] == ["Quarry", "Moss"]
    put_in = await talk.text("moss")
    assert put_in.startswith("Moss: dosed 3.5 g calcium chloride dihydrate; dosed 2 g magnesium")


async def test_so_much_of_a_salt_is_put_on_record_where_it_went(planned: Talk) -> None:
    got, not_there = await planned.say("put 5 g baking soda meant for fern into quarry")
    assert got.text.startswith("Quarry: logged 5 g sodium bicarbonate.")
    assert "Too much for one day" in got.text
    assert not_there.text == "Nothing of it is counted for Fern."


async def test_a_dose_that_nobody_knows_is_asked_for(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/tank new Quarry 40 l fresh")
    asked = await talk.text("gave ferns dose to quarry")
    assert asked.startswith("How much of what went into Quarry?")
    assert "Nothing is stored yet" in asked


async def test_its_own_tank_gets_a_part_of_its_plan(planned: Talk) -> None:
    assert (await planned.text("i put it in fern")).startswith("Fern: logged 2.7 g")
    assert (await planned.text("what is left")).startswith("1 of 2 parts")


@pytest.mark.parametrize("text", ["it was quarry not fern", "nicht fern, quarry"])
@pytest.mark.parametrize(
    "told", ["fern: kh 5", "changed 30% of fern", "added 6 neon tetras to fern"]
)
async def test_what_is_no_dose_is_moved_by_both_names(planned: Talk, told: str, text: str) -> None:
    await planned.say(told)
    assert (await planned.text(text)).startswith("Moved to Quarry: Quarry: ")


async def test_a_deed_and_its_regret_in_one_message_are_of_the_tank_that_got_it(
    planned: Talk,
) -> None:
    (told, _rest) = await planned.say("ok put it in. oh no wait i put it in quarry!!")
    assert "Quarry: logged 2.7 g" in told.text


async def test_a_dose_that_nobody_planned_holds_more_back_until_it_is_told(talk: Talk) -> None:
    await talk.say("/tank new Fern 300 l fresh")
    await talk.say("/tank new Quarry 40 l fresh")
    await talk.say("quarry: kh 3 ph 6.9")
    (asked,) = await talk.say("ok put it in. oh no wait i put it in quarry!!")
    assert asked.text.startswith("How much of what went into Quarry?")
    advised = " ".join(each.text for each in await talk.say("what do i do"))
    assert "dose kh" not in advised
    (held,) = await talk.say("dose kh 4")
    assert "went into Quarry" in held.text
    assert "g of sodium" not in held.text


async def test_a_regretted_deed_that_was_not_done_is_none(planned: Talk) -> None:
    told = " ".join(e.text for e in await planned.say("dont put it in. i was in quarry"))
    assert "logged" not in told
