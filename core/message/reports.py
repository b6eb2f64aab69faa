"""A supplier's water report pasted as text: its lines, what they hold, and what they leave open.

report = { line }

What a line holds is told by `core.message.report_lines`. Nothing here is stored; the chat asks
first.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from typing import Final

from core.message import report_lines
from core.message.fold import fold
from core.message.report_amounts import Amount, Unclear
from core.message.report_lines import Lines, names_in
from core.message.report_values import amount_of, from_ions
from core.message.report_words import whole

MOST: Final = 8000
"""Characters of a report that are read."""

MOST_LINES: Final = 200

_OF_REPORTS: Final = frozenset({"acid_capacity", "bicarbonate"})
"""What no kit of a keeper measures."""

_OF_TAP: Final = ("tap", "trinkwasser", "drinking", "supplier")


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
    state = Lines()
    for line in _without_thousands(text[:MOST]).splitlines()[:MOST_LINES]:
        report_lines.take(line, state)
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


def _settled(found: list[Amount], unclear: dict[str, Unclear], state: Lines) -> Report:
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
    names = {name for _, _, name in names_in(plain)}
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
