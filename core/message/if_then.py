"""``if it hits nitrate 50 ill change``: what a keeper will do once a value comes so far."""

from __future__ import annotations

import re
from functools import cache

from core.message.fold import fold
from core.message.i_will import spelt_out
from core.message.waters import one_of
from core.message.wordfile import spelt

_LEAD = r"(?:(?:ok|okay|k|so|and|well|und|et|y|e|en|i|och|thanks|danke)\W+)?"


@cache
def _condition() -> re.Pattern[str]:
    told = {meaning: ways for _section, meaning, ways in spelt("if_then.txt", {"word"})}
    once, will = one_of(told["once"]), one_of(told["will"])
    return re.compile(rf"\W*(?:{once})\s+(?:[^\s\d]+\s+){{1,4}}[\d.,]+(?:\s+\S+)?,?\s+(?:{will})\b")


@cache
def _plan() -> re.Pattern[str]:
    told = {meaning: ways for _section, meaning, ways in spelt("if_then.txt", {"word"})}
    when, will = one_of([*told["if"], *told["once"]]), one_of(told["will"])
    return re.compile(
        rf"\W*{_LEAD}(?:{when})\b.*\b(?:{will})\b|\W*{_LEAD}(?:{will})\b.*\b(?:{when})\b", re.DOTALL
    )


def is_plan(text: str) -> bool:
    """Whether a text tells what its writer will do if something comes to be; it asks nothing.

    Examples
    --------
    >>> is_plan("if it hits nitrate 50 ill change"), is_plan("i'll change when nitrate is 50")
    (True, True)
    >>> is_plan("wenn nitrat 50 ist wechsle ich wasser"), is_plan("si nitrato llega a 50 cambio")
    (True, True)
    >>> is_plan("nitrate 50"), is_plan("if nitrate hits 50 should i change?")
    (False, False)
    """
    return "?" not in text and _plan().match(spelt_out(fold(text))) is not None


def is_condition(text: str) -> bool:
    """Whether a text opens with nothing but a value on which its writer will do something.

    Examples
    --------
    >>> is_condition("als nitraat 50 is ververs ik water"), is_condition("once kh is 3 i'll dose")
    (True, True)
    >>> is_condition("when i got home nitrate was 50, i'll change"), is_condition("nitrate 50")
    (False, False)
    """
    return "?" not in text and _condition().match(spelt_out(fold(text))) is not None
