"""The plan of which a part is on record: its next part is led on to, and known as its own."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final

from bot.chat.told import Told
from bot.chat.turn import Turn
from bot.chat.words import doses as words
from core.advice import limits
from core.advice.findings import Finding
from core.advice.plan import Plan

HELD: Final = timedelta(hours=72)
"""A part that was given longer ago begins no next one: the water has gone its own way."""

LOOKED_BACK: Final = 20
"""So many of the newest entries are looked through for the part."""

LOGGED: Final = re.compile(r"offer:(\d+):log_dose")


@dataclass(frozen=True, slots=True)
class OwnPlan:
    """One goal of a plan in several parts, the first of which was put on record."""

    analyte: str
    target: float
    """Canonical unit of the analyte."""
    at: datetime


async def of(turn: Turn, tank_id: int) -> OwnPlan | None:
    """Give the plan that the tank's newest logged part belongs to, if parts of it are left."""
    doses = await turn.uow.log.events(tank_id, kinds=["dose"], since=turn.now - HELD)
    if not doses:
        return None
    for entry in await turn.uow.log.newest(turn.chat.id, LOOKED_BACK):
        pressed = LOGGED.fullmatch(entry.update_id)
        if pressed is None or not any(event.tank_id == tank_id for event in entry.events):
            continue
        at = entry.events[0].at
        offer = await turn.uow.offers.get(int(pressed[1]))
        if offer is None or at < doses[0].at:  # another dose went in since
            return None
        facts = offer.context.get("facts", {})
        goals = facts.get("goals") or [{"analyte": "kh", "to": facts.get("to")}]
        if len(facts.get("parts", ())) < 2 or len(goals) > 1 or goals[0]["to"] is None:
            return None
        return OwnPlan(goals[0]["analyte"], goals[0]["to"], at)
    return None


async def is_next_part(turn: Turn, plan: Plan, tank_id: int) -> bool:
    """Whether a plan is the rest of the tank's own, its retest sent since the part went in."""
    if not plan.within_kit or plan.reading_age is None or len(plan.goals) > 1:
        return False
    own = await of(turn, tank_id)
    return (
        own is not None
        and plan.goals[0].analyte == own.analyte
        and plan.goals[0].target == own.target
        and turn.now - plan.reading_age > own.at
    )


async def lead_on(turn: Turn, told: Told, found: list[Finding]) -> list[str]:
    """How to ask for the next part, once the retest is sent a day after the part before.

    Nothing is said beside an alarm: that comes first.
    """
    if not told.readings or any(finding.severity == "alarm" for finding in found):
        return []
    own = await of(turn, told.tank.id)
    if own is None or told.at - own.at < timedelta(hours=limits.DOSE_EVERY_HOURS):
        return []
    read = [each.what.canonical for each in told.readings if each.what.analyte == own.analyte]
    short = any(isinstance(value, float | int) and value < own.target for value in read)
    return [words.next_part(own.analyte, own.target)] if short else []
