"""Tanks told without their names: by size, by their water, by their litres, as the other one."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from functools import cache, lru_cache
from typing import Final

from core.message.fold import fold
from core.message.model import Look
from core.message.numbered import places
from core.message.token import Token
from core.message.wordfile import spelt
from core.units import US_GALLON_L

CLEARLY: Final = 1.25
"""So many times larger is a tank that anybody would call the big one of two."""


FIRST: Final = 3
"""The group of one that opens a message: `big one kh 3`, where `big one died` is an animal."""


@cache
def ways() -> dict[str, tuple[str, ...]]:
    """Section of the file → all ways to say it, the longest first."""
    told: dict[str, set[str]] = {}
    for section, _language, ways in spelt("described.txt"):
        told.setdefault(section, set()).update(ways)
    return {section: tuple(sorted(ways, key=len, reverse=True)) for section, ways in told.items()}


def _traits(looks: Sequence[Look]) -> Iterator[tuple[str, str]]:
    """(what is said of it, name) for what is true of one of the tanks alone."""
    for kind in ("marine", "fresh", "brackish", "pond"):
        yield from ((kind, each.name) for each in _alone(looks, [x.kind == kind for x in looks]))
    if len(looks) < 2:
        return  # the only tank: by its water alone
    yield from (("planted", each.name) for each in _alone(looks, [x.planted for x in looks]))
    if len(looks) == 2 and any(each.in_use for each in looks):
        yield "other", next(each.name for each in looks if not each.in_use)
    if all(each.given for each in looks):
        yield from zip(("1st", "2nd"), (each.name for each in looks), strict=False)
    sizes = sorted((each.volume_l, each.name) for each in looks if each.volume_l is not None)
    if len(looks) > 1 and len(sizes) == len(looks):
        if sizes[-1][0] >= CLEARLY * sizes[-2][0]:
            yield "big", sizes[-1][1]
        if sizes[1][0] >= CLEARLY * sizes[0][0]:
            yield "small", sizes[0][1]


def _by_own_word(looks: Sequence[Look]) -> dict[str, str]:
    """A word for how a tank looks or where it stands, in the longer name of one alone: the cube.

    Examples
    --------
    >>> _by_own_word([Look("shrimp cube", "fresh"), Look("Big", "fresh")])
    {'cube': 'shrimp cube'}
    >>> _by_own_word([Look("shrimp cube", "fresh"), Look("Cube", "fresh")])
    {}
    """
    telling = {*ways()["vessel"], *places()}
    said = [(fold(look.name).split(), look.name) for look in looks]
    found: dict[str, str] = {}
    for words, name in said:
        for word in words if len(words) > 1 else ():
            if word in telling and sum(word in others for others, _name in said) == 1:
                found[word] = name
    return found


def _alone(looks: Sequence[Look], fits: Sequence[bool]) -> list[Look]:
    found = [each for each, fit in zip(looks, fits, strict=True) if fit]
    return found if len(found) == 1 else []


def _numbers(looks: Sequence[Look], litres: float) -> Iterator[tuple[str, str]]:
    """(a whole number of a unit, name) where one tank alone holds so much."""
    held = [(f"{each.volume_l / litres:.0f}", each.name) for each in looks if each.volume_l]
    for number, name in held:
        if [other for other, _ in held].count(number) == 1:
            yield number, name


@lru_cache(maxsize=256)
def _reader(looks: tuple[Look, ...]) -> tuple[re.Pattern[str] | None, dict[str, str]]:
    """The pattern that finds the tanks, and every way to tell one → its name."""
    held = ways()
    traits = list(_traits(looks))
    meant = {way: name for trait, name in traits for way in held[trait]}
    meant |= _by_own_word(looks)
    ones = {way: name for trait, name in traits for way in held.get(f"{trait} one", ())}
    noun = any_of(held["noun"])
    sized: list[str] = []
    units = (("litres", 1.0), ("gallons", US_GALLON_L)) if len(looks) > 1 else ()
    for unit, litres in units:
        written = any_of(held[unit])
        for number, name in _numbers(looks, litres):
            meant.setdefault(number, name)
            sized.append(rf"{number}(?: ?(?:{written}))?(?: (?:{noun}))?")
    if not meant:
        return None, {}
    words = [way for way in meant if not way.isdigit()]
    plain = [any_of(words)] if words else []
    before = rf"(?<!\S)(?!(?<=\d )l\b)(?:{any_of(held['before'])})[ ']+"  # 200 l: no article
    known = rf"(?:{before}|^)({'|'.join([*plain, *sized])})"
    placed = rf"|(?<!\S)(?:{any_of(held['place'])}) ({any_of(ones)})" if ones else "|(?!)()"
    first = rf"|^(?:(?:{any_of(held['before'])}) )?({any_of(ones)})" if ones else "|(?!)()"
    return re.compile(rf"(?:{known}{placed}{first})(?![\w'-])"), meant | ones


def resolved(looks: tuple[Look, ...]) -> dict[str, str]:
    """Every way to tell one of the tanks without its name → its name; of one only by its water."""
    return _reader(looks)[1]


def any_of(ways: Iterable[str]) -> str:
    """The inside of a pattern that finds any of the ways, the longest first."""
    return "|".join(re.escape(way) for way in sorted(ways, key=len, reverse=True))


def mark(tokens: list[Token], folded: str, looks: tuple[Look, ...]) -> list[Token]:
    """`tokens` with every tank that is told without its name made one token of kind ``tank``.

    It stands behind ``the``, ``my`` or ``in``, or begins the message before a name of a value: `a
    big tank` is any.

    Parameters
    ----------
    tokens, folded
        The message, cut and plain.
    looks : tuple of Look
        The tanks on record.
    """
    pattern, meant = _reader(looks)
    if pattern is None:
        return tokens
    for found in pattern.finditer(folded):
        group = found.lastindex or 1
        said = found[group]
        start, end = found.span(group)
        name = meant.get(said) or meant[said[: len(said) - len(said.lstrip("0123456789"))]]
        inside = [token for token in tokens if start <= token.start < end]
        behind = next((token for token in tokens if token.start >= end), None)
        if not inside or any(token.kind == "tank" for token in inside):
            continue
        opens = found.start() == start or group == FIRST
        ends = opens and not folded.startswith(":", end)
        if ends and (behind is None or behind.kind not in {"analyte", "p"}):
            continue
        if said.isdigit() and not _says_more_of(behind):
            continue
        place = tokens.index(inside[0])
        tokens = [
            *tokens[:place],
            Token("tank", name, said, start, end),
            *tokens[place + len(inside) :],
        ]
    return tokens


def _says_more_of(behind: Token | None) -> bool:
    """Whether what stands behind a bare number leaves it a tank: `the 240 has kh 4`, not `g`."""
    if behind is None or behind.kind in {"analyte", "fill", "p"}:
        return True
    return behind.value in {"link", "wish"}
