"""How long till a value: by a plan, by two readings with nothing done between, or else what lacks.

After n changes of s what is left between both waters is (1 - s)^n (C); two readings tell a straight
line (C), with half a step of the kit each way.
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

ASKED = (
    "how long till nitrate is 60",
    "how long until nitrate reaches 60",
    "when will nitrate be 60",
    "wie lange bis nitrat 60",
    "combien de temps avant nitrate 60",
    "cuánto falta para nitrato 60",
    "quanto tempo até nitrato 60",
    "quanto manca a nitrati 60",
    "hoe lang tot nitraat 60",
    "za ile azotany 60",
    "hur lång tid till nitrat 60",
)


@pytest.mark.parametrize("line", ASKED)
async def test_two_readings_tell_it(talk: Talk, line: str) -> None:
    """20 to 40 in four days: 5 a day, so that the next 20 take four more."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("nitrate 20")
    await talk.wait(days=4)
    await talk.say("nitrate 40")
    facts = await talk.facts(line)
    assert facts["days"] == pytest.approx(4.0)
    assert facts["soonest"] < 4.0 < facts["latest"]


async def test_the_days_count_from_now(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("nitrate 20")
    await talk.wait(days=4)
    await talk.say("nitrate 40")
    await talk.wait(days=1)
    assert (await talk.facts(ASKED[0]))["days"] == pytest.approx(3.0)
    assert "away from 10" in await talk.text("how long till nitrate is 10")


async def test_two_readings_within_the_kits_step_tell_nothing(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("nitrate 20")
    await talk.wait(days=1)
    await talk.say("nitrate 21")
    (reply,) = await talk.say("how long till nitrate is 30")
    assert "kit's step leaves open" in reply.text
    assert "days" not in reply.facts


@pytest.mark.parametrize("deed", ["changed 30%", "dosed 2 g potassium nitrate"])
async def test_after_a_deed_it_says_what_is_missing(talk: Talk, deed: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("nitrate 40")
    await talk.say(deed)
    for line in ("how long till nitrate is 30", "wie lange bis nitrat 30"):
        (reply,) = await talk.say(line)
        assert "I need two readings of nitrate" in reply.text
        assert "nitrate 10" in reply.text
        assert "days" not in reply.facts


@pytest.fixture
async def planned(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/source tap ph 7.6 kh 8 gh 14 no3 5 temp 20 total chlorine 0")
    await talk.say("gh 10 kh 6 ph 7.2 nitrate 60 ammonia 0 temp 24")
    return talk


@pytest.mark.parametrize("line", ["how long till nitrate is 30", "wie lange bis nitrat 30"])
async def test_right_after_a_plan_of_changes_it_counts_them(planned: Talk, line: str) -> None:
    steps = (await planned.facts("nitrate under 20"))["steps"]
    facts = await planned.facts(line)
    left = [5 + 55 * (1 - steps[0]) ** count for count in range(len(steps) + 1)]
    assert left[facts["count"]] <= 30 < left[facts["count"] - 1]


async def test_past_the_plan_it_counts_nothing(planned: Talk) -> None:
    await planned.say("nitrate under 20")
    assert "I need two readings" in await planned.text("how long till nitrate is 10")


async def test_after_a_plan_of_parts_it_counts_them(planned: Talk) -> None:
    await planned.say("nitrate under 20")
    parts = (await planned.facts("dose kh 9"))["parts"]
    assert len(parts) == 3
    assert (await planned.facts("how long till kh is 8"))["count"] == 2
    assert "I need two readings" in await planned.text("how long till kh is 12")


async def test_a_reading_since_is_no_plan(planned: Talk) -> None:
    await planned.say("nitrate under 20")
    await planned.say("nitrate 55")
    assert "count" not in await planned.facts("how long till nitrate is 30")
