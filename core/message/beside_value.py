"""What stands beside a value and says nothing of it, or names it in a way that no word list can.

beside = opening "." values | values [ "," ] "next?" | values checker colour | "am" number
       | hedge value | value hedge | name colour number | drops turn
       | span "later" values | values span "later"

`back. ph 6.4` tells who is there again, `kh 4, next?` asks what comes then, and `drop checker
yellow` is a sign (`signs`). Of any colour it is as unsure as `kh 3 i think` tells. `am` is ammonia
before a number that no clock or calendar shows. `kh took 4 drops to turn` is a value in drops, told
by how its test changed colour; `3 hrs later kh 5` is of now, where no deed is told beside it.
"""

from __future__ import annotations

import re
from functools import cache
from itertools import pairwise
from typing import Final

from core.message import signs
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.numbered import places
from core.message.plain_tail import is_colour
from core.message.token import Token, is_number
from core.message.tokens import cut
from core.message.wordfile import spelt

_MARKS: Final = frozenset({".", ",", ":", ";", "!", "-", "–", "..", "..."})
_ASKS: Final = frozenset({"?", ".", "!"})
_PART: Final = re.compile(r"[^\W_]+")
_NO_TIME: Final = re.compile(r"(?:0?[.,]\d{1,3}|0|[0-8][.,]0)")
"""A number that ammonia may have and that is no hour and no day: 0.5, .25, 0, 2.0."""
_MOST_AMMONIA: Final = 8.0
_PER_LITRE: Final = frozenset({"ppm", "mg/l"})


_SECTIONS: Final = frozenset(
    {"opens", "next", "hedge", "begun", "took", "turned", "at drops", "till", "later", "looked"}
)


@cache
def _ways(section: str) -> frozenset[tuple[str, ...]]:
    told = spelt("beside_value.txt", _SECTIONS)
    return frozenset(
        tuple(_PART.findall(fold(way))) for of, _language, these in told if of == section
        for way in these
    )  # fmt: skip


def set_aside(tokens: list[Token], source: str) -> None:
    """Take weight from what says nothing of a line's values, and name `am 0.5`."""
    _as_ammonia(tokens, source)
    if not any(token.kind == "analyte" for token in tokens):
        return
    start = 1 if tokens[0].kind == "tank" else 0
    size = max((n for n in range(1, 5) if _opens(tokens[start:], n)), default=0)
    for token in tokens[start : start + size]:
        _lighten(token)
    for token in _tail(tokens):
        _lighten(token)
    _hedges(tokens)
    _turned(tokens)
    _looked(tokens)
    _later(tokens)
    _begun(tokens)
    _said_twice(tokens)
    span = signs.checker(source)
    inside = [t for t in tokens if span and span[0] <= t.start and t.end <= span[1]]
    if not any(token.value == "not" or token.kind == "number" for token in inside):
        for token in inside:
            _lighten(token)


def is_opening(word: str) -> bool:
    """Whether a plain word may open a message and say nothing of what follows (alors, bitte)."""
    return (word,) in _ways("opens")


def asks_next(text: str) -> bool:
    """Whether a text ends with a question of what comes next.

    Examples
    --------
    >>> asks_next("kh 4, next?"), asks_next("kh 4 und jetzt?"), asks_next("kh 4 next week?")
    (True, True, False)
    """
    words = tuple(_PART.findall(fold(text)))
    return text.rstrip().endswith("?") and any(words[-n:] in _ways("next") for n in range(1, 6))


def _lighten(token: Token) -> None:
    token.kind, token.value = "fill", "fill"


def _words(tokens: list[Token]) -> tuple[str, ...]:
    return tuple(part for token in tokens for part in _PART.findall(token.text))


def _opens(tokens: list[Token], size: int) -> bool:
    marked = len(tokens) > size + 1 and tokens[size].text in _MARKS
    if marked and size == 1 and tokens[1].text == ":" and tokens[0].text in places():
        return False  # back: kh 5 is of the tank there
    return marked and _words(tokens[:size]) in _ways("opens")


def _tail(tokens: list[Token]) -> list[Token]:
    """The words at the end of a line that ask what comes next, with no number behind them."""
    last = len(tokens)
    while last and tokens[last - 1].text in _ASKS:
        last -= 1
    asked = any(token.text == "?" for token in tokens[last:])
    for size in range(min(5, last - 1), 0, -1) if asked else ():
        found = tokens[last - size : last]
        if _words(found) in _ways("next"):
            return [*found, *tokens[last:]]
    return []


def _hedges(tokens: list[Token]) -> None:
    """Let what tells how sure a value is, before its name or behind its number, say no more."""
    for place, token in enumerate(tokens):
        for size in range(_LONGEST, 0, -1):
            if token.kind in {"analyte", "number"} or place + size > len(tokens):
                continue
            found, behind = tokens[place : place + size], tokens[place + size : place + size + 1]
            led = place > 0 and tokens[place - 1].kind in {"number", "unit"}
            ends = not behind or behind[0].text in _MARKS or behind[0].kind == "nl"
            opens = place == 0 or tokens[place - 1].text in _MARKS
            names = bool(behind) and behind[0].kind == "analyte"
            if ((led and ends) or (opens and names)) and _words(found) in _ways("hedge"):
                for each in found:
                    _lighten(each)
                if led:
                    token.kind, token.value = "mark", "hedge"
                break


@cache
def _words_of(section: str) -> frozenset[str]:
    return frozenset(word for way in _ways(section) for word in way)


def _turned(tokens: list[Token]) -> None:
    """Take weight from how a test turned, beside the drops that it took, and from nothing else.

    ``kh changed 4 drops`` may be by how much it moved, and in ``kh 4 drops, changed`` it is water.
    """
    drops = [place for place, token in enumerate(tokens) if is_number(token)]
    names = [place for place, token in enumerate(tokens) if token.kind == "analyte"]
    if len(drops) != 1 or len(names) != 1 or tokens[drops[0] + 1 : drops[0] + 2] == []:
        return
    number, unit = drops[0], drops[0] + 1
    if tokens[unit].value != "drops":
        return
    told: list[tuple[int, str]] = []
    for place, token in enumerate(tokens):
        if place in {number, unit, names[0]} or token.kind == "fill" or token.text in _ENDS:
            continue
        words = _words([token])
        kinds = ("took", "turned", "till") if place > unit else ("took", "turned", "at drops")
        kind = next((each for each in kinds if words and _words_of(each) >= set(words)), "")
        if not kind and not (words and all(map(is_colour, words))):
            return
        told.append((place, kind))
    said = any(kind == "turned" or (kind == "took" and at < number) for at, kind in told)
    turns = [place for place, kind in told if kind == "turned"]
    led = bool({(number - 1, "at drops"), (number - 1, "took")} & set(told))
    tills = [place for place, kind in told if kind == "till"]
    late = all(any(unit < till < turn for till in tills) for turn in turns if turn > unit)
    if not said or not (led or (late and all(turn > unit for turn in turns))):
        return
    for place, _kind in told:
        _lighten(tokens[place])


_ENDS: Final = frozenset({".", "!", ","})


def _looked(tokens: list[Token]) -> None:
    """Take weight from the colour by which a number was read: chlorine a bit pink maybe 0.5."""
    for place, token in enumerate(tokens):
        if token.kind != "analyte":
            continue
        last = place + 1
        while last < len(tokens) and not is_number(tokens[last]) and _shows(tokens[last]):
            last += 1
        between = tokens[place + 1 : last]
        ends = tokens[last : last + 1]
        coloured = any(is_colour(word) for each in between for word in _words([each]))
        if coloured and ends and is_number(ends[0]):
            for each in between:
                _lighten(each)


def _shows(token: Token) -> bool:
    words = _words([token])
    if not words:
        return token.text in {",", "-", "~"}
    return all(is_colour(word) or word in _words_of("looked") for word in words)


def _later(tokens: list[Token]) -> None:
    """Take weight from how long after something unsaid the values of a line were measured."""
    if any(token.kind in {"event", "substance", "ask"} for token in tokens):
        return
    for place, token in enumerate(tokens):
        if not place or _words([token]) not in _ways("later"):
            continue
        first = place - 1
        if tokens[first].value not in _SPANS:
            continue
        if is_number(tokens[first - 1]):
            first -= 1
        while first and tokens[first - 1].value in _SOME:
            first -= 1
        opens = all(_leads(each) for each in tokens[:first])
        closes = all(each.kind in {"fill", "p"} for each in tokens[place + 1 :])
        if first < place - 1 and (opens or closes):
            for each in tokens[first : place + 1]:
                _lighten(each)
        return


def _leads(token: Token) -> bool:
    return token.kind in {"fill", "p", "tank"} or token.value in {"home", "and"}


_SPANS: Final = frozenset({"minute", "hour", "day", "week", "oclock"})
_SOME: Final = frozenset({"one", "some", "half"})


def _begun(tokens: list[Token]) -> None:
    """Leave out when the tank was set up, which is no time of its values."""
    first, _day, end = _beginning(tokens)
    for each in tokens[first:end]:
        _lighten(each)


def set_up_day(source: str) -> str | None:
    """The words of the day on which a tank was set up, told beside its values; None without one.

    Examples
    --------
    >>> set_up_day("tank set up 2 weeks ago, ph 7"), set_up_day("ph 7 yesterday")
    ('2 weeks ago', None)
    """
    tokens = cut(fold(source), lexicon(), source)
    _first, day, end = _beginning(tokens)
    return source[tokens[day].start : tokens[end - 1].end] if end else None


def _beginning(tokens: list[Token]) -> tuple[int, int, int]:
    """Where words for a tank's beginning and its day stand: their first, the day's, the end."""
    for place in range(len(tokens)):
        for size in range(_LONGEST, 0, -1):
            if _words(tokens[place : place + size]) not in _ways("begun"):
                continue
            end = place + size
            while end < len(tokens) and _of_time(tokens, end):
                end += 1
            if any(token.kind in _DAYS for token in tokens[place + size : end]):
                return place, place + size, end
            break
    return 0, 0, 0


def _of_time(tokens: list[Token], place: int) -> bool:
    """Whether a token tells a day, or counts days."""
    token, behind = tokens[place], tokens[place + 1 : place + 2]
    counted = token.kind in {"number", "count"} and bool(behind) and behind[0].kind in _DAYS
    return counted or token.kind in _DAYS


_DAYS: Final = frozenset({"time", "iso", "dotted", "slashed"})


def _said_twice(tokens: list[Token]) -> None:
    """Take weight from `not detected` behind a 0: ammonia 0 (nd)."""
    for place, token in enumerate(tokens):
        behind = place + 1
        while behind < len(tokens) and tokens[behind].text in _OPEN:
            behind += 1
        if token.text != "0" or behind == len(tokens) or tokens[behind].value != "nd":
            continue
        ends = tokens[behind + 1 : behind + 2]
        closed = bool(ends) and ends[0].text == ")"
        for each in tokens[place + 1 : behind + 1 + closed]:
            _lighten(each)


_OPEN: Final = frozenset({"(", "-", "–", ",", "="})

_LONGEST: Final = 6
"""Words of the longest hedge."""


def _as_ammonia(tokens: list[Token], source: str) -> None:
    """`am 0.5` behind no number: an hour would stand before it, a day has no such fraction."""
    before: Token | None = None
    for am, number in pairwise(tokens):
        if am.text == "am" and am.kind == "time" and number.kind == "number":
            led = before is not None and before.kind in {"number", "clock", "fraction", "count"}
            behind = source[number.end : number.end + 6].strip().lower()
            said = number.text.replace(",", ".")
            plain = said.replace(".", "", 1).isdigit() and float(said) <= _MOST_AMMONIA
            sure = _NO_TIME.fullmatch(number.text) or behind.startswith(tuple(_PER_LITRE))
            if plain and sure and not led:
                am.kind, am.value = "analyte", "ammonia"
        before = am
