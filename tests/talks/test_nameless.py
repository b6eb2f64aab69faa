"""What went in and was not named: first aid tells of it, and its name alone puts it on record."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

SAID = "i put 2 tablespoons in already"


@pytest.fixture
async def untold(talk: Talk) -> Talk:
    """Two tablespoons of nobody said what, right after baking soda was refused."""
    await talk.say("/tank new Fern 45 l fresh")
    await talk.say("ph 5.8 kh 0")
    assert "refused" in await talk.facts("how much baking soda")
    assert "What was it that went in?" in await talk.text(SAID)
    return talk


@pytest.mark.parametrize("call", ["fish are dashing around", "fish are gasping", "fish are dying"])
async def test_first_aid_names_it_as_what_may_be_the_cause(untold: Talk, call: str) -> None:
    assert f"You told me: “{SAID}”, and not of what." in await untold.text(call)


@pytest.mark.parametrize(
    "text", ["baking soda", "it was baking soda", "es war natron", "c'était du bicarbonate"]
)
async def test_its_name_puts_it_on_record_and_first_aid_tells_the_overdose(
    untold: Talk, text: str
) -> None:
    (event,) = (await untold.facts(text))["events"]
    assert event["spoons"] == 6.0
    assert event["substance"] == "sodium bicarbonate"
    told = await untold.text("fish are dashing around")
    assert "not of what" not in told
    assert "sodium bicarbonate" in told


@pytest.mark.parametrize("text", ["is baking soda ok?", "how much baking soda", "no baking soda"])
async def test_what_is_asked_or_denied_is_no_answer(untold: Talk, text: str) -> None:
    assert not any("events" in reply.facts for reply in await untold.say(text))


@pytest.mark.parametrize("asked", ["can i use bicarb soda?", "how much baking soda"])
@pytest.mark.parametrize("told", ["put 20 g in", "put half a teaspoon in just now"])
async def test_it_is_the_salt_that_was_asked_about_right_before(
    talk: Talk, asked: str, told: str
) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 3")
    await talk.say(asked)
    (event,) = (await talk.say(told))[0].facts["events"]
    assert event["substance"] == "sodium bicarbonate"
