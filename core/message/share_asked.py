"""What share of a water is asked for: `how much tap in 100 l for kh 3`, `can i change it all`."""

from __future__ import annotations

from core.message.asking_words import asks
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.plan_said import classes_in
from core.message.tokens import cut
from core.message.waters import is_whole, names_pure

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


def whole_change(text: str) -> bool:
    """Whether a text asks to change all of the water at once, and tells no number.

    Examples
    --------
    >>> whole_change("can I just change all the water"), whole_change("I changed all the water")
    (True, False)
    >>> whole_change("kann ich das ganze Wasser wechseln"), whole_change("all parts at once?")
    (True, False)
    >>> whole_change("can I change all the water in the bucket")
    False
    """
    said = classes_in(text)
    if not (said & {"may", "ask"} or asks(text)) or said & _OF_DOSES or "water" not in said:
        return False
    tokens = cut(fold(text), lexicon(), text, most=2 * _MOST)
    if any(token.kind in {"number", "substance", "analyte"} for token in tokens):
        return False
    changes = "rise" in said or any(
        token.value in {"water_change", "change", "changing"} for token in tokens
    )
    whole = any(is_whole(token.text) and token.text not in _LARGE for token in tokens)
    elsewhere = any(token.value == "other" for token in tokens)
    return changes and whole and not elsewhere


_OF_DOSES = frozenset({"put", "give", "part", "test", "inside", "two", "spoon"})
_LARGE = frozenset({"full", "complete"})
"""Of a change, not of the water: a large one, which is judged by the readings."""
