"""A change where a KH is unknown: no share is named above what unknown minerals allow."""

from __future__ import annotations

import re

import pytest

from core.advice import limits
from tests.chat.harness import Talk

TAP = "tap is no3 5 kh 6 gh 10 ph 7.4"
ASKED = [
    "how do i get nitrate under 20",
    "can i just change 80 percent today",
    "what if i change 50%",
    "how much can i change",
    "was passiert wenn ich 60% wechsle",
    "et si je change 70%",
    "qué pasa si cambio 80%",
    "cosa succede se cambio 60%",
    "o que acontece se eu trocar 60%",
    "wat als ik 50% ververs",
    "co jeśli podmienię 60%",
    "vad händer om jag byter 60%",
]


def _shares(text: str) -> list[float]:
    return [float(found) for found in re.findall(r"(\d+(?:\.\d+)?) %", text)]


@pytest.mark.parametrize("asked", ASKED)
@pytest.mark.parametrize(
    ("tank", "tap"),
    [
        ("nitrate 80", TAP),
        ("nitrate 120 gh 8", "tap is no3 5"),
        ("nitrate 80 kh 4 ph 7", "tap is no3 5 gh 10"),
    ],
    ids=["the tank's", "both", "the new water's"],
)
async def test_no_share_above_the_one_for_unknown_minerals(
    talk: Talk, tank: str, tap: str, asked: str
) -> None:
    for text in ("/tank new Fern 100 l fresh", tank, tap):
        await talk.say(text)
    (reply,) = await talk.say(asked)
    most = 100.0 * limits.UNKNOWN_MINERALS_SHARE
    assert reply.lines[0].text.startswith("Fern: I cannot tell"), reply.text
    assert "pH and KH" in reply.text or "KH is unknown" in reply.text
    assert _shares(reply.text)
    assert max(_shares(reply.text)) <= most, reply.text
    assert reply.facts["largest_safe_share"] <= limits.UNKNOWN_MINERALS_SHARE
    assert reply.facts.get("share", 0.0) <= limits.UNKNOWN_MINERALS_SHARE


@pytest.mark.parametrize(
    ("tank", "tap", "most"),
    [
        ("nitrate 80", TAP, 0.15),
        ("nitrate 80", "tap is no3 5 kh 10", 0.1),  # 1 °dH of a rise, from none
        ("nitrate 80 temp 26", "tap is no3 5 kh 4 temp 6", 0.1),  # 2 °C
        ("nitrate 80 gh 4", "tap is no3 5 kh 4 gh 29", 0.08),  # 2 °dH
        ("nitrate 80 ammonia 0.5", TAP, 0.0),  # a rising pH would make it poisonous
        ("nitrate 80 kh 0.5", "tap is no3 5", 0.0),
        ("nitrate 80 ammonia 0", TAP, 0.15),
    ],
)
async def test_what_was_measured_binds_it_further(
    talk: Talk, tank: str, tap: str, most: float
) -> None:
    for text in ("/tank new Fern 100 l fresh", tank, tap):
        await talk.say(text)
    (reply,) = await talk.say("what if i change 50%")
    assert reply.facts["largest_safe_share"] == pytest.approx(most)
    assert bool(_shares(reply.text)) == (most > 0.0), reply.text


async def test_so_small_a_share_is_told_with_what_it_mixes(talk: Talk) -> None:
    for text in ("/tank new Fern 100 l fresh", "nitrate 80", TAP):
        await talk.say(text)
    (reply,) = await talk.say("what if i change 10%")
    assert reply.facts["at_once"]["nitrate"] == pytest.approx(72.5)
    assert "10 % would give: nitrate 72" in reply.text


async def test_in_an_emergency_the_share_is_first_aids_alone(talk: Talk) -> None:
    for text in ("/tank new Fern 100 l fresh", "ammonia 4 ph 8.2 temp 26", "tap is kh 6 ph 7.5"):
        await talk.say(text)
    (reply,) = await talk.say("can i change 80%")
    assert reply.lines[0].text.startswith("Change a tenth to a quarter"), reply.text
    assert not _shares(reply.text)
