"""Names of animals laid bare: without accents, spaces, and the endings of plurals."""

from __future__ import annotations

from typing import Final, Literal

from core.message.fold import INVISIBLE, MARK, fold
from core.message.kinds import LIFE_STAGES

WORD_LONG_ENOUGH: Final = 4
"""A shorter word of a name ("red", "bee") does not tell what kind is meant. [letters]"""

Sex = Literal["male", "female"]

SEXES: Final[dict[Sex, frozenset[str]]] = {
    "male": frozenset(
        "male males boy boys mannchen mannlich mannliche mannlicher mannlichen maennchen"  # noqa: SIM905
        " maennliche males macho machos maschio maschi mannetje mannetjes mannelijke samiec samce"
        " samcow hane hanar hannar".split()
    ),
    "female": frozenset(
        "female females girl girls weibchen weiblich weibliche weiblicher weiblichen femelle"  # noqa: SIM905
        " femelles hembra hembras femea femeas femmina femmine vrouwtje vrouwtjes vrouwelijke"
        " samica samice samic hona honor".split()
    ),
}
"""Words for the sexes, without accents."""

_ENDINGS: Final = ("ies", "ow", "es", "en", "er", "ar", "or", "s", "n", "e", "i", "y", "x", "a")
"""Endings of plurals (and of the singulars beside them) in the nine languages; common grammar."""


def plain_name(text: str) -> str:
    """Small letters, no accents, one space for whatever parts the words."""
    folded = fold(text).replace(INVISIBLE, "").replace(MARK, "")
    kept = "".join(c if c.isalnum() else " " for c in folded.replace("'", ""))
    return " ".join(kept.split())


def joined(plain: str) -> str:
    """A name however it is parted into words: gold fish, goldfish."""
    return plain.replace(" ", "")


def stem(plain: str) -> str:
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


def grown(plain: str) -> str:
    """A plain name without the words for young animals: guppy fry → guppy."""
    return " ".join(word for word in plain.split() if word not in LIFE_STAGES)


def is_young(text: str) -> bool:
    """Whether a name speaks of young animals, which bear less."""
    return not LIFE_STAGES.isdisjoint(plain_name(text).split())


def sexes_in(text: str) -> frozenset[Sex]:
    """The sexes that a text speaks of.

    Examples
    --------
    >>> sexes_in("2 male bettas"), sexes_in("zwei Männchen") == {"male"}, sexes_in("2 bettas")
    (frozenset({'male'}), True, frozenset())
    """
    words = frozenset(plain_name(text).split())
    return frozenset(sex for sex, names in SEXES.items() if words & names)


def without_sex(text: str) -> str:
    """A text without the words for the sexes.

    Examples
    --------
    >>> without_sex("combattenti maschi")
    'combattenti'
    """
    words = text.split()
    return " ".join(w for w in words if not any(plain_name(w) in of for of in SEXES.values()))
