"""Values that are wished for right after a plan: `and gh to 9`, `with kh 2`, `maybe kh 4.5`.

aims = {lead} aim { ["and"] aim }
aim  = {word} analyte {word} number [unit]
word = aim | "and" | "for" | fill

Alone such a line may tell what was measured (`kh à 5`); it is read only where a plan, a recipe or
a change was just answered.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Final, NamedTuple

from core.message import quantities
from core.message.fold import fold
from core.message.followups import LONGEST, heads
from core.message.lexicon import lexicon
from core.message.model import Context
from core.message.parser import parse
from core.message.tokens import Token, cut
from core.message.wordfile import spelt

WISHED: Final = frozenset(
    "kh gh calcium magnesium potassium nitrate phosphate iron salinity temperature ph".split()  # noqa: SIM905
)
"""Analytes that a keeper sets; of all others a value after a plan is what was measured."""
UNSALTED: Final = frozenset({"temperature", "ph"})
"""Of these, which are set by no salt, only a word of aim makes a wish: `and temp 26` is told."""

_SECTIONS: Final = frozenset({"aim", "meant"})
_PHRASE: Final = 4
"""Words of the longest entry."""
_STRONG: Final = frozenset({"maybe", "want", "at"})
"""Meanings of words that, before a name, tell of no reading."""
_HEADS: Final = frozenset({"with", "to", "for", "only_have", "instead"})
_PAUSES: Final = frozenset({",", ";", ".", "?", "!"})
_AIMS: Final = frozenset({"to", "at_to", "wish", "rose_to", "approx"})


class Aim(NamedTuple):
    """One value that may be wished, in its canonical unit, and as it would be typed as a reading.

    `sure` tells that its words can only wish, right after a plan; `ahead` that they stand before
    the name, where those of a reading do not (`with kh 2`, `maybe kh 5`).
    """

    analyte: str
    target: float
    said: str
    sure: bool = False
    ahead: bool = False


@dataclass(slots=True)
class _Words:
    """What the words around one value mean, before its name and behind it."""

    before: set[str]
    behind: set[str]


@cache
def _words() -> dict[str, str]:
    """Plain words → their meaning: an aim or a light word.

    Raises
    ------
    ValueError
        If a line has no ``=``.
    """
    return {
        way: meaning
        for section, meaning, these in spelt("aims.txt", _SECTIONS)
        for way in these
        if section == "aim"
    }


@cache
def _meant() -> re.Pattern[str]:
    told = spelt("aims.txt", _SECTIONS)
    ways = (way for section, _meaning, these in told for way in these if section == "meant")
    return re.compile(rf"(?<!\w)(?:{'|'.join(map(re.escape, ways))})(?!\w)")


def is_meant(text: str) -> bool:
    """Whether a text says that something was meant otherwise than it was said.

    Examples
    --------
    >>> is_meant("sorry I meant gh 5"), is_meant("ich meinte kh 3"), is_meant("no, kh 3")
    (True, True, False)
    """
    return _meant().search(fold(text)) is not None


def wants(plain: str) -> bool:
    """Whether a plain word, or some, is one of wanting: `want`, `je veux`."""
    return _words().get(plain.replace(" ' ", "'")) == "want"


def read(text: str, context: Context, *, sure: bool = False) -> tuple[Aim, ...]:
    """The values of a text that are wished, or may be; none where it says anything else.

    `sure` tells that what was said beside them can only wish: `gh 12`, of `gh 12 with gypsum`.

    Examples
    --------
    >>> from datetime import datetime, UTC
    >>> context = Context(now=datetime(2026, 3, 1, tzinfo=UTC), tanks=("Fern",))
    >>> read("y calcio a 430", context)
    (Aim(analyte='calcium', target=430.0, said='calcio 430', sure=True, ahead=False),)
    >>> read("and gh 9", context)[0].sure, read("gh 9", context), read("kh 5 today", context)
    (False, (), ())
    """
    if len(text) > LONGEST or not any(map(str.isdigit, text)):
        return ()
    found: tuple[Aim, ...] = ()
    for rest, marks in heads(text):  # the last of them knows all that its head says
        read_so = _aims(rest, context)
        if read_so is not None:
            led, aimed = bool(marks), bool(marks & _HEADS)
            before = {aim.said: aim for aim in found}  # rather is of the head and of the aim
            found = tuple(
                aim._replace(
                    sure=sure
                    or aimed
                    or bool(said.before & _STRONG)
                    or (led and bool(said.behind))
                    or (aim.said in before and before[aim.said].sure),
                    ahead=sure
                    or aimed
                    or bool(said.before & _STRONG)
                    or (aim.said in before and before[aim.said].ahead),
                )
                for aim, said in zip(*read_so, strict=True)
                if sure or led or said.before or said.behind
            )
            found = tuple(aim for aim in found if aim.sure or aim.analyte not in UNSALTED)
    return found


def is_for(text: str) -> bool:
    """Whether a text begins with a word for "for", which no reading does.

    Examples
    --------
    >>> is_for("für gh 10"), is_for("and for gh 10"), is_for("gh 10")
    (True, True, False)
    """
    return len(text) <= LONGEST and any("for" in marks for _rest, marks in heads(text))


def _aims(rest: str, context: Context) -> tuple[list[Aim], list[_Words]] | None:
    """All of a text as names with their numbers; None where anything else stands in it."""
    tokens = cut(rest, lexicon(), rest)
    pairs: list[Aim] = []
    every: list[_Words] = []
    index = 0
    while index < len(tokens):
        name, before = _skip(rest, tokens, index, {"and", "for", "in"})
        if name == len(tokens) and pairs:
            every[-1].behind |= before
            every[-1].before |= before & _STRONG  # kh 4 rather
            break
        if name == len(tokens) or tokens[name].kind != "analyte":
            return None
        place, behind = _skip(rest, tokens, name + 1, set())
        quantity = quantities.single(tokens, place) if place < len(tokens) else None
        if quantity is None:
            return None
        said = f"{tokens[name].text} {rest[quantity.start : quantity.end]}"
        values = parse(said, context).values
        if len(values) != 1 or not isinstance(values[0].canonical, float):
            return None
        if values[0].analyte not in WISHED or values[0].qualifier != "=":
            return None
        pairs.append(Aim(values[0].analyte, values[0].canonical, said))
        every.append(_Words(before, behind))
        index = quantity.last
    return pairs, every


def _skip(rest: str, tokens: list[Token], index: int, marks: set[str]) -> tuple[int, set[str]]:
    """The index behind words of aim, light ones and these marks; and what those of aim mean."""
    aimed: set[str] = set()
    while index < len(tokens):
        for size in range(min(_PHRASE, len(tokens) - index), 0, -1):
            meaning = _words().get(rest[tokens[index].start : tokens[index + size - 1].end])
            if meaning is not None:
                break
        else:
            size, meaning = 1, _of_lexicon(tokens[index], marks)
        if meaning is None:
            break
        aimed |= {meaning} - {"link"}
        index += size
    return index, aimed


def _of_lexicon(token: Token, marks: set[str]) -> str | None:
    """Whether a word aims, or is light, by what the parser knows of it."""
    if token.kind == "mark" and token.value in _AIMS:
        return "at"
    light = token.kind == "fill" or (token.kind == "mark" and token.value in marks)
    return "link" if light or token.text in _PAUSES else None
