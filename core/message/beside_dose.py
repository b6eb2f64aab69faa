"""What stands beside so much of a thing that was put in, and is no part of its name.

beside = "instead of" ( amount [ thing ] | thing ) | manner

`put in 30 g of soda instead of 3 g` tells that 30 g went in: what comes after such a word did not.
`all at once` or `by mistake` tells how, not what; the first, that more than a part of a plan did.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message import bought, quantities
from core.message.amounts import GRAMS, SPOONS
from core.message.fold import fold
from core.message.tokens import Token
from core.message.waters import one_of
from core.message.wordfile import spelt

_WEIGHED: Final = frozenset({*GRAMS, *SPOONS, "mL"})
_ENDS: Final = frozenset({".", "!", "?", ";", ",", "(", ")", "|"})
_MANNERS: Final = ("together", "manner")
_THINGS: Final = frozenset({"substance", "word", "several"})


@cache
def _words() -> dict[str, dict[str, frozenset[str]]]:
    """Each section's phrases by their first word.

    Raises
    ------
    ValueError
        If a line has no ``=`` or stands in no section.
    """
    found: dict[str, dict[str, set[str]]] = {
        "instead": {},
        "manner": {},
        "together": {},
        "replaced": {},
        "well": {},
        "who": {},
    }
    for section, _language, told in spelt("beside_dose.txt", found):
        for way in told:
            plain = _plain(way)
            found[section].setdefault(plain.split()[0], set()).add(plain)
    return {
        section: {first: frozenset(these) for first, these in by_first.items()}
        for section, by_first in found.items()
    }


def _plain(text: str) -> str:
    return " ".join(text.replace("'", " ").replace("’", " ").split())


def set_aside(tokens: list[Token]) -> None:
    """Give no weight to what is beside a dose of so much and no part of it, in place."""
    if not _weighs(tokens):
        return
    place = 0
    while place < len(tokens):
        if size := _at(tokens, place, "instead"):
            last = _untaken(tokens, place + size)
        else:
            last = place + max(_at(tokens, place, way) for way in _MANNERS)
        for token in tokens[place:last]:
            token.kind = token.value = "fill"
        place = max(last, place + 1)


def instead() -> str:
    """A pattern for the words before an amount that did not go in."""
    return _ways("instead")


def _ways(section: str) -> str:
    told = _words()[section].values()
    return one_of(way for each in told for way in each).replace(r"\s", r"[\s']")


@cache
def _spoken() -> re.Pattern[str]:
    amount = r"\d{1,5}(?:[.,]\d{1,3})?(?: ?g\w{0,5})?"
    manners = "|".join(_ways(way) for way in _MANNERS)
    return re.compile(rf"(?<!\w)(?:(?:{instead()}) {amount}|(?:{manners}))(?!\w)")


def without(text: str) -> str:
    """A text, folded, without the amount that did not go in and without how it went in.

    Examples
    --------
    >>> without("I put 30 g in instead of 3"), without("ho messo 10 g tutti insieme")
    ('i put 30 g in', 'ho messo 10 g')
    """
    return " ".join(_spoken().sub(" ", fold(text).replace("’", "'")).split())


@cache
def _replaced() -> re.Pattern[str]:
    of = r"(?! (?:of|than|von|de|di|van|for|för)(?!\w))"
    return re.compile(rf"(?<!\w)(?:{_ways('replaced')})(?!\w){of}")


def without_instead(text: str) -> str | None:
    """A text without the word that it went in for another dose; None where it has none.

    Examples
    --------
    >>> without_instead("dosed 2 g baking soda instead"), without_instead("stattdessen 2 g Natron")
    ('dosed 2 g baking soda', '2 g natron')
    >>> without_instead("9 g instead of 3"), without_instead("dosed 2 g")
    (None, None)
    """
    plain = " ".join(fold(text).replace("’", "'").split())
    found = _replaced().search(plain)
    if found is None or re.search(rf"(?<!\w)(?:{instead()}) ", plain):
        return None
    return " ".join(f"{plain[: found.start()]} {plain[found.end() :]}".strip(" ,.!").split())


@cache
def _together() -> re.Pattern[str]:
    return re.compile(rf"(?<!\w)(?:{_ways('together')})(?!\w)")


def together(text: str) -> bool:
    """Whether a text tells that something went in all at once.

    Examples
    --------
    >>> together("done, all at once"), together("done by mistake")
    (True, False)
    """
    return _together().search(fold(text).replace("’", "'")) is not None


def _weighs(tokens: list[Token]) -> bool:
    """Whether something is told to be put in, by its weight or its measure."""
    given = any(t.value in {"dose", "added"} or bought.is_word("give", t.text) for t in tokens)
    return given and any(t.kind == "unit" and t.value in _WEIGHED for t in tokens)


def _at(tokens: list[Token], place: int, section: str) -> int:
    """How many tokens the longest phrase of a section takes from a place on; 0 for none."""
    first, _, _ = tokens[place].text.partition(" ")
    ways = _words()[section].get(_plain(first) or first)
    if ways is None:
        return 0
    said, taken = "", 0
    for size, token in enumerate(tokens[place : place + 6], 1):
        said = _plain(f"{said} {token.text}")
        if said in ways:
            taken = size
    return taken


def _untaken(tokens: list[Token], place: int) -> int:
    """Behind what did not go in: its amount and its thing, up to the end of its clause."""
    amount = None
    named = any(token.kind == "substance" for token in tokens[:place])
    while place < len(tokens) and (tokens[place].kind == "fill" or tokens[place].value == "one"):
        place += 1
    if place < len(tokens) and quantities.is_number(tokens[place]):
        amount = quantities.read(tokens, place)
        place = place + 1 if amount is None else amount.last
    if amount is not None and not named:
        return place  # 9 g statt 3 g Natron: the thing is of both
    while place < len(tokens):
        token = tokens[place]
        of = token.kind in {"fill", *_THINGS} and token.text not in _ENDS
        of = of or (amount is None and token.value == "water_change")  # instead of a water change
        if not of or (amount is not None and bought.is_word("give", token.text)):
            break
        place += 1
    return place


_JOINT: Final = re.compile(r"[,.;!]\s*|\s(?:and|but|und|et|y|e|en|i|och)\s")


def without_well(text: str) -> str:
    """A text, folded, without an end that only tells that all is well.

    Examples
    --------
    >>> without_well("put the first bit in, fish look fine")
    'put the first bit in'
    >>> without_well("put it in, fish look odd"), without_well("put it in, all of it")
    ('put it in, fish look odd', 'put it in, all of it')
    """
    plain = fold(text).strip(" .!")
    for joint in _JOINT.finditer(plain):
        tail = re.findall(r"[^\W\d_]+(?:'[^\W\d_]+)?|\d+", plain[joint.end() :])
        if tail and _is_well(" ".join(tail)):
            return plain[: joint.start()]
    return plain


def _is_well(tail: str) -> bool:
    """Whether a text has a word for well, and no other than those beside it."""
    rest, found = re.subn(rf"(?<!\S)(?:{_ways('well')})(?!\S)", " ", tail)
    who = {way for ways in _words()["who"].values() for way in ways}
    return bool(found) and all(word.replace("'", " ") in who for word in rest.split())
