"""Taking back: what an entry replaced stands again, and history keeps both.

A plain `undo` is of the line before it. Where that put nothing on record, or what is on record is
old, it is named and taken back by a button only.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from typing import Final

from bot.chat import introduction_undo, reminder_answers, reminders, reminding
from bot.chat.model import Reply
from bot.chat.patience import LOOKED_AT, PATIENCE
from bot.chat.replacing import replacement, said
from bot.chat.turn import Turn
from bot.chat.words import buttons, general, introducing
from bot.chat.words import readings as words
from bot.chat.words import undoing as undo_words
from bot.store.log import Entry
from bot.store.offers import Choice, Offer
from bot.store.reminders import Reminder
from core.message.model import Command, Parsed

OLDER: Final = "undo_older"
"""Under which an offer keeps that it asked whether what is older is to be taken back."""


async def pass_by(turn: Turn, parsed: Parsed, replies: Sequence[Reply]) -> None:
    """Mark what was put on record last as older than a message that nothing was kept of."""
    undone = parsed.command is not None and parsed.command.name == "undo"
    kept = (
        undone or not replies or not turn.line or any(reply.token is not None for reply in replies)
    )
    newest = None if kept else next(iter(await turn.uow.offers.latest(turn.chat.id)), None)
    if newest is not None and "passed" not in newest.line and _stored(newest):
        await turn.uow.offers.pass_by(newest.id)


async def undo(turn: Turn, _command: Command, _parsed: Parsed) -> list[Reply]:
    """Take back the newest entry of whoever says so, or the reminder that was made after it."""
    if (unmade := await introduction_undo.typed(turn)) is not None:
        return unmade
    if (older := await _of_older(turn)) is not None:
        return older
    if (back := await _changed_reminder(turn)) is not None:
        return back
    if (ended := await reminders.unmake(turn)) is not None:
        return ended
    await turn.know_waters()
    author = turn.incoming.author_id if turn.incoming.group else None
    entry = await turn.uow.log.latest(turn.chat.id, author)
    made = None if entry is None or entry.is_empty else await _made_with(turn, entry)
    taken = await take_back(turn, entry)
    return taken if made is None else [*taken, made]


MADE_LATELY: Final = 4
"""Replies among which the one stands that told of a tank made by the same message."""


async def _made_with(turn: Turn, entry: Entry) -> Reply | None:
    """Ask whether the tank that was made by the same message goes as well; None where none was."""
    for offer in await turn.uow.offers.latest(turn.chat.id, MADE_LATELY):
        for choice in offer.choices:
            message = entry.update_id.partition(":")[0]
            if choice.verb != "unmake_tank" or choice.arguments.get("update_id") != message:
                continue
            stored = turn.tank_by_id(choice.arguments["tank_id"])
            if stored is None or offer.used is not None or "before" in choice.arguments:
                continue
            yes = Choice(introducing.take_back(), choice.verb, "yes", choice.arguments)
            no = Choice(buttons.no(), "leave_out", "no")
            lines = introducing.tank_as_well(stored.name)
            return await turn.reply(lines, choices=[yes, no])
    return None


async def _of_older(turn: Turn) -> list[Reply] | None:
    """Offer what is older than the line before by a button; None where that line stored it."""
    author = turn.incoming.author_id if turn.incoming.group else None
    idle: str | None = None
    reminder: Reminder | None = None
    set_at = turn.now
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        line = offer.line
        if OLDER in offer.context and idle is None:
            return None
        if _stored(offer):
            idle = idle or ("passed" if "passed" in line else None)
            if idle is not None and line.get("id") == idle:
                return None
            made = offer.context.get(reminders.MADE)
            reminder = None if made is None else await turn.uow.reminders.get(made["id"])
            set_at = offer.made_at
            break
        if "id" in line and author in {None, line["author"]}:
            idle = idle or line["id"]
    if reminder is not None and reminder.ended_at is None:
        if idle is None and turn.now - set_at <= PATIENCE:
            return None
        stop = Choice(buttons.undo(), "stop_reminder", "undo", {"ids": [reminder.id]})
        at = set_at.astimezone(turn.chat.zone) if idle is None else None
        return [await _older(turn, reminding.said(turn, reminder), stop, at)]
    await turn.know_waters()
    entry = await turn.uow.log.latest(turn.chat.id, author)
    if entry is None or entry.is_empty or (idle and entry.update_id.split(":")[0] == idle):
        return None
    old = turn.now - entry.at > PATIENCE
    if idle is None and not old:
        return None
    back = Choice(buttons.undo(), "undo", "undo", {"entry_id": entry.id})
    at = entry.at.astimezone(turn.chat.zone) if idle is None else None
    return [await _older(turn, said(turn, entry), back, at)]


async def _changed_reminder(turn: Turn) -> list[Reply] | None:
    """Let a reminder be as it was, where what was done to it is the newest deed."""
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if _stored(offer):
            changed = offer.expects == "undo" and "stood" in offer.context and not offer.used
            return await reminder_answers.take_back(turn, offer) if changed else None
    return None


def _stored(offer: Offer) -> bool:
    """Whether a reply told of something kept, which an undo takes back."""
    undo = any(choice.meaning == "undo" for choice in offer.choices)
    kept = offer.entry_id is not None or reminders.MADE in offer.context
    return kept or offer.expects == "undo" or (undo and OLDER not in offer.context)


async def _older(turn: Turn, what: str, back: Choice, at: datetime | None) -> Reply:
    lines = undo_words.older(what) if at is None else undo_words.old(what, at, turn.local_now)
    return await turn.reply(lines, choices=[back], context={OLDER: True}, expects="followup")


async def press_undo(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Take back the entry that a reply confirmed, or what stands in its place by now."""
    await turn.know_waters()
    entry = await turn.uow.log.current(turn.chat.id, choice.arguments["entry_id"])
    if entry is None or entry.is_empty:
        return [await turn.reply(general.already())]
    return await take_back(turn, entry)


async def take_back(turn: Turn, entry: Entry | None, choices: Sequence[Choice] = ()) -> list[Reply]:
    """Take back an entry; its answer has the `choices` as buttons."""
    if entry is None or entry.is_empty:
        return [await turn.reply(words.nothing_to_undo())]
    undone = replace(replacement(turn, entry, "undo"), readings=(), events=())
    before = await _replaced_by(turn, entry)
    if before is not None:
        undone = replace(undone, readings=before.readings, events=before.events)
    await turn.uow.log.add(turn.chat.id, undone)
    lines = [words.undone(said(turn, entry))]
    if not undone.is_empty:
        lines.append(words.stands_again(said(turn, undone)))
    return [await turn.reply(lines, choices=choices)]


async def _replaced_by(turn: Turn, entry: Entry) -> Entry | None:
    """What stood before an entry; one that an undo made stands for the entry that it restored."""
    source: Entry | None = entry
    if entry.kind == "undo" and entry.replaces is not None:
        undone = await turn.uow.log.get(turn.chat.id, entry.replaces)
        source = None if undone is None else await _replaced_by(turn, undone)
    if source is None or source.replaces is None:
        return None
    return await turn.uow.log.get(turn.chat.id, source.replaces)
