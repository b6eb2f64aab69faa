"""What is next of each plan that is open: its first part, its test and the part behind it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any, Final

from bot.chat import own_plan
from bot.chat.given_plan import DROPPED, LOOKED_AT, Given, given
from bot.chat.patience import PATIENCE
from bot.chat.plan_figures import part_of
from bot.chat.turn import Turn
from bot.chat.words import agenda as words
from bot.chat.words import doses as dose_words
from bot.chat.words.numbers import plain
from bot.store.offers import Offer
from bot.store.tanks import StoredTank

A_DAY: Final = timedelta(days=1)
"""Between two changes of a plan."""


@dataclass(frozen=True, slots=True)
class Step:
    """What is next of a plan: when, in words, and its numbers."""

    at: datetime
    told: str
    facts: dict[str, Any]


async def steps(turn: Turn) -> list[Step]:
    """The next step of the newest plan of each tank, doses and changes apart."""
    found: list[Step] = []
    seen: set[tuple[int, str]] = set()
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if offer.used == DROPPED:
            continue
        plan = given(offer)
        facts = offer.context.get("facts", {})
        of_tank = turn.tank_named(facts.get("tank") or "")
        stored = of_tank if plan is None else turn.tank_by_id(plan.tank_id)
        kind = "change" if plan is None else "dose"
        if stored is None or (plan is None and not facts.get("steps")):
            continue
        if (stored.id, kind) in seen:
            continue
        seen.add((stored.id, kind))
        step = (
            await _change(turn, offer, stored) if plan is None else await _part(turn, plan, stored)
        )
        found += [] if step is None else [step]
    return found


async def _part(turn: Turn, plan: Given, stored: StoredTank) -> Step | None:
    """What is next of a plan: its first part, the test, or the next part behind it."""
    if turn.now - plan.offer.made_at > plan.runs:
        return None
    doses = await turn.uow.log.events(stored.id, kinds=["dose"], since=plan.offer.made_at)
    logged = await own_plan.parts_logged(turn, plan.offer.id, plan.held)
    left = plan.count - logged
    facts: dict[str, Any] = {"tank": stored.name, "left": max(left, 0)}
    if not doses:
        return await _first(turn, plan, stored, facts)
    if logged < 1:
        return None  # something else went in: the plan knows nothing of it
    begun = doses[0].at
    at = begun + timedelta(hours=plan.every_hours)
    goal, target = plan.analytes[0], plan.facts.get("to")
    (newest,) = await turn.uow.log.last_of_each(stored.id, [goal], until=turn.now) or (None,)
    tested = newest is not None and newest.at > begun
    reached = (
        newest is not None
        and target is not None
        and isinstance(newest.what.canonical, int | float)
        and newest.what.canonical >= target
    )
    if tested and (left < 1 or reached):
        return None
    local, now = at.astimezone(turn.chat.zone), turn.local_now
    to_test = dose_words.to_test(plan.analytes)
    facts |= {"at": at.isoformat()}
    if left < 1:
        return Step(at, words.last_test(stored.name, to_test, local, now), facts)
    ask = _ask(plan)
    if tested and at <= turn.now:
        return Step(at, words.go_on(stored.name, left, plan.count, ask), facts)
    told = words.next_part(stored.name, to_test, left, plan.count, ask, local, now)
    return Step(at, told, facts)


async def _first(turn: Turn, plan: Given, stored: StoredTank, facts: dict[str, Any]) -> Step | None:
    """A plan of which nothing is on record: worked out anew where more was measured since."""
    if turn.now - plan.offer.made_at > PATIENCE:
        return None  # it was only asked about
    if await own_plan.measured_since(turn, plan.offer, stored.id):
        return Step(turn.now, words.work_out_anew(stored.name, _ask(plan)), facts)
    below = plan.facts.get("only_if_ammonia_below")
    only = None if below is None else dose_words.only_below(below)
    told = words.first_part(stored.name, part_of(plan), plan.count, only)
    return Step(turn.now, told, facts | {"parts": list(plan.parts)})


def _ask(plan: Given) -> str:
    """What asks for the rest of a plan."""
    goal, target = plan.analytes[0], plan.facts.get("to")
    return f"dose {goal} {plain(target, 2)}" if target is not None else f"dose {goal}"


async def _change(turn: Turn, offer: Offer, stored: StoredTank) -> Step | None:
    """The next of several changes, a day after the last that is on record."""
    shares = offer.context["facts"]["steps"]
    if len(shares) < 2 or turn.now - offer.made_at > A_DAY * (len(shares) + 1):
        return None
    done = await turn.uow.log.events(stored.id, kinds=["water_change"], since=offer.made_at)
    left = len(shares) - len(done)
    if not done or left < 1:
        return None
    at = done[0].at + A_DAY
    local = at.astimezone(turn.chat.zone)
    told = words.next_change(stored.name, shares[len(done)], left, local, turn.local_now)
    return Step(at, told, {"tank": stored.name, "left": left, "at": at.isoformat()})
