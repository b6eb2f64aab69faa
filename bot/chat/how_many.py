"""How many animals came or left, where a message did not tell: what the question keeps."""

from __future__ import annotations

import re
from typing import Final

COUNT: Final = "count"
"""What an offer expects whose question is how many."""


_NUMBER_BEFORE: Final = re.compile(r"[-−]?\d+(?:[.,]\d+)?\s*$")


def told(text: str, name: str, count: int) -> str:
    """A message with the number that it left out, before the animals' name.

    A number that is none of animals (0, 2.5, -3) makes room for it.

    Examples
    --------
    >>> told("moved cardinals to fern", "cardinals", 6)
    'moved 6 cardinals to fern'
    >>> told("added -3 guppies", "guppies", 4)
    'added 4 guppies'
    """
    before, found, after = text.partition(name)
    before = _NUMBER_BEFORE.sub("", before)
    return f"{before}{count} {found}{after}" if found else f"{count} {text}"
