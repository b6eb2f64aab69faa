"""``safe nitrite level``, ``is ph 9 too high``: limits asked for, numbers judged for no tank."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from typing import Final

from bot.chat.words import levels as words
from bot.chat.words.glossary import explained
from core.advice import limits
from core.advice.findings import limit_of_nitrate
from core.advice.livestock import kept_in, table
from core.advice.state import State
from core.message.model import Question
from core.water.ammonia import chronic_criterion, un_ionised_fraction

_LIMIT: Final = re.compile(
    r"\b(?:levels?|range|limits?|amount|highest|lowest|max(?:imum)?|min(?:imum)?|how much|what"
    r"|which|welche\w?|wert|wieviel|wie viel|was|quels?|quelle|combien|cu[aá]nt[oa]|nivel|que"
    r"|quanto|quanta|livello|welk|hoeveel|jaki|ile|vilke[nt]|hur mycket)\b",
    re.IGNORECASE,
)
"""Words by which a limit is asked for, not how the tank stands."""
_SAFE: Final = re.compile(
    r"\b(?:safe|limits?|range|highest|lowest|max(?:imum)?|min(?:imum)?)\b", re.IGNORECASE
)
_LEADS: Final = re.compile(r"^\s*safe\b", re.IGNORECASE)

OF_ANIMALS: Final = ("temperature", "ph", "gh", "kh", "salinity")
"""What only the animals decide."""
SALT: Final = 5.0
"""Over this salinity a water is judged for the animals of the sea; ours. [g/kg]"""
SHOWN: Final = 3
NAMED: Final = 4


def is_asked(question: Question) -> bool:
    """Whether a limit is asked for: `safe nitrite level`, `what ammonia is safe`."""
    text = question.text or ""
    return bool(question.analyte) and bool(_LEADS.search(text) or _LIMIT.search(text))


def is_of_safety(question: Question) -> bool:
    """Whether "what is" asks for a limit: `what is a safe level of copper`."""
    return bool(_SAFE.search(question.text or ""))


def told(analyte: str, state: State) -> list[str]:
    """The limit of an analyte, for the animals on record where they decide."""
    if analyte == "ammonia":
        return [words.ammonia(), _ammonia(state)]
    if analyte == "nitrate":
        return [words.nitrate(limit_of_nitrate(state))]
    kept = for_kept(analyte, state)
    lines = [line for line in (words.fixed(analyte), kept) if line]
    if not lines and analyte not in OF_ANIMALS:
        return explained(analyte)
    return (
        lines if kept or (lines and analyte != "gh") else [*lines, words.depends(analyte)][:SHOWN]
    )


def _ammonia(state: State) -> str:
    ph, known = state.fresh("ph"), state.fresh("temperature")
    if ph is None:
        return words.ammonia_needs_ph()
    acidity = min(max(ph.value, 2.0), 12.0)
    warmth = min(max(known.value if known else limits.WARMEST_ASSUMED, 0.0), 50.0)
    least = limits.NH3_WARN / un_ionised_fraction(acidity, warmth, min(state.salinity, 60.0))
    if not state.tank.is_sea:
        least = min(least, chronic_criterion(acidity, warmth))
    return words.ammonia_from(_rounded_down(least), ph.value, warmth)


def _rounded_down(number: float) -> float:
    """A limit to two digits, never above itself."""
    step = 10.0 ** (math.floor(math.log10(number)) - 1)
    return math.floor(number / step) * step


def for_kept(analyte: str, state: State) -> str | None:
    """Where a value suits every kind on record."""
    kept = kept_in(state.tank)
    rows = [row for row in kept.kinds if analyte in row.ranges]
    if not rows:
        return None
    low = max(row.ranges[analyte].low for row in rows)
    high = min(row.ranges[analyte].high for row in rows)
    kinds = ", ".join(kept.name_of(row) for row in rows[:NAMED])
    return words.span(analyte, low, high, kinds) if low <= high else words.no_span(analyte, kinds)


def for_all(premises: Mapping[str, float], state: State) -> list[str]:
    """Values that some of all known kinds cannot bear, where no kind is on record."""
    if state.tank.stock:
        return []
    said = not state.tank.name and state.salinity > SALT  # of no tank on record
    sea = state.tank.is_sea or said or (state.tank.kind == "brackish" and state.salinity > SALT)
    lines = []
    for analyte in OF_ANIMALS:
        if analyte in premises:
            lines += _for_all(analyte, premises[analyte], sea=sea)
    return [*lines, words.tell_who()] if lines else []


def _for_all(analyte: str, value: float, *, sea: bool) -> list[str]:
    waters = {"marine"} if sea else {"fresh"}
    spans = [
        row.ranges[analyte]
        for row in table().species
        if row.water in waters and row.is_animal and analyte in row.ranges
    ]
    over = sum(value > span.high for span in spans)
    under = sum(value < span.low for span in spans)
    lines = []
    if over:
        lines.append(words.too_high_for(analyte, value, over, len(spans)))
    if under:
        lines.append(words.too_low_for(analyte, value, under, len(spans)))
    return lines
