"""Readings told beside a change that are of the water that went in: `20% with tap at 15 c, ph 8`.

They are another water's, never the tank's, from where that water is named to the end of the
sentence, to a word for the tank, or to a time (`20% with tap, now ph 7`).
"""

from __future__ import annotations

import re
from typing import Final

from core.message import doubts, new_water
from core.message.candidates import Candidate
from core.message.state import Line, Statement
from core.message.waters import mentioned

CHANGING: Final = frozenset({"water_change", "top_up"})
_SENTENCE: Final = re.compile(r"[;!?\n]|\.(?!\d)")


def mark(line: Line, candidates: list[Candidate], state: Statement) -> None:
    """Make doubtful what is told of the new water of a change."""
    if not candidates or not line.events:
        return
    last = max(candidate.end for candidate in candidates)
    told = [found.event or found.doubt for _, found in line.events if found.kind in CHANGING]
    for start in (each.start for each in told if each is not None):
        said = state.source[start:last]
        named = [first for first, _, _ in mentioned(said)]
        if (found := new_water.find(said)) is not None:
            named.append(found.start)
        if named:
            _bind(start + min(named), line, candidates, state)


def _bind(start: int, line: Line, candidates: list[Candidate], state: Statement) -> None:
    """Every value behind the new water's name, as far as it is spoken of."""
    homes = [c for clause in line.clauses if clause.home for c in clause.candidates]
    times = [moment.start_char for _, moment in line.moments]
    ends = [found.start() + start for found in _SENTENCE.finditer(state.source[start:])]
    ends += [time for time in times if time > start]
    ends += [candidate.start for candidate in homes if candidate.start > start]
    end = min(ends, default=len(state.source))
    for candidate in candidates:
        if start < candidate.end <= end and not line.tanks[1:]:
            candidate.problem, candidate.choices = doubts.OTHER_WATER, ()
