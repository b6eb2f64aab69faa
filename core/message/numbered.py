"""Names that tell tanks apart by a number or a place: `rack 2 kh 9`, `the left tank`."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message import nearest
from core.message.kinds import is_kind
from core.message.token import Token
from core.message.word_classes import is_small
from core.message.wordfile import spelt

HOMES: Final = 12
"""A number from here on behind a word for a tank is how warm it is more often."""
SHORTEST: Final = 3
"""Letters of such a word."""

_GLUED: Final = re.compile(rf"[^\W\d]{{{SHORTEST},12}}\d{{1,2}}")
_HOURS: Final = frozenset({"am", "pm", "oclock"})
_COUNTING: Final = re.compile(r"\d{1,2}")
_LETTERS: Final = frozenset("bcdfghjklmnpqrstvx")
"""Small letters that are a word by themselves in none of the languages."""
_LETTERED: Final = "tank"
"""The word for a tank of languages in which ``a`` is no verb: ``l'aquarium a kh 4`` is."""


def last_of(tokens: list[Token], place: int, source: str) -> int | None:
    """The place of the last token of such a name; None where none begins at `place`.

    `source` is what the tokens were cut from, as typed: behind a word for a tank a letter names
    one too, and a large letter is no word (``tank A``).

    A word that may be a misspelt name of a value, or is a kind of animal, is none: `nitrte 2`;
    nor is an hour a number of one: `yestrday 8pm`.
    """
    word = tokens[place]
    if word.kind == "word" and _GLUED.fullmatch(word.text):
        return None if nearest.analytes(word.text) else place
    if place + 1 == len(tokens):
        return None
    if _is_letter(word, tokens[place + 1], source):
        return place + 1
    if not _COUNTING.fullmatch(tokens[place + 1].text):
        return None
    if any(behind.value in _HOURS for behind in tokens[place + 2 : place + 3]):
        return None
    if word.kind == "mark" and word.value == "home":
        return place + 1 if int(tokens[place + 1].text) < HOMES else None
    if word.kind != "word" or len(word.text) < SHORTEST or not word.text.isalpha():
        return None
    known = is_small(word.text) or nearest.analytes(word.text) or is_kind(word.text)
    return None if known else place + 1  # thats 3 now: a word without weight names nothing


def _is_letter(word: Token, behind: Token, source: str) -> bool:
    if word.kind != "mark" or word.value != "home" or behind.end - behind.start != 1:
        return False
    typed = source[behind.start : behind.end]
    if "A" <= typed <= "Z":
        return True
    return typed in _LETTERS or (typed == "a" and word.text == _LETTERED)


@cache
def places() -> frozenset[str]:
    """Words for where a tank stands, plain."""
    return frozenset(way for _, _, ways in spelt("named_by_place.txt") for way in ways)
