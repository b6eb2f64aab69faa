"""``and also wednesday``: one more time for the reminder just set or spoken of, which stays."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Final

from bot.chat import reminder_moving, reminders
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.store.offers import Offer
from bot.store.reminders import Reminder
from core.message.fold import fold
from core.message.model import Parsed
from core.message.reminder_said import is_no_task
from core.message.reminder_when import EDGES, further_time, goes_on_after, joined
from core.schedule import (
    Once,
    Plan,
    Problem,
    Request,
    Weekly,
    from_text,
    names_task,
    names_weekday,
    next_after,
    parse_request,
    parse_several,
    split_time,
)
from core.schedule.words.tasks import TO

MOST_WORDS: Final = 6
"""Words of a task that nobody asked to be reminded of by that word."""

A_MOMENT: Final = timedelta(minutes=1)
"""The least time in front of when a rule is due."""


async def answer(turn: Turn, spoken: Reminder | None, parsed: Parsed) -> list[Reply] | None:
    """Let it be due at one more time; None where a text says anything else.

    Another day of the week joins those of a weekly one; any other time is a second reminder of
    the same task beside it.
    """
    told = parsed.values or parsed.events or parsed.question is not None
    if spoken is None or spoken.next_due is None or told or "?" in turn.incoming.text:
        return None
    when = further_time(" ".join(fold(turn.incoming.text).strip(EDGES).split()))
    if when is None:
        return None
    request = parse_request(f"{spoken.what} {when}", turn.local_now, turn.chat.zone)
    if not isinstance(request, Request):
        return None
    rule = from_text(spoken.rule)
    if isinstance(rule, Once) and isinstance(request.rule, Weekly):
        goes_on = request.rule
        if not request.clock_time_said:
            at = spoken.next_due.astimezone(turn.chat.zone).time().replace(second=0, microsecond=0)
            goes_on = replace(goes_on, at=at)
        if next_after(goes_on, spoken.next_due - A_MOMENT, turn.chat.zone) == spoken.next_due:
            plan = Plan(goes_on, spoken.next_due - A_MOMENT, spoken.next_due)
            return await reminder_moving.to_plan(turn, spoken, plan)
        first = next_after(goes_on, spoken.next_due, turn.chat.zone)
        if first is not None and goes_on_after(turn.incoming.text):
            request = replace(request, rule=goes_on, anchor=spoken.next_due, first=first)
    if isinstance(rule, Weekly):
        days, hour = _weekly(turn, request, rule, when)
        if days is not None and hour is None:
            more = replace(rule, days=(*rule.days, *days))
            first = next_after(more, turn.now, turn.chat.zone, spoken.anchor)
            if first is not None:
                return await reminder_moving.to_plan(turn, spoken, Plan(more, spoken.anchor, first))
        if days is not None and hour is not None:
            apart = replace(hour, days=days)
            first = next_after(apart, turn.now, turn.chat.zone, turn.now)
            request = request if first is None else replace(request, rule=apart, first=first)
    return await reminders.make(turn, request, [f"{spoken.what} {when}"], beside=[spoken.id])


async def other_job(
    turn: Turn, offer: Offer | None, spoken: Reminder | None, parsed: Parsed
) -> list[Reply] | None:
    """``and in the evening to test kh``: another task, as if it were told in one breath before.

    What it leaves out, a day or an hour, it has from the one just set.
    """
    made = {} if offer is None else offer.context.get(reminders.MADE, {})
    before = made.get("said", [])
    asked = parsed.question is not None and parsed.question.kind not in {"dose", "change"}
    if spoken is None or len(before) != 1 or asked or parsed.values or "?" in turn.incoming.text:
        return None
    rest = joined(turn.incoming.text)
    timed = None if rest is None or is_no_task(rest) else split_time(rest)
    if rest is None or timed is None or not timed[0]:
        return None
    deeds = parsed.events or parsed.question is not None
    if (own := _own_rhythm(turn, rest)) is not None:
        return await reminders.make(turn, own, [rest], beside=[spoken.id])
    if deeds or not (names_task(timed[0]) or set(fold(timed[0]).split()) & TO):
        return None
    jobs = parse_several(f"{before[0]} and {rest}", turn.local_now, turn.chat.zone)
    if isinstance(jobs, Problem) or len(jobs) < 2:
        return None
    alone, job = jobs[-1]
    return await reminders.make(turn, job, [alone], beside=[spoken.id])


def _own_rhythm(turn: Turn, rest: str) -> Request | None:
    """``root tabs every 3 months``: any task, where it has a rhythm of its own."""
    request = parse_request(rest, turn.local_now, turn.chat.zone)
    if not isinstance(request, Request) or isinstance(request.rule, Once):
        return None
    return request if 0 < len(request.what.split()) <= MOST_WORDS else None


def _weekly(
    turn: Turn, request: Request, rule: Weekly, when: str
) -> tuple[tuple[int, ...] | None, Weekly | None]:
    """The days of the week that are named beside a weekly rule, and its like at another hour."""
    if isinstance(request.rule, Weekly):
        other = request.clock_time_said and request.rule.at != rule.at
        return request.rule.days, request.rule if other else None
    if not isinstance(request.rule, Once) or not names_weekday(when):
        return None, None
    local = request.first.astimezone(turn.chat.zone)
    other = request.clock_time_said and local.time() != rule.at
    return (local.weekday(),), replace(rule, at=local.time()) if other else None
