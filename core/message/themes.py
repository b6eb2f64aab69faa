"""What a message that nothing understood may be about, so that it can be asked what is meant.

Nothing is known of such a message but the words that it has: it is never read for more.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final, Literal, NamedTuple

from core.message import kinds
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.wordfile import patterns

Theme = Literal["substance", "animal", "filter", "change", "test", "stock", "algae", "due"]

_WORDS: Final[tuple[Theme, ...]] = ("filter", "change", "stock", "algae", "due", "test")
"""Those that have words of their own, the most telling first."""
_SHORT: Final = 3
"""Letters of a word that is no name of an animal by itself."""
_MOST: Final = 120
"""Tokens of a longer message are not looked at."""


class About(NamedTuple):
    """A theme, and the thing that it is of as it was typed."""

    theme: Theme
    thing: str = ""


@cache
def _patterns() -> dict[str, re.Pattern[str]]:
    return patterns("themes.txt", _WORDS)


def themes(text: str) -> tuple[About, ...]:
    """What a text may be about, things that it names first.

    Examples
    --------
    >>> themes("got some crushed coral here")
    (About(theme='substance', thing='crushed coral'),)
    >>> [each.theme for each in themes("should i feed less before the water change")]
    ['change']
    >>> themes("good morning")
    ()
    """
    plain = fold(text)
    named = [
        About("substance", text[token.start : token.end])
        for token in cut(plain, lexicon(), text, most=_MOST)
        if token.kind == "substance"
    ]
    things = " ".join(each.thing.casefold() for each in named)
    said = kinds.said_in(text).strip(",.;:!")
    of_kind = len(said) > _SHORT and not kinds.names_any(said) and said.casefold() not in things
    animals = [About("animal", said)] if of_kind and kinds.is_called(said) else []
    told = [About(theme) for theme in _WORDS if _patterns()[theme].search(plain)]
    return (*named, *animals, *told)
