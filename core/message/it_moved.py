"""``raise it``, ``how do i lower that``, ``want it 8.5``: a value to be moved, by no name.

Which value is meant only the talk before can tell.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final, Literal

from core.message.word_classes import said

FILE: Final = "it_moved.txt"
_BARE: Final = re.compile(r"(\d{1,4}(?:[.,]\d{1,3})?)[.!]?")
_UP: Final = frozenset({"up", "higher"})
_DOWN: Final = frozenset({"down", "lower"})
_OF_IT: Final = _UP | _DOWN | {"it", "bring", "want", "to", "ask", "number"}


@dataclass(frozen=True, slots=True)
class Moved:
    """How a value is to be moved.

    Attributes
    ----------
    way : str or None
        ``up`` or ``down``; None where only the number tells.
    to : float or None
        The value that is wished, in the unit that it was told in.
    """

    way: Literal["up", "down"] | None
    to: float | None


def it_moved(text: str) -> Moved | None:
    """How a text wishes to move a value that it does not name; None where it says more or less.

    Examples
    --------
    >>> it_moved("how do i lower it"), it_moved("want it 8.5")
    (Moved(way='down', to=None), Moved(way=None, to=8.5))
    >>> it_moved("auf 3 bringen"), it_moved("bring it up to 6 please")
    (Moved(way=None, to=3.0), Moved(way='up', to=6.0))
    >>> it_moved("raise kh"), it_moved("it is 6"), it_moved("up"), it_moved("6")
    (None, None, None, None)
    """
    told = said(FILE, text)
    if told is None or len(told.numbers) > 1 or set(told.classes) - _OF_IT:
        return None
    if any(number.unit == "other" for number in told.numbers):
        return None
    classes = set(told.classes)
    up, down = classes & _UP, classes & _DOWN
    to = told.numbers[0].value if told.numbers else None
    wished = bool(classes & {"want", "bring", "ask"})
    if up and down:
        return None
    if classes & {"up", "down"} or (wished and (up or down)):  # it went up: wished by nobody
        return Moved("up" if up else "down", to)
    return Moved(None, to) if classes & {"want", "bring"} and to is not None else None


def bare_number(text: str) -> float | None:
    """The number that is all of a text.

    Examples
    --------
    >>> bare_number(" 8,5 "), bare_number("8 l"), bare_number("-8")
    (8.5, None, None)
    """
    found = _BARE.fullmatch(text.strip())
    return None if found is None else float(found[1].replace(",", "."))
