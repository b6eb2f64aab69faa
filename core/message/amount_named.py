"""Another amount named of a water change: ``i'll just do 20``, ``done, 25%``, ``half of that``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from core.message.amounts import LITRES, SHARES
from core.message.deed_opened import opened
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.obliged import is_obliged
from core.message.token import is_number
from core.message.tokens import cut
from core.message.word_classes import said

FILE: Final = "amount_named.txt"
_LONGEST: Final = 60
"""Tokens that are looked at."""

Mood = Literal["told", "will", "asked"]


@dataclass(frozen=True, slots=True)
class Named:
    """How much of the water a text names.

    Attributes
    ----------
    mood : str
        ``told`` where so much went in, ``will`` where it shall, ``asked`` behind a question mark.
    value : float or None
        In `unit`; None where none is named.
    unit : str or None
        ``percent`` or ``litre``; None of a bare number.
    half : bool
        Whether half of what was spoken of is named.
    """

    mood: Mood
    value: float | None = None
    unit: Literal["percent", "litre"] | None = None
    half: bool = False


def amount_named(text: str, us_gallons: bool = True) -> Named | None:
    """What a text names, if all it does is to name an amount of water, or that it was done.

    Gallons come out as litres; `us_gallons` tells which ones this chat means by a bare gallon.

    Examples
    --------
    >>> amount_named("thats a lot, i'll just do 20")
    Named(mood='will', value=20.0, unit=None, half=False)
    >>> amount_named("hm only had time for 15 l")
    Named(mood='told', value=15.0, unit='litre', half=False)
    >>> amount_named("half of that maybe").half, amount_named("ok done").value
    (True, None)
    >>> amount_named("and 30?").mood, amount_named("my bucket holds 12") is None
    ('asked', True)
    """
    told = said(FILE, text, small=True)
    if told is None or len(told.numbers) > 1:
        return None
    half = told.has("half")
    asked = "?" in text or told.has("asks") or _asks(text)
    mood: Mood = "asked" if asked else "told" if told.has("done") else "will"
    if told.has("will") and told.has("done") and not asked:
        mood = "will"  # i'll do 20 when i'm done
    if mood == "told" and is_obliged(text):
        mood = "will"  # need to change 20 l
    if not told.numbers:
        return Named(mood, half=half) if half or mood == "told" else None
    if half:
        return None  # half of 20
    (number,) = told.numbers
    if number.unit == "gallon":
        litres = LITRES["gal" if us_gallons else "uk gal"]
        return Named(mood, number.value * litres, "litre") if number.value > 0 else None
    if number.unit == "percent":
        return Named(mood, number.value, "percent") if 0 < number.value <= _WHOLE else None
    if number.unit == "litre":
        return Named(mood, number.value, "litre") if number.value > 0 else None
    bare = number.value >= 1 and number.value == int(number.value)
    return Named(mood, number.value) if bare else None


_WHOLE: Final = 100.0
_ASKING: Final = frozenset({"if", "may", "does", "whether"})


def _asks(text: str) -> bool:
    """Whether a text asks without a mark: `did i change 30%`, `if i change another 40%`."""
    if opened(text) is not None:
        return True
    tokens = cut(fold(text), lexicon(), text, most=_LONGEST)
    return any(token.kind == "ask" or token.value in _ASKING for token in tokens)


def numbers_in(text: str) -> tuple[float | None, ...]:
    """Every number of a text, and None for each share in words: what may be an amount.

    Examples
    --------
    >>> numbers_in("my bucket holds 12"), numbers_in("hälfte"), numbers_in("is that safe")
    ((12.0,), (None,), ())
    """
    found: list[float | None] = []
    for token in cut(fold(text), lexicon(), text, most=_LONGEST):
        if is_number(token):
            found.append(getattr(token.value, "value", None))
        elif token.value in SHARES or token.kind == "count":
            found.append(float(str(token.value)) if token.kind == "count" else None)
    return tuple(found)
