"""In how many parts or days something is wished: `in 3 parts`, `über 4 Tage`."""

from __future__ import annotations

from functools import cache
from typing import Final

from core.message import quantities
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import Token, cut
from core.message.wordfile import spelt

MOST: Final = 60
"""More parts than these are none: two months of them."""


@cache
def _words() -> frozenset[str]:
    """Words for parts and for days, by ``followups.txt``."""
    told = (ways for section, _meaning, ways in spelt("followups.txt") if section == "parts")
    return frozenset(way for ways in told for way in ways)


def count_at(tokens: list[Token], place: int) -> int | None:
    """How many parts are told from a token on: its number and a word for parts; else None."""
    if place + 1 >= len(tokens) or tokens[place + 1].text not in _words():
        return None
    token = tokens[place]
    if token.kind == "count" and str(token.value).isdigit():
        count: float | None = float(str(token.value))
    else:
        found = quantities.read(tokens[: place + 1], place) if token.kind == "number" else None
        count = None if found is None or found.unit is not None else found.value
    return int(count) if count is not None and count == int(count) and 0 < count <= MOST else None


def parts_in(text: str) -> int | None:
    """In how many parts a text wishes something; None where it does not say.

    Examples
    --------
    >>> parts_in("dose kh 5 in 3 parts"), parts_in("kh auf 5 in zwei Tagen"), parts_in("dose kh 5")
    (3, 2, None)
    """
    tokens = cut(fold(text), lexicon(), text)
    counts = (count_at(tokens, place) for place in range(len(tokens)))
    return next((count for count in counts if count is not None), None)
