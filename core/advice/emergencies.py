"""Calls for help: which danger a message names, and what the tank's readings add to it."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final, Literal

from core.advice.ammonia_gate import gate_limit, upper_total
from core.advice.outlook import temperature_of
from core.advice.state import State
from core.water import un_ionised_fraction

Danger = Literal[
    "swallowed",
    "gasping",
    "ammonia",
    "nitrite",
    "ph_crash",
    "chlorine",
    "overdose",
    "heater",
    "power",
    "general",
]

_CALLS: Final[tuple[tuple[Danger, str], ...]] = (
    (
        "swallowed",
        r"\b(drank|drunk|swallow(ed)?|ate|eaten|licked)\b.*\b(it|water|salt|powder|tablet|drops?|"
        r"reagent|kit|chemical)s?\b|\b(child|kid|baby|toddler|son|daughter|dog|cat)\b.*"
        r"\b(drank|swallow(ed)?|ate|eaten)\b|\b(reagent|kit|acid|powder|solution) in"
        r" (my|the|his|her) (eye|eyes|mouth)\b",
    ),
    (
        "gasping",
        r"\bgasp(ing|s)?\b|\bgulping\b|\b(hang|hanging|breathing|panting)\b.*\b(surface|top)\b"
        r"|\bsuffocat",
    ),
    ("ph_crash", r"\bph\b.*\b(crash(ed|ing)?|dropped like|plummet|collapsed)\b|\bph crash"),
    (
        "overdose",
        r"\boverdos(e|ed|ing)\b|\bdouble dosed\b|\bdosed (way |far )?too much\b"
        r"|\btoo much (soda|buffer|salt|fertili[sz]er|medicine|chemical|product|dechlorinator)",
    ),
    (
        "chlorine",
        r"\bforgot\b.*\b(dechlorinat|conditioner)|\b(no|without) (dechlorinator|conditioner)\b"
        r"|\b(untreated|raw) tap\b|\bchlorine\b.*\b(in the tank|help|emergency)\b"
        r"|\b(help|emergency|urgent)\b.*\bchlor(ine|amine)",
    ),
    (
        "heater",
        r"\bheater\b.*\b(stuck|broke|broken|fail(ed)?|died|cook|on full|won'?t (turn|switch) off)"
        r"|\b(tank|water) (is |got )?(too hot|boiling|overheat(ed|ing)?)\b",
    ),
    (
        "power",
        r"\bpower\b.*\b(cut|out|outage|failure|gone|off)\b|\bblackout\b|\bno (power|electricity)\b"
        r"|\belectricity (is )?(out|off|gone)\b",
    ),
    (
        "ammonia",
        r"\b(help|emergency|urgent|sos)\b.*\bammonia\b"
        r"|\bammonia (spike|burn|poisoning|emergency)\b",
    ),
    ("nitrite", r"\b(help|emergency|urgent|sos)\b.*\bnitrite\b|\bnitrite (spike|poisoning)\b"),
    (
        "general",
        r"\b(my |the )?(fish|shrimps?|snails?|corals?|they|all|everything)\b.*\b(is|are) dying\b"
        r"|^\W*(emergency|sos)\W*$",
    ),
)

AIRING_BELOW_PH: Final = 7.5
"""Under it driving carbon dioxide off would free ammonia: computed with PHREEQC in the limits."""


@dataclass(frozen=True, slots=True)
class Help:
    """A danger and what is known of the tank: a fresh pH, total and un-ionised ammonia."""

    danger: Danger
    ph: float | None = None
    total_n: float | None = None
    nh3_n: float | None = None
    over_gate: bool = False

    @property
    def no_air(self) -> bool:
        """True where extra air would make it worse: ammonia at a low or unknown pH."""
        return self.ph is None or self.ph < AIRING_BELOW_PH


def recognise(text: str) -> Danger | None:
    """Name the danger that a call for help is about; None where it is none.

    Examples
    --------
    >>> recognise("help ammonia"), recognise("my fish are gasping!"), recognise("kh 4")
    ('ammonia', 'gasping', None)
    """
    folded = text.casefold()
    for danger, pattern in _CALLS:
        if re.search(pattern, folded):
            return danger
    return None


def help_for(danger: Danger, state: State | None) -> Help:
    """Join a danger with what the tank's fresh readings say."""
    if state is None:
        return Help(danger)
    reading, total = state.fresh("ph"), upper_total(state)
    ph = None if reading is None else reading.value
    if ph is None or total is None or total == float("inf"):
        return Help(danger, ph, None if total == float("inf") else total)
    warm, _ = temperature_of(state)
    nh3_n = total * un_ionised_fraction(min(max(ph, 2.0), 12.0), warm, state.salinity)
    return Help(danger, ph, total, nh3_n, over_gate=nh3_n > gate_limit(state))
