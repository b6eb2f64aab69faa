"""A vague time behind a value makes it an earlier one: `ammonia was 3 two years ago`.

told = value { value } ( years | time | "when" clause )     tells what was, and not when
"""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from typing import TYPE_CHECKING, Final

from core.message import doubts
from core.message.model import Doubt, Parsed
from core.message.wordfile import spelt

if TYPE_CHECKING:
    from collections.abc import Sequence

_SECTIONS: Final = (
    "years", "time", "early", "past", "when", "who", "when bare", "today",
)  # fmt: skip
SHORTEST: Final = 11
"""A shorter text has no value and a time of it: `kh 3 i fjol`. [characters]"""
_COUNT: Final = r"(?:\d{1,2}|[^\W\d]{1,12})"
"""How many years, in digits or as a word."""


@cache
def _ways() -> dict[str, str]:
    """Section → the inside of a pattern of all its ways, the longest first.

    Raises
    ------
    ValueError
        If a line has no ``=`` or stands in no section.
    """
    told: dict[str, list[str]] = {section: [] for section in _SECTIONS}
    text_of = {"_": _COUNT}
    for section, _language, ways in spelt("former.txt", told):
        told[section] += [way if section != "years" or "_" in way else f"_ {way}" for way in ways]
    return {
        section: "|".join(
            "".join(text_of.get(part, re.escape(part)) for part in re.split("(_)", way))
            for way in sorted(ways, key=len, reverse=True)
        )
        for section, ways in told.items()
    }


@cache
def _vague() -> re.Pattern[str]:
    held = _ways()
    return re.compile(
        rf"(?<!\w)(?:(?P<time>{held['years']}|{held['time']})"
        rf"|(?P<early>{held['early']})"
        rf"|(?P<when>(?:{held['when']}) (?:{held['who']})|{held['when bare']}))(?!\w)"
    )


@cache
def _past() -> re.Pattern[str]:
    return re.compile(rf"(?<!\w)(?:{_ways()['past']})(?!\w)")


@cache
def _today() -> re.Pattern[str]:
    return re.compile(rf"(?<!\w)(?:{_ways()['today']})(?!\w)")


def behind(plain: str) -> tuple[int, int] | None:
    """Where the vague time begins that stands behind a number, and where it ends; else None.

    Examples
    --------
    >>> behind("ammonia was 3 two years ago"), behind("gh was 3 when i was on ro")
    ((14, 27), (9, 25))
    >>> behind("kh was 3 when i tested") is None, behind("last year it had kh 12") is None
    (True, True)
    """
    if len(plain) < SHORTEST:
        return None
    for found in _vague().finditer(plain):
        start, end = found.span()
        # kh was 3 years ago
        if plain[start].isdigit() and not any(map(str.isdigit, plain[:start])):
            start += len(plain[start:]) - len(plain[start:].lstrip("0123456789"))
        told, rest = plain[:start], plain[end:]
        if not any(map(str.isdigit, told)):
            continue
        if found["time"] is not None:
            return start, end
        if "?" in rest or any(map(str.isdigit, rest)):
            continue
        if found["early"] is not None:
            return start, end
        if _past().search(told) and not _today().search(rest):
            return start, len(plain)
    return None


def earlier(text: str, told: Parsed, others: Sequence[Parsed] = ()) -> Parsed | None:
    """What a text tells whose values up to a vague time are of then; None where it has none.

    Parameters
    ----------
    text : str
        The message.
    told : Parsed
        What stands before the vague time.
    others : sequence of Parsed
        What stands behind it, with the same places.
    """
    if not told.values or told.events or told.question is not None or told.command is not None:
        return None
    then = [
        Doubt(text[each.start : each.end], each.start, each.end, doubts.PAST)
        for each in told.values
    ]
    rest = next((each for each in others if each.values or each.events or each.question), None)
    kept = rest or replace(told, intent="unclear", values=(), at=None, doubts=())
    return replace(kept, doubts=(*then, *told.doubts, *kept.doubts))
