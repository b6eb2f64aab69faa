"""Whether words name a tank by those who live in it: `the discus one`, `das mit den Diskus`."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Final

from core.message.fold import fold
from core.message.wordfile import patterns

if TYPE_CHECKING:
    import re

_FILE: Final = "place_by_kind.txt"


@cache
def _ways() -> dict[str, re.Pattern[str]]:
    return patterns(_FILE, {"led", "one", "by"}, {"led", "by"})


def is_place(text: str) -> bool:
    """Whether a text of animals is a word for the tank that they live in.

    Examples
    --------
    >>> is_place("in the discus one"), is_place("das mit den Diskus")
    (True, True)
    >>> is_place("the 6 neons"), is_place("one betta")
    (False, False)
    """
    plain = fold(text)
    ways = _ways()
    if ways["by"].search(plain):
        return True
    return bool(ways["led"].search(plain) and ways["one"].search(plain))
