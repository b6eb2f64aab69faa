"""So much of a product that is called by its job: its label is asked for, no number is given."""

from __future__ import annotations

import re

import pytest

from core.message.named_for_job import asked
from tests.chat.harness import Talk

UP = "KH is what holds pH: raise it a little"
DOWN = "What lowers pH at once is acid"
HOLDS = "KH is what holds pH. With baking soda"


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("how many drops of ph up", UP),
        ("how many drops of ph up to get to 7.5", UP),
        ("how much ph up do i need for 90 l?", UP),
        ("can i use ph up", UP),
        ("how much ph down for 90 l", DOWN),
        ("how much kh plus", HOLDS),
        ("how much kh+ for fern", HOLDS),
        ("how many ml of gh plus for fern", "GH holds no pH"),
        ("how much buffer", HOLDS),
        ("how much of ph buffer do i add", HOLDS),
        ("how much alkalinity buffer for 90 l", HOLDS),
        ("wie viele Tropfen pH minus", DOWN),
        ("wie viel KH-Puffer", HOLDS),
        ("combien de gouttes de ph plus", UP),
        ("combien de tampon kh", HOLDS),
        ("cuántas gotas de ph up", UP),
        ("quantas gotas de ph menos", DOWN),
        ("quante gocce di ph più", UP),
        ("hoeveel druppels ph min", DOWN),
        ("ile kropli ph plus", UP),
        ("hur många droppar ph plus", UP),
    ],
)
@pytest.mark.parametrize("planned", [True, False])
async def test_the_label_is_asked_for(talk: Talk, text: str, told: str, planned: bool) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3 gh 4 ph 6.8 ammonia 0 temp 24")
    if planned:
        await talk.say("dose kh 5")
    (no,) = await talk.say(text)
    assert no.facts["refused"] == "substance_unknown"
    first, label, holds = (line.text for line in no.lines)
    assert first.startswith("No number for “")
    assert "Its label must say" in label
    assert told in holds
    assert not re.search(r"\d", first.replace(text, "") + holds.replace("+1", ""))


@pytest.mark.parametrize(
    "text",
    [
        "how much kh plus 2",
        "how much kh +2",
        "how much buffer do i have",
        "how much buffer is left",
        "wie viel Puffer habe ich",
        "how much kh to 5",
        "how much ph",
        "my ph buffer: 5 g per 80 l raises kh 1",
        "ph up a bit since yesterday",
        "how much did ph go up",
        "kh plus",
    ],
)
def test_the_water_and_a_wish_are_no_product(text: str) -> None:
    assert asked(text) is None


async def test_a_product_that_is_known_is_dosed_by_its_label(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3 ph 6.8 ammonia 0 temp 24")
    await talk.say("my kh buffer: 5 g per 80 l raises kh 1")
    assert "5.6 g of my kh buffer" in await talk.text("how much my kh buffer for kh 4")


@pytest.mark.parametrize(
    "line", ["how much buffer", "how much buffer do i put in", "how much kh plus"]
)
async def test_a_press_asks_for_it_with_a_salt_that_is_known(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3 ph 7 ammonia 0")
    (reply,) = await talk.say(line)
    assert "grams" not in reply.facts, line
    assert "buffer do" not in reply.text, line
    assert [each.label for each in reply.buttons] == ["with baking soda"], line
    (plan,) = await talk.press(1)
    assert plan.facts["substance"] == "sodium bicarbonate", line
    assert plan.facts["to"] == 4.0, line


async def test_without_a_tank_there_is_nothing_to_press(talk: Talk) -> None:
    (reply,) = await talk.say("how much buffer do i put in")
    assert not reply.buttons
