"""A wish to raise KH or pH meets the gate for ammonia before any way, step or example is told."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk
from tests.core.message.test_raise_asked import BUFFER, KH, PH

MORE = [
    "raise ph to 8",
    "how much baking soda",
    "can i add soda ash",
    "should i add buffer",
    "should i add crushed coral",
    "dose kh 7",
]
POISONED = {
    "acid": "kh 0 ph 5.8 ammonia 3 temp 25",
    "ordinary": "kh 5 ph 7.8 ammonia 3 temp 25",
}


@pytest.mark.parametrize("water", POISONED.values(), ids=POISONED)
async def test_nothing_raises_it_while_there_is_ammonia(talk: Talk, water: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say(water)
    for text in [*PH, *KH, *BUFFER, *MORE]:
        (reply,) = await talk.say(text)
        assert "higher pH would poison the animals" in reply.lines[0].text, text
        assert reply.facts["refused"] == "ammonia", text
        assert "dose kh" not in reply.text, text
        assert "example" not in reply.text, text


async def test_without_a_volume_too_the_gate_is_first(talk: Talk) -> None:
    await talk.say("kh 5 ph 7.8 ammonia 3 temp 25")
    (reply,) = await talk.say("dose kh 7")
    assert reply.facts["refused"] == "ammonia"


async def test_a_way_down_leads_to_no_way_up(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 3 ph 7.8 ammonia 3 temp 25")
    assert "dose kh" not in await talk.text("how do i lower kh")
    (reply,) = await talk.say("how do i lower ph")
    assert "nothing that raises it now" in reply.lines[0].text
    assert "dose kh" not in reply.text


@pytest.mark.parametrize("text", ["how do i raise the ph", "raise kh", "should i add baking soda"])
async def test_ammonia_that_nobody_measured_is_asked_for_first(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 3 ph 7")
    (reply,) = await talk.say(text)
    assert reply.lines[0].text.startswith("Measure ammonia first")


async def test_old_ammonia_stands_in_the_way(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 3 ph 7.8 ammonia 3 temp 25")
    await talk.wait(days=5)
    await talk.say("kh 3 ph 7.8 temp 25")
    (reply,) = await talk.say("how do i raise kh")
    assert reply.facts["refused"] == "ammonia_old"
    assert "Measure ammonia first" in reply.lines[0].text


async def test_without_ammonia_the_way_is_told(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 3 ph 7 ammonia 0 temp 24")
    for text in KH:
        assert "KH may rise by 1 °dH a day" in await talk.text(text), text
    for text in PH:
        assert "raise KH a little" in await talk.text(text), text
    for text in BUFFER:
        assert "raises KH" in await talk.text(text), text


LOW = {
    "ph 6 kh 0 temp 25": 0.25,
    "ph 5.2 kh 0 temp 25": 0.1,
    "ph 6.4 kh 0.5 temp 25": 0.25,
}
"""A water with next to no KH → its one part, of the table of limits. [°dH]"""

UNNAMED = ["how much bicarb", "should i raise kh", "how do i raise kh", "how much baking soda"]


@pytest.mark.parametrize(("water", "part"), LOW.items(), ids=LOW)
async def test_with_next_to_no_kh_no_whole_degree_is_named(
    talk: Talk, water: str, part: float
) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say(f"{water} ammonia 0")
    for text in UNNAMED:
        (reply,) = await talk.say(text)
        assert reply.facts["step"] == part, text
        assert f"one small part only, {part} °dH at most" in reply.text, text
        assert "1 °dH a day" not in reply.text, text
    planned = await talk.facts("dose kh +1")
    assert planned["to"] <= planned["from"] + part + 1e-9


async def test_ammonia_that_the_gate_bears_is_named_before_the_part(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("ph 6 kh 0 temp 25 ammonia 1")
    for text in [*UNNAMED, *KH]:
        (reply,) = await talk.say(text)
        assert reply.lines[0].text.startswith("Fern: ammonia 1 mg/L comes first"), text
        assert "1 °dH a day" not in reply.text, text


async def test_water_that_is_soft_for_its_animals_is_left(talk: Talk) -> None:
    await talk.say("/tank new Fern 300 l fresh")
    await talk.say("added 6 discus")
    await talk.say("ph 5.8 kh 0.5 temp 28 ammonia 0")
    for text in UNNAMED:
        (reply,) = await talk.say(text)
        assert "leave KH as it is" in reply.lines[0].text, text
    await talk.say("/tank new Quarry 300 l fresh")
    await talk.say("added 6 guppies")
    await talk.say("ph 6.4 kh 0.5 temp 25 ammonia 0")
    assert "leave KH" not in await talk.text("should i raise kh")


async def test_with_some_kh_the_day_s_step_stands(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("ph 7 kh 2 temp 25 ammonia 0")
    assert "KH may rise by 1 °dH a day" in await talk.text("should i raise kh")


@pytest.mark.parametrize(
    "line",
    [
        "should i add 2 g baking soda", "shall i add 2 g of baking soda", "add 2 g baking soda?",
        "should i put 2 g baking soda in", "soll ich 2 g natron reingeben",
        "kann ich 2 g natron dazugeben", "je peux mettre 2 g de bicarbonate",
        "puedo echar 2 g de bicarbonato", "posso aggiungere 2 g di bicarbonato",
        "mag ik 2 g bicarbonaat toevoegen",
    ],
)  # fmt: skip
async def test_whether_so_much_may_go_in_is_answered_by_what_it_does(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4 ph 7 ammonia 0")
    (reply,) = await talk.say(line)
    assert reply.text.startswith("2 g of sodium bicarbonate"), line
    assert reply.facts["grams"] == 2.0, line
    assert "dosed" not in await talk.text("what did i do today"), line


async def test_whether_too_much_may_go_in_is_denied(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4 ph 7 ammonia 0")
    assert (await talk.text("should i add 20 g baking soda")).startswith("No, not so much")


@pytest.mark.parametrize(
    "line", ["should i add 5 ml vinegar", "add 5 ml vinegar?", "can i use vinegar to lower ph"]
)
async def test_acid_is_refused_with_or_without_an_amount(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4 ph 8 ammonia 0")
    assert "No vinegar for water with animals" in await talk.text(line), line


@pytest.mark.parametrize(
    "text",
    [
        "should i put baking soda in to fix ph",
        "should i add baking soda to raise ph",
        "should i put some baking soda in",
        "can i chuck some bicarb in to sort the ph",
    ],
)
async def test_soda_that_may_go_in_waits_for_the_ammonia(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ammonia 1 ph 6.2 kh 1")
    told = await talk.text(text)
    assert "ammonia 1 mg/L comes first" in told
    assert "dose kh +1 " not in told


async def test_what_soda_does_is_told_without_that(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ammonia 0 ph 7.2 kh 3 temp 25")
    assert "raises KH" in await talk.text("should i put baking soda in to fix ph")


@pytest.mark.parametrize("line", ["should i add soda", "soll ich soda zugeben"])
async def test_a_soda_without_its_name_meets_the_gate_too(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("ph 6.5 kh 2 ammonia 1 temp 25")
    assert "No buffer now" in await talk.text(line)
    assert "No buffer now" in await talk.text("should i add baking soda")


@pytest.mark.parametrize(
    "text",
    [
        "does my tank need buffer", "how much buffer does my tank need", "do i need more kh",
        "want more kh", "do i have enough buffer", "wie viel puffer braucht mein becken",
        "je veux plus de kh",
    ],
)  # fmt: skip
async def test_the_buffer_that_a_tank_needs_is_its_kh(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3 ph 7 ammonia 0 temp 25")
    (told,) = await talk.say(text)
    assert told.buttons[-1].label == "dose kh 4"


async def test_a_water_with_enough_needs_no_buffer(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 7 ph 7.5 ammonia 0 temp 25")
    assert "KH 7 needs none" in await talk.text("does it need buffer")


async def test_a_product_called_buffer_is_asked_for_its_label(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3 ph 7 ammonia 0 temp 25")
    assert (await talk.facts("how much kh buffer for 50 l"))["refused"] == "substance_unknown"
