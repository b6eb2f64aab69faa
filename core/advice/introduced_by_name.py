"""Tanks told by a name and how much each holds: `kitchen 200 l and bedroom 54 l`, `left tank 60 l`.

told = [ head ] part { [ "," | ";" | "." | newline | "and" ] part }
head = [ "i have" | "my" ] [ number ] "tanks" [ "are" ] [ ":" ]
part = [ "the" ] [ "tank" ] name [ "tank" ] [ "is" | ":" ] volume { kind of water, animal }

A list needs nothing but names that mean nothing else; of one tank the name must tell a place, have
a number, or a capital behind the word for a tank: `tank Coral 100 l`. Behind a head, or beside a
name that means nothing else, a word that is also a kind, a colour or a cube is a name as well, and
so is a size with `one`: `Betty 40 l, Cube 30 l and Big one 240 l`.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from typing import Final, NamedTuple

from core.advice.introduction_parts import (
    BESIDE,
    BESIDE_SECTIONS,
    FILE,
    KINDS,
    SECTIONS,
    is_aside,
    may_name,
    read,
)
from core.advice.introductions import Animal, Home, home_of
from core.advice.livestock import lookup
from core.message.described import ways as described
from core.message.fold import fold
from core.message.kinds import is_called
from core.message.lexicon import lexicon, meanings
from core.message.numbered import HOMES, places
from core.message.wordfile import patterns, spelt
from core.schedule.words import languages
from core.tank import TankKind

LEAST: Final = 5.0
"""Less water under a name is a jug more often than a tank; ours. [L]"""
LONGEST: Final = 160
"""A longer text says more. [characters]"""
WORDS: Final = 2
"""Words of a name, without its number."""

_SIZED: Final = re.compile(r"(?P<head>[^\d]{1,40}?(?: \d{1,2})?)[\s:=]{1,3}(?P<rest>\d.*)$")
_HEAD: Final = re.compile(r"(?P<head>[^:,.;\n]{4,40})[:,.;\n]\s*(?P<rest>\S.*)$", re.DOTALL)
_SIDE_BY_SIDE: Final = re.compile(r"[^\W\d][^\d]{0,40}\d[\d.,]*\s*[^\W\d]*")
"""A name with its volume, beside others with nothing between them."""
MANY: Final = 2
"""So many tanks at least a list names."""
_ONE: Final = frozenset({"one", "eins", "un", "uno", "um", "een", "jeden", "ett"})
"""Behind a word for a tank the number of the first: tank one."""
_BESIDE: Final = frozenset(
    {"volume", "light", "planted", "community", "co2", "with", "animal", "count", *KINDS}
)
_BEFORE: Final = frozenset({"light", "have", "article", "one", "and"})
_BEHIND: Final = frozenset({"single", "have", "home"})
_OF_KIND: Final = frozenset({*KINDS, "planted", "community", "shrimps"})
"""Words for what a tank is, which tell it by that: a reef of 200 l."""
_OF_LOOK: Final = frozenset({"look", "bare", "tank"})
"""Words that are a kind's name as well, and tell how a thing looks or what it is: blue, nano."""


def introduced_by_name(text: str, *, us_gallons: bool) -> tuple[Home, ...]:
    """The tanks of a text that names each with its volume; empty where it tells anything else.

    Those of which nothing tells that they are tanks are `loosely` told.

    Examples
    --------
    >>> told = introduced_by_name("kitchen 200 l and bedroom 54 l", us_gallons=True)
    >>> [(home.name, home.volume_l) for home in told]
    [('kitchen', 200.0), ('bedroom', 54.0)]
    >>> [home.name for home in introduced_by_name("tanks: A 100l, B 100l", us_gallons=True)]
    ['A', 'B']
    >>> [home.name for home in introduced_by_name("left tank 60 l", us_gallons=True)]
    ['left']
    >>> [home.name for home in introduced_by_name("tank 1 60 l, tank 2 90 l", us_gallons=True)]
    ['tank 1', 'tank 2']
    >>> told = introduced_by_name("2 ponds: front 2000l back 6000l", us_gallons=True)
    >>> [(home.name, home.volume_l, home.kind) for home in told]
    [('front', 2000.0, 'pond'), ('back', 6000.0, 'pond')]
    >>> introduced_by_name("3 ponds: front 2000l back 6000l", us_gallons=True)
    ()
    >>> told = introduced_by_name("tanks: Betty 40 l, Cube 30 l, Big one 240 l", us_gallons=True)
    >>> [home.name for home in told]
    ['Betty', 'Cube', 'Big one']
    >>> introduced_by_name("2 tanks: shrimp 30 l and betta 60 l", us_gallons=True)
    ()
    >>> introduced_by_name("bath 200 l", us_gallons=True)
    ()
    >>> introduced_by_name("bucket 20 l, jug 5 l", us_gallons=True)
    ()
    """
    plain = fold(text).strip(" .!")
    if "?" in text or len(text) > LONGEST or len(plain) > len(text) or is_aside(text):
        return ()
    if _blocked().search(plain):
        return ()
    said = text.strip(" .!")
    headed = _headed(said)
    parts = [
        each for each in _joints().split(said if headed is None else headed.rest) if each.strip()
    ]
    if headed is not None and len(parts) < headed.many:
        parts = [each for part in parts for each in _SIDE_BY_SIDE.findall(part)]
    parts = _with_volumes(parts)
    listed = headed is not None or _any_name(parts)
    homes = [_home(part, us_gallons=us_gallons, listed=listed) for part in parts]
    found = [home for home in homes if home is not None]
    if not found or len(found) < len(homes):
        return ()
    kinds = [_tells_kind(home.name or "") for home in found]
    if listed and (all(kinds) or any(_of_class(home.name or "") for home in found)):
        return ()  # reef 200 l and planted 90 l: told by what they are
    if headed is not None:
        if len(found) != (headed.many or max(MANY, len(found))):
            return ()
        found = [replace(each, kind=each.kind or headed.kind, loosely=False) for each in found]
    names = {fold(home.name or "") for home in found}
    alone = len(found) == 1 and not _tells_apart(found[0], said)
    return () if alone or len(names) < len(found) else tuple(found)


def _with_volumes(parts: list[str]) -> list[str]:
    """Names and volumes between commas as parts of both: kitchen, 40 litres; hall, 100 litres."""
    plain = [part.strip() for part in parts]
    names, volumes = plain[::2], plain[1::2]
    apart = len(names) == len(volumes) and all(each[0].isdigit() for each in volumes)
    if not plain or not apart or any(map(str.isdigit, "".join(names))):
        return parts
    return [f"{name} {volume}" for name, volume in zip(names, volumes, strict=True)]


def _any_name(parts: Sequence[str]) -> bool:
    """Whether one part of a list has a name that means nothing else, or all have capitals."""
    heads = [found["head"].strip(" :=") for part in parts if (found := _SIZED.match(part.strip()))]
    if not MANY <= len(parts) == len(heads) or any(map(_of_class, heads)):
        return False
    bare = [_bare(words)[0] or words[-1:] for head in heads if (words := re.split(r"[\s:]+", head))]
    if any(is_name(words, is_tank=False) for words in bare):
        return True
    exact = all(_tells_kind(" ".join(words)) for words in bare)
    return all(words[0][:1].isupper() for words in bare) and not exact


def _tells_kind(name: str) -> bool:
    """Whether a name is a word for what a tank is or holds: reef, shrimp, guppies; not Betty."""
    words = [word for word in fold(name).split() if not word.isdigit()]
    words = [word for word in words if word not in described()["vessel"]] or words
    of = [_of().get(word, frozenset()) for word in words]
    if any(each & _OF_KIND for each in of):
        return True
    return not all(each & _OF_LOOK for each in of) and is_called(" ".join(words))


def _of_class(name: str) -> bool:
    return any(_of().get(word, frozenset()) & _OF_KIND for word in fold(name).split())


class _Headed(NamedTuple):
    """How many tanks a list says that it names (0: not told), their kind of water, and the list."""

    many: int
    kind: TankKind | None
    rest: str


def _headed(said: str) -> _Headed | None:
    """The head of `i have 2 ponds: front 2000 l, back 6000 l`; None where there is none."""
    found = _HEAD.match(said)
    words = [] if found is None else re.split(r"[\s:,]+", fold(found["head"]).strip(" :,"))
    while words and _of().get(words[0], frozenset()) & _BEFORE and _count(words[0]) < MANY:
        words = words[1:]
    count = _count(words[0]) if words else 0
    listed = not count and found is not None and found[0][len(found["head"])] == ":"
    words = ["", *words] if listed else words  # my tanks: how many they are is not told
    ponds = frozenset(described()["ponds"])
    classes = [frozenset({"pond"} & {*KINDS}) if word in ponds else _of().get(word, frozenset())
               for word in words[1:]]  # fmt: skip
    if found is None or (count < MANY and not listed) or not classes:
        return None
    if not all(each & {"tank", *KINDS} for each in classes):
        return None
    kind = next((KINDS[of] for each in classes for of in each if of in KINDS), None)
    return _Headed(count, kind, found["rest"])


def _count(word: str) -> int:
    """How many a figure or a number in words is; 0 where it is none."""
    if word.isdigit():
        return int(word)
    said = (of.get("number") for each in languages() for way, of in each.phrases.get(word, ())
            if len(way) == 1)  # fmt: skip
    return next((each for each in said if isinstance(each, int)), 0)


def _tells_apart(home: Home, said: str) -> bool:
    """Whether a name tells a tank by itself: by its place or number, or a capital within a line."""
    name = home.name or ""
    called = not home.loosely and name[0].isupper() and said.find(name) > 0
    return fold(name) in places() or name[-1].isdigit() or called


@cache
def _joints() -> re.Pattern[str]:
    ways = [way for _, of, ways in spelt(FILE, SECTIONS) for way in ways if of == "and"]
    words = "|".join(re.escape(way) for way in sorted(ways, key=len, reverse=True))
    return re.compile(rf"[,;\n]|\.(?=\s)|(?<=\s)(?:{words})(?=\s)")


@cache
def _blocked() -> re.Pattern[str]:
    return patterns(BESIDE, BESIDE_SECTIONS)["block"]


@cache
def _of() -> dict[str, frozenset[str]]:
    """Word → its classes, for words that may stand beside a name."""
    found: dict[str, frozenset[str]] = {}
    for file, sections in ((FILE, SECTIONS), (BESIDE, BESIDE_SECTIONS)):
        for section, of, ways in spelt(file, sections):
            for way in ways if section == "word" else ():
                found[way] = found.get(way, frozenset()) | {of}
    return found


def _home(part: str, *, us_gallons: bool, listed: bool) -> Home | None:
    """The tank of one part; None where it is not a name with its volume.

    In a list a word that means something else may be a name; a kind in small letters lives there.
    """
    sized = _SIZED.match(part.strip())
    if sized is None:
        return None
    parts = read(sized["rest"], us_gallons=us_gallons)
    volumes = [each for each in parts or () if each.of == "volume"]
    if parts is None or len(volumes) != 1 or parts[0].of != "volume":
        return None
    if any(each.of not in _BESIDE for each in parts) or float(str(volumes[0].value)) < LEAST:
        return None
    head = re.split(r"[\s:]+", sized["head"].strip(" :="))
    words, is_tank = _bare(head)
    if listed and not words:
        words = [word for word in head if "home" not in {of for _, of in meanings(fold(word))}][-1:]
    numbered = False
    last = [fold(word) for word in head[-2:]]
    if len(last) == len(head[-2:]) == WORDS and "tank" in _of().get(last[0], ()):
        if last[1].isdigit() and len(words) == 1:
            words = head[-2:]  # tank 2 90 l: the word for a tank with its number
            numbered = int(words[1]) < HOMES
        elif _number_word(last[1]) and len(words) <= 1:
            words, numbered = head[-2:], True  # tank two 90 l
    with_one = listed and len(words) == WORDS and "one" in _of().get(fold(words[1]), ())
    if not numbered and not is_name(words[:1] if with_one else words, is_tank=is_tank or listed):
        return None
    home, name = home_of(parts), " ".join(words)
    if listed and name.islower() and _tells_kind(name):
        home = replace(home, animals=(Animal(name, None), *home.animals))
    kinds = [of for word in words for of in _of().get(fold(word), ()) if of in KINDS]
    kind = home.kind or next((KINDS[of] for of in kinds), None)
    if not numbered and len(words) == 1 and fold(head[-1]) in described()["vessel"]:
        name = " ".join(dict.fromkeys((*words, head[-1])))  # shrimp cube 30 l
    return replace(home, name=name, kind=kind, loosely=not is_tank, told_by=None)


def _number_word(word: str) -> bool:
    """Whether a plain word is a number that may tell a tank: one, two."""
    return 0 < _count(word) < HOMES or word in _ONE


def _bare(words: list[str]) -> tuple[list[str], bool]:
    """The words of a name without those around it, and whether one of them was for a tank."""
    of, is_tank = _of(), False
    while words and (classes := of.get(fold(words[0]), frozenset())) & {*_BEFORE, "tank"}:
        if len(words[0]) == 1 and len(words) == 1:
            break  # a letter is a name as well: a 100 l, b 100 l
        is_tank = is_tank or "tank" in classes
        words = words[1:]
    while words and (classes := of.get(fold(words[-1]), frozenset())) & {*_BEHIND, "tank"}:
        is_tank = is_tank or "tank" in classes
        words = words[:-1]
    return words, is_tank


def is_article(word: str) -> bool:
    """Whether a plain word is an article of one of the languages, and no English word.

    Examples
    --------
    >>> is_article("den"), is_article("the"), is_article("mit")
    (True, False, False)
    """
    english = "en" in lexicon().languages.get(word, ())
    return not english and "article" in _of().get(word, frozenset())


def is_name(words: Sequence[str], *, is_tank: bool) -> bool:
    """Whether words may be a tank's name; a kind of animal only behind a word for a tank."""
    said = [*words[:-1]] if words and words[-1].isdigit() else [*words]
    if not 0 < len(said) <= WORDS:
        return False
    for word in said:
        plain = fold(word)
        if not word.isalpha() or (plain not in places() and not may_name(plain)):
            return False
        found = lookup(plain)
        means = set() if plain in places() else {kind for kind, _ in meanings(plain)} - {"fill"}
        kept = found.species is None and not found.candidates and not means
        if ("time" in means and len(plain) > 1) or not (is_tank or kept):
            return False
    return True
