"""After a part of a plan is on record: its retest leads on to the next part."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

LEADS = "Send: dose kh 6"


@pytest.fixture
async def begun(talk: Talk) -> Talk:
    """A plan in two parts, KH 4 to 6, of which the first is on record."""
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 gh 8 ph 7.2 temp 24 ammonia 0")
    (plan,) = await talk.say("dose kh 6")
    assert len(plan.facts["parts"]) == 2
    await talk.say("log it")
    return talk


async def test_the_retest_of_a_part_leads_on_to_the_next(begun: Talk) -> None:
    await begun.wait(hours=25)
    assert LEADS in await begun.text("kh 5 ph 7.2 ammonia 0")
    (part,) = await begun.say("dose kh 6")
    first = part.lines[0].text
    assert "Retest first" not in first
    assert "the rest of your plan, KH 5 → 6" in first
    assert "retest_first" not in part.facts
    assert len(part.facts["parts"]) == 1
    await begun.say("log it")
    await begun.wait(hours=25)
    assert "next part" not in await begun.text("kh 5.5 ph 7.2 ammonia 0")


async def test_nothing_leads_on_too_early_beside_poison_or_at_the_goal(begun: Talk) -> None:
    await begun.wait(hours=3)
    assert LEADS not in await begun.text("kh 5 ph 7.2 ammonia 0")
    await begun.wait(hours=22)
    assert LEADS not in await begun.text("kh 6 ph 7.2 ammonia 0")
    assert LEADS not in await begun.text("kh 5 ph 8.5 ammonia 5")


async def test_a_part_that_was_undone_is_no_part(begun: Talk) -> None:
    await begun.say("undo")
    await begun.wait(hours=25)
    assert LEADS not in await begun.text("kh 5 ph 7.2 ammonia 0")
    assert (await begun.say("dose kh 6"))[0].lines[0].text.startswith("Retest first")


async def test_a_plan_that_is_not_retested_or_has_another_goal_is_no_next_part(begun: Talk) -> None:
    await begun.wait(hours=25)
    assert "the rest of your plan" not in await begun.text("dose kh 6")
    await begun.say("kh 5 ph 7.2 ammonia 0")
    (other,) = await begun.say("dose kh 5.5")
    assert other.lines[0].text.startswith("Retest first")


@pytest.mark.parametrize(
    "said",
    ["can i put it all at once?", "can i add both parts today", "Alles auf einmal?",
     "tout d'un coup ?", "¿todo de una vez?", "tudo de uma vez?", "tutto in una volta?",
     "alles in één keer?", "wszystko naraz?", "allt på en gång?"],
)  # fmt: skip
async def test_the_parts_of_a_plan_are_not_put_together(talk: Talk, said: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 gh 8 ph 7.2 temp 24 ammonia 0")
    await talk.say("dose kh 6")
    (reply,) = await talk.say(said)
    assert reply.lines[0].text.startswith("No: give the 2 parts 24 h apart")
    assert len(reply.facts["parts"]) == 2
    await talk.say("dose kh 5")
    assert "No: give" not in await talk.text(said)


async def test_hardness_is_led_on_to_its_next_part(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("gh 3 kh 4 ph 7 temp 24 ammonia 0")
    await talk.say("dose gh 8")
    await talk.say("log it")
    await talk.wait(hours=3)
    assert "next part" not in await talk.text("gh 4")  # too early
    await talk.wait(hours=22)
    assert "Send: dose gh 8" in await talk.text("gh 4.5")
    (rest,) = await talk.say("dose gh 8")
    assert rest.facts["goals"] == [{"analyte": "gh", "from": 4.5, "to": 8.0}]
    assert "next part" not in await talk.text("gh 8")  # there already


async def test_the_next_part_of_one_salt_is_asked_with_it(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("gh 3 kh 4 ph 7 temp 24 ammonia 0")
    await talk.say("dose gh 8 with calcium chloride")
    await talk.say("log it")
    await talk.say("calcium chloride dihydrate")
    await talk.wait(hours=25)
    assert "Send: dose gh 8 with calcium chloride dihydrate" in await talk.text("gh 5")


async def test_salinity_is_led_on_to_its_next_part(talk: Talk) -> None:
    await talk.say("/tank new Lagoon 90 l brackish")
    await talk.say("salinity 5 g/kg temp 25 kh 6 ph 8 ammonia 0")
    await talk.say("dose salinity 8")
    await talk.say("log it")
    await talk.wait(hours=25)
    assert "Send: dose salinity 8" in await talk.text("salinity 6")


WHAT_NOW = [
    "what now",
    "now what?",
    "und jetzt",
    "et maintenant",
    "y ahora qué",
    "e agora",
    "e adesso",
    "wat nu",
    "co teraz",
    "vad nu",
]


@pytest.mark.parametrize("text", WHAT_NOW)
async def test_what_now_of_a_plan_is_its_next_part(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 gh 8 ph 7.2 temp 24 ammonia 0")
    await talk.say("dose kh 6")
    assert (await talk.text(text)).startswith("None of the 2 parts is on record yet. The first:")
    await talk.say("log it")
    assert (await talk.text(text)).startswith("1 of 2 parts is left.\nTest KH, pH and ammonia from")
    await talk.wait(hours=25)
    assert "send them, then ask: dose kh 6" in await talk.text(text)
    await talk.say("kh 5 ph 7.2 ammonia 0")
    assert "the rest of your plan, KH 5 → 6" in await talk.text(text)


async def test_what_now_is_of_what_is_wrong_where_something_is(begun: Talk) -> None:
    await begun.say("gave double")
    assert "Stop dosing" in await begun.text("what now")
