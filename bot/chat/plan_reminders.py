"""``remind me tomorrow at 8`` right after a plan: of its next part, never before it may go in."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Any, Final

from bot.chat import given_parts, own_plan, plan_gate, plan_parts, task_deeds
from bot.chat.given_plan import given, last_in, running
from bot.chat.model import Reply
from bot.chat.patience import LOOKED_AT, PATIENCE
from bot.chat.plan_figures import part_of
from bot.chat.turn import Turn
from bot.chat.words import doses as dose_words
from bot.chat.words import general
from bot.chat.words import reminder_talk as talk_words
from bot.chat.words import reminders as words
from bot.reminders import planning
from bot.store.offers import Choice, Offer
from bot.store.reminders import Reminder
from bot.store.tanks import StoredTank
from core.message.plan_said import Amounts
from core.message.word_classes import said
from core.schedule import Kind

FILE: Final = "reminder_rest.txt"

BOTH: Final = 2
"""Parts of a plan of which both may be said."""

A_DAY: Final = timedelta(days=1)
"""Between the steps of a change."""

REST: Final = frozenset({"next", "part", "go", "deed", "instead", "again", "number"})


@dataclass(frozen=True, slots=True)
class Part:
    """What is next of a plan, as a reminder's task.

    Attributes
    ----------
    not_before : datetime or None
        The earliest that it may be put in.
    """

    what: str
    kind: Kind
    tank: StoredTank
    not_before: datetime | None = None


def is_rest(what: str) -> bool:
    """Whether a task names nothing but what is left of something: `instead`, `for the rest`.

    An amount is of the keeper's own: `another 25`.
    """
    if not what:
        return True
    told = said(FILE, what)
    if told is None or not set(told.classes) <= REST:
        return False
    amount = told.numbers and not told.has("part")  # do another 25: of litres, or percent
    return not (amount and {"next", "go", "deed"} & set(told.classes))


def is_that(what: str) -> bool:
    """Whether a task names nothing at all: `instead`, `again`, `about it`."""
    told = said(FILE, what) if what else None
    return not what or (told is not None and set(told.classes) <= {"instead", "again"})


def is_deed(what: str) -> bool:
    """Whether a task is a verb, though it names nothing: `dose`."""
    told = said(FILE, what)
    return told is not None and bool({"go", "deed"} & set(told.classes))


def is_part(what: str) -> bool:
    """Whether a task names parts of a plan and no other thing: `the parts`, `for the rest`."""
    told = said(FILE, what)
    return is_rest(what) and told is not None and bool({"part", "next", "deed"} & set(told.classes))


async def next_part(turn: Turn, what: str) -> Part | None:
    """What a reminder without a task of its own is of; None where no plan is spoken of."""
    if not is_rest(what):
        return None
    if (change := await _next_change(turn, what)) is not None:
        return change
    plan = await running(turn)
    tank = None if plan is None else turn.tank_by_id(plan.tank_id)
    if plan is None or tank is None:
        return None
    logged = await own_plan.parts_logged(turn, plan.offer.id, plan.held)
    told = said(FILE, what)
    counted = told is not None and told.has("part") and any(n.value > 1 for n in told.numbers)
    later_one = counted or (told is not None and told.has("next"))
    number = max(logged + 1, 2) if later_one else logged + 1
    tested = dose_words.to_test(plan.analytes)
    besides = await own_plan.dosed_besides(turn, plan.offer.id, tank.id, plan.offer.made_at)
    if number > plan.count or besides or await plan_gate.over(turn, tank) is not None:
        return Part(talk_words.retest(tested), "test", tank)
    begun = await last_in(turn, plan)
    if begun is None and number > 1:
        begun = plan.offer.made_at
    task = talk_words.part_of_plan(tested, number, plan.count, part_of(plan))
    others = await _coming(turn, "dose", part_of(plan), tank, task)
    before = [at for at in (begun, *others) if at is not None]
    earliest = max(before) + timedelta(hours=plan.every_hours) if before else None
    return Part(task, "dose", tank, earliest)


async def next_test(turn: Turn) -> Part | None:
    """The test after what went in last of a plan that is spoken of; None where none is to come."""
    plan = await running(turn)
    tank = None if plan is None else turn.tank_by_id(plan.tank_id)
    if plan is None or tank is None:
        return None
    begun = await last_in(turn, plan) or turn.now
    at = begun + timedelta(hours=plan.every_hours)
    task = talk_words.retest(dose_words.to_test(plan.analytes))
    return Part(task, "test", tank, at) if at > turn.now else None


async def both_tests(turn: Turn) -> list[Part]:
    """The tests after each part of a plan in two that is spoken of; none of any other."""
    plan = await running(turn)
    tank = None if plan is None else turn.tank_by_id(plan.tank_id)
    if plan is None or tank is None or plan.count != BOTH:
        return []
    if await own_plan.parts_logged(turn, plan.offer.id, plan.held) >= BOTH:
        return []
    begun = await last_in(turn, plan) or turn.now
    task = talk_words.retest(dose_words.to_test(plan.analytes))
    hours = [timedelta(hours=plan.every_hours * part) for part in range(1, BOTH + 1)]
    return [Part(task, "test", tank, begun + each) for each in hours if begun + each > turn.now]


async def _next_change(turn: Turn, what: str) -> Part | None:
    """The next step of a change in several days; None where another plan was given since."""
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if turn.now - offer.made_at > PATIENCE or given(offer) is not None:
            return None
        facts = offer.context.get("facts", {})
        steps, tank = facts.get("steps"), turn.tank_named(facts.get("tank", ""))
        if not steps or tank is None:
            continue
        kinds = ["water_change"]
        changed = await turn.uow.log.events(tank.id, kinds=kinds, since=offer.made_at)
        told = said(FILE, what)
        later_one = told is not None and told.has("next")
        place = max(len(changed), 1) if later_one else len(changed)
        if place >= len(steps):
            return None
        begun = changed[0].at if changed else offer.made_at if place else None
        share = math.floor(100 * steps[place])
        part = f"{talk_words.again('water_change')} {share}%"
        tested = dose_words.to_test(["kh"])
        task = talk_words.part_of_plan(tested, place + 1, len(steps), part)
        others = await _coming(turn, "change", part, tank, task)
        before = [at for at in (begun, *others) if at is not None]
        return Part(task, "change", tank, max(before) + A_DAY if before else None)
    return None


async def _coming(turn: Turn, kind: Kind, part: str, tank: StoredTank, task: str) -> list[datetime]:
    """When other parts of a plan are to be done, by the reminders of them."""
    return [
        each.next_due
        for each in await turn.uow.reminders.of_chat(turn.chat.id)
        if each.tank_id == tank.id and each.kind == kind and part in each.what
        if each.what != task and each.next_due is not None
    ]


async def earliest(turn: Turn, reminder: Reminder) -> datetime | None:
    """When the part of a plan that a reminder is of may go in; None where it is of none."""
    plan = await running(turn) if reminder.kind == "dose" else None
    if plan is None or plan.tank_id != reminder.tank_id or part_of(plan) not in reminder.what:
        return None
    begun = await last_in(turn, plan)
    return None if begun is None else begun + timedelta(hours=plan.every_hours)


async def to_log(turn: Turn, reminder: Reminder, at: datetime) -> list[Choice]:
    """Buttons that put on record what a reminder's task names, now that it was done at a time."""
    if reminder.kind not in {"dose", "change", "other"}:
        return []
    plan, tank = await running(turn), turn.tank_by_id(reminder.tank_id)
    deed = task_deeds.told(turn, reminder.what, reminder.kind)
    if plan is not None and plan.tank_id == reminder.tank_id and reminder.kind != "change":
        part = part_of(plan)
        if part in reminder.what or (deed is None and is_of_plan(reminder.what)):
            of_plan = {"plan": plan.offer.id, "reminder_id": reminder.id}
            return [Choice(talk_words.log_that(part), "log_part", "yes", of_plan)]
    anywhere = tank is None
    tank = tank or turn.current_tank
    if deed is None or tank is None or reminder.kind == "other":
        return []
    text, _parsed = deed
    amount = text.partition(" ")[2]
    held: dict[str, Any] = {"text": text, "at": at.isoformat(), "tank_id": tank.id}
    label = (
        talk_words.log_change(amount) if reminder.kind == "change" else talk_words.log_that(amount)
    )
    label = f"{tank.name}: {label}" if anywhere and len(turn.tanks) > 1 else label
    return [Choice(label, "for_tank", "yes", held)]


def is_of_plan(what: str) -> bool:
    """Whether a task names a part of a plan, without its amount."""
    told = said(FILE, what)
    return told is not None and bool({"part", "deed"} & set(told.classes))


async def stop(turn: Turn) -> list[Reply] | None:
    """``stop the plan``: no part of it is reminded of any more; None where none is spoken of."""
    plan = await running(turn)
    if plan is None:
        return None
    logged = await own_plan.parts_logged(turn, plan.offer.id, plan.held)
    ended = []
    for each in await turn.uow.reminders.of_chat(turn.chat.id):
        if each.tank_id == plan.tank_id and each.kind == "dose" and part_of(plan) in each.what:
            await planning.end(turn.uow, each, turn.now)
            ended.append(each.what)
    tested = dose_words.to_test(plan.analytes)
    lines = talk_words.plan_stopped(logged, plan.count, tested)
    if ended:
        lines += words.stopped(" · ".join(ended))
    if (asked := await given_parts.asks_how_much(turn)) is not None:
        lines.append(talk_words.how_much_yet())  # what was told to be in is asked on
        return [await turn.reply(lines, choices=asked.choices, context=asked.context)]
    return [await turn.reply(lines)]


async def press_log(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Put the next part of a plan on record, once."""
    kept = await turn.uow.offers.get(choice.arguments["plan"])
    plan = None if kept is None or kept.chat_id != turn.chat.id else given(kept)
    if plan is None or not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    turn.incoming = replace(turn.incoming, update_id=f"{turn.incoming.update_id}:part")
    found = await plan_parts.answer(turn, "gave_one", plan, Amounts())
    return found or [await turn.reply(general.already())]
