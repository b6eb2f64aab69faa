"""``all good?``, ``fish ok?``, ``is that high``: is all well, in words that name nothing."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.token import is_number
from core.message.tokens import cut
from core.message.wordfile import spelt

LONGEST: Final = 60
"""A longer text says more. [characters]"""
_MOST: Final = 14
"""Tokens of a question for a cause or a swing, at most."""
_SECTIONS: Final = ("alone", "marked", "lead", "tail", "blame", "swing", "fits", "whole")
_MARKS: Final = re.compile(r"[^\w]+")
_OF_SWING: Final = frozenset({"ph"})


@cache
def _words() -> dict[str, frozenset[str]]:
    ways: dict[str, set[str]] = {section: set() for section in _SECTIONS}
    for section, _language, found in spelt("well_asked.txt", ways):
        ways[section] |= {_plain(way) for way in found}
    return {section: frozenset(found) for section, found in ways.items()}


def _plain(text: str) -> str:
    return " ".join(_MARKS.sub(" ", fold(text)).split())


def asked(text: str) -> bool:
    """Whether a text asks nothing but whether all is well.

    Examples
    --------
    >>> asked("all good?"), asked("is that high"), asked("so fish ok now?"), asked("Alles gut?")
    (True, True, True, True)
    >>> asked("all good"), asked("fish ok"), asked("all good for 5 neons?"), asked("kh ok?")
    (False, False, False, False)
    """
    if len(text) > LONGEST:
        return False
    words = _words()
    ways = words["alone"] | words["marked"] if "?" in text else words["alone"]
    return any(said in ways for said in _without_ends(_plain(text), words))


def of_whole(text: str) -> bool:
    """Whether a question after a plan is of all that lives there, and not of the plan.

    Examples
    --------
    >>> of_whole("is everything fine"), of_whole("alles gut?"), of_whole("is that ok?")
    (True, True, False)
    """
    said = f" {_plain(text)} "
    return any(f" {word} " in said for word in _words()["whole"])


def _without_ends(plain: str, words: dict[str, frozenset[str]]) -> set[str]:
    """A text as it is, and without what may stand before and behind."""
    found = {plain}
    for lead in words["lead"]:
        found |= {said.removeprefix(f"{lead} ") for said in list(found)}
    for _twice in range(2):
        for tail in words["tail"]:
            found |= {said.removesuffix(f" {tail}") for said in list(found)}
    return found


def whom(text: str) -> str | None:
    """The words before what asks whether an animal is well in a water; None where none does.

    Examples
    --------
    >>> whom("pleco ok in this?"), whom("are my neon tetras ok in there"), whom("ok in this?")
    ('pleco', 'my neon tetras', None)
    """
    plain = _plain(text)
    if len(text) > LONGEST or any(char.isdigit() for char in plain):
        return None
    for way in _words()["fits"]:
        if plain.endswith(f" {way}"):
            rest = re.sub(
                r"^(?:is|are|will|would|czy|sind|ist|zijn|ar)\b", "", plain.removesuffix(way)
            )
            return rest.strip() or None
    return None


def blamed(text: str) -> bool:
    """Whether a short text without numbers asks if a value is the cause: ``is gh the problem?``.

    Examples
    --------
    >>> blamed("is gh the problem?"), blamed("ist KH schuld?"), blamed("is gh 4 the problem?")
    (True, True, False)
    """
    tokens = cut(fold(text), lexicon(), text, most=_MOST + 1)
    if len(tokens) > _MOST or any(is_number(token) for token in tokens):
        return False
    named = any(token.kind == "analyte" for token in tokens)
    return named and _says(text, "blame")


def swung(text: str) -> float | None:
    """By how much a pH is told to swing where that is asked about; else None.

    Examples
    --------
    >>> swung("is a swing of .4 bad"), swung("ph swings 0.6 a day?"), swung("gh swing of 2 bad?")
    (0.4, 0.6, None)
    """
    tokens = cut(fold(text), lexicon(), text, most=_MOST + 1)
    numbers = [token for token in tokens if is_number(token)]
    named = {str(token.value) for token in tokens if token.kind == "analyte"}
    if len(tokens) > _MOST or len(numbers) != 1 or not named <= _OF_SWING:
        return None
    if not _says(text, "swing"):
        return None
    try:
        by = float(numbers[0].text.replace(",", "."))
    except ValueError:
        return None
    return by if 0.0 < by <= 4.0 else None


def _says(text: str, section: str) -> bool:
    plain = f" {_plain(text)} "
    return any(f" {way} " in plain for way in _words()[section])
