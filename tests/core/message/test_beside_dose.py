"""What stands beside a dose and is no part of it: what did not go in, and how it went in."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from core.message import parser
from core.message.model import Context
from core.message.plan_words import telling

SODA = "sodium bicarbonate"
CONTEXT = Context(now=datetime(2026, 3, 1, 9, tzinfo=UTC))


@pytest.mark.parametrize(
    "text",
    [
        "i put in 30 g of baking soda instead of 3 g",
        "i put 30 g of baking soda in instead of 3",
        "ich habe 30 g Natron statt 3 g reingetan",
        "30 g statt 3 g Natron reingetan",
        "j'ai mis 30 g de bicarbonate au lieu de 3 g",
        "eché 30 g de bicarbonato en vez de 3 g",
        "pus 30 g de bicarbonato em vez de 3",
        "ho messo 30 g di bicarbonato invece di 3 g",
        "ik heb 30 g zuiveringszout erin gedaan in plaats van 3 g",
        "wsypałem 30 g sody oczyszczonej zamiast 3 g",
        "jag hällde i 30 g bikarbonat istället för 3 g",
        "i put in 30 g of baking soda all at once",
        "30 g Natron auf einmal reingetan",
        "j'ai mis 30 g de bicarbonate d'un coup",
        "eché 30 g de bicarbonato en una vez",
        "pus 30 g de bicarbonato tudo junto",
        "ho messo 30 grammi di bicarbonato tutti insieme",
        "30 g zuiveringszout in één keer erin gedaan",
        "wsypałem 30 g sody oczyszczonej naraz",
        "jag råkade hälla i 30 gram bikarbonat",
    ],
)
def test_what_went_in_is_told_and_nothing_beside_it_is_of_its_name(text: str) -> None:
    parsed = parser.parse(text, CONTEXT)
    assert [(each.kind, each.grams, each.substance) for each in parsed.events] == [
        ("dose", 30.0, SODA)
    ]
    assert not parsed.doubts


def test_the_thing_that_did_not_go_in_is_not_told() -> None:
    (event,) = parser.parse("dosed 10 g epsom salt instead of baking soda", CONTEXT).events
    assert event.substance == "magnesium sulfate heptahydrate"


@pytest.mark.parametrize(
    "text",
    [
        "crap, i put 30 g in instead of 3",
        "ich habe 30 g statt 3 g reingetan",
        "j'ai mis 30 g au lieu de 3 g",
        "eché 30 g en vez de 3 g",
        "pus 30 g em vez de 3",
        "ho messo 30 grammi tutti insieme",
        "ik heb 30 g gedaan in plaats van 3 g",
        "wsypałem 30 g zamiast 3 g",
        "jag hällde i 30 g istället för 3 g",
    ],
)
def test_of_a_plan_so_much_went_in(text: str) -> None:
    said = telling(text)
    assert said is not None
    assert (said.meaning, said.amounts.grams) == ("gave_it", 30.0)


def test_how_it_might_go_in_is_still_asked() -> None:
    said = telling("can i give all at once")
    assert said is not None
    assert said.meaning == "at_once"
