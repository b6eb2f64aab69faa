"""Tanks told with who lives there: `got a 120l community tank, tetras and corys`.

Every word of such a message must be known: a class of ``introduced.txt``, a number with its unit,
an animal, or the tank's name behind a word for it. So a wish, a question and another's tank, which
have other words, introduce none.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final, NamedTuple

from core.advice.introduction_parts import KINDS, NOUNS, TRAITS, Part, may_name, read
from core.advice.livestock import Found, lookup
from core.message.described import ways
from core.tank import Setup, TankKind

_TELLING: Final = frozenset({"animal", "shrimps", "reef", "pond", "planted", "marine", "brackish"})
"""What tells one tank from another by a word that it can be called by."""
_BESIDE_NAME: Final = frozenset({"light", "have", "single", "home", "tank"})
"""What may stand between such a word and the volume: reef tank has 200 l."""


_LEADING: Final = frozenset({"one", "light", "further", "and", "have", "look"})
"""What may stand between a tank and the "and" before it."""
_OF_TANK: Final = frozenset({*NOUNS, *KINDS, "reef", "planted", "community"})
"""What tells of which kind a tank is, or that it is one."""
LEAST_BARE: Final = 10
"""A smaller number behind a tank is its own: tank 2. [L]"""


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
    days_ago: float | None = None
    """How long ago it was set up. [days]"""
    left: tuple[str, ...] = ()
    """What was told with a number and not understood."""
    loosely: bool = False
    """Whether words of the message are of no class."""
    told_by: str | None = None
    """The word before its volume that tells it from others: reef 200 l, shrimp 30 l."""
    holds: str | None = None
    """The only word for what it is or holds, wherever it stands: 200 l reef."""


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
    parts = read(text, us_gallons=us_gallons)
    if parts is None:
        return ()
    of = {part.of for part in parts}
    kept = not of.isdisjoint({"have", "home", "single"})
    lives = kept and not of.isdisjoint({"animal", "planted", "community"})
    called = "called" in of and "have" in of  # got a 200l called lounge
    if "volume" not in of or not (lives or called or NOUNS & of):
        return ()  # 20 l fresh water
    if "name" in of and of.isdisjoint({"animal", "called", "further", *TRAITS}):
        return ()  # tank leaked 20 l
    return tuple(home_of(each) for each in segments(parts))


def living_there(text: str) -> tuple[Animal, ...]:
    """The animals of `neocaridina in there`: nothing but kinds, and that they are inside.

    Examples
    --------
    >>> living_there("neocaridina in there"), living_there("neocaridina")
    ((Animal(said='neocaridina', many=None),), ())
    """
    parts = read(text, us_gallons=True)
    if parts is None or not any(part.of == "inside" for part in parts):
        return ()
    if any(part.of in {"volume", "without", "name", *TRAITS} for part in parts):
        return ()
    return _animals(parts)


def segments(parts: list[Part]) -> list[list[Part]]:
    """The parts of each tank: a new one begins at the last "and" before a further volume."""
    parts = _bare_volumes(parts)
    volumes = [place for place, part in enumerate(parts) if part.of == "volume"]
    cuts = [0]
    for last, place in pairwise(volumes):
        start = place
        while start > last + 1 and parts[start - 1].of in _LEADING:
            start -= 1
        cuts.append(_from_joint(parts, last, start, place))
    return [parts[a:b] for a, b in zip(cuts, [*cuts[1:], len(parts)], strict=True)]


def _from_joint(parts: list[Part], last: int, start: int, volume: int) -> int:
    """Where a tank begins that is told by a word before its volume: and a reef in 120 l.

    What lives there tells it only before a word for a place: 60 l with neons and corys, 120 l.
    """
    if any(part.of in {"and", "break"} for part in parts[start:volume]):
        return start
    while start > last + 1 and parts[start - 1].of in {"light", "with"}:
        start -= 1
    place = start - 1
    placed = any(part.of in {"light", "with"} for part in parts[start:volume])
    while place > last and parts[place].of in ({*_OF_TANK, "animal"} if placed else _OF_TANK):
        place -= 1
    while place > last and parts[place].of in {"one", "light", "further", "have", "look", "count"}:
        place -= 1
    joined = place > last and parts[place].of in {"and", "break"}
    return place if joined and place < start - 1 else start


def _bare_volumes(parts: list[Part]) -> list[Part]:
    """Behind a volume a further tank's number may have no unit: 300 l and a reef of 120."""
    litres = next((_litres_each(part) for part in parts if part.of == "volume"), None)
    if litres is None:
        return parts
    out: list[Part] = []
    for place, part in enumerate(parts):
        behind = parts[place + 1].of if place + 1 < len(parts) else "break"
        before = next((p.of for p in reversed(out) if p.of not in {"light", "with"}), "")
        placed = bool(out) and out[-1].of in {"light", "with"}
        told = placed or any(each.of == "volume" for each in out)
        bare = part.of == "count" and behind in {"break", "and"} and before in _OF_TANK
        is_volume = bare and told and int(str(part.value)) >= LEAST_BARE
        volume = Part("volume", int(str(part.value)) * litres) if is_volume else part
        out.append(volume)
    return out


def _litres_each(volume: Part) -> float:
    """How many litres one of the unit is that a volume was told in; a bare one is of litres."""
    number = volume.text.partition(" ")[0].replace(",", ".")
    return float(str(volume.value)) / float(number) if number and float(number) else 1.0


def home_of(parts: list[Part]) -> Home:
    """What the parts of one tank tell of it; one of them is its volume."""
    of = [part.of for part in parts]
    volume = next(part.value for part in parts if part.of == "volume")
    name = " ".join(part.text for part in parts if part.of == "name") or None
    animals = _animals(parts)
    kind = next((KINDS[each] for each in of if each in KINDS), _water_of(animals))
    setup: Setup | None = "reef" if "reef" in of else "planted" if _has(of, "planted") else None
    home = Home(float(str(volume)), name, kind, setup, _has(of, "co2"), "further" in of, animals)
    home = replace(home, told_by=_told_by(parts), holds=_holds(parts))
    return replace(home, setup="unplanted") if "planted" in of and setup is None else home


def _told_by(parts: Sequence[Part]) -> str | None:
    """The word for a kind of tank or animal right before the volume, where none is counted."""
    place = next(n for n, part in enumerate(parts) if part.of == "volume")
    while place and parts[place - 1].of in _BESIDE_NAME:
        place -= 1
    if not place or parts[place - 1].of not in _TELLING:
        return None
    counted = place > 1 and parts[place - 2].of in {"count", "one", "without"}
    return None if counted else _with_look(parts, place - 1)


def _with_look(parts: Sequence[Part], place: int) -> str:
    """The word that tells a tank, with the one behind it for how it looks: shrimp cube."""
    behind = parts[place + 1] if place + 1 < len(parts) else None
    looks = behind is not None and behind.of == "tank" and behind.text in ways()["vessel"]
    return f"{parts[place].text} {behind.text}" if behind and looks else parts[place].text


def _holds(parts: Sequence[Part]) -> str | None:
    place = next(n for n, part in enumerate(parts) if part.of == "volume") + 1
    behind = parts[place : place + 1]
    telling = _TELLING | {"community"}
    if behind and behind[0].of in telling:
        return _with_look(parts, place)  # a 200 l community with tetras
    found = {part.text for part in parts if part.of in telling}
    if not found:  # a 40 l quarantine
        found = {part.text for part in behind if part.of == "unknown" and may_name(part.text)}
    return found.pop() if len(found) == 1 else None


def _has(of: Sequence[str], what: str) -> bool:
    """Whether a thing is told to be there: not `no plants`."""
    return any(each == what and of[n - 1 : n] != ["without"] for n, each in enumerate(of))


def _animals(parts: list[Part]) -> tuple[Animal, ...]:
    """Each kind with the number that stands before it; one of a lone kind that `is` there.

    `tank is 240 l goldfish` counts none: so much water is there.
    """
    found: list[Animal] = []
    many: int | None = None
    alone = sum(part.of == "animal" for part in parts) == 1
    said = [part.of for part in parts if part.of != "light"]
    place = said.index("single") if "single" in said else -1
    sized = said[place + 1 : place + 2] == ["volume"] and "animal" not in said[:place]
    single = alone and place >= 0 and not sized
    for place, part in enumerate(parts):
        if part.of in {"count", "one"}:
            many = int(str(part.value or 1))
        elif part.of == "animal" and parts[max(place - 1, 0)].of != "without":
            behind = parts[place + 1].of if place + 1 < len(parts) else ""
            of_tank = behind in NOUNS  # a shrimp tank
            if not (of_tank and _told_again(part, parts)):
                counted = None if of_tank else many or (1 if single else None)
                found.append(Animal(part.text, counted))
            many = None
        elif part.of == "grown" and many and found and found[-1].many is None:
            found[-1] = found[-1]._replace(many=many)  # discus tank, 6 adults
            many = None
        elif part.of not in {"look", "big", "small", "unknown"}:
            many = None
    return tuple(found)


def _told_again(kind: Part, parts: Sequence[Part]) -> bool:
    """Whether the kind that a tank is for is told apart: shrimp nano, neocaridina."""
    rows = _rows(lookup(kind.text))
    others = (part for part in parts if part.of == "animal" and part is not kind)
    return any(not rows.isdisjoint(_rows(lookup(part.text))) for part in others)


def _rows(found: Found) -> set[str]:
    return {row.scientific for row in (found.species, *found.candidates) if row is not None}


def _water_of(animals: Sequence[Animal]) -> TankKind | None:
    """The water that all kinds of a tank live in, where that is the sea."""
    waters = [_waters(lookup(each.said)) for each in animals]
    return "marine" if waters and all(each == {"marine"} for each in waters) else None


def _waters(found: Found) -> set[str]:
    return {row.water for row in (found.species, *found.candidates) if row is not None}
