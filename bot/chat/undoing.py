"""Taking back: what an entry replaced stands again, and history keeps both."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat import reminders
from bot.chat.model import Reply
from bot.chat.replacing import replacement, said
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import readings as words
from bot.store.log import Entry
from bot.store.offers import Choice, Offer
from core.message.model import Command, Parsed


async def undo(turn: Turn, _command: Command, _parsed: Parsed) -> list[Reply]:
    """Take back the newest entry of whoever says so, or the reminder that was made after it."""
    if (ended := await reminders.unmake(turn)) is not None:
        return ended
    await turn.know_waters()
    author = turn.incoming.author_id if turn.incoming.group else None
    entry = await turn.uow.log.latest(turn.chat.id, author)
    return await take_back(turn, entry)


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
