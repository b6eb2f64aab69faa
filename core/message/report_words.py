"""The words of a water report, read once from ``reports.txt``."""

from __future__ import annotations

import re
from functools import cache
from importlib.resources import files

from core.message.waters import one_of
from core.message.wordfile import entries, spellings


@cache
def table() -> dict[str, dict[str, str]]:
    """Section → plain word → id.

    Raises
    ------
    ValueError
        If a line of the file has no ``=``.
    """
    found: dict[str, dict[str, str]] = {}
    text = (files("core.message") / "reports.txt").read_text(encoding="utf-8")
    for section, meaning, right in entries(text, "reports.txt"):
        # A number with a comma is one word: "ks 4,3".
        for word in re.split(r",(?!\d)", right):
            for spelt in spellings(word.strip()) - {""}:
                found.setdefault(section, {})[spelt] = meaning
    return found


@cache
def whole(section: str) -> re.Pattern[str]:
    """Any word of a section, standing whole."""
    return re.compile(rf"(?<![\w-])(?:{one_of(table()[section])})(?!\w)")


@cache
def headings() -> re.Pattern[str]:
    """Any word that says what a number is: limit, result, mean, low or high; a group each."""
    by_kind: dict[str, list[str]] = {"limit": list(table()["limit"])}
    for word, kind in table()["result"].items():
        by_kind.setdefault(kind, []).append(word)
    kinds = "|".join(f"(?P<{kind}>{one_of(words)})" for kind, words in by_kind.items())
    return re.compile(rf"(?<!\w)(?:{kinds})(?!\w)")


def heading(found: re.Match[str]) -> str:
    """Which of the headings a match of `headings` is."""
    return next(kind for kind, said in found.groupdict().items() if said is not None)


@cache
def beside_values() -> frozenset[str]:
    """Words of three letters and more that may stand beside a value."""
    said = [*table()["limit"], *table()["result"], *table()["none"], *table()["less"]]
    said += _UNITS.split()
    return frozenset(word for each in said for word in re.findall(r"[^\W\d_]{3,}", each))


_UNITS = (
    "mmol mval meq micro siemens grad degrees degree clark french german deutsche deutscher härte"
    " haerte dgh dkh caco calciumcarbonat hco ppm als comme como come jako som und and bis der die"
    " das the equivalent mgl ntu litre liter litro per pro par caco3 calcium carbonate degc french"
    " français francese franceses francuskie hardness"
)
