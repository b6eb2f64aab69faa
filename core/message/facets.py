"""What is told of a source apart: fresh or stood, in winter or in summer.

A word of a facet goes before what it is about (`fresh ph 6.8, stood ph 7.9`) or behind it
(`ph 7 from the tap, 7.8 after a day standing`): the first one tells which.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Final, Literal

from core.message.fold import fold
from core.message.waters import one_of, words

Season = Literal["winter", "summer"]

GASSES: Final = frozenset({"ph", "temperature", "co2", "oxygen", "chlorine", "total_chlorine"})
"""What changes as water stands; hardness, KH and salts do not."""


_CLAUSE: Final = re.compile(r"[,;.](?=\s|$)|\n")


@dataclass(frozen=True, slots=True)
class Piece:
    """Words of readings, and of which facet they are; `stood` is None where it was not said."""

    text: str
    stood: bool | None = None
    season: Season | None = None


def split(text: str) -> tuple[Piece, ...]:
    """The pieces of what is told of a source, in order; one without facet where none is named.

    Examples
    --------
    >>> [(piece.text, piece.stood) for piece in split("fresh ph 6.8 stood ph 7.9")]
    [('ph 6.8', False), ('ph 7.9', True)]
    >>> [(piece.text, piece.stood) for piece in split("ph 7 from the tap, 7.8 after a day")]
    [('ph 7', False), ('7.8', True)]
    >>> split("winter kh 4 gh 6")
    (Piece(text='kh 4 gh 6', stood=None, season='winter'),)
    """
    marks = [(m.start(), m.end(), _meaning(m)) for m in _marks().finditer(fold(text))]
    seasons = [mark for mark in marks if mark[2] in {"winter", "summer"}]
    season = _season(seasons)
    states = [mark for mark in marks if mark not in seasons]
    if len({of for _, _, of in seasons}) > 1:
        return _apart(text, marks)
    plain = text
    for start, end, _ in seasons:
        plain = plain[:start] + " " * (end - start) + plain[end:]
    if not states:
        return tuple(_piece(plain, None, season))
    if _told_before(plain, states):
        return tuple(_behind(plain, states, season))
    pieces = _piece(plain[: states[0][0]], None, season)
    ends = [first for first, _, _ in states[1:]] + [len(plain)]
    for (_, last, of), end in zip(states, ends, strict=True):
        pieces += _piece(plain[last:end], of == "stood", season)
    return tuple(pieces)


def _told_before(plain: str, states: list[tuple[int, int, str]]) -> bool:
    """Whether the readings stand before their words: nothing is told close behind the last."""
    close = _CLAUSE.split(plain[states[-1][1] :], maxsplit=1)[0]
    return not any(map(str.isdigit, close))


def _behind(plain: str, states: list[tuple[int, int, str]], season: Season | None) -> list[Piece]:
    """Pieces whose words stand behind the last clause before them."""
    pieces: list[Piece] = []
    start = 0
    for first, last, of in states:
        told = plain[start:first]
        clauses = [cut.end() for cut in _CLAUSE.finditer(told)]
        cut = max((c for c in clauses if any(map(str.isdigit, told[c:]))), default=0)
        pieces += _piece(told[:cut], None, season)
        pieces += _piece(told[cut:], of == "stood", season)
        start = last
    return pieces + _piece(plain[start:], None, season)


def strip(text: str) -> str:
    """A name without the words of its facets: "tap in summer" is the tap.

    Examples
    --------
    >>> strip("tap in summer"), strip("stood")
    ('tap', '')
    """
    return " ".join(_marks().sub(" ", fold(text)).split())


def _apart(text: str, marks: list[tuple[int, int, str]]) -> tuple[Piece, ...]:
    """Both seasons in one message, each before its readings."""
    pieces = []
    places = [mark for mark in marks if mark[2] in {"winter", "summer"}]
    ends = [start for start, _, _ in places[1:]] + [len(text)]
    for (_, last, of), end in zip(places, ends, strict=True):
        season: Season = "winter" if of == "winter" else "summer"
        pieces += [
            Piece(piece.text, piece.stood, season) for piece in split(text[last:end]) if piece.text
        ]
    head = text[: places[0][0]]
    return (*split(head), *pieces) if any(map(str.isdigit, head)) else tuple(pieces)


def _season(marks: list[tuple[int, int, str]]) -> Season | None:
    if not marks:
        return None
    return "winter" if marks[0][2] == "winter" else "summer"


def _piece(text: str, stood: bool | None, season: Season | None) -> list[Piece]:
    told = text.strip(" ,;:.&-\n\t")
    return [Piece(told, stood, season)] if told else []


def _meaning(found: re.Match[str]) -> str:
    return words().facet[" ".join(found[0].split())]


@cache
def _marks() -> re.Pattern[str]:
    return re.compile(rf"(?<!\w)(?:{one_of(words().facet)})(?!\w)")
