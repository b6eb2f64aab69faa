"""A tank's name alone behind a word for deleting: `delete moss`."""

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
def _words(meaning: str) -> str:
    told = spelt("tank_deleted.txt", {"word"})
    return one_of(way for _section, name, ways in told if name == meaning for way in ways)


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


def _is_light(text: str) -> bool:
    return re.fullmatch(rf"\s*(?:(?:{_words('light')})(?!\w)[\s,]*)*", text) is not None
