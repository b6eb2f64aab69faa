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
    "long_unchanged",
    "snail_plague",
    "spawned",
)
"""Cautions that any message touches; the first of several is said."""
ASKED: Final = (
    "filter_tap",
    "filter_off",
    "carbonate",
    "zoanthids",
    "pressure",
    "co2_injection",
    "cylinder",
    "softened",
    "well",
    "copper_pipes",
    "mouth_siphon",
    "electric",
    "wounds",
    "storage",
    "salmonella",
    "evaporation",
    "weight",
    "pure_water",
)
"""Cautions that only a question touches, likewise."""

_DONE: Final = (
    ("copper_in", "medicine_in"),
    ("medicine", "medicine_in"),
    ("acid", "acid_in"),
    ("salted", "salt_in"),
    ("unknown", "unknown_in"),
    ("softened", "softened"),
)
"""What was put in, in words that make no deed on record → its caution, the worst first."""

TAP_NITRATE: Final = 44.0
"""10 mg/L as N: the US drinking limit, as in Camargo et al. 2005 (grade A). [mg/L NO3]"""


def touched(text: str, *, asked: bool = True) -> str | None:
    """Name the caution that a text touches; None where it touches none.

    Parameters
    ----------
    text : str
        The message as written.
    asked : bool, optional
        True for a question; what is only told touches the words of danger, and what
        they know as put into a tank.

    Examples
    --------
    >>> touched("can i use softened water?")
    'softened'
    """
    found = named(text)
    if said := found.get("caution", frozenset()):
        return next(name for name in SAID if name in said)
    if not asked:
        done = found.get("deed", frozenset())
        return next((name for kind, name in _DONE if kind in done), None)
    touches = found.get("asked", frozenset())
    return next((name for name in ASKED if name in touches), None)


def of_new_water(waters: Waters) -> tuple[str, ...]:
    """Name the cautions of a new water, from its readings."""
    source = waters.source
    found = []
    if waters.nitrate is not None and waters.nitrate[1] > TAP_NITRATE:
        found.append("tap_nitrate")
    if 0.0 < source.kh < 2.0 and source.gh > 0.5:
        found.append("copper_pipes")
    return tuple(found)
