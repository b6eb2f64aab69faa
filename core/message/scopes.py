"""What the words of a line do to the values in it.

A wish, a change, another water, a word that we do not know: each makes the values that it bears
on doubtful, and no others.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from core.message import doubts, nearest
from core.message.candidates import Candidate
from core.message.clauses import WISHES, Clause
from core.message.guesses import name_for, number_text
from core.message.state import Line, Statement


def count_words(line: Line, state: Statement) -> None:
    """Whether the line has words of ordinary speech, which make it talk in a group."""
    for clause in line.clauses:
        if clause.loose or clause.questioned or (clause.fill and not line.tank_first):
            state.talk = True
        for item in clause.items:
            if item.kind == "U":
                state.talk = True
                state.words += 1
                break
        state.words += clause.fill


def trailing_marks(clause: Clause, *, beside_deed: bool) -> None:
    """Words behind the last number: `kh 6 target`, `ph .2 up`; before a deed tells when it was."""
    if not clause.candidates:
        return
    last = clause.candidates[-1]
    for mark in _without_wished_move(clause.after):
        if mark in WISHES:
            last.problem = last.problem or doubts.WISH
        elif mark in {"up", "down"}:
            last.problem = last.problem or doubts.CHANGE
        elif mark == "not":
            last.problem = last.problem or doubts.NEGATED
        elif mark == "formerly" and not beside_deed:
            last.problem = last.problem or doubts.PAST  # kh 4 when i started
        elif mark in {"to", "between"}:
            last.problem = last.problem or doubts.BAD_NUMBER  # a range without its end
        elif mark in {"as", "and"}:
            reason = doubts.UNKNOWN_UNIT if mark == "as" else doubts.UNKNOWN_WORD
            last.problem = last.problem or reason  # something was left off


def clause_words(clause: Clause) -> None:
    """A question mark or an unknown word in a clause makes all its values doubtful."""
    for candidate in clause.candidates:
        if clause.questioned:
            candidate.problem = candidate.problem or doubts.QUESTIONED
        if clause.loose:
            ambiguous = any(item.ambiguous for item in clause.loose)
            reason = doubts.AMBIGUOUS_WORD if ambiguous else doubts.UNKNOWN_WORD
            candidate.problem = candidate.problem or reason


def _without_wished_move(marks: Sequence[str]) -> Sequence[str]:
    """Marks without a wish that what was told moves on: `kh is 3 i want it higher` tells of 3."""
    place = next((n for n, mark in enumerate(marks) if mark == "wish"), len(marks))
    behind = marks[place + 1 :]
    return marks[:place] if behind and set(behind) <= {"up", "down"} else marks


def other_water(line: Line, candidates: list[Candidate], state: Statement) -> None:
    """Which values are another water's: from its word to the next word for the tank."""
    if not state.other and not any(clause.other for clause in line.clauses):
        return
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


def wishes(line: Line, state: Statement) -> None:
    """A wish before a name bears on every name behind it: `i want kh 5, gh 8`.

    It ends with its sentence, with a word for the tank, and with a time (`now kh 4`). On a line of
    its own (`target`) it bears on the lines below in the same way, and as the last word on all of
    its clause.
    """
    if line.wished:
        _poison(line.clauses[-1].candidates, doubts.WISH)
    active = state.wished and not line.tanks and not line.moments
    if line.moments or line.tanks:
        state.wished = False
    times = [moment.start_char for _, moment in line.moments]
    for clause in line.clauses:
        if clause.begins or clause.home:
            active = state.wished = False
        start = 0 if active else None
        for item in clause.items:
            if item.wished and start is None:
                start = item.start
        if start is None:
            # "target, kh 6": nothing but the wish before the mark
            active = not clause.items and not line.events and "wish" in clause.after
            continue
        ended = min((time for time in times if time > start), default=None)
        bound = [c for c in clause.candidates if c.end > start and (not ended or c.start < ended)]
        _poison(bound, doubts.WISH)
        active = ended is None
    told = line.events or any(i.kind == "V" for clause in line.clauses for i in clause.items)
    bare = not any(clause.items for clause in line.clauses)
    if not told and (line.wished or (bare and any("wish" in c.after for c in line.clauses))):
        state.wished = True


def unclear_heads(line: Line, candidates: list[Candidate], state: Statement) -> None:
    """A line of one or two words, one nearly a word that would bear, bears on the lines below.

    `targt` above `kh 6` may be a wish; it ends where a tank, a time or the tank's own water comes.
    """
    if line.tanks or line.moments or any(clause.home for clause in line.clauses):
        state.unclear = False
    if state.unclear:
        _poison(candidates, doubts.UNKNOWN_WORD)
    if candidates or line.events:
        return
    items = [item for clause in line.clauses for item in (*clause.loose, *clause.items)]
    words = [item for item in items if item.kind == "U"]
    if words and len(words) == len(items) < 3 and any(nearest.bears(w.text) for w in words):
        state.unclear = True


def lone_k(line: Line, candidates: list[Candidate], state: Statement) -> None:
    """A bare K is potassium only beside a KH, since one letter is easily lost."""
    lone = [c for c in candidates if c.name == "k" and c.problem is None]
    if not lone:
        return
    names = {c.analyte for c in candidates}
    if not line.tanks:
        names |= {value.analyte for value in state.values}
    if "kh" in names and len(names) > 2:
        return
    for candidate in lone:
        _torn_by(candidate, candidates, state.source)
        text = number_text(candidate.quantity)
        candidate.problem = doubts.AMBIGUOUS_NAME
        candidate.choices = (f"potassium {text}", f"KH {text}")


def _torn_by(lone: Candidate, candidates: list[Candidate], source: str) -> None:
    """A letter that may have been typed into a number or a range (`4k 1/2`, `20 k- 40`)."""
    before = [each for each in candidates if each.end <= lone.start]
    if not before:
        return
    inside = source[lone.start + 1 : lone.quantity.start].strip()
    if before[-1].end == lone.start or inside == "-":
        before[-1].problem = before[-1].problem or doubts.UNKNOWN_WORD


_DASHED = re.compile(r"(?:no2|no3|po4)-[ ]+")


def lost_basis(candidates: list[Candidate], source: str) -> None:
    """A name in small letters with a lone hyphen (`no3- 5`) may have lost its -n: asked."""
    dashed = [c for c in candidates if source[c.start : c.quantity.start].rstrip().endswith("-")]
    if len(dashed) != 1:
        return
    (candidate,) = dashed
    if not _DASHED.fullmatch(source[candidate.start : candidate.quantity.start]):
        return
    if candidate.problem is None and candidate.basis is None:
        name, number = name_for(candidate.analyte), number_text(candidate.quantity)
        basis = "P" if candidate.analyte == "phosphate" else "N"
        candidate.problem = doubts.AMBIGUOUS_NAME
        candidate.choices = (f"{name} {number}", f"{name}-{basis} {number}")


def reference_heat(line: Line, candidates: list[Candidate]) -> None:
    """25 °C behind a conductivity is what the meter corrects to, or the tank: asked."""
    for candidate in candidates:
        if candidate.analyte != "temperature" or candidate.name not in _SIGNS:
            continue
        if (candidate.quantity.value, candidate.quantity.unit) in _REFERENCES:
            named = _conductivity(line)
            if named is not None and candidate.start > named:
                candidate.problem = candidate.problem or doubts.UNKNOWN_WORD


def _conductivity(line: Line) -> int | None:
    """Where a conductivity first stands in a line."""
    return min(
        (
            item.start
            for clause in line.clauses
            for item in clause.items
            if item.analyte == "conductivity"
            or (item.quantity is not None and item.quantity.of == "conductivity")
        ),
        default=None,
    )


_SIGNS = frozenset({"", "c", "f", "°c", "°f"})
_REFERENCES = frozenset({(25.0, "°C"), (77.0, "°F")})


def _poison(candidates: list[Candidate], reason: str, *, force: bool = False) -> None:
    for candidate in candidates:
        if force or candidate.problem is None:
            candidate.problem = reason
            candidate.choices = ()


def unknown_words(line: Line, candidates: list[Candidate], state: Statement) -> None:
    """A word in a clause without values bears on the line if it is nearly a word that would."""
    del state
    for clause in line.clauses:
        if clause.candidates:
            continue
        words = [item for item in (*clause.loose, *clause.items) if item.kind == "U"]
        bearing = any(item.bearing or nearest.bears(item.text) for item in words)
        if bearing or (clause.bracketed and words):
            _poison(candidates, doubts.UNKNOWN_WORD)
