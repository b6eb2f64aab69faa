"""A plan for a later time beside what is told is no date of it: `testing again friday`."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

NOON = "2026-03-01T12:00"


@pytest.mark.parametrize(
    ("text", "at", "plan"),
    [
        ("nitrate 20, testing again friday", NOON, "testing again friday"),
        ("nitrate 20. gonna test again on saturday", NOON, "gonna test again on saturday"),
        ("nitrate 20 and i'll test again wednesday", NOON, "i'll test again wednesday"),
        ("nitrate 20, next test on the 5th", NOON, "next test on the 5th"),
        ("nitrat 20, nächster test am freitag", NOON, "nächster test am freitag"),
        ("nitrate 20, doing a water change on friday", NOON, "doing a water change on friday"),
        ("nitrate 20 on friday, retesting sunday", "2026-02-27T12:00", "retesting sunday"),
        ("nitrate 20 friday", "2026-02-27T12:00", None),
        ("nitrate 20, tested friday", "2026-02-27T12:00", None),
        ("nitrate 20, tested again friday", "2026-02-27T12:00", None),
        ("friday test: nitrate 20", "2026-02-27T12:00", None),
        ("nitrate 20 testing today", NOON, None),
    ],
)
async def test_plan_beside_reading(talk: Talk, text: str, at: str, plan: str | None) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    replies = await talk.say(text)
    assert ("27 Feb" in str(replies[0].lines)) is (at != NOON)
    doubts = [d for each in replies for d in each.facts.get("doubts", [])]
    assert [d["text"] for d in doubts] == ([plan] if plan else [])
    assert ("remind me" in str(replies[-1].lines)) is (plan is not None)


async def test_wish_and_dose_stay(talk: Talk) -> None:
    """A goal by a day and a dose with its amount are spoken of elsewhere."""
    await talk.say("/tank new Fern 90 l fresh")
    said = str(await talk.say("kh 4, want to get to 8 by friday"))
    assert "planned" not in said
    assert "planned" not in str(await talk.say("kh 4, will dose 5 g bicarb friday"))


async def test_reminded_then(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("nitrate 20, testing again friday")
    (reply,) = await talk.say("remind me then")
    assert reply.facts["reminder"]["due"].startswith("2026-03-06")
    (reply,) = await talk.say("remind me then")
    assert "When" in str(reply.lines)
