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
_SECTIONS: Final = ("into", "light", "vessel", "onto", "place", "here")
_WATER: Final = r"water|wasser|rodi|\bro\b|eau|agua|acqua|wody|wodzie|vatten|osmos"
_NO_SPOON: Final = (
    r"(?<!cuillere )(?<!cuilleres )(?<!lyzka )(?<!lyzke )(?<!lyzki )"
    r"(?<!lyzeczka )(?<!lyzeczke )(?<!lyzeczki )"
)
"""Before a place: a spoon for coffee is a measure (cuillère à café, łyżeczka do herbaty)."""
_DONE: Final = (
    "getan|gegeben|gekippt|geschuttet|gegossen|geworfen|gemacht|gedaan|gegooid|gegoten|gestrooid"
)
"""Verbs that may stand behind a place."""


@cache
def _words() -> dict[str, dict[str, str]]:
    """Language → section → its words as one pattern."""
    held: dict[str, dict[str, str]] = {}
    for section, language, ways in spelt("vessel.txt", _SECTIONS):
        longest = sorted({_plain(way) for way in ways}, key=len, reverse=True)
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


@cache
def _elsewhere() -> re.Pattern[str]:
    """What leads to a place that is no water of a tank, and the place."""
    ways = (
        rf"(?:{each['into']}|{each['onto']}) (?:(?:{each['light']}) ){{0,{_MOST_LIGHT}}}"
        rf"(?P<{language}>{each['place']})"
        for language, each in _words().items()
    )
    return re.compile(rf"{_NO_SPOON}\b(?:{'|'.join(ways)})\b")


@cache
def _unknown() -> re.Pattern[str]:
    """What leads to one more word, with which a deed ends."""
    ways = (
        rf"(?:{each['into']}|{each['onto']}) (?:(?:{each['light']}) ){{1,{_MOST_LIGHT}}}"
        for each in _words().values()
    )
    return re.compile(rf"\b(?:{'|'.join(ways)})([^\W\d_]{{3,}})(?: (?:{_DONE}))? *$")


@cache
def _here() -> frozenset[str]:
    return frozenset(way for each in _words().values() for way in each["here"].split("|"))


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


def is_water(text: str) -> bool:
    """Whether the name of a vessel or water apart is that of a water.

    Examples
    --------
    >>> is_water("ro water"), is_water("rodi"), is_water("bucket")
    (True, True, False)
    """
    return re.search(_WATER, _plain(text)) is not None


def elsewhere(text: str) -> str | None:
    """The place, no water of a tank, that a text says a thing went to; None where none.

    Examples
    --------
    >>> elsewhere("spilled 5 g soda on the floor"), elsewhere("30 ml Essig in den Abfluss gekippt")
    ('floor', 'abfluss')
    >>> elsewhere("put 5 g soda in the filter"), elsewhere("took it off the floor")
    (None, None)
    """
    found = _elsewhere().search(_plain(text))
    return None if found is None else next(filter(None, found.groupdict().values()))


def unknown_place(text: str) -> str | None:
    """The last word of a text, where it may be a place that nobody knows; None where none.

    Examples
    --------
    >>> unknown_place("put 5 g soda in my teapot"), unknown_place("put 5 g soda in the sump")
    ('teapot', None)
    """
    found = _unknown().search(_plain(text))
    return None if found is None or found[1] in _here() else found[1]


def is_within(word: str) -> bool:
    """Whether a plain word is a place in any tank, or none at all: `in the corner`.

    Examples
    --------
    >>> is_within("corner"), is_within("kitchen")
    (True, False)
    """
    return word in _here()


def without(text: str) -> str:
    """A text, plain, without the words for the vessel that a thing went into.

    Examples
    --------
    >>> without("Put 2 g in the bucket")
    'put 2 g'
    """
    return _elsewhere().sub("", _led().sub("", fold(text))).strip()


def leads_to(text: str, tank: str) -> bool:
    """Whether a text says that a thing went into a tank of that name.

    Examples
    --------
    >>> leads_to("from the bucket into Fern", "Fern"), leads_to("a bucket for Fern", "Fern")
    (True, False)
    """
    name = re.escape(_plain(tank).strip())
    return bool(name) and re.search(_leading(name), _plain(text)) is not None
