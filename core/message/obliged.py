"""What is still to be done, not told as done: ``need to change 20 l``, ``muss 3 g reintun``.

obliged = { word } must [ not was ] { word }

The words stand in ``obliged.txt``.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.wordfile import patterns

_SECTIONS: Final = ("must", "was", "missed")


@cache
def _words() -> dict[str, re.Pattern[str]]:
    return patterns("obliged.txt", _SECTIONS, opening=("was",))


def is_obliged(text: str) -> bool:
    """Whether a text tells what is to be done, so that it tells no deed.

    Examples
    --------
    >>> is_obliged("need to change 20 l"), is_obliged("muss 20 l wechseln")
    (True, True)
    >>> is_obliged("had to change 20 l"), is_obliged("must have put in 3 g")
    (False, False)
    >>> is_obliged("i should have changed 30%")
    True
    """
    plain = fold(text)
    found = _words()["must"].search(plain)
    if found is None or plain[: found.start()].rstrip().endswith("had"):
        return False  # had time to change 20 l
    if _words()["missed"].fullmatch(found.group().strip()) is not None:
        return True  # what should have been done was not
    return _words()["was"].match(plain[found.end() :]) is None
