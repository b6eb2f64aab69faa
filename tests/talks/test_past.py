"""What was done and measured, asked of the record."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def a_week(talk: Talk) -> None:
    """From Sunday 1 March: a change, then a dose on Tuesday; now it is the Monday after."""
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 4 gh 6 ph 7 no3 20")
    await talk.say("changed 20%")
    await talk.wait(days=2)
    await talk.say("kh 5")
    await talk.say("dosed 1 g baking soda")
    await talk.wait(days=6)


async def test_the_last_change_is_told_and_stores_nothing(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    assert await talk.text("when did i last change the water") == "Fern: no water change on record."
    await a_week(talk)
    (reply,) = await talk.say("when was the last water change?")
    assert reply.lines[0].text == "Fern: 8 days ago. Sun 1 Mar 12:00: changed 20 %"
    assert [each["percent"] for each in reply.facts["events"]] == [20]
    assert (await talk.facts("last water change"))["events"] == reply.facts["events"]


async def test_whether_and_what_within_a_span(talk: Talk) -> None:
    await a_week(talk)
    told = await talk.text("did i change the water last week")
    assert told.startswith("Fern: no water change on record for then.")
    assert "The last on record: Sun 1 Mar" in told
    assert "yes. Tue 3 Mar 12:00: dosed 1 g" in await talk.text("did i dose baking soda last week?")
    assert "dosed 1 g" in await talk.text("what did i dose")
    assert "no dose on record for then" in await talk.text("what did i dose yesterday")


async def test_how_a_value_was(talk: Talk) -> None:
    await a_week(talk)
    (reply,) = await talk.say("how was kh last week")
    assert "KH 5" in reply.text
    assert "KH 4" not in reply.text
    assert [each["value"] for each in reply.facts["values"]] == [5]
    assert "nitrate was not measured then" in await talk.text("what was no3 on wednesday")
    assert "wie war" not in await talk.text("wie war gh letzte woche")


async def test_is_it_falling_is_asked_of_a_named_tank_too(talk: Talk) -> None:
    await a_week(talk)
    await talk.say("/tank new Rift 200 l fresh")
    for line in ("rift: is kh falling", "is kh falling in rift"):
        assert "Rift: no readings of KH yet" in await talk.text(line)
    assert "KH 5" in await talk.text("fern: is kh falling")


async def test_a_group_is_not_overheard(talk: Talk) -> None:
    await a_week(talk)
    quiet = await talk.say("when did i last change the water", group=True, addressed=False)
    assert quiet == []


async def test_a_value_that_stands_is_told_with_what_was_done_after_it(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 4 no3 40 temp 25")
    await talk.wait(hours=3)
    await talk.say("changed 25%")
    (reply,) = await talk.say("whats the no3 then")
    assert [value["canonical"] for value in reply.facts["values"]] == [40]
    assert [event["percent"] for event in reply.facts["events"]] == [25]
    assert "measured before this" in reply.text
    await talk.wait(days=2)
    assert "2 days ago" in await talk.text("wie ist nitrat jetzt")


async def test_a_value_measured_after_it_all_stands_alone(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("changed 25%")
    await talk.wait(hours=3)
    await talk.say("no3 30")
    facts = await talk.facts("quanto está o nitrato agora")
    assert [value["canonical"] for value in facts["values"]] == [30]
    assert "events" not in facts


async def test_what_was_never_measured_is_said_to_be_so_or_explained(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 4")
    assert "not measured yet" in await talk.text("so whats the salinity")
    assert "filter's chain" in await talk.text("whats the no3")
    assert "filter's chain" in await talk.text("what is nitrate")


@pytest.mark.parametrize(
    "line",
    [
        "changed 25% whats no3 now",
        "changed 25%. what is no3 now?",
        "ich habe 25% gewechselt, wie ist nitrat jetzt",
        "j'ai changé 25%, quel est le nitrate maintenant",
        "cambié 25%, cuánto está el nitrato ahora",
        "bytte 25%, vad är nitraten nu",
    ],
)
async def test_what_is_told_before_the_question_is_kept(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("no3 40")
    await talk.wait(hours=3)
    kept, stands = await talk.say(line)
    assert [event["percent"] for event in kept.facts["events"]] == [25]
    assert [value["canonical"] for value in stands.facts["values"]] == [40]
    assert [event["percent"] for event in stands.facts["events"]] == [25]
