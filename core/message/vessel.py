"""``i put 2 g gypsum in the bucket``: what went into a vessel or a water apart is no tank's dose.

vessel = into { light word } vessel
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.wordfile import spelt

_MOST_LIGHT: Final = 3


@cache
def _words() -> dict[str, dict[str, str]]:
    """Language → section → its words as one pattern."""
    held: dict[str, dict[str, str]] = {}
    for section, language, ways in spelt("vessel.txt", {"into", "light", "vessel"}):
        longest = sorted(set(ways), key=len, reverse=True)
        held.setdefault(language, {})[section] = "|".join(map(re.escape, longest))
    return held


def _leading(to: str | None = None) -> str:
    """What leads to a vessel, or to `to`, each language with its own words."""
    ways = (
        rf"(?:{each['into']}) (?:(?:{each['light']}) ){{0,{_MOST_LIGHT}}}"
        rf"(?:{to or each['vessel']})"
        if "light" in each
        else rf"(?:{each['into']}) (?:{to or each['vessel']})"
        for each in _words().values()
    )
    return rf"\b(?:{'|'.join(ways)})\b"


@cache
def _led() -> re.Pattern[str]:
    return re.compile(_leading())


@cache
def _vessel() -> re.Pattern[str]:
    words = "|".join(each["vessel"] for each in _words().values())
    return re.compile(rf"\b(?:{words})$")


def _plain(text: str) -> str:
    return re.sub(r"[^\w]+", " ", fold(text))


def named(text: str) -> str | None:
    """The vessel, or the water apart, that a text says a thing went into; None where none.

    Examples
    --------
    >>> named("put 2 g gypsum in the bucket"), named("2 g Gips in den Eimer")
    ('bucket', 'eimer')
    >>> named("put 2 g gypsum in fern"), named("took it from the bucket")
    (None, None)
    """
    found = _led().search(_plain(text))
    vessel = None if found is None else _vessel().search(found[0])
    return None if vessel is None else vessel[0]


def without(text: str) -> str:
    """A text, plain, without the words for the vessel that a thing went into.

    Examples
    --------
    >>> without("Put 2 g in the bucket")
    'put 2 g'
    """
    return _led().sub("", fold(text)).strip()


def leads_to(text: str, tank: str) -> bool:
    """Whether a text says that a thing went into a tank of that name.

    Examples
    --------
    >>> leads_to("from the bucket into Fern", "Fern"), leads_to("a bucket for Fern", "Fern")
    (True, False)
    """
    name = re.escape(_plain(tank).strip())
    return bool(name) and re.search(_leading(name), _plain(text)) is not None
