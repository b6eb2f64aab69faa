"""A dose told in millilitres of nothing named: `alk 7.9, dosed 40 ml both days`.

dosed = [ readings ] dose number "ml" [ "both days" | "daily" ]     at the end of what is said
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Final, Literal

from core.message import quantities
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.waters import one_of
from core.message.wordfile import spelt

LONGEST: Final = 90
"""A longer text says more. [characters]"""


@dataclass(frozen=True, slots=True)
class DosedMl:
    """So many millilitres that went in.

    Attributes
    ----------
    rest : str
        What is told before it.
    said : str
        The dose, as typed.
    millilitres : float
        [mL]
    days : "once", "both" or "daily"
    """

    rest: str
    said: str
    millilitres: float
    days: Literal["once", "both", "daily"]


@cache
def _tail() -> re.Pattern[str]:
    ways = {meaning: told for _section, meaning, told in spelt("dosed_ml.txt", {"word"})}
    both, daily = one_of(ways["both"]), one_of(ways["daily"])
    return re.compile(rf"\s*(?:(?P<both>{both})|(?P<daily>{daily}))?\W*")


def dosed_ml(text: str) -> DosedMl | None:
    """The dose that ends a text; None where it names a substance, asks, or says more.

    Examples
    --------
    >>> found = dosed_ml("alk 7.9, dosed 40 ml both days")
    >>> found.rest, found.millilitres, found.days
    ('alk 7.9', 40.0, 'both')
    >>> dosed_ml("dosed 40 ml baking soda") is None, dosed_ml("should i dose 40 ml?") is None
    (True, True)
    """
    plain = fold(text)
    if len(text) > LONGEST or "?" in text or len(plain) != len(text):
        return None
    tokens = cut(plain, lexicon(), text)
    if any(token.kind in {"substance", "ask"} for token in tokens):
        return None
    place = next((i for i, t in enumerate(tokens) if t.kind == "event" and t.value == "dose"), None)
    if place is None or place + 1 >= len(tokens):
        return None
    found = quantities.read(tokens, place + 1)
    if found is None or found.unit != "mL" or found.value is None or found.value <= 0:
        return None
    behind = _tail().fullmatch(plain[found.end :])
    if behind is None:
        return None
    days: Literal["once", "both", "daily"] = "once"
    if behind["both"] or behind["daily"]:
        days = "both" if behind["both"] else "daily"
    rest = text[: tokens[place].start].strip(" ,;.-")
    return DosedMl(rest, text[tokens[place].start :].strip(), found.value, days)
