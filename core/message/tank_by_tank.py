"""One thing told of two tanks with a number each: `changed 30% on the cube and 50% on big`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache, lru_cache
from typing import Final

from core.message.fold import fold
from core.message.wordfile import spelt

HEAD_WORDS: Final = 3
"""Words before the first number: what is told, when, and who did it."""

TOLD_WORDS: Final = 4
"""Words between a number and its tank: what it is of and what became of it (`6 neons died`)."""

SHORTEST: Final = 3
"""Letters of a name's beginning that may stand for it."""

_NUMBER: Final = r"(\d+(?:[.,]\d+)?(?: ?%)?)"


@cache
def _ways(file: str, section: str) -> str:
    found = {way for of, _language, ways in spelt(file) if of == section for way in ways}
    return "|".join(re.escape(way) for way in sorted(found, key=len, reverse=True))


@lru_cache(maxsize=256)
def _part(names: tuple[str, ...]) -> re.Pattern[str]:
    """A number, what it is of, and a tank: (number, of what, tank)."""
    known = "|".join(map(re.escape, names))
    word = r"[^\W\d][\w'-]*"
    unit = r"(?: ?°[a-z]{1,3})"
    of_what = rf"({unit}?(?: ?{word}(?: {word}){{0,{TOLD_WORDS - 1}}}?)??)"
    places = rf"(?:(?:{_ways('described.txt', 'before')}) ){{0,2}}"
    return re.compile(rf"{_NUMBER}{of_what} {places}({known})(?![\w'-])")


@cache
def _joint() -> re.Pattern[str]:
    return re.compile(rf"(?:,| (?:{_ways('tank_by_tank.txt', 'joint')})(?!\w))+ ")


def pieces(text: str) -> list[str]:
    """A message parted at its commas and words for and.

    Examples
    --------
    >>> pieces("changed big 50 l and cube 10 l")
    ['changed big 50 l', 'cube 10 l']
    """
    return [piece for piece in _joint().split(fold(text).strip(" .!")) if piece]


def spread(text: str, tanks: Sequence[str]) -> tuple[str, ...]:
    """The message once for each tank, with what is told before its number; empty for other texts.

    A later number that stands bare is of what the first one is of.

    Examples
    --------
    >>> spread("changed 30% on the cube and 50% on big", ["cube", "big"])
    ('cube: changed 30%', 'big: changed 50%')
    >>> spread("added 5 neons in cube and 6 in big", ["cube", "big"])
    ('cube: added 5 neons', 'big: added 6 neons')
    >>> spread("ph 7 in cube and kh 4 in big", ["cube", "big"])
    ()
    """
    if len(tanks) < 2 or "?" in text:
        return ()
    names = {fold(tank): tank for tank in tanks}
    part = _part(tuple(sorted(names, key=len, reverse=True)))
    plain = fold(text).strip()
    first = re.search(r"(?<!\w)\d", plain)  # no3 is a name
    head = "" if first is None else plain[: first.start()].strip()
    if first is None or len(head.split()) > HEAD_WORDS or re.search(r"[,.;:!]", head):
        return ()
    told: list[tuple[str, str, str]] = []
    place = first.start()
    while (found := part.match(plain, place)) is not None:
        told.append((found[1], found[2], found[3]))
        place = found.end()
        if (joint := _joint().match(plain, place)) is None:
            break
        place = joint.end()
    in_each = {tank for _number, _of, tank in told}
    if len(told) < 2 or len(in_each) < len(told) or plain[place:].strip(" .!"):
        return ()
    of = told[0][1]
    return tuple(
        f"{names[tank]}: {f'{head} {number}{_of_what(own, of)}'.strip()}"
        for number, own, tank in told
    )


def _of_what(own: str, first: str) -> str:
    """What a number is of: what its own words begin to say, the first one's say to the end."""
    begun = own.strip()
    if begun and first.strip() != begun and not first.strip().startswith(f"{begun} "):
        return own
    return first


def without_place(text: str) -> str:
    """A tank's name, folded, without what stands before it.

    Examples
    --------
    >>> without_place("in the office"), without_place("office")
    ('office', 'office')
    """
    before = _ways("described.txt", "before")
    return re.sub(rf"^(?:(?:{before}) ){{1,2}}", "", text)


def after_joint(text: str) -> str | None:
    """A message that begins with a number, without a joint before it; None for other texts.

    Examples
    --------
    >>> after_joint("and 0 in two"), after_joint("and kh 4 in two")
    ('0 in two', None)
    """
    plain = fold(text).strip()
    opened = _joint().match(f" {plain}")
    rest = plain if opened is None else plain[opened.end() - 1 :]
    return rest if rest[:1].isdigit() else None


def number_last(text: str, tanks: Sequence[str]) -> str | None:
    """``big also, 60`` as ``60 in big``; None for other texts.

    A tank may be told by the beginning of its name where no other begins so.

    Examples
    --------
    >>> number_last("liv too, 60", ["living room", "office"])
    '60 in living room'
    >>> number_last("ph 60", ["living room"]), number_last("o 6", ["office"])
    (None, None)
    """
    found = _number_last().fullmatch(fold(text).strip(" .!"))
    if found is None or "?" in text:
        return None
    said = found[1].strip()
    names = [tank for tank in tanks if fold(tank) == said]
    if not names and len(said) >= SHORTEST:
        names = [tank for tank in tanks if fold(tank).startswith(said)]
    return f"{found[2]} in {names[0]}" if len(names) == 1 else None


@cache
def _number_last() -> re.Pattern[str]:
    joint, too = _ways("tank_by_tank.txt", "joint"), _ways("tank_by_tank.txt", "too")
    before = _ways("described.txt", "before")
    opened = rf"(?:(?:{joint}|{before}) ){{0,3}}"
    return re.compile(rf"{opened}(\D+?)(?: (?:{too}))?[,:]? {_NUMBER}")


def continued(text: str, before: str, tank: str, tanks: Sequence[str]) -> str | None:
    """The line that tells of another tank what was just told of one; None where `text` does not.

    Parameters
    ----------
    text : str
        What is said now, a number and a tank: `and 0 in two`.
    before, tank : str
        What was told before as typed, and the tank that it was kept for.
    tanks : sequence of str
        The names of the chat's tanks.

    Examples
    --------
    >>> continued("and 0 in two", "nitrite 1", "one", ["one", "two"])
    'two: nitrite 0'
    """
    own, rest = re.escape(fold(tank)), after_joint(text)
    if rest is None:
        return None
    before_it = _ways("described.txt", "before")
    there = re.compile(rf"(?<!\S)(?:(?:{before_it}) )*{own}(?!\w):? ?")
    told = there.sub("", fold(before), count=1)
    for each in (told, f"{told.strip(' .!')} in {tank}"):
        lines = spread(f"{each.strip(' .!')}, {rest}", tanks)
        if len(lines) == 2 and lines[0].startswith(f"{tank}: "):
            return lines[1]
    return None
