"""Animals that somebody brought and that are told to be in, in a line that no deed opens.

told = came ... count [ "new" ] animals ... inside | count animals came ... inside

`brother brought 6 mollies as a gift theyre in the tank now`: they are in, whoever put them there,
and what stands in that water concerns them at once.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message import kinds
from core.message.fold import fold
from core.message.lexicon import meanings
from core.message.model import Event
from core.message.waters import one_of
from core.message.wordfile import spelt

FILE: Final = "brought_in.txt"
LONGEST: Final = 160
"""A longer text says more. [characters]"""
NAME: Final = 3
"""Words of the longest name that is looked for behind a number."""
MOST: Final = 200
"""So many animals are not told so."""

_WORD: Final = re.compile(r"[^\W_]+")
_NEW: Final = frozenset({"new", "more", "neue", "nouveaux", "nuevos", "novos", "nuovi", "nieuwe"})


@cache
def _said(section: str) -> re.Pattern[str]:
    ways = {
        fold(way).replace("'", " ")
        for of, _language, these in spelt(FILE, {"came", "inside", "elsewhere"})
        if of == section
        for way in these
    }
    return re.compile(rf"(?<![^\W_])(?:{one_of(ways)})(?![^\W_])")


def brought_in(text: str) -> tuple[Event, ...]:
    """The animals that a text tells to have come and to be in; empty where it tells another thing.

    Examples
    --------
    >>> [(e.count, e.species) for e in brought_in("dad brought 6 mollies, theyre in the tank now")]
    [(6, 'mollies')]
    >>> brought_in("bought 6 mollies, theyre in a bucket"), brought_in("6 mollies, are they in?")
    ((), ())
    """
    plain = fold(text).replace("'", " ").replace("’", " ")
    if "?" in text or len(text) > LONGEST or len(plain) != len(text):
        return ()
    if not _said("came").search(plain) or _said("elsewhere").search(plain):
        return ()
    inside = _said("inside").search(plain)
    if inside is None:
        return ()
    words = [(found.group(), *found.span()) for found in _WORD.finditer(plain)]
    told: list[Event] = []
    for place, (word, start, _end) in enumerate(words):
        count = _number(word)
        if count is None or place + 1 >= len(words):
            continue
        first = place + 1 + (words[place + 1][0] in _NEW)
        for last in range(min(len(words), first + NAME), first, -1):
            name = text[words[first][1] : words[last - 1][2]]
            if kinds.is_kind(name):
                end = words[last - 1][2]
                told.append(Event("added", count=count, species=name, start=start, end=end))
                break
        else:
            return ()  # a number of something else stands there
    return tuple(told)


def _number(word: str) -> int | None:
    if word.isascii() and word.isdigit():
        value = int(word)
        return value if 0 < value <= MOST else None
    counts = [int(name) for kind, name in meanings(word) if kind == "count" and name.isdigit()]
    return counts[0] if counts else None
