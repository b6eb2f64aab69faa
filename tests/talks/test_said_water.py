"""The new water as a question says it: its numbers are its own, and it is never swapped."""

from __future__ import annotations

import pytest

from core.message.new_water import find
from tests.chat.harness import Talk


@pytest.fixture
async def emer(talk: Talk) -> Talk:
    await talk.say("/tank new Emer 100 l fresh")
    await talk.say("added 10 guppy")
    await talk.say("ph 7.6 kh 8 gh 10 temp 25 ammonia 0 nitrite 0")
    await talk.say("/source tap ph 7.8 kh 8 gh 10 no3 5 temp 25")
    return talk


@pytest.mark.parametrize(
    ("words", "said", "broken"),
    [
        ("with 10 degree water", {"temperature": 10}, "temperature"),
        ("at 10 C", {"temperature": 10}, "temperature"),  # never the tank's
        ("with tap water at 10 C", {"temperature": 10}, "temperature"),
        ("with water of 35 c", {"temperature": 35}, "temperature"),
        ("of the water with water at 50 F", {"temperature": 10}, "temperature"),
        ("with ph 9 water", {"ph": 9}, "ph"),
        ("with kh 1 water", {"kh": 1}, "kh"),
        ("with water of kh 7 and gh 9", {"kh": 7, "gh": 9}, None),
    ],
)
async def test_numbers_said_of_the_new_water_are_its_own(
    emer: Talk, words: str, said: dict[str, float], broken: str | None
) -> None:
    facts = await emer.facts(f"what if i change 30% {words}")
    assert facts["source_said"] == pytest.approx(said)
    assert facts["share"] == pytest.approx(0.3)
    assert facts.get("broken", [None])[0] == broken
    assert facts["before"]["temperature"] == pytest.approx(25.0)
    assert (facts["before"]["ph"], facts["before"]["kh"]) == (7.6, 8.0)


@pytest.mark.parametrize(
    ("degrees", "key", "bound"), [(10, "new_water_from", 18.33), (40, "new_water_to", 31.67)]
)
async def test_new_water_is_warmed_or_cooled_the_right_way(
    emer: Talk, degrees: int, key: str, bound: float
) -> None:
    """Two degrees over three tenths of the water."""
    facts = await emer.facts(f"what if i change 30% at {degrees} C")
    assert facts[key] == pytest.approx(bound, abs=0.01)


async def test_a_tanks_own_premise_stays_the_tanks(emer: Talk) -> None:
    facts = await emer.facts("what if i change 30% if the tank is at 26 c")
    assert "source_said" not in facts
    assert facts["before"]["temperature"] == pytest.approx(26.0)


@pytest.mark.parametrize("words", ["cold water", "hot tap water", "warm water"])
async def test_water_that_only_feels_warm_or_cold_is_measured_first(emer: Talk, words: str) -> None:
    (reply,) = await emer.say(f"what if i change 30% with {words}")
    assert reply.facts["refused"] == "temperature_unknown"
    assert reply.facts["new_water_from"] == pytest.approx(25 - 2 / 0.3)
    assert "steps" not in reply.facts


@pytest.mark.parametrize(
    "words",
    ["softened water", "well water", "sea water", "bottled water", "water from the river",
     "softened tap water"],
)  # fmt: skip
async def test_a_water_that_nobody_knows_is_never_swapped_for_the_saved_one(
    emer: Talk, words: str
) -> None:
    (reply,) = await emer.say(f"what if i change 30% with {words}")
    assert reply.facts["refused"] == "source_unknown"
    assert "largest_safe_share" not in reply.facts
    assert "I do not know" in reply.text


async def test_an_unknown_water_that_is_measured_in_the_question_is_used(emer: Talk) -> None:
    facts = await emer.facts("what if i change 30% with bottled water kh 7 gh 9 ph 7.6 25 c")
    assert facts["source"] == "bottled water"
    assert facts["at_once"]["kh"] == pytest.approx(8 - 0.3)


@pytest.mark.parametrize("words", ["undechlorinated water", "chlorinated tap water"])
async def test_water_with_its_chlorine_never_goes_in(emer: Talk, words: str) -> None:
    (reply,) = await emer.say(f"what if i change 50% with {words}")
    assert reply.facts.get("refused") == "untreated" or "emergency" in reply.facts
    assert "steps" not in reply.facts
    assert "ithin the limits" not in reply.text


async def test_changes_of_one_day_are_one(emer: Talk) -> None:
    facts = await emer.facts("what if i change 30% twice today")
    assert facts["share"] == pytest.approx(0.51)


async def test_pure_water_every_day_is_refused_before_minerals_run_out(talk: Talk) -> None:
    """KH 4 with a tenth of pure water a time: 4 x 0.9^13 is 1.02, the 14th is under 1."""
    await talk.say("/tank new Emer 100 l fresh")
    await talk.say("ph 7.2 kh 4 gh 6 temp 25 ammonia 0")
    (reply,) = await talk.say("what if i change 10% with ro every day")
    assert reply.facts["safe_times"] == 13
    assert "not again and again" in reply.lines[0].text


@pytest.mark.parametrize(
    "text",
    ["what if i change 30%", "what if i change 30% of the water", "nitrate under 20",
     "what if i change 50% at ph 8.2 and ammonia 1", "what if i change 30% in my tank at 28 C"],
)  # fmt: skip
def test_what_says_nothing_of_the_new_water(text: str) -> None:
    assert find(text) is None
