"""A reading that is of water just made by a recipe: `ok mixed it, measured gh 6 kh 3`."""

from __future__ import annotations

import re
from functools import cache

from core.message.fold import fold
from core.message.waters import one_of
from core.message.wordfile import spelt


@cache
def _words() -> re.Pattern[str]:
    told = spelt("mix_measured.txt", {"mix"})
    return re.compile(rf"(?<!\w)(?:{one_of(way for _s, _l, ways in told for way in ways)})(?!\w)")


def of_mix(text: str) -> bool:
    """Whether a text tells of water that was mixed.

    Examples
    --------
    >>> of_mix("ok mixed it, gh 6"), of_mix("angerührt: gh 6"), of_mix("gh 6")
    (True, True, False)
    """
    return _words().search(fold(text)) is not None
