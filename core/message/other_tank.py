"""A tank that is none on record: `for the big tank`, `fürs große`, `the left tank`, `rack 3`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
from itertools import pairwise
from typing import Final

from core.message import nearest
from core.message.described import any_of, resolved, ways
from core.message.fold import fold
from core.message.kinds import is_kind, names_thing
from core.message.lexicon import lexicon
from core.message.model import Context
from core.message.numbered import SHORTEST, last_of, places
from core.message.tanks import marked, match
from core.message.token import Token
from core.message.tokens import cut
from core.message.vessel import is_within
from core.message.volume_said import only_tells
from core.message.word_classes import is_small
from core.tank import TankKind

_TRAITS: Final = ("big", "small", "other", "new", "old")
_KINDS: Final[tuple[TankKind, ...]] = ("marine", "fresh", "brackish", "pond")
"""Waters that tell a tank where none on record has such: `my reef`, beside a fresh tank."""
_BEHIND: Final = frozenset(
    {"to", "at_to", "link", "from", "in", "for", "at", "wish", "and", "does"}
)
"""Meanings of words that follow a tank, not an animal: `fürs große auf kh 5`."""

_LIGHT: Final = frozenset({"the", "my", "our", "das", "die", "den", "mein", "meine"})
"""Words before a place."""
_WHERE: Final = frozenset({"in", "for", "to", "at_to"})
_FOR: Final = frozenset({"for", "für", "fur", "fürs", "furs", "pour", "para", "per", "voor", "dla"})
_ASKED: Final = frozenset({"how_much", "dose", "raise", "effect", "reach"})
"""What is asked of a tank's water, that a word behind `for` may name."""


@cache
def _told() -> re.Pattern[str]:
    """Finds a description; the group ``whole`` has the noun, behind ``bare`` it may be an animal.

    In ``theirs`` it is somebody else's.
    """
    held = ways()
    told = (*_TRAITS, *_KINDS)
    whole = [way for trait in told for way in held.get(trait, ()) if " " in way]
    whole += [f"{place} {noun}" for place in places() for noun in held["noun"]]
    bare = [way for trait in told for way in held.get(trait, ()) if " " not in way]
    ones = (f"{trait} {kind}" for trait in _TRAITS for kind in ("one", "bare"))
    bare += [way for section in ones for way in held.get(section, ())]
    before = rf"(?<!\S)(?!(?<=\d )l\b)(?:{any_of(held['before'])})[ ']+"
    owner, noun = any_of(held["owner"]), any_of(held["noun"])
    theirs = rf"(?:{noun}) (?:{owner})|(?:{owner})(?: (?:{noun}))?"
    return re.compile(
        rf"(?:(?:{before}|^)(?:(?P<whole>{any_of(whole)})|(?P<bare>{any_of(bare)}))"
        rf"|(?<!\S)(?P<theirs>{theirs}))(?![\w'-])"
    )


def unknown(text: str, context: Context) -> tuple[int, int] | None:
    """Where a text tells a tank without its name that is none of those on record for certain.

    None where a tank is named or told so that only one of them can be meant, or none is told. What
    stands before it (the, my) is outside of it.

    Examples
    --------
    >>> from datetime import datetime, UTC
    >>> one = Context(datetime(2026, 3, 2, tzinfo=UTC), tanks=("mini",))
    >>> unknown("how much soda for the big tank", one)
    (22, 30)
    >>> unknown("soda for mini", one) is None, unknown("salt for the big fish", one) is None
    (True, True)
    """
    plain = fold(text)
    if len(plain) != len(text):
        return None
    if not context.tanks:
        return theirs(text)
    found = _told().search(plain)
    tokens = marked(cut(plain, lexicon(), text), plain, context)
    if (of_another := theirs(text)) is not None and not _is_named(tokens, *of_another):
        return None if plain[of_another[1] :].lstrip().startswith(":") else of_another
    if any(token.kind == "tank" for token in tokens):
        return None
    if found is None:
        numbered = _numbered(tokens, context.tanks, text)
        looking = numbered or _looking(tokens, context)
        return looking if looking or _by_kind(text) else _at_place(tokens, context)
    group = next(name for name in ("whole", "bare", "theirs") if found[name] is not None)
    said, span = found[group], found.span(group)
    if (
        said in resolved(context.looks)
        or _is_of_record(said, context)
        or _is_name(said, context.tanks)
    ):
        return None
    if plain[span[1] :].lstrip().startswith(":"):
        return None  # a heading, which is asked about by itself and may be added as it is told
    number = next((n for n in range(span[1], len(plain)) if plain[n].isdigit()), span[1])
    holds = number > span[1] and only_tells(plain[span[1] : number])  # the pond holds 3000 l
    noun = group == "whole" or said.endswith(ways()["noun"])
    if not (noun or holds or _ends(tokens, span[1])):
        return None
    return span


def theirs(text: str) -> tuple[int, int] | None:
    """Where a text tells of somebody else's tank, by whose it is and a word for a tank.

    Examples
    --------
    >>> theirs("my dads tank 200 l"), theirs("my dads 200 l"), theirs("my tank 200 l")
    ((3, 12), None, None)
    """
    plain = fold(text)
    if len(plain) != len(text):
        return None
    found = next((each for each in _told().finditer(plain) if each["theirs"] is not None), None)
    nouns = ways()["noun"]
    if found is None or not found["theirs"].startswith(nouns) ^ found["theirs"].endswith(nouns):
        return None
    return found.span("theirs")


def water_told(text: str) -> TankKind | None:
    """The water of a tank that is told by it in talk; None where none or several are.

    Examples
    --------
    >>> water_told("how much soda does my reef need"), water_told("200 l marine salt")
    ('marine', None)
    """
    held = ways()
    said = {found["whole"] or found["bare"] for found in _told().finditer(fold(text))} - {None}
    kinds = [kind for kind in _KINDS if not said.isdisjoint(held.get(kind, ()))]
    return kinds[0] if len(kinds) == 1 else None


def _is_named(tokens: Sequence[Token], start: int, end: int) -> bool:
    """Whether a tank is named elsewhere than by the noun of a span, which one may be called by."""
    return any(t.kind == "tank" and not start < t.start < end for t in tokens)


def _is_of_record(said: str, context: Context) -> bool:
    """Whether a word for a water may be of a tank on record that has such."""
    held = ways()
    kinds = {kind for kind in _KINDS if said in held.get(kind, ())}
    return bool(kinds) and (not context.looks or any(x.kind in kinds for x in context.looks))


def _numbered(tokens: Sequence[Token], tanks: Sequence[str], text: str) -> tuple[int, int] | None:
    """Where a word with a number is a tank: it opens what is asked, or stands behind `in`.

    Anywhere, where a tank on record is called by the word with another number.
    """
    told = list(tokens)
    for place, token in enumerate(told):
        placed = place == 0 or told[place - 1].value in _WHERE
        placed = placed or any(fold(tank).startswith(f"{token.text} ") for tank in tanks)
        last = last_of(told, place, text) if placed else None
        behind = None if last is None else next(iter(told[last + 1 :]), None)
        asks = place == 0 and behind is not None and behind.kind == "ask"
        if last is not None and (asks or _ends(tokens, told[last].end)):
            return token.start, told[last].end
    return None


def _by_kind(text: str) -> bool:
    """Whether a tank is told by who lives in it, and a place behind it is where: the shrimp one."""
    from core.advice.tank_by_kind import place

    found = place(text)
    return found is not None and found.is_tank


def _looking(tokens: Sequence[Token], context: Context) -> tuple[int, int] | None:
    """Where a tank is told by how it looks, and none on record is called so: `for the cube`.

    The only one without a name may be it.
    """
    looks = ways()["vessel"]
    if any(token.kind == "tank" for token in tokens) or _only_nameless(context):
        return None
    for before, token in pairwise(tokens):
        led = before.text in _LIGHT or before.value in _WHERE or before.value == "does"
        if led and token.text in looks and _ends(tokens, token.end):
            return None if _is_name(token.text, context.tanks) else (token.start, token.end)
    return None


def _only_nameless(context: Context) -> bool:
    """Whether one tank is on record and nobody said what it is called."""
    nameless = any(look.given for look in context.looks) or any(map(_is_noun, context.tanks))
    return len(context.tanks) == 1 and nameless


def _is_noun(name: str) -> bool:
    """Whether a tank has no name of its own: Tank, Tank 2."""
    return fold(name).rstrip(" 0123456789") in ways()["noun"]


def _at_place(tokens: Sequence[Token], context: Context) -> tuple[int, int] | None:
    """Where what is asked is for a place or for a name, and no tank on record is called so.

    `how much soda for the kitchen`, `for betsy`, beside the tank Betty.
    """
    if _only_nameless(context):
        return None  # Tank: where it stands, nobody said
    asked = any(token.kind == "ask" and token.value in _ASKED for token in tokens)
    if not asked and any(look.given or _is_noun(look.name) for look in context.looks):
        return None  # the shrimp one in the kitchen: where Big stands, nobody said
    for before, token in pairwise(t for t in tokens if t.text not in _LIGHT):
        if before.value == "in" and before.text not in _FOR and is_within(token.text):
            continue
        placed = before.value in {"in", "for"} and token.text in places()
        named = asked and before.text in _FOR and _may_be_name(token)
        if (placed or named) and _ends(tokens, token.end):
            return None if _is_name(token.text, context.tanks) else (token.start, token.end)
    return None


def _may_be_name(token: Token) -> bool:
    """Whether a word is none that anybody knows, nor nearly one for a tank or for what it is."""
    word = token.text
    if token.kind != "word" or not word.isalpha() or len(word) < SHORTEST or is_small(word):
        return False
    held = ways()
    known = (*held["noun"], *held["no tank"])
    kind = is_kind(word) or names_thing(word) or is_kind(word.removesuffix("s"))
    return not (kind or nearest.analytes(word) or match(word, known).candidates)


def _is_name(said: str, tanks: Sequence[str]) -> bool:
    """Whether it is nearly how a tank on record is called: `fürs kleine`, of Kleines."""
    return bool(match(said, tanks).candidates or match(said.split()[0], tanks).candidates)


def _ends(tokens: Sequence[Token], end: int) -> bool:
    """Whether no noun follows, which it would be said of."""
    behind = next((token for token in tokens if token.start >= end), None)
    return (
        behind is None
        or behind.kind in {"p", "nl", "analyte", "number", "time", "mark"}
        or behind.value in _BEHIND
    )
