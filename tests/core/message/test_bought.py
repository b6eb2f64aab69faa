"""Names of bought products in messages, the words around them, and the names on labels."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from core.message import bought, parse
from core.message.label_names import named
from core.message.model import Context

HERE = Context(
    datetime(2026, 3, 1, tzinfo=UTC),
    tanks=("Fern",),
    products=("my buffer", "KH Plus", "gh salt", "buffer 8.2", "Uzdatniacz", "part b"),
)


@pytest.mark.parametrize(
    ("text", "product"),
    [
        ("how much buffer 8.2 for kh 6", "buffer 8.2"),
        ("what does 30 g gh salt do", "gh salt"),
        ("dose kh 6 with KH plus", "KH Plus"),
        ("kh auf 6 mit KH Plus", "KH Plus"),
        ("fern: kh auf 6 mit KH Plus", "KH Plus"),
        ("kh à 6 avec KH Plus", "KH Plus"),
        ("kh a 6 con KH Plus", "KH Plus"),
        ("kh a 6 com KH Plus", "KH Plus"),
        ("kh naar 6 met my buffer", "my buffer"),
        ("kh do 6 z part b", "part b"),
        ("kh till 6 med part b", "part b"),
        ("ile uzdatniacza na 60 l", "Uzdatniacz"),
        ("how much gh salt for a 30 l water change", "gh salt"),
    ],
)
def test_a_product_is_one_thing_in_a_question(text: str, product: str) -> None:
    question = parse(text, HERE).question
    assert question is not None
    assert question.substance == product
    assert question.kind == ("effect" if text.startswith("what") else "dose")


@pytest.mark.parametrize(
    "text",
    [
        "i gave 10 g of gh salt", "ich habe 10 g gh salt gegeben", "j'ai mis 10 g de gh salt",
        "eché 10 g de gh salt", "coloquei 10 g de gh salt", "ho messo 10 g di gh salt",
        "ik heb 10 g gh salt gegeven", "dałem 10 g gh salt", "jag tillsatte 10 g gh salt",
    ],
)  # fmt: skip
def test_a_product_that_was_given_is_a_dose_of_it(text: str) -> None:
    (event,) = parse(text, HERE).events
    assert (event.kind, event.grams, event.substance) == ("dose", 10.0, "gh salt")


@pytest.mark.parametrize("text", ["gh 6 salt 2", "kh 5", "gh 8, kh 4, part of it"])
def test_parts_of_a_name_are_what_they_were(text: str) -> None:
    assert parse(text, HERE).values == parse(text, replace(HERE, products=())).values


def test_of_it_is_the_product_that_was_spoken_of() -> None:
    told = replace(HERE, spoken_of="part b")
    for text in ("i dosed 10 ml of it", "dosed 10 ml of that"):
        (event,) = parse(text, told).events
        assert (event.millilitres, event.substance) == (10.0, "part b")
    question = parse("was bewirken 20 ml davon", told).question
    assert question is not None
    assert question.substance == "part b"
    assert parse("what does 20 ml of it do", HERE).question != question


@pytest.mark.parametrize(
    ("text", "name", "sure"),
    [
        ("my buffer: 5 g per 80 l raises kh 1", "my buffer", True),
        ("liquid gh: one capful (5 ml) per 50 l raises gh by 1", "liquid gh", True),
        ("buffer 8.2: 1,5 g per 40 l raises kh 1,2", "buffer 8.2", True),
        ("Fern: alk boost: 5 ml per 80 l raises kh 1", "alk boost", True),
        ("a powder called reef alk, label: 6 g in 100 l raises kh by 1", "reef alk", True),
        ("neues Produkt KH Stark: 5 g auf 80 l erhöht kh um 1", "KH Stark", True),
        ("mg salt (heptahydrate): 10 g per 100 l raises mg 10", "mg salt", True),
        ("pó azul: 5 g por 50 l aumenta o kh em 1,5", "pó azul", True),
        ("mon tampon: 5 g pour 50 l augmente le kh de 1", "mon tampon", True),
        ("my kh plus raises kh by 1 with 5 g per 80 l", "kh plus", True),
        ("shrimp mineral 2 g per 10 l raises gh by 6", "shrimp mineral", False),
    ],
)
def test_what_stands_before_a_label_is_its_name(text: str, name: str, *, sure: bool) -> None:
    found = named(text, HERE)
    assert found is not None
    assert (found.said, found.sure) == (name, sure)


@pytest.mark.parametrize(
    "text",
    [
        "5 g per 80 l raises kh 1",
        "kh: 5 g per 80 l raises kh 1",
        "the kh: 5 g per 80 l raises kh 1",
        "dose kh: 5 g per 80 l raises kh 1",
        "guppy: 5 g per 80 l raises kh 1",
        "today: 5 g per 80 l raises kh 1",
        "Fern: 5 g per 80 l raises kh 1",
        "the bottle that i found yesterday 5 g per 80 l raises kh 1",
    ],
)
def test_words_of_messages_are_no_name(text: str) -> None:
    assert named(text, HERE) is None


@pytest.mark.parametrize(
    "text",
    [
        "forget my KH Plus", "vergiss mein KH Plus", "oublie mon KH Plus", "olvida el KH Plus",
        "esquece o KH Plus", "dimentica il mio KH Plus", "vergeet mijn KH Plus", "usuń KH Plus",
        "glöm KH Plus!",
    ],
)  # fmt: skip
def test_a_product_is_forgotten_in_nine_languages(text: str) -> None:
    assert bought.forgotten(text)[-1] == "KH Plus"


@pytest.mark.parametrize(
    "text",
    ["products", "Meine Produkte", "produits", "productos", "produtos", "prodotti", "producten",
     "produkty", "produkter"],
)  # fmt: skip
def test_products_are_listed_in_nine_languages(text: str) -> None:
    assert bought.lists(text)


def test_other_talk_is_neither() -> None:
    assert bought.forgotten("kh 4") == ()
    assert not bought.lists("products for plants")
    assert bought.introduced("a new fish") is None
