"""The lines of a message that tell something: times, tanks, events and readings in them."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections import Counter
from dataclasses import dataclass, field, replace
from datetime import datetime

from core.message import doubts, events, nearest, readings, tanks, times
from core.message.candidates import Candidate, number_text, settle
from core.message.model import Context, Doubt, Event, Intent, Parsed, Value
from core.message.readings import Clause
from core.message.times import Moment
from core.message.tokens import Token

_SOFT = frozenset({",", ";", "|", "/", "•", "(", ")", "[", "]"})
_HARD = frozenset({".", "!", "?"})


@dataclass(slots=True)
class Line:
    """One line with what was found in it."""

    clauses: list[Clause] = field(default_factory=list)
    moments: list[tuple[int, Moment]] = field(default_factory=list)
    events: list[tuple[int, events.Found]] = field(default_factory=list)
    tanks: list[tuple[int, str]] = field(default_factory=list)
    tank_first: bool = False
    begun: bool = False


@dataclass(slots=True)
class Statement:
    """What all lines tell, before it is one `Parsed`."""

    context: Context
    source: str
    values: list[Value] = field(default_factory=list)
    times: list[datetime | None] = field(default_factory=list)
    events: list[Event] = field(default_factory=list)
    doubts: list[Doubt] = field(default_factory=list)
    tank: str | None = None
    at: datetime | None = None
    timed: bool = False
    other: bool = False
    words: int = 0
    paired: bool = False
    talk: bool = False
    parsed: Parsed = field(default_factory=lambda: Parsed("none"))


def read(source: str, tokens: list[Token], context: Context) -> Statement:
    """What the tokens tell, line by line; a tank or a time on a line of its own goes on below."""
    state = Statement(context, source)
    start = 0
    for index, token in enumerate(tokens):
        if token.kind == "nl":
            if index > start:
                _line(tokens[start:index], state)
            start = index + 1
    if start < len(tokens):
        _line(tokens[start:] if start else tokens, state)
    state.parsed = _finish(state)
    return state


# --- one line -----------------------------------------------------------------------------------


def _line(tokens: list[Token], state: Statement) -> None:
    line = Line(clauses=[Clause()])
    kinds = {token.kind for token in tokens}
    found = events.find(tokens, state.source, state.context) if "event" in kinds else []
    timed = not kinds.isdisjoint(_TIMES)
    index = 0
    while index < len(tokens):
        if found and found[0].first == index:
            line.events.append((len(line.clauses) - 1, found[0]))
            index = found.pop(0).last
            continue
        index = _step(tokens, index, line, state, timed=timed)
    _merge(line)
    previous = None
    moments = {index for index, _ in line.moments}
    for index, clause in enumerate(line.clauses):
        readings.bind(clause, previous, timed=index in moments)
        previous = clause.candidates[-1] if clause.candidates else None
    _scopes(line, state)


def _step(tokens: list[Token], index: int, line: Line, state: Statement, *, timed: bool) -> int:
    token = tokens[index]
    kind = token.kind
    clause = line.clauses[-1]
    if index == 0 and token.text == "*":
        return 1  # a bullet
    if kind == "analyte":
        if not line.begun and _tank_like(tokens, index, state):
            return _named_tank(tokens, index, line, state)
        line.begun = True
        return readings.gather(tokens, index, clause)
    if timed:
        moment = _moment(tokens, index, clause, state)
        if moment is not None:
            line.moments.append((len(line.clauses) - 1, moment))
            return moment.end
    if kind == "tank":
        return _tank(line, str(token.value), index)
    if kind in {"word", "several"} or token.value == "at":
        used = _named_tank(tokens, index, line, state)
        if used:
            return used
        if token.value == "at" and kind == "time":
            return index + 1
    if _separates(tokens, index, clause):
        if clause.items or clause.after or clause.loose or clause.other:
            line.clauses.append(Clause())
        if token.text == "?" and clause.items:
            clause.questioned = True
        if token.text == "(":
            line.clauses[-1].bracketed = True
        return index + 1
    after = readings.gather(tokens, index, clause)
    line.begun = line.begun or bool(clause.items)
    return after


def _moment(tokens: list[Token], index: int, clause: Clause, state: Statement) -> Moment | None:
    """A time that begins here, unless a name waits for this number."""
    token = tokens[index]
    if token.kind in {"dotted", "slashed"} and clause.items and clause.items[-1].kind == "N":
        if sum(item.kind == "N" for item in clause.items) > sum(
            item.kind == "V" for item in clause.items
        ):
            return None
    if token.kind == "slashed" and index + 1 < len(tokens) and tokens[index + 1].kind == "analyte":
        if token.text in {"1/2", "1/4", "1/8", "1/3"}:
            return None
    if token.kind in {"number", "fraction"} or token.value == "half":
        following = tokens[index + 1] if index + 1 < len(tokens) else None
        if following is None or (following.kind != "time" and following.text not in times.BETWEEN):
            return None
    elif token.kind not in _TIMES:
        return None
    return times.find(tokens, index, state.context)


_TIMES = frozenset({"time", "iso", "clock", "dotted", "slashed"})


def _tank(line: Line, name: str, index: int) -> int:
    if not line.tanks and not line.begun:
        line.tank_first = True
    if line.clauses[-1].items:
        if line.tank_first:
            line.clauses.append(Clause())
    line.tanks.append((len(line.clauses) - 1, name))
    return index + 1


def _named_tank(tokens: list[Token], index: int, line: Line, state: Statement) -> int:
    """A tank by prefix, nearly, or one the chat does not have (`@name`, `name:`); else 0."""
    token = tokens[index]
    called = token.text == "@"
    place = index + 1 if called else index
    if place >= len(tokens) or tokens[place].kind not in {"word", "tank", "several", "analyte"}:
        return 0
    if tokens[place].kind == "tank":
        return 0
    word = tokens[place]
    opens = not line.begun and not line.events
    colon = place + 1 < len(tokens) and tokens[place + 1].text == ":"
    ahead = tokens[place + 2] if colon and place + 2 < len(tokens) else None
    heads = (
        colon
        and index == 0
        and opens
        and (ahead is None or ahead.kind in {"analyte", "event", "time"})
    )
    if not (called or heads) and _number_ahead(tokens, place + 1):
        return 0
    closes = place + 1 == len(tokens)
    placed = index > 0 and tokens[index - 1].text in {"in", "for"}
    if not (called or heads or opens or closes or placed) or len(word.text) < 2:
        return 0
    match = tanks.match(word.text, state.context.tanks) if len(word.text) > 2 else tanks.Match(None)
    written = state.source[word.start : word.end]
    state.talk = state.talk or (called and match.name is None)
    if match.name is not None:
        _tank(line, match.name, place)
    elif match.candidates:
        state.doubts.append(
            Doubt(
                written, word.start, word.end, doubts.AMBIGUOUS_TANK, None, None, match.candidates
            )
        )
        _tank(line, written, place)
    elif called or heads:
        state.doubts.append(Doubt(written, word.start, word.end, doubts.UNKNOWN_TANK))
        _tank(line, written, place)
    else:
        return 0
    return place + 1


def _tank_like(tokens: list[Token], index: int, state: Statement) -> bool:
    """A word that names an analyte, and nearly a tank, before another name (`fer ph 7`)."""
    if index + 1 >= len(tokens) or tokens[index + 1].kind != "analyte" or not state.context.tanks:
        return False
    word = tokens[index].text
    return len(word) > 2 and tanks.match(word, state.context.tanks).name is not None


def _number_ahead(tokens: list[Token], place: int) -> bool:
    while place < len(tokens) and tokens[place].kind == "mark" and tokens[place].value == "link":
        place += 1
    return place < len(tokens) and tokens[place].kind in {"number", "fraction", "slashed", "dotted"}


def _separates(tokens: list[Token], index: int, clause: Clause) -> bool:
    """Whether a clause ends here: punctuation, "and", a dash between two pairs."""
    token = tokens[index]
    if token.kind == "mark":
        return token.value == "and" and bool(clause.items)
    if (
        token.kind != "p"
        or readings.within_word(tokens, index)
        or (token.text in "()/," and _waits(tokens, index, clause))
    ):
        return False
    if token.text in _SOFT or token.text in _HARD:
        return True
    if token.text == "-":
        return not clause.items or clause.items[-1].kind == "V"
    return False


def _waits(tokens: list[Token], index: int, clause: Clause) -> bool:
    """Whether a name waits for its number across a mark: `nitrate (no3) 20`."""
    items = clause.items
    if not items or items[-1].kind != "N" or index + 1 >= len(tokens):
        return False
    following = tokens[index + 1]
    if following.kind == "analyte":
        return str(following.value).partition("@")[0] == items[-1].analyte
    return tokens[index].text == ")" and following.kind == "number"


def _merge(line: Line) -> None:
    """One clause of all, where separators stand between names and their numbers (`ph, 7.2`)."""
    counts = [
        (sum(i.kind == "N" for i in clause.items), sum(i.kind == "V" for i in clause.items))
        for clause in line.clauses
    ]
    lone = any((names == 0) != (values == 0) for names, values in counts)
    names, values = sum(n for n, _ in counts), sum(v for _, v in counts)
    if not lone or names != values or len(line.clauses) < 2:
        return
    if any(i.quantity is not None and i.quantity.of for c in line.clauses for i in c.items):
        return
    first = line.clauses[0]
    for clause in line.clauses[1:]:
        for item in clause.items:
            first.items.append(item)
        first.after += clause.after
        first.other |= clause.other
        first.home |= clause.home
        first.fill |= clause.fill
        first.questioned |= clause.questioned
    line.clauses = [first]
    line.moments = [(0, moment) for _, moment in line.moments]
    line.events = [(0, event) for _, event in line.events]
    line.tanks = [(0, name) for _, name in line.tanks]


# --- what words do to the values of a line --------------------------------------------------------


def _scopes(line: Line, state: Statement) -> None:
    candidates = [c for clause in line.clauses for c in clause.candidates]
    _count_words(line, state)
    state.paired = state.paired or any(candidate.analyte for candidate in candidates)
    for clause in line.clauses:
        _trailing_marks(clause)
        _clause_words(clause)
    _other_water(line, candidates, state)
    _lone_k(candidates, state)
    _unknown_words(line, candidates, state)
    _assign_tanks(line, state)
    _assign_times(line, candidates, state)
    for clause in line.clauses:
        for start, end, reason in clause.trouble:
            if not (state.context.group):
                state.doubts.append(Doubt(state.source[start:end], start, end, reason))
    for candidate in candidates:
        _settle(candidate, state)


def _count_words(line: Line, state: Statement) -> None:
    for clause in line.clauses:
        if clause.loose or clause.questioned or (clause.fill and not line.tank_first):
            state.talk = True
        if any(item.kind == "U" for item in clause.items):
            state.talk = True
            state.words += 1
        state.words += clause.fill


def _trailing_marks(clause: Clause) -> None:
    """Words behind the last number: `kh 6 target`, `ph .2 up`."""
    if not clause.candidates:
        return
    last = clause.candidates[-1]
    for mark in clause.after:
        if mark in {"wish", "if"}:
            last.problem = last.problem or doubts.WISH
        elif mark in {"up", "down"}:
            last.problem = last.problem or doubts.CHANGE
        elif mark == "not":
            last.problem = last.problem or doubts.NEGATED
        elif mark in {"to", "between"}:
            last.problem = last.problem or doubts.BAD_NUMBER  # a range without its end


def _clause_words(clause: Clause) -> None:
    for candidate in clause.candidates:
        if clause.questioned:
            candidate.problem = candidate.problem or doubts.QUESTIONED
        if clause.loose:
            ambiguous = any(item.ambiguous for item in clause.loose)
            reason = doubts.AMBIGUOUS_WORD if ambiguous else doubts.UNKNOWN_WORD
            candidate.problem = candidate.problem or reason


def _other_water(line: Line, candidates: list[Candidate], state: Statement) -> None:
    """Which values are another water's: from its word to the next word for the tank."""
    active = state.other and not line.tanks
    seen = False
    tanked = {index for index, _ in line.tanks}
    for index, clause in enumerate(line.clauses):
        if clause.home or index in tanked:
            active = False
        if clause.other:
            active = True
            if not clause.candidates and seen:
                _poison(candidates, doubts.OTHER_WATER)
                active = False
        if active:
            _poison(clause.candidates, doubts.OTHER_WATER, force=True)
        seen = seen or bool(clause.candidates)
    if not line.tanks:
        state.other = state.other or (active and not candidates)
        if any(clause.home for clause in line.clauses):
            state.other = False
    else:
        state.other = False


def _lone_k(candidates: list[Candidate], state: Statement) -> None:
    """A bare K is potassium only beside a KH, since one letter is easily lost."""
    lone = [c for c in candidates if c.name == "k" and c.problem is None]
    if not lone or any(c.analyte == "kh" for c in (*candidates, *state.values)):
        return
    for candidate in lone:
        text = number_text(candidate.quantity)
        candidate.problem = doubts.AMBIGUOUS_NAME
        candidate.choices = (f"potassium {text}", f"KH {text}")


def _poison(candidates: list[Candidate], reason: str, *, force: bool = False) -> None:
    for candidate in candidates:
        if force or candidate.problem is None:
            candidate.problem = reason
            candidate.choices = ()


def _unknown_words(line: Line, candidates: list[Candidate], state: Statement) -> None:
    """A word in a clause without values bears on the line if it is nearly a word that would."""
    del state
    for clause in line.clauses:
        if clause.candidates:
            continue
        words = (*clause.loose, *clause.items)
        if clause.bracketed and any(item.kind == "U" for item in words):
            _poison(candidates, doubts.UNKNOWN_WORD)
        elif any(item.bearing or nearest.bears(item.text) for item in words if item.kind == "U"):
            _poison(candidates, doubts.UNKNOWN_WORD)


def _assign_tanks(line: Line, state: Statement) -> None:
    """A tank goes before its values; at the end of a line it belongs to what stands before it."""
    candidates = [c for clause in line.clauses for c in clause.candidates]
    if not line.tanks:
        for candidate in candidates:
            candidate.tank = state.tank
        _events(line, state, {})
        return
    by_clause: dict[int, str] = {}
    if line.tank_first:
        current = line.tanks[0][1]
        names = dict(line.tanks)
        for index in range(len(line.clauses)):
            current = names.get(index, current)
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


def _events(line: Line, state: Statement, by_clause: dict[int, str]) -> None:
    moment = line.moments[0][1] if line.moments else None
    at = moment.at if moment else state.at
    for index, found in line.events:
        if found.event is not None:
            tank = by_clause.get(index, state.tank)
            if moment is not None and moment.problem:
                _time_doubt(moment, state)
                continue
            state.events.append(replace(found.event, tank=tank, at=at))
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
        )  # fmt: skip
    )


def _assign_times(line: Line, candidates: list[Candidate], state: Statement) -> None:
    """Times of a line: one for all, one a clause, or only for the value that was."""
    if not candidates:
        if line.moments:
            _header_time(line, state)
        return
    shared: list[tuple[int, Moment]] = []
    for index, moment in line.moments:
        own = [c for c in line.clauses[index].candidates if c.own_time]
        if own and len(own) < len(candidates):
            for candidate in own:
                _timed(candidate, moment)
        else:
            shared.append((index, moment))
    open_ones = [c for c in candidates if c.at is None and not c.own_time]
    counts = Counter(c.analyte for c in candidates)
    for candidate in candidates:
        if candidate.own_time and candidate.at is None and counts[candidate.analyte] > 1:
            candidate.problem = candidate.problem or doubts.PAST
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


def _header_time(line: Line, state: Statement) -> None:
    moment = line.moments[0][1]
    if moment.problem:
        if not line.events:
            _time_doubt(moment, state)
        return
    if line.events:
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


def _settle(candidate: Candidate, state: Statement) -> None:
    if candidate.analyte == "" and not candidate.choices:
        state.doubts.append(
            Doubt(
                state.source[candidate.start : candidate.end],
                candidate.start,
                candidate.end,
                doubts.UNKNOWN_NAME,
            )  # fmt: skip
        )
        return
    settled = settle(candidate, state.context, state.source)
    if isinstance(settled, Value):
        state.values.append(settled)
        state.times.append(settled.at)
    else:
        state.doubts.append(settled)


# --- one message --------------------------------------------------------------------------------


def _finish(state: Statement) -> Parsed:
    if state.context.group and state.talk:
        return Parsed("none")
    _conflicts(state)
    values, at = _shared_time(state)
    names = {value.tank for value in values} | {event.tank for event in state.events}
    tank = names.pop() if len(names) == 1 else None
    if not values and not state.events:
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
    plain = {doubts.NO_VALUE, doubts.STRAY_NUMBER, doubts.UNKNOWN_NAME}
    if not state.paired:
        plain |= {doubts.WISH, doubts.CHANGE, doubts.OTHER_WATER}
    if state.paired or (not state.talk and not state.words):
        return state.doubts
    if any(d.reason not in plain or d.choices or d.suggestion for d in state.doubts):
        return state.doubts
    return []


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
            value = state.values[index]
            text = state.source[value.start : value.end]
            state.doubts.append(Doubt(text, value.start, value.end, doubts.CONFLICT, text, value))
    keep = [index for index in range(len(state.values)) if index not in dropped]
    state.values = [state.values[index] for index in keep]
    state.times = [state.times[index] for index in keep]


def _amount(value: Value) -> tuple[object, ...]:
    return (value.canonical, value.qualifier, value.basis)


def _shared_time(state: Statement) -> tuple[list[Value], datetime | None]:
    """The values with a time of their own only where it is not the message's."""
    times_seen = set(state.times)
    event_times = {event.at for event in state.events}
    if len(times_seen) == 1 and (shared := next(iter(times_seen))) is not None:
        return [replace(value, at=None) for value in state.values], shared
    if not state.values:
        return [], next(iter(event_times)) if len(event_times) == 1 else state.at
    if times_seen == {None}:
        return state.values, None
    return [
        value if value.at == at else replace(value, at=at)
        for value, at in zip(state.values, state.times, strict=True)
    ], None
