"""``wait i used an expired kit``: the keeper doubts the own last test.

disowned = kit fault | fault kit | misdone, and nothing but light words beside it

The words stand in ``disowned.txt``. What asks, denies or supposes it says nothing of a test.
"""

from __future__ import annotations

import re
from typing import Final

from core.message.word_classes import said

_ASKS: Final = re.compile(
    r"^\W*(?:is|are|does|do|did|can|could|should|would|will|what|how|which|when|ist|sind|est|son|"
    r"czy|är|zijn|sono|são)\b",
    re.IGNORECASE,
)


def disowned(text: str) -> bool:
    """Whether a text says nothing but that the last test is not to be trusted.

    Examples
    --------
    >>> disowned("wait i used expired kit"), disowned("forgot to shake the bottle")
    (True, True)
    >>> disowned("is my kit expired?"), disowned("kit expires in may"), disowned("the test is off?")
    (False, False, False)
    """
    if "?" in text or _ASKS.match(text):
        return False
    told = said("disowned.txt", text, small=True)
    if told is None or told.has("never") or told.numbers:
        return False
    return told.has("misdone") or told.has("kit", "fault")
