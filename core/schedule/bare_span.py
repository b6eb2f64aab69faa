"""``remind me 15min``: a span behind the asking, without the word that makes it one to come."""

from __future__ import annotations

from typing import Final

from core.schedule.grammar.spans import amounts
from core.schedule.pieces import Flaw
from core.schedule.request import best_language
from core.schedule.tokens import Line
from core.schedule.words import languages
from core.schedule.words.vocabulary import Vocabulary

SHORTEST: Final = 2
"""Letters of a word of time: `remind me 15 m …` may be of metres, or of millilitres cut off."""


def soon(text: str) -> str:
    """What is asked for behind "remind me", where it begins with a bare span, with the word for in.

    Examples
    --------
    >>> soon("15min"), soon("20 minuten die pumpe"), soon("feed 2 days")
    ('in 15min', 'in 20 minuten die pumpe', 'feed 2 days')
    >>> soon("30 min after feeding"), soon("2 days tomorrow")
    ('30 min after feeding', '2 days tomorrow')
    """
    if not text[:1].isdigit() or best_language(text)[1]:
        return text
    for vocabulary in languages():
        line = Line(text, vocabulary)
        found = amounts(line, 0)
        if found is None or isinstance(found[0], Flaw):
            continue
        end = found[1]
        related = any(line.word(end, role) for role in ("in", "at"))
        is_long = len(line.tokens[end - 1].text) >= SHORTEST
        return text if related or not is_long else f"{_in(vocabulary)} {text}"
    return text


def _in(vocabulary: Vocabulary) -> str:
    """The first of a language's words for a span to come."""
    found = (words for of in vocabulary.phrases.values() for words, entry in of if "in" in entry)
    return " ".join(next(found))
