"""An animal that was told as dead lives: `nope theyre fine, was just sleeping`.

alive = { "no" | light } ( living | "no" fine ) { light }

It is said only right after a loss that was told; every word must be of a class of ``alive.txt``.
"""

from __future__ import annotations

import re
from typing import Literal

from core.message.fold import fold
from core.message.word_classes import said

ALIVE = "alive.txt"


def lives(text: str) -> Literal["surely", "perhaps"] | None:
    """Whether a text says that the dead live; perhaps, where it may be said of the others.

    Examples
    --------
    >>> lives("nope theyre fine, was just sleeping"), lives("hes still alive!")
    ('surely', 'surely')
    >>> lives("theyre fine"), lives("ok"), lives("is he still alive?")
    ('perhaps', None, None)
    """
    if "?" in text:
        return None
    told = said(ALIVE, re.sub(r"n't\b", "nt", fold(text)).replace("'", " "))
    if told is None or told.has("number"):
        return None
    if told.has("alive") or told.has("no", "fine"):
        return "surely"
    return "perhaps" if told.has("who", "fine") else None
