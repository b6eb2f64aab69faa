"""A value that is wished higher or lower in a sentence without a verb for it: `need calcium up`.

wish = wish-word name ( up | down ) [ [ "by" ] number [ unit ] ] in any order
"""

from __future__ import annotations

from typing import Final

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import Token, cut

LONGEST: Final = 60
"""A longer text says more than a wish. [characters]"""

_SMALL: Final = frozenset({"fill", "p"})
_BESIDE: Final = frozenset({"wish", "up", "down", "by", "to", "at", "link", "reach", "home"})
_GO: Final = frozenset({"go", "come", "gehen", "rauf", "runter", "be", "sein"})


def wish_moved(text: str) -> str | None:
    """The order that such a wish is, to be read in its place; None where it says anything else.

    Examples
    --------
    >>> wish_moved("need calcium up"), wish_moved("i want kh up by 2"), wish_moved("kh muss hoch")
    ('raise calcium', 'raise kh by 2', 'raise kh')
    >>> wish_moved("kh needs to come down"), wish_moved("kh went up by 2"), wish_moved("kh up")
    ('lower kh', None, None)
    """
    if len(text) > LONGEST:
        return None
    tokens = [each for each in cut(fold(text), lexicon(), text) if each.kind not in _SMALL]
    names = [each for each in tokens if each.kind == "analyte"]
    ways = {str(each.value) for each in tokens if each.value in {"up", "down"}}
    wished = any(each.value == "wish" for each in tokens)
    if len(names) != 1 or len(ways) != 1 or not wished or not all(map(_fits, tokens)):
        return None
    numbers = [place for place, each in enumerate(tokens) if each.kind == "number"]
    verb = "raise" if ways == {"up"} else "lower"
    order = f"{verb} {names[0].text}"
    if not numbers:
        return order
    (place, *others) = numbers
    by = tokens[place - 1].text.split()[-1:] != ["to"] if place else True
    if others or not by:
        return None  # up to 6: where it shall end
    unit = (
        tokens[place + 1].text if tokens[place + 1 :] and tokens[place + 1].kind == "unit" else ""
    )
    return f"{order} by {tokens[place].text} {unit}".strip()


def _fits(token: Token) -> bool:
    return (
        token.kind in {"analyte", "number", "unit"} or token.value in _BESIDE or token.text in _GO
    )
