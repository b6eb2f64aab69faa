"""The words of a message that introduces a tank, each as what it is."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from typing import Final, NamedTuple

from core.advice._livestock_words import plain_name
from core.advice.inhabitants import MOST, number_in
from core.advice.livestock import Found, is_head, lookup, name_at
from core.message.amounts import volume_litres
from core.message.fold import fold
from core.message.lexicon import meanings
from core.message.wordfile import patterns, spelt
from core.tank import TankKind

FILE: Final = "introduced.txt"
SECTIONS: Final = ("word", "aside")
BESIDE: Final = "introduced_beside.txt"
BESIDE_SECTIONS: Final = ("word", "block", "supply", "opening", "parts", "held")
LONGEST: Final = 40
"""More words than these introduce no tank."""

NAME_WORDS: Final = 2
"""Words of a name behind the word for a tank: tank living room 200 l."""

PHRASE: Final = 4
"""Words of the longest entry."""

_PART: Final = re.compile(r"\d+(?:[.,]\d+)?|[^\s\d,.;:!()\"]+")
_ALL: Final = re.compile(rf"{_PART.pattern}|[,.;:!()\n]")
_BREAKS: Final = frozenset(",.;:!()\n")
_SO_MUCH: Final = re.compile(r"\d\s{0,2}[a-z]{1,7}\.?\s+(?:(?:of|de|di|van|av)\s+)?$")
"""A number with its unit, and nothing between it and what follows."""
_TYPED: Final = re.compile(r"[^\W\d]+")
_ASKING_FIRST: Final = frozenset(
    "is are ist sind est sont es son esta estan sao e sono zijn zit zitten jest sa ar live do does"  # noqa: SIM905
    " leben lebt vit vivent bor lever har hat has hast avez tienes tienen tem ha heeft ma".split()
)
"""Words that open a question where one stands first: is a betta in 20 l well."""
KINDS: Final[dict[str, TankKind]] = {
    "fresh": "fresh", "marine": "marine", "brackish": "brackish", "reef": "marine", "pond": "pond",
}  # fmt: skip
NOUNS: Final = frozenset({"tank", "pond", "reef"})
TRAITS: Final = frozenset({*KINDS, "planted", "community", "co2"})
_DAYS: Final = {"day": 1, "week": 7, "month": 30}
_BEHIND_NUMBER: Final = frozenset({"years", "gear unit"})
_ELSE: Final = frozenset({"event", "ask", "command", "substance", "analyte"})
_ELSE_MARKS: Final = frozenset({"wish", "may", "whether", "if", "not"})
"""What an unknown word must not be: a deed, a question, a wish."""
_SAYING: Final = frozenset({"event", "ask", "command", "analyte", "unit", "several"})
"""Kinds of words that are no tank's name."""


class Part(NamedTuple):
    """A piece of a message: what it is, and the value where it has one."""

    of: str
    value: object = None
    text: str = ""


def is_aside(text: str) -> bool:
    """Whether a text that tells of a tank tells of one that is wished for, seen or another's.

    Examples
    --------
    >>> is_aside("i want to get a 200l tank"), is_aside("i have a 200l tank")
    (True, False)
    """
    return _patterns()["aside"].search(fold(text)) is not None


def plainly(text: str) -> str:
    """A text without what opens it and says nothing, and how long a tank was kept as all say it.

    Examples
    --------
    >>> plainly("ok i got a 10 gallon"), plainly("reef tank, 300 litres with the sump")
    ('i got a 10 gallon', 'reef tank, 300 litres')
    >>> plainly("29 gallon tank, had it about 2 months"), plainly("i had it drained")
    ('29 gallon tank, running for 2 months', 'i had it drained')
    """
    plain = fold(text)
    if len(plain) != len(text):
        return text
    found = _beside()
    for of, instead in (("held", "running for"), ("parts", "")):
        for told in reversed([*found[of].finditer(plain)]):
            behind = _NUMBERED.match(plain, told.end())
            own = plain[told.end() : told.end() + SOON].lstrip(" (:,=")[:1].isdigit()
            if not own if of == "parts" else behind is not None:
                text = f"{text[: told.start()]}{instead}{text[told.end() :]}"
                count = "" if of == "parts" or behind is None else behind[1]
                if of == "held" and (number := number_in(count)) is not None:
                    text = text.replace(f" {count} ", f" {number} ", 1)
                plain = fold(text)
    opened = found["opening"].match(plain)
    while opened is not None and len(plain) > opened.end():
        text = text[opened.end() :].lstrip(" ,.!:;")
        plain = fold(text)
        opened = found["opening"].match(plain)
    return text.strip()


SOON: Final = 8
"""Characters behind a sump in which its own litres may begin."""
_NUMBERED: Final = re.compile(
    r"\s(?:(?:about|ca|etwa|environ|circa|around)\s)?([^\W_]{1,12})\s[a-z]"
)
"""So many behind how long: about two months."""


@cache
def _patterns() -> Mapping[str, re.Pattern[str]]:
    return patterns(FILE, SECTIONS)


@cache
def _beside() -> Mapping[str, re.Pattern[str]]:
    return patterns(BESIDE, BESIDE_SECTIONS)


def _blocked() -> re.Pattern[str]:
    return _beside()["block"]


def _without_supply(plain: str) -> str:
    """A text without what its tank is filled with: `40 l betta tank, tap water`."""
    return _beside()["supply"].sub(" ", plain)


def _holds_supply(plain: str) -> bool:
    """Whether a volume is one of new water: `20 l of ro water`."""
    return any(_SO_MUCH.search(plain[: it.start()]) for it in _beside()["supply"].finditer(plain))


@cache
def _ways(loosely: bool = False) -> dict[tuple[str, ...], frozenset[str]]:
    """Plain words → the classes that they are of."""
    found: dict[tuple[str, ...], frozenset[str]] = {}
    entries = [*spelt(FILE, SECTIONS), *(spelt(BESIDE, BESIDE_SECTIONS) if loosely else ())]
    for section, meaning, ways in entries:
        for way in ways if section == "word" else ():
            words = tuple(_PART.findall(way))
            found[words] = found.get(words, frozenset()) | {meaning}
    return found


def read(text: str, *, us_gallons: bool, loosely: bool = False) -> list[Part] | None:
    """A message as its parts; None where a word of it is of none, or says that it is no telling.

    With `loosely` words of no class are parts as well, ``unknown``, unless they are a deed, a
    question or a wish, and what parts a sentence is a ``break``.
    """
    if "?" in text or is_aside(text := plainly(text)):
        return None
    plain = fold(text).replace("’", "'")
    if loosely and (_holds_supply(plain) or _blocked().search(plain := _without_supply(plain))):
        return None
    words = (_ALL if loosely else _PART).findall(plain.replace("'", "' "))
    words = [word for word in _joined(words) if word not in {"-", "/", "'"}]
    if not 1 < len(words) <= LONGEST or words[0] in _ASKING_FIRST:
        return None
    typed = {fold(word): word for word in _TYPED.findall(text)}
    parts: list[Part] = []
    place = 0
    while place < len(words):
        look = _loosely_at if loosely else _at
        size, part = look(words, place, parts, us_gallons=us_gallons)
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
    words: list[str], place: int, before: list[Part], *, us_gallons: bool
) -> tuple[int, list[Part] | None]:
    """How many words the part at a place has, and what it is."""
    word = words[place]
    if word[0].isdigit():
        behind = words[place + 1] if place + 1 < len(words) else ""
        volume = volume_litres(f"{word} {behind}", us_gallons) if behind else None
        if volume is not None and not _animal_at(words, place + 1)[0]:
            return 2, [Part("volume", volume, f"{word} {behind}")]
        counts = word.isdecimal() and 0 < int(word) <= MOST
        return 1, [Part("count", int(word))] if counts else None
    if before and before[-1].of == "called":
        return 1, [Part("name", None, word)] if may_name(word) else None
    size, said = _animal_at(words, place)
    named = bool(before) and before[-1].of == "name" and not _volume_said(before)
    if size and not (named and tuple(words[place : place + 1]) not in _ways()):
        return size, [Part("animal", None, said)]
    length, of = _class_at(words, place)
    if length:
        return length, of
    number = [int(name) for kind, name in meanings(word) if kind == "count" and name.isdigit()]
    if number:
        return 1, [Part("count", number[0])]
    names = sum(part.of == "name" for part in before)
    at_name = any(p.of in NOUNS for p in before) and before[-1].of in {*NOUNS, "name"}
    if at_name and names < NAME_WORDS and may_name(word) and not _volume_said(before):
        return 1, [Part("name", None, word)]
    return 1, None


def _class_at(
    words: list[str], place: int, *, loosely: bool = False
) -> tuple[int, list[Part] | None]:
    """How many words the longest entry at a place has, and its classes; 0 where none is there."""
    ways = _ways(loosely)
    for length in range(min(PHRASE, len(words) - place), 0, -1):
        found = ways.get(tuple(words[place : place + length]))
        if found is None or found <= _BEHIND_NUMBER:
            continue
        text = " ".join(words[place : place + length])
        if "animal" in found:
            return length, [Part("animal", None, text)]
        return length, [Part(of, None, text) for of in _in_order(found - _BEHIND_NUMBER)]
    return 0, None


def _in_order(classes: frozenset[str]) -> list[str]:
    """The classes of one entry, the one that closes a span of time before all others."""
    return sorted(classes, key=lambda of: (of != "old", of))


def _loosely_at(
    words: list[str], place: int, before: list[Part], *, us_gallons: bool
) -> tuple[int, list[Part] | None]:
    """As `_at`, for any words: of no class is `unknown`, None what tells of something else."""
    word, behind = words[place], words[place + 1] if place + 1 < len(words) else ""
    if word in _BREAKS:
        return 1, [Part("break", None, word)]
    end = next((n for n in range(place, len(words)) if words[n] in _BREAKS), len(words))
    words = words[:end]
    if word[0].isdigit() and behind:
        ways = _ways(True).get((behind,), frozenset())
        if (days := _days(word, behind, ways)) is not None:
            return 2, [Part("span", days, f"{word} {behind}")]
        if "gear unit" in ways:
            return 2, [Part("gear", None, f"{word} {behind}")]
    length, of = _class_at(words, place, loosely=True)
    sure = length > 1 or any(part.of in {"gear", "begun"} for part in of or ())
    if sure and not _animal_at(words, place)[0]:
        return length, of
    if any(part.of == "reef" for part in of or ()) and lookup(plain_name(word)).species is None:
        return length, of  # corals, no kind of them
    size, part = _at(words, place, _unnamed(before), us_gallons=us_gallons)
    if length and not (part and part[0].of in {"animal", "name"}):
        return length, of
    if part is not None:
        return size, part
    if word[0].isdigit():
        return 1, [Part("number", None, word)]
    said = meanings(word)
    if any(kind in _ELSE or (kind == "mark" and name in _ELSE_MARKS) for kind, name in said):
        return 1, None
    return 1, [Part("unknown", None, word)]


def _unnamed(before: list[Part]) -> list[Part]:
    """What stands before a word, without a word for a tank that would make it a name."""
    return [part if part.of not in NOUNS else Part("light") for part in before]


def _days(number: str, unit: str, ways: frozenset[str]) -> float | None:
    """How many days a number of days, weeks, months or years is."""
    many = float(number.replace(",", "."))
    named = [name for kind, name in meanings(unit) if kind == "time" and name in _DAYS]
    if named:
        return many * _DAYS[str(named[0])]
    return many * 365 if "years" in ways else None


def _volume_said(before: list[Part]) -> bool:
    return any(part.of == "volume" for part in before)


def may_name(word: str) -> bool:
    """Whether a plain word may be a tank's name: it is no deed, question, value or unit."""
    return word[0].isalpha() and not any(kind in _SAYING for kind, _name in meanings(word))


def _animal_at(words: list[str], place: int) -> tuple[int, str]:
    """An animal's name at a place, of one kind or of several (tetras): how many words it is."""
    plain = [plain_name(word) for word in words[place:]]
    size, found = name_at(plain, 0)
    counted = place and (words[place - 1][0].isdigit() or number_in(words[place - 1]) is not None)
    if size < 2 and not counted and "bare" in _ways(True).get((words[place],), ()):
        return 0, ""
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
