"""Tanks that are named after their animals: when a name means the animal, not the tank.

`added 1 betta` to the tank Betta, `added 20 cherry shrimp` to the tank Shrimp, `3 koi died` in Koi.
"""

from __future__ import annotations

from core.message import quantities
from core.message.tokens import Token

LIFE_STAGES = frozenset(
    "fry juvenile juveniles larva larvae baby babies babys young alevin alevins alevines alevinos"  # noqa: SIM905
    " avannotti avannotto jungfisch jungfische jungtiere brut jongbroed narybek yngel".split()
)
"""Words for young animals, which stand beside the kind's name and are no kind, without accents."""
PAIRS = frozenset(
    "pair pairs couple couples paar paare parchen pareja parejas casal casais coppia coppie paren"  # noqa: SIM905
    " pary".split()
)
"""Words for two of a kind before its name, without accents."""
_EVENTS = frozenset({"added", "lost", "moved"})
_WORDS = 3
"""Most words of a kind's name before the one that is a tank's too."""
_REACH = 12


def is_animal(tokens: list[Token], place: int, plain: str, behind: int) -> str | None:
    """What a tank's name at `place` is: "alone" or "within" a kind's name; None for the tank.

    `behind` is the index of the first token behind the name.
    """
    first = place
    while first > 0 and place - first < _WORDS and tokens[first - 1].kind == "word":
        first -= 1
    if first == 0 or not (_told_before(tokens, first) or _told_behind(tokens, first, behind)):
        return None
    words = [token.text for token in tokens[first:place]]
    if plain in LIFE_STAGES:
        return "within" if words else "alone"
    if not words:
        return "alone" if _is_kind(plain) else None
    last = plain.split()[-1]
    for said in _known(" ".join([*words, plain])):
        if said.split()[-1:] == [last] and len(said.split()) > len(plain.split()):
            return "within"
    return None


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
    return told and tokens[behind].value in _EVENTS and _counts(tokens[first - 1])


def is_numbered(tokens: list[Token], place: int) -> bool:
    """Whether a number is a part of a kind's name: figure eight puffer."""
    if not 0 < place < len(tokens) - 1 or not _counts(tokens[place]):
        return False
    near = tokens[place - 1 : place + 2]
    if any(token.kind != "word" for token in (near[0], near[2])):
        return False
    from core.advice.livestock import lookup

    return lookup(" ".join(token.text for token in near)).species is not None


def _counts(token: Token) -> bool:
    return (
        quantities.is_number(token)
        or token.kind == "count"
        or token.value in {"one", "some", "new", "several"}
    )


def _is_event(token: Token) -> bool:
    return token.kind == "event" and token.value in _EVENTS


def _is_kind(text: str) -> bool:
    """Whether a whole text is the name of an animal, or of several kinds (shrimp)."""
    from core.advice.livestock import lookup

    found = lookup(text)
    if found.species is not None:
        return found.species.is_animal
    return found.shared and any(row.is_animal for row in found.candidates)


def names_animal(text: str) -> bool:
    """Whether a text names an animal, of a kind or of several, or plants in general."""
    return _is_kind(text) or bool(_known(text))


def _known(text: str) -> list[str]:
    """The animals that a text names, as it names them."""
    # The table of animals is read only where a chat has a tank of such a name.
    from core.advice.livestock import named_in

    return [
        said
        for said, found in named_in(text)
        if any(row.is_animal for row in (found.species, *found.candidates) if row is not None)
    ]
