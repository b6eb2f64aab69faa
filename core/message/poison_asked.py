"""``does ammonia get worse as ph goes up``, ``what ph is ammonia dangerous at``."""

from __future__ import annotations

import re
from functools import cache
from typing import Final, Literal

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.wordfile import patterns

By = Literal["ph", "temperature"]

_SECTIONS: Final = ("harm", "open", "warm", "low")
_MOST: Final = 18
"""Tokens of such a question, at most."""


@cache
def _words() -> dict[str, re.Pattern[str]]:
    return patterns("poison_asked.txt", _SECTIONS, {"open"})


def asked(text: str) -> By | None:
    """By what ammonia grows poisonous, where a message asks that without a number; else None.

    Examples
    --------
    >>> asked("is the ammonia gonna get worse as ph goes up"), asked("ammonia 0.5 ph 8")
    ('ph', None)
    >>> asked("wird Ammoniak bei höherer Temperatur giftiger?")
    'temperature'
    """
    plain, words = fold(text), _words()
    if not words["harm"].search(plain) or not ("?" in plain or words["open"].search(plain)):
        return None
    tokens = cut(plain, lexicon(), text, most=_MOST + 1)
    if len(tokens) > _MOST or any(token.kind in {"number", "count"} for token in tokens):
        return None
    named = {str(token.value).partition("@")[0] for token in tokens if token.kind == "analyte"}
    if named == {"ammonia", "ph"}:
        return "ph"
    by_warmth = named == {"ammonia"} and words["warm"].search(plain) is not None
    return "temperature" if by_warmth or named == {"ammonia", "temperature"} else None


def by_low_ph(text: str) -> bool:
    """Whether a low pH is held against a poison that was told before: ``is it ok since ph is low``.

    Examples
    --------
    >>> by_low_ph("is it ok since pH is low"), by_low_ph("ist das ok bei niedrigem pH?")
    (True, True)
    >>> by_low_ph("is ph low"), by_low_ph("is kh 4 ok at low ph"), by_low_ph("my ph is low")
    (False, False, False)
    """
    plain = fold(text)
    if not _words()["low"].search(plain):
        return False
    tokens = cut(plain, lexicon(), text, most=_MOST + 1)
    if len(tokens) > _MOST or any(token.kind in {"number", "count"} for token in tokens):
        return False
    named = {str(token.value).partition("@")[0] for token in tokens if token.kind == "analyte"}
    return named <= {"ph", "ammonia"}
