"""Readings of several waters in one message, each behind a name: `a ph 7 kh 4, b ph 7.2 kh 5`.

told = part ( "," | ";" | newline ) part { … }        part = name [ ":" ] value { value }
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message import numbered
from core.message.described import ways
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Context
from core.message.parser import parse
from core.message.tokens import Token, cut

_PARTS: Final = re.compile(r"[,;\n]\s*")
_LIGHT: Final = frozenset({":", "the", "my", "in", "-"})
"""What may stand around the name of a place."""
LEAST: Final = 2
"""So many tanks, of which another may be told by its place."""
MOST_WORDS: Final = 3
"""Words of a place with its tank."""
MOST: Final = 8
"""More parts than these are a table."""


def unknown_tanks(text: str, context: Context) -> tuple[str, ...]:
    """The names, as typed; empty where it is told otherwise, or one of them is known.

    Nothing but the name tells the parts' values apart: what is measured in two of them would
    else be taken for one water's.

    Examples
    --------
    >>> from datetime import datetime, UTC
    >>> context = Context(now=datetime(2026, 3, 1, tzinfo=UTC), tanks=("Fern",))
    >>> unknown_tanks("A ph 7 kh 4, B ph 7.2 kh 5", context)
    ('A', 'B')
    >>> unknown_tanks("tank 1: kh 4; rack 2: kh 6", context)
    ('tank 1', 'rack 2')
    >>> unknown_tanks("kh 4, gh 6", context), unknown_tanks("monday kh 4, tuesday kh 5", context)
    ((), ())
    >>> unknown_tanks("fern kh 4, cube kh 5", context), unknown_tanks("a kh 4, b gh 5", context)
    ((), ())
    """
    parts = [each for each in _PARTS.split(text.strip()) if each]
    if not 2 <= len(parts) <= MOST or "?" in text:
        return ()
    names, measured = [], []
    for part in parts:
        name = _name(part)
        told = None if name is None else parse(part[len(name) :].lstrip(" :"), context)
        if name is None or told is None or not told.values or told.doubts or told.events:
            return ()
        names.append(name)
        measured += sorted({value.analyte for value in told.values})
    known = {fold(each) for each in context.tanks}
    if len({fold(each) for each in names} - known) < len(parts):
        return ()
    return tuple(names) if len(set(measured)) < len(measured) else ()


@cache
def _homes() -> frozenset[str]:
    """Words for a tank or a pond, and for where one stands, plain."""
    return numbered.places() | set(ways()["pond"]) | set(ways()["noun"])


def unknown_place(text: str, context: Context) -> tuple[str, str] | None:
    """The place that opens a reading, where a tank may stand that is not on record, and the rest.

    None with a single tank that is not told by its place itself: back from work it is home.

    Examples
    --------
    >>> from datetime import datetime, UTC
    >>> context = Context(now=datetime(2026, 3, 1, tzinfo=UTC), tanks=("Front",))
    >>> unknown_place("back kh 3, temp 11", context), unknown_place("front kh 3", context)
    (('back', 'kh 3, temp 11'), None)
    >>> unknown_place("the back pond: kh 3", context), unknown_place("back to kh 3", context)
    (('back pond', 'kh 3'), None)
    """
    known = {word for name in context.tanks for word in fold(name).split()}
    if len(context.tanks) < LEAST and not known & numbered.places():
        return None
    tokens = cut(fold(text), lexicon(), text)
    place = next((i for i, token in enumerate(tokens) if token.kind == "analyte"), 0)
    head = [token for token in tokens[:place] if token.text not in _LIGHT]
    if not 0 < len(head) <= MOST_WORDS or head[0].text not in numbered.places() - known:
        return None
    if text[head[0].start : head[0].end].lower() != head[0].text and head[0].kind == "ask":
        return None  # håll kh på 6: a verb, which is a place only without its accents
    if not all(token.value == "home" or token.text in _homes() for token in head[1:]):
        return None
    name = text[head[0].start : head[-1].end]
    return name, text[tokens[place].start :].strip()


def _name(part: str) -> str | None:
    """What stands before the first name of a value, where that may be a tank's name."""
    tokens = cut(fold(part), lexicon(), part)
    place = next((i for i, token in enumerate(tokens) if token.kind == "analyte"), 0)
    head = [token for token in tokens[:place] if token.text != ":"]
    if not head or not (_may_name(head) or numbered.last_of(head, 0, part) == len(head) - 1):
        return None
    return part[head[0].start : head[-1].end]


def _may_name(head: list[Token]) -> bool:
    (token, *others) = head
    return not others and token.text.isalpha() and (token.kind == "word" or len(token.text) == 1)
