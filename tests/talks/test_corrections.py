"""Undo, correct, move, edit: the newest truth counts, and history keeps everything."""

from __future__ import annotations

import pytest
from sqlalchemy import func, select

from bot.store.models import ReadingRow
from tests.chat.harness import Talk


async def now_on_record(talk: Talk) -> dict[tuple[str, str], float]:
    """What counts today, by tank and analyte; a second live value of one analyte fails."""
    async with talk.app.database.read() as uow:
        chat = await uow.chats.find(talk.address)
        assert chat is not None
        found: dict[tuple[str, str], float] = {}
        for tank in await uow.tanks.of_chat(chat.id):
            for row in await uow.log.readings(tank.id):
                assert (tank.name, row.what.analyte) not in found
                assert isinstance(row.what.canonical, float | int)
                found[tank.name, row.what.analyte] = row.what.canonical
        return found


async def rows(talk: Talk) -> int:
    async with talk.app.database.read() as uow:
        return int(await uow.session.scalar(select(func.count()).select_from(ReadingRow)) or 0)


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    return talk


async def test_undo_takes_the_newest_back_and_deletes_nothing(fern: Talk) -> None:
    await fern.say("kh 4")
    await fern.say("ph 7.2")
    assert "Taken back" in await fern.text("undo")
    assert await now_on_record(fern) == {("Fern", "kh"): 4}
    assert await rows(fern) == 2
    await fern.say("undo")
    assert await now_on_record(fern) == {}
    assert "nothing to take back" in await fern.text("undo")


async def test_undo_by_button_takes_back_just_that_message_once(fern: Talk) -> None:
    (first,) = await fern.say("kh 4")
    await fern.say("ph 7.2")
    await fern.press(1, first)
    assert await now_on_record(fern) == {("Fern", "ph"): 7.2}
    assert "settled already" in (await fern.press(1, first))[0].text


async def test_no_kh_5_corrects_only_what_it_names(fern: Talk) -> None:
    await fern.say("kh 4 ph 7.2")
    text = await fern.text("no, kh 5")
    assert "Corrected" in text
    assert await now_on_record(fern) == {("Fern", "kh"): 5, ("Fern", "ph"): 7.2}


async def test_undoing_corrections_walks_back_step_by_step(fern: Talk) -> None:
    await fern.say("kh 4")
    await fern.say("no, kh 5")
    await fern.say("no, kh 6")
    for expected in ({("Fern", "kh"): 5}, {("Fern", "kh"): 4}, {}):
        await fern.say("undo")
        assert await now_on_record(fern) == expected


async def test_an_edited_message_replaces_what_it_said(fern: Talk) -> None:
    await fern.say("kh 4 ph 7.2", message_ref="x")
    (reply,) = await fern.say("kh 5", kind="edit", message_ref="x")
    assert "Corrected" in reply.text
    assert await now_on_record(fern) == {("Fern", "kh"): 5}
    await fern.say("kh 6", kind="edit", message_ref="x")
    assert await now_on_record(fern) == {("Fern", "kh"): 6}


async def test_an_edit_that_no_longer_parses_loses_nothing(fern: Talk) -> None:
    await fern.say("kh 4", message_ref="x")
    (reply,) = await fern.say("hello", kind="edit", message_ref="x")
    assert "still counts" in reply.text
    assert await now_on_record(fern) == {("Fern", "kh"): 4}


async def test_an_edit_keeps_the_moment_of_its_message(fern: Talk) -> None:
    await fern.say("kh 4", message_ref="x")
    sent = fern.clock.now()
    await fern.wait(hours=5)
    await fern.say("kh 5", kind="edit", message_ref="x")
    async with fern.app.database.read() as uow:
        (reading,) = await uow.log.readings(1)
    assert reading.at == sent


async def test_a_reply_to_an_older_message_corrects_that_one(fern: Talk) -> None:
    await fern.say("kh 4", message_ref="x")
    await fern.say("ph 7.2")
    await fern.say("kh 5", reply_to="x")
    assert await now_on_record(fern) == {("Fern", "kh"): 5, ("Fern", "ph"): 7.2}


async def test_a_reply_to_our_confirmation_corrects_what_it_confirmed(fern: Talk) -> None:
    await fern.say("kh 4")
    ref = f"r{fern.count}.0"
    await fern.say("ph 7.2")
    await fern.say("kh 5", reply_to=ref)
    assert await now_on_record(fern) == {("Fern", "kh"): 5, ("Fern", "ph"): 7.2}


async def test_that_was_quarry_moves_the_newest(fern: Talk) -> None:
    await fern.say("/tank new Quarry 240 l fresh")
    await fern.say("fern: kh 9")
    assert "Moved to Quarry" in await fern.text("that was quarry")
    assert await now_on_record(fern) == {("Quarry", "kh"): 9}
    await fern.say("undo")
    assert await now_on_record(fern) == {("Fern", "kh"): 9}


async def test_undo_in_a_group_takes_back_ones_own(group: Talk) -> None:
    await group.say("kh 4")
    await group.say("ph 7.2", author_id="ben", author_name="Ben")
    await group.say("undo", addressed=True)
    assert await now_on_record(group) == {("Tank", "ph"): 7.2}


async def test_a_correction_finds_the_message_that_it_is_about(fern: Talk) -> None:
    await fern.say("kh 6")
    await fern.say("ph 7.2")
    assert "was KH 6" in await fern.text("sorry kh 5")
    assert [value["value"] for value in (await fern.facts("history of kh"))["values"]] == [5]
    assert [value["value"] for value in (await fern.facts("history of ph"))["values"]] == [7.2]


async def test_what_nothing_of_late_says_is_told_not_corrected(fern: Talk) -> None:
    await fern.say("gh 9")
    await fern.wait(hours=3)
    assert "Corrected" not in await fern.text("no, gh 10")
    assert "Corrected" not in await fern.text("no, kh 7")
    assert [value["value"] for value in (await fern.facts("history of gh"))["values"]] == [10, 9]


@pytest.mark.parametrize("told", ["-3", "0", "2.5"])
async def test_a_number_that_counts_no_animals_makes_room_for_one(fern: Talk, told: str) -> None:
    assert "How many?" in await fern.text(f"added {told} guppies")
    assert "added 4 guppies" in await fern.text("4")


@pytest.mark.parametrize("word", ["undo", "rückgängig", "annuler", "deshacer"])
async def test_undo_takes_back_the_reminder_that_was_made_last(talk: Talk, word: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("added 3 guppies")
    await talk.say("remind me to test every 7 days at 19:00")
    await talk.say("what is kh")
    assert "guppies" not in await talk.text(word)  # after a question it is asked
    assert (await talk.facts("/remind"))["reminders"]
    assert "guppies" not in await talk.text(word)
    assert not (await talk.facts("/remind")).get("reminders")
    assert "added 3 guppies" in await talk.text(word)


async def test_undo_takes_back_what_was_told_after_a_reminder(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("remind me to test every 7 days at 19:00")
    await talk.say("added 3 guppies")
    assert "added 3 guppies" in await talk.text("undo")
    assert (await talk.facts("/remind"))["reminders"]


async def test_what_is_there_already_is_not_moved_again(talk: Talk) -> None:
    await talk.say("/tank new Moss 100 l fresh")
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("moss: kh 4")
    assert "Moved to Fern" in await talk.text("that was fern")
    assert "It is of Fern already" in await talk.text("wrong tank, fern")
    assert "Moved to Moss" in await talk.text("that was moss")


async def test_a_day_that_there_is_not_is_said_of_the_day(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    for text in ("30 feb kh 4", "30.2. kh 4", "kh 4 at 25:00"):
        assert "that day or time is none" in await talk.text(text)


async def test_a_number_and_the_one_that_it_is_not_correct(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 6 ph 7")
    assert "Corrected: KH 5" in await talk.text("kh was 5 not 6")
    values = (await talk.facts("history of kh"))["values"]
    assert [value["value"] for value in values] == [5]


async def test_that_was_yesterday_moves_the_time_of_what_was_told(fern: Talk) -> None:
    await fern.say("kh 5")
    assert "yesterday 12:00): KH 5" in await fern.text("that was yesterday")
    assert "(2 days ago" not in await fern.text("das war gestern")
    assert "Which tank" in await fern.text("that was tomorrow")
    assert await now_on_record(fern) == {("Fern", "kh"): 5.0}


async def test_a_value_that_should_be_is_put_right_only_when_pressed(fern: Talk) -> None:
    await fern.say("kh 6")
    [asked] = await fern.say("should be kh 8")
    assert [button.label for button in asked.buttons][:2] == ["no, kh 8", "dose kh 8"]
    assert await now_on_record(fern) == {("Fern", "kh"): 6.0}
    await fern.press(1)
    assert await now_on_record(fern) == {("Fern", "kh"): 8.0}


async def test_the_same_as_last_time_is_offered_and_not_stored(fern: Talk) -> None:
    assert "did not find" in await fern.text("fern: same")
    await fern.say("kh 6 ph 7.2")
    before = await rows(fern)
    [asked] = await fern.say("alles wie gehabt")
    assert asked.buttons[0].label == "Fern: kh 6 ph 7.2"
    assert await rows(fern) == before


async def test_a_volume_alone_is_set_only_when_pressed(fern: Talk) -> None:
    [asked] = await fern.say("it's 120 litres")
    assert asked.text == "Does Fern hold 120 L of water?"
    assert "90 L" in await fern.text("/tank fern")
    await fern.say("it's 120 litres")
    await fern.press(1)
    assert "120 L" in await fern.text("/tank fern")
    assert "no tank that I can believe" in await fern.text("90000000 l")


@pytest.mark.parametrize(
    "said",
    [
        "sorry gh not kh",
        "i meant gh",
        "that was gh",
        "gh not kh",
        "not kh, gh",
        "nicht kh, sondern gh",
        "ich meinte gh",
        "gh pas kh",
        "quise decir gh",
        "gh no kh",
        "gh não kh",
        "volevo dire gh",
        "gh niet kh",
        "gh nie kh",
        "jag menade gh",
    ],
)
async def test_a_reading_gets_the_name_that_was_meant(fern: Talk, said: str) -> None:
    await fern.say("kh 5")
    assert "was KH 5" in await fern.text(said)
    assert await now_on_record(fern) == {("Fern", "gh"): 5}
    await fern.say("undo")
    assert await now_on_record(fern) == {("Fern", "kh"): 5}


@pytest.mark.parametrize("said", ["gh not kh?", "no gh", "gh", "gh not kh 5", "gh not ph"])
async def test_what_renames_nothing_leaves_the_reading(fern: Talk, said: str) -> None:
    await fern.say("kh 5")
    assert await fern.text(said)
    assert await now_on_record(fern) == {("Fern", "kh"): 5}


async def test_of_several_readings_the_one_that_it_is_not_is_renamed(fern: Talk) -> None:
    await fern.say("kh 5 ph 7")
    await fern.say("i meant gh")  # which of them is open
    assert await now_on_record(fern) == {("Fern", "kh"): 5, ("Fern", "ph"): 7}
    await fern.say("gh not kh")
    assert await now_on_record(fern) == {("Fern", "gh"): 5, ("Fern", "ph"): 7}
    await fern.say("gh not ph")  # there is one already
    assert await now_on_record(fern) == {("Fern", "gh"): 5, ("Fern", "ph"): 7}


async def test_a_name_that_cannot_have_the_number_is_not_taken(fern: Talk) -> None:
    await fern.say("nitrate 40")
    assert "cannot tell what to put right" in await fern.text("sorry it was nitrite")
    assert await now_on_record(fern) == {("Fern", "nitrate"): 40}


@pytest.mark.parametrize(
    "said",
    [
        "make that 7.4",
        "wait 7.4",
        "hang on, 7.4",
        "mach daraus 7,4",
        "attends, 7,4",
        "espera 7,4",
        "diciamo 7,4",
        "wacht 7,4",
        "niech będzie 7,4",
        "vänta, 7,4",
    ],
)
async def test_a_number_to_have_instead_puts_the_last_one_right(fern: Talk, said: str) -> None:
    await fern.say("ph 7.2")
    assert "was pH 7.2" in await fern.text(said)
    assert await now_on_record(fern) == {("Fern", "ph"): 7.4}


async def test_a_wait_puts_right_what_was_told_and_is_else_no_correction(fern: Talk) -> None:
    await fern.say("nitrate 4")
    assert "was nitrate 4" in await fern.text("wait nitrate is 40 not 4")
    await fern.say("wait 2 days")
    await fern.say("kh 5 sorry 6")
    assert await now_on_record(fern) == {("Fern", "nitrate"): 40, ("Fern", "kh"): 6}


@pytest.mark.parametrize(
    ("done", "line", "percent", "litres"),
    [
        ("changed 25%", "oops that was 60 l", None, 60.0),
        ("changed 25%", "sorry 40 %", 40.0, None),
        ("changed 25%", "no, 30", 30.0, None),
        ("changed another 50 l", "oops that was 60", None, 60.0),
        ("changed 50 l", "no, 70 l", None, 70.0),
        ("50 l gewechselt", "nein, das waren 60 l", None, 60.0),
    ],
)
async def test_the_amount_of_the_last_change_is_put_right_in_its_unit(
    fern: Talk, done: str, line: str, percent: float | None, litres: float | None
) -> None:
    await fern.say("changed 10%")
    await fern.say(done)
    (event,) = (await fern.facts(line))["events"]
    assert (event.get("percent"), event.get("litres")) == (percent, litres)
    assert "changed 10 %" not in await fern.text("undo")  # the one before it was left alone


async def test_an_amount_may_be_put_right_twice(fern: Talk) -> None:
    for line in ("changed 25%", "sorry 60 l"):
        await fern.say(line)
    (event,) = (await fern.facts("no, 70 l"))["events"]
    assert event["litres"] == 70.0


async def test_the_tank_that_was_meant_is_told_in_its_own_words(fern: Talk) -> None:
    await fern.say("/tank new Big 180 l fresh")
    await fern.say("fern kh 4")
    assert "Moved to Big" in await fern.text("i meant the big one")
    assert await now_on_record(fern) == {("Big", "kh"): 4.0}
    await fern.say("sorry for the mess in fern")
    assert await now_on_record(fern) == {("Big", "kh"): 4.0}


async def test_what_stands_already_is_not_put_right_by_a_doubtful_number(fern: Talk) -> None:
    await fern.say("salinity 35 ppt")
    (reply,) = await fern.say("actually its 36 g/l for 35 ppt")
    assert "Corrected" not in reply.text
    assert reply.facts["doubts"][0]["text"] == "36 g/l"


@pytest.mark.parametrize(
    "said",
    [
        "7.4 not 7.2",
        "not 7.2 but 7.4",
        "it was 7.4 not 7.2",
        "7.4 i mean",
        "7,4 nicht 7,2",
        "nicht 7,2 sondern 7,4",
        "7,4 pas 7,2",
        "7,4 no 7,2",
        "7,4 não 7,2",
        "7,4 non 7,2",
        "7,4 niet 7,2",
        "7,4 nie 7,2",
        "7,4 inte 7,2",
    ],
)
async def test_the_number_that_it_is_and_the_one_that_it_is_not(fern: Talk, said: str) -> None:
    await fern.say("ph 7.2")
    assert "was pH 7.2" in await fern.text(said)
    assert await now_on_record(fern) == {("Fern", "ph"): 7.4}


@pytest.mark.parametrize("said", ["7.4 not 7.9", "7.4 not 7.2?", "7.4", "not 7.4", "7.4 or 7.2"])
async def test_numbers_that_put_nothing_right(fern: Talk, said: str) -> None:
    await fern.say("ph 7.2")
    await fern.say(said)
    assert await now_on_record(fern) == {("Fern", "ph"): 7.2}


async def test_a_name_is_put_right_after_something_else_was_said(fern: Talk) -> None:
    await fern.say("kh 5")
    await fern.say("ph 7")
    assert "was KH 5" in await fern.text("sorry gh not kh")
    assert await now_on_record(fern) == {("Fern", "gh"): 5, ("Fern", "ph"): 7}
    await fern.say("no3 10")
    await fern.wait(hours=3)
    assert "Corrected" not in await fern.text("sorry kh not gh")
    assert ("Fern", "gh") in await now_on_record(fern)


@pytest.mark.parametrize(
    ("line", "tank"),
    [
        ("i meant the large one", "Quarry"),
        ("sorry, the other one", "Quarry"),
        ("ich meinte das große", "Quarry"),
        ("non, l'autre", "Quarry"),
        ("no, el otro", "Quarry"),
        ("não, o outro", "Quarry"),
        ("no, l'altro", "Quarry"),
        ("nee, de andere", "Quarry"),
        ("nie, drugi", "Quarry"),
        ("nej, den andra", "Quarry"),
        ("no other", "Fern"),
        ("sorry the big fish died", "Fern"),
    ],
)
async def test_the_tank_that_was_meant_may_be_told_by_its_size(
    fern: Talk, line: str, tank: str
) -> None:
    await fern.say("/tank new Quarry 180 l fresh")
    await fern.say("fern kh 4")
    await fern.say(line)
    assert await now_on_record(fern) == {(tank, "kh"): 4.0}


async def test_of_several_others_the_tank_is_asked_for(fern: Talk) -> None:
    await fern.say("/tank new Quarry 180 l fresh")
    await fern.say("/tank new Lagoon 60 l fresh")
    await fern.say("fern kh 4")
    assert "Which tank" in await fern.text("sorry, the other one")
    await fern.say("sorry, the small one")
    assert await now_on_record(fern) == {("Lagoon", "kh"): 4.0}


async def test_another_amount_of_another_thing_takes_the_place_of_a_dose(fern: Talk) -> None:
    await fern.say("added 1 g baking soda")
    assert "was Fern: dosed 1 g sodium bicarbonate" in await fern.text("no, 3 g epsom")
    told = await fern.text("what did i do today")
    assert "3 g magnesium sulfate" in told
    assert "bicarbonate" not in told


async def test_where_no_dose_was_told_none_is_put_right(fern: Talk) -> None:
    await fern.say("kh 4")
    await fern.say("no, 3 g epsom")
    assert await now_on_record(fern) == {("Fern", "kh"): 4.0}
    assert "epsom" not in await fern.text("what did i do today")


async def test_hardness_in_the_degrees_of_the_other_may_be_either(fern: Talk) -> None:
    await fern.say("kh 5.3 dgh")
    assert await now_on_record(fern) == {}
    assert [each.label for each in fern.last[0].buttons[:2]] == ["KH 5.3 °dH", "GH 5.3 °dH"]
    await fern.press(2)
    assert await now_on_record(fern) == {("Fern", "gh"): 5.3}


@pytest.mark.parametrize(
    "text",
    [
        "actually ammonia was 2 yesterday",
        "sorry ammonia was 2 yesterday",
        "no, ammonia 2 yesterday",
    ],
)
async def test_a_value_of_another_day_leaves_todays(fern: Talk, text: str) -> None:
    await fern.say("ammonia 0 nitrite 0 ph 7")
    assert "Corrected" not in await fern.text(text)
    assert "ammonia 0 mg/L" in await fern.text("ammonia?")
    for _time in range(2):  # asked behind a question, then done
        await fern.say("undo")
    assert await now_on_record(fern) == {
        ("Fern", "ammonia"): 0,
        ("Fern", "nitrite"): 0,
        ("Fern", "ph"): 7,
    }


@pytest.mark.parametrize(
    "text",
    [
        "yesterdays kh in fern was 5 not 6",
        "kh yesterday was 5 not 6",
        "actually kh was 5 yesterday",
        "yesterday's kh was 5 not 6",
    ],
)
async def test_the_entry_of_the_day_named_is_put_right(fern: Talk, text: str) -> None:
    await fern.say("yesterday kh 6")
    await fern.say("kh 4")
    assert (await fern.text(text)).startswith("Corrected: KH 5")
    assert "KH 4" in await fern.text("kh?")
    assert await rows(fern) == 3


async def test_the_same_value_of_another_day_is_moved_there(fern: Talk) -> None:
    await fern.say("kh 4")
    assert "Corrected" in await fern.text("no, kh 4 yesterday")
    assert await now_on_record(fern) == {("Fern", "kh"): 4}


@pytest.mark.parametrize(
    "text",
    ["wrong tank, it was s", "no in s", "wrong tank it was the s one", "no wait that was in s"],
)
async def test_what_was_told_last_is_of_the_tank_named(fern: Talk, text: str) -> None:
    await fern.say("/tank new s 300 l fresh")
    await fern.say("fern: kh 3 ph 7 ammonia 0")
    await fern.say("dosed 5 g baking soda")
    assert (await fern.text(text)).startswith("Moved to s: s: dosed 5 g")


async def test_an_unknown_tank_is_asked_and_what_is_stored_stays(fern: Talk) -> None:
    await fern.say("/tank new Moss 30 l fresh")
    await fern.say("fern: kh 5")
    text = await fern.text("wrong tank, it was the attic")
    assert "Which tank did you mean" in text
    assert await now_on_record(fern) == {("Fern", "kh"): 5}


@pytest.mark.parametrize(
    "text",
    [
        "nitrate should've been 100",
        "should've been nitrate 100 not 10",
        "nitrate should have been 100",
        "nitrat 100 hätte sein sollen",
    ],
)
async def test_what_should_have_been_is_put_right_and_not_wished(fern: Talk, text: str) -> None:
    await fern.say("nitrate 10")
    (corrected,) = await fern.say(text)
    assert corrected.text.startswith("Corrected: nitrate 100")
    assert [button.meaning for button in corrected.buttons] == ["undo"]


@pytest.mark.parametrize("text", ["should nitrate be 40", "should nitrate be 40?"])
async def test_whether_a_value_should_be_so_asks_about_it(fern: Talk, text: str) -> None:
    await fern.say("nitrate 10")
    (answer,) = await fern.say(text)
    assert "nitrate 40" in answer.text
    assert not any("dose" in button.label for button in answer.buttons)
    assert await now_on_record(fern) == {("Fern", "nitrate"): 10}


@pytest.mark.parametrize(
    "text",
    [
        "no that was the old tank",
        "thats from the bucket not the tank",
        "das war das alte Becken",
        "no, the other way round",
    ],
)
async def test_a_reading_that_is_disowned_is_taken_back(fern: Talk, text: str) -> None:
    await fern.say("copper 0.5")
    assert "Taken back" in await fern.text(text)
    assert await now_on_record(fern) == {}


@pytest.mark.parametrize(
    ("told", "text", "moved", "stays"),
    [
        ("cube kh 7.6, ph 7.5", "oops 7.6 was betta", ("Betta", "kh"), ("Cube", "ph")),
        ("cube ph 7.6 kh 4", "the 7.6 was for betta", ("Betta", "ph"), ("Cube", "kh")),
        ("cube ph 7.6 kh 4", "betta was 4", ("Betta", "kh"), ("Cube", "ph")),
        ("cube ph 7.6 kh 4", "die kh war für betta", ("Betta", "kh"), ("Cube", "ph")),
        ("cube nitrate 20 kh 4", "wait nitrate was the tap one", None, ("Cube", "kh")),
    ],
)
async def test_one_value_of_those_just_told_is_of_another_water(
    talk: Talk,
    told: str,
    text: str,
    moved: tuple[str, str] | None,
    stays: tuple[str, str],
) -> None:
    for line in ("/tank new Betta 20 l fresh", "/tank new Cube 60 l fresh", told):
        await talk.say(line)
    before = await now_on_record(talk)
    (reply,) = await talk.say(text)
    assert reply.text.startswith(f"Moved to {moved[0] if moved else 'tap'}")
    held = await now_on_record(talk)
    assert held.keys() == ({moved, stays} if moved else {stays})
    assert held[stays] == before[stays]


async def test_all_just_told_was_of_the_tap(fern: Talk) -> None:
    await fern.say("ammonia 0.5 ph 7")
    assert (await fern.text("das war leitungswasser")).startswith("Moved to tap")
    assert not await now_on_record(fern)


async def test_a_tanks_value_put_right_names_no_other_tanks(fern: Talk) -> None:
    await fern.say("/tank new Cube 60 l fresh")
    await fern.say("fern: ph 7, cube: ph 8")
    (reply,) = await fern.say("no, cube ph was 7.8")
    assert reply.text.startswith("Corrected: pH 7.8 (was pH 8)")


@pytest.mark.parametrize("amended", [(), ("no it was 40",)])
async def test_what_is_meant_by_a_doubted_value_is_of_its_own_tank_and_day(
    fern: Talk, amended: tuple[str, ...]
) -> None:
    await fern.say("/tank new Cube 60 l fresh")
    (_known, asked) = await fern.say("cube nitrtae 20 yesterday, fern kh 4")
    for each in amended:
        (asked,) = await fern.say(each)
    (reply,) = await fern.press(1, asked)
    assert reply.facts["tank"] == "Cube"
    assert "yesterday" in reply.text or "yesterday" in await fern.text("cube nitrate history")
    assert ("Fern", "nitrate") not in await now_on_record(fern)


@pytest.mark.parametrize("text", ["fern kh 4 not 5", "no, kh 4"])
async def test_a_value_put_right_is_of_the_entry_that_tells_it_otherwise(
    fern: Talk, text: str
) -> None:
    await fern.say("kh 4 gh 8")
    await fern.wait(minutes=30)
    await fern.say("kh was 5")
    await fern.say("actually the gh is 9")
    assert "(was KH 5" in await fern.text(text)


@pytest.mark.parametrize("text", ["those were cube", "it was cube", "oops that was from cube"])
async def test_all_just_told_was_of_another_tank(fern: Talk, text: str) -> None:
    await fern.say("/tank new Cube 60 l fresh")
    await fern.say("ph 7.2 kh 4 in fern")
    assert (await fern.text(text)).startswith("Moved to Cube")


async def test_a_value_of_two_tanks_offers_each_by_its_name(fern: Talk) -> None:
    await fern.say("/tank new Cube 60 l fresh")
    (asked,) = await fern.say("fern and cube ph 7")
    assert [each.label for each in asked.buttons[:2]] == ["Fern: ph 7", "Cube: ph 7"]
    (reply,) = await fern.press(1, asked)
    assert reply.facts["tank"] == "Fern"


@pytest.mark.parametrize(
    "text",
    [
        "i swapped ammonia and nitrite",
        "oops, nitrite and ammonia the other way round",
        "Ammonium und Nitrit vertauscht",
        "ammoniaca e nitriti invertiti",
    ],
)
async def test_two_values_swapped_are_exchanged_and_undone(fern: Talk, text: str) -> None:
    await fern.say("ammonia 0.5 nitrite 0 ph 7")
    assert (await fern.text(text)).startswith("Corrected: ")
    told = {name: value for (_tank, name), value in (await now_on_record(fern)).items()}
    assert (told["ammonia"], told["nitrite"], told["ph"]) == (0.0, 0.5, 7.0)
    await fern.say("undo")
    told = {name: value for (_tank, name), value in (await now_on_record(fern)).items()}
    assert (told["ammonia"], told["nitrite"]) == (0.5, 0.0)


async def test_a_swap_of_what_was_not_told_together_stores_nothing(fern: Talk) -> None:
    await fern.say("gh 4")
    before = await now_on_record(fern)
    assert "cannot tell what to put right" in await fern.text("i mixed up gh and kh")
    assert await now_on_record(fern) == before


@pytest.fixture
async def two(talk: Talk) -> Talk:
    """Two tanks, each with its values."""
    await talk.say("/tank new Lounge 180 l fresh")
    await talk.say("/tank new Bedroom 54 l fresh")
    await talk.say("bedroom kh 3, lounge kh 5 ph 7.4")
    return talk


@pytest.mark.parametrize(
    "text",
    [
        "sorry swapped those, bedroom is kh 5 ph 7.4 and lounge kh 3",
        "oops wrong way round: bedroom kh 5, lounge kh 3",
        "mixed them up, lounge is kh 3",
        "i swapped the tanks",
    ],
)
async def test_two_tanks_told_the_wrong_way_round_are_exchanged(two: Talk, text: str) -> None:
    replies = await two.say(text)
    assert {each.text.partition(":")[0] for each in replies} == {"Lounge", "Bedroom"}
    assert await now_on_record(two) == {
        ("Bedroom", "kh"): 5.0,
        ("Bedroom", "ph"): 7.4,
        ("Lounge", "kh"): 3.0,
    }


async def test_what_is_told_anew_beside_swapped_goes_to_its_own_tank(two: Talk) -> None:
    await two.say("mixed them up, bedroom kh 6 and lounge kh 4")
    assert await now_on_record(two) == {
        ("Bedroom", "kh"): 6.0,
        ("Lounge", "kh"): 4.0,
        ("Lounge", "ph"): 7.4,
    }


async def test_what_was_switched_of_no_readings_changes_nothing(two: Talk) -> None:
    before = await now_on_record(two)
    await two.say("switched")
    await two.say("did i swap those?")
    await two.say("swapped the filter, all fine")
    assert await now_on_record(two) == before


@pytest.mark.parametrize(
    "text",
    ["forgot to say ammonia was more like 2", "i want to say ammonia was more like 2"],
)
async def test_ammonia_told_late_is_no_wish_and_holds_a_dose_back(talk: Talk, text: str) -> None:
    await talk.say("100 l kh 6 ph 7.8 ammonia 0 temp 25")
    warned = " ".join(each.text for each in await talk.say(text))
    assert "Ammonia is dangerous" in warned
    refused = " ".join(each.text for each in await talk.say("how much buffer to kh 8"))
    assert "No buffer now" in refused


async def test_a_deed_told_late_takes_the_place_of_none(talk: Talk) -> None:
    await talk.say("100 l kh 6")
    await talk.say("put in 5 g baking soda")
    await talk.say("forgot to say i put in 3 g baking soda yesterday")
    told = " ".join(each.text for each in await talk.say("what did i do"))
    assert "5 g" in told
    assert "3 g" in told


async def test_a_point_that_moved_is_put_right_at_once(fern: Talk) -> None:
    await fern.say("kh 4.0 ph 7.2")
    assert "Corrected: pH 7.4" in await fern.text("should be ph 7.4, typo")
    assert "Corrected: KH 0.4" in await fern.text("should be kh 0.4 actually, dropped the dot")
    assert "No dose yet" in await fern.text("how much bicarbonate to get to 4")


async def test_what_should_be_is_open_until_it_is_answered(fern: Talk) -> None:
    await fern.say("kh 4 ph 7.2")
    assert "no, kh 6 or dose kh 6" in await fern.text("should be kh 6")
    assert "“kh 6” is not answered yet" in await fern.text("how much baking soda to kh 4")


async def test_what_was_measured_on_a_day_is_taken_back(fern: Talk) -> None:
    await fern.say("ph yesterday evening 7.0")
    await fern.say("ph 6.8 kh 4")
    await fern.wait(hours=5)
    said = await fern.text("delete the ph from yesterday, i misread it")
    assert said == "Taken back: Fern: pH 7. History keeps it."
    assert "6.8" in await fern.text("show my ph")
    assert "not measured then" in await fern.text("delete the ph from yesterday")


async def test_of_several_of_a_day_none_is_taken_back_unasked(fern: Talk) -> None:
    await fern.say("ph yesterday 8:00 7.0")
    await fern.say("ph yesterday 20:00 7.4")
    before = await rows(fern)
    assert "several of that day" in await fern.text("delete the ph from yesterday")
    assert await rows(fern) == before


async def test_two_values_of_one_tank_are_swapped(fern: Talk) -> None:
    await fern.say("kh 2 gh 8")
    assert "Corrected: KH 8" in await fern.text("swap those i mixed them up")
    assert await now_on_record(fern) == {("Fern", "kh"): 8.0, ("Fern", "gh"): 2.0}


async def test_of_three_values_none_is_swapped(fern: Talk) -> None:
    await fern.say("kh 4 gh 8 ph 7")
    await fern.say("swap those i mixed them up")
    assert (await now_on_record(fern))["Fern", "kh"] == 4.0
