"""A text with the names that it is about put as one word each, for files of classes of words.

``how much rain water for gh 4`` is then ``how much @water for @analyte 4``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.once import once
from core.message.tokens import Token, cut
from core.message.waters import mentioned
from core.message.word_classes import is_small

_SHORT: Final = 2
"""Letters of a symbol of an element, which may be a small word elsewhere."""

_KINDS: Final = {"analyte": "@analyte", "substance": "@salt"}


@dataclass(frozen=True, slots=True)
class Reduced:
    """What a text names, in the order named, and the text with one word for each.

    Attributes
    ----------
    text : str
        Plain, with ``@water``, ``@analyte`` and ``@salt`` for what was named.
    waters : tuple of str
        As they were named.
    analytes, substances : tuple of str
        By their ids.
    """

    text: str
    waters: tuple[str, ...]
    analytes: tuple[str, ...]
    substances: tuple[str, ...]


@once
def reduced(text: str) -> Reduced:
    """Put one word for each water, analyte and substance of a text.

    Examples
    --------
    >>> reduced("Welche GH bei 10 l Osmosewasser").text
    'welche @analyte bei 10 l @water'
    >>> reduced("how much baking soda").substances
    ('sodium bicarbonate',)
    """
    plain = fold(text)
    waters = [(start, end) for start, end, _kind in mentioned(text)]
    tokens = cut(plain, lexicon(), text)
    named = [
        token
        for place, token in enumerate(tokens)
        if token.kind in _KINDS
        and not any(start < token.end and token.start < end for start, end in waters)
        and not _is_small(token, text, tokens[place + 1 : place + 2])
    ]
    spans = [(start, end, "@water") for start, end in waters]
    spans += [(token.start, token.end, _KINDS[token.kind]) for token in named]
    out, place = [], 0
    for start, end, word in sorted(spans):
        out += [plain[place:start], word]
        place = end
    return Reduced(
        "".join(out) + plain[place:],
        tuple(text[start:end] for start, end in waters),
        tuple(str(token.value) for token in named if token.kind == "analyte"),
        tuple(str(token.value) for token in named if token.kind == "substance"),
    )


def _is_small(token: Token, text: str, behind: list[Token]) -> bool:
    """Whether a short name is rather a small word: ça, and na right before a name."""
    if token.kind != "analyte" or token.end - token.start > _SHORT or not is_small(token.text):
        return False
    typed = text[token.start : token.end]
    return fold(typed) != typed.casefold() or any(each.kind == "analyte" for each in behind)
