"""The own tap told in free words: `my tap is liquid rock kh 14`, `10% then, tap kh 10 ph 8`.

told = [ amount [ change ] ] water { word } readings [ want pure-water ]
     | readings water [ want pure-water ]
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import Token, cut
from core.message.waters import PURE, mentioned
from core.message.word_classes import said

FILE: Final = "tap_told.txt"

LONGEST: Final = 120
"""A longer text says more. [characters]"""

SKIPPED: Final = 5
"""Words at most between a water and its readings: is pretty much liquid rock."""


@dataclass(frozen=True, slots=True)
class TapTold:
    """What is told of a water.

    Attributes
    ----------
    name : str
        The water, as typed.
    readings : str
        As typed.
    change : str or None
        So much water, as typed, that is to be changed with it.
    is_named : bool
        Whether the change is called one; else it is one only after talk of a change.
    pure : str or None
        Pure water that is wanted beside it.
    """

    name: str
    readings: str
    change: str | None = None
    is_named: bool = False
    pure: str | None = None


def tap_told(text: str) -> TapTold | None:
    """What a text tells of a water with minerals; None where it tells more, or nothing.

    Examples
    --------
    >>> tap_told("my tap is liquid rock kh 14 gh 20").readings
    'kh 14 gh 20'
    >>> tap_told("10 gal change w tap kh 2 gh 3 ph 7").change, tap_told("tap water is bad") is None
    ('10 gal', True)
    >>> tap_told("kh 5 gh 9 ph 7.4 tap. want to use RO").pure
    'RO'
    >>> tap_told("my tap has no kh 4") is None, tap_told("tap kh 4, tank kh 8") is None
    (True, True)
    """
    if len(text) > LONGEST or "?" in text or "\n" in text or len(fold(text)) != len(text):
        return None
    waters = mentioned(text)
    hard = [each for each in waters if each[2] not in PURE]
    pure = [each for each in waters if each[2] in PURE]
    if len(hard) != 1 or len(pure) > 1:
        return None
    start, end, _kind = hard[0]
    tokens = cut(fold(text), lexicon(), text)
    before = [token for token in tokens if token.end <= start]
    behind = [token for token in tokens if token.start >= end]
    run = _run(behind)
    if run is not None:
        first, last = run
        head, tail = text[:start], text[behind[last].end :]
        readings = text[behind[first].start : behind[last].end]
    else:
        run = _run(before)
        if run is None or run[0] or run[1] != len(before) - 1:
            return None
        head, tail = "", text[end:]
        readings = text[before[0].start : before[-1].end]
    wanted = _tail(tail, pure)
    amount = _head(head)
    if wanted is None or amount is None:
        return None
    return TapTold(text[start:end], readings, *amount, wanted or None)


def _run(tokens: list[Token]) -> tuple[int, int] | None:
    """The first and the last token of readings that stand together, behind words without weight."""
    first = next((i for i, token in enumerate(tokens) if token.kind in _OF_READING), None)
    if first is None or first > SKIPPED or not all(map(_is_skipped, tokens[:first])):
        return None
    last = first
    for place in range(first, len(tokens)):
        token = tokens[place]
        if token.kind in _OF_READING or token.kind == "unit":
            last = place
        elif token.text not in _JOINTS and token.value not in {"link", "and"}:
            break
    kinds = {token.kind for token in tokens[first : last + 1]}
    return (first, last) if {"analyte", "number"} <= kinds else None


_OF_READING: Final = frozenset({"analyte", "number", "fraction"})
_JOINTS: Final = frozenset({",", "/", "&", "+", "=", ":"})


def _is_skipped(token: Token) -> bool:
    light = token.kind in {"word", "fill"} or token.text in {":", ",", "=", "-"}
    return light or token.value in {"link", "some", "every", "approx"}


_AMOUNT: Final = re.compile(
    r"(?<![\w.,])(\d{1,4}(?:[.,]\d{1,2})?\s?(?:%|percent|prozent|l|lit\w{1,4}|gal|gallons?))(?!\w)"
)
_MINE: Final = frozenset({"change", "want"})


def _head(head: str) -> tuple[str | None, bool] | None:
    """The amount before a water, and whether it is called a change; None where more is said."""
    found = _AMOUNT.search(fold(head))
    rest = head if found is None else head[: found.start()] + " " + head[found.end() :]
    if not rest.strip(" ,.:;-!"):
        return (None, False) if found is None else (found[1], False)
    told = said(FILE, rest, small=True)
    if told is None or told.numbers or set(told.classes) - {"change"}:
        return None
    if found is None:
        return None if told.has("change") else (None, False)
    return found[1], told.has("change")


def _tail(tail: str, pure: list[tuple[int, int, str]]) -> str | None:
    """The pure water that is wanted, "" where none is; None where more is said."""
    name = ""
    for start, end, _kind in reversed(mentioned(tail)):
        name = tail[start:end]
        tail = tail[:start] + tail[end:]
    if bool(name) != bool(pure):
        return None  # ro stands elsewhere
    if not tail.strip(" ,.:;-!"):
        return name
    told = said(FILE, tail, small=True)
    if told is None or told.numbers or set(told.classes) - {"want"}:
        return None
    return name if told.has("want") == bool(name) else None
