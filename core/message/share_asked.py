"""How much of one water is asked for a value: `how much tap in 100 l for kh 3`, the rest is RO."""

from __future__ import annotations

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.waters import names_pure

_MOST = 12
"""Tokens that are looked at: the water stands right behind the word of asking."""


def of_water(text: str) -> bool:
    """Whether a text asks how much of a water that has minerals, and names no other.

    Examples
    --------
    >>> of_water("how much tap in 100 l for kh 3"), of_water("wie viel leitungswasser für kh 3")
    (True, True)
    >>> of_water("how much soda for kh 3"), of_water("my tap is kh 9, how much soda for kh 3")
    (False, False)
    """
    if names_pure(text):
        return False
    asked = False
    for token in cut(fold(text), lexicon(), text, most=_MOST):
        if asked and token.kind != "fill":
            return token.kind == "mark" and token.value == "other"
        asked = asked or (token.kind == "ask" and token.value in {"how_much", "change"})
    return False
