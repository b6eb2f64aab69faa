"""Whence and whither animals were moved: `moved 3 tetras from fern to quarry`.

way = [ tank ] ... word-of-moving ... { ("from" | "to") name }
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from core.message.amounts import volume_litres
from core.message.animal_words import TOWARDS, WHENCE
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Context, Event
from core.message.tanks import marked
from core.message.tokens import Token, cut

_FROM: Final = frozenset({"from"})
_TO: Final = frozenset({"to", "at_to", "in"})
_STOPS: Final = frozenset({",", ";", ".", "!", "?", "(", ")", "|"})


@dataclass(frozen=True, slots=True)
class Way:
    """The two ends of a move, each as the tank spells itself; None where it was not said.

    An origin that is none of the chat's tanks is empty; `stranger` is a destination that is none
    of them, as typed.
    """

    origin: str | None = None
    destination: str | None = None
    stranger: str | None = None


def way(text: str, event: Event, context: Context) -> Way:
    """Find the ends of a move in the line of a message that tells it.

    A tank that begins the line is where they were, one behind the word without "from" where they
    are now.

    Examples
    --------
    >>> from datetime import UTC, datetime
    >>> here = Context(datetime(2026, 3, 1, tzinfo=UTC), tanks=("Fern", "Quarry"))
    >>> moved = Event("moved", count=3, species="tetras")
    >>> found = way("moved 3 tetras from fern to quarry", moved, here)
    >>> found.origin, found.destination
    ('Fern', 'Quarry')
    >>> way("moved 3 tetras to the nursery", moved, here).stranger
    'nursery'
    """
    first = text.rfind("\n", 0, event.start) + 1
    line = text[first:].partition("\n")[0]
    folded = fold(line)
    tokens = marked(cut(folded, lexicon()), folded, context)
    place = next((n for n, t in enumerate(tokens) if t.value in {"moved", "given"}), 0)
    origin: str | None = None
    destination = stranger = None
    side = ""
    for n, token in enumerate(tokens):
        if n > place and (token.kind == "event" or token.text in _STOPS):
            break
        if (heading := _side(token)) is not None:
            side = heading
        elif token.text in {">", "→"} and destination is not None and origin is None:
            origin, destination, side = destination, None, "to"  # fern -> quarry
        elif token.kind == "tank":
            if side == "from" or (n < place and not side):
                origin = origin or str(token.value)
            else:
                destination = destination or str(token.value)
            side = ""
        elif side == "from" and (token.kind == "word" or token.value == "other"):
            origin = ""  # a friend's, a shop's
        elif side == "to" and (size := _size(tokens, n, line)) is not None:
            stranger = size
            break
        elif token.kind == "word" and side == "to" and n > place:
            stranger = _name(tokens[n:], line)
            break
        elif token.kind != "fill":
            side = ""
    return Way(origin, destination, None if destination else stranger)


def _side(token: Token) -> str | None:
    if token.kind == "tank":
        return None  # a tank may be called Z, which is Polish for from
    if (token.kind == "mark" and token.value in _FROM) or token.text in WHENCE:
        return "from"
    there = token.kind == "mark" and token.value in _TO
    return "to" if there or token.text in TOWARDS else None


def _size(tokens: list[Token], place: int, line: str) -> str | None:
    """A tank that is called by its size: to the 20 gal."""
    if place + 1 >= len(tokens) or tokens[place].kind != "number":
        return None
    said = line[tokens[place].start : tokens[place + 1].end]
    return said if volume_litres(said) is not None else None


def _name(tokens: list[Token], line: str) -> str:
    """The words of a name, as typed, up to what cannot be of it."""
    end = next((n for n, t in enumerate(tokens) if t.kind != "word"), len(tokens))
    return line[tokens[0].start : tokens[end - 1].end]
