"""``do i wc``, ``did i change 30%``: a text that opens as a question of a deed tells none.

deed_opened = { light word } opening { word }
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final, Literal

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.wordfile import spelt

Opened = Literal["to_do", "done"]

_FILLS: Final = 4
"""Light words that may stand before the opening."""


@cache
def _words() -> dict[str, re.Pattern[str]]:
    held: dict[str, list[str]] = {"to_do": [], "bare": [], "done": [], "change": []}
    for section, _language, ways in spelt("deed_opened.txt", held):
        held[section] += ways
    return {
        section: re.compile(
            rf"(?:{'|'.join(map(re.escape, sorted(ways, key=len, reverse=True)))})(?!\w)"
        )
        for section, ways in held.items()
    }


def opened(text: str) -> Opened | None:
    """Whether a text opens with a question of a deed to do or done; None where with neither.

    Examples
    --------
    >>> opened("do I wc"), opened("so did we feed"), opened("I did wc"), opened("muss ich füttern")
    ('to_do', 'done', None, 'to_do')
    """
    begin, plain = _begin(text), _plain(text)
    words = _words()
    if words["done"].match(plain, begin) is not None:
        return "done"
    return "to_do" if words["to_do"].match(plain, begin) is not None else None


def asks_change(text: str) -> bool:
    """Whether a text asks for a change of water to do, and nothing is told of how much.

    Examples
    --------
    >>> asks_change("do i wc today"), asks_change("muss ich ww machen"), asks_change("do i feed")
    (True, True, False)
    >>> asks_change("do i change 30%")
    False
    """
    if opened(text) == "done" or any(map(str.isdigit, text)):
        return False
    plain, words = _plain(text), _words()
    begin = _begin(text)
    found = words["to_do"].match(plain, begin) or words["bare"].match(plain, begin)
    if found is None and "?" not in text:
        return False
    rest = plain[found.end() if found else begin :].strip()
    named = words["change"].search(rest)
    if named is None or (found is None and named.start() > 0):
        return False
    return len(rest.split()) - len(named[0].split()) <= (_FILLS if found else 1)


def _plain(text: str) -> str:
    """As it is compared: one blank for each mark, so that places stay."""
    return re.sub(r"[^\w]", " ", fold(text))


def _begin(text: str) -> int:
    """Where the first word with weight begins."""
    tokens, plain = cut(fold(text), lexicon(), text, most=_FILLS + 1), _plain(text)
    for token in tokens:
        openings = (_words()[each] for each in ("to_do", "bare", "done"))
        opens = any(each.match(plain, token.start) for each in openings)
        if opens or token.kind != "fill":
            return token.start
    return 0
