"""What is told beside a deed of a plan: that no test was made (`second dose in, forgot to test`).

untested = deed [ joint ] no_test | no_test [ joint ] deed
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.waters import one_of
from core.message.wordfile import spelt

LONGEST: Final = 90
"""A longer text says more. [characters]"""

_EDGES: Final = " \t\n.!,;:-…"


@cache
def _ways() -> tuple[re.Pattern[str], re.Pattern[str]]:
    """That no test was made, behind the deed and before it."""
    told: dict[str, list[str]] = {"untested": [], "joint": []}
    for section, _language, ways in spelt("untested.txt", told):
        told[section] += ways
    test, joint = one_of(told["untested"]), one_of(told["joint"])
    return (
        re.compile(rf"[\s,;.:!-]+(?:(?:{joint})[\s,]+)?(?:{test})$"),
        re.compile(rf"(?:{test})[\s,;.:!-]+(?:(?:{joint})[\s,]+)?(?=\S)"),
    )


def deed_untested(text: str) -> str | None:
    """What is told to be done where it is told as well that no test was made; else None.

    Examples
    --------
    >>> deed_untested("second dose in, forgot to test"), deed_untested("2nd one in didnt test")
    ('second dose in', '2nd one in')
    >>> deed_untested("nicht gemessen aber zweiter Teil drin"), deed_untested("forgot to test")
    ('zweiter Teil drin', None)
    >>> deed_untested("second dose in, forgot to test?"), deed_untested("second dose in")
    (None, None)
    """
    plain = fold(text).replace("’", "'").strip(_EDGES)
    if "?" in text or len(text) > LONGEST or len(plain) != len(text.strip(_EDGES)):
        return None
    said = text.strip(_EDGES)
    behind, before = _ways()
    if (found := behind.search(plain)) is not None:
        return said[: found.start()].strip(_EDGES) or None
    opened = before.match(plain)
    return None if opened is None else said[opened.end() :]
