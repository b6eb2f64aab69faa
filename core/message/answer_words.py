"""The words of a short answer to a question with buttons, as they are compared with those."""

from __future__ import annotations

import re
from typing import Final

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut

_PIECE: Final = re.compile(r"\d+(?:[.,]\d+)?|[^\W\d_]+|%")
_BEFORE: Final = frozenset({"yes", "no", "its", "make"})
"""Commands before an answer, which say nothing more."""


def answer_words(text: str) -> tuple[str, ...]:
    """Numbers and words of a text, units by their one name, without a yes or no before them.

    Examples
    --------
    >>> answer_words("changed 20 %"), answer_words("yes, percent"), answer_words("20 litres")
    (('changed', '20', '%'), ('%',), ('20', 'L'))
    >>> answer_words("no"), answer_words("?")
    ((), ())
    """
    plain = fold(text)
    tokens = cut(plain, lexicon(), text)
    words: list[str] = []
    for token in tokens:
        if token.value in _BEFORE and not words:
            continue
        unit = str(token.value) if token.kind == "unit" else None
        words += [unit] if unit is not None else _PIECE.findall(token.text)
    return tuple(words)
