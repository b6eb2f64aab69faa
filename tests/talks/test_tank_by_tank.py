"""One thing told of two tanks with a number each goes to each of them."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def two(talk: Talk) -> None:
    await talk.say("/tank new cube 30 l fresh")
    await talk.say("/tank new big 180 l fresh")


@pytest.mark.parametrize(
    "text",
    [
        "changed 30% on the cube and 50% on big",
        "changed 30% cube, 50% big",
        "gewechselt 30% im cube und 50% im big",
        "cambié 30% en el cube y 50% en el big",
    ],
)
async def test_each_change_is_logged_in_its_tank(talk: Talk, text: str) -> None:
    await two(talk)
    told = {reply.facts["tank"]: reply.facts["events"] for reply in await talk.say(text)}
    assert {tank: events[0]["percent"] for tank, events in told.items()} == {"cube": 30, "big": 50}


@pytest.mark.parametrize(
    "text",
    ["ph 7 in cube and 6.5 in big", "ph 7 dans cube et 6,5 dans big", "ph 7 im cube, 6.5 im big"],
)
async def test_each_value_is_kept_in_its_tank_and_undo_takes_both(talk: Talk, text: str) -> None:
    await two(talk)
    told = {reply.facts["tank"]: reply.facts["values"] for reply in await talk.say(text)}
    assert {tank: values[0]["value"] for tank, values in told.items()} == {"cube": 7, "big": 6.5}
    await talk.say("undo")
    assert "nothing" in (await talk.say("undo"))[0].text.lower()


@pytest.mark.parametrize(
    "text",
    [
        "ph 7 in cube and 6.5 in big?",
        "should i change 30% on cube and 50% on big",
        "want ph 7 in cube and 6.5 in big",
        "ph 7 in cube and 20% in big",
    ],
)
async def test_what_is_asked_wished_or_of_two_things_is_kept_in_none_of_both(
    talk: Talk, text: str
) -> None:
    await two(talk)
    told = [reply.facts for reply in await talk.say(text)]
    kept = [
        facts
        for facts in told
        if facts.get("tank") and (facts.get("values") or facts.get("events"))
    ]
    assert len(kept) < 2


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("added 5 neons in cube and 6 in big", "added"),
        ("5 neons died in cube and 6 in big", "lost"),
        ("5 neons gestorben im cube und 6 in big", "lost"),
    ],
)
async def test_a_bare_number_is_of_what_the_one_before_is_of(
    talk: Talk, text: str, kind: str
) -> None:
    await two(talk)
    told = {reply.facts["tank"]: reply.facts["events"] for reply in await talk.say(text)}
    assert {tank: (events[0]["kind"], events[0]["count"]) for tank, events in told.items()} == {
        "cube": (kind, 5),
        "big": (kind, 6),
    }


async def test_a_day_told_once_is_that_of_each(talk: Talk) -> None:
    await two(talk)
    told = await talk.say("yesterday kh 5 in cube and 6 in big")
    assert [reply.facts["values"][0]["value"] for reply in told] == [5, 6]
    for tank in ("cube", "big"):
        assert "yesterday" in await talk.text(f"history of kh for {tank}")


async def test_each_dose_is_put_right_by_itself(talk: Talk) -> None:
    await two(talk)
    told = await talk.say("added 5 g soda to cube and 10 g to big")
    grams = {
        reply.facts["tank"]: reply.facts["events"][0]["grams"]
        for reply in told
        if "events" in reply.facts
    }
    assert grams == {"cube": 5, "big": 10}
    asked = next(reply for reply in told if reply.facts.get("ask") == "soda")
    put_right = await talk.press(1, asked)
    assert put_right[0].facts["tank"] == "cube"
    assert put_right[0].facts["events"][0]["substance"] == "sodium bicarbonate"


@pytest.mark.parametrize(
    ("before", "text"),
    [
        ("nitrite 1 in cube", "and 0 in big"),
        ("cube: nitrite 1", "und 0 in big"),
        ("nitrite 1 in cube", "0 in big"),
        ("dans cube nitrite 1", "et 0 dans big"),
    ],
)
async def test_a_number_for_the_other_tank_is_of_what_was_just_told(
    talk: Talk, before: str, text: str
) -> None:
    await two(talk)
    await talk.say(before)
    told = (await talk.say(text))[0].facts
    assert told["tank"] == "big"
    assert [(each["analyte"], each["value"]) for each in told["values"]] == [("nitrite", 0)]


@pytest.mark.parametrize(
    ("before", "text"),
    [
        ("kh 5 ph 7 in cube", "and 6 in big"),  # of which of both
        ("changed 20% in cube", "and 30 l in big?"),
        ("nitrite 1 in cube", "and 0 in cube"),
        ("how is cube", "and 0 in big"),
    ],
)
async def test_a_number_that_may_be_of_something_else_is_kept_for_none(
    talk: Talk, before: str, text: str
) -> None:
    await two(talk)
    await talk.say(before)
    told = [reply.facts for reply in await talk.say(text)]
    assert not any(facts.get("values") or facts.get("events") for facts in told)


@pytest.mark.parametrize(
    ("first", "then", "tank", "value"),
    [
        ("no3 im office 20", "liv auch, 60", "living", 60.0),
        ("office no3 20", "living 60", "living", 60.0),
        ("no3 in office 20", "and living too 60", "living", 60.0),
        ("no3 office 20", "living también, 60", "living", 60.0),
        ("office no3 20", "living aussi 60", "living", 60.0),
        ("office no3 20", "living ook 60", "living", 60.0),
    ],
)
async def test_a_tank_may_stand_before_its_number(
    talk: Talk, first: str, then: str, tank: str, value: float
) -> None:
    await talk.say("/tank new living 200 l fresh")
    await talk.say("/tank new office 54 l fresh")
    await talk.say(first)
    facts = await talk.facts(then)
    assert facts["tank"] == tank
    assert [each["canonical"] for each in facts["values"]] == [value]


@pytest.mark.parametrize("then", ["office 15", "l 60", "living 60 l", "living is doing well, 60"])
async def test_what_may_be_anything_else_is_no_value_of_it(talk: Talk, then: str) -> None:
    await talk.say("/tank new living 200 l fresh")
    await talk.say("/tank new lounge 80 l fresh")
    await talk.say("/tank new office 54 l fresh")
    await talk.say("no3 in office 20")
    for reply in await talk.say(then):
        assert not reply.facts.get("values")


@pytest.mark.parametrize(
    "text", ["und im living?", "and in living?", "et dans living?", "and the living?"]
)
async def test_the_same_of_another_tank_is_asked_right_behind_a_value(
    talk: Talk, text: str
) -> None:
    await talk.say("/tank new living 200 l fresh")
    await talk.say("/tank new office 54 l fresh")
    await talk.say("living no3 30")
    await talk.say("no3 in office 20")
    said = await talk.text(text)
    assert "living: nitrate 30" in said
