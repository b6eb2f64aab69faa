"""Dangers that a question touches without asking for a dose: each is answered by its caution.

Their words stand in ``core/message/words/danger``, in nine languages.
"""

from __future__ import annotations

from typing import Final

from core.advice.alarm_words import named
from core.advice.changes import Waters

SAID: Final = (
    "no_dechlorinator",
    "chlorine_smell",
    "hands",
    "dead_fish",
    "eaten_by_pet",
    "pressure",
    "evaporation",
)
"""Cautions that any message touches; the first of several is said."""
ASKED: Final = (
    "zoanthids",
    "co2_injection",
    "pressure",
    "cylinder",
    "softened",
    "well",
    "copper_pipes",
    "mouth_siphon",
    "electric",
    "wounds",
    "salmonella",
    "evaporation",
    "weight",
    "storage",
    "pure_water",
)
"""Cautions that only a question touches, likewise."""

TAP_NITRATE: Final = 44.0
"""10 mg/L as N: the US drinking limit, as in Camargo et al. 2005 (grade A). [mg/L NO3]"""

SOFTENED_LACKS: Final = 3.0
"""KH over GH by so much, with hardly any GH, looks like a softener; common practice. [°dH]"""


def touched(text: str, *, asked: bool = True) -> str | None:
    """Name the caution that a text touches; None where it touches none.

    Parameters
    ----------
    text : str
        The message as written.
    asked : bool, optional
        True for a question; what is only told touches no more than the words of danger do.

    Examples
    --------
    >>> touched("can i use softened water?")
    'softened'
    """
    found = named(text)
    said = found.get("caution", frozenset())
    if said or not asked:
        return next((name for name in SAID if name in said), None)
    touches = found.get("asked", frozenset())
    return next((name for name in ASKED if name in touches), None)


def of_new_water(waters: Waters) -> tuple[str, ...]:
    """Name the cautions of a new water, from its readings."""
    source = waters.source
    found = []
    if waters.nitrate is not None and waters.nitrate[1] > TAP_NITRATE:
        found.append("tap_nitrate")
    if source.gh < 1.5 and source.kh - source.gh > SOFTENED_LACKS:
        found.append("softened")
    if 0.0 < source.kh < 2.0 and source.gh > 0.5:
        found.append("copper_pipes")
    return tuple(found)
