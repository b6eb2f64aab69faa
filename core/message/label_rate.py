"""What a bottle says to give, without what it does: `my fert bottle says 5 ml per 50 l daily`.

rate = name says amount "per" volume [ "daily" | "weekly" ]     behind it stands nothing else
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Final, Literal

from core.message.fold import fold
from core.message.waters import one_of
from core.message.wordfile import spelt

LONGEST: Final = 90
"""A longer text says more. [characters]"""


@dataclass(frozen=True, slots=True)
class Rate:
    """So much of a product for so much water.

    Attributes
    ----------
    name : str
        What stands before it, as typed.
    amount : float
        In its unit.
    unit : "ml" or "g"
    litres : float
        [L]
    often : "daily", "weekly" or None
        How often, where that is told.
    """

    name: str
    amount: float
    unit: Literal["ml", "g"]
    litres: float
    often: Literal["daily", "weekly"] | None = None


@cache
def _pattern() -> re.Pattern[str]:
    ways: dict[str, list[str]] = {"says": [], "daily": [], "weekly": []}
    for _section, meaning, told in spelt("label_rate.txt", {"word"}):
        ways[meaning] += told
    says, daily, weekly = (one_of(told) for told in ways.values())
    number = r"\d{1,4}(?:[.,]\d{1,3})?"
    return re.compile(
        rf"(?P<name>[^\d:]{{2,50}}?)\s+(?:{says})\s*:?\s+(?P<amount>{number})\s?(?P<unit>ml|mls|g)"
        rf"\s+(?:per|for|each|je|pro|auf|fur|pour|par|por|para|cada|ogni|na|voor|till|a)\s+"
        rf"(?P<litres>{number})\s?(?P<volume>l|liters?|litres?|litros|litri|litrow|gal|gallons?)"
        rf"(?:[\s,]+(?:(?P<daily>{daily})|(?P<weekly>{weekly})))?\W*"
    )


def label_rate(text: str, *, litres_a_gallon: float) -> Rate | None:
    """What a label is said to give; None where it is not that alone.

    Examples
    --------
    >>> label_rate("my fert bottle says 5 ml per 50 l daily", litres_a_gallon=3.785)
    Rate(name='my fert', amount=5.0, unit='ml', litres=50.0, often='daily')
    >>> label_rate("it says 5 ml per 50 l raises kh 1", litres_a_gallon=3.785) is None
    True
    >>> label_rate("the vet says 5 ml", litres_a_gallon=3.785) is None
    True
    """
    plain = fold(text).strip()
    found = _pattern().fullmatch(plain) if len(plain) <= LONGEST and "?" not in plain else None
    if found is None:
        return None
    amount, volume = (float(found[name].replace(",", ".")) for name in ("amount", "litres"))
    litres = volume * (litres_a_gallon if found["volume"].startswith("gal") else 1.0)
    if amount <= 0.0 or litres <= 0.0:
        return None
    often: Literal["daily", "weekly"] | None = None
    if found["daily"] or found["weekly"]:
        often = "daily" if found["daily"] else "weekly"
    unit: Literal["ml", "g"] = "g" if found["unit"] == "g" else "ml"
    return Rate(found["name"].strip(), amount, unit, litres, often)
