"""A number that is all that is said: `4`, `its 4 now`, `i want like 5`, `mine is 40 ppm`."""

from __future__ import annotations

import re
from typing import Final, NamedTuple

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.numbers import Number
from core.message.tokens import Token, cut
from core.message.word_classes import said

LONGEST: Final = 30
"""A longer text says more than a number. [characters]"""
_LIGHT: Final = frozenset({"fill", "p"})
_IS: Final = frozenset({"link", "its", "was", "now"})
_NEARLY: Final = frozenset({"approx", "likes"})
_WISHED: Final = frozenset({"wish", "to", "rose_to", "if"})
_GOALS: Final = frozenset({"to", "rose_to"})
_RATHER: Final = frozenset({"no", "correct", "wait", "make"})
_OWN: Final = frozenset({"mine", "meins", "meiner", "meine"})
_WOULD: Final = frozenset({"id", "take", "nehmen", "prenons", "prends"})
_WORDS: Final = _OWN | _WOULD | {"hmm", "hm", "uh", "ill", "do", "go", "with"}
"""Words that say nothing of the number, nor are in the lexicon."""
_MOVES: Final = frozenset(
    "get bring raise lift push take it that this them back up down bringe bringen es ihn erhöhe"  # noqa: SIM905
    " erhohe erhohen heben monter monte amener le subir subirlo subelo lo portare portalo alzare"
    " aumentar subi-lo verhogen breng verhoog podnies podniesc hoj den det".split()
)
"""Words that move a value, and point at it: of a number behind `to` alone."""


class Lone(NamedTuple):
    """A number, its unit as typed ("" without one), and what the words around it say.

    `wished` that it shall be so, `rather` that it takes another's place, `stated` that it is so.
    """

    number: float
    unit: str = ""
    wished: bool = False
    rather: bool = False
    stated: bool = False


def lone_number(text: str) -> Lone | None:
    """The one number of a text that has no word for what it is of; None where it says more.

    Examples
    --------
    >>> lone_number("4").number, lone_number("it's 4,5 now").number, lone_number("kh 4")
    (4.0, 4.5, None)
    >>> lone_number("want 80 ppm").unit, lone_number("want 80").wished, lone_number("no 5").rather
    ('ppm', True, True)
    >>> lone_number("get it to 5").wished, lone_number("bring it up by 5")
    (True, None)
    >>> lone_number("ok lets do 4").wished, lone_number("ill take 4").number
    (True, 4.0)
    >>> lone_number("4?"), lone_number("4 or 5"), lone_number("-4"), lone_number("4 fish")
    (None, None, None, None)
    """
    if len(text) > LONGEST or "?" in text or "-" in text:
        return None
    tokens = cut(fold(text), lexicon(), text)
    numbers = [place for place, token in enumerate(tokens) if token.kind == "number"]
    if len(numbers) != 1:
        return None
    place = numbers[0]
    number = tokens[place].value
    unit = next((each for each in tokens[place + 1 : place + 2] if each.kind == "unit"), None)
    others = [each for each in tokens if each is not tokens[place] and each is not unit]
    assert isinstance(number, Number)  # noqa: S101 - narrows for the type checker
    if number.problem is not None or number.value is None:
        return None
    moved = any(each.value in _GOALS for each in others)
    if not all(_says_little(each) or (moved and each.text in _MOVES) for each in others):
        return None
    wished = any(each.value in _WISHED or each.text in _WOULD for each in others)
    rather = any(each.value in _RATHER for each in others)
    stated = not wished and any(each.value in _IS or each.text in _OWN for each in others)
    return Lone(number.value, "" if unit is None else unit.text, wished, rather, stated)


def warmed(text: str) -> tuple[str, str] | None:
    """What tells that hot or cold water went in, and how warm it is since; None where it says more.

    Examples
    --------
    >>> warmed("put hot water in, its 27 now"), warmed("added some cold water. now 24.5")
    (('put hot water in', '27'), ('added some cold water', '24.5'))
    >>> warmed("put hot water in"), warmed("put 3 fish in, its 27 now"), warmed("its 27 now")
    (None, None, None)
    """
    if "?" in text or len(text) > LONGEST_WARMED:
        return None
    for sign in _PARTS.finditer(text):
        deed, rest = text[: sign.start()].strip(), text[sign.end() :].strip()
        told = said(WARM_PUT, deed) if deed else None
        if told is None or not told.has("put", "warm") or told.has("not"):
            continue
        number = lone_number(rest.strip(" .!"))
        if number is not None and not (number.wished or number.rather):
            return deed, f"{number.number:g}{number.unit}"
    return None


WARM_PUT: Final = "warm_put.txt"
LONGEST_WARMED: Final = 90
"""A longer text says more than that. [characters]"""
_PARTS: Final = re.compile(
    r"(?<!\d)[,.](?!\d)|(?<=\d)[,.](?=\s)|[;\n]|\s(?:and|und|et|y|e|en|i|och)\s"
)


def _says_little(token: Token) -> bool:
    known = token.kind in _LIGHT or token.text in _WORDS
    return known or token.value in _IS | _NEARLY | _WISHED | _RATHER
