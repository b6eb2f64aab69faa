"""What was done in a span, and what went in altogether, asked of the record."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def a_week(talk: Talk) -> None:
    """From Sunday 1 March: two doses and a change in two weeks; now it is Monday 9 March."""
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 2 gh 6 ph 7")
    await talk.wait(days=1)
    await talk.say("added 2 g baking soda")
    await talk.wait(days=1)
    await talk.say("cleaned the filter")
    await talk.say("kh 3")
    await talk.wait(days=6)
    await talk.say("dosed 1.5 g baking soda")
    await talk.say("changed 20%")


@pytest.mark.parametrize(
    "text",
    [
        "what did i do last week", "was hab ich letzte woche gemacht", "qué hice la semana pasada",
        "qu'est-ce que j'ai fait la semaine dernière", "o que fiz na semana passada",
        "cosa ho fatto la settimana scorsa", "wat heb ik vorige week gedaan",
        "co zrobiłem w zeszłym tygodniu", "vad gjorde jag förra veckan",
    ],
)  # fmt: skip
async def test_all_of_a_span_is_listed_newest_first(talk: Talk, text: str) -> None:
    await a_week(talk)
    (reply,) = await talk.say(text)
    assert "3 entries" in reply.lines[0].text, text
    assert [each["kind"] for each in reply.facts["events"]] == ["filter", "dose"]
    assert [each["value"] for each in reply.facts["values"]] == [3]


async def test_a_span_with_nothing_tells_what_was_last(talk: Talk) -> None:
    await a_week(talk)
    for text in ("what did i do yesterday", "was hab ich gestern gemacht", "qué hice ayer"):
        told = await talk.text(text)
        assert "nothing on record" in told, text
        assert "changed 20 %" in told, text
    assert "2 entries" in await talk.text("whats logged today")
    assert "6 entries" in await talk.text("list everything")
    assert "2 g" in await talk.text("list doses")


@pytest.mark.parametrize(
    ("text", "grams"),
    [
        ("how much did i put in total", 3.5), ("what went in in total", 3.5),
        ("how much bicarb did i use this week", 1.5), ("how much soda did i use", 3.5),
        ("wie viel natron habe ich bisher reingegeben", 3.5),
        ("combien de bicarbonate j'ai mis au total", 3.5),
        ("cuánto bicarbonato eché en total", 3.5), ("quanto bicarbonato usei", 3.5),
        ("quanto bicarbonato ho messo in totale", 3.5),
        ("hoeveel zuiveringszout heb ik gebruikt", 3.5),
        ("hur mycket bikarbonat har jag använt", 3.5),
    ],
)  # fmt: skip
async def test_amounts_are_added_up_by_substance(talk: Talk, text: str, grams: float) -> None:
    await a_week(talk)
    (reply,) = await talk.say(text)
    assert reply.facts["total"] == [{"substance": "sodium bicarbonate", "grams": grams}], text


async def test_the_record_is_asked_even_right_after_a_plan(talk: Talk) -> None:
    await a_week(talk)
    await talk.say("dose kh 5")
    assert "3.5 g" in await talk.text("how much did i put in total")
    assert "no magnesium" in await talk.text("how much epsom did i use")


async def test_whether_a_value_moved(talk: Talk) -> None:
    await a_week(talk)
    for text in (
        "did kh go up?",
        "ist kh gestiegen",
        "ha subido el kh?",
        "czy kh wzrosło",
        "how much did kh rise",
        "by how much has kh gone up",
        "um wie viel ist kh gestiegen",
    ):
        (reply,) = await talk.say(text)
        assert "KH rose" in reply.lines[0].text, text
        assert [each["value"] for each in reply.facts["values"]] == [3, 2], text
    assert "not got two" in await talk.text("did gh drop")


async def test_when_a_deed_was_is_asked_in_other_words(talk: Talk) -> None:
    await a_week(talk)
    for text in ("when was the filter cleaned", "wann wurde der filter gereinigt"):
        assert "filter cleaned" in await talk.text(text), text
    for text in ("how long since last water change", "days since water change"):
        assert "changed 20 %" in await talk.text(text), text


@pytest.mark.parametrize(
    "text",
    [
        "what do i do", "what did i do wrong", "did i do it right", "how much soda do i use",
        "how much should i put in", "list all fish", "did the fish go up", "has kh risen to 5",
        "how much more", "how much should kh rise", "how far can kh rise a day",
        "what did i buy for the plants", "what's up", "whats the daily use",
    ],
)  # fmt: skip
async def test_what_only_sounds_like_it_is_no_question_of_the_record(talk: Talk, text: str) -> None:
    await a_week(talk)
    (reply, *_) = await talk.say(text)
    assert "on record for that" not in reply.text, text
    assert "What shall I convert" not in reply.text, text
    assert "total" not in reply.facts, text
    assert (await talk.text("whats logged today")).startswith("Fern: 2 entries"), text


@pytest.mark.parametrize(
    "text",
    [
        "what readings do you have", "welche werte hast du", "what have i told you today",
        "was hab ich heute alles eingetragen", "what did i add so far", "quelles valeurs as-tu",
        "qué valores tienes", "que valores tens", "quali valori hai", "welke waarden heb je",
        "jakie masz wyniki", "vilka värden har du",
    ],
)  # fmt: skip
async def test_what_is_on_record_is_asked_in_the_bots_own_direction(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4 ph 7")
    (told,) = await talk.say(text)
    assert {each["analyte"] for each in told.facts["values"]} == {"kh", "ph"}


@pytest.mark.parametrize(
    "text",
    [
        "what were my last readings", "what were my readings", "show me my last tests",
        "what are my latest readings", "whats my last reading", "wie waren meine letzten werte",
        "quelles étaient mes dernières mesures", "cuáles fueron mis últimas mediciones",
        "quais foram as minhas últimas medições", "quali erano le mie ultime misurazioni",
        "wat waren mijn laatste metingen", "jakie były moje ostatnie pomiary",
        "vad var mina senaste mätningar",
    ],
)  # fmt: skip
async def test_the_last_readings_are_told(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 2 ph 7")
    (reply,) = await talk.say(text)
    assert sorted(each["value"] for each in reply.facts["values"]) == [2, 7], text


async def test_a_value_is_held_against_another_time(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    await talk.say("kh 4 nitrate 10")
    await talk.wait(days=7)
    await talk.say("kh 5 nitrate 20")
    assert "KH went up from 4 to 5" in await talk.text("is that better than last week")
    assert "KH went up from 4 to 5" in await talk.text("how does that compare with last week?")
    assert "no measurement on record" in await talk.text("is that better than yesterday")
    assert "KH 4" in await talk.text("what was it last week")


async def test_since_a_day_is_from_that_day_on(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    for kh in ("kh 6", "kh 4", "kh 5"):
        await talk.say(kh)
        await talk.wait(days=1)
    said = await talk.text("has kh gone down since last week")
    assert "KH fell" in said
    assert "KH 6" in said
    assert "KH 4" not in said


async def test_this_morning_is_no_other_part_of_the_day(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    await talk.say("nitrite 0.1 yesterday")
    assert "not measured then" in await talk.text("what was no2 this morning")
