"""What readings and events do to reminders: done is done, whoever noticed."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from bot.chat.told import Told
from bot.chat.turn import Turn
from bot.chat.words import reminders as words
from bot.chat.words.names import label
from bot.reminders import planning
from bot.store.reminders import Reminder
from core.analytes import ANALYTES
from core.schedule import Once, from_text
from core.substances import MEDIA

KIND_OF_EVENT = {
    "water_change": "change",
    "dose": "dose",
    "filter": "filter",
    "media": "media",
    "top_up": "top_up",
    "fed": "feed",
}

BEFORE_DUE = timedelta(days=1)
"""A task done this long before it fell due still settles it."""

_NAMES = {row.label.casefold(): row.id for row in ANALYTES.values()} | {
    name: name for name in ANALYTES
}


async def satisfied(turn: Turn, told: Told) -> list[str]:
    """Close the reminders that what was told does, move their next times, and say so."""
    done = [e.what for e in told.events if e.what.kind in KIND_OF_EVENT]
    done = [e for e in done if e.kind != "media" or e.substance in MEDIA]  # sand renews no carbon
    kinds = {KIND_OF_EVENT[e.kind] for e in done}
    measured = {reading.what.analyte for reading in told.readings}
    if measured:
        kinds.add("test")
    if not kinds:
        return []
    lines = []
    for reminder in await turn.uow.reminders.of_chat(turn.chat.id):
        if _is_about(reminder, told, turn) and reminder.kind in kinds:
            if reminder.kind == "test" and not _asks_for(reminder.what, measured):
                continue
            if not _counts(turn, reminder, told.at):
                continue
            if reminder.kind == "test" and (left := await _left(turn, reminder, told, measured)):
                if reminder.open_due is not None:
                    lines.append(words.still_to_test(said(turn, reminder), left))
                continue
            after = await planning.answer_done(turn.uow, turn.chat, reminder, told.at)
            lines.append(_closed(turn, reminder, after))
    return lines


def said(turn: Turn, reminder: Reminder) -> str:
    """A reminder's task in words."""
    tank = turn.tank_by_id(reminder.tank_id)
    return words.task(tank.name if tank else None, reminder.what)


def fitting_task(turn: Turn, reminders: list[Reminder], wanted: str) -> list[Reminder]:
    """The reminders whose task is what was said, else those whose task holds it."""
    if not wanted:
        return reminders
    exact = [r for r in reminders if wanted in {r.what.casefold(), said(turn, r).casefold()}]
    return exact or [each for each in reminders if wanted in said(turn, each).casefold()]


def local(turn: Turn, moment: datetime | None) -> datetime | None:
    """A moment by the chat's clock."""
    return None if moment is None else moment.astimezone(turn.chat.zone)


def _is_about(reminder: Reminder, told: Told, turn: Turn) -> bool:
    if reminder.tank_id is None:
        return len(turn.tanks) == 1
    return reminder.tank_id == told.tank.id


def _asks_for(what: str, measured: Iterable[str]) -> bool:
    """Tell whether a test names none of the analytes, or one that was measured.

    A task that advice made names them in the language of its turn.
    """
    named = _named(what)
    return not named or bool(named & set(measured))


def _named(what: str) -> set[str]:
    """The analytes that a task names."""
    known = _NAMES | {label(of).casefold(): of for of in ANALYTES}
    return {known[word] for word in what.casefold().replace(",", " ").split() if word in known}


async def _left(turn: Turn, reminder: Reminder, told: Told, measured: set[str]) -> list[str]:
    """What a test names that was measured neither now nor since shortly before it fell due."""
    missing = _named(reminder.what) - measured
    if not missing:
        return []
    since = max((reminder.open_due or told.at) - BEFORE_DUE, reminder.created_at)
    rows = await turn.uow.log.last_of_each(told.tank.id, sorted(missing), until=turn.now)
    done = {row.what.analyte for row in rows if row.at >= since}
    return [analyte for analyte in ANALYTES if analyte in missing - done]


def _counts(turn: Turn, reminder: Reminder, done: datetime) -> bool:
    """Tell whether something done at a moment does what the reminder asks for.

    An open one is done by anything since a day before it fell due. One that is not open yet moves
    if it counts from when its task was last done, and only forward; or if it is due on a fixed
    day very soon. A single reminder, such as a retest after a dose, is done only once it is open,
    or was and is put off.
    """
    if reminder.open_due is not None:
        return done >= reminder.open_due - BEFORE_DUE
    if _was_put_off(turn, reminder, done):
        return True
    if planning.is_early(reminder, done):
        return not isinstance(from_text(reminder.rule), Once)
    return reminder.counts_from_done and done > reminder.anchor and done <= turn.now


def _was_put_off(turn: Turn, reminder: Reminder, done: datetime) -> bool:
    """Tell whether it fell due about when something was done, and waits for another time now."""
    rule = from_text(reminder.rule)
    if isinstance(rule, Once):
        return rule.at <= turn.now and done >= rule.at - BEFORE_DUE
    if reminder.counts_from_done or reminder.next_due is None:
        return False
    just_before = reminder.next_due - timedelta(minutes=1)
    if planning.occurrence_after(reminder, turn.chat, just_before) == reminder.next_due:
        return False
    fell = planning.occurrence_after(reminder, turn.chat, done - BEFORE_DUE)
    return fell is not None and fell <= turn.now


def _closed(turn: Turn, before: Reminder, after: Reminder) -> str:
    upcoming = local(turn, after.next_due)
    return words.closes(said(turn, before), upcoming, turn.local_now)
