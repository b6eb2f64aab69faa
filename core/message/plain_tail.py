"""Plain talk behind the values of a line, which bears on none of them: `ammonia 2 what do i do`.

line = values tail | … name { colour } number { colour } …
tail = [ "," | "so" | "and" ] ( asking | judged "?" | judged | seen ) { word without a number }

A word that we do not know may change what a value means, so it is asked about. A question that
begins behind the last number, and what is seen of the tank, change nothing: the values are kept,
and the question is answered behind them. Another water, an earlier time, somebody else and `not`
keep the doubt.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
from typing import Final

from core.message import hearsay
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.nearest import bears
from core.message.token import Token
from core.message.tokens import cut
from core.message.wordfile import spelt

_SECTIONS: Final = frozenset({"asks", "judged", "seen", "colour", "modal", "need"})
_PART: Final = re.compile(r"[^\W_]+")
_NUMBERED: Final = frozenset({"number", "count", "fraction", "clock", "date", "unit", "iso"})
_NAMING: Final = frozenset({"analyte", "tank"})
_BEARING: Final = frozenset({"other", "was", "formerly", "half"})
_UNLESS_ASKED: Final = frozenset({"wish", "if", "not", "up", "down", "from", "to", "between"})
_PAST: Final = frozenset({
    "yesterday", "before_yesterday", "last_week", "last_month", "last", "ago", "last_night",
    "yesterday_morning", "yesterday_evening",
})  # fmt: skip
_DAYS: Final = frozenset({"mon", "tue", "wed", "thu", "fri", "sat", "sun", "tomorrow"})
_LED: Final = frozenset({",", ";", ":", "-", "–", ".", "!", "...", ".."})
_JOINS: Final = frozenset({"so", "and", "ok", "now", "then", "&", "also"})
_LONGEST: Final = 5
"""Words of the longest opening."""


@cache
def _ways(section: str) -> frozenset[tuple[str, ...]]:
    return frozenset(
        tuple(_PART.findall(fold(way)))
        for of, _language, these in spelt("plain_tail.txt", _SECTIONS) if of == section
        for way in these
    )  # fmt: skip


def is_colour(word: str) -> bool:
    """Whether a plain word is one of a kit's colours."""
    return (word,) in _ways("colour")


def set_aside(tokens: list[Token], source: str) -> None:
    """Take weight from a line's colours and from the plain talk at its end."""
    if not _tells(tokens):
        return
    for place in range(1, len(tokens)):
        before, token, then = tokens[place - 1], tokens[place], tokens[place + 1 : place + 2]
        behind = before.kind in _COLOURED or before.value == "link"
        named = bool(then) and then[0].value == "home"  # blue tank
        if behind and not named and token.kind in _WORDS and (token.text,) in _ways("colour"):
            token.kind, token.value = "fill", "fill"
    for token in tokens[_begins(tokens, source) :]:
        token.kind, token.value = "fill", "fill"


_WORDS: Final = frozenset({"word", "several"})
_COLOURED: Final = frozenset({"analyte", "number", "unit", "fill"})


def _tells(tokens: Sequence[Token]) -> bool:
    """Whether a value may stand in a line: a name, or a unit that is one of its own."""
    own = (t.kind == "unit" and (t.value == "°" or "@" in str(t.value)) for t in tokens)
    return any(own) or any(token.kind == "analyte" for token in tokens)


def parted(source: str) -> tuple[str, str] | None:
    """A text that tells values and then asks, in its two parts; None where it is none.

    Examples
    --------
    >>> parted("ammonia 2 what do i do"), parted("nitrite 2, can i feed them")
    (('ammonia 2', 'what do i do'), ('nitrite 2', 'can i feed them'))
    >>> parted("kh 4 what is it in the tap"), parted("what do i do")
    (None, None)
    """
    if "\n" in source.strip():
        return None
    tokens = cut(fold(source), lexicon(), source)
    if not _tells(tokens):
        return None
    begins = _begins(tokens, source)
    opens = _asks(tokens[begins:], source)
    if opens is None:
        return None
    ends = begins + opens
    asked = source[tokens[ends].start :]
    while ends > begins and tokens[ends - 1].kind != "time":
        ends -= 1  # 6.6 now why: when it was is of the value
    told = source[: tokens[ends].start]
    return told.strip(" ,;:-"), asked.strip()


def _begins(tokens: Sequence[Token], source: str) -> int:
    """Where the plain talk at a line's end begins; their number where there is none."""
    end = len(tokens)
    last = max((i for i, t in enumerate(tokens) if _is_numbered(t)), default=end)
    behind = max((i for i, t in enumerate(tokens) if t.kind in _NAMING), default=-1)
    tail = tokens[last + 1 :]
    if last == end or behind > last or not tail:
        return end
    asks = _asks(tail, source)
    asked = asks is not None
    if not asked and _opens(tail, "seen") is None and _opens(tail, "judged") is None:
        return end
    needs = asks is not None and _opens(tail[asks:], "need") == 0  # does it need buffer
    tail = tail[asks + 1 :] if asks is not None else tail  # its first word asks: was, si, co
    if hearsay.reason(source, tokens[last].start, tokens[-1].end) is not None:
        return end
    for token in tail:
        if token.value in _BEARING or (token.kind == "time" and token.value in _PAST):
            return end
        if not asked and token.kind == "time" and token.value in _DAYS:
            return end  # kh 4 ok on monday: the day is of the value
        if token.value == "wish" and not _is_modal(token) and not needs:
            return end  # what i want, what discus need
        if not asked and (token.value in _UNLESS_ASKED or (_unknown(token) and bears(token.text))):
            return end
    return last + 1


def _is_numbered(token: Token) -> bool:
    return token.kind in _NUMBERED and not _is_modal(token)  # dois is two, and French for must


def _is_modal(token: Token) -> bool:
    return tuple(_PART.findall(token.text)) in _ways("modal")


def _unknown(token: Token) -> bool:
    return token.kind == "word" and (token.text,) not in _ways("seen")


def _asks(tail: Sequence[Token], source: str) -> int | None:
    """At which token of a tail a question begins: `all good` is one with a question mark alone."""
    asks = _opens(tail, "asks")
    judged = _opens(tail, "judged") if source.rstrip().endswith("?") else None
    return judged if asks is None else asks


def _opens(tail: Sequence[Token], section: str) -> int | None:
    """At which token of a tail words of a section begin; marks and joining words may lead."""
    ways = _ways(section)
    for start, token in enumerate(tail):
        if token.text in _LED:
            continue
        words = tuple(
            p for each in tail[start : start + _LONGEST] for p in _PART.findall(each.text)
        )
        if any(words[:size] in ways for size in range(1, _LONGEST + 1)):
            return start
        if token.text not in _JOINS:
            return None
    return None
