"""Where a judgement of what was just told begins: `kh 3` is that ok."""

from __future__ import annotations

import re

from core.message.fold import fold
from core.message.tokens import Token

_BACK = frozenset(
    {
        "that", "this", "it", "these", "those", "das", "dies", "es", "c", "ca", "cela", "eso",
        "esto", "isso", "isto", "questo", "quello", "dat", "dit", "het", "to", "det", "thats",
        "that's",
    }
)  # fmt: skip
"""Words for what was just told."""


def refers_back(text: str) -> bool:
    """Whether a text speaks of what was just told.

    Examples
    --------
    >>> refers_back("is that bad?"), refers_back("is my water ok")
    (True, False)
    """
    return not _BACK.isdisjoint(re.findall(r"[^\W_]+(?:'s)?", fold(text)))


def begins(tokens: list[Token], place: int) -> int | None:
    """Where a judgement of a reading right before it begins: `kh 3` is that ok; else None.

    What it is of was told, as behind a comma: no premise of the question.
    """
    if tokens[place].value != "safe":
        return None
    first = place
    while first > 0 and (tokens[first - 1].kind == "fill" or tokens[first - 1].value == "link"):
        first -= 1
    words = {word for token in tokens[first : place + 1] for word in token.text.split()}
    told = first > 0 and tokens[first - 1].kind in {"number", "unit", "dotted"}
    return first if told and not _BACK.isdisjoint(words) else None
