"""Which word of the answers a keeper asks the meaning of: ``what is a dechlorinator``."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.wordfile import spelt

LONGEST = 80
"""Characters of a question that asks for a word and nothing else."""
_EDGES = " ?!.,:¿¡\"'"
_WHAT_IS = frozenset({"what is", "whats", "what's"})
_READ = 16
"""Pieces that the longest phrase of asking is made of, and some before it."""


@dataclass(frozen=True, slots=True)
class _Words:
    """Plain word → id of its meaning; articles; what stands behind a word, and before several."""

    terms: Mapping[str, str]
    articles: frozenset[str]
    behind: frozenset[str]
    many: frozenset[str]


@cache
def _words() -> _Words:
    """All words of ``terms.txt``.

    Raises
    ------
    ValueError
        If a line of ``terms.txt`` has no ``=``.
    """
    held: dict[tuple[str, str], set[str]] = {}
    for section, meaning, told in spelt("terms.txt"):
        held.setdefault((section, meaning), set()).update(told)
    terms = {word: of for (section, of), told in held.items() if section == "term" for word in told}
    skipped = (frozenset(held["skip", each]) for each in ("article", "behind", "many"))
    return _Words(terms, *skipped)


def meanings() -> frozenset[str]:
    """The ids of all words that can be asked for."""
    return frozenset(_words().terms.values())


def means(word: str, meaning: str) -> bool:
    """Whether a word, folded, has one of these meanings.

    Examples
    --------
    >>> means("densite", "gravity"), means("salinity", "gravity")
    (True, False)
    """
    return _words().terms.get(word) == meaning


def asked(text: str) -> str | None:
    """The id of the word whose meaning is asked; None where the text asks for something else.

    Examples
    --------
    >>> asked("What is RO water?"), asked("was ist ein Wasserwechsel"), asked("what is wrong")
    ('ro', 'water_change', None)
    """
    if len(text) > LONGEST or "\n" in text:
        return None
    plain = fold(text).strip(_EDGES)
    said = _behind_the_asking(plain)
    if said is None:
        return None
    known = _words()
    words = said.replace("l'", "l' ").split()
    words = words[:-1] if words and words[-1] in known.behind else words
    while words and (found := known.terms.get(" ".join(words))) is None:
        words = words[1:] if words[0] in known.articles else []
    return found if words else None


def _behind_the_asking(plain: str) -> str | None:
    """What stands behind the words that ask for a meaning; None where no meaning is asked."""
    known = _words()
    if (many := next((m for m in known.many if plain.startswith(f"{m} ")), None)) is not None:
        return plain[len(many) :].strip(_EDGES)
    tokens = cut(plain, lexicon(), plain, most=_READ)
    place = next((i for i, token in enumerate(tokens) if token.kind == "ask"), None)
    if place is None or any(token.kind != "fill" for token in tokens[:place]):
        return None
    opening, said = tokens[place], plain[tokens[place].end :].strip(_EDGES)
    explains = opening.value == "explain" or opening.text in _WHAT_IS
    does = opening.value == "effect" and said.rpartition(" ")[2] in known.behind
    return said if explains or does else None
