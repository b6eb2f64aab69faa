"""A supplier's water report pasted as text: its lines, what they hold, and what they leave open.

report = { line }          line = name { limit | number [ "-" number ] | unit | other words }

A name goes with the numbers behind it up to the next name, or to the first word that is neither
a unit nor a heading's. Numbers of a limit are left out: those behind its word, and those of its
column where a line of headings tells the columns. Nothing here is stored; the chat asks first.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from typing import Final

from core.message.fold import fold
from core.message.report_amounts import Amount, Unclear
from core.message.report_values import amount_of, from_ions
from core.message.report_words import beside_values, heading, headings, table, whole

MOST: Final = 8000
"""Characters of a report that are read."""

MOST_LINES: Final = 200

_OF_REPORTS: Final = frozenset({"acid_capacity", "bicarbonate"})
"""What no kit of a keeper measures."""

_OF_TAP: Final = ("tap", "trinkwasser", "drinking", "supplier")
_LEADING: Final = re.compile(r"\W{0,9}([^\W\d_][^\d<>:;|\t]{0,40})")
_WORD: Final = re.compile(r"[^\W\d_]{3,}")


@dataclass(frozen=True, slots=True)
class Report:
    """What a report says.

    Attributes
    ----------
    amounts : tuple of Amount
        What was understood, each analyte once.
    unclear : tuple of Unclear
        What has to be asked, each with its answers.
    passed : tuple of str
        Names of lines that are not kept.
    sampled : date or None
        When the water was sampled, as the report says.
    conflicts : tuple of (Amount, Amount)
        What is said of an analyte, and what follows from others, where they do not agree.
    """

    amounts: tuple[Amount, ...] = ()
    unclear: tuple[Unclear, ...] = ()
    passed: tuple[str, ...] = ()
    sampled: date | None = None
    conflicts: tuple[tuple[Amount, Amount], ...] = ()


@dataclass(frozen=True, slots=True)
class Named:
    """A name on a line with the text behind it."""

    name: str
    said: str
    text: str


@dataclass(slots=True)
class _State:
    columns: tuple[str, ...] = ()
    waiting: str | None = None
    named: list[Named] = field(default_factory=list)
    passed: list[str] = field(default_factory=list)
    sampled: date | None = None


def read(text: str, answers: Mapping[str, str] | None = None) -> Report:
    r"""What a pasted report holds.

    Parameters
    ----------
    text : str
        Its lines; it may also stand on one line.
    answers : mapping of name to answer, optional
        What the keeper said to what was unclear: a unit, or `#1` for the second number.

    Examples
    --------
    >>> report = read("Total hardness 14.2 °dH\nNitrate 8.5 mg/l (limit 50)\nLead < 0.01 mg/l")
    >>> [(amount.analyte, amount.value) for amount in report.amounts], report.passed
    ([('gh', 14.2), ('nitrate', 8.5)], ('Lead',))
    >>> [unclear.name for unclear in read("hardness 2.5").unclear]
    ['gh']
    """
    state = _State()
    for line in _without_thousands(text[:MOST]).splitlines()[:MOST_LINES]:
        _line(line, state)
    found: list[Amount] = []
    unclear: dict[str, Unclear] = {}
    for named in state.named:
        answer = (answers or {}).get(named.name)
        amount = amount_of(named.name, named.text, state.columns, answer)
        if isinstance(amount, Unclear):
            unclear.setdefault(named.name, replace(amount, said=named.said.strip()))
        elif amount is not None:
            found.append(amount)
        else:
            state.passed.append(named.said.strip())
    return _settled(found, unclear, state)


def _settled(found: list[Amount], unclear: dict[str, Unclear], state: _State) -> Report:
    """Each analyte once: what is said of it itself first, then what it follows from."""
    amounts = {amount.analyte: amount for amount in reversed(found) if amount.how is None}
    followed = [amount for amount in found if amount.how is not None]
    if (hardness := from_ions(amounts)) is not None:
        followed.append(hardness)
    conflicts = []
    for amount in followed:
        held = amounts.get(amount.analyte)
        asked = unclear.get(amount.analyte)
        if held is None and asked is not None and asked.fitting(amount.canonical) is not None:
            held = unclear.pop(amount.analyte).fitting(amount.canonical)
            amounts |= {amount.analyte: held} if held is not None else {}
        if held is None:
            amounts[amount.analyte] = amount
        elif held.differs(amount):
            conflicts.append((held, amount))
    for name in set(unclear) & {"alkalinity"}:
        if "kh" in amounts:
            del unclear[name]
    order = list(dict.fromkeys([*(a.analyte for a in found), *amounts]))
    return Report(
        tuple(amounts[name] for name in order if name in amounts),
        tuple(unclear.values()),
        tuple(dict.fromkeys(filter(None, state.passed))),
        state.sampled,
        tuple(conflicts),
    )


_POINT: Final = re.compile(
    r"(?<![\w.,])\d{1,5}([.,])(?:\d{1,2}|\d{4})(?![\d.,]\d|\d)|(?<![\w.,])0([.,])\d{3}"
)
_GROUPED: Final = re.compile(r"(?<![\w.,])([1-9]\d{0,2})([.,])(\d{3})(?![.,]?\d)")


def _without_thousands(text: str) -> str:
    """Join `1,250` where the other numbers of the report have decimal points, and likewise `1.250`.

    Where no other number tells, the sign is taken for a decimal one, as most reports have it.
    """
    decimal = {found[1] or found[2] for found in _POINT.finditer(text)}
    if len(decimal) != 1:
        return text
    return _GROUPED.sub(
        lambda found: found[0] if found[2] in decimal else found[1] + found[3], text
    )


def looks_like_one(text: str) -> bool:
    """Whether a text is a report's rather than readings of a keeper: by its words and units."""
    plain = fold(text[:MOST])
    names = {name for _, _, name in _names_in(plain)}
    if names & _OF_REPORTS or (names and whole("limit").search(plain)):
        return True
    lines = [line for line in plain.splitlines() if any(map(str.isdigit, line))]
    return len(lines) > 2 and plain.count("mg/l") + plain.count("mmol") > 1


def title(text: str) -> tuple[str, str] | None:
    """`tap water report:` at the beginning: what stands before the title, and what behind.

    Examples
    --------
    >>> title("tap water report: pH 7.6")
    ('tap', 'pH 7.6')
    >>> title("what is in my water report?") is None
    True
    """
    head = fold(text[:80])
    for found in whole("title").finditer(head):
        before, behind = text[: found.start()].strip(" :"), text[found.end() :]
        rest = behind.lstrip(" \t")
        if len(before.split()) <= 4 and (not rest or rest[0] in ":\n-–"):
            of_tap = found[0].startswith(_OF_TAP)
            told = rest.lstrip(":-– \n")
            if not before and told and not of_tap and not looks_like_one(told):
                continue  # "water analysis: ph 7 kh 4" may be of a tank
            return before or ("tap" if of_tap else ""), told
    return None


def _line(line: str, state: _State) -> None:
    plain = fold(line)
    if (sampled := _sampled(plain)) is not None:
        state.sampled = sampled
        return
    if (columns := _columns(plain)) is not None:
        state.columns = columns
        return
    marks = _names_in(plain)
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


def _without_name(line: str, plain: str, state: _State) -> None:
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


def _pass(text: str, state: _State) -> None:
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


def _names_in(plain: str) -> list[tuple[int, int, str]]:
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
