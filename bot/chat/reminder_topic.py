"""What a reminder is of that names no task: ``remind me in a week``, right after what was told."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import datetime

from bot.chat.patience import PATIENCE
from bot.chat.turn import Turn
from bot.chat.words import reminder_talk as talk_words
from bot.chat.words.names import label
from bot.store.reminders import Reminder
from core.message.fold import fold
from core.message.model import Event, Parsed, Value
from core.message.reminder_when import pattern
from core.message.still_planned import planned_in
from core.schedule import split_time
from core.schedule.words.tasks import ARTICLES


def task_of(told: Parsed) -> str:
    """The task to do once more what was told."""
    return _again(told.values, told.events)


def _again(values: Sequence[Value], events: Sequence[Event]) -> str:
    if values:
        shown = dict.fromkeys(label(value.analyte) for value in values)
        return talk_words.test_again(list(shown))
    event = events[0]
    share = "" if event.percent is None else f" {event.percent:g}%"
    return talk_words.again(event.kind) + share


async def planned_then(turn: Turn, text: str) -> str | None:
    """``remind me then`` behind a plan that was told beside a value: the task at its time.

    None where no plan was told right before, or the text has another time.
    """
    newest = next(iter(await turn.uow.offers.latest(turn.chat.id, 1)), None)
    told = pattern("at_then").search(fold(turn.incoming.text)) is not None
    if newest is None or turn.now - newest.made_at > PATIENCE or not told:
        return None
    if newest.entry_id is None or split_time(text) is not None:
        return None
    entry = await turn.uow.log.current(turn.chat.id, newest.entry_id)
    said = "" if entry is None else fold(entry.text or "")
    place = planned_in(said)
    plan = None if place is None else split_time(said[place[1] : place[2]])
    if plan is None:
        return None
    front = pattern("at_then").match(fold(text))
    task = text if front is None else text[front.end() :].strip(" .!").removeprefix("to ")
    return f"{task.strip() or plan[0]} {plan[1]}"


async def same_time(turn: Turn) -> datetime:
    """The time that `same time` means: of the reminder just spoken of, else now; local."""
    newest = next(iter(await turn.uow.offers.latest(turn.chat.id, 1)), None)
    context = {} if newest is None or turn.now - newest.made_at > PATIENCE else newest.context
    about = context.get("reminder_made", {}).get("id") or context.get("reminder_id")
    listed = context.get("reminder_ids", [])
    about = listed[0] if about is None and len(listed) == 1 else about
    reminder = None if about is None else await turn.uow.reminders.get(about)
    due = None if reminder is None else (reminder.open_due or reminder.next_due)
    return turn.local_now if due is None else due.astimezone(turn.chat.zone)


async def for_another(turn: Turn, spoken: Reminder | None) -> str | None:
    """``and the cube on friday``: the task just set, for the tank that is named, at that time.

    None where a text has any other word, or no other tank.
    """
    timed = None if spoken is None else split_time(turn.incoming.text.strip(" .!"))
    if spoken is None or timed is None:
        return None
    words = [word for word in timed[0].split() if fold(word) not in ARTICLES]
    tank = turn.tank_named(" ".join(words))
    if tank is None or tank.id == spoken.tank_id:
        return None
    former = turn.tank_by_id(spoken.tank_id)
    name = "" if former is None else former.name
    task = re.sub(rf"\b(?:(?:in|for) )?{re.escape(name)}\b", " ", spoken.what, flags=re.IGNORECASE)
    task = " ".join((task if name else spoken.what).split()).strip(" ,:;")
    return f"{tank.name}: {task} {timed[1]}" if task else None


async def topic(turn: Turn, *, again: bool = False) -> str | None:
    """The task of what was just put on record, or with `again` set; None where nothing was.

    Notes
    -----
    A dose is none: how much of what is to go in again, and whether, is not known by it.
    Only the newest reply counts: what was spoken of before is no topic any more.
    """
    newest = next(iter(await turn.uow.offers.latest(turn.chat.id, 1)), None)
    if newest is None or turn.now - newest.made_at > PATIENCE:
        return None
    about = newest.context.get("reminder_made", {}).get("id") or newest.context.get("reminder_id")
    if about is not None and not again:
        return None
    if about is not None:
        reminder = await turn.uow.reminders.get(about)
        return None if reminder is None else reminder.what
    if newest.entry_id is None:
        return None
    entry = await turn.uow.log.current(turn.chat.id, newest.entry_id)
    if entry is None or not (entry.readings or entry.events):
        return None
    if not entry.readings and entry.events[0].what.kind == "dose":
        return None
    return _again([r.what for r in entry.readings], [e.what for e in entry.events])
