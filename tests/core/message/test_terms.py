"""The words of the answers that are asked for, and what is no such question."""

from __future__ import annotations

import pytest

from core.message.terms import asked, meanings


@pytest.mark.parametrize(
    ("text", "term"),
    [
        ("What is RO water?", "ro"),
        ("whats a dechlorinator", "dechlorinator"),
        ("what are invertebrates", "invertebrate"),
        ("what does retest mean?", "retest"),
        ("what do you mean by aerate", "aerate"),
        ("what is meq/L", "meq"),
        ("what is °dH", "degree"),
        ("what is un-ionised ammonia", "un_ionised"),
        ("was ist ein Wasserwechsel?", "water_change"),
        ("was bedeutet Nettovolumen", "net_volume"),
        ("was sind Wirbellose", "invertebrate"),
        ("c'est quoi un tampon", "buffer"),
        ("qu'est-ce que l'eau osmosée ?", "ro"),
        ("¿qué es un cambio de agua?", "water_change"),
        ("o que é TPA", "water_change"),
        ("cos'è l'acqua osmotica", "ro"),
        ("wat is een waterwissel", "water_change"),
        ("co to jest podmiana wody", "water_change"),
        ("vad är osmosvatten", "ro"),
    ],
)
def test_a_word_is_asked_in_nine_languages(text: str, term: str) -> None:
    assert asked(text) == term
    assert term in meanings()


@pytest.mark.parametrize(
    "text",
    [
        "what is kh",
        "what is my buffer",
        "what is wrong with my ro water",
        "what is the",
        "what is 8 dkh in ppm",
        "what does ro do",
        "buffer",
        "did a water change",
        "what is ro\nkh 4",
        "",
    ],
)
def test_other_questions_ask_for_no_word(text: str) -> None:
    assert asked(text) is None
