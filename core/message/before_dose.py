"""Where the water stood before a dose, or a change, that is told in the same message.

told = dose "because" value "was" | value "was" "so" dose | dose "," value ( "before" | "was" )

`put in 10 g of soda because kh was 2` tells a dose and what was measured before it: the word
between them ends the name of the thing, and the value is no earlier one whose time is missing.
What the words are stands in ``before_dose.txt``; they mean this beside a dose alone.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message import bought, quantities
from core.message.amounts import GRAMS, SPOONS
from core.message.deeds import INTO
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import Token, cut
from core.message.waters import one_of
from core.message.wordfile import spelt

_WEIGHED: Final = frozenset({*GRAMS, *SPOONS, "mL"})
_ENDS: Final = frozenset({".", "!", "?", ";"})
_CLAUSE_ENDS: Final = frozenset({*_ENDS, ",", "(", ")", "|"})
_CHANGES: Final = frozenset({"water_change", "changing"})
_PAST: Final = frozenset({"was", "formerly"})
_MOST: Final = 4
"""Words of the longest phrase."""

_SECTIONS: Final = ("before", "past", "because", "so", "light", "joint", "now", "since")


@cache
def _words() -> dict[str, dict[str, frozenset[str]]]:
    """Each section's phrases by their first word.

    Raises
    ------
    ValueError
        If a line has no ``=`` or stands in no section.
    """
    found: dict[str, dict[str, set[str]]] = {section: {} for section in _SECTIONS}
    for section, _language, told in spelt("before_dose.txt", found):
        for way in told:
            found[section].setdefault(way.split()[0], set()).add(" ".join(way.split()))
    return {
        section: {first: frozenset(these) for first, these in by_first.items()}
        for section, by_first in found.items()
    }


def without(text: str) -> str | None:
    """A text, folded, without the words that place it before a deed; None where it has none.

    Examples
    --------
    >>> without("it was kh 2 before"), without("Vorher war KH 2"), without("kh was 2")
    ('it was kh 2', 'war kh 2', None)
    """
    plain = " ".join(fold(text).replace("'", " ").replace("’", " ").split())
    rest = " ".join(_any_of("before").sub(" ", plain).split())
    return None if rest == plain else rest


def asks_now(text: str) -> bool:
    """Whether a text tells what was and asks what is since: `it had gh 12, what is it now`.

    Examples
    --------
    >>> asks_now("tank had gh 12, what is it now"), asks_now("gh 12, what is it now")
    (True, False)
    """
    plain = " ".join(fold(text).split())
    asked = _any_of("now").search(plain)
    return asked is not None and tells_past(plain[: asked.start()])


def tells_past(text: str) -> bool:
    """Whether a word of a text tells what was, be it what was just measured: `kh was 9`.

    Examples
    --------
    >>> tells_past("kh was 9"), tells_past("el kh era 12"), tells_past("kh 9")
    (True, True, False)
    """
    tokens = cut(fold(text), lexicon(), text)
    return any(
        (token.kind == "mark" and token.value in _PAST) or _at(tokens, place, len(tokens), "past")
        for place, token in enumerate(tokens)
    )


def tells_since(text: str) -> bool:
    """Whether a text tells that what was is what was measured just now: `tested, kh was 5`.

    Examples
    --------
    >>> tells_since("tested, kh was 5"), tells_since("kh war danach 5"), tells_since("kh was 5")
    (True, True, False)
    """
    return _any_of("since").search(" ".join(fold(text).split())) is not None


@cache
def _any_of(section: str) -> re.Pattern[str]:
    ways = (way for each in _words()[section].values() for way in each)
    return re.compile(rf"(?<!\w)(?:{one_of(ways)})(?!\w)")


def part(tokens: list[Token]) -> None:
    """Part a dose from the value before it, and mark that value as an earlier one, in place."""
    if not _doses(tokens):
        return
    first = 0
    for place in range(len(tokens) + 1):
        if place == len(tokens) or tokens[place].kind == "nl" or tokens[place].text in _ENDS:
            _joints(tokens, first, place)
            first = place + 1
    first = 0
    for place in range(len(tokens) + 1):
        if place == len(tokens) or tokens[place].kind == "nl" or tokens[place].text in _CLAUSE_ENDS:
            _formerly(tokens, first, place)
            first = place + 1


def _doses(tokens: list[Token]) -> bool:
    """Whether a dose by its amount, or a change, is told beside the name of a value."""
    weighed = named = given = changed = False
    for token in tokens:
        weighed = weighed or (token.kind == "unit" and token.value in _WEIGHED)
        named = named or _names(token)
        given = given or _gives(token)
        changed = changed or token.value in _CHANGES
    return named and (changed or (weighed and given))


def _gives(token: Token) -> bool:
    if token.value in {"dose", "added"} or token.text in INTO:
        return True
    return token.kind == "word" and bought.is_word("give", token.text)


def _tells_deed(token: Token) -> bool:
    """Whether a token is of so much of a thing, or of a water change."""
    return token.value in _CHANGES or (token.kind == "unit" and token.value in _WEIGHED)


def _names(token: Token) -> bool:
    return token.kind == "analyte" or (token.kind == "unit" and "@" in str(token.value))


def _joints(tokens: list[Token], first: int, last: int) -> None:
    """Make a comma of each word between a dose and the value that led to it."""
    place = first + 1
    while place < last - 1:
        for section in ("because", "so"):
            size = _at(tokens, place, last, section)
            if size and _joins(tokens, (first, place), (place + size, last), section):
                if section == "so" and _at(tokens, place, last, "joint"):
                    _mark_past(tokens[first:place])
                tokens[place].kind, tokens[place].value, tokens[place].text = "p", ",", ","
                for token in tokens[place + 1 : place + size]:
                    token.kind = token.value = "fill"
                place += size - 1
                break
        place += 1


def _joins(
    tokens: list[Token], before: tuple[int, int], behind: tuple[int, int], section: str
) -> bool:
    led = tokens[slice(*before)], tokens[slice(*behind)]
    dose, value = led if section == "because" else led[::-1]
    if not any(map(_tells_deed, dose)) or any(map(_tells_deed, value)):
        return False
    named = any(map(_names, value)) and any(map(quantities.is_number, value))
    return named and _is_past(tokens, behind if section == "because" else before)


def _is_past(tokens: list[Token], span: tuple[int, int]) -> bool:
    first, last = span
    return any(
        (token.kind == "mark" and token.value in _PAST) or _told(tokens, place, last)
        for place, token in enumerate(tokens[first:last], first)
    )


def _mark_past(value: list[Token]) -> None:
    """Make the value that stood before a deed an earlier one: `kh was 9 before i changed`."""
    for token in value:
        if token.kind == "mark" and token.value == "was":
            token.value = "formerly"


def _formerly(tokens: list[Token], first: int, last: int) -> None:
    """Mark what tells of before the dose, in a clause of a value and no amount of a thing."""
    if not _is_past(tokens, (first, last)):
        return
    clause = tokens[first:last]
    if not any(map(_names, clause)) or not any(map(quantities.is_number, clause)):
        return
    if any(map(_tells_deed, clause)):
        return
    place = first
    while place < last:
        size = _told(tokens, place, last)
        light = 0 if size else _at(tokens, place, last, "light")
        for token in tokens[place : place + max(size, light)]:
            token.kind = token.value = "fill"
        if size:
            tokens[place].kind, tokens[place].value = "mark", "formerly"
        place += max(size, light, 1)


def _told(tokens: list[Token], place: int, last: int) -> int:
    return max(_at(tokens, place, last, section) for section in ("before", "past"))


def _at(tokens: list[Token], place: int, last: int, section: str) -> int:
    """How many tokens the longest phrase of a section takes from a place on; 0 for none."""
    ways = _words()[section].get(tokens[place].text.split(" ", 1)[0])
    if ways is None:
        return 0
    said, taken = "", 0
    for size, token in enumerate(tokens[place : min(place + _MOST, last)], 1):
        said = f"{said} {token.text}".strip()
        if said in ways:
            taken = size
    return taken
