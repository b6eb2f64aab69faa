"""How fast a value moves, which is none: `alk drops about 0.4 a day`, `nitrate 5 per week`.

pace = name { word } number [ unit ] ( each span | word of moving … ( at span | "daily" ) )

The words stand in ``paces.txt``. `kh 4 a day ago` is a value with its time, and `kh 4 every day`
one that stays, unless a word that may tell how it moves stands before its number.
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Final

from core.message import doubts
from core.message.candidates import Candidate
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.token import Token
from core.message.tokens import cut
from core.message.wordfile import spelt

if TYPE_CHECKING:
    from collections.abc import Sequence

_SPANS: Final = frozenset({"hour", "day", "week", "month"})
_CLOSING: Final = frozenset({"p", "fill", "nl"})
_MOVING: Final = frozenset({doubts.UNKNOWN_WORD, doubts.CHANGE, doubts.WISH})
"""What is doubted of a value with an unknown word, or one of rising, before its number."""
_BEHIND: Final = frozenset({"each", "at", "daily"})


@cache
def _ways(section: str) -> frozenset[str]:
    told = spelt("paces.txt", _BEHIND)
    return frozenset(way for of, _language, ways in told if of == section for way in ways)


def mark(candidates: Sequence[Candidate], tokens: list[Token]) -> None:
    """Make a number that is told of each so long a change, which is never stored."""
    if not candidates or all(
        token.value not in _SPANS and token.text not in _ways("daily") for token in tokens
    ):
        return
    for candidate in candidates:
        end = _end(tokens, candidate.quantity.last, moving=candidate.problem in _MOVING)
        if end and candidate.at is None:
            candidate.problem, candidate.choices = doubts.CHANGE, ()
            candidate.end = max(candidate.end, tokens[end - 1].end)


def ends_with_pace(text: str) -> bool:
    """Whether a text ends with a number that is told of each so long.

    Examples
    --------
    >>> ends_with_pace("alk drops about 0.4 a day"), ends_with_pace("alk dropped 0.4")
    (True, False)
    """
    tokens = cut(fold(text), lexicon(), text)
    return any(_end(tokens, place, moving=True) == len(tokens) for place in range(1, len(tokens)))


def _end(tokens: list[Token], place: int, *, moving: bool) -> int:
    """The index behind the span that a number is told of; 0 where it is of none."""
    if place < len(tokens) and tokens[place].text in _ways("daily"):
        end = place + 1
        sure = False
    elif place + 1 < len(tokens) and tokens[place + 1].value in _SPANS:
        end = place + 2
        sure = tokens[place].text in _ways("each")
        if not sure and tokens[place].text not in _ways("at"):
            return 0
    else:
        return 0
    closed = end == len(tokens) or tokens[end].kind in _CLOSING or tokens[end].value == "and"
    return end if closed and (sure or moving) else 0
