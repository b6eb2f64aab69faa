"""Texts all of whose words are of a file's classes, numbers with their units apart.

A file has ``[word]`` (a class a line; ``light`` has no weight) and ``[unit]`` (what may stand
behind a number). Of a text with any other word nothing is known: it may say more.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from functools import cache
from typing import Final, NamedTuple

from core.message.fold import fold
from core.message.lexicon import meanings
from core.message.once import once
from core.message.wordfile import spelt

LONGEST: Final = 24
"""More words than these say more than one thing."""

PHRASE: Final = 6
"""Words of the longest entry."""

_PART: Final = re.compile(r"\d+(?:[.,]\d+)?|[^\s\d,.;:!?¿¡()\"'’]+['’]?|['’]")
"""A number, or a word; what ends in an apostrophe (l', d', dell') stands apart."""

_NUMBER: Final = re.compile(r"\d{1,6}(?:[.,]\d{1,4})?")


class Number(NamedTuple):
    """A number of a text, and the class of the unit behind it."""

    value: float
    unit: str | None = None


class Said(NamedTuple):
    """The classes of a text's words in the order said, and its numbers."""

    classes: tuple[str, ...]
    numbers: tuple[Number, ...]

    def has(self, *names: str) -> bool:
        """Whether it has a word of each of some classes."""
        return set(names) <= set(self.classes)

    def of(self, unit: str | None) -> float | None:
        """The one number with a unit; None where there is none or more than one."""
        found = [each.value for each in self.numbers if each.unit == unit]
        return found[0] if len(found) == 1 else None


SMALL: Final = "small.txt"
"""Words without weight that a file may take beside its own."""


class _Ways(NamedTuple):
    """Plain words → the class that they are of, and first words → how many they are, most first."""

    classes: Mapping[str, str]
    sizes: Mapping[str, tuple[int, ...]]


@cache
def _ways(file: str, small: bool = False) -> Mapping[str, _Ways]:
    """The entries of each section; the first class that has the same words counts."""
    found: dict[str, dict[str, str]] = {"word": {}, "unit": {}}
    for name in (file, SMALL) if small else (file,):
        for section, meaning, told in spelt(name):
            for way in told if section in found else ():
                found[section].setdefault(" ".join(_PART.findall(way)), meaning)
    return {section: _Ways(ways, _sizes(ways)) for section, ways in found.items()}


def _sizes(ways: Iterable[str]) -> Mapping[str, tuple[int, ...]]:
    sizes: dict[str, set[int]] = {}
    for words in map(str.split, ways):
        sizes.setdefault(words[0], set()).add(min(len(words), PHRASE))
    return {first: tuple(sorted(of, reverse=True)) for first, of in sizes.items()}


@once
def _parts(text: str) -> tuple[str, ...]:
    """The words and numbers of a text, plain."""
    return tuple(_PART.findall(fold(text)))


@once
def _weighty(text: str) -> frozenset[str]:
    """The words of a text that are no numbers and not without weight everywhere."""
    words = {word for word in _parts(text) if not _NUMBER.fullmatch(word)}
    return frozenset(w for w in words if all(kind != "fill" for kind, _name in meanings(w)))


@cache
def _vocabulary(file: str, small: bool) -> frozenset[str]:
    """All words of a file, whatever they are beside."""
    return frozenset(
        word for of in _ways(file, small).values() for way in of.classes for word in way.split()
    )


def said(file: str, text: str, *, small: bool = False) -> Said | None:
    """What a text says by the classes of a file; None where a word of it is of none.

    With `small` the words of ``small.txt`` have no weight either.

    Examples
    --------
    >>> told = said("kit_check.txt", "Is my KH kit right? It shows 5")
    >>> told.has("kit", "right", "kh"), told.of(None)
    (True, 5.0)
    >>> said("kit_check.txt", "is my kh kit right for shrimps") is None
    True
    """
    words = _parts(text)
    if not 0 < len(words) <= LONGEST:
        return None
    if not _weighty(text) <= _vocabulary(file, small):
        return None  # most texts are about something else, which a word tells
    ways = _ways(file, small)
    classes: list[str] = []
    numbers: list[Number] = []
    place = 0
    while place < len(words):
        size, of = _at(words, place, ways["word"])
        if size:
            classes += [of] if of != "light" else []
        elif _NUMBER.fullmatch(words[place]):
            size, unit = _at(words, place + 1, ways["unit"])
            value = float(words[place].replace(",", "."))
            numbers.append(Number(value, unit if size else None))
            classes.append("number")
            size += 1
        elif any(kind == "fill" for kind, _name in meanings(words[place])):
            size = 1
        else:
            return None
        place += size
    return Said(tuple(classes), tuple(numbers))


def is_small(word: str) -> bool:
    """Whether a plain word is one of those without weight.

    Examples
    --------
    >>> is_small("ca"), is_small("gh")
    (True, False)
    """
    return word in _ways(SMALL)["word"].classes


def opens_with(file: str, text: str, name: str) -> bool:
    """Whether the first words of a text are of a class of a file, whatever the others are."""
    return _at(_parts(text), 0, _ways(file)["word"])[1] == name


def _at(words: Sequence[str], place: int, ways: _Ways) -> tuple[int, str]:
    """How many words the longest entry at a place has, and its class; 0 where there is none."""
    for size in ways.sizes.get(words[place], ()) if place < len(words) else ():
        found = ways.classes.get(" ".join(words[place : place + size]))
        if found is not None and place + size <= len(words):
            return size, found
    return 0, ""


def classes_in(file: str, text: str) -> frozenset[str]:
    """The classes of a file that words of a text are of, whatever its other words are."""
    words = _PART.findall(fold(text))
    ways, found, place = _ways(file)["word"], set[str](), 0
    while place < len(words):
        size, of = _at(words, place, ways)
        found |= {of} if size else set()
        place += size or 1
    return frozenset(found)


def stripped(file: str, text: str, names: frozenset[str]) -> tuple[str, frozenset[str]]:
    """A text, folded, without the words of some classes before and behind it, and their classes."""
    words = _parts(text)
    ways, taken = _ways(file)["word"], set[str]()
    first, last = 0, len(words)
    while first < last:
        size, of = _at(words, first, ways)
        if of not in names:
            break
        taken.add(of)
        first += size
    for place in range(last - 1, first - 1, -1):
        size, of = _at(words[:last], place, ways)
        if size == last - place and of in names:
            taken.add(of)
            last = place
        elif last - place >= PHRASE:
            break
    return " ".join(words[first:last]), frozenset(taken)
