"""Losses that are none of the own animals now: of a thing, in somebody else's tank, years ago.

no_loss = "lost" what never lived | word "died" place | loss "in" other's | year ago loss

`my phone died in the tank room`, `i lost the paper`, `ex lost 3 fish in hers`, `last year i lost
10 neons`. The words stand in ``no_loss.txt``.
"""

from __future__ import annotations

import re
from functools import cache
from itertools import takewhile
from typing import Final

from core.message import doubts, kinds
from core.message.event_parts import Found
from core.message.fold import fold
from core.message.model import Doubt
from core.message.token import Token
from core.message.wordfile import patterns

_LOSSES: Final = frozenset({"lost", "missing"})
_SECTIONS: Final = ("others", "years", "bought", "pets", "nothing", "things", "asks")
_ENDS: Final = frozenset({".", "!", "?", ";", ","})


@cache
def _words() -> dict[str, re.Pattern[str]]:
    return patterns("no_loss.txt", _SECTIONS)


def settle(found: list[Found], tokens: list[Token], source: str) -> list[Found]:
    """The same events without losses of things; those of others and of long ago as doubts."""
    kept: list[Found] = []
    for each in found:
        event = each.event
        if event is None or event.kind not in _LOSSES:
            kept.append(each)
            continue
        if _lies_about(event.species) or (
            event.count is None
            and (_never_lived(event.species) or _of_a_thing(tokens, each, event.species))
        ):
            continue
        first = _clause(tokens, each.first)
        said = fold(source[tokens[first].start : max(event.end, tokens[each.last - 1].end)])
        past = _words()["years"].search(said) and not _words()["bought"].search(said)
        if past or _words()["others"].search(said):
            problem = doubts.PAST if past else doubts.OTHER_WATER
            each.event = None
            each.doubt = Doubt(source[event.start : event.end], event.start, event.end, problem)
        kept.append(each)
    return kept


def _clause(tokens: list[Token], place: int) -> int:
    """Where the clause of a token begins."""
    while place and tokens[place - 1].text not in _ENDS and tokens[place - 1].kind != "nl":
        place -= 1
    return place


def _never_lived(species: str | None) -> bool:
    """Whether what is lost begins with what a keeper loses and no tank holds."""
    return species is not None and _words()["nothing"].match(fold(species)) is not None


def _lies_about(species: str | None) -> bool:
    """Whether all words of what is lost are those of things that lie about beside a tank.

    Examples
    --------
    >>> _lies_about("piece paper"), _lies_about("notes what"), _lies_about("paper fish")
    (True, True, False)
    """
    words = [] if species is None else fold(species).split()
    said = list(takewhile(lambda word: _words()["asks"].fullmatch(word) is None, words))
    return bool(said) and all(_words()["things"].fullmatch(word) for word in said)


def _of_a_thing(tokens: list[Token], found: Found, species: str | None) -> bool:
    """Whether what is named behind a loss is no animal, and a thing stands before it."""
    if species is None or kinds.names_animal(species) or kinds.names_any(species):
        return False
    if kinds.nearest(species):
        return False
    opening = tokens[found.first]
    if _words()["pets"].fullmatch(opening.text):
        return True  # Swedish for died: dog peed in the tank
    before = tokens[found.first - 1] if found.first else None
    return before is not None and before.kind == "word" and not kinds.names_animal(before.text)
