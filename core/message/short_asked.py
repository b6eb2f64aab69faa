"""``is that worse``, ``are we there yet``, ``do another?``: short questions of what was told last.

None of it says alone what is meant: the chat looks at what it answered last. The words stand in
``short_asked.txt``.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import cache
from typing import Final, Literal, cast, get_args

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.past import than
from core.message.tokens import cut
from core.message.wordfile import spelt

FILE: Final = "short_asked.txt"

Meaning = Literal[
    "worse", "better", "back", "number", "meaning", "falls", "slow", "reached", "another",
    "how_next", "halves", "shares", "daily", "retest", "so_much", "salt_in", "next", "or_wait",
    "of_day",
]  # fmt: skip
"""Whether the last value is worse, or better, than the one before; how it comes back to that; where
it should be; what it means; whether it is usual that it fell; why it rises so slowly; whether the
goal is reached; whether one more change or part is needed, and how much that is; half of it today
and half tomorrow, a share on each of two days, each day; whether to test again; how much it is;
how much salt is in; what comes next, or where one is; whether to go on now or wait; how much it
is on a day of the plan."""

LONGEST: Final = 60
"""A longer text says more. [characters]"""
MARKED: Final = frozenset({"daily", "another", "worse", "better", "next"})
"""What counts only with a question mark where it is one or two words: else it may tell."""

_COMPARED: Final = frozenset({"worse", "better"})
_EDGES: Final = ("lead", "tail", "day")
_MARKS: Final = re.compile(r"[^\w~@]+")
_STRENGTH: Final = re.compile(r"\d{1,2}(?:[.,]\d{1,2})? ?(?:g ?/ ?l|g per l\w*|ppt)(?!\w)")
_SHARE: Final = re.compile(r"(\d{1,3}(?:[.,]\d)?) ?(?:%|pct\b|percent\b|prozent\b)")


@dataclass(frozen=True, slots=True)
class Asked:
    """What is asked.

    Attributes
    ----------
    meaning : Meaning
        Of what was told last.
    share : float or None
        The larger of the shares that are named. [%]
    span : str or None
        Of the past, that it is held against (`core.message.past`).
    """

    meaning: Meaning
    share: float | None = None
    span: str | None = None


@cache
def _words() -> tuple[dict[str, Meaning], dict[str, frozenset[str]]]:
    sections = (*get_args(Meaning), *_EDGES)
    ways: dict[str, Meaning] = {}
    edges: dict[str, set[str]] = {name: set() for name in _EDGES}
    for section, _language, found in spelt(FILE, sections):
        for way in found:
            if section in edges:
                edges[section].add(_plain(way))
            else:
                ways.setdefault(_plain(way), cast("Meaning", section))
    return ways, {name: frozenset(found) for name, found in edges.items()}


def _plain(text: str) -> str:
    return " ".join(_MARKS.sub(" ", fold(text)).split())


def asked(text: str) -> Asked | None:
    """What a short text asks of what was told last; None where it says more or less.

    Examples
    --------
    >>> asked("is that worse").meaning, asked("Are we there yet?").meaning
    ('worse', 'reached')
    >>> asked("do 40% today 30% tomorrow?")
    Asked(meaning='shares', share=40.0, span=None)
    >>> asked("to ile sody oczyszczonej").meaning, asked("every day then?").meaning
    ('so_much', 'daily')
    >>> asked("day 2 amount").meaning, asked("wie viel an tag 3").meaning
    ('of_day', 'of_day')
    >>> asked("is that better than last week").span
    'last_week'
    >>> asked("every day"), asked("better"), asked("is kh 4 worse"), asked("he is worse")
    (None, None, None, None)
    """
    if len(text) > LONGEST or "\n" in text:
        return None
    if (held := than(text)) is not None:
        found = asked(f"{held[0]}?")
        against = found is not None and found.meaning in _COMPARED
        return replace(found, span=held[1]) if found is not None and against else None
    ways, edges = _words()
    told = _with_marks(text)
    shares = [float(found.replace(",", ".")) for found in _SHARE.findall(told)]
    plain = _plain(_STRENGTH.sub("~~", _SHARE.sub("~", told)))
    plain = re.sub(rf"\b(?:{'|'.join(edges['day'])}) \d{{1,2}}\b", "~d", plain)
    for said in _without_ends(plain, edges):
        if (meaning := ways.get(said)) is None:
            continue
        if meaning in MARKED and len(said.split()) <= 2 and "?" not in text:
            return None
        return Asked(meaning, max(shares) if shares else None)
    return None


def _with_marks(text: str) -> str:
    """The text folded, with a mark in the place of each substance."""
    plain = fold(text)
    for token in reversed([t for t in cut(plain, lexicon(), text) if t.kind == "substance"]):
        plain = f"{plain[: token.start]}@{plain[token.end :]}"
    return plain


def _without_ends(plain: str, edges: dict[str, frozenset[str]]) -> list[str]:
    """A text as it is, then without what may stand before and behind."""
    found = [plain]
    for lead in edges["lead"]:
        found += [said.removeprefix(f"{lead} ") for said in [*found] if said.startswith(f"{lead} ")]
    for tail in edges["tail"]:
        found += [said.removesuffix(f" {tail}") for said in [*found] if said.endswith(f" {tail}")]
    return list(dict.fromkeys(found))
