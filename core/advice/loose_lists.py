"""Animals told in a sentence that introduces a tank: `2 fancy goldfish and an axolotl`.

Looser than `inhabitants.listed_in`, which a message alone must pass: here the sentence says that
they live there, so that words beside a known name (`8 scalari giovani`) and an article for one do
no harm.
"""

from __future__ import annotations

import re
from typing import Final

from core.advice._livestock_words import plain_name
from core.advice.inhabitants import Counted, is_animal, leads, listed_in, number_in
from core.advice.livestock import name_at
from core.message.fold import fold
from core.message.lexicon import meanings

ONE: Final = frozenset(
    "a an one ein eine einen einem un une una uno um uma en ett een jeden jedna jedno".split()  # noqa: SIM905
)
"""Articles that count one, in nine languages; folded."""

BESIDE: Final = 2
"""Words beside a name that may say more of the animals: young, fancy."""

_TIMES: Final = re.compile(r"\bx ?(\d{1,4})\b")
_APART: Final = re.compile(
    r"\s*(?:(?<!\d)[,.]|[,.](?!\d)|[;\n+])\s*|\s+(?:and|und|et|y|e|en|i|och|with|mit|avec|con|com|met|z|med|plus|also)\s+"
)


def animals_in(text: str) -> tuple[Counted, ...] | None:
    """The animals of a text with their numbers; None where it holds anything else.

    Examples
    --------
    >>> [(each.many, each.said) for each in animals_in("2 fancy goldfish and a betta")]
    [(2, 'fancy goldfish'), (1, 'betta')]
    >>> [each.many for each in animals_in("angelfish x4, 10 neons")], animals_in("kh 4")
    ([4, 10], None)
    """
    plain = _TIMES.sub(r"\1", fold(text)).strip(" ,;.!")
    if (listed := listed_in(plain)) is not None:
        return listed.kinds
    found = [counted(clause) for clause in clauses_of(plain)]
    kinds = tuple(each for each in found if each is not None)
    return kinds if kinds and len(kinds) == len(found) else None


def clauses_of(text: str) -> list[str]:
    """What stands between commas, full stops and words for "and"; no number is parted.

    Examples
    --------
    >>> clauses_of("2 clownfish and an eel, ph 7,5")
    ['2 clownfish', 'an eel', 'ph 7,5']
    """
    return [clause.strip() for clause in _APART.split(text) if clause.strip()]


def counted(clause: str) -> Counted | None:
    """One kind with its number, of which nothing but a name is known; None for other words."""
    words = plain_name(clause).split()
    while words and (words[-1] in ONE or (not words[-1].isdigit() and leads(words[-1]))):
        words.pop()  # 2 goldfish in a
    while words and words[0] not in ONE and number_in(words[0]) is None and leads(words[0]):
        words.pop(0)
    count = None
    if words and words[0] in ONE and (len(words) < 2 or number_in(words[1]) is None):
        count = 1
    elif words and words[0] in ONE:
        words.pop(0)  # et 6
    count = count or (number_in(words[0]) if words else None)
    rest = words[1:]
    if count is None:  # koi 6
        count, rest = (number_in(words[-1]) if words else None), words[:-1]
    for place in range(min(BESIDE, max(len(rest) - 1, 0)) + 1):
        size, kind = name_at(rest, place)
        beside = [*rest[:place], *rest[place + size :]]
        if size and is_animal(kind) and count is not None and _say_nothing(beside):
            return Counted(count, " ".join(rest[place : place + size]), kind)
    return None


def _say_nothing(words: list[str]) -> bool:
    """Whether words beside a name mean nothing that we know: young, fancy."""
    return len(words) <= BESIDE and not any(meanings(word) or word[0].isdigit() for word in words)
