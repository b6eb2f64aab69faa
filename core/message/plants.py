"""Plants in general, as keepers call them: `is it bad for the plants`, `for the plants`."""

from __future__ import annotations

from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.wordfile import spelt

_EDGES: Final = " \t\n¿?¡!.,;:"


@cache
def _words() -> dict[str, frozenset[str]]:
    return {meaning: frozenset(ways) for _section, meaning, ways in spelt("plants.txt", {"plants"})}


def _cut(text: str) -> list[str]:
    plain = fold(text).strip(_EDGES).replace("l'", "l' ")
    return [word.strip(_EDGES) for word in plain.split()]


def only_plants(text: str) -> bool:
    """Whether words name plants in general, and nothing else.

    Examples
    --------
    >>> only_plants("my plants"), only_plants("für die Pflanzen"), only_plants("plants and shrimps")
    (True, True, False)
    """
    words = _words()
    said = [word for word in _cut(text) if word not in words["light"]]
    return bool(said) and all(word in words["plants"] for word in said)


def for_plants(text: str) -> bool:
    """Whether plants are all that a text asks for: `for the plants`, `and the plants?`.

    Examples
    --------
    >>> for_plants("and for the plants?"), for_plants("plants"), for_plants("my plants")
    (True, False, False)
    """
    return only_plants(text) and not _words()["for"].isdisjoint(_cut(text))


def named(text: str) -> bool:
    """Whether a text names plants in general, whatever else it says.

    Examples
    --------
    >>> named("is gh 20 bad for plants"), named("is gh 20 bad for neons")
    (True, False)
    """
    return not _words()["plants"].isdisjoint(_cut(text))
