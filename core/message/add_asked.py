"""``should i add 2 g baking soda``, ``soll ich 2 g Natron reingeben?``: so much, and is it right.

add_asked = ( opener | … "?" ) add amount substance   in any order, and nothing that has weight
"""

from __future__ import annotations

import re
from typing import Final

from core.message.amounts import GRAMS
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.raise_asked import words
from core.message.tokens import cut

_MOST: Final = 16
"""Tokens of such a message, at most."""
_LIGHT: Final = frozenset({"mark", "ask", "fill", "several", "p"})
_UNITS: Final = frozenset({*GRAMS, "tsp", "tbsp", "mL"})


def so_much(text: str) -> str | None:
    """The amount and its substance, as they stand in the text; None where that is not asked.

    Examples
    --------
    >>> so_much("should i add 2 g baking soda"), so_much("soll ich 2 g Natron reingeben?")
    ('2 g baking soda', '2 g Natron')
    >>> so_much("i added 2 g baking soda"), so_much("add 2 g baking soda")
    (None, None)
    """
    tokens = cut(fold(text), lexicon(), text, most=_MOST + 1)
    kinds = [token.kind for token in tokens]
    if len(tokens) > _MOST or kinds.count("number") != 1 or kinds.count("substance") != 1:
        return None
    place, of = kinds.index("number"), tokens[kinds.index("substance")]
    unit = tokens[place + 1] if place + 1 < len(tokens) else None
    if unit is None or unit.kind != "unit" or unit.value not in _UNITS:
        return None
    plain = fold(text).replace("-", " ").replace("'", " ")
    says = {name: words()[name] for name in ("open", "add")}
    if says["open"].search(plain) is None and tokens[-1].text != "?":
        return None
    adds = says["add"].search(plain) is not None or any(t.value == "adding" for t in tokens)
    known = {tokens[place], unit, of}
    light = all(
        token in known or token.kind in _LIGHT or _is_of(token.text, says) for token in tokens
    )
    if not adds or not light:
        return None
    return f"{text[tokens[place].start : unit.end]} {text[of.start : of.end]}"


def _is_of(word: str, says: dict[str, re.Pattern[str]]) -> bool:
    return any(found.fullmatch(word) is not None for found in says.values())
