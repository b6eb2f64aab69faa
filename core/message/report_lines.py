"""The lines of a report: which name goes with which text, and what is no value of the water.

line = name { limit | number [ "-" number ] | unit | other words }

A name goes with the numbers behind it up to the next name, or to the first word that is neither
a unit nor a heading's. Numbers of a limit are left out: those behind its word, and those of its
column where a line of headings tells the columns.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from datetime import date
from typing import Final

from core.message.fold import fold
from core.message.report_words import beside_values, heading, headings, table, whole

_LEADING: Final = re.compile(r"\W{0,9}([^\W\d_][^\d<>:;|\t]{0,40})")
_WORD: Final = re.compile(r"[^\W\d_]{3,}")


@dataclass(frozen=True, slots=True)
class Named:
    """A name on a line with the text behind it."""

    name: str
    said: str
    text: str


@dataclass(slots=True)
class Lines:
    """What the lines so far hold: the columns, a name that waits for its number, and the rest."""

    columns: tuple[str, ...] = ()
    waiting: str | None = None
    named: list[Named] = field(default_factory=list)
    passed: list[str] = field(default_factory=list)
    sampled: date | None = None


def take(line: str, state: Lines) -> None:
    """Put what a line tells with what the lines before it told."""
    plain = fold(line)
    if (sampled := _sampled(plain)) is not None:
        state.sampled = sampled
        return
    if (columns := _columns(plain)) is not None:
        state.columns = columns
        return
    marks = names_in(plain)
    if not marks:
        _without_name(line, plain, state)
        return
    head = plain[: marks[0][0]]
    if any(map(str.isdigit, head)):
        _pass(line[: marks[0][0]], state)
    ends = [start for start, _, _ in marks[1:]] + [len(line)]
    for (start, end, name), until in zip(marks, ends, strict=True):
        said, behind = line[start:end], line[end:until]
        told, rest = _up_to_other(behind)
        if any(map(str.isdigit, told)) or whole("none").search(fold(told)):
            state.named.append(Named(name, said, told))
            state.waiting = None
        elif any(map(str.isdigit, rest)):
            _pass(f"{said}{behind}", state)
            continue
        else:
            state.waiting = name
        if rest.strip():
            _pass(rest, state)


def _without_name(line: str, plain: str, state: Lines) -> None:
    """A line of numbers belongs to the name before it; one with other words is passed over."""
    if not any(map(str.isdigit, plain)):
        if state.waiting is not None and not _units_only(plain):
            state.waiting = None
        return
    told, _ = _up_to_other(line)
    if state.waiting is not None and any(map(str.isdigit, told)):
        state.named.append(Named(state.waiting, state.waiting, told))
        state.waiting = None
        return
    _pass(line, state)


def _pass(text: str, state: Lines) -> None:
    """Note by its first words what is not kept."""
    for piece in re.split(r"[;|]", text):
        words = _LEADING.match(piece)
        if words is None or not any(map(str.isdigit, piece)) or whole("title").match(fold(piece)):
            continue
        name = re.split(r"\s{2,}|\t|/|\s(?:[mµun]?g|NTU|kBq|Bq)\b", words[1], maxsplit=1)[0]
        state.passed.append(name.strip(" -.,(:"))


def _up_to_other(text: str) -> tuple[str, str]:
    """Part what is behind a name at the first word, after a number, that no value has."""
    plain = fold(text)
    known = beside_values()
    number = re.search(r"\d", plain)
    for word in _WORD.finditer(plain):
        if number is not None and word.start() < number.start():
            continue
        if word[0] not in known:
            return text[: word.start()], text[word.start() :]
    return text, ""


def _units_only(plain: str) -> bool:
    return all(word[0] in beside_values() for word in _WORD.finditer(plain))


def _columns(plain: str) -> tuple[str, ...] | None:
    """What the columns of numbers are, where a line without numbers is of headings."""
    if any(map(str.isdigit, plain)):
        return None
    found = [heading(match) for match in headings().finditer(plain)]
    return tuple(found) if len(found) > 1 or found == ["limit"] else None


_DAY: Final = re.compile(
    r"(?P<iso>\d{4}-\d{2}-\d{2})|(?P<d>\d{1,2})[.](?P<m>\d{1,2})[.](?P<y>\d{4})"
    r"|(?P<a>\d{1,2})/(?P<b>\d{1,2})/(?P<c>\d{4})"
)


def _sampled(plain: str) -> date | None:
    """The day of sampling on a line that says so; none where day and month could be swapped."""
    found = _DAY.search(plain)
    if found is None or not whole("date").search(plain):
        return None
    if found["iso"]:
        parts = [int(part) for part in found["iso"].split("-")]
    elif found["y"]:
        parts = [int(found["y"]), int(found["m"]), int(found["d"])]
    else:
        a, b = int(found["a"]), int(found["b"])
        if a <= 12 and b <= 12 and a != b:
            return None
        parts = [int(found["c"]), min(a, b) if max(a, b) > 12 else b, max(a, b)]
    try:
        return date(*parts)
    except ValueError:
        return None


def names_in(plain: str) -> list[tuple[int, int, str]]:
    """Every name of a line: start, end, id. A symbol alone ("mg") is none behind a number."""
    found = []
    for match in whole("name").finditer(plain):
        said = " ".join(match[0].split())
        if len(said) <= 2 and said != "ph" and plain[: match.start()].strip():
            continue  # a symbol begins its line; "mg" elsewhere is a unit
        if said == "ph" and plain[match.end() :].lstrip()[:3] in {"4,3", "4.3"}:
            continue
        name = table()["name"][said]
        behind = plain[match.end() : match.end() + 3]
        if said == "mg" and behind[:1] == "/":
            continue
        found.append((match.start(), match.end(), name))
    return found
