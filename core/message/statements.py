"""The lines of a message that tell something: times, tanks, events and readings in them."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from core.message import (
    belonging,
    by_means,
    degrees,
    doubts,
    guesses,
    halves,
    hardness,
    joined,
    line_times,
    lines,
    of_new_water,
    paces,
    pairs,
    part_of_today,
    quantities,
    scopes,
    shared,
    tables,
)
from core.message.candidates import Candidate
from core.message.model import Context, Doubt, Intent, Parsed, Value
from core.message.settling import settle
from core.message.state import Line, Statement
from core.message.tokens import Token


def read(source: str, tokens: list[Token], context: Context) -> Statement:
    """What the tokens tell, line by line; a tank or a time on a line of its own goes on below."""
    state = Statement(context, source)
    tokens = shared.over_times(part_of_today.timed(tokens, context), context)
    if any(token.kind == "nl" for token in tokens):
        _lines(_cut(tokens), state)
    elif tokens:
        _line(tokens, state)
    for value in state.values:
        if value.unit in hardness.DEGREES:
            hardness.slips(state, tokens)
            break
    state.parsed = _finish(state)
    if any(doubt.reason in _PARTED for doubt in state.doubts):
        parted = halves.timed(tokens)
        return state if parted is None else read(source, parted, context)
    return state


_PARTED = frozenset({doubts.CONFLICT, doubts.UNKNOWN_WORD})
"""Doubts that parts of one day may explain."""


def _cut(tokens: list[Token]) -> list[list[Token]]:
    """The lines of a message, without empty ones."""
    lines: list[list[Token]] = [[]]
    for token in tokens:
        if token.kind == "nl":
            lines.append([])
        else:
            lines[-1].append(token)
    return [line for line in lines if line]


def _lines(lines: list[list[Token]], state: Statement) -> None:
    """Several lines: tables, names with their numbers below them, and lines by themselves."""
    index = 0
    below = False
    while index < len(lines):
        table = tables.find(lines, index, state)
        if table is not None:
            _table(table, state)
            index += table.lines
        elif _below(lines, index, below=below):
            below = True
            _line(lines[index] + lines[index + 1], state)
            index += 2
            continue
        else:
            _line(lines[index], state)
            index += 1
        below = False


def _below(lines: list[list[Token]], index: int, *, below: bool) -> bool:
    """Whether a line is one name, and the next one its number (`ph`, line break, `7.2`).

    `below` tells that the line before was such a number; else a lone number there may be its own.
    """
    if len(lines[index]) != 1 or lines[index][0].kind != "analyte" or index + 1 >= len(lines):
        return False
    number = lines[index + 1]
    quantity = quantities.read(number, 0)
    if quantity is None or quantity.last != len(number):
        return False
    behind = lines[index + 2] if index + 2 < len(lines) else []
    before = lines[index - 1] if index and not below else []
    return not any(
        len(line) == 1 and quantities.is_number(line[0]) for line in (behind, before[:1])
    )


def _table(table: tables.Table, state: Statement) -> None:
    """The values of a table; the tank and the time told above it are those of rows without."""
    candidates = tables.read(table, state)
    state.paired = state.paired or bool(candidates)
    for candidate in candidates:
        candidate.tank = candidate.tank or state.tank
        candidate.at = candidate.at or state.at
        _settle(candidate, state)


def _line(tokens: list[Token], state: Statement) -> None:
    """Read one line: its parts, its pairs, and what its words do to them."""
    if (place := line_times.between(tokens, state.context)) is not None:
        lead = tokens[:1] if tokens[0].kind == "tank" else []
        _line(tokens[:place], state)
        _line([*lead, *tokens[place:]], state)
        return
    tokens = shared.spread(joined.part(tokens))
    line = lines.build(tokens, state)
    if any([token.value == "°" for token in tokens]):  # noqa: C419 - a list is half the time
        degrees.name(line.clauses, listed="\n" in state.source, tank=bool(line.tanks))
    previous = None
    timed = {index for index, _ in line.moments} if line.moments else ()
    past = {i for i, moment in line.moments if moment.at or moment.problem} if timed else ()
    for index, clause in enumerate(line.clauses):
        if any(item.kind != "U" for item in clause.items):
            pairs.bind(clause, previous, timed=index in timed, past=index in past)
        previous = clause.candidates[-1] if clause.candidates else None
    if not line.moments:
        pairs.take_back(line.clauses)
    _scopes(line, state, tokens)


def _scopes(line: Line, state: Statement, tokens: list[Token]) -> None:
    candidates = [c for clause in line.clauses for c in clause.candidates]
    scopes.count_words(line, state)
    scopes.other_water(line, candidates, state)
    of_new_water.mark(line, candidates, state)
    scopes.unclear_heads(line, candidates, state)
    scopes.wishes(line, state)
    by_means.mark(line, candidates, state)
    if candidates:
        state.paired = state.paired or any(candidate.analyte for candidate in candidates)
        for clause in line.clauses:
            scopes.trailing_marks(clause, beside_deed=bool(line.events))
            scopes.clause_words(clause)
        scopes.lone_k(line, candidates, state)
        shared.unit_of_last(candidates)
        scopes.reference_heat(line, candidates)
        scopes.lost_basis(candidates, state.source)
        scopes.unknown_words(line, candidates, state)
    belonging.tanks(line, state)
    belonging.times(line, candidates, state)
    for clause in line.clauses:
        for start, end, reason in clause.trouble:
            if not (state.context.group):
                state.doubts.append(Doubt(state.source[start:end], start, end, reason))
    paces.mark(candidates, tokens)
    for candidate in candidates:
        _settle(candidate, state)


def _settle(candidate: Candidate, state: Statement) -> None:
    if candidate.analyte == "" and not candidate.choices:
        state.doubts.append(
            Doubt(
                state.source[candidate.start : candidate.end],
                candidate.start,
                candidate.end,
                doubts.UNKNOWN_NAME,
            )
        )
        return
    settled = settle(candidate, state.context, state.source)
    if isinstance(settled, Value):
        state.values.append(settled)
        state.times.append(candidate.at)
    else:
        state.doubts.append(replace(settled, tank=candidate.tank, at=candidate.at))


def _finish(state: Statement) -> Parsed:
    if state.context.group and state.talk:
        return Parsed("none")
    state.doubts = guesses.without_parts(state.doubts)
    _conflicts(state)
    values, at = _shared_time(state)
    if values or state.events:
        names = {value.tank for value in values}
        names.update([event.tank for event in state.events])
        tank = names.pop() if len(names) == 1 else None
    else:
        tank = state.tank
        state.doubts = _worth_asking(state)
    intent: Intent = "none"
    if values:
        intent = "reading"
    elif state.events:
        intent = "event"
    elif state.doubts:
        intent = "unclear"
    return Parsed(
        intent, tank, at, tuple(values), tuple(state.events), None, None, tuple(state.doubts)
    )


def _worth_asking(state: Statement) -> list[Doubt]:
    """In plain talk, lone numbers and names are no doubts."""
    if not state.doubts or state.paired or (not state.talk and not state.words):
        return state.doubts
    state.doubts = [doubt for doubt in state.doubts if doubt.reason not in _TIMES]
    reasons = {doubt.reason for doubt in state.doubts}
    if doubts.NO_VALUE in reasons and reasons & {doubts.STRAY_NUMBER, doubts.UNKNOWN_NAME}:
        return state.doubts  # a name and a number, though not together
    if any(d.reason not in _NO_QUESTIONS or d.choices or d.suggestion for d in state.doubts):
        return state.doubts
    return []


_NO_QUESTIONS = frozenset(
    {
        doubts.NO_VALUE, doubts.STRAY_NUMBER, doubts.UNKNOWN_NAME,
        doubts.WISH, doubts.CHANGE, doubts.OTHER_WATER,
    }
)  # fmt: skip
"""Doubts that are none where nothing in the message is a name with its number."""
_TIMES = frozenset({doubts.FUTURE, doubts.BAD_TIME, doubts.AMBIGUOUS_DATE})
"""Doubts of a time, which need something that it belongs to: `i will test tomorrow`."""


def _conflicts(state: Statement) -> None:
    """Two numbers for one thing at one time: neither is taken; the same number twice is one."""
    if len(state.values) < 2:
        return
    by_key: dict[tuple[str, str | None, datetime | None], list[int]] = {}
    for index, value in enumerate(state.values):
        by_key.setdefault((value.analyte, value.tank, state.times[index]), []).append(index)
    if len(by_key) == len(state.values):
        return
    dropped: set[int] = set()
    for indexes in by_key.values():
        if len(indexes) < 2:
            continue
        if len({_amount(state.values[index]) for index in indexes}) == 1:
            dropped.update(indexes[1:])
            continue
        dropped.update(indexes)
        for index in indexes:
            value = replace(state.values[index], at=state.times[index])
            text = state.source[value.start : value.end]
            state.doubts.append(Doubt(text, value.start, value.end, doubts.CONFLICT, text, value))
    keep = [index for index in range(len(state.values)) if index not in dropped]
    state.values = [state.values[index] for index in keep]
    state.times = [state.times[index] for index in keep]


def _amount(value: Value) -> tuple[object, ...]:
    return (value.canonical, value.qualifier, value.basis)


def _shared_time(state: Statement) -> tuple[list[Value], datetime | None]:
    """The values with a time of their own only where it is not the message's."""
    if not state.values:
        event_times = {event.at for event in state.events}
        return [], event_times.pop() if len(event_times) == 1 else state.at
    if len(set(state.times)) == 1:
        return state.values, state.times[0]
    return [
        value if at is None else replace(value, at=at)
        for value, at in zip(state.values, state.times, strict=True)
    ], None
