"""Animals that left, were born or came without their number: the records tell, or are asked."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.chat.harness import Talk, talking

GIVEN = {"guppies": 10, "cardinal tetras": 12, "pleco": 1}


async def stock(talk: Talk, name: str = "Fern") -> dict[str, int]:
    return dict((await talk.facts(f"/tank {name}")).get("stock", {}))


async def two_tanks(talk: Talk) -> None:
    await talk.say("/tank new Quarry 75 l fresh")
    await talk.say("/tank new Fern 240 l fresh")
    for name, count in GIVEN.items():
        await talk.say(f"added {count} {name}")


@pytest.mark.parametrize(
    ("said", "left"),
    [
        pytest.param("sold 2 guppies", GIVEN | {"guppies": 8}, id="some"),
        pytest.param("sold all my guppies", {"cardinal tetras": 12, "pleco": 1}, id="all"),
        pytest.param("rehomed all the tetras", {"guppies": 10, "pleco": 1}, id="a shared name"),
        pytest.param("gave away the pleco", {"guppies": 10, "cardinal tetras": 12}, id="the only"),
        pytest.param("sold all my fish", {}, id="all of all kinds"),
        pytest.param("alle Guppys gestorben", {"cardinal tetras": 12, "pleco": 1}, id="all died"),
        pytest.param("sold 2 kribensis", GIVEN, id="none on record"),
    ],
)
async def test_the_record_tells_who_left(talk: Talk, said: str, left: dict[str, int]) -> None:
    await two_tanks(talk)
    await talk.say(said)
    assert await stock(talk) == left


async def test_whom_no_tank_has_cannot_leave(talk: Talk) -> None:
    await two_tanks(talk)
    (reply,) = await talk.say("sold 2 kribensis")
    assert reply.text == (
        "No kribensis are on record in Quarry or Fern, so there are none to take off."
        " Nothing is stored."
    )
    assert "Only 10 guppies were on record" in await talk.text("sold 30 guppies")


async def test_the_tank_that_has_them_is_meant(talk: Talk) -> None:
    await two_tanks(talk)
    await talk.say("quarry: kh 4")
    await talk.say("sold 2 guppies")
    assert await stock(talk) == GIVEN | {"guppies": 8}
    await talk.say("no, sold 10 guppies")
    assert await stock(talk) == {"cardinal tetras": 12, "pleco": 1}


async def test_how_many_left_is_asked_and_a_number_answers(talk: Talk) -> None:
    await two_tanks(talk)
    (asked,) = await talk.say("moved the cardinals to quarry")
    assert "12 are on record in Fern" in asked.text
    await talk.say("4")
    assert await stock(talk) == GIVEN | {"cardinal tetras": 8}
    (asked,) = await talk.say("moved the cardinals to quarry")
    await talk.press(1, asked)
    assert await stock(talk, "Quarry") == {"cardinal tetras": 12}


async def test_how_many_came_is_asked_and_a_number_answers(talk: Talk) -> None:
    await two_tanks(talk)
    (asked,) = await talk.say("added guppies")
    assert asked.text.startswith("How many?")
    assert await stock(talk) == GIVEN
    await talk.say("six")
    assert await stock(talk) == GIVEN | {"guppies": 16}


async def test_a_misspelt_kind_without_a_number_has_its_button(talk: Talk) -> None:
    await two_tanks(talk)
    (asked,) = await talk.say("added neon tetars")
    assert asked.buttons[0].label == "added neon tetra"
    (asked,) = await talk.press(1, asked)
    assert asked.text.startswith("How many?")
    assert await stock(talk) == GIVEN


async def test_a_tank_may_be_called_by_its_size(talk: Talk) -> None:
    await two_tanks(talk)
    await talk.say("moved 4 cardinals to the 20 gal")
    assert await stock(talk, "Quarry") == {"cardinal tetras": 4}


async def test_males_and_females_are_counted_by_themselves(talk: Talk) -> None:
    await talk.say("/tank new Fern 240 l fresh")
    await talk.say("added 1 male and 3 female guppies")
    (asked,) = await talk.say("1 guppy died")
    assert asked.buttons[1].label == "female guppies"
    await talk.press(2, asked)
    assert await stock(talk) == {"male guppies": 1, "female guppies": 2}
    await talk.say("sold 3 guppies")
    assert await stock(talk) == {}


async def test_the_sexes_of_rivals_are_asked_where_they_decide(talk: Talk) -> None:
    await talk.say("/tank new Fern 240 l fresh")
    (asked,) = await talk.say("added 2 dwarf gouramis")
    assert "Which sex are they?" in asked.text
    (told,) = await talk.say("no, added 1 male and 1 female dwarf gouramis")
    assert "males" not in told.text.replace(told.lines[0].text, "")
    (told,) = await talk.say("added 1 male dwarf gourami")
    assert "two males fight" in told.text


async def test_a_male_betta_and_females_are_warned_of(talk: Talk) -> None:
    await talk.say("/tank new Fern 240 l fresh")
    (told,) = await talk.say("added 1 male betta and 3 female bettas")
    assert "a male hunts the females" in told.text
    finding = next(each for each in told.facts["findings"] if each["id"] == "rivals")
    assert (finding["males"], finding["females"], finding["count"]) == (1.0, 3.0, 4.0)


async def test_the_young_are_on_record_as_such(talk: Talk) -> None:
    await two_tanks(talk)
    await talk.say("my guppies had 20 babies")
    assert await stock(talk) == GIVEN | {"guppies (babies)": 20}


async def test_in_a_group_nobody_is_told_of_animals_that_are_not_on_record(
    tmp_path: Path,
) -> None:
    async with talking(tmp_path, group=True) as talk:
        await talk.say("/tank new Fern 120 l fresh", addressed=True)
        await talk.say("fern: added 10 guppies", addressed=True)
        for said in ("remove the betta please", "all my fish died once", "sold my car"):
            assert await talk.say(said) == []
        facts = await talk.facts("/tank Fern", addressed=True)
        assert facts["stock"] == {"guppies": 10}


@pytest.mark.parametrize(
    ("said", "left"),
    [
        ("both guppies died", GIVEN | {"guppies": 8}),
        ("beide Guppys gestorben", GIVEN | {"guppies": 8}),
        ("the pleco is gone", {"guppies": 10, "cardinal tetras": 12}),
        ("il pleco è sparito", {"guppies": 10, "cardinal tetras": 12}),
        ("none dead", GIVEN),
        ("keiner ist gestorben", GIVEN),
        ("the heater is dead", GIVEN),
        ("der Heizer ist tot", GIVEN),
        ("il riscaldatore è morto", GIVEN),
        ("grzałka padła", GIVEN),
        ("pumpen är död", GIVEN),
        ("no idea why my neon died", GIVEN),
        ("the light died", GIVEN),
        ("gave the guppies peas", GIVEN),
    ],
)
async def test_who_is_gone_and_who_is_not(talk: Talk, said: str, left: dict[str, int]) -> None:
    await two_tanks(talk)
    await talk.say(said)
    assert await stock(talk) == left


async def test_of_many_that_are_gone_the_number_is_asked(talk: Talk) -> None:
    await two_tanks(talk)
    assert "How many guppies" in await talk.text("the guppies are gone")
    assert await stock(talk) == GIVEN
    await talk.say("3")
    assert await stock(talk) == GIVEN | {"guppies": 7}


@pytest.mark.parametrize(
    "said",
    [
        "all sold",
        "fern is empty",
        "alle verkauft",
        "l'aquarium est vide",
        "vendí todos",
        "o aquário está vazio",
        "tutti venduti",
        "geen vissen meer",
        "wszystkie sprzedane",
        "akvariet är tomt",
        "gave them all away",
        "no fish left",
        "there are no fish in fern",
        "es gibt keine Fische mehr",
        "ya no hay peces",
        "nie ma już ryb",
        "non ci sono più pesci",
        "il n'y a plus de poissons",
        "não há mais peixes",
        "det finns inga fiskar kvar",
    ],
)
async def test_that_nobody_is_left_is_asked_and_then_taken_down(talk: Talk, said: str) -> None:
    await two_tanks(talk)
    assert "Is nobody left in Fern" in await talk.text(said)
    assert await stock(talk) == GIVEN
    await talk.say("all sold")
    await talk.press(1)
    assert await stock(talk) == {}


@pytest.mark.parametrize(
    "said",
    ["the kh kit is empty", "empty the tank", "bucket is empty", "fish not ok", "do i have fish"],
)
async def test_what_else_is_empty_asks_after_no_animals(talk: Talk, said: str) -> None:
    await two_tanks(talk)
    assert "nobody left" not in await talk.text(said)
    assert await stock(talk) == GIVEN


async def test_an_empty_tank_without_animals_on_record_is_not_asked_about(talk: Talk) -> None:
    await talk.say("/tank new Fern 240 l fresh")
    assert "nobody left" not in await talk.text("the tank is empty")


@pytest.mark.parametrize(
    ("said", "calls"),
    [
        ("the light is dead", False),
        ("die Lampe ist tot", False),
        ("la batterie est morte", False),
        ("lampan är död", False),
        ("the light is off and my fish are dying", True),
    ],
)
async def test_a_dead_lamp_is_no_call_for_help(talk: Talk, said: str, calls: bool) -> None:
    await two_tanks(talk)
    assert ("Stop feeding" in await talk.text(said)) == calls
    assert await stock(talk) == GIVEN
