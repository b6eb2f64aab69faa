"""Whether a message asks and so tells nothing: by the words that it opens or ends with."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.wordfile import spelt

FILE: Final = "asking_words.txt"
_SECTIONS: Final = ("opening", "closing")
_MARKS: Final = re.compile(r"[^\w]+")


@cache
def _ways() -> Mapping[str, frozenset[str]]:
    ways: dict[str, set[str]] = {section: set() for section in _SECTIONS}
    for section, _language, found in spelt(FILE, ways):
        ways[section] |= {_plain(way) for way in found}
    return {section: frozenset(found) for section, found in ways.items()}


def _plain(text: str) -> str:
    return " ".join(_MARKS.sub(" ", fold(text)).split())


def asks(text: str) -> bool:
    """Whether a text has a question mark, or opens or ends with words that ask.

    Examples
    --------
    >>> asks("warum steigt das"), asks("thats a lot isnt it"), asks("is that worse")
    (True, True, True)
    >>> asks("was gasping at the top"), asks("is gasping a lot"), asks("when i came home he lay")
    (False, False, False)
    """
    if "?" in text:
        return True
    words = _plain(text).split()
    ways = _ways()
    most = range(1, min(4, len(words)) + 1)
    return any(" ".join(words[:many]) in ways["opening"] for many in most) or any(
        " ".join(words[-many:]) in ways["closing"] for many in most if many < len(words)
    )
