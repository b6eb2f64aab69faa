"""From a flaw in the pieces to a problem that shows its words and says what to say instead."""

from __future__ import annotations

from core.schedule.grammar.spans import amounts
from core.schedule.model import Problem
from core.schedule.pieces import Clock, End, Flaw, Found, Piece
from core.schedule.tasks import names_task
from core.schedule.tokens import Line
from core.schedule.words import tasks


def pieces_of(founds: list[Found]) -> tuple[Piece, ...]:
    """All pieces in the order of the words."""
    return tuple(piece for found in founds for piece in found.pieces)


def flaw_in(line: Line, founds: list[Found]) -> Problem | None:
    """The first phrase that cannot be taken by itself; its options replace it in the text."""
    for found in founds:
        for piece in found.pieces:
            if isinstance(piece, Flaw):
                start, end = line.span(found.start, found.end)
                texts = tuple(_replaced(line.text, start, end, each) for each in piece.options)
                return _problem(piece, line.text, start, end, texts)
    return None


def end_in(line: Line, founds: list[Found]) -> Problem | None:
    """An end of a rhythm, which rules do not have; the text without it is offered."""
    for found in founds:
        if isinstance(found.pieces[0], End):
            start, end = line.span(found.start, found.end)
            rest = " ".join(f"{line.text[:start]} {line.text[end:]}".split())
            return _problem(Flaw("ends"), line.text, start, end, (rest,) if rest else ())
    return None


def loose_end(line: Line, founds: list[Found]) -> Problem | None:
    """Words beside a time that would change it and that no rule reads: "a week on friday"."""
    for run in _runs(founds):
        start, end = run[0].start, run[-1].end
        after = line.word(line.skip(end, "filler"), "loose")
        if after is not None and not _begins_task(line, line.skip(end, "filler"), after[1]):
            return _problem(Flaw("unclear"), line.text, *line.span(start, after[1]), ())
        for k in range(max(0, start - 4), start):
            before = amounts(line, k)
            if before is not None and _joins(line, before[1], start):
                return _problem(Flaw("unclear"), line.text, *line.span(k, end), ())
    return None


def _begins_task(line: Line, at: int, after: int) -> bool:
    """True where a word for and is followed by a task: tomorrow and test kh."""
    if line.word(at, "and") is None:
        return False
    words = [token.text for token in line.tokens[after:]]
    while words and words[0].casefold() in tasks.LEADS:
        words = words[1:]
    return bool(words) and names_task(words[0])


def _joins(line: Line, i: int, start: int) -> bool:
    """True where nothing, or a word like 'after' or 'before', stands between."""
    return i == start or line.skip(i, "in", "at", "start") == start


def _runs(founds: list[Found]) -> list[list[Found]]:
    """Phrases side by side, together."""
    runs: list[list[Found]] = []
    for found in founds:
        if runs and runs[-1][-1].end == found.start:
            runs[-1].append(found)
        else:
            runs.append([found])
    return runs


def unclear_problem(line: Line, founds: list[Found], flaw: Flaw, what: str) -> Problem:
    """The problem of phrases that do not go together; its options follow the task."""
    start, end = line.span(founds[0].start, founds[-1].end)
    texts = tuple(f"{what} {option}".strip() for option in flaw.options)
    texts = texts or _one_time_each(line, founds, what)
    return _problem(flaw, line.text, start, end, texts)


def _one_time_each(line: Line, founds: list[Found], what: str) -> tuple[str, ...]:
    """Where several times of day were said, a text with each: two reminders instead of one."""
    clocks = [found for found in founds if isinstance(found.pieces[0], Clock)]
    others = [_said(line, found) for found in founds if found not in clocks]
    if len(clocks) < 2:
        return ()
    return tuple(" ".join(filter(None, (what, *others, _said(line, each)))) for each in clocks)


def _said(line: Line, found: Found) -> str:
    start, end = line.span(found.start, found.end)
    return line.text[start:end]


def _problem(flaw: Flaw, text: str, start: int, end: int, options: tuple[str, ...]) -> Problem:
    suggestion = options[0] if options else None
    return Problem(flaw.reason, text[start:end], start, end, suggestion, options)


def _replaced(text: str, start: int, end: int, option: str) -> str:
    return f"{text[:start]}{option}{text[end:]}"
