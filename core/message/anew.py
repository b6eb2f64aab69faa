"""What is told anew of a question that was just answered, in the words of a question.

anew = {lead} { number | volume | substance | tank | "from" number | "at" reading | ratio }
     | {lead} "not" what was asked ("," | "but") anew | {lead} anew "not" what was asked
     | {lead} "without" (substance | ion)

The words are read as the question would be that says nothing else: `from 2` as `dose kh from 2`.
It is read only where such a question was just answered; alone none of it says what is meant.
"""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from typing import Final, NamedTuple

from core.message import bought
from core.message.amounts import SHARES
from core.message.fold import fold
from core.message.followups import LONGEST, heads
from core.message.lexicon import lexicon
from core.message.model import Context, Question
from core.message.numbers import Number
from core.message.parser import parse
from core.message.tokens import Token, cut
from core.message.waters import one_of
from core.message.wordfile import spelt

_ANY_MASS: Final = "1 g"

ASKED_AS: Final = {
    "dose": ("dose {of} {rest}",),
    "effect": ("what does {rest} do", f"what does {_ANY_MASS} {{rest}} do"),
    "change": ("what if i change {rest}",),
}
"""How a question of each kind is asked that says just so much."""

_ROLES: Final = frozenset({"in", "for", "from", "to", "at_to", "by", "if", "and", "up", "at"})
_KNOWN: Final = frozenset(
    {"number", "unit", "analyte", "substance", "fill", "p", "fraction", "slashed"}
)
_LIGHT_MARKS: Final = frozenset({*_ROLES, *SHARES, "less", "more", "approx", "plus"})
_EDGES: Final = " \t,.;:!?¿¡"


class Anew(NamedTuple):
    """What is told anew: the parts of a question, or what shall not be in it.

    `without` is a substance, or the ion of its salts. `named` are the substances of its words.
    """

    question: Question | None = None
    without: str | None = None
    named: tuple[str, ...] = ()


@cache
def _pattern(meaning: str) -> str:
    """A pattern for the words of a meaning."""
    told = [ways for _section, name, ways in spelt("anew.txt", {"word"}) if name == meaning]
    return one_of(way for ways in told for way in ways)


@cache
def _exchanges() -> tuple[re.Pattern[str], ...]:
    nots, but = _pattern("not"), _pattern("but")
    return (
        re.compile(rf"(?:{nots}) (?P<told>.+?)(?:,? (?:{but}) |, *)(?P<meant>.+)"),
        re.compile(rf"(?P<meant>.+?),? (?:{nots}) (?P<told>.+)"),
    )


@cache
def _without() -> re.Pattern[str]:
    return re.compile(rf"(?:{_pattern('without')}) (.+)")


@cache
def _light() -> re.Pattern[str]:
    return re.compile(rf"(?<!\w)(?:{_pattern('light')})(?!\w)")


def exchanged(text: str) -> tuple[str, str] | None:
    """What was meant, and what was asked for it: `not 5, 4`, `kh 4 instead of 5`.

    Examples
    --------
    >>> exchanged("not 5, 4"), exchanged("nicht 5, sondern 4"), exchanged("4 instead of 5")
    (('4', '5'), ('4', '5'), ('4', '5'))
    >>> exchanged("not today"), exchanged("and for 60 l, not 50 l")
    (None, ('and for 60 l', '50 l'))
    """
    if len(text) > LONGEST or "?" in text:
        return None
    for rest, _marks in heads(text):
        for shape in _exchanges():
            found = shape.fullmatch(" ".join(rest.split()))
            if found is None:
                continue
            meant, told = found["meant"].strip(_EDGES), found["told"].strip(_EDGES)
            for meant_so, _ in heads(meant):
                if _amount(meant_so) and _amount(told):
                    return meant_so, told
    return None


def number_of(text: str) -> float | None:
    """The one number of a text; None where it has none, or several."""
    values = [token.value for token in cut(text, lexicon(), text) if token.kind == "number"]
    found = [each.value for each in values if isinstance(each, Number) and each.problem is None]
    return found[0] if len(found) == 1 else None


def _amount(text: str) -> bool:
    """Whether a text is a number with its name or unit at most."""
    tokens = cut(text, lexicon(), text)
    kinds = [token.kind for token in tokens]
    light = {"number", "unit", "analyte", "fill", "mark"}
    return kinds.count("number") == 1 and set(kinds) <= light


def read(text: str, kind: str, of: str | None, context: Context) -> Anew | None:
    """What a text tells anew of a question of a kind, about the analyte `of`.

    Examples
    --------
    >>> from datetime import datetime, UTC
    >>> context = Context(now=datetime(2026, 3, 1, tzinfo=UTC), tanks=("Fern",))
    >>> read("from 2", "dose", "kh", context).question.start_value
    2.0
    >>> read("ohne calciumchlorid", "dose", "gh", context).without
    'calcium chloride'
    >>> read("i like 60 l tanks", "dose", "kh", context) is None
    True
    """
    if len(text) > LONGEST or kind not in ASKED_AS:
        return None
    if (name := _left_out(text)) is not None:
        return Anew(without=name)
    asks = "?" in text
    for rest, marks in heads(text):
        if "have" in marks:
            return None  # what a keeper has is told, not asked for
        plain, light = _light().subn(" ", rest)
        sure = asks or bool(marks) or bool(light)
        if found := _told(" ".join(plain.split()), kind, of, context, sure=sure, asks=asks):
            return found
    return None


def _left_out(text: str) -> str | None:
    """The substance, or the ion, that shall not be used."""
    if not any(map(str.isalpha, text)) or any(map(str.isdigit, text)):
        return None
    for rest, _marks in heads(text):
        found = _without().fullmatch(" ".join(rest.split()))
        if found is None:
            continue
        plain = " ".join(_light().sub(" ", found[1]).split())
        tokens = [t for t in cut(plain, lexicon(), plain) if t.kind not in {"fill", "mark", "p"}]
        if len(tokens) == 1 and tokens[0].kind in {"substance", "analyte"}:
            return str(tokens[0].value).partition("@")[0]
    return None


def _told(
    rest: str, kind: str, of: str | None, context: Context, *, sure: bool, asks: bool
) -> Anew | None:
    tokens = cut(rest, lexicon(), rest)
    if context.products:
        tokens = bought.mark(tokens, rest, context.products, None)
    tanks = [fold(tank) for tank in context.tanks]
    marks = set(_LIGHT_MARKS)
    if asks or any(t.kind in {"analyte", "substance"} for t in tokens):
        marks.add("link")  # kh is 2; of itself it tells: the tank is 70 l
    if kind == "change":
        marks.add("changing")
    words = [t for t in tokens if not (_is_known(t, marks) or t.text in tanks)]
    named = tuple(str(t.value) for t in tokens if t.kind == "substance")
    tells = any(t.kind in {"number", "substance", "fraction"} or t.value in SHARES for t in tokens)
    in_role = any(t.kind in {"mark", "time"} and t.value in _ROLES for t in tokens)
    in_tank = any(t.text in tanks for t in tokens)
    if words or not (tells or in_tank) or not (sure or in_role or _is_ratio(tokens)):
        return None
    names_own = any(t.kind == "analyte" for t in tokens) and not _is_ratio(tokens)
    about = "" if names_own or of is None else of.replace("_", " ")
    for way in ASKED_AS[kind]:
        parsed = parse(way.format(of=about, rest=rest), context)
        question = parsed.question
        if question is None or question.kind != kind or parsed.doubts or parsed.values:
            continue
        if _ANY_MASS in way:  # which is of no question
            question = replace(question, grams=None)
        return Anew(question, named=named)
    return None


def _is_known(token: Token, marks: set[str]) -> bool:
    """Whether a word has a place in such a question."""
    if token.kind == "mark":
        return token.value in marks
    return token.kind in _KNOWN or (token.value == "at" and "link" in marks)


def _is_ratio(tokens: list[Token]) -> bool:
    """Whether it is how much calcium comes with how much magnesium: `ca mg 4:1`."""
    names = [str(token.value) for token in tokens if token.kind == "analyte"]
    return names == ["calcium", "magnesium"] and any(t.text in {":", "/"} for t in tokens)
