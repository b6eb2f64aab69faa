"""An acid, peroxide or bleach that is told to have gone into the water, in few words.

told  = telling [ end anything ]
telling = thing, with where it went or that it was done, beside how much, who, when, in any order

``acid 10 ml in``, ``put some vinegar in``, ``a splash of bleach went in, fish gasp``. Every word of
the telling is of a class of ``acid_in.txt``: what denies, plans, asks or tells of another vessel is
in none of them. An end is a sign or a word of the class ``then``.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from functools import cache
from typing import Final, Literal

from core.message.fold import fold
from core.message.word_classes import Said, said
from core.message.wordfile import spelt

FILE: Final = "acid_in.txt"

_SIGN: Final = re.compile(r"(?<!\d)[.,](?!\d)|(?<=\d)[.,](?=\s|$)|[;!:\n]|\s[-–—]\s")
_TANK: Final = "aquarium"
"""What stands in the place of a tank's name."""
_MOST: Final = 6
"""Ends of a telling that are tried."""

Thing = Literal["sour", "peroxide", "bleach"]
_THINGS: Final[tuple[Thing, ...]] = ("sour", "peroxide", "bleach")


def went_in(text: str, tanks: Collection[str] = ()) -> Thing | None:
    """What a text begins by telling to have gone into the water; None where it tells none.

    Parameters
    ----------
    text : str
        The message as written.
    tanks : collection of str
        Names of the chat's tanks, which may stand in it.

    Examples
    --------
    >>> went_in("acid 10 ml in"), went_in("h2o2 20 ml went in"), went_in("etwas Essig rein")
    ('sour', 'peroxide', 'sour')
    >>> went_in("a splash of bleach went in, fish gasp"), went_in("put some vinegar in to lower ph")
    ('bleach', 'sour')
    >>> went_in("10 ml acid in Fern", ["Fern"]), went_in("10 ml acid in Fern")
    ('sour', None)
    >>> went_in("no acid in"), went_in("put some vinegar in the kettle"), went_in("acid in?")
    (None, None, None)
    >>> went_in("10 ml vinegar in 20 l"), went_in("vinegar"), went_in("morgen essig rein")
    (None, None, None)
    """
    plain = fold(text)
    if _named(*_THINGS).search(plain) is None:
        return None
    for name in tanks:
        plain = re.sub(rf"(?<!\w){re.escape(fold(name))}(?!\w)", _TANK, plain)
    for told, sign in _tellings(plain):
        if sign == "?":
            continue
        found = _thing(said(FILE, told))
        if found is not None:
            return found
    return None


def _tellings(plain: str) -> Iterator[tuple[str, str]]:
    """What may be the telling that a text begins with, and the sign behind it."""
    yield plain.rstrip(" .!"), "?" if plain.rstrip(" .!").endswith("?") else ""
    ends = sorted({(each.start(), each[0]) for each in (*_SIGN.finditer(plain), *_then(plain))})
    for place, sign in ends[:_MOST]:
        yield plain[:place], sign


@cache
def _ends() -> re.Pattern[str]:
    ways = [way for _s, name, told in spelt(FILE) if name == "then" for way in told]
    said = "|".join(map(re.escape, sorted(ways, key=len, reverse=True)))
    return re.compile(rf"\s(?:{said})(?!\w)")


def _then(plain: str) -> Iterator[re.Match[str]]:
    return _ends().finditer(plain)


def _thing(told: Said | None) -> Thing | None:
    """What went in by the classes of a telling; None where it does not say so, or of what."""
    if told is None or told.has("later") or told.has("then"):
        return None
    thing = next((each for each in _THINGS if told.has(each)), None)
    if thing is None or not (told.has("in") or told.has("deed")):
        return None
    amounts = [each for each in told.numbers if each.unit is not None]
    if len(told.numbers) > 1 or len(amounts) < len(told.numbers):
        return None
    behind_in = ("in", "number") in zip(told.classes, told.classes[1:], strict=False)
    return None if behind_in and not told.has("deed") else thing


def named(text: str) -> tuple[str, int, int] | None:
    """The first acid that a text names, folded, and where it stands in its fold.

    Examples
    --------
    >>> named("salt and Vinegar"), named("salt")
    (('vinegar', 9, 16), None)
    """
    found = _named("sour").search(fold(text))
    return None if found is None else (found[0], found.start(), found.end())


def thing_named(text: str) -> Thing | None:
    """Which of them a text names, whatever it tells of it.

    Examples
    --------
    >>> thing_named("hydrogen peroxide"), thing_named("lemon juice"), thing_named("vodka")
    ('peroxide', 'sour', None)
    """
    plain = fold(text)
    return next((each for each in _THINGS[::-1] if _named(each).search(plain) is not None), None)


@cache
def _named(*things: Thing) -> re.Pattern[str]:
    ways = [way for _s, name, told in spelt(FILE) if name in things for way in told]
    said = "|".join(map(re.escape, sorted(ways, key=len, reverse=True)))
    return re.compile(rf"(?<!\w)(?:{said})(?!\w)")
