"""One line cut into clauses, with the times, tanks and events that stand in it.

line      = { time | tank | event | clause | separator }
tank      = name | "@" name | beginning of a name | name ":"      (at the start or end, after "in")
separator = "," | ";" | "|" | "/" | "(" | ")" | "and" | "-" | "." | "!" | "?"
"""

from __future__ import annotations

from core.message import (
    amount_behind,
    animal_words,
    beside_dose,
    beside_value,
    clauses,
    clockwords,
    deed_amended,
    deed_doubted,
    deed_told,
    deed_unsure,
    deeds,
    doubts,
    elsewhere,
    events,
    fertilisers,
    gains,
    herd,
    line_times,
    naming,
    nearly_done,
    no_loss,
    plain_tail,
    quantities,
    quick_talk,
    refilled,
    risen,
)
from core.message.clauses import Clause
from core.message.state import Line, Statement
from core.message.tokens import Token

_SOFT = frozenset({",", ";", "|", "/", "•", "(", ")", "[", "]"})


_HARD = frozenset({".", "!", "?"})


_WATERS = frozenset({"home", "other"})
_GAINED = frozenset({"number", "count", "substance"})


def build(tokens: list[Token], state: Statement) -> Line:
    """The parts of one line, clauses whose names and numbers a separator divides joined again."""
    line = Line(clauses=[Clause()])
    deed_amended.put_right(tokens)
    deed_amended.or_was_it(tokens)
    beside_dose.set_aside(tokens)
    nearly_done.mark(tokens)
    naming.by_letter(tokens, state.context.tanks)
    beside_value.set_aside(tokens, state.source)
    plain_tail.set_aside(tokens, state.source)
    quick_talk.set_aside(tokens, state.context.tanks)
    deed_told.set_aside(tokens)
    refilled.vessels(tokens)
    deed_told.out_and_in(tokens)
    refilled.out_and_up(tokens)
    refilled.with_water(tokens)
    deeds.share_changed(tokens)
    deeds.did_change(tokens)
    deed_told.with_mix(tokens)
    deeds.whole_changed(tokens)
    deeds.emptied(tokens)
    deeds.given_it(tokens)
    animal_words.mark(tokens)
    if state.context.tanks:
        animal_words.place_first(tokens)
    fertilisers.told(tokens, state.source)
    kinds = {token.kind for token in tokens}
    if "analyte" in kinds:
        risen.read_as_told(tokens)
    if "substance" in kinds:
        amount_behind.brought_forward(tokens)
        if deeds.dosed(tokens):
            kinds.add("event")
    if "event" in kinds:
        amount_behind.before_day(tokens)
        if state.context.tanks:
            naming.of_events(tokens, state)
        found = events.find(tokens, state.source, state.context)
        found = deed_doubted.settle(found, tokens, state.source)
        found = deed_unsure.settle(found, tokens, state.source)
        found = elsewhere.settle(found, tokens, state.source)
        found = no_loss.settle(found, tokens, state.source)
    else:
        counted = not kinds.isdisjoint(_GAINED) or any([t.value == "one" for t in tokens])  # noqa: C419
        counted = counted or any([herd.saying(t.text) == "young" for t in tokens])  # noqa: C419
        told = "analyte" in kinds or not counted
        found = [] if told else gains.find(tokens, state.source)
    if not clockwords.words().isdisjoint([token.text for token in tokens]):
        line.spoken = True
    timed = line.spoken or not kinds.isdisjoint(line_times.TIMES)
    led = next((t.value for t in tokens if t.kind != "fill"), None) in _WATERS
    index = 0
    while index < len(tokens):
        if led and _another_water(tokens, index, line.clauses[-1]):
            line.clauses.append(Clause())
        if found and found[0].first == index:
            if line.tanks and not line.tank_first and line.tanks[-1][0] == len(line.clauses) - 1:
                line.clauses.append(Clause())  # what was done in that tank is told
            line.events.append((len(line.clauses) - 1, found[0]))
            index = found.pop(0).last
            continue
        index = _step(tokens, index, line, state, timed=timed)
    _merge(line)
    last = tokens[-2] if tokens[-1].kind == "p" and len(tokens) > 1 else tokens[-1]
    line.wished = last.kind == "mark" and last.value in clauses.WISHES
    return line


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
    if not line.begun and (used := naming.told_apart(tokens, index, line, state)):
        return used
    if used := naming.counted(tokens, index, line, state):
        return used
    if kind == "analyte":
        if not line.begun and naming.alike(tokens, index, state):
            return naming.named(tokens, index, line, state)
        line.begun = True
        return clauses.gather(tokens, index, clause)
    if not index and state.context.tanks and naming.poses(tokens, state.context):
        return naming.posed(tokens, line, state)
    if _turns_to_now(token, clause):
        line.clauses.append(Clause())
    elif _turns_to_tank(tokens, index, clause):
        clause = Clause()
        line.clauses.append(clause)
    if timed and (used := line_times.span(tokens, index, line)):
        return index + used
    if timed:
        moment = line_times.moment_at(tokens, index, line, state)
        if moment is not None:
            line_times.note(tokens, moment, line)
            return moment.end
    if kind == "tank":
        return naming.take(line, str(token.value), index)
    if kind in {"word", "several"} or token.value == "at" or naming.idle(tokens, index):
        used = naming.named(tokens, index, line, state)
        if used:
            return used
        if token.value == "at" and kind == "time":
            clause.after.append("at")
            return index + 1
    if _separates(tokens, index, clause):
        regrets = clause.after == ["instead"] and token.text == ","  # kh 5, sorry, 6
        if clause.items or (clause.after and not regrets) or clause.loose or clause.other:
            line.clauses.append(Clause(begins=token.text in _HARD))
        if token.text == "?" and clause.items:
            clause.questioned = True
        if token.text == "(":
            line.clauses[-1].bracketed = True
        return index + 1
    after = clauses.gather(tokens, index, clause)
    line.begun = line.begun or bool(clause.items)
    return after


def _turns_to_now(token: Token, clause: Clause) -> bool:
    """Whether what was is left for what is, without a comma: `temp was 26 now 24`."""
    if token.kind != "time" or token.value != "now" or not clause.items:
        return False
    last = clause.items[-1]
    return last.kind == "V" and not {"was", "formerly"}.isdisjoint(last.marks)


def _turns_to_tank(tokens: list[Token], index: int, clause: Clause) -> bool:
    """Whether what is of other things is left for the tank: `power was out | tank is 17`."""
    if tokens[index].value != "home" or index + 1 == len(tokens):
        return False
    talk = bool(clause.items) and all(item.kind == "U" for item in clause.items)
    return talk and tokens[index + 1].value == "link"


def _bullet(tokens: list[Token], state: Statement) -> int:
    """A star, or the line's own number (`2. KH 4`): how many tokens it takes."""
    first = tokens[0]
    if first.text == "*":
        return 1
    if len(tokens) < 4 or first.kind != "number" or tokens[1].text not in {".", ")"}:
        return 0
    line = str(state.source.count("\n", 0, first.start) + 1)
    named = tokens[2].kind == "analyte" and tokens[1].start == first.end < tokens[2].start
    return 2 if first.text == line and named and naming.number_ahead(tokens, 3) else 0


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
    if token.text == "-" and _is_minus(tokens, index):
        return False
    if token.text == "-":
        following = tokens[index + 1] if index + 1 < len(tokens) else token
        letter = len(following.text) == 1 and following.kind in {"word", "fill", "several", "unit"}
        word = following.kind == "word" or letter
        if letter and index + 2 < len(tokens) and quantities.is_number(tokens[index + 2]):
            return False  # typed into a range: "20 -o 40"
        return not clause.items or (clause.items[-1].kind == "V" and not word)
    return False


def _is_minus(tokens: list[Token], index: int) -> bool:
    """Whether a dash touches the number behind it and nothing before it: `-3 kh`, no `- 3 kh`."""
    behind = tokens[index + 1] if index + 1 < len(tokens) else None
    if behind is None or not quantities.is_number(behind) or behind.start != tokens[index].end:
        return False
    return not index or tokens[index - 1].end < tokens[index].start


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
