"""A value that came to a number by itself, told behind it: `no3 auf 40 gestiegen`.

risen = analyte { light word } to number [ unit ] word of rising or falling

It is a reading; without the last word it is a wish, and with one of asking it is left alone.
"""

from __future__ import annotations

from functools import cache
from typing import Final

from core.message import quantities
from core.message.token import Token
from core.message.wordfile import spelt

_LONGEST: Final = 2
"""Words of the longest phrase."""
_TO: Final = frozenset({"to", "at_to"})
_BETWEEN: Final = frozenset({"link", "approx"})


@cache
def _ways() -> frozenset[str]:
    """All that tells of rising or falling, plain.

    Raises
    ------
    ValueError
        As `spelt`.
    """
    return frozenset(way for _, _, these in spelt("risen.txt", {"risen"}) for way in these)


def read_as_told(tokens: list[Token]) -> None:
    """Make the word before the number one of what was reached, in place."""
    for place, token in enumerate(tokens):
        if token.kind != "mark" or token.value not in _TO or place + 2 >= len(tokens):
            continue
        quantity = quantities.read(tokens, place + 1)
        if quantity is None or quantity.value is None or not _named(tokens, place):
            continue
        size = _risen(tokens, quantity.last)
        behind = tokens[quantity.last + size] if quantity.last + size < len(tokens) else None
        if not size or (behind is not None and behind.text == "?"):
            continue
        token.value = "fell_to"  # either of both: the number is what was reached
        for word in tokens[quantity.last : quantity.last + size]:
            word.kind = word.value = "fill"


def _named(tokens: list[Token], place: int) -> bool:
    """Whether nothing of weight stands between a name and this place."""
    while place > 0:
        place -= 1
        token = tokens[place]
        if token.kind == "analyte":
            return not any(
                t.kind in {"ask", "command"} or t.value == "wish" for t in tokens[:place]
            )
        if token.kind not in {"fill", "time"} and token.value not in _BETWEEN:
            return False
    return False


def _risen(tokens: list[Token], place: int) -> int:
    """How many tokens from here on tell of rising or falling; 0 for none."""
    for size in range(_LONGEST, 0, -1):
        said = " ".join(token.text for token in tokens[place : place + size])
        if place + size <= len(tokens) and said in _ways():
            return size
    return 0
