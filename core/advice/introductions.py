"""Tanks told with who lives there: `got a 120l community tank, tetras and corys`.

Every word of such a message must be known: a class of ``introduced.txt``, a number with its unit,
an animal, or the tank's name behind a word for it. So a wish, a question and another's tank, which
have other words, introduce none.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from typing import Final, NamedTuple

from core.advice._livestock_words import plain_name
from core.advice.inhabitants import MOST
from core.advice.livestock import Found, is_head, lookup, name_at
from core.message.amounts import volume_litres
from core.message.fold import fold
from core.message.lexicon import meanings
from core.message.wordfile import patterns, spelt
from core.tank import Setup, TankKind

FILE: Final = "introduced.txt"
SECTIONS: Final = ("word", "aside")
LONGEST: Final = 40
"""More words than these introduce no tank."""

NAME_WORDS: Final = 2
"""Words of a name behind the word for a tank: tank living room 200 l."""

PHRASE: Final = 4
"""Words of the longest entry."""

_PART: Final = re.compile(r"\d+(?:[.,]\d+)?|[^\s\d,.;:!()\"]+")
_TYPED: Final = re.compile(r"[^\W\d]+")
_ASKING_FIRST: Final = frozenset(
    "is are ist sind est sont es son esta estan sao e sono zijn zit zitten jest sa ar live do does"  # noqa: SIM905
    " leben lebt vit vivent bor lever har hat has hast avez tienes tienen tem ha heeft ma".split()
)
"""Words that open a question where one stands first: is a betta in 20 l well."""
_KINDS: Final[dict[str, TankKind]] = {
    "fresh": "fresh", "marine": "marine", "brackish": "brackish", "reef": "marine", "pond": "pond",
}  # fmt: skip
_NOUNS: Final = frozenset({"tank", "pond", "reef"})
_TRAITS: Final = frozenset({*_KINDS, "planted", "community", "co2"})
_SAYING: Final = frozenset({"event", "ask", "command", "analyte", "unit", "several"})
"""Kinds of words that are no tank's name."""


class Animal(NamedTuple):
    """A kind that lives in a tank, in the keeper's words; its number where it was told."""

    said: str
    many: int | None


@dataclass(frozen=True, slots=True)
class Home:
    """A tank as it was introduced; what was not told is None."""

    volume_l: float | None = None
    name: str | None = None
    kind: TankKind | None = None
    setup: Setup | None = None
    co2: bool = False
    further: bool = False
    """Whether it is another than those on record, by its words."""
    animals: tuple[Animal, ...] = ()


class _Part(NamedTuple):
    """A piece of a message: what it is, and the value where it has one."""

    of: str
    value: object = None
    text: str = ""


def introduced(text: str, *, us_gallons: bool) -> tuple[Home, ...]:
    """The tanks of a message, each with its volume; empty where it introduces none.

    Examples
    --------
    >>> (home,) = introduced("got a 120l community tank, tetras and corys", us_gallons=True)
    >>> home.volume_l, [each.said for each in home.animals]
    (120.0, ['tetras', 'corys'])
    >>> introduced("i want to get a 200l tank", us_gallons=True)
    ()
    """
    parts = _read(text, us_gallons=us_gallons)
    if parts is None:
        return ()
    of = {part.of for part in parts}
    kept = not of.isdisjoint({"have", "home", "single"})
    lives = kept and not of.isdisjoint({"animal", "planted", "community"})
    if "volume" not in of or not (lives or _NOUNS & of):
        return ()  # 20 l fresh water
    if "name" in of and of.isdisjoint({"animal", "called", "further", *_TRAITS}):
        return ()  # tank leaked 20 l
    return tuple(_home(each) for each in _segments(parts))


def living_there(text: str) -> tuple[Animal, ...]:
    """The animals of `neocaridina in there`: nothing but kinds, and that they are inside.

    Examples
    --------
    >>> living_there("neocaridina in there"), living_there("neocaridina")
    ((Animal(said='neocaridina', many=None),), ())
    """
    parts = _read(text, us_gallons=True)
    if parts is None or not any(part.of == "inside" for part in parts):
        return ()
    if any(part.of in {"volume", "without", "name", *_TRAITS} for part in parts):
        return ()
    return _animals(parts)


def is_aside(text: str) -> bool:
    """Whether a text that tells of a tank tells of one that is wished for, seen or another's.

    Examples
    --------
    >>> is_aside("i want to get a 200l tank"), is_aside("i have a 200l tank")
    (True, False)
    """
    return _patterns()["aside"].search(fold(text)) is not None


@cache
def _patterns() -> Mapping[str, re.Pattern[str]]:
    return patterns(FILE, SECTIONS)


@cache
def _ways() -> dict[tuple[str, ...], frozenset[str]]:
    """Plain words → the classes that they are of."""
    found: dict[tuple[str, ...], frozenset[str]] = {}
    for section, meaning, ways in spelt(FILE, SECTIONS):
        for way in ways if section == "word" else ():
            words = tuple(_PART.findall(way))
            found[words] = found.get(words, frozenset()) | {meaning}
    return found


def _read(text: str, *, us_gallons: bool) -> list[_Part] | None:
    """A message as its parts; None where a word of it is of none."""
    if "?" in text or is_aside(text):
        return None
    words = _PART.findall(fold(text).replace("’", "'").replace("'", "' "))
    words = [word for word in _joined(words) if word not in {"-", "/", "'"}]
    if not 1 < len(words) <= LONGEST or words[0] in _ASKING_FIRST:
        return None
    typed = {fold(word): word for word in _TYPED.findall(text)}
    parts: list[_Part] = []
    place = 0
    while place < len(words):
        size, part = _at(words, place, parts, us_gallons=us_gallons)
        if part is None:
            return None
        parts += [each._replace(text=_as_typed(each.text, typed)) for each in part]
        place += size
    return parts


def _as_typed(plain: str, typed: Mapping[str, str]) -> str:
    """Words with the capitals and accents that the keeper gave them."""
    return " ".join(typed.get(word, word) for word in plain.split())


def _joined(words: list[str]) -> list[str]:
    """Elided words as the file has them: i've, it's, c'est."""
    out: list[str] = []
    for word in words:
        if out and out[-1].endswith("'") and (f"{out[-1]}{word}",) in _ways():
            out[-1] += word
        else:
            out.append(word)
    return out


def _at(
    words: list[str], place: int, before: list[_Part], *, us_gallons: bool
) -> tuple[int, list[_Part] | None]:
    """How many words the part at a place has, and what it is."""
    word = words[place]
    if word[0].isdigit():
        behind = words[place + 1] if place + 1 < len(words) else ""
        volume = volume_litres(f"{word} {behind}", us_gallons) if behind else None
        if volume is not None and not _animal_at(words, place + 1)[0]:
            return 2, [_Part("volume", volume)]
        counts = word.isdigit() and 0 < int(word) <= MOST
        return 1, [_Part("count", int(word))] if counts else None
    if before and before[-1].of == "called":
        return 1, [_Part("name", None, word)] if _may_name(word) else None
    size, said = _animal_at(words, place)
    named = bool(before) and before[-1].of == "name" and not _volume_said(before)
    if size and not (named and tuple(words[place : place + 1]) not in _ways()):
        return size, [_Part("animal", None, said)]
    for length in range(min(PHRASE, len(words) - place), 0, -1):
        found = _ways().get(tuple(words[place : place + length]))
        if found is not None:
            text = " ".join(words[place : place + length])
            if "animal" in found:
                return length, [_Part("animal", None, text)]
            return length, [_Part(of, None, text) for of in sorted(found)]
    number = [int(name) for kind, name in meanings(word) if kind == "count" and name.isdigit()]
    if number:
        return 1, [_Part("count", number[0])]
    names = sum(part.of == "name" for part in before)
    at_name = any(p.of in _NOUNS for p in before) and before[-1].of in {*_NOUNS, "name"}
    if at_name and names < NAME_WORDS and _may_name(word) and not _volume_said(before):
        return 1, [_Part("name", None, word)]
    return 1, None


def _volume_said(before: list[_Part]) -> bool:
    return any(part.of == "volume" for part in before)


def _may_name(word: str) -> bool:
    return word[0].isalpha() and not any(kind in _SAYING for kind, _name in meanings(word))


def _animal_at(words: list[str], place: int) -> tuple[int, str]:
    """An animal's name at a place, of one kind or of several (tetras): how many words it is."""
    plain = [plain_name(word) for word in words[place:]]
    size, found = name_at(plain, 0)
    if size and _lives_there(found):
        return size, " ".join(words[place : place + size])
    if plain and len(plain[0]) > 3 and not size and (plain[0],) not in _ways():
        found = lookup(plain[0])
        if (is_head(plain[0]) or found.shared) and _lives_there(found):
            return 1, words[place]
    return 0, ""


def _lives_there(found: Found) -> bool:
    rows = (found.species, *found.candidates)
    return any(row is not None and row.is_animal for row in rows)


def _segments(parts: list[_Part]) -> list[list[_Part]]:
    """The parts of each tank: a new one begins at the last "and" before a further volume."""
    volumes = [place for place, part in enumerate(parts) if part.of == "volume"]
    cuts = [0]
    for place in volumes[1:]:
        start = place
        while start and parts[start - 1].of in {"one", "light", "further", "and", "have", "look"}:
            start -= 1
        cuts.append(start)
    return [parts[a:b] for a, b in zip(cuts, [*cuts[1:], len(parts)], strict=True)]


def _home(parts: list[_Part]) -> Home:
    of = [part.of for part in parts]
    volume = next(part.value for part in parts if part.of == "volume")
    name = " ".join(part.text for part in parts if part.of == "name") or None
    animals = _animals(parts)
    kind = next((_KINDS[each] for each in of if each in _KINDS), _water_of(animals))
    setup: Setup | None = "reef" if "reef" in of else "planted" if _has(of, "planted") else None
    home = Home(float(str(volume)), name, kind, setup, _has(of, "co2"), "further" in of, animals)
    return replace(home, setup="unplanted") if "planted" in of and setup is None else home


def _has(of: Sequence[str], what: str) -> bool:
    """Whether a thing is told to be there: not `no plants`."""
    return any(each == what and of[n - 1 : n] != ["without"] for n, each in enumerate(of))


def _animals(parts: list[_Part]) -> tuple[Animal, ...]:
    """Each kind with the number that stands before it; one of a lone kind that `is` there."""
    found: list[Animal] = []
    many: int | None = None
    alone = sum(part.of == "animal" for part in parts) == 1
    single = alone and any(part.of == "single" for part in parts)
    for place, part in enumerate(parts):
        if part.of in {"count", "one"}:
            many = int(str(part.value or 1))
        elif part.of == "animal" and parts[max(place - 1, 0)].of != "without":
            behind = parts[place + 1].of if place + 1 < len(parts) else ""
            of_tank = behind in _NOUNS  # a shrimp tank
            found.append(Animal(part.text, None if of_tank else many or (1 if single else None)))
            many = None
        elif part.of != "look":
            many = None
    return tuple(found)


def _water_of(animals: Sequence[Animal]) -> TankKind | None:
    """The water that all kinds of a tank live in, where that is the sea."""
    waters = [_waters(lookup(each.said)) for each in animals]
    return "marine" if waters and all(each == {"marine"} for each in waters) else None


def _waters(found: Found) -> set[str]:
    return {row.water for row in (found.species, *found.candidates) if row is not None}
