"""``it was 30 g``, ``das waren etwa 30 g``: the grams of what was told before, and nothing else.

weighed_later = { light word } [ "about" ] number gram-unit [ "of it" ]
"""

from __future__ import annotations

from typing import Final

from core.message import quantities
from core.message.amounts import GRAMS
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.token import Token
from core.message.tokens import cut

_MOST: Final = 8
_UNKNOWN: Final = 2
"""Words that may stand there though we do not know them: `i weighed it`, `eran`."""
_LIGHT: Final = frozenset({"fill", "several", "p", "command", "nl"})
_MARKS: Final = frozenset({"was", "link", "approx", "of", "some", "calcium"})
"""`calcium` is French "ça"."""


def grams(text: str) -> float | None:
    """The grams that a text tells of what went before; None where it says anything else. [g]

    Examples
    --------
    >>> grams("that's about 30 g"), grams("das waren 30 g"), grams("30g")
    (30.0, 30.0, 30.0)
    >>> grams("how much is 30 g"), grams("30 g salt"), grams("not 30 g"), grams("20 g, no, 30 g")
    (None, None, None, None)
    """
    if "?" in text:
        return None
    tokens = cut(fold(text), lexicon(), text, most=_MOST + 1)
    if not tokens or len(tokens) > _MOST:
        return None
    place = next((n for n, token in enumerate(tokens) if token.kind == "number"), None)
    amount = None if place is None else quantities.read(tokens, place)
    if amount is None or place is None or amount.unit not in GRAMS or amount.value is None:
        return None
    others = [*tokens[:place], *tokens[amount.last :]]
    strange = [token for token in others if not _is_light(token)]
    if any(token.kind != "word" for token in strange) or len(strange) > _UNKNOWN:
        return None
    return None if amount.problem else amount.value * GRAMS[amount.unit]


def _is_light(token: Token) -> bool:
    return (token.kind in _LIGHT and token.value not in {"no", "make"}) or token.value in _MARKS
