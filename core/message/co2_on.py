"""``turned co2 back on``, ``turned it down a bit``: what is told of the gas; nothing is asked."""

from __future__ import annotations

from functools import cache
from typing import Final

from core.message.asking_words import asks
from core.message.fold import fold
from core.message.word_classes import said
from core.message.wordfile import spelt

_EDGES: Final = ".,;:!?¿¡()\"'"
_GAS: Final = frozenset({"co2", "co₂", "kohlensaure", "kohlensäure"})
_LESS: Final = frozenset({"off", "down", "less", "aus", "runter", "weniger", "moins", "menos"})
"""Words beside which less of it is asked."""


@cache
def _more() -> frozenset[str]:
    """Single words for more of it, or for having it on."""
    ways = [way for section, _name, told in spelt("co2_on.txt") if section == "up" for way in told]
    return frozenset({*ways, "on", "an"})


def turned_on(text: str) -> bool:
    """Whether a text says nothing but that CO2 was turned on or up.

    Examples
    --------
    >>> turned_on("turned co2 back on"), turned_on("CO2 wieder angemacht")
    (True, True)
    >>> turned_on("turned co2 off"), turned_on("should i turn co2 on?"), turned_on("co2 30")
    (False, False, False)
    """
    if "?" in text:
        return False
    told = said("co2_on.txt", text, small=True)
    if told is None or told.has("ask") or told.numbers:
        return False
    return told.has("co2", "on") and not told.has("never")


def asks_on(text: str) -> bool:
    """Whether a text asks nothing but whether CO2, or what is unnamed, may be on again.

    Examples
    --------
    >>> asks_on("can i turn it on again"), asks_on("kann ich co2 wieder anmachen?")
    (True, True)
    >>> asks_on("can i turn it off"), asks_on("turned it on"), asks_on("can i turn the light on")
    (False, False, False)
    """
    told = said("co2_on.txt", text, small=True)
    if told is None or not told.has("ask") or told.has("never") or told.numbers:
        return False
    return told.has("turn") or told.has("on")


def asks_more(text: str) -> bool:
    """Whether a text asks for more CO2, or to have it on, whatever it says it is for.

    Examples
    --------
    >>> asks_more("should I turn the co2 up a little for the plants"), asks_more("more co2?")
    (True, True)
    >>> asks_more("should i turn co2 off"), asks_more("i turned co2 up"), asks_more("more salt?")
    (False, False, False)
    """
    if not asks(text):
        return False
    words = {word.strip(_EDGES) for word in fold(text).split()}
    return bool(words & _GAS and words & _more()) and not words & _LESS


def turned_down(text: str) -> bool:
    """Whether a text says nothing but that CO2, or something unnamed, was turned down.

    Examples
    --------
    >>> turned_down("turned it down a bit"), turned_down("CO2 runtergedreht")
    (True, True)
    >>> turned_down("turned the heater down"), turned_down("turned co2 off")
    (False, False)
    >>> turned_down("should i turn it down?"), turned_down("less")
    (False, False)
    """
    if "?" in text or len(text.split()) == 1:
        return False
    told = said("co2_down.txt", text, small=True)
    return told is not None and told.has("down") and not told.has("never") and not told.numbers
