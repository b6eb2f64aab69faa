"""Reminders that are due, as messages: one with its five buttons, or several folded into one."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import Any

from bot.chat import dose_on_hold
from bot.chat.model import Reply
from bot.chat.offering import make_reply
from bot.chat.words import reminders as words
from bot.chat.words.text import _
from bot.store.chats import Chat
from bot.store.offers import Choice
from bot.store.reminders import Reminder
from bot.store.uow import UnitOfWork

MOST_BUTTONS = 8
"""Buttons of a folded message; the rest stands under "more"."""


async def compose(
    uow: UnitOfWork, chat: Chat, reminders: Sequence[Reminder], now: datetime
) -> Reply:
    """The message that says what is due in a chat at a moment of its clock."""
    names = {tank.id: tank.name for tank in await uow.tanks.of_chat(chat.id)}
    local = now.astimezone(chat.zone)
    reminders, held = await dose_on_hold.without_amounts(uow, chat, reminders, now)
    facts = {"reminders": [_fact(each, names, chat) for each in reminders]}
    facts |= dose_on_hold.facts(held)
    more: list[str] = []
    numbered: dict[str, Any] = {}
    if len(reminders) == 1:
        (only,) = reminders
        lines = words.due(_said(only, names), _due(only, chat), local, repeat=only.maybe_repeat)
        choices = answers(only, _occurrence(only))
    else:
        entries = [(_said(each, names), _due(each, chat), each.maybe_repeat) for each in reminders]
        lines = words.folded(entries, local)
        choices = [_opener(each, names) for each in reminders[:MOST_BUTTONS]]
        numbered = {"reminder_ids": [each.id for each in reminders]}
        more = [_said(each, names) for each in reminders[MOST_BUTTONS:]]
    return await make_reply(
        uow,
        chat.id,
        now,
        [*held, *lines],
        choices=choices,
        more=more,
        facts=facts,
        kind="reminder",
        at=local,
        context=numbered,
    )


def answers(reminder: Reminder, due: datetime) -> list[Choice]:
    """The five answers to one reminder, in their fixed order."""
    held: dict[str, Any] = {"reminder_id": reminder.id, "due": due.isoformat()}
    return [
        Choice(_(words.DONE), "done", "done", held),
        Choice(_(words.HOUR), "later", "", {**held, "until": "hour"}),
        Choice(_(words.EVENING), "later", "", {**held, "until": "evening"}),
        Choice(_(words.TOMORROW), "later", "", {**held, "until": "tomorrow"}),
        Choice(_(words.SKIP), "skip", "", held),
    ]


def _opener(reminder: Reminder, names: dict[int, str]) -> Choice:
    """The button of a folded message that opens one reminder's own five."""
    held = {"reminder_id": reminder.id, "due": _occurrence(reminder).isoformat()}
    return Choice(_said(reminder, names)[:40], "open_reminder", "", held)


def _occurrence(reminder: Reminder) -> datetime:
    due = reminder.next_due
    if due is None:
        raise ValueError(f"reminder {reminder.id} is not due")
    return due


def _due(reminder: Reminder, chat: Chat) -> datetime:
    return _occurrence(reminder).astimezone(chat.zone)


def _said(reminder: Reminder, names: dict[int, str]) -> str:
    return words.task(_tank(reminder, names), reminder.what)


def _tank(reminder: Reminder, names: dict[int, str]) -> str | None:
    return None if reminder.tank_id is None else names.get(reminder.tank_id)


def _fact(reminder: Reminder, names: dict[int, str], chat: Chat) -> dict[str, Any]:
    return {
        "id": reminder.id,
        "tank": _tank(reminder, names),
        "what": reminder.what,
        "due": _due(reminder, chat).isoformat(),
        "maybe_repeat": reminder.maybe_repeat,
    }
