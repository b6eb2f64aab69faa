"""A reminder of a dose that what was told since has overtaken: it says so, and no amount again.

An amount in a reminder's task was written down for the water and the volume of that day. What was
read or called out since may forbid it, and another volume makes it wrong.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from typing import Any, Final

from bot.chat import given_tests, own_plan, plan_gate, plan_reminders, replanned, unheard
from bot.chat.given_plan import running
from bot.chat.model import Incoming
from bot.chat.plan_figures import part_of
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import dose_on_hold as words
from bot.chat.words.doses import to_test
from bot.chat.words.reminder_talk import part_of_plan
from bot.store.chats import Chat
from bot.store.reminders import Reminder
from bot.store.tanks import StoredTank
from bot.store.uow import UnitOfWork
from core.advice.ammonia_gate import shown
from core.advice.findings import stands
from core.advice.poison_first import TOLD_FIRST, no_dose
from core.advice.state import State

Held = dict[str, dict[str, Any]]
"""Line that says why an amount holds no more → the facts that decide."""

_AMOUNT: Final = re.compile(
    r"(?:\d+(?:[.,]\d+)?|½|half an?|an?)\s?"
    r"(?:g|mg|ml|kg|gr|grams?|gramm|tsps?|tbsps?|teaspoons?|tablespoons?|spoons?|drops?|caps?"
    r"|tropfen|löffel|teelöffel|gotas|gouttes|krople|kropli|droppar|druppels)\b",
    re.IGNORECASE,
)
_LEFT_OUT: Final = "…"


async def without_amounts(
    uow: UnitOfWork, chat: Chat, reminders: Sequence[Reminder], now: datetime
) -> tuple[list[Reminder], Held]:
    """Leave out the amounts that hold no more, and say why, for a message nobody asked for.

    Returns the reminders as they are to be said, and why.
    """
    if not any(map(_is_dose, reminders)):
        return list(reminders), {}
    tanks = await uow.tanks.of_chat(chat.id)
    incoming = Incoming(chat.address, "", "other", now)
    return await of_turn(Turn(uow, incoming, chat, tanks, now), reminders)


async def of_turn(turn: Turn, reminders: Sequence[Reminder]) -> tuple[list[Reminder], Held]:
    """The same, where somebody is answered."""
    told: list[Reminder] = []
    held: Held = {}
    for each in reminders:
        why = await _reasons(turn, each) if _is_dose(each) else {}
        held |= why
        told.append(replace(each, what=_AMOUNT.sub(_LEFT_OUT, each.what)) if why else each)
    return told, held


def _is_dose(reminder: Reminder) -> bool:
    """Whether it is of a dose, be it with its amount or without."""
    return reminder.kind == "dose" or _AMOUNT.search(reminder.what) is not None


def facts(held: Held) -> dict[str, Any]:
    """What decided, tank by tank; nothing where no amount was left out."""
    return {"on_hold": list(held.values())} if held else {}


async def _reasons(turn: Turn, reminder: Reminder) -> Held:
    """Why the amount of a reminder holds no more; empty where it does, or is no dose."""
    stored = turn.tank_by_id(reminder.tank_id) if reminder.tank_id is not None else None
    if stored is None and reminder.tank_id is None and len(turn.tanks) == 1:
        (stored,) = turn.tanks
    if stored is None or reminder.kind == "feed":
        return {}
    name = stored.name
    state = await state_of(turn, stored, turn.now)
    if (over := await _over(turn, stored, reminder)) is not None:
        return {over: {"tank": name, "over": True}}
    if (refusal := no_dose(state)) is not None:
        if refusal.reason == TOLD_FIRST:
            return {words.untold(name, str(refusal.facts["said"])): {"tank": name, **refusal.facts}}
        return {words.poison(name): {"tank": name, **refusal.facts}}
    if (ammonia := await _ammonia(turn, stored, state)) is not None:
        return {words.ammonia(name, ammonia): {"tank": name, "ammonia": ammonia}}
    if (doubted := await unheard.ammonia(turn, stored)) is not None:
        asked = {"tank": name, "ammonia": doubted.values["ammonia"]}
        return {words.ammonia_asked(name, doubted.text): asked}
    before, volume = await _volume_then(turn, stored, reminder), stored.tank.volume_l
    if before is None or volume is None or before == volume or not _AMOUNT.search(reminder.what):
        return {}
    decided = {"tank": name, "before_l": before, "volume_l": volume}
    return {words.volume(name, before, volume): decided}


async def _over(turn: Turn, stored: StoredTank, reminder: Reminder) -> str | None:
    """That a part of a plan is in, or its goal reached; None where it waits to be given."""
    plan = await running(turn)
    if plan is None or plan.tank_id != stored.id:
        return None
    if part_of(plan) not in reminder.what and not plan_reminders.is_of_plan(reminder.what):
        return None
    if (goal := await given_tests.reached(turn, plan)) is not None:
        return words.reached(stored.name, goal.lines[0].text)
    logged = await own_plan.parts_logged(turn, plan.offer.id, plan.held)
    tested = to_test(plan.analytes)
    given = (part_of_plan(tested, at, plan.count, part_of(plan)) for at in range(1, logged + 1))
    return words.is_in(stored.name) if logged >= plan.count or reminder.what in given else None


async def _ammonia(turn: Turn, stored: StoredTank, state: State) -> float | None:
    """Ammonia that stands against a dose: over its plan's gate, or bad by itself. [mg/L]"""
    read = shown(state)
    if read is None:
        return None
    bad = any(each.severity != "note" for each in stands(state, frozenset({"ammonia"})))
    return read.value if bad or await plan_gate.over(turn, stored, state) is not None else None


async def _volume_then(turn: Turn, stored: StoredTank, reminder: Reminder) -> float | None:
    """What a tank held on record when a reminder was set; None where nothing was told since."""
    told = await turn.uow.offers.told_of(turn.chat.id, replanned.RESIZED)
    since = [
        held["volume_l"]
        for _made_at, held in told
        if held["tank_id"] == stored.id and reminder.id in held.get(replanned.SET_BEFORE, ())
    ]
    return float(since[-1]) if since else None
