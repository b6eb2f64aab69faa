"""Two values that were told under each other's name: `i swapped ammonia and nitrite`."""

from __future__ import annotations

from typing import Final

from core.message.asking_words import asks
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.word_classes import said

LONGEST: Final = 90
"""A longer text says more than what was wrong. [characters]"""


def swapped(text: str) -> tuple[str, str] | None:
    """The two analytes whose values shall be exchanged; None where a text tells anything else.

    Examples
    --------
    >>> swapped("i swapped ammonia and nitrite"), swapped("Nitrit und Nitrat vertauscht")
    (('ammonia', 'nitrite'), ('nitrite', 'nitrate'))
    >>> swapped("did i swap ammonia and nitrite?"), swapped("ammonia and nitrite")
    (None, None)
    """
    if len(text) > LONGEST or asks(text):
        return None
    tokens = [t for t in cut(fold(text), lexicon(), text) if t.kind == "analyte"]
    names = [str(token.value).partition("@")[0] for token in tokens]
    if len(names) != 2 or names[0] == names[1]:
        return None
    rest = text
    for token in reversed(tokens):
        rest = f"{rest[: token.start]} {rest[token.end :]}"
    told = said("swapped.txt", rest, small=True)
    return (names[0], names[1]) if told is not None and set(told.classes) == {"swap"} else None
