"""Which tank and which time the values and events of a line belong to."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections import Counter
from dataclasses import replace

from core.message import doubts
from core.message.candidates import Candidate
from core.message.guesses import number_text
from core.message.model import Doubt
from core.message.state import Line, Statement
from core.message.times import Moment


def tanks(line: Line, state: Statement) -> None:
    """A tank goes before its values; at the end of a line it belongs to what stands before it."""
    if not line.tanks:
        if state.between:
            for clause in line.clauses:
                for candidate in clause.candidates:
                    candidate.problem = candidate.problem or doubts.AMBIGUOUS_TANK
        if state.tank is not None:
            for clause in line.clauses:
                for candidate in clause.candidates:
                    candidate.tank = state.tank
        _events(line, state, {})
        return
    by_clause: dict[int, str] = {}
    names = {name for _, name in line.tanks}
    told = bool(line.events) or any(clause.candidates for clause in line.clauses)
    state.between = len(names) > 1 and not told
    if len(names) > 1 and _one_event(line):
        _event_of_all(line, list(dict.fromkeys(name for _, name in line.tanks)), state)
        return
    if line.tank_first:
        current = line.tanks[0][1]
        by_place = dict(line.tanks)
        _two_tanks(line)
        for index in range(len(line.clauses)):
            current = by_place.get(index, current)
            by_clause[index] = current
        state.tank = current
    else:
        following = iter(line.tanks)
        where, name = next(following)
        for index in range(len(line.clauses)):
            while index > where:
                where, name = next(following, (len(line.clauses), name))
            by_clause[index] = name
        if len({name for _, name in line.tanks}) == 1:
            state.tank = line.tanks[0][1]
    for index, clause in enumerate(line.clauses):
        for candidate in clause.candidates:
            candidate.tank = by_clause[index]
    _events(line, state, by_clause)


def _two_tanks(line: Line) -> None:
    """Values behind two tanks at once (`fern and quarry ph 7`) belong to neither for sure."""
    for (first, name), (second, other) in zip(line.tanks, line.tanks[1:], strict=False):
        between = [*line.clauses[first:second]] if second > first else []
        told = any(clause.candidates for clause in between)
        told = told or any(first <= index <= second for index, _ in line.events)
        if name != other and not told:
            for clause in line.clauses[second:]:
                for candidate in clause.candidates:
                    if candidate.problem is None:
                        candidate.problem = doubts.AMBIGUOUS_TANK
                        candidate.choices = _of_either(candidate, name, other)


def _of_either(candidate: Candidate, *names: str) -> tuple[str, ...]:
    """A value as it would be typed of each of some tanks."""
    told = f"{candidate.name or candidate.analyte} {number_text(candidate.quantity)}"
    return tuple(f"{name}: {told}" for name in names)


_OF_EACH = frozenset({"water_change", "filter", "fed"})
"""Events that are done to several tanks alike, where no amount is to be shared out."""


def _one_event(line: Line) -> bool:
    """Whether a line tells one event and no number beside it; moves are from tank to tank."""
    if len(line.events) != 1:
        return False
    event = line.events[0][1].event
    return (
        event is not None
        and event.kind != "moved"
        and not any(item.kind != "U" for clause in line.clauses for item in clause.items)
        and not any(clause.trouble for clause in line.clauses)
    )


def _event_of_all(line: Line, names: list[str], state: Statement) -> None:
    """One event told of several tanks: of each, or a doubt where an amount may be of all."""
    event = line.events[0][1].event
    assert event is not None  # noqa: S101
    shared = (event.litres, event.grams, event.millilitres, event.spoons, event.count)
    if event.kind in _OF_EACH and all(amount is None for amount in shared):
        for name in names:
            _events(line, state, dict.fromkeys(range(len(line.clauses)), name))
        return
    text = state.source[event.start : event.end]
    state.doubts.append(Doubt(text, event.start, event.end, doubts.AMBIGUOUS_TANK))


def _events(line: Line, state: Statement, by_clause: dict[int, str]) -> None:
    if not line.events:
        return
    moment = line.moments[0][1] if line.moments else None
    at = moment.at if moment else state.at
    for index, found in line.events:
        if found.event is not None:
            tank = by_clause.get(index, state.tank)
            if moment is not None and moment.problem:
                _time_doubt(moment, state)
                continue
            event = found.event
            if tank is not None or at is not None:
                event = replace(event, tank=tank, at=at)
            state.events.append(event)
        elif found.doubt is not None:
            state.doubts.append(found.doubt)


def _time_doubt(moment: Moment, state: Statement) -> None:
    fragment = state.source[moment.start_char : moment.end_char]
    state.doubts.append(
        Doubt(
            fragment,
            moment.start_char,
            moment.end_char,
            moment.problem or doubts.BAD_TIME,
            moment.choices[0] if moment.choices else None,
            None,
            moment.choices,
        )
    )


_MOVING = frozenset({"dose", "water_change", "top_up"})
"""What an earlier value beside it was measured before."""


def times(line: Line, candidates: list[Candidate], state: Statement) -> None:
    """Times of a line: one for all, one a clause, or only for the value that was."""
    if not candidates:
        if line.moments:
            _header_time(line, state)
        return
    shared: list[tuple[int, Moment]] = []
    if not line.moments and not any(c.own_time for c in candidates):
        for candidate in candidates:
            candidate.at = state.at
        return
    for index, moment in line.moments:
        own = [c for c in line.clauses[index].candidates if c.own_time]
        if own and len(own) < len(candidates):
            for candidate in _led(line.clauses[index].candidates, moment) or own:
                _timed(candidate, moment)
        else:
            shared.append((index, moment))
    open_ones = [c for c in candidates if c.at is None and not c.own_time]
    counts = Counter(c.analyte for c in candidates)
    beside_deed = any(found.event and found.event.kind in _MOVING for _, found in line.events)
    for candidate in candidates:
        alone = candidate.former and not shared and not beside_deed
        twice = candidate.own_time and counts[candidate.analyte] > 1
        if candidate.at is None and (alone or twice):
            before = candidate.problem
            told_unknown = twice and before == doubts.UNKNOWN_WORD  # kh 6.5 was 8 in my xy
            candidate.problem = doubts.PAST if told_unknown else before or doubts.PAST
        if candidate.own_time and candidate.at is None and len(shared) == 1:
            open_ones.append(candidate)
    if not shared:
        for candidate in open_ones:
            candidate.at = state.at
    elif len(shared) == 1:
        for candidate in open_ones:
            _timed(candidate, shared[0][1])
    else:
        _several_times(line, shared)


def _led(told: list[Candidate], moment: Moment) -> list[Candidate]:
    """All values of a clause that a time opens, each told once: `yesterday ph was 6.5 kh 1`."""
    opens = all(candidate.start > moment.start_char for candidate in told)
    return told if opens and len({c.analyte for c in told}) == len(told) else []


def _header_time(line: Line, state: Statement) -> None:
    moment = line.moments[0][1]
    if line.events:
        return
    state.heading = moment
    if moment.problem:
        _time_doubt(moment, state)
        return
    if state.values and not state.timed:
        state.times = [at or moment.at for at in state.times]
    state.at = moment.at
    state.timed = True


def _timed(candidate: Candidate, moment: Moment) -> None:
    candidate.at = moment.at
    if moment.problem and candidate.problem is None:
        candidate.problem = moment.problem
        candidate.choices = tuple(
            f"{choice} {candidate.name or candidate.analyte} {number_text(candidate.quantity)}"
            for choice in moment.choices
        )


def _several_times(line: Line, shared: list[tuple[int, Moment]]) -> None:
    """Several times: each before its values, or each behind them."""
    leading = shared[0][0] == 0 and _before_values(line, shared[0][1])
    places = [place for place, _ in shared]
    for index, clause in enumerate(line.clauses):
        own = bisect_right(places, index) - 1 if leading else bisect_left(places, index)
        if not 0 <= own < len(shared):
            continue
        for candidate in clause.candidates:
            if candidate.at is None:
                _timed(candidate, shared[own][1])


def _before_values(line: Line, moment: Moment) -> bool:
    firsts = [c.start for c in line.clauses[0].candidates]
    return not firsts or moment.start_char < min(firsts)
