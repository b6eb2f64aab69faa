"""The own tap told in free words. By amount: 10 % of KH 10 in KH 4 is 4.6; of GH 9 and RO, KH 4 of
a tap with KH 5 is 80 % of it."""

from __future__ import annotations

import pytest

from core.message.tap_told import tap_told
from tests.chat.harness import Talk

TOLD = (
    "my tap is liquid rock kh 14 gh 20",
    "mein leitungswasser ist knallhart kh 14 gh 20",
    "mon eau du robinet est archi dure kh 14 gh 20",
    "mi agua del grifo es durísima kh 14 gh 20",
    "minha água da torneira é pedra kh 14 gh 20",
    "la mia acqua di rubinetto è durissima kh 14 gh 20",
    "mijn kraanwater is keihard kh 14 gh 20",
    "moja kranówka jest twarda kh 14 gh 20",
    "mitt kranvatten är stenhårt kh 14 gh 20",
)
CHANGES = (
    "10 l change w tap kh 10 gh 3 ph 8",
    "changement 10 l, robinet kh 10 gh 3 ph 8",
    "cambio de 10 l con grifo kh 10 gh 3 ph 8",
    "troca de 10 l com torneira kh 10 gh 3 ph 8",
)
OTHER = (
    "tap kh 4, tank kh 8",
    "my tap has no kh 4",
    "the neighbour's tap is kh 14",
    "tap kh 4?",
    "tap water is bad",
    "my tap used to be kh 14",
    "want my tap to be kh 4",
    "tap kh 4 and want kh 8",
    "ro kh 0",
    "kh 4 gh 8",
    "changed 10% with tap",
    "bottled and tap kh 4",
)


@pytest.fixture
async def home(talk: Talk) -> Talk:
    await talk.say("/tank new Home 100 l fresh")
    await talk.say("kh 4 gh 8 ph 7.2 no3 40 temp 24 ammonia 0")
    return talk


async def _tap(talk: Talk) -> dict[str, float]:
    values = (await talk.facts("/source tap"))["values"]
    return {each["analyte"]: each["value"] for each in values}


@pytest.mark.parametrize("line", TOLD)
async def test_it_is_kept_whatever_it_is_called(home: Talk, line: str) -> None:
    facts = await home.facts(line)
    assert {each["analyte"]: each["value"] for each in facts["values"]} == {"kh": 14, "gh": 20}
    assert (await home.facts("history of kh"))["values"][0]["value"] == 4  # the tank's own stands


async def test_words_behind_it_have_no_weight(home: Talk) -> None:
    await home.say("my tap has 15 nitrate tho")
    assert await _tap(home) == {"nitrate": 15}


@pytest.mark.parametrize("line", CHANGES)
async def test_a_change_with_it_is_answered_and_not_logged(home: Talk, line: str) -> None:
    kept, answered = await home.say(line)
    assert {each["analyte"] for each in kept.facts["values"]} == {"kh", "gh", "ph"}
    assert answered.facts["share"] == pytest.approx(0.1)
    assert answered.facts["at_once"]["kh"] == pytest.approx(4.6, abs=0.02)
    assert "events" not in answered.facts


async def test_a_share_alone_is_a_change_after_one(home: Talk) -> None:
    await home.say("/source tap kh 2 gh 3 ph 7 temp 24")
    first = await home.say("ok 10% then, tap kh 10 ph 8")
    assert all("share" not in each.facts for each in first)  # nothing was asked of a change
    await home.say("what if i change 30%")
    _kept, answered = await home.say("ok 10% then, tap kh 10 ph 8")
    assert answered.facts["share"] == pytest.approx(0.1)
    assert answered.facts["at_once"]["kh"] == pytest.approx(4.6, abs=0.02)


async def test_pure_water_wanted_beside_it_is_mixed(home: Talk) -> None:
    kept, mixed = await home.say("kh 5 gh 9 ph 7.4 tap. want to use RO")
    assert {each["value"] for each in kept.facts["values"]} == {5, 9, 7.4}
    shares = {part["source"]: part["share"] for part in mixed.facts["parts"]}
    assert shares == pytest.approx({"tap": 0.8, "RO": 0.2})


async def test_a_deed_stays_a_deed(home: Talk) -> None:
    (reply, *_) = await home.say("changed 10% with tap kh 10 ph 8")
    assert reply.facts["events"][0]["percent"] == 10


@pytest.mark.parametrize("line", OTHER)
def test_what_says_more_is_not_taken(line: str) -> None:
    assert tap_told(line) is None
