"""How much water a tank holds, where a text says nothing else: `it's only 70 l, not 90`.

volume = { is | about } amount { behind } [ "not" number ] | "not" number "but" amount
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final, Literal

from core.message.amends import put_right
from core.message.amounts import volume_litres
from core.message.fold import fold
from core.message.put_right import class_of
from core.message.waters import one_of
from core.message.wordfile import spelt

LONGEST: Final = 70
"""A longer text says more. [characters]"""

_EDGES: Final = " \t\n¿?¡!.,;:"


@cache
def _words(*meanings: str) -> str:
    told = spelt("volume_said.txt", {"word"})
    return one_of(way for _section, meaning, these in told if meaning in meanings for way in these)


@cache
def _head(*meanings: str) -> re.Pattern[str]:
    return re.compile(rf"(?:{_words(*meanings)})(?!\w)[\s,:]*")


@cache
def _tail() -> re.Pattern[str]:
    return re.compile(rf"[\s,]+(?:{_words('behind')})$")


_NUMBER: Final = r"\d{1,6}(?:[.,]\d{1,3})?(?: ?[a-z]{1,9}\.?)?"


@cache
def _other() -> re.Pattern[str]:
    return re.compile(rf"[\s,;]+(?:and |und |but )?(?:{_words('not')}) {_NUMBER}$")


@cache
def _rather() -> re.Pattern[str]:
    return re.compile(
        rf"(?:{_head('is').pattern})*(?:{_words('not')}) {_NUMBER}[\s,;]+(?:{_words('but')}) "
    )


def without_other(text: str) -> str:
    """A text without a number at its end that is told not to be.

    Examples
    --------
    >>> without_other("fern is 80 l, not 90"), without_other("fern is 80 l")
    ('fern is 80 l', 'fern is 80 l')
    """
    plain = fold(text).rstrip(_EDGES)
    found = _other().search(plain)
    return text if found is None or len(plain) > len(text) else text[: found.start()]


def volume_alone(text: str, us_gallons: bool = True) -> float | None:
    """A volume that is all that is said, in litres: `it's 120 litres`, `90 l net`.

    Examples
    --------
    >>> volume_alone("it's 120 litres"), volume_alone("90 l netto"), volume_alone("lost 20 l")
    (120.0, 90.0, None)
    """
    said = _read(text, us_gallons)
    return None if said is None else said[0]


def volume_told(text: str, us_gallons: bool = True) -> float | None:
    """A volume that is told to be so, in litres; None where it is only named.

    Examples
    --------
    >>> volume_told("its only 70 l actually"), volume_told("no, 70 l"), volume_told("70 l, not 90")
    (70.0, 70.0, 70.0)
    >>> volume_told("not 90 but 70 l")
    70.0
    >>> volume_told("70 l"), volume_told("for 70 l"), volume_told("is it 70 l?")
    (None, None, None)
    """
    if "?" in text or len(text) > LONGEST:
        return None
    rather = _rather().match(fold(text))
    right = [] if rather else put_right(text)
    start = rather.end() if rather else right[0].start if right else 0
    said = _read(text[start:], us_gallons)
    return said[0] if said is not None and (said[1] or start) else None


def gallons_told(text: str) -> Literal["uk", "us"] | None:
    """Which gallons were meant, where nothing else is told.

    Examples
    --------
    >>> gallons_told("oh its uk gallons"), gallons_told("es sind britische Gallonen")
    ('uk', 'uk')
    >>> gallons_told("american gallons, sorry"), gallons_told("30 uk gallons")
    ('us', None)
    """
    if "?" in text or len(text) > LONGEST:
        return None
    words = " ".join(re.sub(r"[^\w']+", " ", fold(text)).split())
    found = re.search(
        rf"(?<!\w)(?:(?P<uk>{_words('imperial')})|(?:{_words('american')}))(?!\w)", words
    )
    if found is None:
        return None
    rest = f"{words[: found.start()]} {words[found.end() :]}".split()
    light = {word for of in ("is", "behind") for word in _words(of).replace(r"\s+", "|").split("|")}
    if any(word not in light and class_of(word) not in _LIGHT for word in rest):
        return None
    return "uk" if found["uk"] else "us"


_LIGHT: Final = frozenset({"regret", "light", "was", "is", "only"})


def _read(text: str, us_gallons: bool) -> tuple[float, bool] | None:
    """The litres, and whether they are told to be so; None where more is said."""
    if len(text) > LONGEST:
        return None
    whole = without_other(text)
    told = whole != text
    plain = fold(whole).strip(_EDGES)
    digit = re.search(r"\d", plain)
    if digit is None:
        return None
    head, tail = plain[: digit.start()].strip(_EDGES), plain[digit.start() :]
    while head:
        found = _head("is", "about").match(head)
        if found is None:
            return None
        told = told or _head("is").match(head) is not None
        head = head[found.end() :]
    while (volume := volume_litres(tail, us_gallons)) is None:
        behind = _tail().search(tail)
        if behind is None:
            return None
        told, tail = True, tail[: behind.start()]
    return volume, told
