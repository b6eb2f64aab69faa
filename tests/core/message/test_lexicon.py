"""The language files: every one complete, none with one word for two things."""

from __future__ import annotations

from importlib.resources import files

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.analytes import MEASURABLE
from core.message import lexicon
from core.message.fold import fold
from core.substances import SUBSTANCES

LANGUAGES = [language for language in lexicon.LANGUAGES if language != "common"]
BASES = {"N", "P", "NH4"}


def rows(language: str) -> list[tuple[str, str, str, str]]:
    source = files("core.message") / "words" / f"{language}.txt"
    return lexicon.read(source.read_text(encoding="utf-8"), language)


@pytest.mark.parametrize("language", lexicon.LANGUAGES)
def test_one_word_has_one_meaning_in_its_language(language: str) -> None:
    seen: dict[tuple[str, ...], tuple[str, str]] = {}
    twice = []
    for category, meaning, word, _ in rows(language):
        if category in {"clock", "numeral", "animal", "about"}:
            continue  # words there may have another meaning elsewhere
        for plain in lexicon.spellings(word):
            key = lexicon.pieces(plain)
            if seen.setdefault(key, (category, meaning)) != (category, meaning):
                twice.append((word, seen[key], (category, meaning)))
    assert twice == []


@pytest.mark.parametrize("language", lexicon.LANGUAGES)
def test_analytes_and_substances_are_known_ones(language: str) -> None:
    special = {"ambiguous_chlorine", "free_ammonia"}
    for category, meaning, word, _ in rows(language):
        if category == "analyte":
            analyte, _, basis = meaning.partition("@")
            assert analyte in MEASURABLE or analyte in special, word
            assert basis in BASES | {""}, word
        if category == "substance":
            assert meaning in SUBSTANCES | {"soda"}, word


@pytest.mark.parametrize("language", LANGUAGES)
def test_each_language_names_what_every_keeper_needs(language: str) -> None:
    have = {(category, meaning) for category, meaning, _, _ in rows(language)}
    need = {("analyte", a) for a in ("temperature", "gh", "kh", "ammonia", "nitrite", "nitrate")}
    need |= {("event", kind) for kind in ("water_change", "dose", "added", "filter", "lost", "fed")}
    need |= {("time", when) for when in ("today", "yesterday", "ago", "mon", "sun", "hour", "day")}
    need |= {("mark", m) for m in ("wish", "other", "up", "down", "was", "and", "to", "between")}
    need |= {("ask", kind) for kind in ("how_much", "what_if", "why", "convert")}
    need |= {("substance", "sodium bicarbonate"), ("command", "undo"), ("fill", "fill")}
    assert need - have == set()


def test_a_line_outside_a_section_is_named() -> None:
    with pytest.raises(ValueError, match=r"xx\.txt line 2"):
        lexicon.read("# words\nkh = kh\n", "xx")


def test_the_lexicon_is_read_once() -> None:
    assert lexicon.lexicon() is lexicon.lexicon()


@given(st.text(max_size=200))
def test_folding_keeps_every_place(text: str) -> None:
    folded = fold(text)
    assert len(folded) == len(text)
    assert fold(folded) == folded
