"""So much of another thing, told behind a dose: `dosed 5 g soda then another 3 g salt`.

second = { light word | then | once more } ( amount [ "of" ] thing | thing amount )

The dose before it has to be told whole, with its amount and its thing.
"""

from __future__ import annotations

from typing import Final

from core.message import deed_asked, deed_told, herd, quantities
from core.message.token import Token

GIVEN: Final = frozenset({"dose", "added"})
"""Events that may be a dose."""

_LIGHT: Final = 4
"""Words that may stand between two things that were put in."""

_STOPS: Final = frozenset({",", ";", "|", ".", "!", "?", "(", ")", "•"})


def begins(tokens: list[Token], index: int, place: int) -> bool:
    """Whether another dose begins there, of an event whose word is at `index`."""
    if tokens[index].value not in GIVEN or (start := ahead(tokens, place)) is None:
        return False
    if start == place == index + 1:
        return False  # of what went into a jug before: 5 g soda in a jug, dosed 3 g salt
    first = index
    while first and tokens[first - 1].text not in _STOPS and tokens[first - 1].kind != "nl":
        first -= 1
    return deed_asked.is_whole(tokens[first:place])


def ahead(tokens: list[Token], place: int) -> int | None:
    """Where an amount of a named substance, or its name and amount, begins past light words."""
    last = min(place + _LIGHT, len(tokens) - 2)
    while place < last and (size := _light(tokens, place)):
        place += size
    if place >= len(tokens):
        return None
    thing_first = tokens[place].kind == "substance" and place + 2 < len(tokens)
    if thing_first and quantities.is_number(tokens[place + 1]):
        behind = quantities.read(tokens, place + 1)
        return place if behind is not None and behind.unit in deed_asked.WEIGHED else None
    amount = quantities.read(tokens, place) if quantities.is_number(tokens[place]) else None
    if amount is None or amount.unit not in deed_asked.WEIGHED:
        return None
    after = [token for token in tokens[amount.last : amount.last + 3] if token.kind != "fill"]
    named = after[:1] + (after[1:2] if after and deed_told.at(after, 0, "of") else [])
    return place if any(token.kind in {"substance", "several"} for token in named) else None


def _light(tokens: list[Token], place: int) -> int:
    """How many tokens from there on have no weight between two doses; 0 for none."""
    token = tokens[place]
    once_more = herd.saying(token.text) in {"further", "another"}
    if token.kind == "fill" or once_more or token.value == "and":
        return 1
    return deed_told.at(tokens, place, "then")
