"""After the first steps of a call: air is on, they look better, a test is 0, nothing went in."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 100 l fresh")
    return talk


@pytest.mark.parametrize("asked", ["all ok?", "all good?", "alles gut?"])
@pytest.mark.parametrize(
    ("told", "part"), [("air is on", "air is on, as you told"), ("theyre better", "better, as you")]
)
async def test_once_eased_the_steps_are_not_said_from_the_first(
    fern: Talk, told: str, part: str, asked: str
) -> None:
    await fern.say("fish gasping")
    await fern.say(told)
    (reply,) = await fern.say(asked)
    assert part in reply.text
    assert "Air now" not in reply.text
    assert "Measure ammonia" in reply.text


async def test_what_gets_worse_again_has_its_steps(fern: Talk) -> None:
    await fern.say("fish gasping")
    await fern.say("air is on")
    (reply,) = await fern.say("worse")
    assert "Air now" in reply.text
    await fern.say("theyre better")
    await fern.say("fish gasping again")
    assert "Air now" in await fern.text("all ok?")


async def test_poison_that_stands_is_not_eased(fern: Talk) -> None:
    await fern.say("fish gasping")
    await fern.say("theyre better")
    await fern.say("ammonia 3 ph 7.8")
    assert "as you told" not in await fern.text("all ok?")
    await fern.say("put bleach in")
    await fern.say("theyre better")
    (reply,) = await fern.say("all ok?")
    assert reply.facts["emergency"] == "bleach"
    assert "not known yet" not in reply.text


async def test_another_tank_is_not_eased(fern: Talk) -> None:
    await fern.say("fish gasping")
    await fern.say("theyre better")
    await fern.say("/tank new Quarry 100 l fresh")
    assert "as you told" not in await fern.text("all ok?")


@pytest.mark.parametrize(
    ("call", "read", "danger"),
    [("put bleach in", "chlorine 0", "bleach"), ("copper poisoning", "copper 0", "copper")],
)
async def test_what_now_after_a_test_of_0_tells_what_settled_it(
    fern: Talk, call: str, read: str, danger: str
) -> None:
    await fern.say(call)
    await fern.say(read)
    (reply,) = await fern.say("what now")
    assert reply.facts["settled"] == danger
    assert "0 mg/L was read since" in reply.text
    assert "no medicine" not in reply.text


@pytest.mark.parametrize("read", ["chlorine 0.5", "ammonia 0"])
async def test_no_other_test_ends_the_steps(fern: Talk, read: str) -> None:
    await fern.say("put bleach in")
    await fern.say(read)
    (reply,) = await fern.say("what now")
    assert "settled" not in reply.facts


async def test_gasping_after_a_test_of_0_has_its_steps(fern: Talk) -> None:
    await fern.say("put bleach in")
    await fern.say("chlorine 0")
    await fern.say("fish gasping")
    assert "Air now" in await fern.text("what now")


@pytest.mark.parametrize("told", ["nearly put bleach in", "almost put bleach in"])
async def test_after_what_was_nearly_put_in_it_is_told_how_the_tank_stands(
    fern: Talk, told: str
) -> None:
    await fern.say("ammonia 0 nitrite 0 ph 7.2 kh 5 temp 24")
    (first,) = await fern.say(told)
    assert "emergency" not in first.facts
    (reply,) = await fern.say("all good?")
    assert "Measured: pH 7.2" in reply.text
    assert "refused" not in reply.facts


@pytest.mark.parametrize("told", ["he's much better", "es geht ihm besser"])
async def test_who_looks_better_is_given_no_first_steps_again(fern: Talk, told: str) -> None:
    await fern.say("one is gasping")
    await fern.say(told)
    answer = await fern.text("what now")
    assert "not known yet" in answer
    assert "Air now" not in answer


async def test_a_poison_that_was_measured_is_not_over_by_a_look(fern: Talk) -> None:
    await fern.say("ammonia 2 ph 8")
    await fern.say("one is gasping")
    await fern.say("he's much better")
    assert "Change" in await fern.text("what now")
