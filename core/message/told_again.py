"""The deed that was just told, once more: `again 10%`, `encore 20%`, `put 10 more g in`."""

from __future__ import annotations

from typing import Final, NamedTuple

from core.message.word_classes import said

_FILE: Final = "told_again.txt"


class Again(NamedTuple):
    """So much more of it: a share of the water in percent, or grams."""

    percent: float | None = None
    grams: float | None = None


def read(text: str) -> Again | None:
    """How much more went in or was changed; None where a text tells anything else, or asks.

    Examples
    --------
    >>> read("again 10%"), read("put 10 more g in")
    (Again(percent=10.0, grams=None), Again(percent=None, grams=10.0))
    >>> read("again 10% tomorrow"), read("again 10%?"), read("10 g more"), read("10%")
    (None, None, None, None)
    """
    told = None if "?" in text else said(_FILE, text)
    if told is None or len(told.numbers) != 1:
        return None
    (number,) = told.numbers
    if number.unit == "share" and told.has("more"):
        return Again(percent=number.value)
    more = number.unit == "moreg" or (number.unit == "g" and told.has("more"))
    return Again(grams=number.value) if more and told.has("put") else None
