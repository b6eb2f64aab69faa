"""A product's label is never taken for a reading, and passes the same gates as bicarbonate."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

LABEL = "5 g per 80 l raises kh 1"


async def test_a_label_is_no_reading(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 ph 7.2 temp 25 ammonia 0")
    (reply,) = await talk.say(LABEL)
    assert reply.facts["grams"] == pytest.approx(5 * 120 / 80)
    assert "Not stored as a reading" in reply.text
    assert (await talk.facts("dose kh 6"))["from"] == 4


async def test_with_ammonia_there_is_no_amount(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 ph 7.2 temp 25 ammonia 1")
    assert "Keep aeration and CO2 as they are" in (await talk.say(LABEL))[0].lines[0].text
    await talk.say("kh 4 ph 8.0 temp 25 ammonia 1")
    facts = await talk.facts(LABEL)
    assert facts["refused"] == "ammonia"
    assert "grams" not in facts


async def test_without_ammonia_the_first_sentence_is_conditional(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 ph 7.2 temp 25")
    (reply,) = await talk.say(LABEL)
    assert reply.lines[0].text.startswith("Only if total ammonia is under")


async def test_a_routine_is_told_by_the_tanks_own_nitrate(talk: Talk) -> None:
    """Two a day: 14 a week; a third each week with tap of 5 ends at 5 + 14 / 0.33."""
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("/source tap ph 7.6 kh 5 gh 7 no3 5 temp 25")
    for day in range(0, 16, 2):
        await talk.say(f"kh 4.5 gh 6 ph 7.4 temp 25 ammonia 0 no3 {10 + 2 * day}")
        await talk.wait(days=2)
    await talk.say("kh 4.5 gh 6 ph 7.4 temp 25 ammonia 0 no3 42")
    (reply,) = await talk.say("what if i change 33% every week")
    assert reply.facts["routine"]["per_day"] == pytest.approx(2.0, rel=0.05)
    assert reply.facts["routine"]["high"] == pytest.approx(5 + 14 / 0.33, rel=0.05)
    kept = (await talk.facts("get nitrate under 35"))["routine"]
    assert kept["high"] == pytest.approx(35.0)
    assert kept["share"] == pytest.approx(14 / 30, rel=0.05)


async def test_a_label_is_read_in_other_words_and_never_stored(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 ph 7.2 temp 25 ammonia 0 no3 20")
    (reply,) = await talk.say("5 g auf 80 l erhöht die KH um 1")
    assert reply.facts["grams"] == pytest.approx(5 * 120 / 80)
    (other,) = await talk.say("5 ml per 100 l raises no3 2")
    assert "Not stored as a reading" in other.text
    assert "nitrate 20" in (await talk.say("history of nitrate"))[0].text
    assert (await talk.facts("dose kh 6"))["from"] == 4
