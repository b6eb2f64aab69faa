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
