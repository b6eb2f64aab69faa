"""Calendar dates: 4 May, May 4th 2027, 2026-05-04, 4.5., 4/5."""

from __future__ import annotations

from datetime import datetime

from core.schedule.notation import MONTHS
from core.schedule.pieces import Dated, Exact, Flaw
from core.schedule.rules import days_in_month
from core.schedule.tokens import Line, Parsed, first_of

DateLike = Dated | Exact | Flaw
_ISO_DATE = 5
"""Tokens of an ISO date: 2026 - 05 - 04."""


def date_piece(line: Line, i: int) -> Parsed[DateLike]:
    """date_piece := iso | day_month | month_day | dotted | slashed."""
    return first_of(line, i, iso, day_month, month_day, dotted, slashed)


def iso(line: Line, i: int) -> Parsed[DateLike]:
    """iso := YYYY "-" MM "-" DD ["T" clock [offset]], as ISO 8601; zeros may be missing."""
    tokens = line.tokens[i : i + _ISO_DATE]
    if len(tokens) < _ISO_DATE or len(tokens[0].text) != 4:
        return None
    if not all(token.glued for token in tokens[1:]) or tokens[1].text + tokens[3].text != "--":
        return None
    if len(tokens[2].text) > 2 or len(tokens[4].text) > 2:
        return None
    numbers = [line.digits(i), line.digits(i + 2), line.digits(i + 4)]
    if not all(numbers):
        return None
    year, month, day = (int(number[0]) for number in numbers if number is not None)
    end = i + _ISO_DATE
    if line.is_glued(end) and line.tokens[end].folded == "t":
        return _iso_moment(line, i, end)
    return _checked(year, month, day), end


def _iso_moment(line: Line, i: int, end: int) -> Parsed[DateLike]:
    """The moment that the tokens without spaces between them write."""
    while line.is_glued(end) and line.tokens[end].text not in ",;":
        end += 1
    start, stop = line.span(i, end)
    try:
        return Exact(datetime.fromisoformat(line.text[start:stop].rstrip(".!?").upper())), end
    except ValueError:
        return Flaw("impossible"), end


def day_month(line: Line, i: int) -> Parsed[DateLike]:
    """day_month := [THE] day [ORDINAL_ENDING | "."] [OF] MONTH ["."] [[","] year]."""
    day = ordinal_day(line, line.skip(i, "the"))
    if day is None:
        return None
    after = line.sign(day[1], ".", "-")
    month = line.word(line.skip(day[1] if after is None else after[1], "of"), "month")
    if month is None:
        return None
    return _with_year(line, _after_dot(line, month[1]), month[0], day[0])


def month_day(line: Line, i: int) -> Parsed[DateLike]:
    """month_day := MONTH ["."] [THE] day [ORDINAL_ENDING] [[","] year]."""
    month = line.word(i, "month")
    if month is None:
        return None
    day = ordinal_day(line, line.skip(_after_dot(line, month[1]), "the"))
    if day is None or line.sign(day[1], ":", glued=True) or line.word(day[1], "am_pm"):
        return None
    return _with_year(line, day[1], month[0], day[0])


def dotted(line: Line, i: int) -> Parsed[DateLike]:
    """dotted := day "." month "." [year], the order of the countries that write dots."""
    day = line.integer(i)
    dot = None if day is None else line.sign(day[1], ".", glued=True)
    month = None if dot is None else line.integer(dot[1])
    second = None if month is None else line.sign(month[1], ".")
    if day is None or month is None or second is None or not line.is_glued(month[1]):
        return None
    year = line.digits(second[1]) if line.is_glued(second[1]) else None
    if year is None or len(year[0]) not in (2, 4):
        return _checked(None, month[0], day[0]), second[1]
    return _checked(_century(year[0]), month[0], day[0]), year[1]


def slashed(line: Line, i: int) -> Parsed[DateLike]:
    """slashed := number ("/" | "-") number [the same sign, year]; either may be the day."""
    first = line.integer(i)
    slash = None if first is None else line.sign(first[1], "/", "-", glued=True)
    second = None if slash is None else line.integer(slash[1])
    if first is None or slash is None or second is None:
        return None
    again = line.sign(second[1], slash[0], glued=True)
    year = None if again is None else line.digits(again[1])
    if year is None and (slash[0] == "-" or _is_share(line, i, first[0], second[0])):
        return None
    end = second[1] if year is None else year[1]
    number = None if year is None else _century(year[0])
    return _either_order(line, number, first[0], second[0]), end


def _is_share(line: Line, i: int, top: int, bottom: int) -> bool:
    """True for a third or a half of something, as shares of a tank are written."""
    return (top, bottom) in {(1, 2), (1, 3), (2, 3), (1, 4), (3, 4), (1, 5)} and not (
        line.word(i - 1, "on") or line.word(i - 1, "until")
    )


def _either_order(line: Line, year: int | None, first: int, second: int) -> DateLike:
    if line.vocabulary.day_first or first > 12 or first == second:
        return _checked(year, second, first)
    if second > 12:
        return _checked(year, first, second)
    tail = "" if year is None else f" {year}"
    readings = ((first, second), (second, first))
    return Flaw(
        "ambiguous",
        tuple(f"on {day} {MONTHS[month - 1].title()}{tail}" for day, month in readings),
    )


def ordinal_day(line: Line, i: int) -> Parsed[int]:
    """ordinal_day := number [ORDINAL_ENDING, glued] | ORDINAL; at most 99."""
    number = line.integer(i)
    if number is None:
        word = line.word(i, "ordinal")
        return word if word is not None and word[0] > 0 else None
    if number[0] > 99:
        return None
    ending = line.word(number[1], "ordinal_ending") if line.is_glued(number[1]) else None
    return number[0], number[1] if ending is None else ending[1]


def is_bare_number(line: Line, end: int) -> bool:
    """True where the token before `end` is digits alone, which may count something else."""
    return line.digits(end - 1) is not None


def _with_year(line: Line, i: int, month: int, day: int) -> tuple[DateLike, int]:
    comma = line.sign(i, ",")
    year = line.digits(i if comma is None else comma[1])
    if year is None or len(year[0]) != 4 or not year[0].startswith(("19", "20")):
        return _checked(None, month, day), i
    if line.sign(year[1], ":", glued=True) is not None:
        return _checked(None, month, day), i
    return _checked(int(year[0]), month, day), year[1]


def _after_dot(line: Line, i: int) -> int:
    dot = line.sign(i, ".") if line.is_glued(i) else None
    return i if dot is None else dot[1]


def _century(year: str) -> int:
    """The year that is written; one of two digits lies in this century."""
    return int(year) + 2000 if len(year) == 2 else int(year[:4])


def _checked(year: int | None, month: int, day: int) -> DateLike:
    """A date that the calendar has; without a year, one that a leap year has."""
    if not 1 <= month <= 12 or (year is not None and not 1 <= year <= 9990):
        return Flaw("impossible")
    if not 1 <= day <= days_in_month(2024 if year is None else year, month):
        return Flaw("impossible")
    return Dated(month, day, year)
