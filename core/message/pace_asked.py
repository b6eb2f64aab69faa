"""``is 2 dkh a day ok``, ``how fast may pH fall``: how much a value may change in a time.

pace_asked = ( how fast | span ) judge value [ number ]   in any order, and a question
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Final

from core.message import quantities
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import Token, cut
from core.message.wordfile import patterns

PACED: Final = ("kh", "gh", "ph", "temperature", "salinity", "calcium", "magnesium")
"""What has a most by which it may change in a day."""

_SECTIONS: Final = ("open", "how", "span", "judge", "used")
_MOST: Final = 16
"""Tokens of such a question, at most."""


@dataclass(frozen=True, slots=True)
class Pace:
    """How fast a value may change, as it is asked.

    Attributes
    ----------
    analyte : str
        Whose change it is.
    change : float or None
        The change that is to be judged, in the unit said. [`unit`]
    unit : str or None
        As it was written; None for the analyte's own.
    """

    analyte: str
    change: float | None = None
    unit: str | None = None


@cache
def _words() -> dict[str, re.Pattern[str]]:
    return patterns("pace_asked.txt", _SECTIONS, {"open"})


def asked(text: str) -> Pace | None:
    """How fast a value may change, where a message asks that and nothing else; None otherwise.

    Examples
    --------
    >>> asked("is 2 dkh a day ok")
    Pace(analyte='kh', change=2.0, unit='°dH')
    >>> asked("wie schnell darf pH steigen").analyte, asked("kh drops 1 a day"), asked("kh 4 today")
    ('ph', None, None)
    """
    plain, words = fold(text), _words()
    fast = words["how"].search(plain) is not None
    spans = [found.span() for found in words["span"].finditer(plain)]
    if not (fast or spans) or not words["judge"].search(plain) or words["used"].search(plain):
        return None
    tokens = cut(plain, lexicon(), text, most=_MOST + 1)
    if len(tokens) > _MOST or any(token.kind == "substance" for token in tokens):
        return None  # so much of it a day
    return _of(tokens, spans) if fast or _asks(tokens, plain) else None


def _asks(tokens: list[Token], plain: str) -> bool:
    asking = any(token.kind == "ask" for token in tokens) or tokens[0].value in {"may", "does"}
    return asking or "?" in plain or _words()["open"].search(plain) is not None


def _of(tokens: list[Token], spans: list[tuple[int, int]]) -> Pace | None:
    """The one value that may change so fast, and the one number of it."""
    judged = _words()["judge"]  # Dutch "mag" is may, and magnesium elsewhere
    named = {
        str(token.value).partition("@")[0]
        for token in tokens
        if token.kind == "analyte" and not judged.fullmatch(token.text)
    }
    found: list[quantities.Quantity] = []
    index = 0
    while index < len(tokens):
        quantity = quantities.read(tokens, index)
        within = any(start <= tokens[index].start < end for start, end in spans)
        if quantity is not None and quantity.value is not None and not within:
            found.append(quantity)
        index = index + 1 if quantity is None else max(quantity.last, index + 1)
    if not named and [quantity.unit for quantity in found] == ["°"]:
        named = {"temperature"}  # degrees alone are those of a thermometer
    named |= {quantity.of for quantity in found if quantity.of is not None}
    if len(named) != 1 or len(found) > 1 or not named <= set(PACED):
        return None
    (analyte,) = named
    if not found:
        return Pace(analyte)
    unit = found[0].unit
    return Pace(analyte, found[0].value, None if unit == "°" else unit)
