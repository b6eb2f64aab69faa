"""What puts right the deed or reading that was just told, in nine languages."""

from __future__ import annotations

import pytest

from core.message.i_will import spelt_out
from core.message.put_right import put_right
from core.message.wordfile import spelt

NUMBERS = {
    "2": (
        "oh wait it was only 2; no that was 2; ne quatsch warens 2; nein, waren nur 2; en fait 2;"
        " non pardon 2; c'était 2; perdón, eran 2; en realidad 2; não, foram 2; anzi 2; scusa, 2;"
        " nee het waren er 2; nie, było 2; nej det var 2; scratch that it was heaped so 2"
    ),
}


@pytest.mark.parametrize(
    ("text", "number"),
    [(text.strip(), of) for of, texts in NUMBERS.items() for text in texts.split(";")],
)
def test_a_number_puts_one_right(text: str, number: str) -> None:
    said = put_right(text)
    assert said is not None
    assert said.number == number


@pytest.mark.parametrize(
    "text",
    [
        "3 g not 6", "i did 3 instead of 6", "3 g statt 6 g", "3 g au lieu de 6", "era 3 g no 6",
        "3 em vez de 6", "3 invece di 6", "3 in plaats van 6", "3 zamiast 6", "3 i stället för 6",
    ],
)  # fmt: skip
def test_a_number_stands_in_the_place_of_another(text: str) -> None:
    said = put_right(text)
    assert said is not None
    assert (said.number or "").startswith("3")
    assert said.wrong == 6.0


@pytest.mark.parametrize(
    "text",
    [
        "half of that actually", "i only put half in", "hab die hälfte reingetan",
        "j'ai mis la moitié", "puse la mitad", "pus metade", "ho messo metà", "de helft gegeven",
        "dałem połowę", "gav hälften",
    ],
)  # fmt: skip
def test_half_of_it(text: str) -> None:
    said = put_right(text)
    assert said is not None
    assert said.half


@pytest.mark.parametrize(
    ("text", "undo"),
    [
        ("delete the last one", "last"), ("undo that, havent actually done it", "last"),
        ("lösch das letzte", "last"), ("efface le dernier", "last"), ("borra el último", "last"),
        ("no wait, undo both", "both"), ("annule les deux", "both"), ("borra los dos", "both"),
        ("annulla entrambi", "both"), ("cofnij oba", "both"), ("ta bort båda", "both"),
    ],
)  # fmt: skip
def test_what_is_taken_back(text: str, undo: str) -> None:
    said = put_right(text)
    assert said is not None
    assert said.undo == undo


@pytest.mark.parametrize(
    "text",
    [
        "it was yesterday", "i did it yesterday", "das war gestern", "c'était hier", "fue ayer",
        "foi ontem", "era ieri", "het was gisteren", "to było wczoraj", "det var igår",
    ],
)  # fmt: skip
def test_another_time(text: str) -> None:
    said = put_right(text)
    assert said is not None
    assert said.timed


@pytest.mark.parametrize(
    "text",
    [
        "i put in 2 g", "is it 2 g?", "no fish died", "wait 2 days", "it was great", "no ammonia",
        "no baking soda", "it was 2 fish", "delete fern", "undo the water change", "no, kh 5",
        "was bewirken 5 g davon", "qué hacen 5 g de eso", "12", "2 g", "yesterday", "20 min ago",
        "it wasn't washing soda", "can you delete the last one?", "half", "only half the fish eat",
        "did it change", "my fish died in quarry", "it's 60 l", "its baking soda", "e 3",
        "actually i have 3", "it was 2 days ago", "it was at 8", "it was 8 o'clock", "no more",
        "sorry 2 days", "only 5 left", "not 2",
    ],
)  # fmt: skip
def test_what_puts_nothing_right(text: str) -> None:
    assert put_right(text, ["Fern", "Quarry"]) is None


def test_every_word_is_of_one_class() -> None:
    seen: dict[str, str] = {}
    for _section, meaning, ways in spelt("put_right.txt", {"word"}):
        for way in ways:
            assert way == way.strip()
            seen.setdefault(way, meaning)
    assert {"regret", "was", "deed", "only", "not", "half", "undo"} <= set(seen.values())


@pytest.mark.parametrize(
    ("text", "out"),
    [
        ("ill change 20l tomorrow", "i'll change 20l tomorrow"),
        ("ok ill only do 10 l", "ok i'll only do 10 l"),
        ("fern kh 4. ill test later", "fern kh 4. i'll test later"),
        ("my fish is ill do i change water", "my fish is ill do i change water"),
        ("ill fish", "ill fish"),
        ("they look ill", "they look ill"),
        ("ill and not eating", "ill and not eating"),
        ("and ill do i change water", "and ill do i change water"),
    ],
)
def test_ill_before_a_verb_is_i_will(text: str, out: str) -> None:
    assert spelt_out(text) == out
