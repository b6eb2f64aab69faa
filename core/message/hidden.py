"""Digits that invisible characters split or turn round."""

from __future__ import annotations

from core.message import doubts, numbers
from core.message.fold import INVISIBLE, TURNING
from core.message.tokens import Token


def mark_hidden(tokens: list[Token], source: str, folded: str) -> list[Token]:
    """Invisible characters taken out, and the numbers that they make doubtful marked.

    A number is doubtful where an invisible character stands between two characters of digits or
    marks, and everywhere after one that turns the reading direction (`fold.TURNING`).
    """
    turned = min((place for place, char in enumerate(source) if char in TURNING), default=None)
    out: list[Token] = []
    for token in tokens:
        if token.text == INVISIBLE:
            continue
        if token.kind in {"number", "fraction", "slashed", "dotted"}:
            touched = _touched(token, folded) or (turned is not None and token.start > turned)
            if touched:
                hidden = numbers.Number(None, problem=doubts.INVISIBLE)
                out.append(Token("number", hidden, token.text, token.start, token.end))
                continue
        out.append(token)
    return out


_DIGITS = frozenset("0123456789.,'/")
_MARKS = frozenset(".,'/")


def _touched(token: Token, folded: str) -> bool:
    """Whether an invisible character joins a number to more digits or marks, on either side."""
    return _joins(folded, token.start - 1, -1) or _joins(folded, token.end, 1)


def _joins(folded: str, place: int, step: int) -> bool:
    hidden = False
    while 0 <= place < len(folded):
        char = folded[place]
        if char == INVISIBLE:
            hidden = True
        elif hidden or char not in _MARKS:
            return hidden and char in _DIGITS
        place += step
    return False
