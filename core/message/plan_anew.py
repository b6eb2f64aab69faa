"""What went in, put right or told alone: `no, 8 g`, `9 g instead of 3`, `and 20 g epsom`."""

from __future__ import annotations

import re
from functools import cache
from typing import Final, NamedTuple

from core.message import beside_dose
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.plan_said import said_of_plan
from core.message.tokens import cut


def regrets(text: str) -> bool:
    """Whether all that a text says is of a plan, with a word of regret.

    Examples
    --------
    >>> regrets("oops 30 g"), regrets("30 g")
    (True, False)
    """
    said = said_of_plan(text)
    return said is not None and said.regrets


def weighed_anew(text: str) -> float | None:
    """The grams that were given in truth: `no, 8 g`, `i gave 8 g not 5.4`; None for other talk.

    A dose that is told without a word of regret is one more.

    Examples
    --------
    >>> weighed_anew("no i gave 11 g"), weighed_anew("it was 8 g, not 5.4")
    (11.0, 8.0)
    >>> weighed_anew("is 8 g ok"), weighed_anew("i put in 8 g")
    (None, None)
    """
    plain, instead = without_instead(text)
    said = said_of_plan(plain)
    if said is None or said.names or "?" in text or said.classes - _ANEW - {"inside"}:
        return None
    anew = instead or said.only or "no" in said.classes or "put" not in said.classes
    return said.amounts.grams if anew else None


def named_instead(text: str) -> tuple[float, str, float] | None:
    """So many grams of a substance in the place of others: `9 g baking soda instead of 3`.

    Examples
    --------
    >>> named_instead("9 g Natron statt 3 g"), named_instead("9 g baking soda")
    ((9.0, 'sodium bicarbonate', 3.0), None)
    """
    plain, instead = without_instead(text)
    other = _instead_of().search(" ".join(fold(text).split()).rstrip(".! "))
    said = said_of_plan(plain) if instead and "?" not in text else None
    named = {str(t.value) for t in cut(plain, lexicon(), plain) if t.kind == "substance"}
    if said is None or other is None or len(named) != 1 or said.classes - _ANEW - {"inside"}:
        return None
    grams, number = said.amounts.grams, other["last"] or other["first"]
    return None if grams is None else (grams, named.pop(), float(number.replace(",", ".")))


class Named(NamedTuple):
    """So many grams of a substance, told alone; whether they are said to put others right."""

    grams: float
    substance: str
    anew: bool


def named_alone(text: str) -> Named | None:
    """Grams of a substance that are all that is said: `oh and 20 g epsom salt`.

    Examples
    --------
    >>> named_alone("oh and 20 g epsom salt")
    Named(grams=20.0, substance='magnesium sulfate heptahydrate', anew=False)
    >>> named_alone("actually it was 30 g of baking soda").anew, named_alone("20 g soda?")
    (True, None)
    """
    said = None if "?" in text else said_of_plan(text)
    if said is None or said.asks or not said.names or said.classes - _ANEW - {"inside", "more"}:
        return None
    plain = fold(text)
    named = {str(t.value) for t in cut(plain, lexicon(), plain) if t.kind == "substance"}
    if said.amounts.grams is None or len(named) != 1:
        return None
    anew = said.regrets or bool(said.classes & {"no", "was"})
    return Named(said.amounts.grams, named.pop(), anew)


_ANEW: Final = frozenset({"put", "give", "no", "is", "was", "all"})


def without_instead(text: str) -> tuple[str, bool]:
    """A text, folded, without the amount that did not go in, and whether it had one.

    What went in is grams, where its number stands alone.

    Examples
    --------
    >>> without_instead("9 g statt 3 g"), without_instead("instead of 3 g i gave 9")
    (('9 g', True), ('i gave 9 g', True))
    >>> without_instead("9 g")
    ('9 g', False)
    """
    folded = " ".join(fold(text).split()).rstrip(".! ")
    plain, found = _instead_of().subn("", folded)
    if not found or not plain:
        return folded, False
    return _BARE.sub(r"\1 g", plain), True


_BARE: Final = re.compile(r"((?:^|(?<=[ ,]))\d{1,5}(?:[.,]\d{1,3})?)$")


@cache
def _instead_of() -> re.Pattern[str]:
    nots = r"(?:(?:and|et|y|e|en|i|och|und) )?(?:not|nicht|pas|no|nao|non|niet|nie|inte)"
    ways = f"{nots}|{beside_dose.instead()}"
    number, grams = r"\d{1,5}(?:[.,]\d{1,3})?", r"(?: ?g\w{0,5})?"
    return re.compile(
        rf"[ ,]+(?:{ways}) (?P<last>{number}){grams}$"
        rf"|^(?:{beside_dose.instead()}) (?P<first>{number}){grams}[, ]+"
    )
