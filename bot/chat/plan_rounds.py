"""``remind me each morning`` right after a plan: a reminder of each part that is left of it."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime, timedelta
from typing import Any, Final

from bot.chat import own_plan, plan_gate, reminders
from bot.chat.given_plan import last_in, running
from bot.chat.model import Reply
from bot.chat.plan_figures import part_of
from bot.chat.reminding import said
from bot.chat.turn import Turn
from bot.chat.words import doses as dose_words
from bot.chat.words import reminder_talk as talk_words
from bot.chat.words import reminders as words
from bot.reminders import planning
from core.schedule import Once, Request, next_after, parse_anew

PARTS: Final = "parts"
"""Under which what an offer keeps of a reminder has those of all parts."""

A_WEEK: Final = timedelta(weeks=1)
"""A rhythm as slow as this is no plan's, whose parts are a day or few apart."""


async def answer(turn: Turn, said_so: list[str]) -> list[Reply] | None:
    """Set one for each part that is left, at the times of a rhythm and no sooner than it may go in.

    None where no plan is spoken of, none of its parts is left, or the words tell no such rhythm.

    Parameters
    ----------
    said_so : list of str
        Words of time: the rhythm, and what changed of it since.
    """
    plan = await running(turn)
    tank = None if plan is None else turn.tank_by_id(plan.tank_id)
    if plan is None or tank is None or not said_so:
        return None
    tested = dose_words.to_test(plan.analytes)
    whole = [f"{talk_words.retest(tested)} {said_so[0]}", *said_so[1:]]
    request = parse_anew(whole, turn.local_now, turn.chat.zone)
    if not isinstance(request, Request) or isinstance(request.rule, Once):
        return None
    second = next_after(request.rule, request.first, turn.chat.zone, request.anchor)
    if second is None or second - request.first >= A_WEEK:
        return None
    if await own_plan.dosed_besides(turn, plan.offer.id, tank.id, plan.offer.made_at):
        return None
    if await plan_gate.over(turn, tank) is not None:
        return None
    logged = await own_plan.parts_logged(turn, plan.offer.id, plan.held)
    apart = timedelta(hours=plan.every_hours)
    begun = await last_in(turn, plan)
    times = _times(turn, request, plan.count - logged, apart, begun)
    if not times:
        return None
    for each in await turn.uow.reminders.of_chat(turn.chat.id):
        if each.tank_id == tank.id and each.kind == "dose" and part_of(plan) in each.what:
            await planning.end(turn.uow, each, turn.now)
    lines, made = [], []
    for number, at in enumerate(times, logged + 1):
        task = talk_words.part_of_plan(tested, number, plan.count, part_of(plan))
        made.append(await reminders.make_once(turn, task, "dose", at, tank))
        local = at.astimezone(turn.chat.zone)
        lines += words.made_once(said(turn, made[-1]), local, turn.local_now)
    told = [
        {
            "id": each.id,
            "tank": tank.name,
            "what": each.what,
            "kind": each.kind,
            "rule": each.rule,
            "due": at.isoformat(),
        }
        for each, at in zip(made, times, strict=True)
    ]
    ids = [each.id for each in made]
    held = {reminders.MADE: {"id": ids[0], "beside": ids[1:], PARTS: said_so}}
    facts = {"reminder": told[0], "reminders": told}
    return [await turn.reply(lines, facts=facts, context=held, expects="followup")]


async def anew(turn: Turn, made: Mapping[str, Any], when: str) -> list[Reply] | None:
    """``at 7.30`` right behind: all parts at that time; None of a single one."""
    return await answer(turn, [*made[PARTS], when]) if PARTS in made else None


def _times(
    turn: Turn, request: Request, count: int, apart: timedelta, begun: datetime | None
) -> list[datetime]:
    """When so many parts go in, each no sooner after the one before than it may."""
    at: datetime | None = request.first
    times: list[datetime] = []
    while at is not None and len(times) < count:
        before = times[-1] if times else begun
        if before is None or at - before >= apart:
            times.append(at)
        at = next_after(request.rule, at, turn.chat.zone, request.anchor)
    return times
