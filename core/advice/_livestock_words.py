"""Names of animals laid bare: without accents, spaces, and the endings of plurals."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final, Literal, NamedTuple

from core.message import herd
from core.message.fold import INVISIBLE, MARK, fold

WORD_LONG_ENOUGH: Final = 4
"""A shorter word of a name ("red", "bee") does not tell what kind is meant. [letters]"""

Sex = Literal["male", "female"]
BOTH: Final[tuple[Sex, Sex]] = ("male", "female")

_ENDINGS: Final = (
    "ami",
    "iem",
    "ies",
    "ow",
    "es",
    "en",
    "er",
    "ar",
    "or",
    "s",
    "n",
    "e",
    "i",
    "y",
    "x",
    "a",
)
"""Endings of plurals (and of the singulars beside them) in the nine languages; common grammar.

The first two are of Polish behind `z`: z gupikami, z bojownikiem.
"""

_PARTING: Final = re.compile(r"[\W_]+")
"""What stands between words: all but letters and figures."""


def plain_name(text: str) -> str:
    """Small letters, no accents, one space for whatever parts the words."""
    folded = fold(text).replace(INVISIBLE, "").replace(MARK, "")
    return _PARTING.sub(" ", folded.replace("'", "")).strip()


def joined(plain: str) -> str:
    """A name however it is parted into words: gold fish, goldfish."""
    return plain.replace(" ", "")


def stem(plain: str) -> str:
    """A name without the endings of its words' plurals, however it is parted into words."""
    return "".join(_stem_of_word(word) for word in plain.split())


@lru_cache(maxsize=4096)  # the words of messages come again
def _stem_of_word(word: str) -> str:
    """A word without its endings, so that singular and plural meet: tetra, tetras → tetr."""
    while True:
        for ending in _ENDINGS:
            if word.endswith(ending) and len(word) - len(ending) >= 3:
                word = word.removesuffix(ending)
                break
        else:
            return word


def kind_alone(plain: str) -> str:
    """A plain name without the words for young, males and females: guppy fry → guppy."""
    return " ".join(word for word in plain.split() if herd.saying(word) not in herd.OF_A_KIND)


def is_young(text: str) -> bool:
    """Whether a name speaks of young animals, which bear less."""
    return any(herd.saying(word) == "young" for word in plain_name(text).split())


def sexes_in(text: str) -> frozenset[Sex]:
    """The sexes that a text speaks of.

    Examples
    --------
    >>> sexes_in("2 male bettas"), sexes_in("zwei Männchen") == {"male"}, sexes_in("2 bettas")
    (frozenset({'male'}), True, frozenset())
    """
    said = {herd.saying(word) for word in plain_name(text).split()}
    return frozenset(sex for sex in BOTH if sex in said)


class Sexes(NamedTuple):
    """How many animals of a kind were told to be of which sex; of the rest nobody told."""

    male: int = 0
    female: int = 0


def sexed(count: int, sexes: frozenset[Sex]) -> Sexes:
    """How many of which sex so many animals are, by the sexes that were spoken of.

    Examples
    --------
    >>> sexed(3, frozenset({"female"})), sexed(2, frozenset({"male", "female"}))
    (Sexes(male=0, female=3), Sexes(male=1, female=1))
    >>> sexed(4, frozenset({"male", "female"}))
    Sexes(male=0, female=0)
    """
    if len(sexes) == 2:
        return Sexes(1, 1) if count == 2 else Sexes()
    return Sexes(count * ("male" in sexes), count * ("female" in sexes))


def sex_of(name: str) -> Sex | None:
    """The one sex that a name of animals tells; None where it tells none, or both."""
    told = sexes_in(name)
    return next(iter(told)) if len(told) == 1 else None


def without_sex(text: str) -> str:
    """A text without the words for the sexes, and without brackets that held nothing else.

    Examples
    --------
    >>> without_sex("combattenti maschi"), without_sex("guppies (females)")
    ('combattenti', 'guppies')
    """
    return " ".join(w for w in text.split() if herd.saying(plain_name(w)) not in herd.SEXES)
