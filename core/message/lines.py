"""One line cut into clauses, with the times, tanks and events that stand in it.

line      = { time | tank | event | clause | separator }
tank      = name | "@" name | beginning of a name | name ":"      (at the start or end, after "in")
separator = "," | ";" | "|" | "/" | "(" | ")" | "and" | "-" | "." | "!" | "?"
"""

from __future__ import annotations

from core.message import clauses, doubts, events, quantities, tanks, times
from core.message.clauses import Clause
from core.message.days import BETWEEN
from core.message.model import Doubt
from core.message.state import Line, Statement
from core.message.times import Moment
from core.message.tokens import Token

_SOFT = frozenset({",", ";", "|", "/", "•", "(", ")", "[", "]"})


_HARD = frozenset({".", "!", "?"})


_MOST = 12
"""Times, and tanks, that one line may have; more are no message of a keeper."""
_FRACTIONS = frozenset({"1/2", "1/3", "1/4", "1/8"})
_WATERS = frozenset({"home", "other"})
_TIMES = frozenset({"time", "iso", "clock", "dotted", "slashed"})
_COUNTED = frozenset({"number", "fraction", "count"})


def build(tokens: list[Token], state: Statement) -> Line:
    """The parts of one line, clauses whose names and numbers a separator divides joined again."""
    line = Line(clauses=[Clause()])
    _share_changed(tokens)
    kinds = {token.kind for token in tokens}
    found = events.find(tokens, state.source, state.context) if "event" in kinds else []
    timed = not kinds.isdisjoint(_TIMES)
    led = next((t.value for t in tokens if t.kind != "fill"), None) in _WATERS
    index = 0
    while index < len(tokens):
        if led and _another_water(tokens, index, line.clauses[-1]):
            line.clauses.append(Clause())
        if found and found[0].first == index:
            line.events.append((len(line.clauses) - 1, found[0]))
            index = found.pop(0).last
            continue
        index = _step(tokens, index, line, state, timed=timed)
    _merge(line)
    last = tokens[-2] if tokens[-1].kind == "p" and len(tokens) > 1 else tokens[-1]
    line.wished = last.kind == "mark" and last.value in clauses.WISHES
    return line


def _share_changed(tokens: list[Token]) -> None:
    """`30% change` is a change of water."""
    for index in range(2, len(tokens)):
        token = tokens[index]
        if token.value == "changing" and tokens[index - 1].value == "%":
            following = tokens[index + 1] if index + 1 < len(tokens) else token
            if tokens[index - 2].kind == "number" and following.value not in {"in", "link"}:
                token.kind, token.value = "event", "water_change"


def _another_water(tokens: list[Token], index: int, clause: Clause) -> bool:
    """Whether a word for a water begins what is told of it: `tap kh 2 tank kh 6`."""
    told = bool(clause.items) and clause.items[-1].kind == "V"
    named = index + 1 < len(tokens) and tokens[index + 1].kind == "analyte"
    return told and named and tokens[index].kind == "mark" and tokens[index].value in _WATERS


def _step(tokens: list[Token], index: int, line: Line, state: Statement, *, timed: bool) -> int:
    token = tokens[index]
    kind = token.kind
    clause = line.clauses[-1]
    if index == 0 and (used := _bullet(tokens, state)):
        return used
    if kind == "analyte":
        if not line.begun and _tank_like(tokens, index, state):
            return _named_tank(tokens, index, line, state)
        line.begun = True
        return clauses.gather(tokens, index, clause)
    if timed and (used := _span(tokens, index, line)):
        return index + used
    if timed:
        moment = _moment(tokens, index, line, state)
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
            clause.after.append("at")
            return index + 1
    if _separates(tokens, index, clause):
        if clause.items or clause.after or clause.loose or clause.other:
            line.clauses.append(Clause(begins=token.text in _HARD))
        if token.text == "?" and clause.items:
            clause.questioned = True
        if token.text == "(":
            line.clauses[-1].bracketed = True
        return index + 1
    after = clauses.gather(tokens, index, clause)
    line.begun = line.begun or bool(clause.items)
    return after


def _span(tokens: list[Token], index: int, line: Line) -> int:
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


def _bullet(tokens: list[Token], state: Statement) -> int:
    """A star, or the line's own number (`2. KH 4`): how many tokens it takes."""
    first = tokens[0]
    if first.text == "*":
        return 1
    if len(tokens) < 4 or first.kind != "number" or tokens[1].text not in {".", ")"}:
        return 0
    line = str(state.source.count("\n", 0, first.start) + 1)
    named = tokens[2].kind == "analyte" and tokens[1].start == first.end < tokens[2].start
    return 2 if first.text == line and named and _number_ahead(tokens, 3) else 0


def _moment(tokens: list[Token], index: int, line: Line, state: Statement) -> Moment | None:
    """A time that begins here, unless a name waits for this number."""
    token = tokens[index]
    counted = token.kind in _COUNTED or token.value in {"half", "one"}
    if not (counted or token.kind in _TIMES) or len(line.moments) >= _MOST:
        return None
    clause = line.clauses[-1]
    if token.kind in {"dotted", "slashed"} and clause.items and clause.items[-1].kind == "N":
        names = sum(item.kind == "N" for item in clause.items)
        if names > sum(item.kind == "V" for item in clause.items):
            return None
    if token.kind == "slashed" and index and tokens[index - 1].text == "/":
        return None  # a list of numbers (7/4/8)
    if token.text in _FRACTIONS and index + 1 < len(tokens) and tokens[index + 1].kind == "analyte":
        return None
    if counted:
        following = tokens[index + 1] if index + 1 < len(tokens) else None
        if following is None or (following.kind != "time" and following.text not in BETWEEN):
            return None
    return times.find(tokens, index, state.context)


def _tank(line: Line, name: str, index: int) -> int:
    if not line.tanks and not line.begun:
        line.tank_first = True
    if line.clauses[-1].items and line.tank_first:
        line.clauses.append(Clause())
    line.tanks.append((len(line.clauses) - 1, name))
    return index + 1


def _named_tank(tokens: list[Token], index: int, line: Line, state: Statement) -> int:
    """A tank by prefix, nearly, or one the chat does not have (`@name`, `name:`); else 0."""
    token = tokens[index]
    called = token.text == "@"
    place = index + 1 if called else index
    if len(line.tanks) >= _MOST:
        return 0
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
    """A word that names an analyte, and nearly a tank, before a name or alone (`fer ph 7`)."""
    alone = len(tokens) == 1
    if not state.context.tanks or not (
        alone or (index + 1 < len(tokens) and tokens[index + 1].kind == "analyte")
    ):
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
        return token.value == "and" and bool(clause.items) and index + 1 < len(tokens)
    if (
        token.kind != "p"
        or clauses.within_word(tokens, index)
        or (token.text in "()/," and _waits(tokens, index, clause))
    ):
        return False
    if token.text in _SOFT or token.text in _HARD:
        _unit_cut_off(tokens, index, clause)
        return True
    if token.text == "-":
        following = tokens[index + 1] if index + 1 < len(tokens) else token
        letter = len(following.text) == 1 and following.kind in {"word", "fill", "several", "unit"}
        word = following.kind == "word" or letter
        if letter and index + 2 < len(tokens) and quantities.is_number(tokens[index + 2]):
            return False  # typed into a range: "20 -o 40"
        return not clause.items or (clause.items[-1].kind == "V" and not word)
    return False


def _unit_cut_off(tokens: list[Token], index: int, clause: Clause) -> None:
    """A unit that a mark parts from its number (`8 ,ppm`) makes the number doubtful."""
    following = tokens[index + 1] if index + 1 < len(tokens) else None
    if following is None or following.kind != "unit" or not clause.items:
        return
    if index + 2 < len(tokens) and quantities.is_number(tokens[index + 2]):
        return  # a name of its own
    quantity = clause.items[-1].quantity
    if quantity is not None and quantity.unit is None:
        quantity.problem = quantity.problem or doubts.UNKNOWN_UNIT


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
    if len(line.clauses) < 2:
        return
    counts = [
        (sum(i.kind == "N" for i in clause.items), sum(i.kind == "V" for i in clause.items))
        for clause in line.clauses
    ]
    lone = any((names == 0) != (values == 0) for names, values in counts)
    names, values = sum(n for n, _ in counts), sum(v for _, v in counts)
    if not lone or names != values:
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
