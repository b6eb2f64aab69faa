"""A tank that is to be deleted, or that a keeper has no more: `delete moss`, `sold that tank`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.waters import one_of
from core.message.wordfile import spelt

LONGEST: Final = 70
"""A longer text says more. [characters]"""


@cache
def _words(*meanings: str) -> str:
    told = spelt("tank_deleted.txt", {"word"})
    return one_of(way for _section, name, ways in told if name in meanings for way in ways)


def tank_deleted(text: str, tanks: Sequence[str]) -> str | None:
    """The tank that a text tells to delete; None where it says anything else.

    Examples
    --------
    >>> tank_deleted("delete moss", ["Moss"]), tank_deleted("lösch das Becken moss", ["Moss"])
    ('Moss', 'Moss')
    >>> tank_deleted("delete the moss reminder", ["Moss"]), tank_deleted("moss", ["Moss"])
    (None, None)
    """
    plain = " ".join(fold(text).strip(" \t\n¡!.,;:").split())
    if len(plain) > LONGEST or "?" in text:
        return None
    verb = re.match(rf"(?:(?:{_words('light')}) )*(?:{_words('delete')})(?!\w)", plain)
    for tank in tanks if verb is not None else ():
        name = " ".join(fold(tank).split())
        rest = plain[verb.end() :] if verb is not None else ""
        found = re.fullmatch(rf"(?P<head>.*?)(?<!\w){re.escape(name)}(?P<tail>(?: .*)?)", rest)
        if found is not None and all(map(_is_light, (found["head"], found["tail"]))):
            return tank
    return None


def tank_gone(text: str, tanks: Sequence[str], in_use: str | None) -> str | None:
    """The tank that a text tells to be sold, given away or taken down; None where it says more.

    Parameters
    ----------
    in_use : str or None
        The tank that one told without its name is.

    Examples
    --------
    >>> tank_gone("sold that tank", ["Moss"], "Moss"), tank_gone("i sold moss", ["Moss"], None)
    ('Moss', 'Moss')
    >>> tank_gone("the moss tank is gone", ["Moss"], None)
    'Moss'
    >>> tank_gone("should i sell the tank", ["Moss"], "Moss"), tank_gone("gone", ["Moss"], "Moss")
    (None, None)
    """
    plain = " ".join(fold(text).replace("’", "'").strip(" \t\n¡!.,;:").split())
    if len(plain) > LONGEST or "?" in text:
        return None
    named = {" ".join(fold(tank).split()): tank for tank in tanks}
    which = [(re.escape(name), tank) for name, tank in named.items()]
    which += [] if in_use is None else [(_words("which"), in_use)]
    beside = rf"(?:(?:{_words('light', 'beside')})(?!\w)[ ,]*)*"
    went = rf"(?:{_words('went')})(?!\w)[ ,]*"
    for name, tank in which:
        of_it = rf"{beside}(?:{name})(?!\w)[ ,]*{beside}"
        ways = (
            rf"{beside}(?:{_words('gone')})(?!\w)[ ,]*{of_it}(?:{went})?{beside}",
            rf"{beside}(?:{_words('had')})(?!\w)[ ,]*{of_it}{went}{beside}",
            rf"{of_it}{went}{beside}",
        )
        if any(re.fullmatch(way, plain) for way in ways):
            return tank
    return None


def _is_light(text: str) -> bool:
    return re.fullmatch(rf"\s*(?:(?:{_words('light')})(?!\w)[\s,]*)*", text) is not None
