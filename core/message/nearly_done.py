"""What was nearly done and was not: `almost dosed 5 g soda`, `came close to changing 50 l`.

nearly = near { light word } deed | missed { word } deed

Before a number the same words tell how much (`almost 50 l changed`), so `near` counts only right
before a deed. What was nearly done is held back as all that was not done. The words stand in
``deed_told.txt``.
"""

from __future__ import annotations

from typing import Final

from core.message import bought, deed_told
from core.message.token import Token

_DONE: Final = frozenset(
    {
        "water_change", "dose", "added", "top_up", "filter", "fed", "media", "lost", "missing",
        "moved", "given",
    }
)  # fmt: skip
_ENDS: Final = frozenset({".", "!", "?", ";", ",", ":"})
_REACH: Final = 12
"""Words from what tells that it was missed to the deed."""


def mark(tokens: list[Token]) -> None:
    """Hold back the deeds that were nearly done, in place."""
    for place, token in enumerate(tokens):
        if token.kind in {"number", "p", "nl"}:
            continue
        size = deed_told.at(tokens, place, "missed")
        deed = _deed_within(tokens, place + size) if size else None
        if deed is None:
            size = deed_told.at(tokens, place, "near")
            deed = _deed_next(tokens, place + size) if size else None
        if deed is None:
            continue
        for each in tokens[place : place + size]:
            each.kind, each.value = "mark", "not"
        if tokens[deed].value in {"lost", "missing"}:  # 2 neons nearly died: nobody did
            tokens[deed].kind = tokens[deed].value = "fill"


def _is_deed(token: Token) -> bool:
    told = token.kind == "event" and token.value in _DONE
    by_hand = token.value == "changing" or bought.is_word("did", token.text)
    return told or by_hand or bought.is_word("give", token.text)


def _deed_next(tokens: list[Token], place: int) -> int | None:
    """Where the deed is that only words without weight part from a place; None where none is."""
    while place < len(tokens) and tokens[place].kind == "fill" and not _is_deed(tokens[place]):
        place += 1
    return place if place < len(tokens) and _is_deed(tokens[place]) else None


def _deed_within(tokens: list[Token], place: int) -> int | None:
    """Where the first deed of a sentence is, from a place on; None where none is."""
    for at, token in enumerate(tokens[place : place + _REACH], place):
        if token.text in _ENDS or token.kind == "nl":
            return None
        if _is_deed(token):
            return at
    return None
