"""One piece of a message: what kind of word it is, what it means, and where it stands."""

from __future__ import annotations


class Token:
    """One piece of a message.

    `kind` is a category of the lexicon (analyte, unit, substance, event, time, mark, ask,
    command, fill, several), or: word (unknown), number, fraction, iso, clock, dotted, slashed,
    nl, p (any other character). `value` is the meaning: the lexicon's value, or the `Number`.
    """

    __slots__ = ("end", "kind", "start", "text", "value")

    kind: str
    value: object
    text: str
    start: int
    end: int

    def __init__(self, kind: str, value: object, text: str, start: int, end: int) -> None:
        self.kind = kind
        self.value = value
        self.text = text
        self.start = start
        self.end = end

    def __repr__(self) -> str:
        return f"{self.kind}:{self.text}"


def is_number(token: Token) -> bool:
    """Whether a quantity's digits can begin at this token."""
    return token.kind in {"number", "fraction", "slashed", "dotted"}
