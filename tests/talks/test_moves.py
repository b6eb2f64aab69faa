"""Animals that are moved between tanks: both records, one undo, a disturbance for either."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def stock(talk: Talk, name: str) -> dict[str, int]:
    return dict((await talk.facts(f"/tank {name}")).get("stock", {}))


async def two_tanks(talk: Talk) -> None:
    await talk.say("/tank new Quarry 240 l fresh")
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("added 8 neon tetras")


@pytest.mark.parametrize(
    ("text", "fern", "quarry"),
    [
        pytest.param("moved 3 tetras to quarry", 5, 3, id="their name by the record they leave"),
        pytest.param("moved 3 neon tetras from fern to quarry", 5, 3, id="both ends said"),
        pytest.param("fern: moved 3 tetras to quarry", 5, 3, id="the tank that begins the line"),
        pytest.param("moved 3 tetras to quarry\nmoved 2 tetras to quarry", 3, 5, id="twice"),
        pytest.param("rehomed 3 neon tetras", 5, 0, id="given away"),
        pytest.param("moved 3 neon tetras from fern", 5, 0, id="away, from a tank that is named"),
        pytest.param("moved 3 neon tetras from my friend to quarry", 8, 3, id="from elsewhere"),
        pytest.param("moved 20 tetras to quarry", 0, 20, id="no tank is left with less than none"),
    ],
)
async def test_a_move_changes_both_records(talk: Talk, text: str, fern: int, quarry: int) -> None:
    await two_tanks(talk)
    await talk.say(text)
    assert (await stock(talk, "Fern")).get("neon tetras", 0) == fern
    assert (await stock(talk, "Quarry")).get("neon tetras", 0) == quarry


async def test_both_ends_are_said_back_and_one_undo_takes_both_back(talk: Talk) -> None:
    await two_tanks(talk)
    left, came = await talk.say("moved 3 tetras to quarry")
    assert left.lines[0].text == "Fern: moved 3 neon tetras to Quarry"
    assert came.lines[0].text == "Quarry: 3 neon tetras moved in from Fern"
    assert left.facts["events"][0] | {"text": "Quarry"} == left.facts["events"][0]
    assert left.facts["events"][0]["kind"] == "moved_out"
    assert came.facts["events"][0]["kind"] == "moved_in"
    await talk.say("undo")
    assert await stock(talk, "Fern") == {"neon tetras": 8}
    assert await stock(talk, "Quarry") == {}


async def test_a_correction_corrects_both_ends(talk: Talk) -> None:
    await two_tanks(talk)
    await talk.say("moved 3 tetras to quarry")
    await talk.say("no, moved 4 tetras from fern to quarry")
    assert await stock(talk, "Fern") == {"neon tetras": 4}
    assert await stock(talk, "Quarry") == {"neon tetras": 4}


async def test_a_move_to_a_tank_that_is_none_is_asked_first(talk: Talk) -> None:
    await two_tanks(talk)
    (asked,) = await talk.say("moved 3 tetras to nursery")
    assert asked.buttons[0].label == "add Nursery"
    assert await stock(talk, "Fern") == {"neon tetras": 8}
    await talk.press(1, asked)
    assert await stock(talk, "Fern") == {"neon tetras": 5}
    assert await stock(talk, "Nursery") == {"neon tetras": 3}


async def test_which_tank_they_left_is_asked_where_it_may_be_two(talk: Talk) -> None:
    await two_tanks(talk)
    await talk.say("/tank new Moss 60 l fresh")
    await talk.say("added 6 neon tetras")
    await talk.say("quarry: kh 12")
    (asked,) = await talk.say("moved 2 neon tetras to quarry")
    assert [button.label for button in asked.buttons] == ["Fern", "Moss"]
    await talk.press(2, asked)
    assert await stock(talk, "Moss") == {"neon tetras": 4}
    assert await stock(talk, "Fern") == {"neon tetras": 8}
    assert await stock(talk, "Quarry") == {"neon tetras": 2}


async def test_more_than_a_tank_holds_is_a_slip(talk: Talk) -> None:
    await two_tanks(talk)
    (reply,) = await talk.say("moved 8000 tetras to quarry")
    assert "nothing is stored" in reply.text
    assert await stock(talk, "Fern") == {"neon tetras": 8}


@pytest.mark.parametrize(
    ("names", "text"),
    [
        (("k", "z"), "moved 3 guppies to z"),
        (("k", "z"), "moved 3 guppies from k into z"),
        (("k", "z"), "przeniosłem 3 guppy z k do z"),
        (("a", "do"), "moved 3 guppies to do"),
    ],
)
async def test_a_tank_called_by_a_word_for_the_way(
    talk: Talk, names: tuple[str, str], text: str
) -> None:
    origin, to = names
    await talk.say(f"/tank new {origin} 100 l fresh")
    await talk.say(f"/tank new {to} 50 l fresh")
    await talk.say(f"{origin}: added 12 guppies")
    await talk.say(text)
    assert sum((await stock(talk, origin)).values()) == 9
    assert sum((await stock(talk, to)).values()) == 3
