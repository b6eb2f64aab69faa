"""A deed and a question behind it: the deed is on record, and the question is answered by it."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

TANK = "/tank new Shed 100 l fresh"
KNOWN = (
    "/source tap ph 7.6 kh 8 gh 10 no3 5 temp 24",
    "kh 7.5, gh 9.5, ph 7.5, no3 40, 24 c, ammonia 0, nitrite 0",
)


async def shed(talk: Talk, *lines: str) -> None:
    for line in (TANK, *lines):
        await talk.say(line)


@pytest.mark.parametrize(
    "text",
    [
        "changed 30 l, is that too much?",
        "changed 30 l is that too much",
        "30 l gewechselt, ist das zu viel?",
        "j'ai changé 30 l, c'est trop ?",
        "cambié 30 l, es demasiado?",
        "troquei 30 l, é demais?",
        "ho cambiato 30 l, è troppo?",
        "30 l ververst, is dat te veel?",
        "podmieniłem 30 l, czy to za dużo?",
        "bytte 30 l, är det för mycket?",
    ],
)
async def test_whether_a_change_was_too_much(talk: Talk, text: str) -> None:
    await shed(talk)
    kept, judged = await talk.say(text)
    assert kept.facts["events"][0]["litres"] == 30.0
    assert judged.facts["changed"] == {"share": 0.3}
    assert "cannot tell" in judged.text


async def test_a_change_within_the_limits_is_told_so(talk: Talk) -> None:
    await shed(talk, *KNOWN)
    _kept, judged = await talk.say("changed 30 l, is that too much?")
    assert "kept to every limit" in judged.text
    _kept, judged = await talk.say("changed 30 l, is that too much?")
    assert "kept to every limit" not in judged.text  # of the day's second change nobody knows


async def test_one_past_the_limits_is_not_called_well(talk: Talk) -> None:
    await shed(talk, "/source tap ph 8.2 kh 14 gh 20 temp 15", "kh 2, gh 4, ph 6.6, 24 c")
    replies = await talk.say("changed 50%, was that too much?")
    assert replies[0].facts["events"][0]["percent"] == 50.0
    assert "too much" in replies[0].text
    assert not any("kept to every" in reply.text for reply in replies)


@pytest.mark.parametrize(
    "text",
    [
        "did a 40% change, how much nitrate should be left",
        "40% gewechselt, wie viel nitrat ist übrig",
        "j'ai changé 40%, combien de nitrate il reste",
        "ho cambiato il 40%, quanto nitrato rimane",
    ],
)
async def test_what_is_left_reckons_with_the_change(talk: Talk, text: str) -> None:
    """40 mg/L less four tenths, with water that has none: 24 mg/L."""
    await shed(talk, "no3 40")
    kept, left = await talk.say(text)
    assert kept.facts["events"][0]["percent"] == 40.0
    assert left.facts["least"]["nitrate"] == pytest.approx(24.0)


async def test_no_amount_of_medicine_is_named(talk: Talk) -> None:
    await shed(talk)
    kept, told = await talk.say("did a 40% water change after, how much med to put back")
    assert kept.facts["events"][0]["percent"] == 40.0
    assert told.facts["changed"] == {"share": 0.4}
    assert "label" in told.text


@pytest.mark.parametrize(
    "text", ["enough?", "do i need to do more", "more changing?", "reicht das?", "räcker det?"]
)
async def test_whether_it_was_enough_goes_by_nitrate(talk: Talk, text: str) -> None:
    await shed(talk, "no3 40", "changed 30%")
    (told,) = await talk.say(text)
    assert told.facts["least"] == {"nitrate": pytest.approx(28.0)}
    assert "Ammonia and nitrite are unknown" in told.text


async def test_enough_is_never_said_beside_ammonia(talk: Talk) -> None:
    await shed(talk, "ammonia 2 ph 8 temp 26 no3 10", "changed 30%")
    replies = await talk.say("enough?")
    assert not any("no other change is needed" in reply.text for reply in replies)


async def test_how_much_was_changed_in_a_day_and_a_week(talk: Talk) -> None:
    await shed(talk, "changed 20%")
    await talk.wait(days=3)
    await talk.say("changed 30 l")
    (told,) = await talk.say("how much did i change")
    assert told.facts["day"] == [0.3]
    assert told.facts["week"] == [0.2, 0.3]


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("topped up 5 l, is that too much?", "top_up"),
        ("cleaned the filter, is that enough?", "filter"),
        ("filter gereinigt, reicht das?", "filter"),
    ],
)
async def test_other_deeds_are_kept_and_answered(talk: Talk, text: str, kind: str) -> None:
    await shed(talk)
    kept, told = await talk.say(text)
    assert kept.facts["events"][0]["kind"] == kind
    assert told.facts == {"tank": "Shed"}


@pytest.mark.parametrize(
    "text",
    [
        "if i change 40%, how much nitrate is left",
        "change 40%, is that too much?",
        "should i change 30%, or is that too much?",
        "enough?",
        "enough already",
    ],
)
async def test_what_is_not_done_is_not_kept(talk: Talk, text: str) -> None:
    await shed(talk, "no3 40")
    replies = await talk.say(text)
    assert not any(reply.facts.get("events") for reply in replies)
    (told,) = await talk.say("how much did i change")
    assert told.facts["week"] == []


async def test_a_tank_made_without_a_name_may_be_given_one(talk: Talk) -> None:
    (made,) = await talk.say("tank heute 30 l")
    assert "/tank rename Tank" in made.text
    await talk.say("/tank rename Tank Shed")
    (resized,) = await talk.say("/tank volume 40 l")
    assert "/tank rename" not in resized.text


@pytest.mark.parametrize("text", ["no other way round", "other way round", "andersrum"])
async def test_what_was_kept_beside_a_doubt_is_taken_back(talk: Talk, text: str) -> None:
    await shed(talk)
    await talk.say("ammonia 2 before the change, now its 1")
    assert "Taken back: Shed: ammonia 1 mg/L" in await talk.text(text)


@pytest.mark.parametrize("line", ["change 40% is that enough", "change 40% too much?"])
async def test_a_change_that_is_only_named_is_not_kept(talk: Talk, line: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("no3 60")
    await talk.say(line)
    (past,) = await talk.say("when did i last change water")
    assert "no water change on record" in past.text
