"""A plan of doses that was given, as its offer keeps it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Any, Final

from bot.chat import doses, own_plan
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import Turn
from bot.store.log import Stored
from bot.store.offers import Offer
from core.advice import limits
from core.message.model import Event

OF_PLAN: Final = "of_plan"
"""Under which an answer that is about a plan keeps the offer that gave it."""

LOG_SOME: Final = "log_some"
"""What the button of so much of a plan does."""

DROPPED: Final = "dropped"
"""What became of a plan that its keeper let go before any of it went in: it is no next step."""

LOOKED_AT: Final = 40
"""Latest offers among which a plan that still runs is found."""


@dataclass(frozen=True, slots=True)
class Given:
    """A plan that was given, as its offer keeps it.

    Attributes
    ----------
    offer : Offer
        Of its answer.
    held : dict
        What its button to log a part holds.
    salts : tuple of (str, float)
        Each salt with its grams a part; empty for a bought product. [g]
    parts : tuple of float
        Of its first substance, what goes in each time. [g], of a product [mL]
    every_hours : float
        Between them. [h]
    """

    offer: Offer
    held: dict[str, Any]
    salts: tuple[tuple[str, float], ...]
    parts: tuple[float, ...]
    every_hours: float

    @property
    def count(self) -> int:
        """In how many parts."""
        return len(self.parts)

    @property
    def facts(self) -> dict[str, Any]:
        """The numbers of its answer."""
        facts: dict[str, Any] = self.offer.context.get("facts", {})
        return facts

    @property
    def analytes(self) -> list[str]:
        """What it is to raise."""
        goals = self.facts.get("goals")
        return [goal["analyte"] for goal in goals] if goals else ["kh"]

    @property
    def tank_id(self) -> int | None:
        """The tank that it is for; None where it is for any water."""
        tank_id: int | None = self.held["tank_id"]
        return tank_id

    @property
    def runs(self) -> timedelta:
        """How long it is spoken of: until a day after its last part."""
        return max(PATIENCE, timedelta(hours=self.every_hours * (self.count + 1)))


def given(offer: Offer) -> Given | None:
    """The plan that an offer keeps; None where it keeps none."""
    held = next((each.arguments for each in offer.choices if each.verb == "log_dose"), None)
    if held is None:
        return None
    facts = offer.context.get("facts", {})
    parts = (facts.get("salts") or [facts])[0].get("parts", (0.0,))
    every = facts.get("every_hours", limits.DOSE_EVERY_HOURS)
    return Given(offer, held, tuple(doses.salts_of(held)), tuple(parts), every)


async def running(turn: Turn, least: timedelta = timedelta(0)) -> Given | None:
    """The newest plan of the chat while it is spoken of; in a group, for some minutes only.

    `least` is how long it is at least. One that was asked for any water is of the tank that it
    was begun in.
    """
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if (plan := given(offer)) is not None:
            patience = GROUP_PATIENCE if turn.incoming.group else max(plan.runs, least)
            if turn.now - offer.made_at > patience:
                return None
            tank = doses.tank_of(turn, plan.held)
            return replace(plan, held=plan.held | {"tank_id": None if tank is None else tank.id})
    return None


async def last_in(turn: Turn, plan: Given) -> datetime | None:
    """When anything was dosed last since a plan was given; None where nothing was."""
    last = await last_dose(turn, plan)
    return None if last is None else last.at


async def last_dose(turn: Turn, plan: Given) -> Stored[Event] | None:
    """What was dosed last since a plan was given; None where nothing was.

    A part of it may be told to be in since before that.
    """
    if plan.tank_id is None:
        return None
    since = plan.offer.made_at
    if await own_plan.share_logged(turn, plan.offer.id, plan.held):
        since -= own_plan.HELD
    put_in = await turn.uow.log.events(plan.tank_id, kinds=["dose"], since=since)
    return put_in[0] if put_in else None
