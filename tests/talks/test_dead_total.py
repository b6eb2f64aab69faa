"""A sum of dead after a loss adds only what is new: `so 3 dead in all`; words ours."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def _with_losses(talk: Talk, *told: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("added 20 neon")
    for line in told:
        await talk.say(line)


async def _held(talk: Talk) -> int:
    facts = await talk.facts("who lives in fern")
    return int(facts["stock"]["Fern"]["neon"])


@pytest.mark.parametrize(
    "line",
    [
        "3 dead now",
        "so 3 dead in all",
        "thats 3 now",
        "that's three now",
        "now 3 dead",
        "3 neons dead in total",
        "3 dead so far",
        "jetzt 3 tote",
        "insgesamt 3 tot",
        "3 morts en tout",
        "ya van 3 muertos",
        "3 mortos no total",
        "3 morti in totale",
        "3 dood in totaal",
        "w sumie 3 martwe",
        "3 döda totalt",
        "3 dead in total what now",
    ],
)
async def test_a_sum_adds_what_is_new(talk: Talk, line: str) -> None:
    await _with_losses(talk, "one neon dead")
    (reply, *_) = await talk.say(line)
    assert [event["count"] for event in reply.facts["events"]] == [2]
    assert reply.facts["dead"] == {"total": 3, "before": 1}
    assert await _held(talk) == 17


@pytest.mark.parametrize(
    ("line", "new"),
    [("another one dead", 1), ("2 more died", 2), ("2 more dead now", 2), ("2 dead", 2)],
)
async def test_new_ones_still_add(talk: Talk, line: str, new: int) -> None:
    await _with_losses(talk, "one neon dead")
    await talk.say(line)
    assert await _held(talk) == 19 - new


@pytest.mark.parametrize("line", ["3 dead in all", "now 3 dead", "3 neons dead so far"])
async def test_the_first_sum_is_all_new(talk: Talk, line: str) -> None:
    await _with_losses(talk)
    await talk.say(line)
    assert await _held(talk) == 17


@pytest.mark.parametrize("line", ["3 dead in all", "so 2 dead in total"])
async def test_no_more_than_on_record_adds_nothing(talk: Talk, line: str) -> None:
    await _with_losses(talk, "3 neon dead")
    assert (await talk.facts(line))["dead"] == {"total": 3}
    assert await _held(talk) == 17


async def test_now_that_may_be_either_is_asked(talk: Talk) -> None:
    await _with_losses(talk, "2 neon dead")
    (reply,) = await talk.say("2 dead now")
    assert [button.label for button in reply.buttons] == ["2 more died", "none more"]
    assert await _held(talk) == 18
    await talk.say("2 dead now")
    await talk.press(1)
    assert await _held(talk) == 16


@pytest.mark.parametrize("line", ["thats 19 now", "19 neons now", "thats 19 left", "3 in total"])
async def test_those_that_live_are_no_dead(talk: Talk, line: str) -> None:
    await _with_losses(talk, "one neon dead")
    await talk.say(line)
    assert await _held(talk) == 19


async def test_a_number_alone_counts_only_right_after_a_loss(talk: Talk) -> None:
    await _with_losses(talk, "one neon dead", "kh 4")
    await talk.say("thats 3 now")
    assert await _held(talk) == 19


async def test_of_a_kind_that_nobody_told_it_is_asked(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("added 5 neons and 4 guppies")
    await talk.say("1 died")
    (reply,) = await talk.say("3 neons dead in all")
    assert [b.label for b in reply.buttons] == ["2 more died", "3 more died", "none more"]
    assert "events" not in reply.facts


async def test_the_dead_of_another_kind_do_not_count(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("added 5 neons and 4 guppies")
    await talk.say("1 guppy died")
    (event,) = (await talk.say("2 neons dead in all"))[0].facts["events"]
    assert event["count"] == 2


async def test_the_dead_of_another_tank_do_not_count(talk: Talk) -> None:
    await _with_losses(talk, "one neon dead")
    await talk.say("/tank new Moss 60 l fresh")
    (event,) = (await talk.say("3 dead in moss now"))[0].facts["events"]
    assert event["count"] == 3


async def test_the_dead_of_long_ago_do_not_count(talk: Talk) -> None:
    await _with_losses(talk, "one neon dead")
    await talk.wait(days=9)
    (event,) = (await talk.say("2 dead in all"))[0].facts["events"]
    assert event["count"] == 2


async def test_a_sum_is_put_right(talk: Talk) -> None:
    await _with_losses(talk, "2 neon dead", "so 3 dead in all")
    await talk.say("no, 4")
    assert await _held(talk) == 16


async def test_more_behind_a_loss_are_more_of_the_dead(talk: Talk) -> None:
    await talk.say("tank big 125 l")
    await talk.say("tank small 30 l")
    assert "big: lost 3 cardinals" in await talk.text("lost 3 cardinals overnight in the 125")
    assert "lost 2 cardinals" in await talk.text("2 more this morning")


async def test_the_dead_of_a_volume_that_no_tank_has_are_asked_about(talk: Talk) -> None:
    await talk.say("tank big 125 l")
    assert "Not stored" in await talk.text("lost 3 cardinals overnight in the 60")


async def test_two_more_behind_other_talk_are_no_dead(talk: Talk) -> None:
    await talk.say("tank big 125 l")
    await talk.say("kh 4")
    assert "lost" not in await talk.text("2 more this morning")
