"""What is asked right behind a deed: `changed 30 l, is that too much?`, `enough?`.

judged = deed [ separator ] question | question
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final, Literal

from core.message.deed_asked import begins_as_question
from core.message.fold import fold
from core.message.wordfile import spelt

Judged = Literal["much", "enough", "sum", "med"]

_PARTED: Final = re.compile(r"[,;!\n]|\.(?=\s)|(?<=\s)[-–—](?=\s)")


@cache
def _words() -> dict[str, frozenset[str]]:
    held: dict[str, set[str]] = {
        name: set() for name in ("done", "much", "enough", "sum", "med", "back", "then")
    }
    for section, _language, ways in spelt("deed_judged.txt", held):
        held[section] |= {_plain(way) for way in ways}
    return {section: frozenset(ways) for section, ways in held.items()}


@cache
def _anywhere(section: str) -> re.Pattern[str]:
    """What finds a way of a section among plain words."""
    return re.compile(rf"\b(?:{'|'.join(map(re.escape, sorted(_words()[section])))})\b")


def _plain(text: str) -> str:
    return " ".join(re.findall(r"\w+", fold(text)))


def asks(text: str) -> Judged | None:
    """What a text asks of a deed; None where it asks something else, or more.

    Examples
    --------
    >>> asks("Is that too much?"), asks("reicht das?"), asks("how much did I change")
    ('much', 'enough', 'sum')
    >>> asks("how much med to put back"), asks("enough of this") is None
    ('med', True)
    """
    plain, words = _plain(text), _words()
    for name in ("much", "enough", "sum"):
        if plain in words[name]:
            return name
    medicine = not words["med"].isdisjoint(plain.split())
    return "med" if medicine and _anywhere("back").search(plain) else None


def is_done(text: str) -> bool:
    """Whether a word makes a deed one that was done, not one to come.

    Examples
    --------
    >>> is_done("did a 40% change"), is_done("change 40%"), is_done("40% gewechselt")
    (True, False, True)
    """
    return _anywhere("done").search(_plain(text)) is not None


def parted(text: str) -> tuple[str, str] | None:
    """What is told of a deed, and what is asked behind it; None where nothing is.

    Examples
    --------
    >>> parted("changed 30 l, is that too much?")
    ('changed 30 l', 'is that too much?')
    >>> parted("changed 30 l is that too much"), parted("changed 30 l, kh 4") is None
    (('changed 30 l', 'is that too much'), True)
    """
    for sign in _PARTED.finditer(text):
        told, asked = text[: sign.start()].strip(), text[sign.end() :].strip()
        if told and asked and (asks(asked) is not None or begins_as_question(asked)):
            return _bare(told), asked
    for blank in re.finditer(r"\s+", text):
        if asks(text[blank.end() :]) in {"much", "enough"} and text[: blank.start()].strip():
            return text[: blank.start()].strip(), text[blank.end() :].strip()
    return None


def _bare(told: str) -> str:
    """A deed without what ends it and has no weight: `changed 40% after`."""
    for blank in re.finditer(r"\s+", told):
        if _plain(told[blank.end() :]) in _words()["then"]:
            return told[: blank.start()]
    return told
