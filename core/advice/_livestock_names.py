"""Which animal is meant: names in nine languages, plurals, and what is nearest to a misspelling.

Nothing is guessed: one animal is found where the name is its name; where a name is shared, or
only nearly a name, the candidates are given to be asked about.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from rapidfuzz import process
from rapidfuzz.distance import OSA

from core.advice._livestock_table import Species, Table, table
from core.advice._livestock_words import WORD_LONG_ENOUGH, joined, kind_alone, plain_name, stem
from core.message.lexicon import meanings

LONGEST: Final = 60
"""A longer text is no name of an animal. [characters]"""

LONGEST_TEXT: Final = 4 * LONGEST
"""With the spaces and marks that do not count. [characters]"""

LONGEST_SENTENCE: Final = 400
"""A longer text is not searched for names. [characters]"""

LONG_WORD: Final = 8
"""Letters of a word of names, such as a genus, that is sought although it is misspelt."""

MOST_OFFERED: Final = 4
"""Candidates that are offered; more is no help."""


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
    plain = plain_name(text)
    if not 2 <= len(plain) <= LONGEST:
        return NOTHING
    held = table()
    for places in (held.names.get(joined(plain)), held.stems.get(stem(plain))):
        if places:
            rows = held.rows(places)
            return Found(rows[0]) if len(rows) == 1 else Found(None, rows, shared=True)
    if sharing := held.heads.get(plain):
        return Found(None, held.rows(sharing), shared=True)
    if (alone := kind_alone(plain)) not in {plain, ""}:
        return _look_up(alone)  # guppy fry need what guppies need, and less ammonia
    if any(category == "analyte" for category, _meaning in meanings(plain)):
        return NOTHING  # nitrite is no slip for nerite
    near = tuple(_nearest(joined(plain), held))
    long_enough = len(plain) >= WORD_LONG_ENOUGH
    if not near and long_enough and (sharing := held.words.get(stem(plain))):
        return Found(None, held.rows(sharing), shared=len(sharing) > 1)
    if not near and len(plain) >= LONG_WORD and " " not in plain:
        near = tuple(_nearest_word(stem(plain), held))
    return Found(None, near)


def may_name(text: str) -> bool:
    """Whether a text is a name, or a word of names: what is only nearly one is not sought.

    A tenth of the time of a look-up, for words of any message.

    Examples
    --------
    >>> may_name("neon tetras"), may_name("tetras"), may_name("neon tetar")
    (True, True, False)
    """
    if len(text) > LONGEST_TEXT:
        return False
    held, whole = table(), plain_name(text)
    for plain in {whole, kind_alone(whole)}:
        if len(plain) > 1 and (
            joined(plain) in held.names
            or (stem_of := stem(plain)) in held.stems
            or stem_of in held.words
            or plain in held.heads
        ):
            return True
    return False


MOST_WORDS: Final = 4
"""Words of the longest common name that is sought in a sentence."""


def named_in(text: str) -> list[tuple[str, Found]]:
    """Every animal that a sentence names in full, in order, with the words that name it.

    Parameters
    ----------
    text : str
        A sentence; misspelt names are not sought in it.

    Examples
    --------
    >>> [(words, found.species.name) for words, found in named_in("6 cherry shrimps with a betta")]
    [('cherry shrimps', 'cherry shrimp'), ('betta', 'Siamese fighting fish')]
    """
    words = plain_name(text[:LONGEST_SENTENCE]).split()
    named: list[tuple[str, Found]] = []
    start = 0
    while start < len(words):
        size, found = name_at(words, start)
        if size:
            named.append((" ".join(words[start : start + size]), found))
        start += size or 1
    return named


SHORTEST_OF_WORDS: Final = 5
"""Fewer letters in several words name no animal; common practice."""


def name_at(words: Sequence[str], start: int) -> tuple[int, Found]:
    """How many plain words from a place on are the longest name of animals there, and whose.

    Examples
    --------
    >>> size, found = name_at(["6", "cherry", "shrimps"], 1)
    >>> size, found.species.name
    (2, 'cherry shrimp')
    """
    held = table()
    for size in range(min(MOST_WORDS, len(words) - start), 0, -1):
        said = " ".join(words[start : start + size])
        if size > 1 and len(said) <= SHORTEST_OF_WORDS:
            continue  # "i do" is no ido
        if joined(said) in held.names or (len(said) > 3 and stem(said) in held.stems):
            return size, lookup(said)
    return 0, NOTHING


def is_head(word: str) -> bool:
    """Whether a plain word calls animals of several kinds: shrimp, Schnecken, tetras.

    Examples
    --------
    >>> is_head("snails"), is_head("dwarf")
    (True, False)
    """
    return word in table().heads


def spelt_like(text: str, row: Species) -> str:
    """The name of a species that is nearest to a misspelt one."""
    plain = joined(plain_name(text))
    names = [row.scientific, *(name for of in row.names.values() for name in of)]
    return min(names, key=lambda name: OSA.distance(plain, joined(plain_name(name))))


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


def _nearest_word(word: str, held: Table) -> list[Species]:
    """Species with a word in their names, such as a genus, that is one edit away."""
    near = process.extractOne(word, held.words.keys(), scorer=OSA.distance, score_cutoff=1)
    return [] if near is None else list(held.rows(held.words[near[0]]))[:MOST_OFFERED]


def _nearest(plain: str, held: Table) -> Iterator[Species]:
    """Species whose names are fewest edits away, nearest first, each once."""
    most = 1 if len(plain) < 6 else 2 if len(plain) < 12 else 3
    near = process.extract(
        plain, held.names.keys(), scorer=OSA.distance, score_cutoff=most, limit=8
    )
    offered: dict[str, Species] = {}
    for name, distance, _ in near:
        # Under five letters one edit makes another word altogether: only a swap is near.
        if len(plain) < 5 and (distance > 1 or sorted(plain) != sorted(name)):
            continue
        for row in held.rows(held.names[name]):
            offered.setdefault(row.scientific, row)
    yield from list(offered.values())[:MOST_OFFERED]
