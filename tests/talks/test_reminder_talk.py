"""Reminders that stand, changed in other words: moved, ended, put off, done before they are due."""

from __future__ import annotations

from typing import Any

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    return talk


@pytest.fixture
async def two(fern: Talk) -> Talk:
    await fern.say("remind me to clean the filter every 14 days")
    await fern.say("remind me to test kh every 7 days at 19:00")
    await fern.say("ph 7.2")  # so that neither is what was spoken of last
    return fern


async def listed(talk: Talk) -> list[dict[str, Any]]:
    return list((await talk.facts("/remind"))["reminders"])


@pytest.mark.parametrize(
    "text",
    [
        "cancel the kh one",
        "stop the kh reminder",
        "drop the kh one please",
        "delete the reminder for kh",
        "stop reminding me of kh",
        "lösch die erinnerung für kh",
        "supprime le rappel kh",
        "cancela el recordatorio de kh",
        "apaga o lembrete do kh",
        "cancella il promemoria kh",
        "verwijder de herinnering voor kh",
        "usuń przypomnienie o kh",
        "ta bort påminnelsen om kh",
    ],
)
async def test_one_is_ended_by_what_it_is_of(two: Talk, text: str) -> None:
    assert "not remind you of this any more: Fern: test kh" in await two.text(text)
    assert [each["what"] for each in await listed(two)] == ["clean the filter"]


@pytest.mark.parametrize(
    "text",
    [
        "stop the filter",
        "stop feeding",
        "remove the dead one",
        "don't cancel the kh one",
        "move the fish to quarry",
        "should i stop the filter?",
        "the kh is 4",
        "forget the tank",
        "change the carbon tomorrow",
    ],
)
async def test_none_is_ended_by_other_words(two: Talk, text: str) -> None:
    before = await listed(two)
    await two.say(text)
    assert [each for each in await listed(two) if each in before] == before


async def test_which_one_is_asked(two: Talk) -> None:
    assert "Which one shall I stop?" in await two.text("stop reminding me")
    await two.press(1)
    assert len(await listed(two)) == 1
    await two.say("remind me to feed every day at 20:00")
    await two.say("ph 7.2")
    await two.say("delete all reminders")
    await two.press(3)
    assert not await listed(two)


@pytest.mark.parametrize(
    ("text", "due"),
    [
        ("move the filter one to friday", "2026-03-06T12:00"),
        ("the filter one on friday instead", "2026-03-06T12:00"),
        ("push the filter reminder to tomorrow at 8", "2026-03-02T08:00"),
        ("verschieb die filter erinnerung auf freitag", "2026-03-06T12:00"),
        ("décale le rappel du filtre à vendredi", "2026-03-06T12:00"),
        ("sposta il promemoria del filtro a venerdì", "2026-03-06T12:00"),
    ],
)
async def test_an_interval_goes_on_from_its_new_day(two: Talk, text: str, due: str) -> None:
    facts = await two.facts(text)
    assert facts["reminder"]["due"].startswith(due)
    assert facts["reminder"]["rule"] == "every 14 days"


async def test_what_is_not_said_of_a_move_stays(two: Talk) -> None:
    assert "every 7 days at 20:30" in await two.text("move the kh one to 20:30")
    assert "every 5 days at 20:30" in await two.text("make the kh one every 5 days")
    assert "every Sunday at 20:30" in await two.text("the kh one every sunday")
    assert "every Friday at 20:30" in await two.text("move the kh one to friday")
    assert len(await listed(two)) == 2


async def test_the_one_just_set_is_changed_without_a_name(fern: Talk) -> None:
    await fern.say("erinnere mich alle 14 tage an filter reinigen")
    assert "every 7 days" in await fern.text("ne doch lieber alle 7 tage")
    assert "every 5 days" in await fern.text("actually make it every 5 days")
    assert "every Sunday" in await fern.text("then remind me every sunday")
    assert "not remind you" in await fern.text("lösch die erinnerung")
    assert not await listed(fern)


@pytest.mark.parametrize(
    "text",
    ["finalement j arrete la", "never mind", "stop reminding me", "lass es", "laat maar"],
)
async def test_the_one_just_set_is_ended_without_a_name(fern: Talk, text: str) -> None:
    await fern.say("remind me to change water every 7 days")
    assert "not remind you" in await fern.text(text)


@pytest.mark.parametrize(
    ("text", "due"),
    [
        ("snooze 2h", "2026-03-02T12:00"),
        ("later", "2026-03-02T11:00"),
        ("not yet", "2026-03-02T11:00"),
        ("noch nicht", "2026-03-02T11:00"),
        ("pas encore", "2026-03-02T11:00"),
        ("not today", "2026-03-03T09:00"),
        ("heute nicht", "2026-03-03T09:00"),
        ("in 3 hours", "2026-03-02T13:00"),
        ("tomorrow at 8", "2026-03-03T08:00"),
        ("snooze until friday", "2026-03-06T09:00"),
        ("remind me tomorrow instead", "2026-03-03T09:00"),
    ],
)
async def test_what_is_due_is_put_off(fern: Talk, text: str, due: str) -> None:
    await fern.say("remind me to clean the filter tomorrow at 10")
    await fern.wait(hours=22)
    facts = await fern.facts(text)
    assert facts["reminder"]["next_due"].startswith(due)
    assert len(await listed(fern)) == 1


async def test_what_is_set_is_put_off_by_its_own_time(fern: Talk) -> None:
    await fern.say("remind me to clean the filter tomorrow at 10")
    assert "When shall I remind you instead" in await fern.text("later")
    assert "tomorrow 12:00" in await fern.text("snooze 2h")


async def test_a_rhythm_that_is_due_is_not_ended_by_a_word(fern: Talk) -> None:
    await fern.say("remind me to feed every day at 19:00")
    await fern.wait(hours=8)
    assert "for good" in await fern.text("forget it")
    assert "Skipped" in (await fern.press(1))[0].text
    assert len(await listed(fern)) == 1


async def test_done_before_it_is_due(fern: Talk) -> None:
    await fern.say("remind me to clean the filter every sunday at 13:00")
    assert "Next: Sun 8 Mar 13:00" in await fern.text("done")
    await fern.say("remind me to feed at 20:00")
    assert "Which one is done" in await fern.text("done")
    assert "Done" in (await fern.press(1))[0].text
    assert await fern.wait(hours=12) == []


async def test_done_by_its_name(two: Talk) -> None:
    await two.say("remind me to rinse the sponge tomorrow at 19:00")
    assert "Done: Fern: rinse the sponge" in await two.text("did the sponge")
    assert "Done" not in await two.text("did the dishes")


async def test_done_asks_for_what_goes_on_record(fern: Talk) -> None:
    await fern.say("remind me to change 20% tomorrow at 10")
    await fern.wait(hours=22)
    assert "not on record yet" in await fern.text("done")
    assert "changed 20" in await fern.text("yes")


async def test_when_and_of_what_may_be_said_next(fern: Talk) -> None:
    await fern.say("remind me to clean the filter")
    assert "clean the filter, Fri 6 Mar 19:00" in await fern.text("friday at 7pm")
    await fern.say("remind me in 4 days")
    assert "test nitrate, Thu 5 Mar 12:00" in await fern.text("test nitrate")
    await fern.say("remind me in 4 days")
    await fern.say("no3 20")
    assert len(await listed(fern)) == 2


async def test_an_hour_that_may_be_two_things_is_offered(fern: Talk) -> None:
    assert "two things" in await fern.text("remind me to test gh at 9")
    assert "tomorrow 09:00" in (await fern.press(2))[0].text
    assert "tomorrow 09:00" in await fern.text("recuérdame medir kh a las 9")
    assert "tomorrow 09:00" in await fern.text("erinnere mich um 9 an ph messen")


async def test_a_reading_settles_a_test_only_with_all_of_it(fern: Talk) -> None:
    await fern.say("remind me to retest kh, ph and ammonia in 24 h")
    await fern.wait(hours=25)
    assert "pH and ammonia still to test" in await fern.text("kh 3.1")
    assert "ammonia still to test" in await fern.text("ph 7.1")
    assert "settles" in await fern.text("ammonia 0")


async def test_one_that_is_not_there(two: Talk) -> None:
    for text in ("cancel the ph reminder", "move the gh reminder to friday"):
        assert "no such reminder" in await two.text(text)
    assert len(await listed(two)) == 2
    assert "Fri 6 Mar" in await two.text("set a reminder for friday to prune the plants")


async def test_what_was_ended_or_moved_is_taken_back(two: Talk) -> None:
    before = await listed(two)
    for text in ("cancel the kh one", "move the kh one to tuesday", "make the kh one every 2 days"):
        await two.say(text)
        assert "Taken back: Fern: test kh" in await two.text("undo")
        assert await listed(two) == before


@pytest.mark.parametrize(
    "text", ["what reminders do i have", "my reminders", "welche erinnerungen habe ich", "rappels"]
)
async def test_they_are_listed(two: Talk, text: str) -> None:
    assert len((await two.facts(text))["reminders"]) == 2


async def test_one_time_is_skipped(fern: Talk) -> None:
    await fern.say("remind me to feed every day at 19:00")
    await fern.wait(hours=8)
    assert "Skipped" in await fern.text("skip it")
    assert "open again" in await fern.text("undo")


@pytest.mark.parametrize(
    ("said", "back"),
    [
        (["move it to sunday"], "every Saturday"),
        (["no, sunday"], "every Saturday"),
        (["move it to sunday", "move it to tuesday"], "every Sunday"),
        (["remind me to change water every sunday"], "every Saturday"),
    ],
)
async def test_undo_of_a_move_lets_it_stand_as_before(
    fern: Talk, said: list[str], back: str
) -> None:
    await fern.say("remind me to change water every saturday")
    for text in said:
        await fern.say(text)
    await fern.say("undo")
    assert len(await listed(fern)) == 1
    assert f"· {back} at" in await fern.text("/remind")


async def test_undo_of_a_new_reminder_ends_it(fern: Talk) -> None:
    await fern.say("remind me to change water every saturday")
    await fern.say("undo")
    assert await listed(fern) == []


@pytest.mark.parametrize(
    "text",
    [
        "move the sunday one to saturday",
        "move sunday's water change to saturday",
        "move it from sunday to saturday",
        "mach den sonntag auf samstag",
        "mets celui de dimanche à samedi",
        "mueve el del domingo al sábado",
        "sposta quello di domenica a sabato",
        "verplaats die van zondag naar zaterdag",
        "flytta den på söndag till lördag",
    ],
)
async def test_the_first_of_two_days_names_which_one_is_moved(fern: Talk, text: str) -> None:
    await fern.say("remind me to change water every sunday")
    await fern.say(text)
    assert "· every Saturday at" in await fern.text("/remind")


async def test_a_day_that_none_is_due_on_moves_nothing(fern: Talk) -> None:
    await fern.say("remind me to change water every sunday")
    assert "no such reminder" in await fern.text("move the friday one to monday")
    await fern.say("remind me to clean the filter every saturday and monday")
    await fern.say("move the monday one to friday")
    assert "· every Monday and Saturday at" in await fern.text("/remind")


async def test_one_that_comes_once_is_not_closed_before_it_is_due(fern: Talk) -> None:
    await fern.say("remind me tomorrow at 19:00 to change water")
    await fern.wait(hours=23)
    await fern.say("remind me tomorrow at 18:00 to feed")
    await fern.say("done")
    assert len(await listed(fern)) == 2


@pytest.mark.parametrize(
    "text",
    [
        "no reminder on sunday",
        "moved the reminder of cube to monday",
        "i forgot the reminder about monday",
        "i missed the reminder on monday",
        "got a reminder for monday already",
        "keine erinnerung am sonntag",
        "ho dimenticato il promemoria di domenica",
        "change of plan remind me at 9pm",
    ],
)
async def test_talk_about_a_reminder_makes_and_moves_none(fern: Talk, text: str) -> None:
    await fern.say("remind me to change water every saturday")
    before = await fern.text("/remind")
    await fern.say("remind me to change water every saturday")
    await fern.say(text)
    assert await fern.text("/remind") == before


@pytest.mark.parametrize(
    "text",
    [
        "moved the reminder to monday",
        "moved the reminder of fern to monday",
        "ich hab die erinnerung auf montag verschoben",
        "ho spostato il promemoria a lunedì",
    ],
)
async def test_one_that_is_told_moved_is_moved(fern: Talk, text: str) -> None:
    await fern.say("remind me to change water every saturday")
    await fern.say(text)
    assert "· every Monday at" in await fern.text("/remind")
    assert len(await listed(fern)) == 1


@pytest.mark.parametrize(
    "text",
    [
        "i moved the fish, set a reminder to feed tomorrow",
        "i forgot to feed, remind me tomorrow to feed",
    ],
)
async def test_a_request_behind_what_was_done_is_one(fern: Talk, text: str) -> None:
    await fern.say("remind me to feed every sunday")
    await fern.say(text)
    assert "· every Sunday at" in await fern.text("/remind")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("an hour earlier", "every Sunday at 09:00. Next: Sun"),
        ("make it an hour later", "every Sunday at 11:00. Next: Sun"),
        ("move it 30 minutes earlier", "every Sunday at 09:30. Next: Sun"),
        ("eine stunde früher", "every Sunday at 09:00. Next: Sun"),
        ("make it a day later", "every Sunday at 10:00. Next: Mon"),
    ],
)
async def test_one_is_moved_by_so_much_and_keeps_its_day(fern: Talk, text: str, said: str) -> None:
    await fern.say("remind me to test kh every sunday at 10")
    assert said in await fern.text(text)


async def test_stop_the_doses_beside_a_call_ends_their_reminders(talk: Talk) -> None:
    await talk.say("/tank new Blub 45 l fresh")
    await talk.say("remind me to dose buffer 3g every day at 9")
    await talk.say("remind me to feed every day at 8")
    said = await talk.text("hes lying on the bottom. stop the doses")
    assert "Stop feeding" in said
    assert "I will not remind you of this any more: Blub: dose buffer 3g" in said
    listed = await talk.text("what are my reminders")
    assert "dose buffer" not in listed
    assert "feed" in listed


async def test_of_two_doses_it_is_asked_which_to_stop(talk: Talk) -> None:
    await talk.say("/tank new Blub 45 l fresh")
    await talk.say("remind me to dose buffer 3g every day at 9")
    await talk.say("remind me to dose iron every friday at 9")
    (asked,) = await talk.say("stop the doses")
    assert [each.label for each in asked.buttons][-1] == "all of them"


@pytest.mark.parametrize(
    ("text", "hour"),
    [
        ("no wait i start work at 9, make it 7", "07:00"),
        ("i finish at 5 so 6pm", "18:00"),
        ("not 8, 7.30", "07:30"),
        ("noon not 8 sorry", "12:00"),
    ],
)
async def test_the_hour_behind_a_reason_or_behind_another_is_the_new_one(
    fern: Talk, text: str, hour: str
) -> None:
    await fern.say("remind me tomorrow at 8am to top up")
    assert hour in await fern.text(text)
    assert hour in str((await listed(fern))[0]["due"]) or hour in await fern.text("my reminders")


async def test_an_amount_behind_another_is_no_hour(fern: Talk) -> None:
    await fern.say("remind me tomorrow at 8am to dose 5 ml ferts")
    assert "2.5 ml" in await fern.text("not 5, 2.5 ml")


async def test_to_be_home_again_ends_a_pause_that_is_on(fern: Talk) -> None:
    await fern.say("remind me every sunday at 10 to test kh")
    await fern.say("holiday for 7 days")
    assert "pause" in await fern.text("what are my reminders")
    await fern.say("back early, got home today")
    assert "pause" not in await fern.text("what are my reminders")
    assert "on again" not in await fern.text("back early, got home today")
