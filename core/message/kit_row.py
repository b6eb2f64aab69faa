"""The values of a kit in two letters each: `am 0 ni 0.1 na 40`, ammonia, nitrite and nitrate.

Beside one another they are no metals: nitrite and nitrate are asked about, and no sodium is kept.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from core.message import doubts
from core.message.model import Doubt, Parsed, Value

_SHORT: Final = re.compile(
    r"(?<![\w.,-])(am|amm|ni|na)[ :=]{0,3}(\d{1,4}(?:[.,]\d{1,3})?)(?![\w%])"
)
_MEANT: Final = {"ni": "nitrite", "na": "nitrate"}


def asked(text: str, plain: str, parsed: Parsed) -> Parsed:
    """The same with nitrite and nitrate asked about where they stand as `ni` and `na` in a row.

    Parameters
    ----------
    text, plain : str
        The message, and as it is read.
    parsed : Parsed
        What was read of it.
    """
    found = {each[1]: each for each in _SHORT.finditer(plain)} if len(plain) == len(text) else {}
    if len(found) < 2 or parsed.question is not None or parsed.command is not None:
        return parsed
    if "ni" not in found and not ("na" in found and _is_sodium(parsed, found["na"])):
        return parsed
    short = [each for name, each in found.items() if name in _MEANT]
    new = [_doubt(text, each, parsed) for each in short]
    spans = [each.span() for each in short]
    return replace(
        parsed,
        intent="reading" if _others(parsed.values, spans) else "unclear",
        values=_others(parsed.values, spans),
        doubts=(
            *new,
            *(each for each in parsed.doubts if not _within(each.start, each.end, spans)),
        ),
    )


def _is_sodium(parsed: Parsed, said: re.Match[str]) -> bool:
    return any(
        each.analyte == "sodium" and each.start <= said.start() < each.end for each in parsed.values
    )


def _others(values: tuple[Value, ...], spans: list[tuple[int, int]]) -> tuple[Value, ...]:
    return tuple(each for each in values if not _within(each.start, each.end, spans))


def _within(start: int, end: int, spans: list[tuple[int, int]]) -> bool:
    return any(start < last and first < end for first, last in spans)


def _doubt(text: str, said: re.Match[str], parsed: Parsed) -> Doubt:
    """The question of one of them, with what would be stored."""
    analyte, number = _MEANT[said[1]], float(said[2].replace(",", "."))
    meant = f"{analyte} {number:g}"
    start, end = said.span()
    value = Value(
        analyte, number, canonical=number, canonical_unit="mg/L", tank=parsed.tank, at=parsed.at,
        start=start, end=end,
    )  # fmt: skip
    return Doubt(text[start:end], start, end, doubts.AMBIGUOUS_WORD, meant, value)
