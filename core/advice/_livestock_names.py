"""Which animal is meant: names in nine languages, plurals, and what is nearest to a misspelling.

Nothing is guessed: one animal is found where the name is its name; where a name is shared, or
only nearly a name, the candidates are given to be asked about.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from rapidfuzz import process
from rapidfuzz.distance import OSA

from core.advice._livestock_table import Species, table
from core.message.fold import INVISIBLE, MARK, fold

LONGEST: Final = 60
"""A longer text is no name of an animal. [characters]"""

LONGEST_TEXT: Final = 4 * LONGEST
"""With the spaces and marks that do not count. [characters]"""

MOST_OFFERED: Final = 4
"""Candidates that are offered; more is no help."""

WORD_LONG_ENOUGH: Final = 4
"""A shorter word of a name ("red", "bee") does not tell what kind is meant. [letters]"""

_ENDINGS: Final = ("ies", "es", "en", "er", "ar", "or", "s", "n", "e", "i", "y", "x", "a")
"""Endings of plurals (and of the singulars beside them) in the nine languages; common grammar."""


@dataclass(frozen=True, slots=True)
class Found:
    """What a text can mean.

    Attributes
    ----------
    species : Species or None
        The one animal whose name it is; None where it must be asked.
    candidates : tuple of Species
        The animals that share the name, or whose names are nearest; empty with `species`, and
        where nothing is near.
    shared : bool
        True where the text is a name of several animals, False where it is only nearly one.
    """

    species: Species | None = None
    candidates: tuple[Species, ...] = ()
    shared: bool = False


NOTHING: Final = Found()


def lookup(text: str) -> Found:
    """Find the animal or plant that a keeper's word names.

    Parameters
    ----------
    text : str
        A common name in any of the nine languages, singular or plural, or a scientific name.

    Returns
    -------
    Found
        The one species; or several to ask about, because they share the name or because the
        name is misspelt; or nothing.

    Examples
    --------
    >>> lookup("Neon Tetras").species.scientific
    'Paracheirodon innesi'
    >>> found = lookup("neon tetar")
    >>> found.species is None, found.candidates[0].name
    (True, 'neon tetra')
    """
    # Hostile texts are long: they must not fill the cache.
    return NOTHING if len(text) > LONGEST_TEXT else _look_up(text)


@lru_cache(maxsize=1024)
def _look_up(text: str) -> Found:
    plain = _plain(text)
    if not 2 <= len(plain) <= LONGEST:
        return NOTHING
    index = _index()
    for held in (index.names.get(_joined(plain)), index.stems.get(_stem(plain))):
        if held:
            return Found(held[0]) if len(held) == 1 else Found(None, held, shared=True)
    near = tuple(_nearest(_joined(plain), index))
    long_enough = len(plain) >= WORD_LONG_ENOUGH
    if not near and long_enough and (sharing := index.words.get(_stem(plain))):
        return Found(None, sharing[:MOST_OFFERED], shared=len(sharing) > 1)
    return Found(None, near)


def species(name: str) -> Species:
    """The species of a scientific or unshared common name.

    Raises
    ------
    KeyError
        If no row, or more than one, has the name.
    """
    found = lookup(name).species
    if found is None:
        raise KeyError(name)
    return found


@dataclass(frozen=True, slots=True)
class _Index:
    """Species by plain name, by stem, and by the stem of one word of their names."""

    names: dict[str, tuple[Species, ...]]
    stems: dict[str, tuple[Species, ...]]
    words: dict[str, tuple[Species, ...]]


@lru_cache(maxsize=1)
def _index() -> _Index:
    names: defaultdict[str, dict[str, Species]] = defaultdict(dict)
    stems: defaultdict[str, dict[str, Species]] = defaultdict(dict)
    words: defaultdict[str, dict[str, Species]] = defaultdict(dict)
    for row in table().species:
        for name in _all_names(row):
            plain = _plain(name)
            names[_joined(plain)][row.scientific] = row
            stems[_stem(plain)][row.scientific] = row
            for word in plain.split():
                if len(word) >= WORD_LONG_ENOUGH:
                    words[_stem(word)][row.scientific] = row
    return _Index(
        *(
            {key: tuple(rows.values()) for key, rows in held.items()}
            for held in (names, stems, words)
        )
    )


def _all_names(row: Species) -> Iterator[str]:
    yield row.scientific
    for names in row.names.values():
        yield from names
    if row.cited:
        yield row.cited["name"]


def _plain(text: str) -> str:
    """Small letters, no accents, one space for whatever parts the words."""
    folded = fold(text).replace(INVISIBLE, "").replace(MARK, "")
    kept = "".join(c if c.isalnum() else " " for c in folded.replace("'", ""))
    return " ".join(kept.split())


def _joined(plain: str) -> str:
    """A name however it is parted into words: gold fish, goldfish."""
    return plain.replace(" ", "")


def _stem(plain: str) -> str:
    """A name without the endings of its words' plurals, however it is parted into words."""
    return "".join(_stem_of_word(word) for word in plain.split())


def _stem_of_word(word: str) -> str:
    """A word without its endings, so that singular and plural meet: tetra, tetras → tetr."""
    while True:
        for ending in _ENDINGS:
            if word.endswith(ending) and len(word) - len(ending) >= 3:
                word = word.removesuffix(ending)
                break
        else:
            return word


def _nearest(plain: str, index: _Index) -> Iterator[Species]:
    """Species whose names are fewest edits away, nearest first, each once."""
    most = 1 if len(plain) < 6 else 2 if len(plain) < 12 else 3
    near = process.extract(
        plain, index.names.keys(), scorer=OSA.distance, score_cutoff=most, limit=8
    )
    offered: dict[str, Species] = {}
    for name, distance, _ in near:
        # Under five letters one edit makes another word altogether: only a swap is near.
        if len(plain) < 5 and (distance > 1 or sorted(plain) != sorted(name)):
            continue
        for row in index.names[name]:
            offered.setdefault(row.scientific, row)
    yield from list(offered.values())[:MOST_OFFERED]
