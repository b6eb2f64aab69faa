"""What is asked of another water right after a plan: a change instead, how much RO, salt top-up.

change = asking {word} "with" water_change     pure = "how much" {word} water     no number in any
"""

from __future__ import annotations

import re
from typing import Final

from core.message.fold import fold
from core.message.waters import mentioned, one_of, words

LONGEST: Final = 70
"""A longer text says more. [characters]"""

_CHANGE: Final = re.compile(
    r"\b(?:with|by|using|mit|durch|per|avec|par|con|com|met|via|przez|med|genom|hacer|fazer)"
    r"\s+(?:(?:an?|some|einem|einen|un|une|uno|uma|um|een|ett|en)\s+)?(?:water changes?"
    r"|wasserwechseln?|changements? d.eau|cambios? de agua|trocas? de agua|cambi[oa]? d.acqua"
    r"|waterwissels?|waterverversing|vattenbyten?)|\bpodmian[aey]? wody\b"
)
_ASKS: Final = re.compile(
    r"\?|\b(?:can|could|may|kann|geht|ginge|peux|puis-je|possible|puedo|podria|posso|potrei|kan"
    r"|mag|moge|mozna|czy|far|instead|stattdessen|kunde)\b"
)
_MUCH: Final = re.compile(
    r"\b(?:how much|how many lit\w+|wie ?viel|combien|cuant[oa]s?|quant[oaie]s?|hoeveel|ile"
    r"|hur mycket)\b"
)
_TOPPED: Final = re.compile(
    r"\b(?:top(?:ping)? (?:it |the tank )?up|auffull\w+|nachfull\w+|nachgiess\w+|complete|completer"
    r"|rajoute|relleno|rellenar|repongo|reponer|completar|repor|reponho|rabbocc\w+|bijvul\w*|dolej\w*"
    r"|dolewa\w*|dolac|uzupelni\w*|fyller? pa|fylla pa)\b"
)
_SUPPOSED: Final = re.compile(
    r"\?|\b(?:if|can|could|should|may|wenn|kann|darf|soll|si|puis-je|peux|dois-je|puedo|debo|se"
    r"|posso|devo|als|kan|mag|moet|jesli|czy|moge|om|kan|far|ska)\b"
)


def _plain(text: str) -> str:
    plain = fold(text)
    said = len(plain) <= LONGEST and not any(map(str.isdigit, plain))
    return plain if said else ""


def by_change(text: str) -> bool:
    """Whether it is asked if a water change would do it instead.

    Examples
    --------
    >>> by_change("can I do it with a water change instead"), by_change("should I change water")
    (True, False)
    """
    plain = _plain(text)
    return _CHANGE.search(plain) is not None and _ASKS.search(plain) is not None


def how_much_of(text: str) -> str | None:
    """The kind of the water of which it is asked how much is needed; None where none is.

    Examples
    --------
    >>> how_much_of("quanta acqua di osmosi devo usare"), how_much_of("how much water")
    ('ro', None)
    """
    plain = _plain(text)
    kinds = {kind for _, _, kind in mentioned(plain)}
    return kinds.pop() if len(kinds) == 1 and _MUCH.search(plain) is not None else None


def tops_up_salted(text: str) -> bool:
    """Whether it is asked about salt water in the place of what evaporated.

    Examples
    --------
    >>> tops_up_salted("what if I top up with salt water"), tops_up_salted("topped up with ro")
    (True, False)
    """
    plain = _plain(text)
    if not (_TOPPED.search(plain) and _SUPPOSED.search(plain)):
        return False
    return re.search(rf"\b(?:{one_of(words().salted)})\b", plain) is not None
