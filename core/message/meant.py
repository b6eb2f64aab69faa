"""A tank that was meant, told by its size or as the other one: `sorry, the big one`."""

from __future__ import annotations

from functools import cache
from typing import Final

from core.message.amends import put_right
from core.message.commands import command_of
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.wordfile import spelt

_LIGHT: Final = frozenset({"one", "home"})
_ARTICLES: Final = frozenset({"'", "l", "el", "quello", "de", "den"})
"""Words before it that the parser may take for more."""


@cache
def sizes() -> dict[str, str]:
    """Plain words by which a tank is told without its name → big, small or other.

    Raises
    ------
    ValueError
        If a line has no ``=``.
    """
    told = spelt("meant.txt", {"tank"})
    return {way: meaning for _section, meaning, these in told for way in these}


def tank_meant(text: str) -> str | None:
    """Which tank puts one right that was told: big, small or other; None where none does.

    Examples
    --------
    >>> tank_meant("i meant the big one"), tank_meant("nein, das andere"), tank_meant("no other")
    ('big', 'other', None)
    >>> tank_meant("sorry the big fish died") is None
    True
    """
    said = [
        token
        for token in put_right(text)
        if token.value not in _LIGHT and token.text not in _ARTICLES
    ]
    plain = fold(text)
    first = next(iter(cut(plain, lexicon(), text)), None)
    if len(said) != 1 or "?" in text or first is None:
        return None
    if command_of(first) == "no" and "," not in text:
        return None  # no other, no more
    return sizes().get(said[0].text)
