"""Tanks named after their animals: the name is the animal where it is counted."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from core.message import parse
from core.message.model import Context

TANKS = ("Betta", "Shrimp", "Fry", "Koi", "Fern", "Tang")
CONTEXT = Context(now=datetime(2026, 3, 1, 12, tzinfo=UTC), tanks=TANKS)

TOLD = [
    ("added 1 betta", "Betta", [(1, "betta")], "the tank and its animal at once"),
    ("added a betta", "Betta", [(1, "betta")], "counted in a word"),
    ("lost 2 koi", "Koi", [(2, "koi")], "likewise for the dead"),
    ("3 koi died", "Koi", [(3, "koi")], "the event behind"),
    ("koi added 3 koi", "Koi", [(3, "koi")], "the tank before, its animal behind"),
    ("added 5 koi to koi", "Koi", [(5, "koi")], "the animal before, its tank behind"),
    ("fern: added 1 betta", "Fern", [(1, "betta")], "another tank is named"),
    ("added 20 shrimp", "Shrimp", [(20, "shrimp")], "a name of several kinds"),
    ("added 20 cherry shrimp", None, [(20, "cherry shrimp")], "the end of a kind's name"),
    ("10 cherry shrimp died", None, [(10, "cherry shrimp")], "likewise before the event"),
    ("added 40 guppy fry", None, [(40, "guppy fry")], "a life stage"),
    ("added 2 snails betta", "Betta", [(2, "snails")], "a kind of its own, then the tank"),
    ("betta: added 2 snails", "Betta", [(2, "snails")], "the tank first"),
    ("lost 1 in betta", "Betta", [(1, None)], "a place, not a kind"),
    ("lost 2 fern", "Fern", [(2, None)], "no animal is called so"),
    ("added 1 blue tang", None, [(1, "blue tang")], "the animal's name is the longer one"),
    ("blue tang died", None, [(None, "blue tang")], "likewise without a number"),
    ("tang: blue tang died", "Tang", [(None, "blue tang")], "the tank first"),
    ("sold 1 blue tang", None, [(1, "blue tang")], "of any event"),
    ("betta: betta died", "Betta", [(None, "betta")], "the tank, then its animal"),
    ("betta died", "Betta", [(None, "betta")], "it is both"),
    ("fern: added 1 female betta", "Fern", [(1, "female betta")], "its sex beside it"),
    ("added 3 shrimp and 1 betta", None, [(3, "shrimp"), (1, "betta")], "two of them"),
]


@pytest.mark.parametrize(("text", "tank", "events", "_why"), TOLD)
def test_a_counted_animal_beats_a_tank(
    text: str, tank: str | None, events: list[tuple[int, str | None]], _why: str
) -> None:
    parsed = parse(text, CONTEXT)
    assert [(event.count, event.species) for event in parsed.events] == events
    assert {event.tank for event in parsed.events} == {tank}
    assert parsed.doubts == ()


@pytest.mark.parametrize(
    ("text", "tank", "species"),
    [
        ("can i keep a blue tang", None, "blue tang"),
        ("can i keep a blue tang in tang", "Tang", "blue tang"),
        ("can i keep a betta in fern", "Fern", "betta"),
    ],
)
def test_the_animal_is_asked_about(text: str, tank: str | None, species: str) -> None:
    question = parse(text, CONTEXT).question
    assert question is not None
    assert (question.tank, question.species) == (tank, species)


@pytest.mark.parametrize("text", ["koi kh 4", "koi: kh 4", "kh 4 koi", "changed 30% koi"])
def test_elsewhere_the_name_is_the_tank(text: str) -> None:
    parsed = parse(text, CONTEXT)
    assert parsed.tank == "Koi"
    assert parsed.doubts == ()


LETTERS = Context(now=datetime(2026, 3, 1, 12, tzinfo=UTC), tanks=("L", "G", "A", "Fern"))


@pytest.mark.parametrize(
    ("text", "tank", "litres", "grams"),
    [
        ("topped up 10 l with tap", None, 10.0, None),
        ("changed 10 L in L", "L", 10.0, None),
        ("changed G 10 l", "G", 10.0, None),
        ("dosed 5 g baking soda", None, None, 5.0),
        ("did a 10 l water change", None, 10.0, None),
    ],
)
def test_a_unit_beats_a_tank_of_one_letter(
    text: str, tank: str | None, litres: float | None, grams: float | None
) -> None:
    event = parse(text, LETTERS).events[0]
    assert (event.tank, event.litres, event.grams) == (tank, litres, grams)


@pytest.mark.parametrize(
    ("text", "tank"),
    [("L ph 7", "L"), ("a: kh 6", "A"), ("iron 0.1 mg/l in g", "G"), ("iron 0.1 mg/l", None)],
)
def test_a_tank_of_one_letter_is_named_where_a_tank_would_stand(
    text: str, tank: str | None
) -> None:
    assert [value.tank for value in parse(text, LETTERS).values] == [tank]


def test_litres_asked_for_are_no_tank_of_that_letter() -> None:
    question = parse("how much rain for 20 l at kh 4", LETTERS).question
    assert question is not None
    assert (question.volume_l, question.tank) == (20.0, None)
