"""``why that much? show me the sum``, ``can i just dump it all in now``: of how much buffer it is.

None of it says alone what is meant: the chat looks at what it answered last. The words stand in
``buffer_asked.txt``.
"""

from __future__ import annotations

from typing import Final, Literal, NamedTuple

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.once import once
from core.message.tokens import cut
from core.message.word_classes import Said, said

FILE: Final = "buffer_asked.txt"

Meaning = Literal[
    "sum", "at_once", "total", "between", "weekly", "tomorrow", "need", "another", "what_do",
    "spoons_to",
]  # fmt: skip
"""How the amount is reckoned; whether all of it may go in together, or sooner; how much it is in
all; how long from part to part; whether it is given once or each week; how much tomorrow; whether
any is needed; whether a spoon more may go in; what is done about what was told; how many spoons
bring KH to a value."""

LONGEST: Final = 90
"""A longer text says more. [characters]"""

_LEAST: Final = {"just", "ok"}
_OF: Final[dict[Meaning, set[str]]] = {
    "what_do": {"what_do"},
    "sum": {"sum", "why", "much", "few", "show", "how_much", "may", "put", "total", "number"},
    "between": {"between", "long", "put", "more", "may"},
    "weekly": {"weekly", "times", "one_time", "put", "may", "need", "more", "any"},
    "at_once": {"once", "faster", "may", "put", "why", "not", "number", "between", "one_time"},
    "total": {"total", "show", "how_much", "put", "once"},
    "tomorrow": {"tomorrow", "how_much", "more", "put", "may", "need"},
    "need": {"need", "any", "more", "put"},
    "another": {"more", "spoon", "number", "may", "put"},
}
"""What a text of each meaning may have, beside words of little weight."""


class Asked(NamedTuple):
    """What is asked, and the number that stands in it."""

    meaning: Meaning
    grams: float | None = None
    goal: str | None = None
    """A KH with its unit, as it may be asked for."""


@once
def buffer_asked(text: str) -> Asked | None:
    """What a text asks of how much buffer goes in; None where it says more, or tells a deed.

    Examples
    --------
    >>> def meant(*texts):
    ...     return [asked.meaning if (asked := buffer_asked(text)) else None for text in texts]
    >>> meant("why that much? show me the sum", "warum so viel?", "can i just dump it all in now")
    ['sum', 'sum', 'at_once']
    >>> meant("why not all at once", "one time or each week?", "so do i need any?")
    ['at_once', 'weekly', 'need']
    >>> buffer_asked("how many teaspoons for 6 dkh").goal, buffer_asked("just throw 2 kg in?").grams
    ('6 dkh', 2000.0)
    >>> buffer_asked("put it all in at once"), buffer_asked("why did they all die at once")
    (None, None)
    >>> buffer_asked("every week"), buffer_asked("do i need any fish"), buffer_asked("just 2 g")
    (None, None, None)
    """
    if len(text) > LONGEST or "\n" in text:
        return None
    told = said(FILE, _with_it(text))
    if told is None or not told.classes:
        return None
    asks = "?" in text or told.classes[0] in {"may", "why", "how_much", "long", "times", "need"}
    of = set(told.classes) - _LEAST
    if {"how_much", "spoon"} <= of <= {"how_much", "spoon", "to", "kh", "number", "put", "need"}:
        goal = _goal(told)
        return None if goal is None else Asked("spoons_to", goal=goal)
    for meaning, may_have in _OF.items():
        if of and of <= may_have and _means(meaning, of, told, text, asks=asks):
            return Asked(meaning, _grams(told) if meaning == "at_once" else None)
    return None


def _means(meaning: Meaning, of: set[str], told: Said, text: str, *, asks: bool) -> bool:
    """Whether words that may be of a meaning have it."""
    if meaning == "at_once":
        if told.numbers:
            ordered = told.classes[0] in {"just", "put", "may"}
            return _grams(told) is not None and "put" in of and "?" in text and ordered
        hurried = of & {"once", "faster"}
        return bool(hurried) and asks and (of & {"may", "why"} != set() or "?" in text)
    if told.numbers and meaning != "another":
        return False
    if meaning == "sum":
        return "sum" in of or ("why" in of and bool(of & {"much", "few"}))
    if meaning == "weekly":
        if {"weekly", "one_time"} <= of or {"times", "weekly"} <= of:
            return True
        return "weekly" in of and asks and bool(of & {"put", "need"})
    if meaning == "total":
        return "total" in of and (asks or bool(of & {"show", "how_much"}))
    pairs: dict[Meaning, set[str]] = {
        "what_do": {"what_do"},
        "between": {"between", "long"},
        "tomorrow": {"tomorrow", "how_much"},
        "need": {"need", "any"},
        "another": {"more", "spoon"},
    }
    return pairs[meaning] <= of and (meaning != "another" or asks)


def _goal(told: Said) -> str | None:
    """The KH that is named, as it may be asked for."""
    if len(told.numbers) != 1:
        return None
    number = told.numbers[0]
    if number.unit in {"ppm", "meq"}:
        unit = "ppm" if number.unit == "ppm" else "meq/l"
        return f"{number.value:g} {unit}"
    return f"{number.value:g} dkh" if number.unit == "kh" or "kh" in told.classes else None


def _grams(told: Said) -> float | None:
    """The one mass that is named. [g]"""
    grams, kilos = told.of("gram"), told.of("kilo")
    return grams if grams is not None else None if kilos is None else 1000.0 * kilos


def _with_it(text: str) -> str:
    """The text with a pronoun in the place of each substance."""
    plain = fold(text)
    for token in reversed([t for t in cut(plain, lexicon(), text) if t.kind == "substance"]):
        plain = f"{plain[: token.start]}it{plain[token.end :]}"
    return plain
