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


_OPENING: Final = frozenset({"to_do", "bare", "done", "change"})
"""Sections that are matched at a place, or within a word (`50%wc`)."""


@cache
def _words() -> dict[str, re.Pattern[str]]:
    held: dict[str, list[str]] = {
        name: [] for name in ("to_do", "bare", "done", "change", "end", "told")
    }
    for section, _language, ways in spelt("deed_opened.txt", held):
        held[section] += ways
    found = {}
    for section, ways in held.items():
        begin = "" if section in _OPENING else r"(?<!\w)"
        end = "$" if section == "end" else ""
        said = "|".join(map(re.escape, sorted(ways, key=len, reverse=True)))
        found[section] = re.compile(rf"{begin}(?:{said})(?!\w){end}")
    return found


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


def asks_by_end(text: str) -> bool:
    """Whether a change with its amount is asked by its last word: `90% water change now yeah?`.

    Who says who did it tells a deed, and asks whether it was right.

    Examples
    --------
    >>> asks_by_end("big water change 90% now yeah?"), asks_by_end("60% wc then right?")
    (True, True)
    >>> asks_by_end("i did a 90% water change yeah?"), asks_by_end("90% water change yesterday ok?")
    (False, False)
    >>> asks_by_end("90% water change now"), asks_by_end("ph 7 right?")
    (False, False)
    """
    plain, words = " ".join(_plain(text).split()), _words()
    if not text.rstrip().endswith("?") or not any(map(str.isdigit, text)):
        return False
    told = words["told"].search(plain) or opened(text) == "done"
    return not told and bool(words["change"].search(plain)) and bool(words["end"].search(plain))


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
