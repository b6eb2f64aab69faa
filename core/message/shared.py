"""What is told once for several numbers: a name for several tanks or times, a unit.

line  = name [ "is" ] { tank number [ "," ] } | tank name number { [ "," ] tank number }
times = name number time { number time } | time name number { time number }

`ph: fern 7.2, quarry 8.1` has two tanks at least and nothing else in the line; then each number is
given the name. So is each number with a time of its own: `kh 3 yesterday 4 today`. What may be an
hour (`kh 3 yesterday 8 in the morning`) is given none and stays in doubt, and so is a number
without the unit that the first one has. The unit behind the last hardness is also that of one
before it which can be told in no other: `gh 180 kh 120 ppm`.
"""

from __future__ import annotations

import re
from typing import Final

from core.message import quantities, times
from core.message.candidates import Candidate
from core.message.clockwords import may_be_part, part_of_day
from core.message.guesses import believable
from core.message.model import Context
from core.message.quantities import Quantity
from core.message.token import is_number
from core.message.tokens import Token
from core.units import FACTORS

_SEPARATORS = frozenset({",", ";", "|", "/", "."})
_TIMED: Final = frozenset({"time", "iso", "clock", "dotted", "slashed"})
_MOST: Final = 8
"""Names of a message, and further numbers of each, that are looked at: a time takes long."""
_HOUR: Final = re.compile(r"(?:[01]?\d|2[0-4])(?:[.,:][0-5]\d)?")
"""A number as an hour may be written."""


def spread(tokens: list[Token]) -> list[Token]:
    """The tokens of a line with its one name before the number of each tank."""
    names = [token for token in tokens if token.kind == "analyte"]
    if len(names) != 1 or sum(token.kind == "tank" for token in tokens) < 2:
        return tokens
    out: list[Token] = []
    index = told = 0
    if tokens[0] is names[0]:
        index = _past_links(tokens, 1)
    while index < len(tokens):
        if tokens[index].kind != "tank":
            return tokens
        place = _past_links(tokens, index + 1)
        if place < len(tokens) and tokens[place] is names[0] and not told:
            place = _past_links(tokens, place + 1)
        quantity = quantities.read(tokens, place) if place < len(tokens) else None
        if quantity is None:
            return tokens
        start = tokens[place].start
        name = Token("analyte", names[0].value, names[0].text, start, start)
        out += [tokens[index], name, *tokens[place : quantity.last]]
        told += 1
        index = quantity.last
        while index < len(tokens) and (
            tokens[index].text in _SEPARATORS or tokens[index].value == "and"
        ):
            out.append(tokens[index])
            index += 1
    return out


def _past_links(tokens: list[Token], place: int) -> int:
    while place < len(tokens) and tokens[place].value == "link":
        place += 1
    return place


def over_times(tokens: list[Token], context: Context) -> list[Token]:
    """The tokens with a name told once before each number that has a time of its own."""
    if sum(map(is_number, tokens)) < 2 or not any(token.kind == "analyte" for token in tokens):
        return tokens
    if not any(token.kind in _TIMED or may_be_part(token.text) for token in tokens):
        return tokens
    out: list[Token] = []
    index = tried = 0
    while index < len(tokens):
        named = tokens[index].kind == "analyte" and tried < _MOST
        tried += named
        found = _over(tokens, index, context) if named else None
        if found is None:
            out.append(tokens[index])
            index += 1
            continue
        told, index = found
        out += told
    return out


def _over(tokens: list[Token], index: int, context: Context) -> tuple[list[Token], int] | None:
    """A name with its numbers and times from `index` on, and the index behind; None for one."""
    name = tokens[index]
    place = _past_links(tokens, index + 1)
    if place < len(tokens) and tokens[place].value == "was":
        place += 1
    first = quantities.read(tokens, place) if place < len(tokens) else None
    if first is None or first.problem is not None:
        return None
    leads = _led_by_time(tokens, index, context)
    out = tokens[index : first.last]
    end, parted = first.last, 0
    while parted < _MOST and (time := _time_at(tokens, end, context)) is not None:
        number = quantities.read(tokens, time) if time < len(tokens) else None
        if number is None or not is_number(tokens[time]) or number.problem is not None:
            break
        own = _time_at(tokens, number.last, context)
        hour = _HOUR.fullmatch(tokens[time].text) and number.unit is None
        if leads:
            before = tokens[end:time]
            fits = own is None and not (hour and [each.value for each in before] != ["now"])
        else:
            bare = part_of_day(tokens, number.last, of_day=True)[1]
            fits = own is not None and not (hour and bare and not _has_part(tokens, end, time))
        if not fits or times.find(tokens, time, context) or not _alike(name, first, number):
            break
        start = tokens[time].start
        again = Token("analyte", name.value, name.text, start, start)
        out += [*tokens[end:time], again, *tokens[time : number.last]]
        end, parted = number.last, parted + 1
    if not parted:
        return None
    if not leads and (time := _time_at(tokens, end, context)) is not None:
        out += tokens[end:time]
        end = time
        if end < len(tokens) and tokens[end].kind == "analyte":
            out.append(Token("p", ",", ",", tokens[end].start, tokens[end].start))
    return out, end


def _led_by_time(tokens: list[Token], index: int, context: Context) -> bool:
    """Whether a time opens the line, right before the name."""
    start = max((place for place in range(index) if tokens[place].kind == "nl"), default=-1) + 1
    return start < index and _time_at(tokens, start, context) == index


def _time_at(tokens: list[Token], place: int, context: Context) -> int | None:
    """The index behind the time that begins at `place`; None where none does."""
    if place >= len(tokens):
        return None
    found = times.find(tokens, place, context)
    if found is not None:
        return found.end
    used = part_of_day(tokens, place, of_day=True)[1]
    return place + used if used else None


def _has_part(tokens: list[Token], start: int, end: int) -> bool:
    """Whether a time tells its hour or its part of the day, so that no hour is to follow."""
    told = tokens[start:end]
    if any(token.kind == "clock" or token.value in _WITH_HOUR for token in told):
        return True
    return any(part_of_day(tokens, place, of_day=True)[1] for place in range(start, end))


_WITH_HOUR: Final = frozenset(
    {
        "now", "ago", "am", "pm", "noon", "midnight", "oclock", "morning", "afternoon", "evening",
        "last_night", "yesterday_morning", "yesterday_evening",
    }
)  # fmt: skip


_BY_RULE: Final = {("temperature", "°F"): 0.0, ("salinity", "SG"): 0.0}
"""Units that no factor turns into the canonical one."""


def _alike(name: Token, first: Quantity, number: Quantity) -> bool:
    """Whether a number is in a unit of its own, or none was needed to tell the first one's."""
    analyte = str(name.value).partition("@")[0]
    if number.unit is not None and (analyte, number.unit) not in FACTORS | _BY_RULE:
        return False
    plain = first.unit is None or FACTORS.get((analyte, first.unit)) == 1.0
    return plain or number.unit is not None


def unit_of_last(candidates: list[Candidate]) -> None:
    """Give the unit of a hardness to the one before it that has none and needs it."""
    told: list[Candidate] = []
    for candidate in sorted(candidates, key=lambda each: each.start):
        if candidate.analyte not in {"kh", "gh"}:
            continue
        unit = candidate.quantity.unit
        if unit in _MASSES and told:
            before = told[-1]
            value = before.quantity.value
            bare = before.quantity.unit is None and before.problem is None and not before.choices
            another = value is not None and bare and before.analyte != candidate.analyte
            if another and _needs(before.analyte, value or 0.0, unit):
                before.quantity.unit = unit
                before.quantity.unit_text = candidate.quantity.unit_text
        told.append(candidate)


_MASSES: Final = frozenset({"ppm", "mg/L"})


def _needs(analyte: str, number: float, unit: str | None) -> bool:
    """Whether a number is one of an analyte in a unit, and none of it without."""
    return believable(analyte, number, unit) and not believable(analyte, number, None)
