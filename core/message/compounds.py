"""Numbers written in one word (`fünfundzwanzig`, `tjugofem`), made from the parts of the files.

`[count]` of a language's file lists the numbers that have words of their own; in its `[numeral]`
``glued`` says how a ten or a hundred and a unit make one word, ``one`` how one is said within it.
"""

from __future__ import annotations

Row = tuple[str, str, str, str]
"""(category, id, word, language)."""

ROLES = frozenset(
    {"behind_ten", "behind_and", "behind_point", "ten_and", "score", "by_so_much", "and_half"}
)
"""Ids of `[numeral]` that tell how words of numbers stand together, with a raise (um 3), or
at the end of one word with a half (viereinhalb)."""


def expand(rows: list[Row]) -> list[Row]:
    """The rows with every number that a language writes in one word, without `[numeral]`."""
    plain = [row for row in rows if row[0] != "numeral"]
    for _, meaning, pattern, language in rows:
        if meaning == "glued":
            plain += _glued(pattern, language, rows)
    return plain


def _glued(pattern: str, language: str, rows: list[Row]) -> list[Row]:
    own = [row for row in rows if row[3] == language]
    numbers = [(int(row[1]), row[2]) for row in own if row[0] == "count"]
    units = [(number, word) for number, word in numbers if 1 < number < 10]
    large = {
        "{ten}": [(number, word) for number, word in numbers if number in range(20, 100, 10)],
        "{hundred}": [(100, word) for number, word in numbers[::-1] if number == 100][-1:],
    }
    name = "{ten}" if "{ten}" in pattern else "{hundred}"
    if name == "{ten}":
        units += [(1, row[2]) for row in own if row[:2] == ("numeral", "one")]
    return [
        (
            "count",
            str(unit * ten if name == "{hundred}" else unit + ten),
            pattern.replace("{unit}", one).replace(name, word),
            language,
        )
        for unit, one in units
        for ten, word in large[name]
    ]
