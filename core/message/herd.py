"""What is said of animals beside the name of their kind: sex, age, pairs, all of them.

The words are the sections ``[animal]`` and ``[about]`` of the word files. They count only beside
an animal: "male" is Italian for bad, "all" a word without weight elsewhere.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Final, Literal

from core.message.lexicon import lexicon

Saying = Literal[
    "male",
    "female",
    "young",
    "pair",
    "all",
    "bore",
    "ate",
    "gave",
    "except",
    "since",
    "thing",
    "air",
    "back",
    "hunter",
    "caught",
    "both",
    "none",
    "empty",
]

SEXES: Final = frozenset({"male", "female"})
OF_A_KIND: Final = frozenset({"male", "female", "young"})
"""What is kept with the kind's name, since it tells how the animals are to be judged."""


def saying(word: str) -> str | None:
    """What a plain word says of animals beside it; None where it says nothing.

    Examples
    --------
    >>> saying("weibchen"), saying("fry"), saying("tetra")
    ('female', 'young', None)
    """
    return lexicon().herd.get(word)


def asking(word: str) -> frozenset[str]:
    """What a plain word asks or tells where a message is all about animals.

    Examples
    --------
    >>> sorted(asking("wo")), sorted(asking("needs")), sorted(asking("kh"))
    (['where'], ['need'], [])
    """
    return frozenset(lexicon().about.get(word, ()))


@lru_cache(maxsize=8)
def words_for(meaning: Saying) -> frozenset[str]:
    """All plain words that say so."""
    return frozenset(word for word, said in lexicon().herd.items() if said == meaning)


def young_as_said(word: str) -> str:
    """The word for young animals in the language of another word, as it is written.

    Examples
    --------
    >>> young_as_said("geboren"), young_as_said("nacieron")
    ('Jungtiere', 'crías')
    """
    held = lexicon()
    languages = held.languages.get(word, frozenset())
    return next((young for of, young in held.newborn.items() if of in languages), "young")
