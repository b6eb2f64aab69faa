"""The names nearest to a misspelt word; never taken silently, ties are several."""

from __future__ import annotations

from functools import lru_cache
from typing import Final

from rapidfuzz.distance import OSA

from core.analytes import FREE
from core.message.dose_words import is_bare_buffer
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.wordfile import spelt

_SHORT = frozenset({"ph", "gh", "kh"})
_SHOWN = {"ph": "pH", "gh": "GH", "kh": "KH", "co2": "CO2", "tds": "TDS"}


@lru_cache(maxsize=1)
def _names() -> tuple[tuple[str, str], ...]:
    """(word, analyte) of every single-word name; short ones of elements are near everything."""
    return tuple(
        (word, entry[1].partition("@")[0])
        for word, entry in lexicon().words.items()
        if entry[0] == "analyte"
        and len(word) > (3 if entry[1] in FREE else 1)
        and "ambiguous" not in entry[1]
    )


@lru_cache(maxsize=4096)
def analytes(word: str) -> tuple[str, ...]:
    """Names of the analytes whose spellings are nearest to `word`, at most three.

    One edit for words up to five letters, two from six on; a swap of neighbours counts one. Of two
    letters only what may be pH, KH or GH is looked at, and there a swap goes first (hk is kh). A
    word that is spelt right, as `buffer` is, is no slip of a name.

    Examples
    --------
    >>> analytes("nitrtae"), analytes("nitrte"), analytes("hk")
    (('nitrate',), ('nitrate', 'nitrite'), ('KH',))
    """
    if not 2 <= len(word) <= 30 or word in _spelt_right() or is_bare_buffer(word):
        return ()  # buffer is no slip of copper
    most = 1 if len(word) < 6 else 2
    best: dict[str, float] = {}
    for name, analyte in _names():
        if len(word) == 2 and analyte not in _SHORT:
            continue
        distance: float = OSA.distance(word, name, score_cutoff=most)
        if distance <= most:
            if len(word) == 2 and sorted(word) == sorted(name):
                distance -= 0.5
            best[analyte] = min(distance, best.get(analyte, 9.0))
    if not best:
        return ()
    least = min(best.values())
    found = sorted(analyte for analyte, distance in best.items() if distance == least)
    return tuple(_SHOWN.get(analyte, analyte.replace("_", " ")) for analyte in found[:3])


@lru_cache(maxsize=1)
def _modifiers() -> tuple[str, ...]:
    """Words that begin a name of several words, such as carbonate, total, free."""
    return tuple(
        {
            first
            for (first, _), rest in lexicon().phrases.items()
            if len(first) > 3 and any(entry[0] == "analyte" for _, entry, _ in rest)
        }
    )


@lru_cache(maxsize=4096)
def modifies(word: str) -> bool:
    """Whether a word is nearly one that makes another name of the name behind it.

    Examples
    --------
    >>> modifies("carbonaate"), modifies("hello")
    (True, False)
    """
    if not 4 <= len(word) <= 30:
        return False
    most = 1 if len(word) < 6 else 2
    return any(OSA.distance(word, near, score_cutoff=most) <= most for near in _modifiers())


@lru_cache(maxsize=1)
def _names_of_two() -> tuple[tuple[str, str], ...]:
    """(words, analyte) of every name of two words, such as carbonate hardness."""
    return tuple(
        (" ".join(words), entry[1].partition("@")[0])
        for words, continuations in lexicon().phrases.items()
        for rest, entry, _ in continuations
        if len(rest) == 1 and entry[0] == "analyte" and "ambiguous" not in entry[1]
    )


@lru_cache(maxsize=4096)
def of_two(first: str, second: str) -> tuple[str, ...]:
    """The analytes whose names of two words are nearest to two words, by two edits at most.

    Examples
    --------
    >>> of_two("carbonate", "hardnes"), of_two("hello", "hardnes")
    (('KH',), ())
    """
    written = f"{first} {second}"
    if len(first) < 4 or len(second) < 4 or len(written) > 60:
        return ()
    best: dict[str, float] = {}
    for name, analyte in _names_of_two():
        distance: float = OSA.distance(written, name, score_cutoff=2)
        if distance <= 2:
            best[analyte] = min(distance, best.get(analyte, 9.0))
    nearest = sorted(analyte for analyte, off in best.items() if off == min(best.values()))
    return tuple(_SHOWN.get(analyte, analyte.replace("_", " ")) for analyte in nearest[:3])


@lru_cache(maxsize=4096)
def counts(word: str) -> bool:
    """Whether a word of four letters or more is nearly one that counts.

    Examples
    --------
    >>> counts("dozwn"), counts("tetra")
    (True, False)
    """
    return 4 <= len(word) <= 30 and any(
        OSA.distance(word, near, score_cutoff=2) <= (1 if len(word) < 6 else 2)
        or word.startswith(near)
        for near, entry in lexicon().words.items()
        if entry[0] == "count" and len(near) > 4
    )


@lru_cache(maxsize=4096)
def counts_like(word: str, count: str) -> bool:
    """Whether a word is one edit from a counting word of a language that `count` is of.

    Examples
    --------
    >>> counts_like("twenmty", "one"), counts_like("neon", "two")
    (True, False)
    """
    if not 3 <= len(word) <= 30:
        return False
    known = lexicon()
    spoken = known.languages.get(count.partition(" ")[0], frozenset())
    return any(
        OSA.distance(word, near, score_cutoff=1) <= 1
        for near, entry in known.words.items()
        if entry[0] == "count" or entry[1] == "one"
        if len(near) > 2 and known.languages.get(near, frozenset()) & spoken
    )


@lru_cache(maxsize=1)
def _bearing() -> tuple[str, ...]:
    """Words that change what a value means: times, wishes, other waters, changes."""
    marks = {"wish", "other", "up", "down", "was", "formerly", "from", "not", "if", "to", "between"}
    ranges = {("mark", "to"), ("mark", "at_to")}
    found = []
    for word, entry in lexicon().words.items():
        several = lexicon().several.get(word, (("", entry),))
        for _, (category, meaning) in several:
            bearing = category == "time" or (category == "mark" and meaning in marks)
            if (bearing and len(word) > 2) or ((category, meaning) in ranges and len(word) == 2):
                found.append(word)
                break
    return tuple(found)


@lru_cache(maxsize=1)
def _spelt_right() -> frozenset[str]:
    return frozenset(way for _, _, ways in spelt("spelt_right.txt", {"word"}) for way in ways)


@lru_cache(maxsize=4096)
def bears(word: str) -> bool:
    """Whether a word is nearly one that would change what a value means.

    Examples
    --------
    >>> bears("yesterdy"), bears("elephant"), bears("rest")
    (True, False, False)
    """
    if not 3 <= len(word) <= 30 or word in _spelt_right():
        return False
    most = 1 if len(word) < 6 else 2
    return any(OSA.distance(word, near, score_cutoff=most) <= most for near in _bearing())


@lru_cache(maxsize=1024)
def _time_word(word: str) -> str | None:
    """The word for a time that a word is a slip of; None where that is none, or not one alone."""
    if not LEAST_TIME <= len(word) <= 30 or word in _spelt_right():
        return None
    known = lexicon()
    near: dict[str, list[str]] = {}
    for way, (category, meaning) in known.words.items():
        if category == "time" and len(way) >= LEAST_TIME and way not in known.several:
            distance = OSA.distance(word, way, score_cutoff=2)
            if distance <= (1 if len(way) < LONG_TIME else 2):
                near.setdefault(meaning, []).append(way)
    if len(near) != 1:
        return None
    return min(next(iter(near.values())), key=lambda way: OSA.distance(word, way))


LEAST_TIME: Final = 6
"""A shorter word is like too many others. [characters]"""
LONG_TIME: Final = 8
"""From here on a word for a time is still known with two letters wrong. [characters]"""


def with_time(text: str) -> str | None:
    """A text whose one misspelt word for a time is put right; None where there is none, or more.

    Examples
    --------
    >>> with_time("yestrday 8pm ammonia 0.25"), with_time("yesterday 0.25"), with_time("elephant 3")
    ('yesterday 8pm ammonia 0.25', None, None)
    """
    tokens = cut(fold(text), lexicon(), text)
    slips = [(token, way) for token in tokens if token.kind == "word"
             for way in [_time_word(token.text)] if way is not None]  # fmt: skip
    if len(slips) != 1:
        return None
    ((token, way),) = slips
    return f"{text[: token.start]}{way}{text[token.end :]}"
