"""What is asked of the tanks themselves: `my tanks`, `which is worse`, `switch to fern`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
from typing import Final, NamedTuple

from core.message.described import mark as described
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Look
from core.message.tanks import mark
from core.message.tokens import cut
from core.message.wordfile import spelt

LONGEST: Final = 80
"""A longer text says more. [characters]"""

PLACE: Final = "{tank}"

_MARKS: Final = re.compile(r"[^\w{}]+")
_ARTICLES: Final = re.compile(
    r"(?<!\S)(?:the|my|das|dem|den|die|mein|meinem|le|la|l|el|il|lo|o|de|het|mijn|det|den|mitt)"
    r" (?=\{tank\})"
)
_ONE: Final = re.compile(r"(?<=\{tank\}) (?:one|tank|becken|aquarium|bac|bak)(?!\S)")

_SIZED: Final = re.compile(r"(?<=[a-z]) one(?=\W*$)", re.IGNORECASE)
"""In a whole sentence of a tank it stands for the word."""


class TankTalk(NamedTuple):
    """What is asked, and of which tank where one is named."""

    meaning: str
    tank: str | None = None


@cache
def _ways() -> dict[str, str]:
    """Whole sentence, plain → what it asks."""
    return {
        _plain(way): section
        for section, _language, ways in spelt("tank_talk.txt")
        for way in ways
        if section not in {"light", "both"}
    }


@cache
def _light() -> frozenset[str]:
    told = spelt("tank_talk.txt")
    return frozenset(way for of, _language, ways in told if of == "light" for way in ways)


def names_both(text: str) -> bool:
    """Whether a text has a word for both.

    Examples
    --------
    >>> names_both("ok did both"), names_both("put 2 in")
    (True, False)
    """
    told = spelt("tank_talk.txt")
    ways = (way for of, _language, ways in told if of == "both" for way in ways)
    return any(f" {_plain(way)} " in f" {_plain(text)} " for way in ways)


def _plain(text: str) -> str:
    return " ".join(_MARKS.sub(" ", fold(text)).split())


def tank_talk(text: str, tanks: Sequence[str], looks: Sequence[Look] = ()) -> TankTalk | None:
    """What a text asks of the tanks; None for other talk.

    Parameters
    ----------
    text : str
        As typed.
    tanks : sequence of str
        Their names.
    looks : sequence of Look, optional
        What they are, for those told by their size.

    Examples
    --------
    >>> tank_talk("which tank is worse?", ["Fern", "Rift"]), tank_talk("switch to fern", ["Fern"])
    (TankTalk(meaning='compare', tank=None), TankTalk(meaning='use', tank='Fern'))
    >>> tank_talk("use 5 g soda in fern", ["Fern"]) is None
    True
    """
    if len(text) > LONGEST or any(char.isdigit() for char in _unnamed(text, tanks)):
        return None
    folded = fold(text)
    tokens = mark(cut(folded, lexicon(), text), folded, tuple(tanks)) if tanks else []
    tokens = described(tokens, folded, tuple(looks)) if looks else tokens
    named = [token for token in tokens if token.kind == "tank" and token.end > token.start]
    if (meaning := _meaning(_plain(folded))) is not None:
        return TankTalk(meaning)
    if not named and looks and (of_one := _SIZED.sub(" tank", text)) != text:
        return tank_talk(of_one, tanks, looks)  # and the little one?
    if len(named) != 1:
        return None
    (token,) = named
    masked = f"{folded[: token.start]}{PLACE}{folded[token.end :]}"
    meaning = _meaning(_ONE.sub("", _ARTICLES.sub("", _plain(masked))))
    return None if meaning is None else TankTalk(meaning, str(token.value))


def _unnamed(text: str, tanks: Sequence[str]) -> str:
    """A text without the names of tanks, which may have numbers."""
    plain = fold(text)
    for tank in tanks:
        plain = plain.replace(fold(tank), "")
    return plain


def _meaning(plain: str) -> str | None:
    """What a plain text asks, with or without small words before it."""
    ways, words = _ways(), plain.split()
    for first in range(min(3, len(words))):
        if (found := ways.get(" ".join(words[first:]))) is not None:
            return found
        if words[first] not in _light():
            return None
    return None
