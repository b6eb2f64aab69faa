"""When a stored reminder is due next, and what answering it does to it."""

from __future__ import annotations

from datetime import datetime, time, timedelta

from bot.store.chats import Chat
from bot.store.reminders import Reminder
from bot.store.uow import UnitOfWork
from core.schedule import Every, Once, Plan, Quiet, from_text, next_after, to_text

EARLY = timedelta(hours=3)
"""So long before a fixed occurrence its task counts as done for it."""

MOMENT = timedelta(microseconds=1)
"""The least time between two moments."""


def quiet_of(chat: Chat) -> Quiet | None:
    """The quiet hours of a chat."""
    if chat.quiet is None:
        return None
    start, end = chat.quiet.split("-")
    return Quiet(time.fromisoformat(start), time.fromisoformat(end))


def wake_time(due: datetime, chat: Chat) -> datetime:
    """When something that is due may be said: after a holiday, outside quiet hours.

    What a night puts off into a holiday waits until that is over too.
    """
    quiet = quiet_of(chat)
    moment = after_pause(due if quiet is None else quiet.release(due, chat.zone), chat)
    return moment if quiet is None else quiet.release(moment, chat.zone)


def after_pause(moment: datetime, chat: Chat) -> datetime:
    """A moment, or the end of the pause that it falls into."""
    if chat.paused_until is None or moment >= chat.paused_until:
        return moment
    begun = chat.paused_from is None or moment >= chat.paused_from
    return chat.paused_until if begun else moment


def occurrence_after(
    reminder: Reminder, chat: Chat, after: datetime, anchor: datetime | None = None
) -> datetime | None:
    """The next occurrence by the rule, strictly after a moment."""
    rule = from_text(reminder.rule)
    return next_after(rule, after, chat.zone, anchor or reminder.anchor)


async def answer_done(
    uow: UnitOfWork, chat: Chat, reminder: Reminder, at: datetime, *, early: bool = False
) -> Reminder:
    """Note that a task was done at a moment; a counting rule starts again from there.

    On fixed days a task done shortly before it falls due is that occurrence done; with `early`,
    which is what the keeper said, however long before.
    """
    anchor = max(at, reminder.anchor) if reminder.counts_from_done else reminder.anchor
    ahead = early and reminder.open_due is None and not reminder.counts_from_done
    before = ahead or is_early(reminder, at)
    told = max(at, reminder.open_due or at)  # what waits is answered, however early it was done
    after = reminder.next_due if before and reminder.next_due else told
    return await _close(uow, chat, reminder, after=after, anchor=anchor, ended_at=at)


def is_early(reminder: Reminder, at: datetime) -> bool:
    """Tell whether a moment lies just before a fixed occurrence that is not open yet."""
    due = reminder.next_due
    if due is None or reminder.open_due is not None or reminder.counts_from_done:
        return False
    return due - EARLY <= at < due


async def skip(uow: UnitOfWork, chat: Chat, reminder: Reminder, now: datetime) -> Reminder:
    """Let one occurrence go; the rule counts on as if nothing had been asked."""
    after = max(now, reminder.open_due or now)
    return await _close(uow, chat, reminder, after=after, anchor=reminder.anchor, ended_at=now)


async def skip_next(uow: UnitOfWork, chat: Chat, reminder: Reminder, now: datetime) -> Reminder:
    """Let the next occurrence go before it is due; the rule counts on as if it had been."""
    after = max(now, reminder.open_due or reminder.next_due or now)
    return await _close(uow, chat, reminder, after=after, anchor=reminder.anchor, ended_at=now)


async def rest(
    uow: UnitOfWork, chat: Chat, reminder: Reminder, until: datetime, now: datetime
) -> Reminder:
    """Let all occurrences before a moment go; the rule counts on as if they had been."""
    after = max(now, until - MOMENT)
    return await _close(uow, chat, reminder, after=after, anchor=reminder.anchor, ended_at=now)


async def put_off(uow: UnitOfWork, reminder: Reminder, until: datetime) -> Reminder:
    """Ask again at a moment that the keeper chose, quiet hours or not."""
    await uow.reminders.change(
        reminder.id, state="due", open_due=None, next_due=until, wake_at=until, message_ref=None
    )
    return await _again(uow, reminder)


async def move(uow: UnitOfWork, chat: Chat, reminder: Reminder, to: Plan) -> Reminder:
    """Let a reminder be due by another rule, or at another time of its own."""
    await uow.reminders.change(
        reminder.id,
        rule=to_text(to.rule),
        counts_from_done=isinstance(to.rule, Every) and reminder.kind in {"test", "change"},
        anchor=to.anchor,
        state="due",
        open_due=None,
        next_due=to.first,
        wake_at=wake_time(to.first, chat),
        message_ref=None,
    )
    return await _again(uow, reminder)


async def end(uow: UnitOfWork, reminder: Reminder, now: datetime) -> None:
    """End a reminder for good; its row stays."""
    await uow.reminders.change(
        reminder.id, state="due", open_due=None, next_due=None, wake_at=None, ended_at=now
    )


async def reschedule(uow: UnitOfWork, chat: Chat, now: datetime, *, zone_changed: bool) -> None:
    """Work out a chat's wake times again after its quiet hours, holiday or zone changed.

    With a new zone, clock times mean the new clocks: the next occurrence is found again. A
    single moment stays where it is, whatever the clocks.
    """
    for reminder in await uow.reminders.of_chat(chat.id):
        due = reminder.next_due
        if due is None:
            continue
        if zone_changed and not isinstance(from_text(reminder.rule), Once):
            due = occurrence_after(reminder, chat, max(now, reminder.open_due or now)) or due
        await uow.reminders.change(reminder.id, next_due=due, wake_at=wake_time(due, chat))


async def _close(
    uow: UnitOfWork,
    chat: Chat,
    reminder: Reminder,
    *,
    after: datetime,
    anchor: datetime,
    ended_at: datetime,
) -> Reminder:
    due = occurrence_after(reminder, chat, after, anchor)
    await uow.reminders.change(
        reminder.id,
        state="due",
        open_due=None,
        anchor=anchor,
        next_due=due,
        wake_at=None if due is None else wake_time(due, chat),
        message_ref=None,
        ended_at=ended_at if due is None else None,
    )
    return await _again(uow, reminder)


async def _again(uow: UnitOfWork, reminder: Reminder) -> Reminder:
    found = await uow.reminders.get(reminder.id)
    if found is None:  # rows end, they are never deleted
        raise LookupError(f"reminder {reminder.id} is gone")
    return found
