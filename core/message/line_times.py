"""The times that stand in a line: which numbers are none, and whose time it is."""

from __future__ import annotations

from core.message import clockwords, doubts, naming, times
from core.message.clauses import Clause
from core.message.days import BETWEEN
from core.message.model import Context
from core.message.state import Line, Statement
from core.message.times import Moment
from core.message.tokens import Token

_FRACTIONS = frozenset({"1/2", "1/3", "1/4", "1/8"})
TIMES = frozenset({"time", "iso", "clock", "dotted", "slashed"})
_TRIES = 40
"""Places of one line where a time is looked for; nobody tells so many."""
_COUNTED = frozenset({"number", "fraction", "count"})


def note(tokens: list[Token], moment: Moment, line: Line) -> None:
    """Keep a moment with the clause that it is of; one that tells each value's own parts them.

    `monday kh 5 tuesday kh 4` and `kh 5 monday kh 4 tuesday` are two clauses; a day and the hour
    behind its values (`yesterday kh 5 gh 7 9:30`) are one moment; any other second one in a
    clause leaves open what is whose.
    """
    clause, place = line.clauses[-1], len(line.clauses) - 1
    named = tokens[moment.end : moment.end + 1]
    names = [item.analyte for item in clause.items if item.kind == "N"]
    again = bool(named) and named[0].kind == "analyte" and named[0].value in names
    before = line.moments[-1][1] if line.moments and line.moments[-1][0] == place else None
    if not line.moments:
        line.time_first = not line.begun and not line.events
    if before is not None and moment.lent and not before.hour and not again:
        moment.start_char = before.start_char
        line.moments.pop()
    elif before is not None and line.time_first and names and named and named[0].kind == "analyte":
        line.clauses.append(Clause())
    elif before is not None:
        moment.problem = moment.problem or doubts.AMBIGUOUS_DATE
    line.moments.append((len(line.clauses) - 1, moment))
    if again and not line.time_first:
        line.clauses.append(Clause())


def between(tokens: list[Token], context: Context) -> int | None:
    """Where a line of two moments is parted, that names a day in its middle; else None.

    `ph 7.9 kh 6 yesterday ph was 6.5 kh 1`: where a name has a value on both sides of the only
    time of a line, that is of what follows it, unless a mark stands behind it and none before it,
    or what stands before it was and what follows is not. With nothing between them a lone value,
    or a poison, may be of either: it is asked.
    """
    if len(tokens) < _LEAST or tokens[-1].kind == "time":
        return None
    names = [place for place, token in enumerate(tokens) if token.kind == "analyte"]
    if len(names) < 2 or any(token.kind in _NO_PARTS for token in tokens):
        return None
    if any(token.kind == "tank" or token.value == "correct" for token in tokens[1:]):
        return None
    days = [n for n, t in enumerate(tokens) if t.kind == "time" and n > names[0]]
    first = next((n for n in days if tokens[n].value not in _NO_DAYS), None)
    if first is not None and tokens[first].value in {*_SPANS, "hour", "minute"}:
        first -= 1  # two days ago
    if first is None or names[0] > first or not _ends_value(tokens, first):
        return None
    moment = times.find(tokens, first, context)
    if moment is None or moment.at is None or moment.problem:
        return None
    others = [*tokens[:first], *tokens[moment.end :]]
    if any(token.kind in TIMES or token.value in _REGRETS for token in others):
        return None
    told = [(place, str(tokens[place].value).partition("@")[0]) for place in names]
    before = {name for place, name in told if place < first}
    behind = {name for place, name in told if place >= moment.end}
    if before.isdisjoint(behind):
        return None
    was = [any(t.value in _WAS for t in part) for part in (tokens[:first], tokens[moment.end :])]
    if was[0] != was[1]:
        return moment.end if was[0] else first
    behind_it = tokens[moment.end]
    parted = [tokens[first - 1].kind == "p", behind_it.kind == "p" or behind_it.value == "and"]
    if behind_it.text == ")" or parted == [False, True]:
        return moment.end
    sure = parted == [True, False] or (len(before) > 1 and _POISONS.isdisjoint(before & behind))
    return first if sure and not was[0] else None


def _ends_value(tokens: list[Token], place: int) -> bool:
    """Whether a value is told in full before a place."""
    for token in reversed(tokens[:place]):
        if token.kind in {"number", "unit"}:
            return True
        if token.kind not in {"p", "fill"} and token.value != "at":
            return False
    return False


_LEAST = 5
_NO_PARTS = frozenset({"event", "substance", "ask", "nl"})
_NO_DAYS = frozenset({"at", "at_hour", "now", "one", "am", "pm", "oclock"})
_WAS = frozenset({"was", "formerly"})
_POISONS = frozenset({"ammonia", "nitrite", "copper", "chlorine", "total_chlorine"})
_REGRETS = frozenset(
    {"correct", "no", "not", "wish", "if", "from", "to", "rose_to", "fell_to", "equals"}
)
"""Words behind which a number puts another right, or is none of its own."""


def span(tokens: list[Token], index: int, line: Line) -> int:
    """How long, or which day of it, which is no time: `for 3 weeks`, `day 5` at the start."""
    if index + 1 >= len(tokens):
        return 0
    token, number = tokens[index], tokens[index + 1]
    if number.kind not in {"number", "count"}:
        return 0
    if "for" in {token.text, token.value} and index + 2 < len(tokens):
        last = tokens[index + 2]
        ago = index + 3 < len(tokens) and tokens[index + 3].value == "ago"
        return 3 if last.kind == "time" and last.value in _SPANS and not ago else 0
    begins = token.kind == "time" and token.value in _SPANS and not line.begun
    named = index + 2 < len(tokens) and (
        tokens[index + 2].kind == "analyte" or tokens[index + 2].text == ":"
    )
    return 2 if begins and named and number.text.isdigit() else 0


_SPANS = frozenset({"day", "week", "month"})


def moment_at(tokens: list[Token], index: int, line: Line, state: Statement) -> Moment | None:
    """A time that begins here, unless a name waits for this number."""
    if len(line.moments) >= naming.MOST or line.tried >= _TRIES:
        return None
    clause = line.clauses[-1]
    spoken = line.spoken and clockwords.may_begin(tokens, index)
    if not (spoken and not _awaited(tokens, index, clause)) and not _timely(tokens, index, clause):
        return None
    line.tried += 1
    before = line.moments[-1][1] if line.moments else state.heading
    found = times.find(tokens, index, state.context, before)
    died = tokens[index].value == "evening" and any(each.value == "lost" for each in tokens)
    if found is not None and died and found.problem == doubts.FUTURE:
        found.problem, found.choices = None, ()  # tonight, said at noon, was the night before
    return found


def _timely(tokens: list[Token], index: int, clause: Clause) -> bool:
    """Whether a time may begin here, by the kinds of the tokens."""
    token = tokens[index]
    counted = token.kind in _COUNTED or token.value in {"half", "one"}
    if not (counted or token.kind in TIMES):
        return False
    if token.kind in {"dotted", "slashed"} and clause.items and clause.items[-1].kind == "N":
        names = sum(item.kind == "N" for item in clause.items)
        if names > sum(item.kind == "V" for item in clause.items):
            return False
    if token.kind == "slashed" and index and tokens[index - 1].text == "/":
        return False  # a list of numbers (7/4/8)
    if token.text in _FRACTIONS and index + 1 < len(tokens) and tokens[index + 1].kind == "analyte":
        return False
    if counted:
        following = tokens[index + 1] if index + 1 < len(tokens) else None
        return following is not None and (following.kind == "time" or following.text in BETWEEN)
    return True


def _awaited(tokens: list[Token], index: int, clause: Clause) -> bool:
    """Whether a number here is a name's (`kh 7 y media`), or of a range or a comparison."""
    if tokens[index].kind not in _COUNTED:
        return False
    before = tokens[index - 1] if index else None
    marked = before is not None and before.kind == "mark" and before.value != "at_to"
    return marked or bool(clause.items and clause.items[-1].kind == "N")
