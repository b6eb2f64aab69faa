"""Text made plain for look-up, one character for one, so that spans stay those of the source.

Case, accents, full-width forms, subscripts, dashes, odd spaces and digits of other scripts are
folded; what cannot be seen becomes `INVISIBLE`.
"""

from __future__ import annotations

import unicodedata
from functools import lru_cache

INVISIBLE = "\u200b"
"""Stands for every character that takes no room or turns the reading direction."""

MARK = "\u02d0"
"""Stands for an accent that is a character of its own; counts as a letter, left out of look-up."""

TURNING = frozenset("\u202a\u202b\u202d\u202e\u2066\u2067\u2068")
"""Characters after which digits may be seen in another order than they are stored."""

_TAKEN = {
    "µ": "µ",
    "μ": "µ",
    "º": "°",
    "˚": "°",
    "ø": "o",
    "ł": "l",
    "đ": "d",
    "ß": "ß",
    "æ": "æ",
    "œ": "œ",
    "\u2044": "/",
    "\u2215": "/",
    "\u00f7": "÷",
    "\u2212": "-",
    "\u2010": "-",
    "\u2011": "-",
    "\u2012": "-",
    "\u2013": "-",
    "\u2014": "-",
    "\u2015": "-",
    "\u2043": "-",
    "⁺": "+",
    "⁻": "-",
    "₊": "+",
    "₋": "-",
    "\u2018": "'",
    "\u2019": "'",
    "\u02bc": "'",
    "\u00b4": "'",
    "\u2022": "•",
    "\u00b7": "·",
    "≈": "~",
    "≃": "~",
    "∼": "~",
    "≤": "≤",
    "≥": "≥",
    "→": "→",
    "⟶": "→",
    "➔": "→",
    "\u2026": "…",
    "\u2028": "\n",
    "\u2029": "\n",
    "\u0085": "\n",
    "\x0b": "\n",
    "\x0c": "\n",
    "\r": "\n",
    "¼": "¼",
    "½": "½",
    "¾": "¾",
    "⅓": "⅓",
    "⅔": "⅔",
    "⅛": "⅛",
    "²": "²",
    "³": "³",
    "¹": "¹",
    **dict.fromkeys("⁰⁴⁵⁶⁷⁸⁹", "²"),  # an exponent must not become a digit
    "™": " ",
    "®": " ",
    "℃": "℃",
    "℉": "℉",
    "㎎": "㎎",
}


def _fold(char: str) -> str:
    """One character's plain form, always one character long."""
    taken = _TAKEN.get(char)
    if taken is not None:
        return taken
    category = unicodedata.category(char)
    if category == "Mn" and not "\ufe00" <= char <= "\ufe0f":
        return MARK
    if category in {"Cf", "Mn", "Me"} or (category == "Cc" and char not in "\n\t"):
        return INVISIBLE
    if category in {"Zs", "Zl", "Zp"}:
        return " "
    if category in {"Nd", "No"}:
        digit = unicodedata.digit(char, None)
        return char if digit is None else str(digit)
    lower = char.lower()
    if len(lower) != 1:
        lower = char
    base = unicodedata.normalize("NFKD", lower)
    kept = [part for part in base if unicodedata.category(part) != "Mn"]
    if len(kept) == 1:
        plain = kept[0].lower() if len(kept[0].lower()) == 1 else kept[0]
        return _TAKEN.get(kept[0], _TAKEN.get(plain, plain))
    return lower


class _Table(dict[int, str]):
    """A table for `str.translate` that learns characters; bounded, since text is hostile."""

    _MOST = 8192

    def __missing__(self, code: int) -> str:
        if 0xD800 <= code <= 0xDFFF:
            return INVISIBLE
        folded = _fold(chr(code))
        if len(self) < self._MOST:
            self[code] = folded
        return folded


_TABLE = _Table()


@lru_cache(maxsize=512)  # every look at a message folds it, and its words
def fold(text: str) -> str:
    """`text` in lower case without accents and look-alikes; as long as `text`.

    Examples
    --------
    >>> fold("NO₃⁻ 20 Härte 7，4")
    'no3- 20 harte 7,4'
    """
    if text.isascii() and text.isprintable():
        return text.lower()
    return text.translate(_TABLE)
