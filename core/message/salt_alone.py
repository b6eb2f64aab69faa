"""A salt that is all that is said: `baking soda`, `yep bicarb`, `i have baking soda`, `use bicarb`.

It answers what a wish is to be worked out with; alone it says nothing of a deed.
"""

from __future__ import annotations

from typing import Final

from core.message.fold import fold
from core.message.followups import heads
from core.message.lexicon import lexicon
from core.message.tokens import Token, cut

LONGEST: Final = 50
"""A longer text says more. [characters]"""
_LIGHT: Final = frozenset({"fill", "p"})
_MARKS: Final = frozenset({"uses", "got", "and", "yes", "link", "ok", "its", "wish"})
_WORDS: Final = frozenset({"only", "just", "some", "lets", "let's", "go", "do", "take", "pure"})


def salt_alone(text: str) -> str | None:
    """The one substance of a text that says nothing else; None where it says more, or asks.

    Examples
    --------
    >>> salt_alone("baking soda"), salt_alone("yep bicarb")
    ('sodium bicarbonate', 'sodium bicarbonate')
    >>> salt_alone("i have baking soda"), salt_alone("mit Natron")
    ('sodium bicarbonate', 'sodium bicarbonate')
    >>> salt_alone("5 g bicarb"), salt_alone("bicarb?"), salt_alone("no bicarb")
    (None, None, None)
    >>> salt_alone("put bicarb in"), salt_alone("used bicarb"), salt_alone("out of bicarb")
    (None, None, None)
    """
    if len(text) > LONGEST or "?" in text:
        return None
    tokens = cut(fold(text), lexicon(), text)
    named = [token for token in tokens if token.kind == "substance"]
    if (
        len(named) != 1
        or tokens[0].value == "link"
        or not all(each is named[0] or _says_little(each) for each in tokens)
    ):
        return None
    return str(named[0].value)


def _says_little(token: Token) -> bool:
    if token.text == "out":
        return False  # out of bicarb
    if token.value == "uses":
        return token.text in {"use", "using"}
    return token.kind in _LIGHT or token.value in _MARKS or token.text in _WORDS


def is_only_had(text: str) -> bool:
    """Whether it is told what is there, not what to take: `i have baking soda`."""
    return any("have" in marks for _rest, marks in heads(text))
