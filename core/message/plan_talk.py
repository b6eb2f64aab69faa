"""What is said of the plan just given: how it goes in, when the next part, that all of it is in.

It is read only where a plan was just given; alone none of it says what is meant.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final, Literal, cast, get_args

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.plan_said import LONGEST_TEXT
from core.message.tokens import cut
from core.message.waters import one_of
from core.message.wordfile import spelt

About = Literal[
    "at_once", "gave_all", "gave_one", "how", "dry", "spoons", "when_next", "later", "drop",
    "needed", "more_needed", "worked_out", "label_says", "filled",
]  # fmt: skip
"""To give all parts together; that all, or one, went in; how it goes in, or whether just so; by
spoon, or without a scale; when to test and go on; whether it may wait, or did; to let it be;
whether it is needed at all, or more of it; how it was worked out, or that a packet says another
amount; that stones or wood take room in the water."""

_EDGES: Final = " \t\n¿?¡!.,;:"
_LEAD: Final = re.compile(
    r"(?:ok|okay|nah|nope|and|so|but|then|und|aber|et|mais|y|e|ma|en|maar|a|i|och|men)[\s,]+(?=\S)"
)
_SOME: Final = r"(?:\S+\s+){0,2}\S+"
"""Up to three words."""


@cache
def _words() -> tuple[dict[str, set[str]], dict[str, list[tuple[About, str]]]]:
    """The classes, and by its first word each way to say something.

    Raises
    ------
    ValueError
        If a line has no ``=``, or an id that is none of `About`.
    """
    classes: dict[str, set[str]] = {}
    found: dict[str, list[tuple[About, str]]] = {}
    for section, meaning, told in spelt("plan_talk.txt", {"class", "about"}):
        if section == "class":
            classes[meaning] = set(told)
        elif meaning not in get_args(About):
            raise ValueError(f"plan_talk.txt: {meaning}")
        else:
            for way in sorted(set(told)):
                first = way.split()[0]
                for word in classes[first.strip("{}")] if first[0] == "{" else {first}:
                    found.setdefault(word, []).append((cast("About", meaning), way))
    return classes, found


@cache
def _beginning(word: str) -> list[tuple[About, re.Pattern[str]]]:
    """All that begins with a word: to make a pattern of every way would take half a second."""
    classes, ways = _words()
    named = {name: f"(?:{one_of(words)})" for name, words in classes.items()}
    named["it"] = rf"(?:{named['article']}\s*)?{named['it']}"
    by_meaning: dict[About, list[str]] = {}
    for meaning, way in ways.get(word, ()):
        kept = re.escape(way).replace(r"\*", _SOME)
        for name, words in named.items():
            kept = kept.replace(rf"\{{{name}\}}", words)
        by_meaning.setdefault(meaning, []).append(kept.replace(r"\ ", r"\s+"))
    return [(meaning, re.compile("|".join(each))) for meaning, each in by_meaning.items()]


def about(text: str) -> About | None:
    """What a text says of the plan before it; None where it is none of that, or says more.

    Examples
    --------
    >>> about("How do I dissolve the baking soda?"), about("I have no scale")
    ('how', 'spoons')
    >>> about("wann kommt der zweite Teil?"), about("can I put it all at once?")
    ('when_next', 'at_once')
    >>> about("how do I add fish") is None
    True
    """
    if len(text) > LONGEST_TEXT:
        return None
    plain = _with_it(text)
    lead = _LEAD.match(plain)
    for said in (plain, plain[lead.end() :]) if lead else (plain,):
        for first in (said.partition(" ")[0], "*"):
            for meaning, ways in _beginning(first) if first in _words()[1] else ():
                if ways.fullmatch(said):
                    return meaning
    return None


def _with_it(text: str) -> str:
    """The plain text with every substance's name as a pronoun."""
    rest = fold(text).strip(_EDGES)
    for token in reversed([t for t in cut(rest, lexicon(), rest) if t.kind == "substance"]):
        rest = f"{rest[: token.start]}it{rest[token.end :]}"
    return " ".join(rest.replace(",", " ").split())
