"""Values told with a word of wishing: `gh up to 12`, `kh 6 please`, `gh at least 8`.

wish  = { light } value { [ "and" ] value } { light }
value = name { way } number [ unit ] { way }
way   = "up to" | "down to" | "please" | "then" | "at least" | "wanted"

A finished move (`kh went up to 6`) and a text with any other word tell what was measured.
"""

from __future__ import annotations

from functools import cache
from typing import Final, NamedTuple

from core.message import quantities
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Context
from core.message.parser import parse
from core.message.tanks import marked
from core.message.tokens import Token, cut
from core.message.wordfile import spelt

LONGEST: Final = 70
"""A longer text says more than what is wished. [characters]"""
PHRASE: Final = 6
"""Words of the longest entry."""
WAYS: Final = frozenset({"up", "down", "please", "then", "least", "want"})
"""Classes of words that make a wish, or may."""

_LIGHT: Final = frozenset({"tank", "fill"})
_PAUSES: Final = frozenset({",", ".", "!", ":", ";"})


class Wish(NamedTuple):
    """One value in its canonical unit, as it would be typed, and the ways that it was told."""

    analyte: str
    target: float
    said: str
    ways: frozenset[str]


@cache
def _words() -> dict[str, str]:
    """Plain words → the class that they are of; the first class that has them counts.

    Raises
    ------
    ValueError
        If a line has no ``=``.
    """
    found: dict[str, str] = {}
    for _section, meaning, ways in spelt("wish_told.txt", {"word"}):
        for way in ways:
            found.setdefault(way, meaning)
    return found


def read(text: str, context: Context) -> tuple[Wish, ...]:
    """The values of a text that may be wished; none where it says anything else.

    Examples
    --------
    >>> from datetime import datetime, UTC
    >>> context = Context(now=datetime(2026, 3, 1, tzinfo=UTC), tanks=("Fern",))
    >>> [(each.analyte, each.target, *each.ways) for each in read("Fern: GH up to 12", context)]
    [('gh', 12.0, 'up')]
    >>> read("kh went up to 6", context), read("kh 6", context), read("log kh 6 please", context)
    ((), (), ())
    """
    if len(text) > LONGEST or "?" in text or not any(map(str.isdigit, text)):
        return ()
    plain = fold(text)
    tokens = marked(cut(plain, lexicon(), text), plain, context)
    found: list[Wish] = []
    place, told = _skip(plain, tokens, 0)
    ways = set(told)
    while place < len(tokens) and tokens[place].kind == "analyte":
        name = tokens[place]
        place, beside = _skip(plain, tokens, place + 1)
        quantity = quantities.single(tokens, place) if place < len(tokens) else None
        if quantity is None:
            return ()
        said = f"{name.text} {plain[quantity.start : quantity.end]}"
        place, behind = _skip(plain, tokens, quantity.last, joined=True)
        values = parse(said, context).values
        exact = len(values) == 1 and values[0].qualifier == "="
        if not exact or not isinstance(values[0].canonical, float):
            return ()
        ways |= beside | behind
        found.append(Wish(values[0].analyte, values[0].canonical, said, frozenset(ways)))
    if place < len(tokens) or "told" in ways or not ways & WAYS:
        return ()
    return tuple(each._replace(ways=frozenset(ways & WAYS)) for each in found)


def _skip(
    plain: str, tokens: list[Token], place: int, *, joined: bool = False
) -> tuple[int, set[str]]:
    """The place behind words of a class and light ones, and the classes of those words."""
    told: set[str] = set()
    while place < len(tokens):
        for size in range(min(PHRASE, len(tokens) - place), 0, -1):
            meaning = _words().get(plain[tokens[place].start : tokens[place + size - 1].end])
            if meaning is not None:
                break
        else:
            token, size, meaning = tokens[place], 1, "light"
            joint = joined and token.kind == "mark" and token.value in {"and", "in"}
            if not (token.kind in _LIGHT or token.text in _PAUSES or joint):
                break
            if _words().get(token.text.partition(" ")[0]) == "told":
                meaning = "told"  # after the water change
        told |= {meaning} - {"light"}
        place += size
    return place, told
