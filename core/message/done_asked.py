"""``done?``, ``is it done yet``: it is asked whether something is done, and no deed is told."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.commands import command_of
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.wordfile import spelt

LONGEST: Final = 40
"""A longer text says more. [characters]"""
_MARKS: Final = re.compile(r"[^\w]+")
_AMBIGUOUS: Final = frozenset({"es", "pt", "fr", "it", "pl"})
"""Languages whose questions are told apart from what is told by their mark alone."""


@cache
def _words() -> tuple[frozenset[str], frozenset[str]]:
    """What asks by itself, and what asks with a mark.

    Raises
    ------
    ValueError
        If a line has no ``=`` or stands in no section.
    """
    alone: set[str] = set()
    marked: set[str] = set()
    for _section, language, ways in spelt("done_asked.txt", {"asked"}):
        plain = {_plain(way) for way in ways}
        marked |= plain
        alone |= set() if language in _AMBIGUOUS else plain
    return frozenset(alone), frozenset(marked)


def _plain(text: str) -> str:
    return " ".join(_MARKS.sub(" ", fold(text)).split())


def asked(text: str) -> bool:
    """Whether a text asks nothing but whether it is done.

    Examples
    --------
    >>> asked("done?"), asked("is it done yet"), asked("fertig?"), asked("ya está hecho?")
    (True, True, True, True)
    >>> asked("done"), asked("i did it"), asked("done 2"), asked("está hecho")
    (False, False, False, False)
    """
    if len(text) > LONGEST:
        return False
    plain = _plain(text)
    alone, marked = _words()
    if "?" not in text:
        return plain in alone
    tokens = [token for token in cut(plain, lexicon(), plain) if token.kind != "fill"]
    done = len(tokens) == 1 and command_of(tokens[0]) == "done"
    return done or plain in marked
