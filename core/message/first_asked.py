"""``what should i raise first``, ``in which order do i dose all this``."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.wordfile import spelt

_SECTIONS: Final = ("first", "act", "ask", "which")
_OPENING: Final = r"^\W*(?:(?:so|and|ok|und|et|y|e|en|a|och)\W+)?"
_MOST: Final = 14
"""Tokens of such a question, at most."""
_BARE: Final = 3
"""Words of one that says nothing else: which one first."""


@cache
def _words() -> dict[str, re.Pattern[str]]:
    ways: dict[str, list[str]] = {section: [] for section in _SECTIONS}
    for section, _language, found in spelt("first_asked.txt", ways):
        ways[section] += found
    return {
        section: re.compile(
            (
                r"^\W*(?:(?:so|and|ok|und|et|y|e|en|a|och)\W+)?"
                if section in {"ask", "which"}
                else r"(?<!\w)"
            )
            + rf"(?:{'|'.join(map(re.escape, sorted(found, key=len, reverse=True)))})(?!\w)"
        )
        for section, found in ways.items()
    }


def asked(text: str) -> bool:
    """Whether a message asks which of several values is to be put right first.

    Examples
    --------
    >>> asked("what should i raise first"), asked("que corriger d'abord ?")
    (True, True)
    >>> asked("which first"), asked("welches zuerst?"), asked("what goes first in")
    (True, True, False)
    >>> asked("do i test first"), asked("first dose is in"), asked("dose kh 6 first")
    (False, False, False)
    """
    plain, words = fold(text), _words()
    if len(plain.split()) <= _BARE and all(
        words[each].search(plain) for each in ("which", "first")
    ):
        return True
    if not all(words[section].search(plain) for section in ("first", "act", "ask")):
        return False
    tokens = cut(plain, lexicon(), text, most=_MOST + 1)
    counted = any(token.kind in {"number", "count", "event", "substance"} for token in tokens)
    return len(tokens) <= _MOST and not counted
