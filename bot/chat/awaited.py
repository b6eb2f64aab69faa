"""A value told without a tank while the plan of another tank than the one in use waits for it.

``alk 7.9`` a day after a part went into the reef is the reef's, whatever tank was spoken of since,
where it is none that the tank in use can have; where both can, it is asked.
"""

from __future__ import annotations

import math
from datetime import datetime, timedelta
from typing import Final

from bot.chat.asking import ask_tank
from bot.chat.given_plan import LOOKED_AT, Given, given
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.store.tanks import StoredTank
from core.advice.jumps import JUMPS
from core.message.model import Parsed, Value

IN_TALK: Final = timedelta(hours=2)
"""So long after an answer about a tank what names none goes on about that one."""


async def by_plan(turn: Turn, parsed: Parsed, used: StoredTank) -> StoredTank | Reply | None:
    """The tank whose plan waits for a value that `used`, the tank in use, can hardly have.

    Asked which tank it is where either may be meant; None where no plan waits for it elsewhere, or
    its value is none that the plan's tank can have by now.
    """
    named = parsed.tank is not None or any(value.tank for value in parsed.values)
    if named or not parsed.values or len(turn.tanks) < 2 or turn.incoming.group:
        return None
    plans = await _waiting(turn, parsed, used)
    told = [value for value in parsed.values if _number(value) is not None]
    fitting = [plan for plan in plans if _fits(plan, told)]
    if not fitting:
        return None
    own = [await _can_be(turn, used, v) for v in told if v.analyte in fitting[0].analytes]
    in_talk = await _in_talk(turn, used)
    if in_talk and not any(fits is False for fits in own):
        return None
    due = await _due(turn, fitting[0])
    if len(fitting) > 1 or parsed.events or in_talk or not due or any(own) or None in own:
        return await ask_tank(turn)
    return turn.tank_by_id(fitting[0].tank_id)


async def _waiting(turn: Turn, parsed: Parsed, used: StoredTank) -> list[Given]:
    """The newest plan of each other tank that runs, and waits for a test of what is told.

    None at all where the plan of the tank in use waits for one.
    """
    told = {value.analyte for value in parsed.values}
    found: dict[int, Given] = {}
    seen: set[int] = set()
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        plan = given(offer)
        if plan is None or plan.tank_id is None or plan.tank_id in seen:
            continue
        seen.add(plan.tank_id)
        if turn.tank_by_id(plan.tank_id) is None or turn.now - offer.made_at > plan.runs:
            continue
        asked = told & set(plan.analytes)
        if asked and await _is_untested(turn, plan, parsed):
            found[plan.tank_id] = plan
    return [] if used.id in found else list(found.values())


async def _begun(turn: Turn, plan: Given) -> datetime:
    """When the last of a plan went in, as far as it was told; else when it was given."""
    doses = await turn.uow.log.events(plan.tank_id or 0, kinds=["dose"], since=plan.offer.made_at)
    return max([plan.offer.made_at, *(dose.at for dose in doses)])


async def _is_untested(turn: Turn, plan: Given, parsed: Parsed) -> bool:
    """Whether nothing of what a plan raises was read since its last part."""
    begun = await _begun(turn, plan)
    told_of = [value.at or parsed.at or turn.now for value in parsed.values]
    last = await turn.uow.log.last_of_each(plan.tank_id or 0, plan.analytes, until=turn.now)
    return max(told_of) > begun and all(reading.at <= begun for reading in last)


async def _due(turn: Turn, plan: Given) -> bool:
    """Whether the time of a plan's test has come, or nearly."""
    return turn.now - await _begun(turn, plan) >= timedelta(hours=plan.every_hours / 2.0)


def _number(value: Value) -> float | None:
    return value.canonical if isinstance(value.canonical, int | float) else None


def _fits(plan: Given, told: list[Value]) -> bool:
    """Whether each told value that a plan raises may be what its tank has by now."""
    facts = plan.facts
    goals = facts.get("goals") or [
        {"analyte": "kh", "from": facts.get("from"), "to": facts.get("to")}
    ]
    ends = {goal["analyte"]: (goal.get("from"), goal.get("to")) for goal in goals}
    raised = [value for value in told if value.analyte in ends]
    return bool(raised) and all(_between(value, *ends[value.analyte]) for value in raised)


def _between(value: Value, low: float | None, high: float | None) -> bool:
    number, apart = _number(value), JUMPS.get(value.analyte, math.inf)
    if number is None or low is None or high is None:
        return True
    return low - apart < number < high + apart


async def _can_be(turn: Turn, tank: StoredTank, value: Value) -> bool | None:
    """Whether a tank may have a value by its last reading; None where it has none."""
    last = await turn.uow.log.last_of_each(tank.id, [value.analyte], until=turn.now)
    before = _number(last[0].what) if last else None
    number = _number(value)
    if before is None or number is None:
        return None
    return abs(number - before) < JUMPS.get(value.analyte, math.inf)


async def _in_talk(turn: Turn, tank: StoredTank) -> bool:
    """Whether the last answer was about a tank, of late."""
    for offer in await turn.uow.offers.latest(turn.chat.id, 1):
        of_it = offer.context.get("facts", {}).get("tank") == tank.name
        return of_it and turn.now - offer.made_at <= IN_TALK
    return False
