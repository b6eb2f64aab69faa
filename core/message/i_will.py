"""``ill change 20 l tomorrow``: "ill" that is typed for "i'll" tells of no illness."""

from __future__ import annotations

import re
from functools import cache

from core.message.waters import one_of
from core.message.wordfile import spelt


@cache
def _ill() -> re.Pattern[str]:
    told = {meaning: ways for _section, meaning, ways in spelt("i_will.txt", {"word"})}
    before, verb, asks = (one_of(told[name]) for name in ("before", "verb", "asks"))
    return re.compile(
        rf"(^ *|[.!?,;:\n] *|\b(?:{before}) +|\b\d+ *(?:ppm|mg/l|%)? +)ill"
        rf"(?= +(?:{verb})\b(?! +(?:{asks})\b))"
    )


def spelt_out(plain: str) -> str:
    """A folded text with "i'll" where it has "ill" for it.

    Examples
    --------
    >>> spelt_out("ill change 20l tomorrow"), spelt_out("ok ill test later")
    ("i'll change 20l tomorrow", "ok i'll test later")
    >>> spelt_out("if it hits nitrate 50 ill change")
    "if it hits nitrate 50 i'll change"
    >>> spelt_out("my fish is ill do i change water"), spelt_out("ill fish")
    ('my fish is ill do i change water', 'ill fish')
    """
    return _ill().sub(r"\1i'll", plain)
