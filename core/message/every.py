"""What is told of every tank at once: `all tanks temp 24`, `changed 20% everywhere`, `all: fed`."""

from __future__ import annotations

import re
from functools import cache

from core.message.fold import fold
from core.message.waters import one_of, words


@cache
def _patterns() -> dict[str, re.Pattern[str]]:
    tanks = words().tanks
    before = rf"(?:(?<!\w)(?:{one_of(tanks['before'])})\s{{1,3}})?"
    return {
        "all": re.compile(rf"{before}(?<!\w)(?:{one_of(tanks['all'])})(?!\w)\s{{0,3}}:?"),
        "both": re.compile(rf"{before}(?<!\w)(?:{one_of(tanks['both'])})(?!\w)\s{{0,3}}:?"),
        "colon": re.compile(rf"^\s{{0,3}}(?:{one_of(tanks['colon'])})\s{{0,3}}:"),
    }


def told(text: str, tanks: int) -> str | None:
    """What a text tells of every tank, without the words for them; None where it names not all.

    Parameters
    ----------
    text : str
        As typed.
    tanks : int
        How many there are: `both` means all where there are two.

    Examples
    --------
    >>> told("changed 20% in all tanks", 3), told("all: kh 4", 3), told("all fish died", 3)
    ('changed 20% ', ' kh 4', None)
    """
    plain = fold(text)
    if len(plain) != len(text):
        return None  # a letter that folds to two: places in both differ
    for name, pattern in _patterns().items():
        if name == "both" and tanks != 2:
            continue
        found = pattern.search(plain)
        if found is not None:
            return text[: found.start()] + text[found.end() :]
    return None
