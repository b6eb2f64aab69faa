"""What was nearly done and was not: `almost dosed 5 g soda`, `came close to changing 50 l`.

nearly = near { light word } deed | missed { word } deed

Before a number the same words tell how much (`almost 50 l changed`), so `near` counts only right
before a deed. What was nearly done is held back as all that was not done. The words stand in
``deed_told.txt``.
"""

from __future__ import annotations

from typing import Final

from core.message import bought, deed_told
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.token import Token
from core.message.tokens import cut

_DONE: Final = frozenset(
    {
        "water_change", "dose", "added", "top_up", "filter", "fed", "media", "lost", "missing",
        "moved", "given",
    }
)  # fmt: skip
_ENDS: Final = frozenset({".", "!", "?", ";", ",", ":"})
_REACH: Final = 12
"""Words from what tells that it was missed to the deed."""


def nearly(text: str) -> bool:
    """Whether all that a text tells was nearly done, and nobody suffers of it.

    Examples
    --------
    >>> nearly("nearly put bleach in"), nearly("i was going to put bleach in")
    (True, True)
    >>> nearly("put bleach in, fish nearly dead"), nearly("nearly put bleach in but some got in")
    (False, False)
    >>> nearly("almost a cup of bleach in"), nearly("help fast put bleach in")
    (False, False)
    """
    tokens = cut(fold(text), lexicon(), text)
    for place, token in enumerate(tokens[: _LEAD + 1]):
        if token.kind in {"number", "p", "nl"} or token.text in _OTHERWISE:
            continue
        size = deed_told.at(tokens, place, "missed")
        deed = _deed_within(tokens, place + size) if size else None
        if deed is None:
            size = deed_told.at(tokens, place, "near")
            deed = _deed_next(tokens, place + size) if size else None
        if deed is not None:
            behind = {each.text for each in tokens[deed + 1 :]}
            return len(behind) <= _REACH and not behind & _STILL
    return False


_LEAD: Final = 2
"""Words before it, at most: who nearly did it."""
_OTHERWISE: Final = frozenset({"fast"})
"""Words of nearly that in another language hurry."""
_STILL: Final = frozenset(
    {
        "but", "some", "bit", "drop", "drops", "got", "went", "dead", "dying", "died", "gasping",
        "all", "whole", "and", "then", "now", "aber", "etwas", "mais", "pero", "pouco", "ma", "ale",
        "men", "maar", "tot", "tote",
    }
)  # fmt: skip
"""Words behind the deed that tell of what went in all the same, or of who suffers."""


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
