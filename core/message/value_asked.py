"""``kh?``, ``how is the ph doing``, ``what should gh be``: values asked about in a few words."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Final

from core.analytes import ANALYTES
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import Token, cut
from core.message.wordfile import patterns

_SECTIONS: Final = ("hard", "water", "should", "ideal", "judged", "use")
_MOST: Final = 12
"""Tokens of such a message, at most: a longer one says more than that."""
_NAMED: Final = 3
"""Values of one message, at most; more are a table whose numbers are missing."""
HARDNESS: Final = ("gh", "kh")


@dataclass(frozen=True, slots=True)
class Asked:
    """The values that a message asks about.

    Attributes
    ----------
    analytes : tuple of str
        In the order named.
    should : bool
        Whether the value that is right is asked for, not the one that is.
    """

    analytes: tuple[str, ...]
    should: bool = False


@cache
def _words() -> dict[str, re.Pattern[str]]:
    return patterns("value_asked.txt", _SECTIONS)


def is_of_use(text: str) -> bool:
    """Whether a question about a value asks what it is for: ``why is kh important``.

    Examples
    --------
    >>> is_of_use("pourquoi le kh c'est important"), is_of_use("why is kh so low")
    (True, False)
    """
    return _words()["use"].search(fold(text)) is not None


def hardness(text: str) -> Asked | None:
    """Hardness asked for without its name: ``is my water hard or soft``; None otherwise.

    Examples
    --------
    >>> hardness("is my water hard or soft?").analytes, hardness("hard water fish")
    (('gh', 'kh'), None)
    """
    plain, words = fold(text), _words()
    if not words["hard"].search(plain) or not (words["water"].search(plain) or "?" in plain):
        return None
    tokens = cut(plain, lexicon(), text, most=_MOST + 1)
    if len(tokens) > _MOST or any(_counts(token) or token.kind == "analyte" for token in tokens):
        return None
    return Asked(HARDNESS)


def ideal(text: str) -> Asked | None:
    """The value that is right, asked for in whole: ``whats a good kh``; None otherwise.

    Examples
    --------
    >>> ideal("whats a good kh for guppies").analytes, ideal("is my kh good")
    (('kh',), None)
    """
    found = asked(text) if _words()["ideal"].search(fold(text)) else None
    return None if found is None else Asked(found.analytes, should=True)


def judged(text: str) -> Asked | None:
    """The one value that is asked whether it is high or low: ``is my no3 high``; None otherwise.

    Examples
    --------
    >>> judged("is my no3 still high?").analytes, judged("ist das ph zu hoch").analytes
    (('nitrate',), ('ph',))
    >>> judged("is kh important"), judged("is high no3 bad for shrimp"), judged("no3 high")
    (None, None, None)
    """
    plain = fold(text)
    found = _words()["judged"].search(plain)
    if found is None:
        return None
    rest = f"{plain[: found.start()]} {plain[found.end() :]}"
    tokens = cut(rest, lexicon(), rest, most=_MOST + 1)
    names = [str(t.value).partition("@")[0] for t in tokens if t.kind == "analyte"]
    asks = "?" in plain or (bool(tokens) and (tokens[0].value == "link" or tokens[0].text in _ASKS))
    light = all(
        token.kind in {"analyte", "fill"} or token.value == "link" or token.text in _LIGHT | _ASKS
        for token in tokens
    )
    light = light and _words()["judged"].search(rest) is None
    if len(names) != 1 or names[0] not in ANALYTES or not light:
        return None
    return Asked((names[0],)) if asks else None


_LIGHT: Final = frozenset({"?", "!", ".", "'", "-", "¿", "que", "ce"})
_ASKS: Final = frozenset({"czy", "est", "esta"})
"""Words that open such a question without a word for "is" that the lexicon has."""


def asked(text: str) -> Asked | None:
    """The values that a short message without numbers names; None where it names none.

    It is for messages that nothing else understood: it does not look at what else they say.

    Examples
    --------
    >>> asked("kh?"), asked("what should gh be").should, asked("kh 4"), asked("hello")
    (Asked(analytes=('kh',), should=False), True, None, None)
    """
    plain = fold(text)
    tokens = cut(plain, lexicon(), text, most=_MOST + 1)
    if len(tokens) > _MOST or any(map(_counts, tokens)):
        return None
    names = (str(token.value).partition("@")[0] for token in tokens if token.kind == "analyte")
    named = tuple(dict.fromkeys(name for name in names if name in ANALYTES))
    if not 0 < len(named) <= _NAMED:
        return None
    return Asked(named, _words()["should"].search(plain) is not None)


def _counts(token: Token) -> bool:
    return token.kind in {"number", "count", "fraction", "event"}
