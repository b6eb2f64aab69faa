"""Tanks that are named as something else is: when a name means the animal or unit, not the tank.

`added 1 betta` to the tank Betta, `added 20 cherry shrimp` to the tank Shrimp, `3 koi died` in Koi;
and where the animal's name is the longer one: a blue tang, beside the tank Tang.
"""

from __future__ import annotations

from core.message import herd, kinds, quantities
from core.message.tokens import Token

_WORDS = 3
"""Most words of a kind's name beside the one that is a tank's too."""
_REACH = 12
_PLACES = frozenset({"to", "at_to", "from", "in", "for"})


def is_animal(tokens: list[Token], place: int, plain: str, behind: int) -> str | None:
    """What a tank's name at `place` is: "alone" or "within" a kind's name; None for the tank.

    `behind` is the index of the first token behind the name.
    """
    follows = tokens[behind] if behind < len(tokens) else None
    if follows is not None and (follows.kind == "analyte" or follows.text == ":"):
        return None  # what is told of the water is of the tank
    if _is_longer(tokens, place, plain, behind):
        return "within"
    if _spoken_of(tokens, place, behind):
        return "alone" if kinds.is_kind(plain) else None
    first = place
    while first > 0 and place - first < _WORDS and _beside(tokens[first - 1]):
        first -= 1
    if first == 0 or not (_told_before(tokens, first) or _told_behind(tokens, first, behind)):
        return None
    words = [t.text for t in tokens[first:place] if herd.saying(t.text) not in herd.SEXES]
    if herd.saying(plain) == "young":
        return "within" if words else "alone"
    return "alone" if not words and kinds.is_kind(plain) else None


_EACH = frozenset({"/", "per", "pro", "par", "por"})


def is_letter(tokens: list[Token], place: int) -> bool:
    """Whether a tank's name of one letter is a unit or a small word here: `10 l`, `added a betta`.

    It is the tank at the head before what is told of it, behind a word for a place, and at the
    end; elsewhere only a letter that means nothing else is.
    """
    token = tokens[place]
    before = tokens[place - 1] if place else None
    after = tokens[place + 1] if place + 1 < len(tokens) else None
    opens = before is None or before.kind == "nl"
    unit, free = token.kind == "unit", token.kind == "word"
    if before is not None and (before.text in _EACH or (unit and _is_amount(before))):
        return True
    if after is None or after.kind == "nl" or after.kind == "analyte" or after.text == ":":
        return False
    if before is not None and before.text == "@":
        return False
    if not free and not unit and after.kind == "number":
        return True  # a 30% change
    placed = before is not None and before.kind == "mark" and before.value in _PLACES
    if opens or placed:
        return not (free or unit or after.kind in {"event", "p", "mark"})
    return not (free or (unit and after.kind == "number"))  # changed G 10 l


def _is_amount(token: Token) -> bool:
    return quantities.is_number(token) or token.kind == "count" or token.value == "half"


def _beside(token: Token) -> bool:
    """Whether a word may be of the animal's name, or tell its sex."""
    return token.kind == "word" or herd.saying(token.text) in herd.SEXES


def _is_longer(tokens: list[Token], place: int, plain: str, behind: int) -> bool:
    """Whether the words around make a name of the table of which the tank's is only a part.

    A plant's counts as well: a java fern beside the tank Fern.
    """
    from core.advice._livestock_names import NOTHING, name_at

    before = _plain_words(tokens[max(0, place - _WORDS) : place][::-1])[::-1]
    words = [*before, *plain.split(), *_plain_words(tokens[behind : behind + _WORDS])]
    first, size = len(before), len(plain.split())
    for start in range(first + 1):
        long, found = name_at(words, start)
        if start + long >= first + size and long > size and found != NOTHING:
            return True
    return False


def _plain_words(tokens: list[Token]) -> list[str]:
    """The words up to the first sign, number or tank."""
    out: list[str] = []
    for token in tokens:
        if not token.text.isalpha() or token.kind == "tank":
            break
        out.append(token.text)
    return out


def _spoken_of(tokens: list[Token], place: int, behind: int) -> bool:
    """Whether an animal alone is asked about, moved or dead: `can i keep a betta`, `betta died`."""
    first = place
    while first > 0 and (tokens[first - 1].kind == "fill" or tokens[first - 1].value == "one"):
        first -= 1
    before = tokens[first - 1] if first else None
    if before is not None and before.kind == "mark" and before.value in _PLACES:
        return False
    if any(t.kind == "ask" and t.value in {"join", "keep"} for t in tokens[:place]):
        return True
    ends = behind + 1 == len(tokens) or (
        behind + 1 < len(tokens) and not tokens[behind + 1].text.isalnum()
    )
    dead = behind < len(tokens) and tokens[behind].value == "lost" and ends
    opens = before is None or before.text in {":", ",", "."} or before.kind in {"tank", "time"}
    return (dead and opens) or (before is not None and _is_event(before))


def _told_before(tokens: list[Token], first: int) -> bool:
    """Whether an event of animals stands before, with nothing but counts and animals between."""
    place = first - 1
    if _is_event(tokens[place]):
        return True
    if not _counts(tokens[place]):
        return False
    for token in reversed(tokens[max(0, place - _REACH) : place]):
        if _is_event(token):
            return True
        counted = _counts(token) or token.kind in {"word", "fill"} or token.text == ","
        if not counted and token.value not in {"and", "approx", "plus"}:
            return False
    return False


def _told_behind(tokens: list[Token], first: int, behind: int) -> bool:
    """Whether a count stands before and the loss right behind: `3 koi died`."""
    told = behind < len(tokens) and tokens[behind].kind == "event"
    return told and tokens[behind].value in kinds.OF_ANIMALS and _counts(tokens[first - 1])


def _counts(token: Token) -> bool:
    return (
        quantities.is_number(token)
        or token.kind == "count"
        or token.value in {"one", "some", "new", "several"}
    )


def _is_event(token: Token) -> bool:
    return token.kind == "event" and token.value in kinds.OF_ANIMALS
