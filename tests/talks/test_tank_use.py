"""What a tank uses a day, of what was just spoken of, and how often a dose makes up for it.

20 to 8 mg/L in three days are 4 a day (C). A dose before half of the wish is used up, and none past
the step of a day: common practice, no source.
"""

from __future__ import annotations

import pytest

from core.message.tank_use import asks_use
from tests.chat.harness import Talk

USE = (
    "was verbraucht es am tag",
    "what does it use a day",
    "how much does the tank use",
    "what does the tank use",
    "how much nitrate does it use a day",
    "wie viel verbraucht das becken",
    "combien consomme l'aquarium par jour",
    "cuánto consume al día",
    "quanto consome por dia",
    "quanto consuma al giorno",
    "hoeveel verbruikt het per dag",
    "ile zużywa dziennie",
    "hur mycket förbrukar det per dag",
)
OFTEN = (
    "how often to dose for nitrate {}",
    "how often should i dose for nitrate {}",
    "wie oft düngen für nitrat {}",
    "à quelle fréquence doser pour nitrate {}",
    "cada cuánto abonar para nitrato {}",
    "com que frequência adubar para nitrato {}",
    "ogni quanto fertilizzare per nitrati {}",
    "hoe vaak bemesten voor nitraat {}",
    "jak często nawozić dla azotanów {}",
    "hur ofta gödsla för nitrat {}",
)


@pytest.fixture
async def planted(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("nitrate 20")
    await talk.wait(days=3)
    await talk.say("nitrate 8")
    return talk


@pytest.mark.parametrize("line", USE)
async def test_what_it_uses_of_what_was_spoken_of(planted: Talk, line: str) -> None:
    facts = await planted.facts(line)
    assert list(facts["uses"]) == ["nitrate"]
    assert facts["uses"]["nitrate"]["per_day"] == pytest.approx(4.0)


async def test_after_a_plan_it_is_of_the_plan(planted: Talk) -> None:
    await planted.say("kh 4")
    await planted.say("dose kh 5")
    assert "what it uses of KH" in await planted.text("what does it use a day")


async def test_what_builds_up_is_not_used(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("nitrate 10")
    await talk.wait(days=4)
    await talk.say("nitrate 30")
    assert "not used up: it rises by about 5" in await talk.text("what does it use a day")
    (reply,) = await talk.say(OFTEN[0].format(10))
    assert "every_days" not in reply.facts


@pytest.mark.parametrize("line", [USE[0], USE[1]])
async def test_without_two_readings_they_are_asked_for(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("nitrate 20")
    assert "I need two readings" in await talk.text(line)
    await talk.say("dosed 2 g potassium nitrate")
    await talk.wait(days=2)
    await talk.say("nitrate 12")
    (reply,) = await talk.say(line)
    assert "uses" not in reply.facts


@pytest.mark.parametrize("line", OFTEN)
async def test_how_often_by_the_use(planted: Talk, line: str) -> None:
    """Of 20 a half is 10, two and a half days of 4: every two days 8."""
    facts = await planted.facts(line.format(20))
    assert facts["every_days"] == 2
    assert facts["rise"] == pytest.approx(8.0)


async def test_it_says_what_to_send_without_readings(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    for line in OFTEN:
        (reply,) = await talk.say(line.format(10))
        assert "I need two readings of nitrate" in reply.text
        assert "every_days" not in reply.facts


async def test_a_wish_over_the_limit_gets_no_rhythm(planted: Talk) -> None:
    (reply,) = await planted.say(OFTEN[0].format(100))
    assert "over 44" in reply.text
    assert "every_days" not in reply.facts


async def test_no_dose_passes_the_step_of_a_day(talk: Talk) -> None:
    """KH that falls by 0.6 a day: two days of it would be more than 1 °dH at once."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 8")
    await talk.wait(days=5)
    await talk.say("kh 5")
    facts = await talk.facts("how often to dose for kh 6")
    assert (facts["every_days"], facts["rise"]) == (1, pytest.approx(0.6))


async def test_a_routine_of_changes_stays_one(planted: Talk) -> None:
    assert "every_days" not in await planted.facts("how often for nitrate under 20")


@pytest.mark.parametrize(
    "line", ["what should i use", "how much soda does it use", "it uses 2 a day", "use it"]
)
def test_other_words_ask_no_use(line: str) -> None:
    assert not asks_use(line)
