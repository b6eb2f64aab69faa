"""A deed of a plan beside values, or with a bare number: `kh 3.5 ok given`, `gave the 2.7`."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import pairwise
from typing import Final, NamedTuple

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.plan_words import Heard, telling
from core.message.tokens import cut

LONGEST: Final = 120
"""A longer text says more. [characters]"""

DEEDS: Final = frozenset({"gave_it", "gave_one", "gave_two", "gave_half", "gave_all"})

_EDGES: Final = " \t,;.:!-&+"
_NUMBER: Final = re.compile(r"(?<![\w.,])\d{1,5}(?:[.,]\d{1,3})?(?![\w.,%]|\s?%)")


class Beside(NamedTuple):
    """The values of a text, the deed that all its other words tell, and which of both is first."""

    values: str
    deed: str
    heard: Heard
    deed_first: bool = False


def beside_values(text: str) -> Beside | None:
    """The values of a text and the deed that stands before or behind them; else None.

    Examples
    --------
    >>> beside_values("kh 3.5 ok given")[:2], beside_values("gave it, kh is 4 now")[:2]
    (('kh 3.5', 'ok given'), ('kh is 4 now', 'gave it'))
    >>> beside_values("kh 3.5 ok"), beside_values("gave it"), beside_values("kh 4 given?")
    (None, None, None)
    """
    if "?" in text or len(text) > LONGEST or len(plain := fold(text)) != len(text):
        return None
    tokens = cut(plain, lexicon(), plain)
    named = [place for place, each in enumerate(tokens) if each.kind == "analyte"]
    if not named:
        return None
    start = tokens[named[0]].start
    if (heard := _deed(text[:start])) is not None:
        return Beside(text[start:].strip(_EDGES), text[:start].strip(_EDGES), heard, True)
    for before, token in pairwise(tokens):
        if before.kind in {"number", "unit"} and token.kind not in {"number", "unit"}:
            behind = text[token.start :].strip(_EDGES)
            if (heard := _deed(behind)) is not None:
                return Beside(text[: before.end].strip(_EDGES), behind, heard)
    return None


def _deed(text: str) -> Heard | None:
    heard = telling(text.strip(_EDGES))
    return heard if heard is not None and heard.meaning in DEEDS else None


def beside_deed(text: str) -> Iterator[Beside]:
    """A deed of a plan and what is told beside it, parted at a joint; each way to part it.

    Examples
    --------
    >>> [each[:2] for each in beside_deed("changed 20% and gave it")]
    [('changed 20%', 'gave it')]
    """
    if "?" in text or len(text) > LONGEST:
        return
    for joint in _JOINT.finditer(text):
        before, behind = text[: joint.start()].strip(_EDGES), text[joint.end() :].strip(_EDGES)
        if (heard := _deed(behind)) is not None:
            yield Beside(before, behind, heard)
        elif (heard := _deed(before)) is not None:
            yield Beside(behind, before, heard, True)


_JOINT: Final = re.compile(r"[,;&+]|\s(?:and|und|et|y|e|en|i|och|n)\s", re.IGNORECASE)


def tells_value(text: str) -> bool:
    """Whether a text has a number right behind the name of a value: `kh 3.5 no part given`.

    Examples
    --------
    >>> tells_value("kh 3.5 no part given"), tells_value("second part for kh given")
    (True, False)
    """
    plain = fold(text)
    tokens = cut(plain, lexicon(), plain)
    return any(name.kind == "analyte" and told.kind == "number" for name, told in pairwise(tokens))


def of_bare(text: str, unit: Callable[[float], str | None]) -> str | None:
    """A deed told with one bare number, or no more than that, given its unit; else None.

    Examples
    --------
    >>> of_bare("gave the 2.7", lambda number: "g" if number == 2.7 else None)
    'gave the 2.7 g'
    >>> of_bare("kh 2.7", lambda number: "g"), of_bare("gave 3", lambda number: None)
    (None, None)
    """
    plain = " ".join(fold(text).split()).strip(".!")
    found = [] if "?" in text or len(plain) > LONGEST else list(_NUMBER.finditer(plain))
    if len(found) != 1 or (said := unit(float(found[0].group().replace(",", ".")))) is None:
        return None
    if found[0].group() == plain:
        return f"{plain} {said}"
    weighed = f"{plain[: found[0].end()]} {said}{plain[found[0].end() :]}"
    heard: Heard | None = telling(weighed)
    return weighed if heard is not None and heard.meaning in DEEDS else None
