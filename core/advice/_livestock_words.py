"""Names of animals laid bare: without accents, spaces, and the endings of plurals."""

from __future__ import annotations

from typing import Final

from core.message.fold import INVISIBLE, MARK, fold
from core.message.kinds import LIFE_STAGES

WORD_LONG_ENOUGH: Final = 4
"""A shorter word of a name ("red", "bee") does not tell what kind is meant. [letters]"""

_ENDINGS: Final = ("ies", "ow", "es", "en", "er", "ar", "or", "s", "n", "e", "i", "y", "x", "a")
"""Endings of plurals (and of the singulars beside them) in the nine languages; common grammar."""


def plain_name(text: str) -> str:
    """Small letters, no accents, one space for whatever parts the words."""
    folded = fold(text).replace(INVISIBLE, "").replace(MARK, "")
    kept = "".join(c if c.isalnum() else " " for c in folded.replace("'", ""))
    return " ".join(kept.split())


def joined(plain: str) -> str:
    """A name however it is parted into words: gold fish, goldfish."""
    return plain.replace(" ", "")


def stem(plain: str) -> str:
    """A name without the endings of its words' plurals, however it is parted into words."""
    return "".join(_stem_of_word(word) for word in plain.split())


def _stem_of_word(word: str) -> str:
    """A word without its endings, so that singular and plural meet: tetra, tetras → tetr."""
    while True:
        for ending in _ENDINGS:
            if word.endswith(ending) and len(word) - len(ending) >= 3:
                word = word.removesuffix(ending)
                break
        else:
            return word


def grown(plain: str) -> str:
    """A plain name without the words for young animals: guppy fry → guppy."""
    return " ".join(word for word in plain.split() if word not in LIFE_STAGES)


def is_young(text: str) -> bool:
    """Whether a name speaks of young animals, which bear less."""
    return not LIFE_STAGES.isdisjoint(plain_name(text).split())
