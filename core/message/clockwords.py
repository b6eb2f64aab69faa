"""Hours as they are spoken: half past seven, halb acht, las siete y media, wpół do ósmej.

The patterns are data, the section ``[clock]`` of each language's file. ``{hour}`` is 0 to 24 in
digits or words, ``{minute}`` 1 to 59. The id is what the pattern adds to the hour in minutes,
``past`` or ``to`` where the minutes are said, or a time of day; with ``@`` a pattern stands only
behind a word for "at", a part of the day only behind a day. `half eight` is 8:30 in English and
7:30 in Dutch: the hour's word decides, then the other words of the message, and without either it
is asked.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from core.message.lexicon import lexicon
from core.message.timeparts import number
from core.message.tokens import Token

_REACH = 8
"""Words that the longest pattern may have."""
_SAID = frozenset({"number", "count", "word", "several"})
"""Kinds of the tokens that can say an hour."""
_HEARD = 12
"""Tokens on either side of an hour whose languages are counted."""
PARTS = frozenset({"morning", "afternoon", "evening", "night"})


@dataclass(frozen=True, slots=True)
class Spoken:
    """An hour as spoken, in minutes from midnight; `exact` where no half of the day is left open.

    `other` is what it means in another language where nothing tells which was meant.
    """

    minutes: int
    length: int
    exact: bool
    other: int | None = None


@dataclass(frozen=True, slots=True)
class _Pattern:
    pieces: tuple[str, ...]
    adds: str
    behind_at: bool
    language: str


@dataclass(frozen=True, slots=True)
class _Patterns:
    by_first: dict[str, list[_Pattern]]
    by_second: dict[str, list[_Pattern]]
    hours: dict[str, int]
    parts: dict[str, list[tuple[tuple[str, ...], str]]]


@lru_cache(maxsize=1)
def _patterns() -> _Patterns:
    by_first: dict[str, list[_Pattern]] = {}
    by_second: dict[str, list[_Pattern]] = {}
    hours: dict[str, int] = {}
    parts: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for name, pieces, language in lexicon().clocks:
        if name.rstrip("@") in PARTS:
            parts.setdefault(pieces[0], []).append((pieces, name))
        elif name.startswith("hour"):
            hours[pieces[0]] = int(name[4:])
        else:
            adds, at, _ = name.partition("@")
            counted = pieces[0][0] == "{"
            known = by_second.setdefault(pieces[1], []) if counted else None
            known = by_first.setdefault(pieces[0], []) if known is None else known
            known.append(_Pattern(pieces, adds, bool(at), language))
    for found in parts.values():
        found.sort(key=lambda each: -len(each[0]))
    return _Patterns(by_first, by_second, hours, parts)


def may_begin(tokens: list[Token], place: int) -> bool:
    """Whether a spoken hour may begin at a token, by it and the word behind it."""
    text = tokens[place].text
    known = _patterns()
    if text.partition(" ")[0] in known.by_first:
        return True
    if text in known.hours:
        return True
    following = tokens[place + 1].text.partition(" ")[0] if place + 1 < len(tokens) else ""
    return following in known.by_second and _value(tokens[place]) is not None


def words() -> frozenset[str]:
    """All first words of patterns, and second ones behind a number."""
    return _words()


@lru_cache(maxsize=1)
def _words() -> frozenset[str]:
    known = _patterns()
    return frozenset({*known.by_second, *known.hours, *known.by_first})


def part_of_day(tokens: list[Token], place: int, *, of_day: bool = False) -> tuple[str, int]:
    """The part of a day told at `place` (`in the evening`, `abends`), and its tokens.

    `of_day` tells that a day stands before it: `sonntag morgen` is no tomorrow.
    """
    if place >= len(tokens):
        return "", 0
    known = _patterns().parts.get(tokens[place].text.partition(" ")[0])
    if known is None:
        return "", 0
    pieces, ends = _pieces(tokens, place, _REACH)
    for wanted, name in known:
        told = tuple(pieces[: len(wanted)]) == wanted and ends[len(wanted) - 1]
        if told and (of_day or name[-1] != "@"):
            return name.rstrip("@"), ends[len(wanted) - 1]
    return "", 0


def may_be_part(text: str) -> bool:
    """Whether a part of a day may begin with a word."""
    return text.partition(" ")[0] in _patterns().parts


def find(tokens: list[Token], place: int, *, behind_at: bool) -> Spoken | None:
    """The hour spoken at `place`, the longest that fits; None where none is."""
    known = _patterns()
    token = tokens[place]
    tried = known.by_first.get(token.text.partition(" ")[0], [])
    if token.kind in _SAID and place + 1 < len(tokens):
        second = known.by_second.get(tokens[place + 1].text.partition(" ")[0])
        if second is not None and _value(token) is not None:
            tried = [*tried, *second]
    if not tried and token.text not in known.hours:
        return None
    reach = max([len(pattern.pieces) for pattern in tried], default=1)
    pieces, ends = _pieces(tokens, place, reach)
    found: list[tuple[int, int, str, bool]] = []
    for pattern in tried:
        if pattern.behind_at and not behind_at:
            continue
        told = _told(pattern, pieces, ends, tokens, place)
        if told is not None and not _goes_on(tokens, place + told[0]):
            found.append((*told, pattern.language, ":" in pattern.adds))
    if not found and behind_at and tokens[place].text in known.hours:
        hour = known.hours[tokens[place].text]  # "o siódmej"
        return Spoken(hour % 24 * 60 if hour > 12 else hour % 12 * 60, 1, hour > 12)
    if not found:
        return None
    longest = max(length for length, _, _, _ in found)
    best = [each for each in found if each[0] == longest]
    chosen = _of_language(best, tokens, place)
    minutes = sorted({each[1] for each in chosen})
    exact = minutes[0] >= 13 * 60 or any(each[3] for each in chosen)
    other = minutes[1] if len(minutes) > 1 else None
    return Spoken(minutes[0], longest, exact, other)


def _pieces(tokens: list[Token], place: int, reach: int) -> tuple[list[str], list[int]]:
    """The words from `place` on, and for each the number of tokens that end with it, else 0."""
    pieces: list[str] = []
    ends: list[int] = []
    for count, token in enumerate(tokens[place : place + reach], 1):
        if " " in token.text and token.kind != "count":
            said = token.text.split()
            pieces += said
            ends += [0] * (len(said) - 1)
        else:
            pieces.append(token.text)
        ends.append(count)
        if len(pieces) >= reach:
            break
    return pieces, ends


def _value(token: Token) -> int | None:
    """The whole number under 60 that a token says."""
    if token.kind == "count":
        found: float | None = float(str(token.value))
    elif token.kind == "number":
        found = number(token) if len(token.text) < 3 else None
    else:
        return _patterns().hours.get(token.text)
    return int(found) if found is not None and found == int(found) and 0 <= found < 60 else None


def _told(
    pattern: _Pattern, pieces: list[str], ends: list[int], tokens: list[Token], place: int
) -> tuple[int, int] | None:
    """The tokens that a pattern takes, and the minutes from midnight that it then tells."""
    count = len(pattern.pieces)
    if len(pieces) < count or not ends[count - 1]:
        return None
    hour, minute = None, 0
    for index, wanted in enumerate(pattern.pieces):
        if wanted[0] != "{":
            if pieces[index] != wanted:
                return None
            continue
        if not ends[index]:
            return None
        token = tokens[place + ends[index] - 1]
        number = _value(token)
        if number is None or (wanted == "{minute}" and not _a_minute(token, number, pattern)):
            return None
        if wanted == "{hour}":
            hour = number
        else:
            minute = number
    return _minutes(pattern.adds, hour, minute, ends[count - 1])


def _a_minute(token: Token, number: int, pattern: _Pattern) -> bool:
    """Whether a number can be minutes; "10 to 8" in digits is a range."""
    return 0 < number < 60 and (
        pattern.adds != "to" or pattern.language != "en" or (token.kind == "count" and number < 30)
    )


def _minutes(adds: str, hour: int | None, minute: int, length: int) -> tuple[int, int] | None:
    if ":" in adds:
        hours, minutes = adds.split(":")
        return length, int(hours) * 60 + int(minutes)
    if hour is None or hour > 24:
        return None
    added = {"past": minute, "to": -minute}.get(adds)
    added = int(adds) if added is None else added
    if added and hour > 12:
        return None  # nobody says half past thirteen
    return length, (hour * 60 + added) % (12 * 60 if hour <= 12 else 24 * 60)


def _goes_on(tokens: list[Token], after: int) -> bool:
    """Whether what follows makes the hour a number of something else (`vor 8 stunden`)."""
    if after >= len(tokens):
        return False
    following = tokens[after]
    measured = {"minute", "hour", "day", "week", "month", "ago"}
    return following.kind == "unit" or (following.kind == "time" and following.value in measured)


def _of_language(
    best: list[tuple[int, int, str, bool]], tokens: list[Token], place: int
) -> list[tuple[int, int, str, bool]]:
    """Of patterns that mean different hours, those of the language that is spoken."""
    if len({each[1] for each in best}) < 2:
        return best
    known = lexicon().languages
    near = tokens[place : place + best[0][0]]
    others = (
        tokens[max(place - _HEARD, 0) : place]
        + tokens[place + len(near) : place + len(near) + _HEARD]
    )
    for heard in ([t for t in near if t.kind == "count"], others):
        votes = {each[2]: 0.0 for each in best}
        for token in heard:
            spoken = known.get(token.text, frozenset()) - {"common"}
            for language in votes.keys() & spoken:
                votes[language] += 1.0 / len(spoken)
        most = max(votes.values())
        best = [each for each in best if votes[each[2]] == most] if most else best
    return best
