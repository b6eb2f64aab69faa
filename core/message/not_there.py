"""Of two tanks the one that something belongs to: `it was the cube not fern`, `nicht Fern, Cube`.

told = { word } tank { word } not [ word ] [ word ] tank | not … tank { word } tank

Every other word must be one that is said of what was done, or light.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
from typing import Final, NamedTuple

from core.message import beside_dose
from core.message.fold import fold
from core.message.plan_said import said_of_plan
from core.message.regrets import behind_regret

LONGEST: Final = 90
"""A longer text says more. [characters]"""

_OF_DEED: Final = frozenset(
    {"put", "give", "inside", "changed", "was", "is", "no", "water", "half"}
)


_SMALL: Final = (
    "in|into|to|for|from|on|of|the|my|im|ins|den|dem|die|das|der|mein|dans|pour|le|la|el|en|em|na"
    "|para|nel|nella|il|de|het|mijn|w|do|i"
)
"""What may stand between the word for not and the tank."""


class There(NamedTuple):
    """The tank that it belongs to, and the one that it does not."""

    tank: str
    other: str


@cache
def _not() -> re.Pattern[str]:
    nots = r"not|nicht|pas|no|nao|non|niet|nie|inte"
    return re.compile(rf"(?<!\w)(?:{nots}|{beside_dose.instead()})(?:\W+(?:{_SMALL})){{0,2}}\W+$")


def not_there(text: str, tanks: Sequence[str]) -> There | None:
    """Which of two tanks something belongs to; None where a text says more, or other things.

    Examples
    --------
    >>> not_there("i mean cube not fern", ["Cube", "Fern"])
    There(tank='Cube', other='Fern')
    >>> not_there("it was not in fern but cube", ["Cube", "Fern"])
    There(tank='Cube', other='Fern')
    >>> not_there("cube is fine not fern", ["Cube", "Fern"]) is None
    True
    """
    if "?" in text or len(text) > LONGEST or len(tanks) < 2 or re.search(r"\d", text):
        return None
    plain = " ".join(fold(behind_regret(text) or text).split())
    by_plain = {fold(each): each for each in tanks}
    names = "|".join(re.escape(each) for each in sorted(by_plain, key=len, reverse=True))
    found = list(re.finditer(rf"(?<!\w)(?:{names})(?!\w)", plain))
    if len(found) != 2 or found[0].group() == found[1].group():
        return None
    if plain[found[1].end() :].strip(" .!"):
        return None
    parts = (plain[: found[0].start()], plain[found[0].end() : found[1].start()])
    denied = [_not().search(f" {each}") is not None for each in parts]
    if denied[0] == denied[1]:
        return None
    said = said_of_plan(f"it {_not().sub(' ', parts[0])} {_not().sub(' ', parts[1])}")
    if said is None or said.asks or said.queries or said.amounts.of_dose:
        return None
    if said.classes - _OF_DEED:
        return None
    of, there = found if denied[0] else reversed(found)
    return There(by_plain[there.group()], by_plain[of.group()])
