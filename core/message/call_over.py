"""What is told after a call for help that ends it, or its first step: `off now`, `fixed it`."""

from __future__ import annotations

from typing import Final, Literal

from core.message.word_classes import said

Over = Literal["off", "mended", "helped", "outside", "well"]

_FIRST: Final[tuple[Over, ...]] = ("helped", "off", "outside", "mended", "well")
"""Where several are told, the one that counts: called them, she is fine."""


def over(text: str) -> Over | None:
    """What of a call a text tells to be done or over; None where it says anything else.

    Examples
    --------
    >>> over("ok turned it off"), over("eyes ok now"), over("called poison control, he is fine")
    ('off', 'well', 'helped')
    >>> over("is it off?"), over("the lights go off at 10") is None
    (None, True)
    """
    told = None if "?" in text else said("call_over.txt", text, small=True)
    if told is None or told.numbers:
        return None
    return next((each for each in _FIRST if each in told.classes), None)
