"""What people type beside a value on a phone, and what it says of it: `leider kh 2`, `kh typ 4`.

beside = aside | told name | name gap number | number ( opinion | closes | same ) | kit
opinion = [ no ] [ degree ] found
gap    = { verb [ at | around ] | only | [ degree ] high | about | same }

Such words are read here, where a line tells a value, and not by the lexicon: there a word that is
harmless in one language is a day, a wish or an animal in the next. A word that the lexicon has
keeps what it means there; only a phrase with its neighbours is taken whole (`na verdade` is no
sodium), and a word for where a value is behind its verb (`steht auf 4`). What bears on a value
stays as it was: a day, a wish, another water, a move.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.nearest import bears
from core.message.token import Token, is_number
from core.message.wordfile import spelt

_FILE: Final = "quick_talk.txt"
_SECTIONS: Final = frozenset({
    "aside", "told", "verb", "shown", "at", "around", "only", "degree", "high", "about", "found",
    "closes", "stuck", "no", "same", "kit",
})  # fmt: skip
_PART: Final = re.compile(r"[^\W_]+")
_INSIDE: Final = frozenset({"'", "-"})
"""Marks that a way may be written with."""
_PAUSES: Final = frozenset({",", ";", ".", "!", "-", "…", "...", "..", "(", ":"})
_ENDS: Final = frozenset({*_PAUSES, ")", "?"})
_QUALIFIES: Final = frozenset({"less", "more", "under", "between", "nd", "zero", "trace"})
_NOW: Final = frozenset({"now", "today", "morning", "afternoon", "evening", "at"})
_OF_TIME: Final = frozenset({"oclock", "hour", "minute", "day", "week", "month", "am", "pm"})
_MOVES: Final = frozenset({"up", "down", "rose_to", "fell_to"})
_LONG: Final = 6
"""A shorter word that a letter parts from one that bears on a value may be a slip of that."""
_OTHERWISE: Final = frozenset({"at", "around", "no", "shown"})
"""Sections whose words the lexicon has as well, and which count by what is beside them."""
MOST_GAP: Final = 12
"""Tokens that may stand between a name and its number."""


@cache
def _ways(section: str) -> Mapping[str, tuple[tuple[str, ...], ...]]:
    """The ways of a section by their first word, the longest first."""
    found: dict[str, set[tuple[str, ...]]] = {}
    for of, _language, told in spelt(_FILE, _SECTIONS):
        for way in told if of == section else ():
            words = tuple(_PART.findall(way))
            found.setdefault(words[0], set()).add(words)
    return {first: tuple(sorted(ways, key=len, reverse=True)) for first, ways in found.items()}


def set_aside(tokens: list[Token], tanks: Collection[str]) -> None:
    """Take weight from what says nothing of a line's values, and read what says that they are so.

    Parameters
    ----------
    tokens : list of Token
        One line; those that are taken are changed in place.
    tanks : collection of str
        The chat's tanks: words that begin the name of one may be that tank.
    """
    if not any(token.kind == "analyte" for token in tokens):
        return
    names = [fold(name) for name in tanks]
    _kits(tokens, names)
    _asides(tokens, names)
    placed = _gaps(tokens)
    _found(tokens, names, ("closes", "same", "stuck") if placed else ("closes", "same"))


def _at(tokens: Sequence[Token], place: int, section: str) -> Iterator[int]:
    """How many tokens the ways of a section that begin at a place take, the most first.

    A single word counts where the lexicon does not have it, or has it as one for "is" or "say".
    """
    first = _PART.match(tokens[place].text)
    for way in _ways(section).get(first[0], ()) if first is not None else ():
        end, words = place, list(way)
        while words and end < len(tokens):
            token = tokens[end]
            parts = _PART.findall(token.text)
            if parts != words[: len(parts)] or not (parts or token.text in _INSIDE):
                break
            words, end = words[len(parts) :], end + 1
        known = tokens[place].kind != "word" and tokens[place].value not in {"make", "link"}
        if not words and (len(way) > 1 or not known or section in _OTHERWISE):
            yield end - place


def _names_tank(tokens: Sequence[Token], names: Sequence[str]) -> bool:
    """Whether words may be the beginning of a tank's name."""
    said = " ".join(token.text for token in tokens)
    return any(name.startswith(said) for name in names)


def _lighten(tokens: Sequence[Token]) -> None:
    for token in tokens:
        token.kind, token.value = "fill", "fill"


def _kits(tokens: list[Token], names: Sequence[str]) -> None:
    """Let what it was measured with be a kit, beside which a number may be what it cost."""
    for place in range(len(tokens)):
        for size in _at(tokens, place, "kit"):
            told = tokens[place : place + size]
            if not _names_tank(told, names):
                _lighten(told)
                told[-1].value = "kit"
                break


def _asides(tokens: list[Token], names: Sequence[str]) -> None:
    for place in range(len(tokens)):
        for size in _at(tokens, place, "aside"):
            told = tokens[place : place + size]
            slip = size == 1 and len(told[0].text) < _LONG and bears(told[0].text)
            if not _names_tank(told, names) and not (slip and not _opens(tokens, place)):
                _lighten(told)
                break
        for size in _at(tokens, place, "told"):
            told = tokens[place : place + size]
            if _names_value(tokens, place + size) and not _names_tank(told, names):
                _lighten(told)
                break


def _opens(tokens: Sequence[Token], place: int) -> bool:
    """Whether a word stands before all that is told: `mist, kh 1` has no slip of `must`."""
    before, behind = tokens[:place], tokens[place + 1 :]
    led = all(token.kind in {"fill", "p", "tank", "time"} for token in before)
    named = next((t for t in behind if t.kind != "fill" and t.text not in _PAUSES), None)
    return led and named is not None and named.kind == "analyte"


def _names_value(tokens: Sequence[Token], place: int) -> bool:
    """Whether a name stands at a place, behind words without weight."""
    while place < len(tokens) and tokens[place].kind == "fill":
        place += 1
    return place < len(tokens) and tokens[place].kind == "analyte"


def _timed(tokens: Sequence[Token]) -> bool:
    """Whether a line tells a time that is not of today."""
    return any(token.kind == "time" and token.value not in _NOW for token in tokens)


def _gaps(tokens: list[Token]) -> bool:
    """Read what stands between names and their numbers, where all of it is known.

    Returns whether a verb was among it.
    """
    placed = False
    for name, token in enumerate(tokens):
        if token.kind != "analyte":
            continue
        gap = _gap(tokens, name + 1)
        if gap is None:
            continue
        _lighten(tokens[name + 1 : gap.end])
        last = tokens[gap.end - 1]
        last.kind, last.value = "mark", "approx" if gap.near else "link"
        placed = placed or gap.placed
    return placed


class _Gap:
    """What was read of a gap so far.

    `near` tells that its number is none told sharply, `placed` that a verb holds it where it is,
    `is_so` that a verb or a word for "is" stands right before.
    """

    __slots__ = ("deep", "end", "is_so", "near", "placed", "read")

    def __init__(self) -> None:
        self.end = 0
        self.near = self.placed = self.is_so = self.deep = self.read = False


def _gap(tokens: Sequence[Token], place: int) -> _Gap | None:
    """What stands between a place and the number behind it; None where there is more in it."""
    gap, first, same = _Gap(), place, not _timed(tokens)
    while place < len(tokens) and place - first < MOST_GAP:
        token = tokens[place]
        if is_number(token) or token.kind == "count" or token.value in _QUALIFIES:
            if not gap.read or _goes_on(tokens, place + 1):
                return None
            gap.end = place
            gap.near = gap.near and is_number(token)
            return gap
        size = _step(tokens, place, gap, same=same)
        if not size:
            return None
        place += size
    return None


def _goes_on(tokens: Sequence[Token], place: int) -> bool:
    """Whether a number is one of hours, or of a move that is told behind it: `auf 8 gestiegen`."""
    if place < len(tokens) and tokens[place].value in _OF_TIME:
        return True
    while place < len(tokens) and tokens[place].kind in {"fill", "unit"}:
        place += 1
    return place < len(tokens) and tokens[place].value in _MOVES


def _step(tokens: Sequence[Token], place: int, gap: _Gap, *, same: bool) -> int:
    """How many tokens of a gap are read at a place; 0 where it is none of a gap."""
    token = tokens[place]
    verb = next(_at(tokens, place, "verb"), 0) or next(_at(tokens, place, "shown"), 0)
    if verb:
        gap.placed = gap.is_so = gap.read = True
        gap.deep = False
        return verb
    for section in ("about", "around", "at", "high", "only", "degree", "same"):
        size = next(_at(tokens, place, section), 0)
        if section == "high" and gap.deep:
            size = size or _known_high(tokens, place)
        bound = {"around": gap.placed, "at": gap.is_so or gap.placed, "same": same}
        if not size or not bound.get(section, True):
            continue
        gap.read = gap.read or section != "degree"
        gap.near = gap.near or section in {"about", "around"}
        gap.deep = section == "degree"
        return size
    if token.value == "approx":
        gap.near = True
    elif token.value == "link" and token.text[0].isalpha():
        gap.is_so = True
    elif token.kind != "fill" and token.value != "now" and token.text != "'":
        return 0
    return 1


def _known_high(tokens: Sequence[Token], place: int) -> int:
    """Whether a word that tells of a move elsewhere is one for high here: `ziemlich hoch`."""
    token = tokens[place]
    told = token.value in {"up", "down"} and (token.text,) in _ways("high").get(token.text, ())
    return int(told)


def _found(tokens: list[Token], names: Sequence[str], sections: Sequence[str]) -> None:
    """Take weight from what is thought of a number, where nothing else is said of it there."""
    same = not _timed(tokens)
    for place in range(1, len(tokens)):
        if not _behind_number(tokens, place):
            continue
        size = _thought(tokens, place, sections if same else sections[:1])
        if size and not _names_tank(tokens[place : place + size], names):
            _lighten(tokens[place : place + size])
    for size in _at(tokens, 0, "same") if same else ():
        if size < len(tokens) and tokens[size].kind == "analyte":
            _lighten(tokens[:size])
            break


def _thought(tokens: Sequence[Token], place: int, sections: Sequence[str]) -> int:
    """How many tokens of what is thought of a number, or closes what is told of it, stand here."""
    for section in sections:
        for size in _at(tokens, place, section):
            if _ends(tokens, place + size):
                return size
    ends = [place]
    for section in ("no", "degree"):
        end = ends[-1] + (next(_at(tokens, ends[-1], section), 0) if ends[-1] < len(tokens) else 0)
        while end > ends[-1] and end < len(tokens) and tokens[end].value == "fill":
            end += 1
        ends.append(end)
    for end in [each for each in ends if each < len(tokens)]:
        for size in _at(tokens, end, "found"):
            if _ends(tokens, end + size):
                return end + size - place
        if end > place and tokens[end].value == "judge" and _ends(tokens, end + 1):
            return end + 1 - place
    return 0


def _behind_number(tokens: Sequence[Token], place: int) -> bool:
    place -= 1
    while place > 0 and (tokens[place].kind == "fill" or tokens[place].text in _PAUSES):
        place -= 1
    token = tokens[place]
    return is_number(token) or token.kind in {"unit", "count"} or token.value in {"nd", "zero"}


def _ends(tokens: Sequence[Token], place: int) -> bool:
    """Whether what is said of a number is at its end at a place."""
    while place < len(tokens) and tokens[place].kind == "fill":
        place += 1
    if place >= len(tokens):
        return True
    token = tokens[place]
    return token.kind in {"nl", "analyte"} or token.text in _ENDS or token.value == "and"
