"""That a plan shall end at another value than it was made for: `only to 5`, `5 is enough`.

goal = { light } ( only | to | most | stop ) number [ degree ]
     | number [ degree ] enough
"""

from __future__ import annotations

from typing import Final, NamedTuple

from core.message.word_classes import said

FILE: Final = "goal_anew.txt"
LONGEST: Final = 50
"""A longer text says more. [characters]"""

_PLAIN: Final = frozenset({"to", "enough", "most", "stop"})


class Goal(NamedTuple):
    """The value, and whether the words can mean nothing but a wish."""

    value: float
    plain: bool


def goal_anew(text: str) -> Goal | None:
    """The value at which a plan shall end instead; None where more or something else is said.

    Examples
    --------
    >>> goal_anew("wait no only to 5"), goal_anew("5 is enough"), goal_anew("nur bis 4,5 bitte")
    (Goal(value=5.0, plain=True), Goal(value=5.0, plain=True), Goal(value=4.5, plain=True))
    >>> goal_anew("actually only 5 please")
    Goal(value=5.0, plain=False)
    >>> goal_anew("no, 5"), goal_anew("5 is not enough"), goal_anew("only to 5?"), goal_anew("5")
    (None, None, None, None)
    """
    if len(text) > LONGEST or "?" in text:
        return None
    told = said(FILE, text)
    if told is None or len(told.numbers) != 1:
        return None
    plain = not _PLAIN.isdisjoint(told.classes)
    return Goal(told.numbers[0].value, plain) if plain or "only" in told.classes else None
