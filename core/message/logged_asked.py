"""``did you log it``, ``dont log it``, ``log it but only a third``: what is said of the record.

said = asks logged | logged "?" | "not" log | log fraction | asks logged, denied

The words stand in ``logged_asked.txt``; none of these tells a deed.
"""

from __future__ import annotations

import re
from typing import Final, Literal

from core.message.gave_told import denies
from core.message.plan_words import telling
from core.message.word_classes import said

FILE: Final = "logged_asked.txt"

_PARTED: Final = re.compile(r"[?!.,;\n]+")
_MOST: Final = 4
"""Sentences of such a text."""

OfRecord = Literal["asked", "refused", "fraction"]
"""Whether it is on record; that it shall not be; that a share of it shall."""


def of_record(text: str) -> OfRecord | None:
    """What a text says of whether something is put on record; None where nothing.

    Examples
    --------
    >>> of_record("did you log it"), of_record("logged?"), of_record("hast du es eingetragen")
    ('asked', 'asked', 'asked')
    >>> of_record("dont log it"), of_record("log it but only a third of it")
    ('refused', 'fraction')
    >>> of_record("log it"), of_record("logged it"), of_record("can you log it?")
    (None, None, None)
    >>> of_record("did you just log that?? i havent put anything in")
    'refused'
    """
    pieces = [each for each in _PARTED.split(text) if each.strip(" .")]
    if 1 < len(pieces) <= _MOST:
        asked = [_of_one(f"{each}?", why=True) == "asked" for each in pieces]
        denied = [_denied(each) for each in pieces]
        light = [len(each.split()) == 1 and each.strip().isalpha() for each in pieces]  # hey!
        rest = [a or d or no for a, d, no in zip(asked, denied, light, strict=True)]
        if any(asked) and any(denied) and all(rest):
            return "refused"
    return _of_one(text)


def _denied(piece: str) -> bool:
    """Whether a sentence says that nothing went in: `i havent put anything in`."""
    heard = telling(piece)
    return denies(piece) or (heard is not None and heard.meaning == "not_given")


def _of_one(text: str, *, why: bool = False) -> OfRecord | None:
    """The same of one sentence."""
    told = said(FILE, text)
    if told is None or told.numbers:
        return None
    classes = told.classes[1:] if why and told.classes[:1] == ("whys",) else told.classes
    if "whys" in classes:
        return None
    never = told.has("never")
    if never or told.has("not"):
        once = classes.count("not") == 1 and (told.has("log") or told.has("logged"))
        return "refused" if never or once else None
    writes = told.has("log") or told.has("logged")
    if told.has("fraction"):
        return "fraction" if writes and not told.has("asks") else None
    asks = bool(classes) and classes[0] == "asks" and told.has("logged")
    return "asked" if asks or ("?" in text and set(classes) == {"logged"}) else None
