"""How it is asked to raise KH or pH; the ways of nine languages are common practice."""

from __future__ import annotations

import pytest

from core.message.raise_asked import asked

PH = [
    "how do i raise the ph",
    "can i raise ph",
    "raise ph",
    "how do i get ph up",
    "ph too low how do i get it up",
    "wie erhöhe ich den pH",
    "wie bekomme ich den ph hoch",
    "comment augmenter le ph",
    "cómo subo el ph",
    "como aumentar o ph",
    "come alzo il ph",
    "hoe krijg ik de ph omhoog",
    "jak podnieść ph",
    "hur höjer jag ph",
    "hur får jag upp ph",
]
KH = [
    "should I increase my KH",
    "kh erhöhen",
    "soll ich die KH anheben",
    "dois-je augmenter le kh",
    "debo subir el kh",
    "posso subir o kh",
    "posso alzare il kh",
    "kan ik kh verhogen",
    "czy mogę podnieść kh",
    "kan jag höja kh",
]
BUFFER = [
    "should i add baking soda",
    "do i need baking soda",
    "soll ich natron zugeben",
    "dois-je ajouter du bicarbonate",
    "debo añadir bicarbonato",
    "devo adicionar bicarbonato",
    "devo aggiungere bicarbonato",
    "moet ik baksoda toevoegen",
    "czy dodać sodę oczyszczoną",
    "ska jag tillsätta bikarbonat",
]


@pytest.mark.parametrize(("text", "analyte"), [(t, "ph") for t in PH] + [(t, "kh") for t in KH])
def test_a_wish_to_raise_is_heard(text: str, analyte: str) -> None:
    found = asked(text)
    assert found is not None
    assert (found.kind, found.analyte, found.target) == ("dose", analyte, None)


@pytest.mark.parametrize("text", BUFFER)
def test_whether_bicarbonate_may_go_in_is_heard(text: str) -> None:
    found = asked(text)
    assert found is not None
    assert (found.kind, found.substance) == ("effect", "sodium bicarbonate")


@pytest.mark.parametrize("text", ["should i add buffer", "kann ich Puffer zugeben"])
def test_a_buffer_of_no_name_is_heard(text: str) -> None:
    found = asked(text)
    assert found is not None
    assert (found.analyte, found.substance) == (None, None)


@pytest.mark.parametrize(
    "text",
    [
        "my ph went up",
        "ph is up",
        "raise kh to 6",
        "how do i raise the light",
        "how do i lower ph",
        "wie senke ich den ph",
        "i raised kh",
        "can i add salt",
        "should i use baking soda or epsom salt",
        "",
        "?",
    ],
)
def test_another_thing_is_not(text: str) -> None:
    assert asked(text) is None
