"""How much a drop of a kit counts, told in talk; the numbers follow from it alone."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "texts",
    [
        ("kh 4 drops", "its kh 4 but each drop is 0.5"),
        ("kh 4 drops", "each drop is 0.5"),
        ("kh 4 drops, 0,5 pro tropfen",),
        ("kh 4 drops", "jeder Tropfen ist 0,5 °dH"),
    ],
)
async def test_drops_are_read_as_the_kit_counts_them(talk: Talk, texts: tuple[str, ...]) -> None:
    for text in texts:
        await talk.say(text)
    plan = (await talk.say("how much baking soda for kh 6, 100 l"))[0]
    assert plan.facts["from"] == 2.0


async def test_a_number_never_told_in_drops_is_asked(talk: Talk) -> None:
    _set, asked = await talk.say("kh 4, each drop is 0.5")
    assert "Measured" not in await talk.text("how is my water")
    (kept, *_rest) = await talk.press(2, asked)
    assert "KH 4 °dH" in kept.text


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("kh test stays yellow after the first drop", "under one drop"),
        ("KH Test bleibt nach dem ersten Tropfen gelb", "under one drop"),
        ("my gh test goes green right away", "how many drops"),
    ],
)
async def test_a_colour_is_no_value_and_no_animal(talk: Talk, text: str, part: str) -> None:
    await talk.say("70 litres ph 5.9")
    (told,) = await talk.say(text)
    assert part in told.text
    assert "end stands in the kit's leaflet" in told.text
    assert not told.facts.get("values")
    assert "kh" not in (await talk.facts("is my water ok"))["readings"]


async def test_the_drop_at_which_it_turned_is_the_value(talk: Talk) -> None:
    (told,) = await talk.say("the kh test turned yellow after 5 drops")
    assert told.facts["values"][0]["value"] == 5.0


async def test_a_value_beside_a_colour_is_kept(talk: Talk) -> None:
    (told, *_rest) = await talk.say("kh 5 drops")
    assert told.facts["values"]
    assert "leaflet" not in await talk.text("5 yellow shrimps, kh 5")


@pytest.mark.parametrize(
    ("text", "offered"),
    [
        ("my tap water is 7 drops", ["tap kh 7 drops", "tap gh 7 drops"]),
        ("Leitungswasser hat 7 Tropfen", ["tap kh 7 drops", "tap gh 7 drops"]),
        ("the kh one changed colour after 1 drop", ["kh 1 drops"]),
        ("test kit took 2 drops to go yellow", ["kh 2 drops", "gh 2 drops"]),
    ],
)
async def test_drops_of_nothing_certain_are_asked_about(
    talk: Talk, text: str, offered: list[str]
) -> None:
    await talk.say("my tank is 100 l")
    (asked,) = await talk.say(text)
    assert [button.label for button in asked.buttons] == offered
    (kept,) = await talk.press(1, asked)
    assert kept.facts["values"][0]["unit"] == "drops"


@pytest.mark.parametrize(
    "text",
    [
        "i put 7 drops in my tap water", "changed 20 l after 2 drops of dye", "fed 2 drops",
        "added 5 drops of dechlorinator to tap water", "the kit needs 5 drops",
    ],
)  # fmt: skip
async def test_drops_that_went_in_are_of_no_test(talk: Talk, text: str) -> None:
    await talk.say("my tank is 100 l")
    for reply in await talk.say(text):
        assert not any(button.label.endswith("drops") for button in reply.buttons)


async def test_half_a_degree_a_drop_puts_right_the_drops_told_before(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    await talk.say("kh test took 5 drops to turn yellow")
    said = await talk.text("actually i used the 10ml so half a degree per drop")
    assert "KH 5 drops = 2.5 °dH" in said
    assert "KH 2.5 is low" in said
