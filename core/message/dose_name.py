"""What the words around a dose name: `3 g baking soda my wife told me` is baking soda.

name = { word } substance [ product { word } | linked { word } ]

A word that we do not know before a substance, or one for a product right behind it, makes another
thing of it (liquid carbon, salt remover); any other words behind it tell of the deed. The words
stand in ``dose_words.txt``.
"""

from __future__ import annotations

from core.message import kinds
from core.message.dose_words import dose_words
from core.message.event_parts import Parts, source_words
from core.message.fold import fold
from core.message.tokens import Token


def settle(parts: Parts, source: str) -> None:
    """Leave those of the unknown words of a dose that belong to the name of what was put in.

    Parameters
    ----------
    parts : Parts
        Of a dose; its unknown words may be none behind this (`5 g so far`).
    source : str
        What was written.
    """
    animal = not parts.named and kinds.names_animal(source_words(parts.unknown, source))
    if animal or not parts.unknown:
        return
    said = dose_words()["said"] - dose_words()["product"]
    words = sorted(parts.unknown, key=_start)
    if not parts.named:
        while words and words[-1].text in said:
            words.pop()
        parts.unknown = [] if all(token.text in said for token in words) else words
        return
    last = max(parts.named, key=_start)
    behind = _behind(last, [token for token in words if token.start > last.start], source)
    before = [token for token in words if token.start < last.start and token.text not in said]
    parts.unknown = [*before, *behind]


def _behind(last: Token, words: list[Token], source: str) -> list[Token]:
    """Those of the words behind a substance that make another thing of it."""
    kept: list[Token] = []
    end = last.end
    for token in words:
        gap = fold(source[end : token.start]).strip(" -'’")
        linked = gap in dose_words()["linked"]
        if not linked and (gap or not (kept or token.text in dose_words()["product"])):
            break
        kept.append(token)
        end = token.end
    return kept


def _start(token: Token) -> int:
    return token.start
