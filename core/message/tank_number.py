"""Tanks that are called by a number, told by the number alone; and a tank that puts one right.

place = ( "in" | "into" | "to" | "for" | "does" ) number      i added 4 g to one
      | number analyte                                        two kh 5
      | [ "and" ] "what about" number
right = [ "sorry" ] [ "in" | "to" | "for" ] tank [ "i mean" ]
"""

from __future__ import annotations

from functools import cache
from typing import Final

from core.message.commands import command_of
from core.message.described import ways
from core.message.fold import fold
from core.message.lexicon import lexicon, meanings
from core.message.model import Context
from core.message.tanks import marked
from core.message.token import Token
from core.message.tokens import cut

LONGEST: Final = 90
"""A longer text says more. [characters]"""

_ONE: Final = frozenset({"one", "eins", "un", "uno", "um", "een", "jeden", "ett"})
_TO: Final = frozenset({"to", "at_to"})
_IN: Final = frozenset({"in", "for"})
_NEEDS: Final = frozenset({"wish", "link", "in"})
_TELLS: Final = frozenset({"event", "analyte", "substance"})


@cache
def _number(word: str) -> int | None:
    """The number that a plain word is, spelt or as a figure; None for others."""
    if word.isdigit():
        return int(word)
    if word in _ONE:
        return 1
    told = (name for kind, name in meanings(word) if kind == "count")
    return next((int(name) for name in told if name.isdigit()), None)


def _numbers(context: Context) -> dict[int, str]:
    """The number of each tank that is called by a word for a tank with it."""
    found: dict[int, str] = {}
    for name in context.tanks:
        noun, _space, number = fold(name).partition(" ")
        if noun in ways()["noun"] and (told := _number(number)) is not None:
            found[told] = name
    return found


def by_number(text: str, context: Context) -> str | None:
    """A text with a tank's name in the place of its number; None where no number is one.

    Examples
    --------
    >>> from datetime import datetime, UTC
    >>> two = Context(datetime(2026, 3, 2, tzinfo=UTC), tanks=("tank one", "tank two"))
    >>> by_number("i added 4 g bicarb to one", two), by_number("to two i mean", two)
    ('i added 4 g bicarb to tank one', 'to tank two i mean')
    >>> by_number("how much does two need for kh 6", two), by_number("what about one", two)
    ('how much does tank two need for kh 6', 'what about tank one')
    >>> by_number("raise kh to two", two), by_number("in two", two)
    (None, None)
    >>> by_number("added two neons to tank one", two), by_number("4 g soda in one go", two)
    (None, None)
    """
    tanks = _numbers(context)
    plain = fold(text)
    if not tanks or len(text) > LONGEST or len(plain) != len(text):
        return None
    tokens = marked(cut(plain, lexicon(), text), plain, context)
    if any(token.kind == "tank" for token in tokens):
        return None
    for place, token in enumerate(tokens):
        number = _number(token.text) if token.text.isalpha() else None
        if number in tanks and _is_place(tokens, place):
            return f"{text[: token.start]}{tanks[number]}{text[token.end :]}"
    return None


def _is_place(tokens: list[Token], place: int) -> bool:
    """Whether a number stands where only a tank's name can."""
    before = tokens[:place]
    behind = tokens[place + 1] if place + 1 < len(tokens) else None
    if not before:
        return behind is not None and behind.kind == "analyte"
    regrets = behind is not None and command_of(behind) == "correct"
    ends = behind is None or behind.kind == "p" or regrets
    if before[-1].value == "does":
        return ends or (behind is not None and behind.value in _NEEDS)
    if [each.text for each in before][-2:] == ["what", "about"]:
        return ends
    if not ends:
        return False
    if before[-1].value in _TO:
        measured = any(token.kind == "analyte" for token in before)
        return not measured and (regrets or any(t.kind in _TELLS for t in before))
    if before[-1].value in _IN:
        return regrets or any(token.kind in _TELLS for token in before)
    return False


def put_right(text: str, context: Context) -> str | None:
    """The tank that a text says was meant, behind a word for a place or before `i mean`.

    Examples
    --------
    >>> from datetime import datetime, UTC
    >>> two = Context(datetime(2026, 3, 2, tzinfo=UTC), tanks=("Fern", "Reef"))
    >>> put_right("to reef i mean", two), put_right("sorry, to the reef", two)
    ('Reef', 'Reef')
    >>> put_right("reef", two), put_right("to reef", two), put_right("no reef", two)
    (None, None, None)
    >>> put_right("sorry for reef kh 5", two) is None
    True
    """
    plain = fold(text)
    if len(text) > LONGEST or "?" in text or len(plain) != len(text):
        return None
    tokens = marked(cut(plain, lexicon(), text), plain, context)
    said = [t for t in tokens if t.kind not in {"fill", "p"} and t.value not in {"one", "home"}]
    named = [token for token in said if token.kind == "tank"]
    placed = [token for token in said if token.value in _TO | _IN]
    regrets = [token for token in said if command_of(token) == "correct"]
    if len(named) != 1 or len(placed) > 1 or len(regrets) != 1:
        return None
    behind = said[-1] is regrets[0]
    if len(said) != 2 + len(placed) or not (placed or behind):
        return None
    if placed and said.index(placed[0]) + 1 != said.index(named[0]):
        return None
    return str(named[0].value)
