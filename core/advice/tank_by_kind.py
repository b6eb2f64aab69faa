"""Where a text names a tank by the animals in it: `betta nitrite 0.1`, `the shrimp tank has kh 4`.

place = [ article ] kind noun | noun of kind | kind-noun in one word
      | [ article ] kind, before or behind a reading

Words for tanks are those of ``described.txt``.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Final

from core.advice.livestock import is_head, name_at
from core.message.described import ways
from core.message.fold import fold

_WORD: Final = re.compile(r"[^\W\d_]+")
_OF: Final = frozenset(
    {
        "de", "des", "du", "d", "aux", "avec", "con", "dei", "delle", "degli", "di", "del",
        "dos", "das", "do", "da", "com", "z", "ze", "mit", "met", "med", "van", "with", "los",
        "las", "les", "den", "the", "my", "i", "gli", "le", "as", "os",
    }
)  # fmt: skip
_ARTICLES: Final = frozenset(
    {
        "the", "my", "our", "das", "dem", "mein", "meinem", "unser", "unserem", "le", "la", "l",
        "mon", "ma", "el", "mi", "il", "lo", "mio", "mia", "o", "meu", "minha", "de", "het", "mijn",
        "moje", "moim", "det", "den", "mitt", "min",
    }
)  # fmt: skip
_ANY: Final = frozenset(
    {
        "a", "an", "another", "new", "any", "ein", "eine", "einem", "einen", "neues", "un", "une",
        "una", "um", "uma", "een", "en", "ett", "nowe", "ny", "no",
    }
)  # fmt: skip
"""Words before it that make it no tank on record: `a shrimp tank`."""
_ONE: Final = frozenset({"one"})
"""What stands for the word for a tank behind an article and a kind: the shrimp one."""
_LEAST: Final = 3
"""Letters of a kind in one word with the tank."""


@dataclass(frozen=True, slots=True)
class Place:
    """Where a kind stands in a text, and whether a word for a tank is with it.

    Attributes
    ----------
    start, end : int
        Of the words in the text, with the article.
    kind : str
        The kind as typed, folded.
    is_tank : bool
        True beside a word for a tank; else it opens or ends the text.
    """

    start: int
    end: int
    kind: str
    is_tank: bool


@cache
def _nouns() -> frozenset[str]:
    return frozenset(fold(way) for way in (*ways()["noun"], "vasca", "pecera", "teich", "karet"))


def place(text: str) -> Place | None:
    """The first place of a text that names a tank by a kind; None where none does.

    Examples
    --------
    >>> place("the betta tank has kh 4")
    Place(start=0, end=14, kind='betta', is_tank=True)
    >>> place("ph 7 im Garnelenbecken").kind, place("acuario de gambas ph 7").kind
    ('garnelen', 'gambas')
    >>> place("no i meant the shrimp one").kind, place("the shrimp one").is_tank
    ('shrimp', True)
    >>> place("betta nitrite 0.1"), place("can i make it a betta tank")
    (Place(start=0, end=5, kind='betta', is_tank=False), None)
    """
    plain = fold(text)
    spans = [(found[0], found.start(), found.end()) for found in _WORD.finditer(plain)]
    words = [word for word, _start, _end in spans]
    for at, word in enumerate(words):
        if word in _nouns() and (behind := _of_kind(words, at)) is not None:
            last, size = behind
            return _made(spans, at, last + size, " ".join(words[last : last + size]))
        stem = _stem(word)
        if stem is not None:
            return _made(spans, at, at + 1, stem)
        size = _kind_at(words, at)
        noun = words[at + size] if size and at + size < len(words) else ""
        if noun in _nouns() or (noun in _ONE and at and words[at - 1] in _ARTICLES):
            return _made(spans, at, at + size + 1, " ".join(words[at : at + size]))
    return _at_an_end(plain, spans, words)


def _of_kind(words: list[str], noun: int) -> tuple[int, int] | None:
    """Where a kind stands that `of` joins to the word for a tank, and how many words it takes."""
    at = noun + 1
    while at < len(words) and at - noun <= len(("de", "los")) and words[at] in _OF:
        at += 1
    size = _kind_at(words, at) if noun + 1 < at < len(words) else 0
    return (at, size) if size else None


def _kind_at(words: list[str], at: int) -> int:
    """How many words from a place on name a kind, or several that are called alike; 0 for none."""
    size, _found = name_at(words, at)
    return size or int(is_head(words[at]))


def _stem(word: str) -> str | None:
    """The kind in a word that is of it and of a tank: garnelenbecken."""
    for noun in _nouns():
        stem = word.removesuffix(noun)
        if stem != word and len(stem) >= _LEAST and len(noun) >= _LEAST and _kind_at([stem], 0):
            return stem
    return None


def _made(spans: list[tuple[str, int, int]], first: int, last: int, kind: str) -> Place | None:
    if first and spans[first - 1][0] in _ANY:
        return None
    led = first - 1 if first and spans[first - 1][0] in _ARTICLES else first
    return Place(spans[led][1], spans[last - 1][2], kind, is_tank=True)


def _at_an_end(plain: str, spans: list[tuple[str, int, int]], words: list[str]) -> Place | None:
    """A kind that opens a text or ends it, with its article; no number stands beside it there."""
    first = 1 if words and words[0] in _ARTICLES else 0
    size = _kind_at(words, first) if first < len(words) else 0
    if size and not plain[: spans[0][1]].strip() and first + size < len(words):
        return Place(0, spans[first + size - 1][2], " ".join(words[first : first + size]), False)
    for at in range(len(words)):
        size = _kind_at(words, at)
        if size and at + size == len(words) and at and not plain[spans[-1][2] :].strip(" .!"):
            led = at - 1 if words[at - 1] in _ARTICLES else at
            return Place(spans[led][1], spans[-1][2], " ".join(words[at:]), False)
    return None
