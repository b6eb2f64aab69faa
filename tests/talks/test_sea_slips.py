"""Units and points that slip in a sea: asked about, never stored nor planned from."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

REEF = "/tank new Reef 200 l marine"


@pytest.mark.parametrize(
    ("said", "offered"),
    [
        ("alk 2.8", "KH 2.8 meq/L"),
        ("alk 3.2 ca 430", "KH 3.2 meq/L"),
        ("kh 2.8", "KH 2.8 meq/L"),
        ("alkalinity is 1.5", "KH 1.5 meq/L"),
        ("alkalinität 2,9", "KH 2.9 meq/L"),
        ("alcalinité 3", "KH 3 meq/L"),
        ("alcalinidad 4.5", "KH 4.5 meq/L"),
        ("alkaliteit 2.8-3", None),
        ("alk 9 meq", "KH 9 °dH"),
        ("alk 8 ppm", "KH 8 °dH"),
        ("ca 4.2", "calcium 420"),
        ("calcium 42 mg/l", "calcium 420"),
        ("mg 1.3", "magnesium 1300"),
        ("magnesio 135", "magnesium 1350"),
        ("sal 1025", "salinity 1.025 SG"),
        ("salinity 1026", "salinity 1.026 SG"),
    ],
)
async def test_what_no_sea_has_is_asked(talk: Talk, said: str, offered: str | None) -> None:
    await talk.say(REEF)
    reply = (await talk.say(said))[-1]
    assert "Not stored" in reply.text
    if offered is not None:
        assert reply.buttons[0].label == offered


async def test_the_answer_stores_in_the_unit_pressed(talk: Talk) -> None:
    await talk.say(REEF)
    await talk.say("alk 2.8")
    reply = (await talk.press(1))[-1]
    assert "7.9 °dH" in reply.text


@pytest.mark.parametrize(
    "said",
    [
        "alk 8", "alk 7.5", "kh 5", "alk 2.8 meq", "alk 2.8 dkh", "dkh 2.8", "alk 140 ppm",
        "alk 3 mmol/l", "ca 420", "ca 100", "mg 1300", "mg 300", "sal 1.026", "sal 35",
    ],
)  # fmt: skip
async def test_what_a_sea_may_have_is_stored(talk: Talk, said: str) -> None:
    await talk.say(REEF)
    assert "Not stored" not in (await talk.say(said))[0].text


@pytest.mark.parametrize("said", ["kh 2.8", "ca 42", "mg 13", "kh 3 ca 40 mg 5"])
async def test_fresh_water_is_read_as_before(talk: Talk, said: str) -> None:
    await talk.say("/tank new Fern 100 l")
    await talk.say(REEF)
    assert "Not stored" not in (await talk.say(f"Fern: {said}"))[0].text


@pytest.mark.parametrize(
    "said", ["i have a 200 l marine tank alk 2.8 ca 420", "new tank Reef 200 l marine, alk 2.8"]
)
async def test_a_sea_told_with_its_value_is_asked_as_well(talk: Talk, said: str) -> None:
    replies = await talk.say(said)
    assert "KH 2.8 meq/L or KH 2.8 °dH" in replies[-1].text
    assert all("kh" not in reply.facts.get("values", {}) for reply in replies)


async def test_nothing_is_offered_where_nothing_is_likely(talk: Talk) -> None:
    await talk.say(REEF)
    assert "Not stored" in (reply := (await talk.say("ca 0"))[0]).text
    assert not reply.buttons


async def test_the_tap_of_a_sea_is_no_sea(talk: Talk) -> None:
    await talk.say(REEF)
    assert "Not stored" not in (await talk.say("/source tap kh 3 ca 40"))[0].text


@pytest.mark.parametrize(
    ("before", "text", "choices"),
    [
        ("alk 2.3 meq/l", "alk now 2.6", ["KH 2.6 meq/L", "KH 2.6 °dH"]),
        ("kh 2.3 meq/l", "kh 1.9 ph 7.4", ["KH 1.9 meq/L", "KH 1.9 °dH"]),
        ("kh 10 °fH", "kh 11", ["KH 11 °fH", "KH 11 °dH"]),
    ],
)
async def test_a_bare_hardness_that_fits_the_unit_before_is_asked(
    talk: Talk, before: str, text: str, choices: list[str]
) -> None:
    await talk.say("300 litre tank")
    await talk.say(before)
    *_, asked = await talk.say(text)
    assert [button.label for button in asked.buttons[:2]] == choices
    assert (await talk.press(1, asked))[0].facts["values"][0]["unit"] == choices[0].split()[-1]


@pytest.mark.parametrize(
    ("before", "text"),
    [
        ("alk 2.3 meq/l", "alk 7.5"), ("alk 2.3 meq/l", "kh 2.6 dkh"), ("kh 6.4", "kh 2.6"),
        ("kh 2 drops", "kh 2"), ("alk 2.3 meq/l", "gh 3"),
    ],
)  # fmt: skip
async def test_a_bare_hardness_is_degrees_else(talk: Talk, before: str, text: str) -> None:
    await talk.say("300 litre tank")
    await talk.say(before)
    (kept,) = await talk.say(text)
    assert kept.facts["values"][0]["value"] == float(text.split()[1])
