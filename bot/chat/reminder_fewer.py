"""``cancel the wednesday one``: a day taken out of a reminder that comes on several."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat import agenda, reminder_moving
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.store.reminders import Reminder
from core.message.fold import fold
from core.message.reminder_when import pattern
from core.schedule import Once, Plan, Request, Weekly, from_text, next_after, parse_request


async def answer(turn: Turn, chosen: Sequence[Reminder], when: str) -> list[Reply] | None:
    """Take the days that are named out of the only one that has them beside others.

    All is listed where several may be meant; None where none has them so.
    """
    days = _days(turn, when)
    fitting = [each for each in chosen if days and _left(each, days)]
    if len(fitting) > 1:
        return await agenda.listed(turn)
    if not fitting:
        return None
    (only,) = fitting
    rule = from_text(only.rule)
    if not isinstance(rule, Weekly):
        return None
    fewer = replace(rule, days=_left(only, days))
    first = next_after(fewer, turn.now, turn.chat.zone, only.anchor)
    if first is None:
        return None
    return await reminder_moving.to_plan(turn, only, Plan(fewer, only.anchor, first))


def _left(reminder: Reminder, days: tuple[int, ...]) -> tuple[int, ...]:
    """The other days of a weekly one that has all of those; none where it has not."""
    rule = from_text(reminder.rule)
    if not isinstance(rule, Weekly) or not set(days) <= set(rule.days):
        return ()
    return tuple(day for day in rule.days if day not in days)


def _days(turn: Turn, when: str) -> tuple[int, ...]:
    """The days of the week that words of time name."""
    day = pattern("one").sub(" ", fold(when))
    request = parse_request(f"test {day}", turn.local_now, turn.chat.zone)
    if not isinstance(request, Request):
        return ()
    if isinstance(request.rule, Weekly):
        return request.rule.days
    single = isinstance(request.rule, Once)
    return (request.first.astimezone(turn.chat.zone).weekday(),) if single else ()
