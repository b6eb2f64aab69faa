"""The cells of a table's line, and what the header says that a column is of."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from core.message import quantities, tanks, times
from core.message.state import Statement
from core.message.times import Moment
from core.message.tokens import Token

_MARKS = ("|", "\t", ";")


@dataclass(slots=True)
class Column:
    """What a column is of: an analyte, a tank, a time, or (all empty) something unknown."""

    analyte: str = ""
    basis: str | None = None
    name: str = ""
    unit: Token | None = None
    tank: str | None = None
    moment: Moment | None = None


def mark_of(line: list[Token], source: str) -> str:
    """What divides the cells of a line."""
    text = source[line[0].start : line[-1].end]
    before = source[source.rfind("\n", 0, line[0].start) + 1 : line[0].start]
    for mark in _MARKS:
        if mark in text or mark in before:
            return mark
    if any(b.start - a.end > 1 for a, b in pairwise(line)):
        return "  "
    return "," if text.count(",") >= (len(line) - 1) // 2 > 0 else ""


def cells_of(line: list[Token], mark: str, source: str) -> list[list[Token]]:
    """The tokens of each cell; without a mark each token or quantity is a cell."""
    if not mark:
        return _spaced(line)
    start = source.rfind("\n", 0, line[0].start) + 1
    cells: list[list[Token]] = [[]]
    if mark != "|" and mark != "  ":
        cells += [[] for _ in range(source.count(mark, start, line[0].start))]
    for place, token in enumerate(line):
        gap = source[line[place - 1].end : token.start] if place else ""
        if mark == "  " and len(gap) > 1:
            cells.append([])
        elif mark == "\t":
            cells += [[] for _ in range(gap.count("\t"))]
        if token.text == mark:
            if place or mark != "|":
                cells.append([])
            continue
        cells[-1].append(token)
    if mark == "|" and len(cells) > 1 and not cells[-1]:
        cells.pop()
    return cells


def _spaced(line: list[Token]) -> list[list[Token]]:
    """Cells that single blanks divide."""
    out: list[list[Token]] = []
    place = 0
    while place < len(line):
        quantity = quantities.read(line, place)
        last = max(place + 1, quantity.last if quantity is not None else 0)
        if last < len(line) and line[last].text == "(":
            while last < len(line) and line[last - 1].text != ")":
                last += 1
        elif last < len(line) and line[last].kind == "unit" and line[place].kind == "analyte":
            last += 1
        out.append(line[place:last])
        place = last
    return out


def column_of(cell: list[Token], state: Statement) -> Column:
    """What a cell of the header says."""
    cell = [token for token in cell if token.text not in {"(", ")", "[", "]", "*", ":"}]
    if not cell:
        return Column()
    first = cell[0]
    if first.kind == "analyte" and all(t.kind in {"analyte", "unit"} for t in cell[1:]):
        analyte, _, basis = str(first.value).partition("@")
        unit = cell[-1] if cell[-1].kind == "unit" else None
        return Column(analyte, basis or None, first.text, unit)
    if first.kind == "unit" and "@" in str(first.value) and len(cell) == 1:
        return Column(str(first.value).partition("@")[2], None, first.text, first)
    if first.kind == "tank" and len(cell) == 1:
        return Column(tank=str(first.value))
    moment = times.find(cell, 0, state.context)
    if moment is not None and moment.end == len(cell):
        return Column(moment=moment)
    found = nearly(cell, state)
    return Column(tank=found) if found else Column()


def unknown(column: Column) -> bool:
    """Whether the header does not say what a column is of."""
    return not (column.analyte or column.tank or column.moment)


def nearly(cell: list[Token], state: Statement) -> str | None:
    """The tank that a cell of one word nearly names."""
    if len(cell) != 1 or cell[0].kind not in {"word", "several"} or len(cell[0].text) < 3:
        return None
    return tanks.match(cell[0].text, state.context.tanks).name
