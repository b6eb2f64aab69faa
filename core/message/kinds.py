"""Animals that words of a message name, by the table: of a kind, of any, and nearly."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message import herd
from core.message.fold import fold
from core.message.tokens import Token
from core.message.wordfile import spelt

OF_ANIMALS = frozenset({"added", "arrived", "lost", "moved", "given", "missing", "born"})
"""Events by which animals come, go or are born, as the word files call them."""
WEAK = frozenset({"arrived", "given", "missing", "born"})
"""Of these those that are said of all kinds of things."""


def is_numbered(tokens: list[Token], place: int) -> bool:
    """Whether a number is a part of a kind's name: figure eight puffer."""
    if not 0 < place < len(tokens) - 1 or not counts(tokens[place]):
        return False
    near = tokens[place - 1 : place + 2]
    if any(token.kind != "word" for token in (near[0], near[2])):
        return False
    from core.advice.livestock import lookup

    return lookup(" ".join(token.text for token in near)).species is not None


def counts(token: Token) -> bool:
    """Whether a token is a number of animals: 6, six, a."""
    return token.kind in {"number", "count"} or (token.kind == "time" and token.value == "one")


def is_kind(text: str) -> bool:
    """Whether a whole text is the name of an animal, or of several kinds (shrimp)."""
    from core.advice.livestock import lookup, may_name

    if not may_name(text):
        return False
    found = lookup(text)
    if found.species is not None:
        return found.species.is_animal
    return found.shared and any(row.is_animal for row in found.candidates)


def names_thing(text: str) -> bool:
    """Whether a text names equipment, ground or plants, and no animal.

    Examples
    --------
    >>> names_thing("java fern"), names_thing("gravel"), names_thing("sand loach")
    (True, True, False)
    """
    from core.advice.livestock import lookup

    found = lookup(text)
    if found.species is not None:
        return not found.species.is_animal
    return all(herd.saying(word) in _THINGS for word in _weighty(text))


def names_air(text: str) -> bool:
    """Whether a text names air or what blows it in, and nothing else than equipment.

    Examples
    --------
    >>> names_air("air stone"), names_air("pierre à air"), names_air("heater")
    (True, True, False)
    """
    said = {herd.saying(word) for word in _weighty(text)}
    return "air" in said and said <= _THINGS


_THINGS: Final = frozenset({"thing", "air"})
_OF: Final = frozenset({"a", "de", "d", "di", "do", "of", "z", "da", "del", "dell"})
"""Small words in the name of a thing: pompe à air, bomba de aire."""


def _weighty(text: str) -> list[str]:
    words = re.findall(r"[^\W\d_]+", fold(text))
    return [word for word in words if word not in _OF] or words


def names_any(text: str) -> bool:
    """Whether a text is a word for animals of any kind."""
    return herd.saying(fold(text).strip()) == "any"


def names_animal(text: str) -> bool:
    """Whether a text names an animal, of a kind or of several, or plants in general."""
    return is_kind(text) or bool(animals_in(text))


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
        return next((word for word in words if is_kind(word)), "")
    size = len(named[0].split())
    runs = (" ".join(words[at : at + size]) for at in range(len(words)))
    return next((run for run in runs if animals_in(run) == named[:1]), "")


_MANY_ENDINGS: Final = ("s", "n", "e", "i", "er", "ar", "or")
"""How plurals end, in nine languages."""


def is_called(text: str) -> bool:
    """Whether an animal is called by a text as it is typed, or by its plural, and no colour is.

    Examples
    --------
    >>> is_called("guppies"), is_called("neon tetras"), is_called("shrimp")
    (True, True, True)
    >>> is_called("idea"), is_called("yellow"), is_called("betty")
    (False, False, False)
    """
    from core.advice.livestock import lookup

    said = fold(text).strip()
    if not is_kind(said) or said in _colours():
        return False
    found = lookup(said)
    rows = [row for row in (found.species, *found.candidates) if row is not None]
    names = (name for row in rows for of in row.names.values() for name in of)
    return any(_many_of(said, fold(name)) for name in names)


def _many_of(said: str, name: str) -> bool:
    words = {name, *name.split()}
    many = said.endswith(_MANY_ENDINGS) and any(w[:LETTERS] == said[:LETTERS] for w in words)
    return said in words or many


LETTERS: Final = 3
"""Letters that a plural has in common with its name."""


@cache
def _colours() -> frozenset[str]:
    told = spelt("introduced_beside.txt")
    return frozenset(way for _, of, ways in told if of == "bare" for way in ways)


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
