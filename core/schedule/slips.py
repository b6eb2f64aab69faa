"""English words of time as they are misspelt: `thrusday`, `evning`, `wensday`."""

from __future__ import annotations

from functools import lru_cache
from typing import Final

from rapidfuzz.distance import OSA

WORDS: Final = (
    "monday",
    "tuesday",
    "wednesday",
    "thursday",
    "friday",
    "saturday",
    "sunday",
    "tomorrow",
    "tonight",
    "morning",
    "evening",
    "afternoon",
    "weekend",
)
"""Long enough that one slip makes no other word of them, but those below."""

OTHERS: Final = frozenset({"sundry", "sundae", "mourning"})
"""Words of their own that are one slip from one of those."""

SHORTEST: Final = 6
"""Letters of a word that is looked at."""

LONG: Final = 9
"""From so many letters on two slips are one word still: wensday. [letters]"""


@lru_cache(maxsize=4096)
def spelt_right(word: str) -> str:
    """The word of time that a folded word is one slip from, or two of a long one; else the word.

    Its first letter is right, and it is no plural.

    Examples
    --------
    >>> [spelt_right(word) for word in ("thrusday", "wensday", "mornig", "mornings", "mourning")]
    ['thursday', 'wednesday', 'morning', 'mornings', 'mourning']
    """
    if len(word) < SHORTEST or not word.isalpha() or word in WORDS or word in OTHERS:
        return word
    for right in WORDS:
        if word[0] != right[0] or word == f"{right}s" or abs(len(word) - len(right)) > 2:
            continue
        most = 2 if len(right) >= LONG else 1
        if OSA.distance(word, right, score_cutoff=most) <= most:
            return right
    return word
