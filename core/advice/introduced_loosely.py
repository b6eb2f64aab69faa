"""Tanks introduced among other words: `got a betta for my daughter, 20l with heater`.

Words of no class say nothing of the tank. So that no question, wish, deed or another's tank is
taken for one, nothing of those may be said beside it, and the volume must stand apart from what
nobody knows (`pulled 20 l`).
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import Final

from core.advice.introduced_by_name import LEAST, is_name
from core.advice.introduction_parts import KINDS, NOUNS, Part, read
from core.advice.introductions import Home, home_of, segments
from core.advice.livestock import lookup

_SURE: Final = frozenset({"animal", "planted", "reef", "pond", "shrimps"})
"""What tells that a volume is a tank's."""
_OWN: Final = frozenset({"have", "home", "begun", "age", "inside", "called"})
_SMALL: Final = frozenset({"light", "look", "big", "small", "one", "article", "with", "since"})
_MOST_TANKS: Final = 9
_BESIDE_VALUES: Final = (
    frozenset(
        {"volume", "unknown", "and", "break", "further", "have", "home", "planted", "community"}
    )
    | _SMALL
    | NOUNS
    | frozenset(KINDS)
)
"""What may stand beside a volume and readings; a word of no class may be a name."""


def several(text: str, *, us_gallons: bool) -> tuple[Home, ...]:
    """The tanks of a message that says how many they are: two tanks, 60l shrimp and 180l reef.

    Examples
    --------
    >>> [home.name for home in several("zwei becken, flur 200 l und bad 54 l", us_gallons=True)]
    ['flur', 'bad']
    """
    parts = read(text, us_gallons=us_gallons, loosely=True)
    left = None if parts is None else _without_number(parts)
    homes = () if left is None else tuple(map(_named, _apart(_volumes(left))))
    return tuple(replace(home, loosely=True) for home in homes) if len(homes) > 1 else ()


def beside_values(text: str, *, us_gallons: bool) -> tuple[Home, ...]:
    """The tank that a volume told beside readings is of, with a word or two for it or with none.

    Examples
    --------
    >>> [(home.name, home.volume_l) for home in beside_values("and a qt 40l", us_gallons=True)]
    [('qt', 40.0)]
    >>> beside_values("put 20 l", us_gallons=True), beside_values("bucket 20 l", us_gallons=True)
    ((), ())
    """
    parts = read(text, us_gallons=us_gallons, loosely=True) or []
    named = [part.text for part in parts if part.of == "unknown"]
    volumes = [float(str(part.value)) for part in parts if part.of == "volume"]
    if any(part.of not in _BESIDE_VALUES for part in parts) or len(volumes) != 1:
        return ()
    if volumes[0] < LEAST or (named and not is_name(named, is_tank=False)):
        return ()
    home = home_of([part for part in parts if part.of != "unknown"])
    return (replace(home, name=" ".join(named) or None, loosely=True, told_by=None),)


def introduced_loosely(text: str, *, us_gallons: bool) -> tuple[Home, ...]:
    """The tanks of a message in which other words may stand; empty where it introduces none.

    Examples
    --------
    >>> (home,) = introduced_loosely("60l pflanzenbecken läuft seit 2 wochen", us_gallons=True)
    >>> home.volume_l, home.setup, home.days_ago
    (60.0, 'planted', 14.0)
    >>> introduced_loosely("pulled 20 l out of the betta tank", us_gallons=True)
    ()
    """
    parts = read(text, us_gallons=us_gallons, loosely=True)
    if parts is None:
        return ()
    cut = segments(_aged(_counted(_corals(parts))))
    volumes = sum(part.of == "volume" for part in parts)
    if not volumes or not all(_is_tank(each) for each in cut):
        return ()
    return tuple(_with_rest(each) for each in cut)


def _is_tank(parts: list[Part]) -> bool:
    """Whether the volume of these parts is a tank's by what else they say."""
    of = {part.of for part in parts}
    told = bool(of & _SURE) or ("community" in of and bool(of & NOUNS))
    if not told and not (of & _OWN and of & {*NOUNS, *KINDS, "community"}):
        return False
    place = next(n for n, part in enumerate(parts) if part.of == "volume")
    before = place - 1
    while before >= 0 and parts[before].of in _SMALL:
        before -= 1
    return before < 0 or parts[before].of != "unknown"


def _with_rest(parts: list[Part]) -> Home:
    days = next((float(str(part.value)) for part in parts if part.of == "age"), None)
    if days is None and any(part.of == "begun" for part in parts):
        days = 0.0
    home = home_of(parts)
    return replace(home, days_ago=days, left=_left(parts), loosely=True)


def _corals(parts: list[Part]) -> list[Part]:
    """In the sea words that only corals may be are such: torch and hammers."""
    if not any(KINDS.get(part.of) == "marine" for part in parts):
        return parts
    return [
        Part("animal", None, coral)
        if part.of == "unknown" and (coral := _coral(part.text))
        else part
        for part in parts
    ]


def _counted(parts: list[Part]) -> list[Part]:
    """Words behind a number that may be one kind alone are that kind: 2 clowns."""
    out: list[Part] = []
    for part in parts:
        if part.of == "unknown" and out and out[-1].of == "count":
            found = lookup(part.text)
            only = found.candidates[0] if len(found.candidates) == 1 else None
            is_kind = only is not None and only.is_animal
            out.append(Part("animal", None, part.text) if is_kind else part)
        else:
            out.append(part)
    return out


def _coral(word: str) -> str | None:
    """The name of the coral that a word is short for; None where it is none."""
    for name in (word, f"{word.removesuffix('s')} coral"):
        species = lookup(name).species
        if species is not None and species.being == "coral":
            return name
    return None


def _aged(parts: list[Part]) -> list[Part]:
    """Spans of time that tell how long a tank has been running: new 5 days, 2 weeks old."""
    out: list[Part] = []
    for place, part in enumerate(parts):
        before = parts[place - 1].of if place else ""
        behind = parts[place + 1].of if place + 1 < len(parts) else ""
        is_age = before in {"since", "begun"} or (behind == "old" and before != "animal")
        out.append(part._replace(of="age") if part.of == "span" and is_age else part)
    return out


def _without_number(parts: list[Part]) -> list[Part] | None:
    """The parts behind `two tanks`; None where that stands nowhere."""
    for place, part in enumerate(parts[:-1]):
        many = part.value if part.of == "count" else None
        if isinstance(many, int) and 1 < many <= _MOST_TANKS and parts[place + 1].of in NOUNS:
            return parts[place + 2 :]
    return None


def _volumes(parts: list[Part]) -> list[Part]:
    """Of several tanks a number without its unit is a volume where nothing is counted by it."""
    out: list[Part] = []
    for place, part in enumerate(parts):
        behind = parts[place + 1].of if place + 1 < len(parts) else "break"
        bare = part.of == "count" and behind in {"break", "and"}
        told = any(each.of == "volume" for each in out)
        is_volume = bare and told
        out.append(Part("volume", float(str(part.value))) if is_volume else part)
    return out


def _apart(parts: list[Part]) -> list[list[Part]]:
    """The parts of each of several tanks: parted at the last joint before a further volume."""
    cuts = [0]
    volumes = [place for place, part in enumerate(parts) if part.of == "volume"]
    for last, place in pairwise(volumes):
        joints = [n for n in range(last + 1, place) if parts[n].of in {"and", "break"}]
        cuts.append(joints[-1] + 1 if joints else place)
    return [parts[a:b] for a, b in pairwise([*cuts, len(parts)])] if volumes else []


def _named(parts: list[Part]) -> Home:
    """One of several tanks, by the word right before its volume: living room 200 l, the big 120."""
    place = next(n for n, part in enumerate(parts) if part.of == "volume")
    start = place
    while start and parts[start - 1].of in {"have", "light", "single", "home"}:
        start -= 1
    words: list[str] = []
    while start and parts[start - 1].of in {"unknown", "shrimps", "big", "small", "look"}:
        start -= 1
        words[:0] = [] if parts[start].text in words else [parts[start].text]
    article = bool(start) and parts[start - 1].of in {"article", "light"}
    sized = not any(part.of in {"unknown", "shrimps"} for part in parts[start:place])
    called = [place for place, part in enumerate(parts) if part.of == "called"]
    kept = [part for n, part in enumerate(parts) if part.of != "name" or n - 1 in called]
    home = home_of(kept)
    name = None if not words or (article and sized) else " ".join(words)
    return replace(home, name=home.name or name)


def _left(parts: list[Part]) -> tuple[str, ...]:
    """Words that nobody understood with a number, or in a list of animals."""
    found: list[str] = []
    for place, part in enumerate(parts):
        before = parts[place - 1] if place else Part("break")
        behind = parts[place + 1].of if place + 1 < len(parts) else "break"
        if part.of == "unknown" and before.of == "count" and behind != "animal":
            found.append(f"{before.value} {part.text}")
        elif part.of == "unknown" and before.of == "and" and behind in {"break", "and"}:
            if place > 1 and parts[place - 2].of == "animal":
                found.append(part.text)
        elif part.of in {"number", "span"}:
            found.append(part.text)
    return tuple(found)
