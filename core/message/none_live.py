"""``no animals at all``: whether anything lives in a tank, as a plain answer."""

from __future__ import annotations

import re
from typing import Final, Literal

from core.message.fold import fold
from core.message.word_classes import said

FILE: Final = "none_live.txt"

_PART: Final = re.compile(r"[,;.!]")


LIVING: Final = frozenset({"animal", "fish", "small"})


def none_live(text: str) -> Literal["none", "some", "unsure"] | None:
    """Whether a text says that nothing lives in a tank, or that something does; None else.

    Each part of it that names animals must say that there are none ("no, snails" has some), and of
    fish alone it is not sure that snails and shrimps are meant as well.

    Examples
    --------
    >>> none_live("No animals at all"), none_live("none, no snails either"), none_live("it's empty")
    ('none', 'none', 'none')
    >>> none_live("no, snails"), none_live("no fish but snails"), none_live("no fish")
    ('some', 'some', 'unsure')
    >>> none_live("ph 7") is None
    True
    """
    told = said(FILE, text)
    if told is None:
        return None
    lives = LIVING & set(told.classes)
    parts = [part for each in _PART.split(fold(text)) if (part := said(FILE, each)) is not None]
    if told.numbers or told.has("some"):
        return "some" if lives else None
    if any(LIVING & set(part.classes) and not part.has("none") for part in parts):
        return "some"
    if lives == {"fish"}:
        return "unsure"
    if told.has("empty") or told.has("none", "animal") or lives == {"fish", "small"}:
        return "none"
    if any(part.classes == ("none",) for part in parts):
        return "none"
    return "unsure" if lives else None


def tells_none(text: str) -> bool:
    """Whether a text tells by itself that nothing lives in a tank, asked or not.

    Examples
    --------
    >>> tells_none("no animals at all"), tells_none("its empty"), tells_none("no")
    (True, True, False)
    """
    told = said(FILE, text)
    named = told is not None and bool((LIVING | {"empty"}) & set(told.classes))
    return named and none_live(text) == "none"
