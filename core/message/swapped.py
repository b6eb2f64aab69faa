"""What was told the wrong way round: two values under each other's name, two tanks' values."""

from __future__ import annotations

import re
from typing import Final

from core.message.asking_words import asks
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.regrets import behind_regret
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


_ENDS: Final = re.compile(r"[,:;.!\n][,:;.!\s]*|\s-\s")
"""What parts the word of regret from what is right."""

LEAST: Final = 2
"""Words that tell it of nothing named: a lone `switched` may be of a lamp."""


def told_swapped(text: str) -> bool:
    """Whether a text says no more than that what was told stood the wrong way round.

    Examples
    --------
    >>> told_swapped("sorry swapped those"), told_swapped("switched"), told_swapped("swap them?")
    (True, False, False)
    """
    if len(text) > LONGEST or asks(text) or "?" in text or len(text.split()) < LEAST:
        return False
    told = said("swapped.txt", text, small=True)
    return told is not None and set(told.classes) == {"swap"}


def behind_swap(text: str) -> str | None:
    """What is told anew behind the words that it stood the wrong way round; None without them.

    Examples
    --------
    >>> behind_swap("sorry swapped those, big is kh 5 and cube kh 3")
    'big is kh 5 and cube kh 3'
    >>> behind_swap("sorry, big is kh 5") is None
    True
    """
    for mark in _ENDS.finditer(text[:LONGEST]):
        if told_swapped(text[: mark.start()].rstrip()):
            return text[mark.end() :].strip() or None
    return None


_PARTS: Final = re.compile(r"[,;.\n]|\b(?:and|und|et)\b")
_WAS: Final = re.compile(
    r" (?:was|were|is|are|war|ist|etait|era|byl|var)(?: (?:in|from|of|for|aus|von|im))? "
)
_AROUND: Final = re.compile(r"^(?:the|my|das|der|die|le|la|el) | (?:one|tank|becken|bac)$")


def whose_each(text: str) -> tuple[tuple[str, str], ...]:
    """Each value with the words for its tank, behind a word of regret; empty for other talk.

    Examples
    --------
    >>> whose_each("sorry the kh 6 was the shrimp one, kh 2 was the big one")
    (('kh 6', 'shrimp'), ('kh 2', 'big'))
    >>> whose_each("the kh 6 was the shrimp one, kh 2 was the big one")
    ()
    >>> whose_each("sorry the kh 6 was the shrimp one")
    ()
    """
    behind = None if len(text) > LONGEST or asks(text) else behind_regret(text)
    parts = _PARTS.split(fold(behind or "").strip(" .!"))
    told = [_WAS.split(" ".join(part.split()), maxsplit=1) for part in parts]
    if len(told) != LEAST or not all(len(each) == LEAST and _is_of(*each) for each in told):
        return ()
    return tuple((_AROUND.sub("", value), _bare(tank)) for value, tank in told)


def _is_of(value: str, tank: str) -> bool:
    """Whether the one ends with a number, and the other holds none."""
    return any(map(str.isdigit, value.split()[-1])) and not any(map(str.isdigit, tank))


def _bare(tank: str) -> str:
    """The words for a tank without what stands around them: the shrimp one."""
    return _AROUND.sub("", _AROUND.sub("", tank))
