"""A dose that is told and a question right behind it: `put in 60 g soda what happens now`.

deed_asked = event with a weighed thing [ "," ] opener { word }

The thing's name ends at the word that opens the question. What only might be done (`if i put in`)
is no deed, and all of it is asked.
"""

from __future__ import annotations

import re
from functools import cache
from importlib.resources import files
from typing import Final

from core.message import bought
from core.message.amounts import GRAMS, SPOONS
from core.message.deeds import INTO
from core.message.fold import fold
from core.message.tokens import Token
from core.message.wordfile import alternatives, entries

_PUT_IN: Final = frozenset({"dose", "added"})
WEIGHED: Final = frozenset({*GRAMS, *SPOONS, "mL"})
_OPENING: Final = frozenset({"may", "does", "whether"})
_UNSURE: Final = frozenset({"if", "wish", "not", "may", "does", "whether"})
_ENDS: Final = frozenset({".", "!", "?", ";"})
_MOST: Final = 4
"""Words that are looked at of an opener, the longest has as many."""


@cache
def _words() -> dict[str, frozenset[str]]:
    """The openers and the whole questions, as they are compared.

    Raises
    ------
    ValueError
        If a line has no ``=`` or stands in no section.
    """
    text = (files("core.message") / "deed_asked.txt").read_text(encoding="utf-8")
    found: dict[str, set[str]] = {"opener": set(), "happens": set()}
    for section, _language, right in entries(text, "deed_asked.txt", found):
        found[section] |= {_plain(way) for way in alternatives(right)}
    return {section: frozenset(ways) for section, ways in found.items()}


@cache
def _first_words() -> frozenset[str]:
    """The words that openers begin with, so that most tokens need no closer look."""
    return frozenset(opener.split()[0] for opener in _words()["opener"])


def _plain(text: str) -> str:
    return " ".join(re.findall(r"\w+", fold(text)))


def what_happens(text: str) -> bool:
    """Whether a text asks nothing but what the dose did.

    Examples
    --------
    >>> what_happens("What happens now?"), what_happens("was passiert"), what_happens("what now")
    (True, True, False)
    """
    return _plain(text) in _words()["happens"]


def opens(tokens: list[Token], place: int) -> bool:
    """Whether a question begins at a token."""
    token = tokens[place]
    if token.kind == "ask" or (token.kind == "mark" and token.value in _OPENING):
        return True
    if token.text.split(" ", 1)[0] not in _first_words():
        return False
    ahead = _plain(" ".join(each.text for each in tokens[place : place + _MOST])).split()
    return any(" ".join(ahead[:n]) in _words()["opener"] for n in range(1, _MOST + 1))


def begins_as_question(text: str) -> bool:
    """Whether a text begins with words that open a question behind a dose.

    Examples
    --------
    >>> begins_as_question("did I put it in"), begins_as_question("I put it in")
    (True, False)
    """
    ahead = _plain(text).split()[:_MOST]
    return any(" ".join(ahead[:n]) in _words()["opener"] for n in range(1, _MOST + 1))


def behind(tokens: list[Token]) -> int | None:
    """The place of the question behind a dose that was told; None where there is none."""
    for index, token in enumerate(tokens):
        if not _puts_in(token):
            continue
        first = index
        while first and tokens[first - 1].kind != "nl" and tokens[first - 1].text not in _ENDS:
            first -= 1
        if any(each.kind == "ask" or each.value in _UNSURE for each in tokens[first:index]):
            return None
        for place in range(index + 1, len(tokens)):
            if tokens[place].kind == "nl" or tokens[place].text in _ENDS:
                break
            if opens(tokens, place) and is_whole(tokens[first:place]):
                return place
    return None


def _puts_in(token: Token) -> bool:
    """Whether a word tells a dose, by itself or beside so much of a substance."""
    if token.kind == "event":
        return token.value in _PUT_IN
    return token.text in INTO or bought.is_word("give", token.text)


def is_whole(tokens: list[Token]) -> bool:
    """Whether an amount and a thing stand there: what follows belongs to no name any more."""
    weighed = any(token.kind == "unit" and token.value in WEIGHED for token in tokens)
    return weighed and any(token.kind in {"substance", "word", "several"} for token in tokens)
