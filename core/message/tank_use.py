"""What a tank uses of itself: `what does it use a day`, `how often to dose for nitrate 10`."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.token import Token
from core.message.tokens import cut
from core.message.wordfile import spelt


@cache
def _words() -> dict[str, re.Pattern[str]]:
    return {
        meaning: re.compile(rf"(?<!\w)(?:{'|'.join(map(re.escape, ways))})(?!\w)")
        for _section, meaning, ways in spelt("tank_use.txt", {"use"})
    }


def asks_use(text: str) -> bool:
    """Whether a text asks what a tank uses up, and tells no number and no salt.

    Examples
    --------
    >>> asks_use("what does it use a day"), asks_use("was verbraucht es am tag")
    (True, True)
    >>> asks_use("what should i use"), asks_use("how much soda does it use")
    (False, False)
    >>> asks_use("what eats algae"), asks_use("calcium consumption")
    (False, True)
    """
    plain, words = fold(text), _words()
    tokens = cut(plain, lexicon(), text, most=16)
    kinds = {token.kind for token in tokens}
    if "uses" not in {token.value for token in tokens} or kinds & {"number", "substance", "event"}:
        return False
    if _is_named_alone(tokens):
        return True
    eats = any(token.text in {"eat", "eats"} for token in tokens)
    if eats and "word" in kinds:
        return False  # what eats algae
    many = any(token.value == "how_much" for token in tokens)
    asks = many or words["what"].match(plain.lstrip(" ¿")) is not None
    return asks and words["keeper"].search(plain) is None


def _is_named_alone(tokens: list[Token]) -> bool:
    """Whether all that is said is the use of one thing: calcium use, consumo de calcio."""
    kinds = [token.kind for token in tokens if token.kind != "fill"]
    return sorted(kinds) == ["analyte", "mark"] and len(tokens) <= NAMED_MOST


NAMED_MOST: Final = 4
"""Words of what names a use and says no more."""


def of_dosing(text: str) -> bool:
    """Whether a text is about giving a dose or plant food.

    Examples
    --------
    >>> of_dosing("wie oft düngen für nitrat 10"), of_dosing("how often for nitrate under 20")
    (True, False)
    """
    return _words()["dosing"].search(fold(text)) is not None
