"""A value with the word of aim as the whole message: `kh to 6`, `gh auf 8`, `want kh 3 gh 6`.

order = { word } { name "to" number [ unit ] [ "and" ] } { word }
      | { word } "want" { aim } { name { aim } number [ unit ] [ "and" ] } { word }
word  = tank | fill            aim = word | "to" | "at" | "up to" | "about" | "of"

Between the name and the word of aim nothing stands: `kh went to 6` tells what was measured. Behind
a word of wanting every such word is one of aim: `i want the kh up to 6`.
"""

from __future__ import annotations

from typing import Final

from core.message import doubts, quantities
from core.message.aims import wants
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Context, Parsed
from core.message.tanks import marked
from core.message.tokens import Token, cut

LONGEST: Final = 70
"""A longer text says more than what is wished. [characters]"""

_ASKED: Final = "dose "
_LIGHT: Final = frozenset({"tank", "fill"})
_AIM: Final = frozenset({"to", "at", "link", "approx", "in", "rose_to", "one"})
_PAUSES: Final = frozenset({",", ".", "!", "?", ":"})


def ordered(text: str, parsed: Parsed, context: Context) -> tuple[str, ...]:
    """The wishes of a message of nothing else, as they would be typed; none where it says more.

    Examples
    --------
    >>> from datetime import datetime, UTC
    >>> from core.message.parser import parse
    >>> context = Context(now=datetime(2026, 3, 1, tzinfo=UTC), tanks=("Fern",))
    >>> ordered("fern kh to 6", parse("fern kh to 6", context), context)
    ('kh 6',)
    >>> ordered("kh went to 6", parse("kh went to 6", context), context)
    ()
    """
    beside = parsed.values or parsed.events or parsed.question or parsed.command or parsed.at
    told = [doubt.suggestion or "" for doubt in parsed.doubts if doubt.reason == doubts.WISH]
    whole = told and len(told) == len(parsed.doubts) and len(text) <= LONGEST
    if beside or not whole or not all(each.startswith(_ASKED) for each in told):
        return ()
    plain = fold(text)
    count = _wishes(marked(cut(plain, lexicon(), text), plain, context))
    return tuple(each.removeprefix(_ASKED) for each in told) if count == len(told) else ()


def _wishes(tokens: list[Token]) -> int:
    """How many values the tokens wish for; 0 where they say anything else."""
    place = _skip(tokens, 0)
    wanted = place < len(tokens) and tokens[place].value == "wish" and wants(tokens[place].text)
    place = _aimed(tokens, place + 1) if wanted else place
    count = 0
    while place < len(tokens) and tokens[place].kind == "analyte":
        place += 1
        aimed = place < len(tokens) and tokens[place].kind == "mark" and tokens[place].value == "to"
        place = _aimed(tokens, place) if wanted else place + aimed
        found = quantities.single(tokens, place) if place < len(tokens) else None
        if found is None or not (aimed or wanted):
            return 0
        place = _skip(tokens, found.last, joined=True)
        count += 1
    return count if place == len(tokens) else 0


def _aimed(tokens: list[Token], place: int) -> int:
    """The place behind words of aim, and light ones."""
    while place < len(tokens) and (tokens[place].kind in _LIGHT or tokens[place].value in _AIM):
        place += 1
    return place


def _skip(tokens: list[Token], place: int, *, joined: bool = False) -> int:
    """The place behind light words, and behind `and` between two wishes."""
    while place < len(tokens):
        token = tokens[place]
        joint = token.kind == "mark" and token.value in {"and", "in"}
        if not (token.kind in _LIGHT or token.text in _PAUSES or (joined and joint)):
            break
        place += 1
    return place
