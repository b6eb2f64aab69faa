"""A number that is all that is said: `4`, `its 4 now`, `4 then`."""

from __future__ import annotations

from typing import Final

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.numbers import Number
from core.message.tokens import cut

LONGEST: Final = 30
"""A longer text says more than a number. [characters]"""
_LIGHT: Final = frozenset({"fill", "p"})
_MEANINGS: Final = frozenset({"link", "its", "was", "now", "about"})


def lone_number(text: str) -> float | None:
    """The one number of a text without any word that says what it is of; None where it says more.

    Examples
    --------
    >>> lone_number("4"), lone_number("it's 4,5 now"), lone_number("kh 4"), lone_number("4 l")
    (4.0, 4.5, None, None)
    >>> lone_number("4?"), lone_number("4 or 5"), lone_number("-4")
    (None, None, None)
    """
    if len(text) > LONGEST or "?" in text or "-" in text:
        return None
    tokens = cut(fold(text), lexicon(), text)
    numbers = [token for token in tokens if token.kind == "number"]
    others = [token for token in tokens if token.kind != "number"]
    if len(numbers) != 1 or any(t.kind not in _LIGHT and t.value not in _MEANINGS for t in others):
        return None
    number = numbers[0].value
    assert isinstance(number, Number)  # noqa: S101 - narrows for the type checker
    return None if number.problem is not None else number.value
