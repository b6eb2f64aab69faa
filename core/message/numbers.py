"""Numbers as people write them: decimal comma and point, thousands marks, fractions."""

from __future__ import annotations

import re
from functools import lru_cache

from core.message import doubts

_PLAIN = re.compile(r"(?:0|[1-9]\d*)(?:\.\d+)?|\.\d+")
_GROUPED = re.compile(r"[1-9]\d{0,2}([.,' ])\d{3}(?:\1\d{3})*(?:(?!\1)[.,]\d{1,2})?")

FRACTIONS = {"½": 0.5, "¼": 0.25, "¾": 0.75, "⅓": 1 / 3, "⅔": 2 / 3, "⅛": 0.125}

LONGEST = 12
"""More characters than this are no reading, whatever they say."""


class Number:
    """What a run of digits and marks can mean.

    Attributes
    ----------
    value : float or None
        The number; None where the run is no number at all.
    grouped : float or None
        A second reading in which a mark divides thousands ("1,250").
    mark : str
        The mark that has two readings, else empty; ``|`` where the run touches a name that itself
        ends in a digit.
    problem : str or None
        An id of `core.message.doubts` where the run must not be taken as it stands.
    """

    __slots__ = ("grouped", "mark", "problem", "value")

    def __init__(
        self,
        value: float | None,
        grouped: float | None = None,
        mark: str = "",
        problem: str | None = None,
    ) -> None:
        self.value = value
        self.grouped = grouped
        self.mark = mark
        self.problem = problem


@lru_cache(maxsize=4096)
def read(run: str) -> Number:
    """What the run of digits, points, commas and apostrophes means.

    number  = integer [ ("." | ",") digits ] | ("." | ",") digits
    grouped = 1-3 digits, then groups of three after one kind of mark [ other mark digits ]

    A mark before exactly three digits may be either; both readings are given, and the analyte
    decides. A leading zero without a point ("025") is a point that the thumb lost.

    Examples
    --------
    >>> read("7,4").value, read("1.234,5").value, read("1,250").grouped, read("025").problem
    (7.4, 1234.5, 1250.0, 'bad_number')
    """
    # Kept, since most numbers of a tank come again; a `Number` is never changed.
    if len(run) > LONGEST:
        return Number(None, problem=doubts.BAD_NUMBER)
    if _PLAIN.fullmatch(run) and not (len(run) > 4 and run[-4] == "."):
        return Number(float(run))
    return _marked(run)


def _marked(run: str) -> Number:
    match = _GROUPED.fullmatch(run)
    decimal = run.replace(",", ".")
    plain = float(decimal) if _PLAIN.fullmatch(decimal) else None
    if match is not None:
        mark = match.group(1)
        whole = run.replace(mark, "").replace(",", ".")
        if plain is not None:
            return Number(plain, float(whole), mark)
        return Number(float(whole))
    if plain is not None:
        return Number(plain)
    return Number(None, problem=doubts.BAD_NUMBER)
