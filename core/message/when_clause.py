"""``when i saw the ph``: a side clause of time, which asks nothing beside what is told."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.wordfile import patterns

_SECTIONS: Final = ("clause", "ask")


@cache
def _words() -> dict[str, re.Pattern[str]]:
    return patterns("when_clause.txt", _SECTIONS, {"clause"})


def only_tells(text: str) -> bool:
    """Whether what was read as a question of when only tells when it was.

    Examples
    --------
    >>> only_tells("when i saw the ph"), only_tells("when should i test ph")
    (True, False)
    >>> only_tells("when i should test ph"), only_tells("when i saw the ph?")
    (False, False)
    """
    plain = fold(text).replace("'", " ")
    return (
        "?" not in text
        and _words()["clause"].search(plain) is not None
        and _words()["ask"].search(plain) is None
    )
