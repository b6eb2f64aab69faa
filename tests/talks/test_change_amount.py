"""What is named of the change just answered is what `done` logs: never an older amount.

Wordings and amounts only; the shares are sums of the litres told.
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("gh 10 kh 5 ph 7.2 nh3 0")
    await talk.say("tap gh 11 kh 5 ph 7.3")
    return talk


HOW_MUCH = "How much went in?"


@pytest.mark.parametrize(
    ("said", "logged"),
    [
        ("do 20 then", "changed 20 %"),
        ("thats a lot, i'll just do 20", "changed 20 %"),
        ("half of that maybe", "changed 25 %"),
        ("nah 25 is enough", "changed 25 %"),
        ("20% then", "changed 20 %"),
        ("das ist viel, mach lieber 20", "changed 20 %"),
        ("plutôt 20 alors", "changed 20 %"),
        ("mejor 20", "changed 20 %"),
        ("melhor 20 então", "changed 20 %"),
        ("meglio 20", "changed 20 %"),
        ("doe maar 20", "changed 20 %"),
        ("raczej 20", "changed 20 %"),
        ("hellre 20", "changed 20 %"),
    ],
)
async def test_the_amount_wished_instead_is_logged(fern: Talk, said: str, logged: str) -> None:
    await fern.say("what if i change 50%")
    assert logged.removeprefix("changed ") in await fern.text(said)
    assert logged in await fern.text("done")


@pytest.mark.parametrize(
    ("said", "logged"),
    [
        ("hm only had time for 15 l", "changed 15 L"),
        ("25 done", "changed 25 %"),
        ("done, 60 litres", "changed 60 L"),
        ("30 l of that in", "changed 30 L"),
        ("nur 20 geschafft", "changed 20 %"),
        ("fait, 25%", "changed 25 %"),
        ("hecho, 20 litros", "changed 20 L"),
        ("feito, 20%", "changed 20 %"),
        ("fatto, 20 litri", "changed 20 L"),
        ("gedaan, 20 liter", "changed 20 L"),
        ("zrobione, 20%", "changed 20 %"),
        ("klart, 20 liter", "changed 20 L"),
    ],
)
async def test_the_amount_told_done_is_logged(fern: Talk, said: str, logged: str) -> None:
    await fern.say("what if i change 50%")
    assert logged in await fern.text(said)
    assert "changed" not in await fern.text("did it")


@pytest.mark.parametrize(
    "said", ["my bucket holds 12", "a third got spilled", "not going to do 50 or 60"]
)
async def test_a_number_not_understood_stops_the_old_amount(fern: Talk, said: str) -> None:
    await fern.say("what if i change 50%")
    await fern.say(said)
    assert HOW_MUCH in await fern.text("did it")
    assert HOW_MUCH in await fern.text("done")
    assert "changed 12 L" in await fern.text("12 l")


async def test_a_bare_number_is_asked_of_where_both_were_shown(fern: Talk) -> None:
    await fern.say("how much can i change")
    assert HOW_MUCH in await fern.text("25 done")
    assert "changed 25 %" in await fern.text("changed 25 %")


async def test_half_done_is_asked_of_what(fern: Talk) -> None:
    await fern.say("what if i change 50%")
    assert HOW_MUCH in await fern.text("did half")


@pytest.mark.parametrize("said", ["how many litres is that", "is that safe"])
async def test_what_is_asked_of_the_change_leaves_it(fern: Talk, said: str) -> None:
    await fern.say("what if i change 30%")
    await fern.say(said)
    assert "changed 30 %" in await fern.text("done")


async def test_a_question_is_no_correction_of_a_change(fern: Talk) -> None:
    await fern.say("changed 30%")
    await fern.say("and 30?")
    assert "Corrected" not in await fern.text("30 l i mean")


async def test_done_with_a_share_settles_the_reminder_and_is_kept(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("remind me to do a water change every 3 days at 9:00")
    await talk.wait(hours=72)
    told = await talk.text("done, 25%")
    assert "changed 25 %" in told
    assert "That settles" in told


async def test_a_share_behind_a_dose_plan_logs_no_part(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3 ph 7 nh3 0 temp 24")
    await talk.say("how much baking soda to kh 5")
    assert "logged" not in await talk.text("done, 25%")


async def test_a_share_done_that_nothing_waits_for_is_a_change(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "changed 60 L" in await talk.text("done, 60 litres")
    assert "changed" not in await talk.text("done, 60")


@pytest.mark.parametrize(
    ("said", "logged"),
    [("no 6 gallons", "22.7 L"), ("no, 6 gal", "22.7 L"), ("sorry 6 uk gallons", "27.3 L")],
)
async def test_a_change_is_put_right_in_gallons(fern: Talk, said: str, logged: str) -> None:
    await fern.say("changed 5 gallons")
    assert f"Corrected: Fern: changed {logged}" in await fern.text(said)


@pytest.mark.parametrize(
    "text", ["i change 20% weekly", "he changes 50% of his", "did half of that water change"]
)
async def test_a_routine_others_changes_and_a_part_of_one_are_not_logged(
    talk: Talk, text: str
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    replies = await talk.say(text)
    assert replies
    assert all("events" not in reply.facts for reply in replies)
