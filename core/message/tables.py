"""Tables with a header row, as pasted from a notes app or typed from memory.

table  = header { row }
header = [ label ] name { name }             a row a tank or a day, a column an analyte
       | [ label ] tank tank { tank }        the other way round; days may stand for the tanks
row    = [ tank | day ] cell { cell }        | name cell { cell }
cell   = [ qualifier ] number or range [ unit ] | "-"

Cells are divided by what divides the header: pipes, tabs, semicolons, commas, runs of blanks, or
else single blanks, where every quantity is a cell of its own. A row whose cells are not as many as
the header's columns is one doubt: nobody can tell which cell is missing. What the first column
names is read as anywhere else: a tank the chat does not have is asked about, `tap` and `target`
are no values of the tank.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from core.message import doubts, quantities, times
from core.message.candidates import Candidate
from core.message.columns import Column, cells_of, column_of, mark_of, nearly, unknown
from core.message.guesses import number_text
from core.message.model import Doubt
from core.message.quantity import Quantity
from core.message.state import Statement
from core.message.times import Moment
from core.message.tokens import Token

_EMPTY = frozenset({"-", "--", "?", "x", "/", "n/a"})
_BULLETS = frozenset("-*•")
_RULE = frozenset("|-:+=_ ")
_MOST = 24
"""Columns of a table; more are no table of a keeper."""


@dataclass(slots=True)
class Table:
    """A header that was found: its columns, how cells are divided, where its rows begin."""

    columns: list[Column]
    mark: str
    labels: int
    rows: list[list[Token]] = field(default_factory=list)
    lines: int = 1


@dataclass(slots=True)
class _Label:
    """What the first cells of a row name."""

    tank: str | None = None
    moment: Moment | None = None
    problem: str | None = None
    column: Column | None = None


def find(lines: list[list[Token]], index: int, state: Statement) -> Table | None:
    """The table whose header is the line at `index`, or None."""
    header = lines[index]
    if index + 1 >= len(lines) or not _heads(lines, index):
        return None
    mark = mark_of(header, state.source)
    cells = cells_of(header, mark, state.source)
    columns = [column_of(cell, state) for cell in cells]
    labels = 0
    while labels < len(columns) and unknown(columns[labels]):
        labels += 1
    told = columns[labels:]
    named = sum(bool(column.analyte) for column in told)
    alike = all(column.tank for column in told) or all(column.moment for column in told)
    across = alike and len(told) > 1
    most = 2 if mark else 1  # without marks a second word is a name misspelt
    if not told or len(columns) > _MOST or labels > most or not (across or named * 2 > len(told)):
        return None
    table = Table(told, mark, labels)
    for whole in lines[index + 1 :]:
        listed = len(told) == 1 and whole[0].text in _BULLETS and len(whole) > 1
        line = whole[1:] if listed else whole
        if not _rule(line) and not _rowlike(line, table, across=across, state=state):
            break
        table.lines += 1
        if not _rule(line):
            table.rows.append(line)
    if len(told) == 1 and not mark and not all(_of_tank(row) for row in table.rows):
        return None
    if not table.rows:
        return None
    longest = max(_count(row, table, state) for row in table.rows)
    # A row with more cells than the header tells that a name of the header was not understood.
    dated = any(row[0].kind in {"dotted", "slashed"} for row in table.rows)
    return table if len(told) <= longest + bool(mark) <= len(told) + bool(mark) + dated else None


def read(table: Table, state: Statement) -> list[Candidate]:
    """The values of a table's rows; what is doubtful goes to the state's doubts."""
    out: list[Candidate] = []
    for row in table.rows:
        out += _row(row, table, state)
    return out


def _lone_name(line: list[Token]) -> bool:
    """A header of one column: a name, with a colon at most."""
    return line[0].kind == "analyte" and all(token.text == ":" for token in line[1:])


def _heads(lines: list[list[Token]], index: int) -> bool:
    """Whether a line may be a header, by itself and by what is below it."""
    header, below = lines[index], lines[index + 1]
    if _lone_name(header):
        return any(token.kind == "tank" for token in below[:2])
    return _may_head(header)


def _of_tank(row: list[Token]) -> bool:
    """Whether a row is a tank and one number, in a list perhaps."""
    said = [token for token in row if token.text not in {"-", "*", "•", ":"}]
    return len(said) > 1 and said[0].kind == "tank" and quantities.is_number(said[1])


def _may_head(line: list[Token]) -> bool:
    """Whether a line has at least two cells and not one number that is no date."""
    kinds = [token.kind for token in line]
    if any(kind in {"number", "count", "fraction", "ask"} for kind in kinds):
        return False
    if any(token.kind == "event" and token.value != "note" for token in line):
        return False
    heads = {"analyte", "tank", "dotted", "slashed", "iso", "time", "word"}
    return sum(kind in heads for kind in kinds) > 1 or (
        "analyte" in kinds and any(token.text in {"|", ";"} for token in line)
    )


def _rule(line: list[Token]) -> bool:
    """A line of dashes and pipes between a header and its rows."""
    return all(set(token.text) <= _RULE for token in line)


def _rowlike(line: list[Token], table: Table, *, across: bool, state: Statement) -> bool:
    """Whether a line is a row: a label and then nothing but quantities and empty cells."""
    del state
    place = 0
    while place < len(line) and not _begins_cell(line, place):
        place += 1
    if place > (6 if table.mark else 3) or place == len(line):
        return False
    if across and line[0].kind != "analyte" and not (line[0].text == "|" and len(line) > 1):
        return False
    if sum(token.kind == "analyte" for token in line) != across:
        return False
    # A header has no number and a row has one, so that no line is looked at as both.
    return any(map(quantities.is_number, line)) and not any(
        token.kind in {"event", "ask", "command"} for token in line
    )


def _count(row: list[Token], table: Table, state: Statement) -> int:
    """How many cells of a row hold a number or are marked as empty."""
    cells = cells_of(row, table.mark, state.source)
    return sum(bool(cell) and _begins_cell(cell, 0) for cell in cells)


def _begins_cell(line: list[Token], place: int) -> bool:
    return quantities.is_number(line[place]) or line[place].text in _EMPTY


def _row(line: list[Token], table: Table, state: Statement) -> list[Candidate]:
    cells = cells_of(line, table.mark, state.source)
    label, cells = _label(cells, line, table, state)
    columns = table.columns
    if table.mark in {"|", "\t", ";"} and len(cells) < len(columns):
        cells = cells + [[] for _ in range(len(columns) - len(cells))]  # empty ones at the end
    worded = any(
        column.analyte and _worded(cell) for column, cell in zip(columns, cells, strict=False)
    )
    if label is None or len(cells) != len(columns) or (worded and label.column is None):
        _doubt(line, doubts.STRAY_NUMBER, state)
        return []
    out = []
    for column, cell in zip(columns, cells, strict=True):
        if not cell or (len(cell) == 1 and cell[0].text in _EMPTY):
            continue
        made = _candidate(column, label, cell)
        if made is not None:
            out.append(made)
        elif any(map(quantities.is_number, cell)):
            _doubt(cell, doubts.BAD_NUMBER, state)
    return out


def _worded(cell: list[Token]) -> bool:
    """Whether words stand where a number belongs: then the columns are not what they seem."""
    return bool(cell) and not _begins_cell(cell, 0) and quantities.read(cell, 0) is None


def _label(
    cells: list[list[Token]], line: list[Token], table: Table, state: Statement
) -> tuple[_Label | None, list[list[Token]]]:
    """What a row is of, and its other cells; None where that cannot be told."""
    count = table.labels if table.mark else 0
    if not count:
        more = len(cells) - len(table.columns)
        if table.mark:
            count = more if 0 < more < 3 else 0
        else:
            count = next((i for i, cell in enumerate(cells) if _begins_cell(cell, 0)), 0)
            if 0 < count != more and line[0].kind in {"dotted", "slashed"}:
                count = more
            if more == 1 and not count:
                count = 1
    label = _Label()
    heads = cells[:count] if table.mark else [[token for cell in cells[:count] for token in cell]]
    for head in heads:
        said = [token for token in head if token.text not in {":", "*"}]
        place = 0
        while place < len(said):
            used = _named(said, place, label, state)
            if not used:
                return None, cells
            place += used
    return label, cells[count:]


def _named(said: list[Token], place: int, label: _Label, state: Statement) -> int:
    """Take what a label says at `place`; how many tokens it is, 0 where it says nothing."""
    token = said[place]
    if token.kind == "analyte" and label.column is None:
        label.column = column_of(said[place:], state)
        return len(said) - place if label.column.analyte else 0
    if token.kind == "tank" and label.tank is None:
        label.tank = str(token.value)
        return 1
    moment = times.find(said, place, state.context)
    if moment is not None and label.moment is None:
        label.moment = moment
        return moment.end - place
    if token.kind == "mark" and token.value in {"other", "wish", "was", "from"}:
        problems = {"other": doubts.OTHER_WATER, "wish": doubts.WISH}
        label.problem = problems.get(str(token.value), doubts.PAST)
        return 1
    if token.kind == "fill" or token.value == "home":
        return 1
    if token.kind in {"word", "several"} and label.tank is None and place == 0:
        return _unknown_tank(said, label, state)
    return 0


def _unknown_tank(said: list[Token], label: _Label, state: Statement) -> int:
    """A row of a tank that the chat does not have, or nearly one."""
    near = nearly(said[:1], state)
    if near is not None:
        label.tank = near
        return 1
    start, end = said[0].start, said[-1].end
    written = state.source[start:end]
    state.doubts.append(Doubt(written, start, end, doubts.UNKNOWN_TANK))
    state.talk = state.talk or state.context.group
    label.tank = written
    return len(said)


def _candidate(column: Column, label: _Label, cell: list[Token]) -> Candidate | None:
    """The value in a cell; None where the cell is no single quantity."""
    what = label.column or column
    quantity = quantities.read(cell, 0)
    if quantity is None or quantity.last != len(cell) or not what.analyte:
        return None
    if quantity.unit is None and what.unit is not None:
        _with_unit(quantity, what.unit)
    if quantity.of is not None and quantity.of != what.analyte and quantity.unit is not None:
        quantity.problem = quantity.problem or doubts.WRONG_UNIT
    made = Candidate(what.analyte, what.basis, quantity, cell[0].start, cell[-1].end, what.name)
    made.tank = label.tank or column.tank
    made.problem = label.problem
    if what.name == "k":  # one letter is easily lost: potassium, or KH
        text = number_text(quantity)
        made.problem = made.problem or doubts.AMBIGUOUS_NAME
        made.choices = (f"potassium {text}", f"KH {text}")
    moment = label.moment or column.moment
    if moment is not None:
        made.at = moment.at
        if moment.problem and made.problem is None:
            made.problem = moment.problem
    return made


def _with_unit(quantity: Quantity, unit: Token) -> None:
    quantity.unit, _, _ = str(unit.value).partition("@")
    quantity.unit_text = unit.text


def _doubt(tokens: list[Token], reason: str, state: Statement) -> None:
    start, end = tokens[0].start, tokens[-1].end
    state.doubts.append(Doubt(state.source[start:end], start, end, reason))
