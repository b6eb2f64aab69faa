"""What is told of the water that goes in is never the tank's; nor is what has a minus before it."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

OF_NEW = [
    ("changed 20% with water at 15c", "temperature"),
    ("changed 20% with tap at 15 c", "temperature"),
    ("did 15 percent just now w tap at 25c", "temperature"),
    ("topped up 2 l with ro at 20c", "temperature"),
    ("30% wc with ro, kh 0 ph 6", "kh"),
    ("changed 10 l with tap, ph 8", "ph"),
    ("changed 10 l with tap gh 14", "gh"),
    ("20% gewechselt mit leitungswasser kh 9", "kh"),
    ("j'ai changé 20% avec l'eau du robinet, kh 9", "kh"),
    ("cambié 20% con agua del grifo, kh 9", "kh"),
    ("ho cambiato 20% con acqua di rubinetto, kh 9", "kh"),
    ("troquei 20% com água da torneira, kh 9", "kh"),
    ("20% ververst met kraanwater, kh 9", "kh"),
    ("podmieniłem 20% wodą z kranu, kh 9", "kh"),
    ("bytte 20% med kranvatten, kh 9", "kh"),
]


@pytest.mark.parametrize(("text", "analyte"), OF_NEW)
async def test_a_reading_of_the_new_water_is_not_the_tanks(
    talk: Talk, text: str, analyte: str
) -> None:
    await talk.say("/tank new Fern 200 l fresh")
    await talk.say("temp 26 kh 4 gh 6 ph 7")
    replies = await talk.say(text)
    assert [e["kind"] for r in replies for e in r.facts.get("events", ())], replies
    assert not any(r.facts.get("values") for r in replies)
    told = "\n".join(r.text for r in replies)
    assert "another water's value" in told
    was = {"temperature": "26", "kh": "4", "gh": "6", "ph": "7"}[analyte]
    assert was in await talk.text(f"history of {analyte}")


@pytest.mark.parametrize(
    ("text", "analyte", "value"),
    [
        ("changed 20%, temp 24", "temperature", 24),
        ("changed 20% with tap. kh 5", "kh", 5),
        ("changed 20% with tap, tank kh 5", "kh", 5),
        ("changed 20% with tap, now kh 5", "kh", 5),
        ("kh 5, changed 20% with tap", "kh", 5),
        ("20% mit leitungswasser gewechselt; kh 5", "kh", 5),
    ],
)
async def test_what_is_told_of_the_tank_beside_it_is_kept(
    talk: Talk, text: str, analyte: str, value: float
) -> None:
    await talk.say("/tank new Fern 200 l fresh")
    replies = await talk.say(text)
    values = [v for r in replies for v in r.facts.get("values", ())]
    assert [(v["analyte"], v["value"]) for v in values] == [(analyte, value)]


@pytest.mark.parametrize(
    "text",
    [
        "what about a big water change w tap, kh 8 ph 7.5",
        "maybe a water change with tap, kh 8 ph 7.5",
    ],
)
async def test_of_a_change_only_thought_of_no_button_stores_them_here(
    talk: Talk, text: str
) -> None:
    await talk.say("/tank new Fern 200 l fresh")
    replies = await talk.say(text)
    labels = [button.label for r in replies for button in r.buttons]
    assert not any(label.startswith(("KH", "pH")) for label in labels), labels
    assert not any(r.facts.get("values") for r in replies)


MINUS = ["-3 kh", "-3 gh", "\u22123 kh", "\u20133 kh", "ph 7.2, -3 kh", "-3 no3", "kh -3"]


@pytest.mark.parametrize("text", MINUS)
async def test_a_minus_before_what_cannot_be_negative_is_asked_about(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 200 l fresh")
    replies = await talk.say(text)
    values = [v for r in replies for v in r.facts.get("values", ())]
    assert [v for v in values if v["analyte"] != "ph"] == []
    assert "may be a dash or mean a fall" in "\n".join(r.text for r in replies)


@pytest.mark.parametrize("text", ["- 3 kh", "- kh 3", "-kh 3", "- kh 3\n- gh 5", "ph 7 - kh 3"])
async def test_a_dash_of_a_list_is_no_minus(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 200 l fresh")
    replies = await talk.say(text)
    values = {v["analyte"]: v["value"] for r in replies for v in r.facts.get("values", ())}
    assert values["kh"] == 3


async def test_what_can_be_negative_keeps_its_minus(talk: Talk) -> None:
    await talk.say("/tank new Fern 200 l fresh")
    (reply,) = await talk.say("-50 mv redox")
    assert reply.facts["values"][0]["value"] == -50


@pytest.mark.parametrize(
    "text",
    [
        "main tank is ph 7.9 kh 8 amm 0",
        "the big tank: ph 7.9 kh 8",
        "das große becken ph 7,9 kh 8",
        "le grand bac ph 7,9",
        "el acuario grande ph 7,9",
        "la vasca grande ph 7,9",
        "aquário principal ph 7,9",
        "de grote bak ph 7,9",
        "duże akwarium ph 7,9",
        "stora akvariet ph 7,9",
    ],
)
async def test_which_tank_is_told_apart_is_asked(talk: Talk, text: str) -> None:
    await talk.say("/tank new Nursery 60 l fresh")
    (reply,) = await talk.say(text)
    assert reply.text.startswith("There is no tank"), reply.text
    assert not reply.facts.get("values")
    assert reply.buttons[0].label.startswith("add ")


async def test_the_other_tanks_values_are_offered_to_no_source(talk: Talk) -> None:
    await talk.say("/tank new Nursery 60 l fresh")
    (reply,) = await talk.say("my other tank ph 7.9 kh 8")
    assert "another water's value" in reply.text
    assert not any("/source" in button.label for button in reply.buttons)
