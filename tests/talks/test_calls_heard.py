"""Animals that behave badly are heard as a call, and its steps are given again when asked for."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("said", "danger"),
    [
        ("fish lying sideways what do", "general"),
        ("my fish wont move", "general"),
        ("everyone at the surface", "gasping"),
        ("theyre sucking air", "gasping"),
        ("smth wrong with my fish", "general"),
        ("help pls", "general"),
        ("all snails closed up", "general"),
        ("se comportan raro desde el bicarbonato", "general"),
    ],
)
async def test_a_fresh_chat_hears_animals_in_trouble(talk: Talk, said: str, danger: str) -> None:
    (reply,) = await talk.say(said)
    assert reply.facts["emergency"] == danger


@pytest.mark.parametrize("said", ["fish weird now", "they act strange since the soda"])
async def test_after_a_dose_no_more_of_it_goes_in(talk: Talk, said: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("kh 3 ph 7 ammonia 0")
    await talk.say("dose kh 4")
    (logged,) = await talk.say("gave it")
    (grams,) = [event["grams"] for event in logged.facts["events"]]
    (reply,) = await talk.say(said)
    assert reply.facts["went_in"] == {"substance": "sodium bicarbonate", "grams": grams}
    assert "add no more of it" in reply.text
    assert "Test pH, KH" in reply.text
    await talk.wait(days=2)
    (later,) = await talk.say("fish weird now")
    assert "went_in" not in later.facts


async def test_a_dechlorinator_is_no_dose_to_stop(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("put in dechlorinator")
    (reply,) = await talk.say("fish look drunk")
    assert "went_in" not in reply.facts


async def test_help_in_a_call_gives_its_steps_again_and_the_command_the_menu(talk: Talk) -> None:
    (first,) = await talk.say("fish gasping")
    (again,) = await talk.say("help")
    assert again.facts["emergency"] == first.facts["emergency"]
    (menu,) = await talk.say("/help")
    assert "emergency" not in menu.facts
    await talk.wait(days=2)
    (over,) = await talk.say("help")
    assert "emergency" not in over.facts


@pytest.mark.parametrize(
    "said", ["they lie on the bottom", "sos", "ffs they are all going belly up", "help", "what now"]
)
async def test_poison_told_without_a_tank_stays_the_cause(talk: Talk, said: str) -> None:
    (first,) = await talk.say("my kid poured a bottle of perfume in the fishtank")
    (reply,) = await talk.say(said)
    assert reply.facts["emergency"] == "contaminated"
    assert reply.text == first.text
    assert "no extra air" not in reply.text


@pytest.mark.parametrize(
    "said",
    [
        "my fish are funny",
        "the kids act strange",
        "weird, the app froze",
        "he floats like a leaf in the picture",
        "snails everywhere",
    ],
)
async def test_talk_of_oddities_is_no_call(talk: Talk, said: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    (reply,) = await talk.say(said)
    assert "emergency" not in reply.facts


@pytest.mark.parametrize("said", ["fish look ok", "they calmed down", "se calmaron"])
async def test_good_words_are_answered_by_how_it_stands(talk: Talk, said: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    (plain,) = await talk.say("they look ok")
    (reply,) = await talk.say(said)
    assert reply.text == plain.text
    (call,) = await talk.say("fish look drunk")
    (eased,) = await talk.say(said)
    assert call.text != eased.text != plain.text


@pytest.mark.parametrize(
    "said",
    ["think one is dead", "pretty sure one died", "think the pleco died", "chyba jedna zdechła"],
)
async def test_a_loss_that_is_only_thought_is_not_stored(talk: Talk, said: str) -> None:
    await talk.say("/tank new fern 90 l fresh, 2 neons and 1 pleco")
    (reply,) = await talk.say(said)
    assert reply.facts["emergency"] == "maybe_dead"
    assert "events" not in reply.facts
    assert "lost" not in await talk.text("what happened today")


async def test_who_died_for_sure_is_stored(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    (reply,) = await talk.say("one died, i think it was the heat")
    (event,) = reply.facts["events"]
    assert (event["kind"], event["count"]) == ("lost", 1)
    assert "species" not in event


@pytest.mark.parametrize(
    ("said", "kept"),
    [
        ("kh 4 fish weird", "values"),
        ("fish weird, kh 3", "values"),
        ("added 5 g soda and now fish act strange", "events"),
        ("one died and the others act weird", "events"),
    ],
)
async def test_odd_animals_are_heard_beside_what_is_stored(
    talk: Talk, said: str, kept: str
) -> None:
    await talk.say("/tank new fern 90 l fresh")
    told, *_, steps = await talk.say(said)
    assert told.facts[kept]
    assert steps.facts["emergency"] == "general"
    assert "Label it" not in steps.text


async def test_a_sign_beside_a_value_is_no_talk_of_storing_salts(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    told, steps = await talk.say("betta is pale kh 4")
    assert told.facts["values"]
    assert steps.facts["emergency"] == "general"
