"""Dangers that a question touches without asking for a dose: each is answered by its caution."""

from __future__ import annotations

import re
from typing import Final

from core.advice.alarm_words import named
from core.advice.changes import Waters

_TOUCHED: Final[tuple[tuple[str, str], ...]] = (
    ("zoanthids", r"zoanthid|palythoa|\bzoas?\b|palytoxin|\b(boil|scrub|scrap|microwav)\w*.*rock"),
    (
        "co2_injection",
        r"\bco2\b.*\b(night|overnight|inject\w*|acids?|vinegar)\b"
        r"|\b(inject\w*|acids?|vinegar|night)\b.*\bco2\b",
    ),
    ("pressure", r"\b(yeast|ferment\w*|diy co2)\b|\bseal\w*\b.*\b(bottle|jar|vessel)\b"),
    ("cylinder", r"co2 (cylinder|bottle|tank|gas)|cylinder.*co2|pressuri[sz]ed co2"),
    ("softened", r"\bsoftened\b|water softener|softener"),
    ("well", r"\bwell ?water\b|\bborehole\b|\bfrom (a|the|my|our) well\b"),
    ("copper_pipes", r"\bcopper\b.*\b(pipe|plumb|boiler)|\b(pipe|plumb)\w*\b.*\bcopper\b"),
    ("mouth_siphon", r"\bsiphon\b.*\bmouth\b|\bmouth\b.*\bsiphon\b|\bsuck\w*\b.*\b(hose|siphon)\b"),
    ("electric", r"\b(electric|shock|socket|plug|wire|extension|drip loop|rcd|gfci)\b"),
    ("wounds", r"\b(cut|wound|scratch|sore)\b.*\b(hand|finger|arm|skin|tank|water)\b"),
    ("salmonella", r"salmonella|\b(kitchen|sink)\b|\bwash\b.*\bhands\b"),
    ("evaporation", r"\bevaporat|\btop ?up (with|water)|\btopping up\b"),
    ("weight", r"\bhow heavy\b|\bfloor\b.*\b(hold|bear|load|weight)\b|\bweight of\b"),
    ("storage", r"\b(store|keep|storage)\b.*\b(salt|soda|powder|chemical|reagent|acid)"),
    ("pure_water", r"\b(pure|only|just|100 ?%) (ro|rain|distilled)\b|\bfill\b.*\b(ro|distilled)\b"),
)

SAID: Final = (
    "no_dechlorinator",
    "chlorine_smell",
    "hands",
    "dead_fish",
    "eaten_by_pet",
    "pressure",
    "evaporation",
)
"""Cautions that the words of danger know, in nine languages; the first of several is said."""

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

SOFTENED_LACKS: Final = 3.0
"""KH over GH by so much, with hardly any GH, looks like a softener; common practice. [°dH]"""


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
    said = named(text).get("caution", frozenset())
    if said:
        return next(name for name in SAID if name in said)
    if not asked:
        done = named(text).get("deed", frozenset())
        return next((name for kind, name in _DONE if kind in done), None)
    known = named(text).get("asked", frozenset())
    folded = text.casefold()
    for name, pattern in _TOUCHED:
        if name in known or re.search(pattern, folded):
            return name
    return None


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
