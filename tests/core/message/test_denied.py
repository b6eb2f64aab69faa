"""Deeds that were not done, and animals that live: in nine languages, and what is neither."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from core.message import parse
from core.message.alive import lives
from core.message.denied import denied
from core.message.model import Context

HERE = Context(datetime(2026, 3, 2, 18, tzinfo=UTC), tanks=("Fern", "Quarry"))

NO_COPPER = (
    "didnt really dose copper", "really didn't dose the copper", "i didnt actually dose any copper",
    "dont think i dosed the copper", "never put the copper in", "no copper went in",
    "ich hab gar kein kupfer gegeben", "ich glaube nicht dass ich kupfer dosiert habe",
    "je n'ai pas vraiment mis de cuivre", "je crois pas avoir mis de cuivre",
    "no he puesto cobre", "no creo que haya puesto cobre", "não pus cobre",
    "acho que não pus cobre", "non ho messo rame", "non credo di aver dosato rame",
    "ik heb niet echt koper gedoseerd", "nie dodałem miedzi", "jag tillsatte inte koppar",
)  # fmt: skip

NO_LOSS = (
    "fish hasnt died", "no fish died", "nobody died", "the fish isnt dead", "2 neons didnt die",
    "der fisch ist nicht gestorben", "le poisson n'est pas mort", "el pez no ha muerto",
    "o peixe não morreu", "il pesce non è morto", "de vis is niet dood", "ryba nie zdechła",
    "fisken har inte dött",
)  # fmt: skip

NEITHER = (
    "no, i dosed copper", "no i dosed copper", "no, he puesto cobre", "não, pus cobre",
    "nie, dodałem miedź", "didnt i dose copper", "didnt i dose copper?", "i dosed copper",
    "the copper didnt help", "i didnt dose enough copper", "didnt dose copper, kh 5",
    "i havent changed the water in 3 weeks", "why didnt i dose copper", "didnt dose, ph 7",
    "i gave 8 g not 5.4", "put salt in fern not in quarry", "gave copper, not salt",
)  # fmt: skip


@pytest.mark.parametrize("text", NO_COPPER)
def test_a_dose_that_was_not_given(text: str) -> None:
    found = denied(text, HERE)
    assert found is not None
    assert (found.deed, found.substance) == ("dose", "copper")
    assert not parse(text, HERE).events


@pytest.mark.parametrize("text", NO_LOSS)
def test_a_death_that_was_none(text: str) -> None:
    found = denied(text, HERE)
    assert found is not None
    assert found.deed == "lost"
    assert not parse(text, HERE).events


@pytest.mark.parametrize("text", NEITHER)
def test_what_tells_or_asks_more_is_no_denial(text: str) -> None:
    assert denied(text, HERE) is None


@pytest.mark.parametrize(
    "text",
    [
        "i didnt really put in 5g baking soda", "dont think i added 5g baking soda",
        "almost dosed 10 g baking soda", "forgot to dose 10 g baking soda",
        "i havent actually changed 30",
    ],
)  # fmt: skip
def test_what_was_not_done_is_stored_by_no_button(text: str) -> None:
    said = parse(text, HERE)
    assert not said.events
    assert not any(doubt.choices or doubt.suggestion for doubt in said.doubts)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("nope theyre fine, was just sleeping", "surely"),
        ("nope theyre fine", "surely"),
        ("he's still alive!", "surely"),
        ("er lebt noch", "surely"),
        ("il n'est pas mort", "surely"),
        ("no, está vivo", "surely"),
        ("não morreu", "surely"),
        ("dormiva", "surely"),
        ("nee hij leeft nog", "surely"),
        ("jednak żyje", "surely"),
        ("nej han lever", "surely"),
        ("theyre fine", "perhaps"),
        ("the others are fine", None),
        ("is he still alive?", None),
        ("nope", None),
        ("ok", None),
    ],
)
def test_who_lives(text: str, said: str | None) -> None:
    assert lives(text) == said
