"""What asks whether something is on record logs nothing; what refuses it takes back."""

from __future__ import annotations

import pytest

from core.message.logged_asked import of_record
from tests.chat.harness import Talk


@pytest.fixture
async def planned(talk: Talk) -> Talk:
    """A plan in two parts, KH 3 to 5."""
    await talk.say("/tank new Fern 60 l fresh")
    await talk.say("kh 3")
    await talk.say("dose kh 5")
    return talk


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("did you log it", "asked"),
        ("was that logged", "asked"),
        ("hast du es eingetragen", "asked"),
        ("as-tu noté", "asked"),
        ("lo has anotado?", "asked"),
        ("está registrado?", "asked"),
        ("l'hai registrato?", "asked"),
        ("heb je het genoteerd", "asked"),
        ("czy to zapisane", "asked"),
        ("är det loggat", "asked"),
        ("dont log it", "refused"),
        ("bitte nicht eintragen", "refused"),
        ("ne le note pas", "refused"),
        ("no lo anotes", "refused"),
        ("não registes", "refused"),
        ("non registrarlo", "refused"),
        ("niet opslaan", "refused"),
        ("nie zapisuj tego", "refused"),
        ("logga det inte", "refused"),
        ("log it but only a third of it", "fraction"),
        ("log it", None),
        ("ok log it", None),
        ("i logged it", None),
        ("can you log it?", None),
        ("no, log it please", None),
        ("did you log 5 g", None),
        ("why did you log it", None),
        ("half of it", None),
    ],
)
def test_what_is_said_of_the_record(text: str, said: str | None) -> None:
    assert of_record(text) == said


async def test_a_question_logs_nothing_and_log_it_does(planned: Talk) -> None:
    for text in ("did you log it", "was that logged", "have you logged it"):
        assert "None of the 2 parts is on record yet" in await planned.text(text)
    assert "Nothing was stored" in await planned.text("so i wont. log it")
    (asked,) = await planned.say("log it but only a third of it")
    assert asked.text.startswith("How many grams of it went in?")
    assert "logged 1.8 g" in await planned.text("log it")
    (told,) = await planned.say("did you log it")
    assert told.text.startswith("Yes, on record: “Fern: dosed 1.8 g")
    assert "events" not in told.facts


async def test_what_was_told_a_day_ago_is_still_on_record(talk: Talk) -> None:
    await talk.say("120l kh 3")
    await talk.say("dosed 3.6 g baking soda")
    await talk.wait(hours=14)
    told = await talk.text("did you save that")
    assert "3.6 g sodium bicarbonate" in told.splitlines()[0]
    await talk.wait(days=9)
    assert "3.6 g sodium bicarbonate" in await talk.text("did you save that")


async def test_a_reading_is_taken_back(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    assert (await talk.text("was that logged")).startswith("No, nothing")
    await talk.say("kh 3")
    assert (await talk.text("is that on record")).startswith("Yes, on record: “Fern: KH 3")
    await talk.say("dont log it")  # the question before it stored nothing: it is offered
    (taken,) = await talk.press(1)
    assert taken.text.startswith("Taken back")
    assert (await talk.text("did you save it?")).startswith("No, nothing")


@pytest.mark.parametrize(
    "line",
    [
        "did you just log that?? i havent put anything in",
        "why did you log that, i didnt put it in",
        "hey! did you just log that? i never put it in",
    ],
)
async def test_what_was_logged_and_never_put_in_is_taken_back(planned: Talk, line: str) -> None:
    await planned.say("gave it")
    assert "Taken back" in await planned.text(line)
    assert "None of the 2 parts is on record" in await planned.text("what is left")


def test_the_same_with_more_beside_is_not_taken_for_it() -> None:
    assert of_record("did you log that? yes i put it in") is None
    assert of_record("did you log it, kh 4") is None
