"""A chore with a rhythm or a time to come: a reminder, and never a deed on record."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    return talk


async def logged(talk: Talk) -> bool:
    return "nothing to take back" not in await talk.text("undo")


@pytest.mark.parametrize(
    ("text", "due"),
    [
        ("every sunday 10am water change 30%", "2026-03-08T10:00"),
        ("every other day dose fertiliser", "2026-03-03T12:00"),
        ("in 3 days check filter", "2026-03-04T12:00"),
        ("tomorrow clean the filter", "2026-03-02T09:00"),
        ("wc every 7 days 25%", "2026-03-08T12:00"),
        ("can you ping me friday to test nitrate", "2026-03-06T09:00"),
        ("could you remind me to clean the filter in 3 days?", "2026-03-04T12:00"),
        ("don't forget to feed tomorrow", "2026-03-02T09:00"),
        ("stell 1 g natron täglich als erinnerung ein", "2026-03-02T12:00"),
        ("carbon every 4 weeks", "2026-03-29T12:00"),
        ("nettoyage du filtre tous les 15 jours", "2026-03-16T12:00"),
        ("new carbon in 4 weeks", "2026-03-29T12:00"),
        ("kh every 3 days", "2026-03-04T12:00"),
        ("wc 30% tomorrow", "2026-03-02T09:00"),
        ("jeden montag wasserwechsel 30%", "2026-03-02T09:00"),
        ("morgen filter reinigen", "2026-03-02T09:00"),
        ("tous les lundis changement d'eau 30%", "2026-03-02T09:00"),
        ("nettoyer le filtre dans 3 jours", "2026-03-04T12:00"),
        ("cada lunes cambio de agua 30%", "2026-03-02T09:00"),
        ("ponme un recordatorio cada 7 días cambiar agua", "2026-03-08T12:00"),
        ("a cada 2 dias adubar", "2026-03-03T12:00"),
        ("ogni lunedì cambio acqua 30%", "2026-03-02T09:00"),
        ("over 3 dagen filter schoonmaken", "2026-03-04T12:00"),
        ("za 3 dni wyczyścić filtr", "2026-03-04T12:00"),
        ("varje måndag vattenbyte 30%", "2026-03-02T09:00"),
    ],
)
async def test_it_is_set(fern: Talk, text: str, due: str) -> None:
    facts = await fern.facts(text)
    assert facts["reminder"]["due"].startswith(due)
    assert facts["reminder"]["tank"] == "Fern"
    await fern.say("undo")  # the reminder, for nothing was logged
    assert not await logged(fern)


@pytest.mark.parametrize(
    "text",
    [
        "i change 30% every sunday",
        "we dose ferts every other day",
        "ich wechsle jeden sonntag 30%",
        "je change 30% tous les dimanches",
        "i'll do a water change tomorrow",
        "maybe a water change tomorrow",
        "i need to change the carbon next month",
        "ich muss morgen den filter reinigen",
        "je vais changer l'eau dimanche",
    ],
)
async def test_what_is_only_told_is_offered(fern: Talk, text: str) -> None:
    assert "nothing is logged" in await fern.text(text)
    assert not (await fern.facts("/remind"))["reminders"]
    assert not await logged(fern)
    await fern.say(text)
    assert "I will remind you" in await fern.text("yes")


@pytest.mark.parametrize(
    "text",
    [
        "ich habe jeden sonntag 30% gewechselt",
        "jeden sonntag habe ich wasser gewechselt",
        "i changed 30% every sunday",
        "i used to change 30% weekly",
        "how often should i change water every month",
        "should i change water every week?",
        "what if i change 30% every week",
        "the ph changes every night",
        "every morning the fish gasp at the surface",
        "fed every 2 days",
        "my wife put 5 g of soda in an hour ago",
        "water change on friday",
    ],
)
async def test_what_was_done_or_is_asked_is_no_reminder(fern: Talk, text: str) -> None:
    await fern.say(text)
    assert not (await fern.facts("/remind"))["reminders"]


async def test_a_rhythm_of_the_past_is_no_deed_of_a_day(fern: Talk) -> None:
    assert "no single day" in await fern.text("ich habe jeden sonntag 30% gewechselt")
    assert not await logged(fern)


@pytest.mark.parametrize("text", ["did weekly wc 30%", "did my weekly water change 30%"])
async def test_a_deed_with_its_rhythm_is_logged(fern: Talk, text: str) -> None:
    facts = (await fern.say(text))[0].facts
    assert facts["events"][0]["kind"] == "water_change"


async def test_the_name_of_a_deed_is_asked_about(fern: Talk) -> None:
    assert "Nothing is stored yet" in await fern.text("weekly wc 30%")
    assert "changed 30" in (await fern.press(1))[0].text
    await fern.say("weekly wc 20%")
    assert "every week" in (await fern.press(2))[0].text


async def test_nothing_is_set_that_is_too_much_for_a_day(fern: Talk) -> None:
    await fern.say("kh 4 ph 7.2 temp 24 ammonia 0")
    for text in (
        "stell 15 g natron täglich als erinnerung ein",
        "remind me to dose 15 g soda daily",
    ):
        assert "No reminder was set" in await fern.text(text.replace("soda", "baking soda"))
    assert "I will remind" in await fern.text("remind me to dose 1 g baking soda every week")
    assert len((await fern.facts("/remind"))["reminders"]) == 1


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("changed 30%, remind me in 7 days", "water change 30%"),
        ("habe 20% gewechselt, erinnere mich in 7 tagen", "water change 20%"),
        ("kh 4 ph 7.2, remind me in 3 days", "retest KH and pH"),
        ("wc 30% and remind me to test kh tomorrow", "test kh"),
        ("30% vattenbyte, påminn mig om 7 dagar", "water change 30%"),
    ],
)
async def test_what_is_told_before_it_is_kept(fern: Talk, text: str, what: str) -> None:
    told, reminder = await fern.say(text)
    assert told.facts.get("events") or told.facts["values"]
    assert reminder.facts["reminder"]["what"] == what


async def test_two_rhythms_are_no_deed(fern: Talk) -> None:
    told = await fern.say("daily: feed, weekly: wc")
    assert [each.facts["reminder"]["rule"] for each in told] == ["every 1 day", "every 1 week"]
    assert not (await fern.facts("when did i last change water")).get("events")
