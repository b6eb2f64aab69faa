"""How many animals came or left, where a message did not tell: what the question keeps."""

from __future__ import annotations

from typing import Final

COUNT: Final = "count"
"""What an offer expects whose question is how many."""


def told(text: str, name: str, count: int) -> str:
    """A message with the number that it left out, before the animals' name.

    Examples
    --------
    >>> told("moved cardinals to fern", "cardinals", 6)
    'moved 6 cardinals to fern'
    """
    before, found, after = text.partition(name)
    return f"{before}{count} {found}{after}" if found else f"{count} {text}"
