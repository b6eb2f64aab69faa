"""Tanks that are named after their animals: when a name means the animal, not the tank.

`added 1 betta` to the tank Betta, `added 20 cherry shrimp` to the tank Shrimp, `3 koi died` in Koi.
"""

from __future__ import annotations

from core.message import herd, quantities
from core.message.fold import fold
from core.message.tokens import Token

OF_ANIMALS = frozenset({"added", "lost", "moved", "given", "born"})
"""Events by which animals come, go or are born, as the word files call them."""
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
    if herd.saying(plain) == "young":
        return "within" if words else "alone"
    if not words:
        return "alone" if _is_kind(plain) else None
    last = plain.split()[-1]
    for said in animals_in(" ".join([*words, plain])):
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
    return told and tokens[behind].value in OF_ANIMALS and _counts(tokens[first - 1])


def is_numbered(tokens: list[Token], place: int) -> bool:
    """Whether a number is a part of a kind's name: figure eight puffer."""
    if not 0 < place < len(tokens) - 1 or not _counts(tokens[place]):
        return False
    near = tokens[place - 1 : place + 2]
    if any(token.kind != "word" for token in (near[0], near[2])):
        return False
    from core.advice.livestock import lookup

    return lookup(" ".join(token.text for token in near)).species is not None


def counts(token: Token) -> bool:
    """Whether a token is a number of animals: 6, six, a."""
    return token.kind in {"number", "count"} or (token.kind == "time" and token.value == "one")


def _counts(token: Token) -> bool:
    return (
        quantities.is_number(token)
        or token.kind == "count"
        or token.value in {"one", "some", "new", "several"}
    )


def _is_event(token: Token) -> bool:
    return token.kind == "event" and token.value in OF_ANIMALS


def _is_kind(text: str) -> bool:
    """Whether a whole text is the name of an animal, or of several kinds (shrimp)."""
    from core.advice.livestock import lookup

    found = lookup(text)
    if found.species is not None:
        return found.species.is_animal
    return found.shared and any(row.is_animal for row in found.candidates)


def names_any(text: str) -> bool:
    """Whether a text is a word for animals of any kind."""
    return herd.saying(fold(text).strip()) == "any"


def names_animal(text: str) -> bool:
    """Whether a text names an animal, of a kind or of several, or plants in general."""
    return _is_kind(text) or bool(animals_in(text))


def animals_in(text: str) -> list[str]:
    """The animals that a text names, as it names them."""
    # The table of animals is read only where a chat has a tank of such a name.
    from core.advice.livestock import named_in

    return [
        said
        for said, found in named_in(text)
        if any(row.is_animal for row in (found.species, *found.candidates) if row is not None)
    ]


def said_in(text: str) -> str:
    """The first animal that a text names, in its own letters; "" where it names none.

    Examples
    --------
    >>> said_in("added Cherry shrimps")
    'Cherry shrimps'
    """
    named = animals_in(text)
    words = text.split()
    if not named:
        return next((word for word in words if _is_kind(word)), "")
    size = len(named[0].split())
    runs = (" ".join(words[at : at + size]) for at in range(len(words)))
    return next((run for run in runs if animals_in(run) == named[:1]), "")


def nearest(text: str) -> tuple[str, ...]:
    """The names that a misspelt name of an animal is nearest to, in the language it is in.

    Examples
    --------
    >>> nearest("neon tetars"), nearest("neon tetras"), nearest("fertiliser")
    (('neon tetra',), (), ())
    """
    from core.advice.livestock import lookup, spelt_like

    found = lookup(text)
    if found.species is not None or found.shared:
        return ()
    return tuple(spelt_like(text, row) for row in found.candidates if row.is_animal)
