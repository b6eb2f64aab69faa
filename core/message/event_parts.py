"""What one event is made of, and whether that makes sense."""

from __future__ import annotations

from dataclasses import dataclass, field

from core.message import doubts
from core.message.model import Doubt
from core.message.tokens import Token
from core.substances import MEDIA

MOST_ANIMALS = 1_000_000
"""More of them are a slip of the finger in any pond."""


@dataclass(slots=True)
class Parts:
    """The amounts and words of one event."""

    kind: str
    start: int
    end: int
    percent: float | None = None
    litres: float | None = None
    grams: float | None = None
    millilitres: float | None = None
    spoons: float | None = None
    count: int | None = None
    bare: float | None = None
    substance: str | None = None
    unknown: list[Token] = field(default_factory=list)
    named: list[Token] = field(default_factory=list)
    unsure: bool = False
    share_end: int = 0
    heavy: bool = False
    water: bool = False


_BY_THE_KILO = frozenset({"sea salt"})
_BY_SHARE = frozenset({"sea salt", "sodium chloride"})
"""Salts told by their share of the water: salt to 0.3 %."""


def added(parts: Parts) -> str:
    """The kind of what was added: media, a dose or animals."""
    if parts.substance in MEDIA:
        return "media"
    weighed = (parts.grams, parts.millilitres, parts.spoons)
    if parts.substance is not None or any(amount is not None for amount in weighed):
        return "dose"
    return "added"


def judge(kind: str, parts: Parts) -> str | None:
    """None where the event is sound, "" where it is none at all, else why it is doubtful."""
    amounts = (parts.percent, parts.litres)
    if kind in {"water_change", "top_up"}:
        if parts.bare is not None or parts.unknown:
            asked = parts.water or any(amount is not None for amount in amounts)
            return doubts.UNSURE_EVENT if asked or parts.bare is not None else ""
        if any(a is not None for a in (parts.spoons, parts.grams, parts.millilitres)):
            return doubts.UNSURE_EVENT
        if not parts.water and all(amount is None for amount in amounts):
            return ""
        if parts.percent is not None and not 0 < parts.percent <= 100:
            return doubts.IMPLAUSIBLE
        return None
    if kind in {"added", "moved", "lost"}:
        if parts.litres is not None or parts.percent is not None:
            return doubts.UNSURE_EVENT
        if not parts.unknown and parts.bare is None and parts.count is None:
            return ""
        if parts.bare is not None and (parts.bare != int(parts.bare) or parts.bare <= 0):
            return doubts.UNSURE_EVENT
        if parts.bare is not None and parts.bare > MOST_ANIMALS:
            return doubts.IMPLAUSIBLE
        if kind == "lost":
            return None  # of what kind the dead are may be asked later
        whole = parts.unknown and not (parts.bare is None and parts.count is None)
        return None if whole else doubts.UNSURE_EVENT
    if kind == "dose":
        if parts.litres is not None or (parts.heavy and parts.substance not in _BY_THE_KILO):
            return doubts.UNSURE_EVENT  # a letter too many or too few: g, kg, mg, ml, l
        salted = parts.substance in _BY_SHARE and not parts.unknown
        if parts.bare is not None or (parts.percent is not None and not salted):
            return doubts.UNSURE_EVENT
        if parts.substance is None and not parts.unknown:
            return doubts.UNSURE_EVENT
    return None


def doubt(parts: Parts, problem: str, source: str) -> Doubt:
    """The doubt about an event, with what a change of water may have been."""
    fragment = source[parts.start : parts.end]
    choices: tuple[str, ...] = ()
    bare = parts.bare is not None and parts.substance is None
    if parts.kind == "water_change" and bare and not parts.unknown:
        choices = (f"changed {parts.bare:.6g} %", f"changed {parts.bare:.6g} l")
    return Doubt(
        fragment, parts.start, parts.end, problem, choices[0] if choices else None, None, choices
    )
