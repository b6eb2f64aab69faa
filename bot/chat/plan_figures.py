"""What is asked of a plan that was given: its figures, where it leads, how sure they are."""

from __future__ import annotations

from datetime import timedelta
from typing import Any, Final

from bot.chat import effects
from bot.chat.given_plan import Given
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import doses as dose_words
from bot.chat.words import plan_figures as figures
from bot.chat.words import plan_talk as words
from bot.chat.words.numbers import when
from core.advice.findings import SAME_DAY
from core.message.model import Parsed, Question
from core.message.plan_talk import About
from core.message.plan_words import Telling
from core.message.tank_asked import tank_asked
from core.message.well_asked import of_whole

ROUNDING: Final = 1.05
"""As much more than a part is the part: no scale tells it from one."""

NEAR: Final = 1.03
"""A number told back is rounded: within this factor it is the one that was meant."""

OF_END: Final = (
    "from", "to", "goals", "ph_at_once", "ph_stood", "sodium_mg_l", "potassium_mg_l", "interval",
)  # fmt: skip
"""Facts of a plan that its end is told with."""

FIGURES: Final = frozenset(
    {
        "a_day", "often", "days", "need", "safe", "effect", "end", "sure", "stop", "store", "hour",
        "lot", "check",
    }
)  # fmt: skip


async def answer(
    turn: Turn, said: About | Telling, plan: Given, grams: float | None
) -> list[Reply] | None:
    """How much each time, how long, what it takes, what it does, whether it is within limits."""
    facts: dict[str, Any] = {"parts": list(plan.parts), "every_hours": plan.every_hours}
    if said == "check" and plan.salts:
        return [await turn.reply(_checked(plan, grams or 0.0), facts=facts)]
    if said == "lot":
        if await _too_much_in(turn, plan):
            return await judged(turn)
        lines = [*figures.much(plan.facts), *_within(plan)[:1], *figures.sure(plan.facts)[:1]]
        return [await turn.reply(lines, facts=facts)]
    if said in {"a_day", "often"}:
        lines = words.a_part(part_of(plan), plan.every_hours, plan.count)
        if (below := plan.facts.get("only_if_ammonia_below")) is not None:
            lines.append(dose_words.only_below(below))  # no amount without its condition
            facts["only_if_ammonia_below"] = below
        return [await turn.reply(lines, facts=facts)]
    if said == "days":
        last = turn.now + timedelta(hours=plan.every_hours * (plan.count - 1))
        at = when(last.astimezone(turn.chat.zone), turn.local_now)
        lines = words.so_long(plan.count, plan.every_hours, at)
        return [await turn.reply(lines, facts=facts | {"last_at": last.isoformat()})]
    if said == "safe":
        if _of_tank(turn.incoming.text) or await _too_much_in(turn, plan):
            return await judged(turn)  # of the tank is to be spoken, not of the plan
        return [await turn.reply(_within(plan), facts=facts)]
    if said in {"end", "sure"}:
        ends = figures.ends(plan.facts) if said == "end" else figures.sure(plan.facts)
        told = {key: plan.facts[key] for key in OF_END if key in plan.facts}
        return [await turn.reply(ends, facts=told)]
    if said in {"stop", "store", "hour"}:
        lines = {"stop": figures.stop, "store": figures.store, "hour": figures.hour}[said]()
        return [await turn.reply(lines)]
    if not plan.salts:
        return None
    if said == "need":
        whole = [(name, part * plan.count) for name, part in plan.salts]
        facts["salts"] = [{"substance": name, "grams": mass} for name, mass in whole]
        return [await turn.reply(words.needed(whole), facts=facts)]
    if len(plan.salts) > 1:
        return None
    name, part = plan.salts[0]
    tank = None if plan.tank_id is None else turn.tank_by_id(plan.tank_id)
    volume = plan.held.get("volume_l") if tank is None else None
    of = None if tank is None else tank.name
    asked = Question("effect", tank=of, substance=name, grams=grams or part, volume_l=volume)
    return await effects.effect(turn, asked, Parsed("question", question=asked))


def _within(plan: Given) -> list[str]:
    below = plan.facts.get("only_if_ammonia_below")
    only = None if below is None else dose_words.only_below(below)
    return words.within_limits(part_of(plan), plan.every_hours, only)


def _checked(plan: Given, grams: float) -> list[str]:
    """Whether so many grams are a part, or all parts, of one of its salts. [g]"""
    told = words.so_in_all(
        [(name, part, part * plan.count) for name, part in plan.salts], plan.count, plan.every_hours
    )
    masses = [part * times for _, part in plan.salts for times in (1, plan.count)]
    right = any(mass / NEAR <= grams <= mass * NEAR for mass in masses)
    return [words.that_is_so(told) if right else words.that_is_not_so(told)]


async def judged(turn: Turn) -> list[Reply] | None:
    """Whether the tank is well, by all that is known of it: `is that safe`, in any language."""
    if turn.route is None:
        return None
    asked = Question("safe", text=turn.incoming.text)
    return await turn.route(turn, Parsed("question", question=asked))


def _of_tank(text: str) -> bool:
    """Whether it is asked of the tank and all in it, whatever was planned for it."""
    return of_whole(text) or tank_asked(text)


def part_of(plan: Given) -> str:
    """One part as it is told."""
    if not plan.salts:
        product: str = plan.held["substance"]
        return words.of_product(plan.parts[0], product)
    return words.salts([(name, grams) for name, grams in plan.salts])


def whole_of(plan: Given) -> str:
    """All parts of a plan together, as they are told."""
    if not plan.salts:
        return words.of_product(plan.parts[0] * plan.count, plan.held["substance"])
    return words.salts([(name, mass * plan.count) for name, mass in plan.salts])


async def _too_much_in(turn: Turn, plan: Given) -> bool:
    """Whether more of a plan's substance went in within a day than a part of it."""
    if plan.tank_id is None:
        return False
    of = plan.salts[0][0] if plan.salts else plan.held["substance"]
    put_in = await turn.uow.log.events(plan.tank_id, kinds=["dose"], since=turn.now - SAME_DAY)
    of_it = [each.what for each in put_in if each.what.substance == of]
    by_volume = "millilitres" in plan.held
    amounts = [dose.millilitres if by_volume else dose.grams for dose in of_it]
    unweighed = any(dose.spoons is not None for dose in of_it)
    return unweighed or sum(each or 0.0 for each in amounts) > plan.parts[0] * ROUNDING
