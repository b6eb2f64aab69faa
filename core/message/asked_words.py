"""Words of first questions: what so much is of (`how much of what`), and what water is made in."""

from __future__ import annotations

from functools import cache
from typing import Literal

from core.message.wordfile import spelt


@cache
def _words() -> dict[str, frozenset[str]]:
    return {name: frozenset(ways) for _section, name, ways in spelt("asked_words.txt", {"word"})}


def is_word(meaning: Literal["of_what", "vessel", "of", "holding", "making"], plain: str) -> bool:
    """Whether a plain word is one of those of a meaning.

    Examples
    --------
    >>> is_word("of_what", "wovon"), is_word("vessel", "seau"), is_word("of_what", "powder")
    (True, True, False)
    """
    return plain in _words()[meaning]
