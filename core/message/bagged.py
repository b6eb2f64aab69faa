"""``a net bag of crushed coral``: a bag of what lies in the filter is no bag of animals."""

from __future__ import annotations

import re
from typing import Final

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.substances import MEDIA

_BAG: Final = re.compile(
    r"\b(?:(?:a|an|one|the|another|my|some|\d{1,2}|two|three|small|little|big|net|mesh|media|filter"
    r"|ein|eine|einen|der|den|die|kleinen?|un|une|petit|una|uno|um|uma|een|klein|kleine|en|liten"
    r") ){0,3}"
    r"(?:bags?|sacks?|pouch(?:es)?|stockings?|socks?|beutel|netz|sackchen|tuten?|netzbeutel"
    r"|sachets?|sacs?|filets?|bolsas?|bolsitas?|saquinhos?|sacos?|sacchett[oi]|retin[ae]|zakk?(?:je)?s?|netje"
    r"|worek|woreczek|pase|pasar|pasen|natpase) "
    r"(?:(?:of|with|mit|voll|de|d'|du|con|com|di|met|van|z|ze|med|av|full|the|my|new|fresh|some)"
    r" ?){0,3}"
)
_READ: Final = 30
"""Characters behind a bag in which what is in it begins."""


def without_bag(folded: str) -> str:
    """A folded text with blanks in the place of a bag that holds a medium; as long as before.

    Examples
    --------
    >>> without_bag("put a bag of crushed coral in the filter")
    'put          crushed coral in the filter'
    >>> without_bag("put a bag of shrimps in"), without_bag("bag ph 6.4, carbon is old")
    ('put a bag of shrimps in', 'bag ph 6.4, carbon is old')
    """
    for found in _BAG.finditer(folded):
        behind = folded[found.end() : found.end() + _READ]
        tokens = cut(behind, lexicon(), behind)
        if not tokens or tokens[0].kind != "substance" or tokens[0].value not in MEDIA:
            continue
        blank = " " * (found.end() - found.start())
        folded = f"{folded[: found.start()]}{blank}{folded[found.end() :]}"
    return folded


def is_of_medium(text: str) -> bool:
    """Whether a bag in a text holds a medium.

    Examples
    --------
    >>> is_of_medium("can i put a bag of peat in"), is_of_medium("can i put the bag of neons in")
    (True, False)
    """
    plain = fold(text)
    return without_bag(plain) != plain


def bag_water(text: str, *, is_spoken_of: bool) -> bool:
    """Whether a text is of the water in which animals came, in their bag.

    A bag of powder is none. With `is_spoken_of` a bag of animals was told of before, so that any
    other bag is that one.

    Examples
    --------
    >>> bag_water("can i buffer the bag water", is_spoken_of=False)
    True
    >>> bag_water("how much from the 1 kg bag of bicarb", is_spoken_of=True)
    False
    """
    plain = fold(text)
    if _OF_POWDER.search(plain) or not _OF_WATER.search(plain):
        return False
    return is_spoken_of or _THEIRS.search(plain) is not None


def raises_in_bag(text: str) -> bool:
    """Whether a text speaks of raising what the water reads, with or without the name of a salt.

    Examples
    --------
    >>> raises_in_bag("should i get bag ph up first"), raises_in_bag("is bag ph 6.2 bad")
    (True, False)
    """
    return _RAISES.search(fold(text)) is not None


_OF_WATER: Final = re.compile(
    r"\b(?:bags?|(?:transport)?(?:beutel|tuten?)|sachets?|sacs?|bolsas?|sacos?|sacchett[oi]|zak"
    r"|zakje|worek|woreczku|worku|pase|pasen)\b"
)
_OF_POWDER: Final = re.compile(
    r"\b(?:bags? (?:of|says|label)|(?:g|kg|lb|gram|kilo|net|mesh|filter|media|new|whole|entire"
    r"|half|from (?:the|my|a)) bags?|per bag|a bag|beutel (?:mit|voll)|kg beutel|sac de|saco de"
    r"|bolsa de|sacchetto di|zak met)\b"
)
_THEIRS: Final = re.compile(
    r"\b(?:bags? ?(?:water|ph|kh|s water|s ph)|(?:ph|kh|water) (?:in|of) (?:the|their|its) bag"
    r"|(?:fish|shrimps?|snails?|they|them|their)\b.{0,40}\bbag|beutelwasser|transportwasser"
    r"|wasser im beutel|eau du sac|agua de la bolsa|agua do saco|acqua del sacchetto)\b"
)
_RAISES: Final = re.compile(
    r"\b(?:raise|raising|buffer|buffering|bump|increase|higher|(?:get|bring|push|put|take|turn)\b"
    r".{0,24}\bup|match|adjust|anheben|erhohen|hochbringen|monter|remonter|subir|alzare|alzo"
    r"|verhogen|podniesc|hoja)\b"
)
