"""Shares of two waters, asked as people ask. By amounts: half of GH 16, half of RO is 8."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from core.message.mixing import asked
from core.message.model import Context
from tests.chat.harness import Talk

GH_8 = (
    "how much ro for gh 8",
    "wie viel osmosewasser für gh 8",
    "combien d'eau osmosée pour gh 8",
    "cuánta agua de ósmosis para gh 8",
    "quanta água de osmose para gh 8",
    "quanta acqua osmotica per gh 8",
    "hoeveel osmosewater voor gh 8",
    "ile wody ro na gh 8",
    "hur mycket ro vatten för gh 8",
    "mix ro and tap to gh 8",
    "mische osmose und leitungswasser auf gh 8",
)


@pytest.fixture
async def moss(talk: Talk) -> Talk:
    """A soft tank and a hard tap."""
    await talk.say("/tank new Moss 60 l fresh")
    await talk.say("kh 4 gh 6 ph 7 temp 25 ammonia 0")
    await talk.say("i have ro and tap. tap gh 16 kh 12")
    return talk


def _shares(facts: dict[str, object]) -> dict[str, float]:
    parts = facts["parts"]
    assert isinstance(parts, list)
    return {part["source"]: part["share"] for part in parts}


@pytest.mark.parametrize("line", GH_8)
async def test_shares_and_what_the_mix_holds(moss: Talk, line: str) -> None:
    facts = await moss.facts(line)
    assert _shares(facts) == pytest.approx({"RO": 0.5, "tap": 0.5})
    assert facts["mixed"]["kh"] == pytest.approx(6.0)
    assert facts["mixed"]["gh"] == pytest.approx(8.0)


@pytest.mark.parametrize("line", GH_8[:9])
async def test_a_tank_over_the_wish_is_changed_towards_it(moss: Talk, line: str) -> None:
    await moss.say("gh 15 kh 10 ph 7.6")
    facts = await moss.facts(line)
    assert facts["source"] == "RO"
    assert facts["share"] == pytest.approx((15 - 8) / 15, abs=0.01)  # a whole per cent
    assert facts["steps"][0] < facts["share"]  # within the step of the day


async def test_litres_of_each(moss: Talk) -> None:
    for line in ("how much ro for a 10 l can", "match 10 l of tap to the tank"):
        (reply,) = await moss.say(line)
        assert reply.lines[0].text == "To match the KH of Moss:"
        assert _shares(reply.facts) == pytest.approx({"RO": 2 / 3, "tap": 1 / 3})
        assert "6.7 L RO" in reply.text
    assert "13.3 L rain" in await moss.text("how much rain for 20 l at kh 4")


@pytest.mark.parametrize(
    "line", ["match tap to tank", "leitungswasser ans becken anpassen", "ajuster l'eau du robinet",
             "dopasować kranówkę do akwarium"],
)  # fmt: skip
async def test_the_tap_is_matched_by_kh(moss: Talk, line: str) -> None:
    facts = await moss.facts(line)
    assert facts["to"] == {"kh": 4}
    assert _shares(facts)["tap"] == pytest.approx(1 / 3)


async def test_what_is_not_known_is_asked_for(talk: Talk) -> None:
    await talk.say("/tank new Moss 60 l fresh")
    assert "I do not know GH of tap" in await talk.text("mix ro and tap to gh 6")
    await talk.say("/source tap kh 12 gh 16")
    assert (await talk.text("match tap to tank")).startswith("To what?")
    await talk.say("kh 14")
    assert "match" not in await talk.text("kh 14")
    text = await talk.text("match tap to tank")  # no RO makes it harder
    assert "12" in text
    assert "%" not in text


@pytest.mark.parametrize(
    "line",
    ["can i fill it with tap", "kann ich das becken mit leitungswasser füllen",
     "czy mogę nalać wody z kranu", "kan ik het vullen met kraanwater"],
)  # fmt: skip
async def test_a_water_to_fill_with_is_judged(moss: Talk, line: str) -> None:
    (reply,) = await moss.say(line)
    assert reply.facts["source"] == "tap"
    assert reply.facts["verdict"] == "yes"
    assert "dechlorinated" in reply.text
    await moss.say("/source tap copper 0.3 kh 12 gh 16")
    assert (await moss.facts(line))["verdict"] == "no"


async def test_cautions_of_untreated_and_pure_water_stay(moss: Talk) -> None:
    assert "Never animals in pure RO" in await moss.text("can i fill it with ro")
    assert "verdict" not in await moss.facts("can i fill it with untreated tap")


@pytest.mark.parametrize(
    "line",
    ["how much salt for 20 l ro to gh 6 kh 3", "what if i change 30% with half ro and tap",
     "changed 20% with ro", "how much ro can i change", "tap gh 16 kh 12", "ro kh 0",
     "60% ro 40% tap", "how much tap to reach kh 4"],
)  # fmt: skip
def test_other_messages_ask_for_no_shares(line: str) -> None:
    assert asked(line, Context(now=datetime(2026, 3, 1, tzinfo=UTC), zone=UTC)) is None
