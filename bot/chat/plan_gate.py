"""A plan against the ammonia that was read since: over its own gate nothing goes in.

A plan tells the highest total ammonia under which it holds, or rests on a reading; what is read
later decides anew, before a part, behind one and where one is reminded of.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import timedelta
from typing import Any, Final, NamedTuple

from bot.chat import own_plan
from bot.chat.model import Reply
from bot.chat.patience import PATIENCE
from bot.chat.state import state_of
from bot.chat.told import Told
from bot.chat.turn import Turn
from bot.chat.words import plan_gate as words
from bot.store.offers import Offer
from bot.store.tanks import StoredTank
from core.advice import limits
from core.advice.ammonia_gate import upper_total
from core.advice.state import State

BEARS: Final = "bears"
"""Under which a plan's button keeps the highest total ammonia that it bears. [mg/L as N]"""

ONLY_BELOW: Final = "only_if_ammonia_below"
"""The fact of a plan that tells it."""

LOOKED_AT: Final = 40
"""Latest offers among which the plan is found."""


class Over(NamedTuple):
    """Ammonia that is over the gate of a plan. [mg/L as N]"""

    ammonia: float
    below: float
    begun: bool
    """Whether a part of it is on record."""

    @property
    def facts(self) -> dict[str, Any]:
        """The numbers that decide."""
        return {"refused": "ammonia", "ammonia": self.ammonia, ONLY_BELOW: self.below}


async def over(turn: Turn, stored: StoredTank, state: State | None = None) -> Over | None:
    """The ammonia that stops the newest plan of a tank; None where none does, or all is in."""
    found = await _newest(turn, stored.id)
    if found is None:
        return None
    offer, held = found
    facts = offer.context.get("facts", {})
    below = held.get(BEARS, facts.get(ONLY_BELOW))
    if below is None:
        return None
    state = state or await state_of(turn, stored, turn.now)
    reading, total = state.fresh("ammonia"), upper_total(state)
    if reading is None or total is None or total <= below:
        return None
    logged = await own_plan.parts_logged(turn, offer.id, held)
    if logged >= len(_parts(facts)):
        return None
    share = logged or await own_plan.share_logged(turn, offer.id, held)
    return Over(min(total, max(reading.value, below)), below, share > 0.0)


async def _newest(turn: Turn, tank_id: int) -> tuple[Offer, Mapping[str, Any]] | None:
    """The newest plan of a tank and a part of it, while it is spoken of."""
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        held = next((each.arguments for each in offer.choices if each.verb == "log_dose"), None)
        if held is None or held.get("tank_id") != tank_id:
            continue
        facts = offer.context.get("facts", {})
        every = facts.get("every_hours", limits.DOSE_EVERY_HOURS)
        runs = max(PATIENCE, timedelta(hours=every * (len(_parts(facts)) + 1)))
        return (offer, held) if turn.now - offer.made_at <= runs else None
    return None


def _parts(facts: Mapping[str, Any]) -> list[float]:
    parts: list[float] = (facts.get("salts") or [facts])[0].get("parts", [0.0])
    return parts


async def beside(turn: Turn, told: Told, state: State) -> list[str]:
    """What stands beside a part that is told, or beside a reading of ammonia; else nothing."""
    read = any(reading.what.analyte == "ammonia" for reading in told.readings)
    dosed = any(event.what.kind == "dose" for event in told.events)
    if told.at > turn.now or not (read or dosed):
        return []
    found = await over(turn, told.tank, state)
    if found is None or (dosed and not found.begun):
        return []
    return words.none_goes_in(found.ammonia, found.below, begun=found.begun)


async def refused(turn: Turn, stored: StoredTank) -> Reply | None:
    """That no part may go in, where that is asked; None where nothing is in its way."""
    found = await over(turn, stored)
    if found is None:
        return None
    lines = words.not_now(found.ammonia, found.below)
    return await turn.reply(lines, facts={"tank": stored.name, **found.facts})
