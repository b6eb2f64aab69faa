"""Cells that commas divide, as a spreadsheet writes them.

A comma between digits is taken for a decimal one everywhere else, so that a row would be a number.
"""

from __future__ import annotations

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut

_WORDS = 2
"""Words of a name in a header, its unit counted."""
_BESIDE = frozenset(",()[]")
_NO_HEAD = frozenset({"number", "ask", "event", "command"})


def as_semicolons(text: str) -> str:
    r"""A text of such cells with semicolons for the commas, place for place; any other as it is.

    The first line is of names without a number, all lines have as many commas as it, and no cell
    has a name beside its number.

    Examples
    --------
    >>> as_semicolons("date,kh,ph\n2026-02-01,5,7.2"), as_semicolons("kh, gh\nkh 5,2")
    ('date;kh;ph\n2026-02-01;5;7.2', 'kh, gh\nkh 5,2')
    """
    bare = text.replace('"', " ")  # as some programs write every cell
    header, *rows = [line for line in bare.split("\n") if line.strip()] or [""]
    count = header.count(",")
    if not (count and rows) or any(row.count(",") != count for row in rows):
        return text
    cells = [cell.strip() for row in rows for cell in row.split(",")]
    if not any(map(_numbered, cells)) or any(_numbered(c) and c[0].isalpha() for c in cells):
        return text
    heads = [t for t in cut(fold(header), lexicon(), header) if t.text not in _BESIDE]
    kinds = {token.kind for token in heads}
    if "analyte" not in kinds or kinds & _NO_HEAD or len(heads) > (count + 1) * _WORDS:
        return text
    if count == 1 and heads[0].kind == "analyte":
        return text  # ph,kh and 7,2 below: perhaps a decimal comma after all
    return bare.replace(",", ";")


def _numbered(cell: str) -> bool:
    return any(map(str.isdigit, cell))
