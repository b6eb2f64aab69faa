"""The parts of a plan that was given: what is next, what went in, how much of it and how long."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any, Final

from bot.chat import (
    corrections,
    given_doubted,
    given_each,
    given_parts,
    given_rest,
    given_tests,
    own_plan,
    plan_figures,
)
from bot.chat.given_plan import OF_PLAN, Given, last_in
from bot.chat.model import Reply
from bot.chat.patience import PATIENCE
from bot.chat.plan_figures import FIGURES, ROUNDING, part_of
from bot.chat.turn import Turn
from bot.chat.words import doses as dose_words
from bot.chat.words import given_parts as given_words
from bot.chat.words import plan_talk as words
from bot.chat.words.numbers import plain, when
from core.advice.spoons import spoon_grams
from core.message import parse
from core.message.model import Parsed, Question
from core.message.plan_anew import Named
from core.message.plan_said import Amounts
from core.message.plan_talk import About
from core.message.plan_when import asks_of_first
from core.message.plan_words import Telling

ABOUT: Final = 1.25
"""So many times more or less is still the amount that is told in round numbers."""


async def answer(
    turn: Turn, said: About | Telling, plan: Given, amounts: Amounts
) -> list[Reply] | None:
    """Answer what is said of a plan's parts; None where it is about something else."""
    if said == "at_once" or (said == "safe" and _too_much(plan, amounts)):
        return [await _kept_apart(turn, plan)]
    told = said in given_parts.GIVEN
    if told and (asked := await given_doubted.asked(turn, said, plan, amounts)) is not None:
        return asked
    if said in {"gave_two", "gave_all"} and (each := await given_each.told(turn, plan)):
        return each
    if said == "gave_all" and (rest := await given_rest.answer(turn, plan, amounts)) is not None:
        return rest
    if told:
        return await given_parts.answer(turn, said, plan, amounts)
    if said == "to_come":
        return await _to_come(turn, plan)
    if said == "go_on":
        return await go_on(turn, plan)
    if said == "when_next":
        begun = await last_in(turn, plan)
        if begun is None and asks_of_first(turn.incoming.text):
            return await go_on(turn, plan)
        waits = begun is None or turn.now < begun + timedelta(hours=plan.every_hours)
        return [await _when_next(turn, plan)] if waits else await go_on(turn, plan)
    if said == "later":
        emergency = plan.facts.get("emergency", False)
        tested = dose_words.to_test(plan.analytes)
        return [await turn.reply(words.part_later(tested, emergency=emergency))]
    if said in FIGURES:
        return await plan_figures.answer(turn, said, plan, amounts.grams)
    return None


async def weighed_anew(turn: Turn, grams: float) -> list[Reply] | None:
    """`no, 8 g` right after a part was put on record: so much it was. [g]

    None where the last thing that was answered is no dose of one salt.
    """
    logged = await _just_logged(turn)
    return None if logged is None else await corrections.with_grams(turn, logged[0], grams)


async def named_anew(
    turn: Turn, parsed: Parsed, grams: float, substance: str, other: float
) -> list[Reply] | None:
    """`9 g baking soda instead of 3` of the part on record, or else so much is put on record. [g]

    What is told with its deed puts right only a dose of about as much as the `other` amount.
    """
    logged = await _just_logged(turn)
    if logged is not None and [event.get("substance") for event in logged[1]] == [substance]:
        before = logged[1][0].get("grams") or 0.0
        if not parsed.events or other / ABOUT < before < other * ABOUT:
            return await corrections.with_grams(turn, logged[0], grams)
    if parsed.events or turn.route is None:
        return None
    told = f"dosed {grams:g} g {substance}"
    turn.incoming = replace(turn.incoming, text=told)
    return await turn.route(turn, parse(told, turn.context()))


async def named_alone(turn: Turn, said: Named) -> list[Reply] | None:
    """`oh and 20 g epsom salt` right after a dose was put on record: one more, or put right.

    None where something else was answered last, or it would put another substance right.
    """
    logged = await _just_logged(turn)
    put_in = [] if logged is None else [e for e in logged[1] if e["kind"] == "dose"]
    if logged is None or not put_in or turn.route is None:
        return None
    if said.anew:
        named = [event.get("substance") or "" for event in logged[1]]
        same = named == [said.substance] or (said.substance == "soda" and "sodium" in named[0])
        return await corrections.with_grams(turn, logged[0], said.grams) if same else None
    told = f"dosed {said.grams:g} g {said.substance}"
    turn.incoming = replace(turn.incoming, text=told)
    return await turn.route(turn, parse(told, turn.context()))


async def just_dosed(turn: Turn) -> bool:
    """Whether what was answered last is that a dose was put on record, where it still stands."""
    logged = await _just_logged(turn)
    entry = None if logged is None else await turn.uow.log.current(turn.chat.id, logged[0])
    return entry is not None and any(event.what.kind == "dose" for event in entry.events)


async def _just_logged(turn: Turn) -> tuple[int, list[dict[str, Any]]] | None:
    """The entry that was answered last, and its events; None where something else was.

    What only tells of the plan (`what is left`) is passed over.
    """
    latest = [
        offer
        for offer in await turn.uow.offers.latest(turn.chat.id)
        if offer.entry_id is not None or set(offer.context) != {OF_PLAN}
    ]
    if not latest or latest[0].entry_id is None or turn.now - latest[0].made_at > PATIENCE:
        return None
    return latest[0].entry_id, latest[0].context.get("facts", {}).get("events", [])


def _too_much(plan: Given, amounts: Amounts) -> bool:
    """Whether more than a part is told; of a spoon what it weighs at most, or nobody knows."""
    if amounts.spoons is not None and len(plan.salts) == 1:
        weighs = spoon_grams(plan.salts[0][0], amounts.spoons)
        return weighs is None or weighs[2] > plan.parts[0] * ROUNDING
    told = amounts.millilitres if "millilitres" in plan.held else amounts.grams
    return told is not None and len(plan.salts) < 2 and told > plan.parts[0] * ROUNDING


async def _kept_apart(turn: Turn, plan: Given) -> Reply:
    """Refuse to put parts of a plan together, or more than one in a day."""
    facts: dict[str, Any] = {"parts": list(plan.parts), "every_hours": plan.every_hours}
    if plan.count > 1:
        whole = plan_figures.whole_of(plan)
        if (below := plan.facts.get("only_if_ammonia_below")) is not None:
            whole, facts["only_if_ammonia_below"] = "", below  # no amount without its condition
        lines = words.kept_apart(plan.count, plan.every_hours, whole)
        return await turn.reply(lines, facts=facts)
    return await turn.reply(words.no_more_than(part_of(plan), plan.every_hours), facts=facts)


async def _when_next(turn: Turn, plan: Given) -> Reply:
    """When to test, and with it when the next part may go in."""
    begun = await last_in(turn, plan)
    at = (begun or turn.now) + timedelta(hours=plan.every_hours)
    lines = words.when_next(
        dose_words.to_test(plan.analytes),
        plan.every_hours,
        when(at.astimezone(turn.chat.zone), turn.local_now),
        begun=begun is not None,
        goes_on=plan.count > 1,
    )
    facts = {"test_at": at.isoformat(), "every_hours": plan.every_hours}
    return await turn.reply(lines, facts=facts)


async def _to_come(turn: Turn, plan: Given) -> list[Reply]:
    """What is meant to go in: of a plan that waits for it, so much; else what is next."""
    if await last_in(turn, plan) is not None:
        return await go_on(turn, plan)
    return [await given_parts.waiting(turn, plan, plan.held, given_words.to_come(part_of(plan)))]


async def go_on_today(turn: Turn, plan: Given) -> list[Reply] | None:
    """What is left where the goal is measured, or a part was begun today; else None."""
    if (reached := await given_tests.reached(turn, plan)) is not None:
        return [reached]
    if (rest := await given_parts.rest_today(turn, plan)) is None:
        return None
    missing = rest["millilitres"] if "millilitres" in rest else rest["grams"]
    lines = given_words.rest_of_part(given_parts.shown(rest))
    return [await given_parts.waiting(turn, plan, rest, lines, rest=missing)]


async def go_on(turn: Turn, plan: Given) -> list[Reply]:
    """What is next: a first part, waiting, a test, or the next part worked out anew."""
    if (today := await go_on_today(turn, plan)) is not None:
        return today
    begun = await last_in(turn, plan)
    logged = await own_plan.parts_logged(turn, plan.offer.id, plan.held)
    left = plan.count - logged
    facts = {"left": left, "parts": list(plan.parts)}
    if begun is None:
        return await _none_in(turn, plan, facts)
    waits = turn.now < begun + timedelta(hours=plan.every_hours)
    tested = await _tested_since(turn, plan, begun)
    if left < 1 and (waits or not tested):
        return [await turn.reply(words.all_logged(plan.count))]
    share = await own_plan.share_logged(turn, plan.offer.id, plan.held)
    # of a part that is begun and not whole it is not told how many are left
    how_far = (
        [words.still_left(plan.count, left)] if share - logged <= 1.0 - own_plan.A_PART else []
    )
    if waits:
        waiting = await _when_next(turn, plan)
        lines = [*how_far, *(line.text for line in waiting.lines)]
        return [await turn.reply(lines, facts={**facts, **waiting.facts})]
    goal, target = plan.analytes[0], plan.facts.get("to")
    if plan.tank_id is None or target is None or turn.route is None or len(plan.analytes) > 1:
        return [await _when_next(turn, plan)]
    tank = turn.tank_by_id(plan.tank_id)
    ask = f"dose {goal} {plain(target, 2)}"
    if not tested or tank is None:
        to_test = dose_words.to_test(plan.analytes)
        return [await turn.reply([*how_far, words.test_first(to_test, ask)], facts=facts)]
    asked = Question("dose", tank=tank.name, analyte=goal, target=target, text=ask)
    turn.incoming = replace(turn.incoming, text=ask)  # what was said is read already
    return await turn.route(turn, Parsed("question", question=asked))


async def _tested_since(turn: Turn, plan: Given, begun: datetime) -> bool:
    """Whether what a plan raises was measured after its last part."""
    if plan.tank_id is None:
        return False
    rows = await turn.uow.log.last_of_each(plan.tank_id, plan.analytes[:1], until=turn.now)
    return any(row.at > begun for row in rows)


async def _none_in(turn: Turn, plan: Given, facts: dict[str, Any]) -> list[Reply]:
    """Nothing is on record: the first part, or the plan anew where more was measured since."""
    stored = None if plan.tank_id is None else turn.tank_by_id(plan.tank_id)
    goal, target = plan.analytes[0], plan.facts.get("to")
    single = target is not None and len(plan.analytes) == 1
    old = stored is not None and await own_plan.measured_since(turn, plan.offer, stored.id)
    if old and stored is not None:
        ask = f"dose {goal} {plain(target, 2)}" if target is not None else f"dose {goal}"
        if not single or turn.route is None:
            return [await turn.reply(words.older_than_readings(ask), facts=facts)]
        asked = Question("dose", tank=stored.name, analyte=goal, target=target, text=ask)
        return await turn.route(turn, Parsed("question", question=asked))
    below = plan.facts.get("only_if_ammonia_below")
    only = None if below is None else dose_words.only_below(below)
    lines = words.none_logged(plan.count, part_of(plan), only)
    facts |= {} if below is None else {"only_if_ammonia_below": below}
    return [await given_parts.waiting(turn, plan, plan.held, lines, **facts)]
