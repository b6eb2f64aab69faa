"""A message that its author edits: what it says now stands in the place of what it said."""

from __future__ import annotations

from bot.chat import moves, readings, sources
from bot.chat.asking import ask
from bot.chat.model import Reply
from bot.chat.replacing import said, store, tank_of
from bot.chat.told import entry_of, place
from bot.chat.turn import Turn
from bot.chat.words import readings as words
from bot.store.log import Entry
from core.message import parse


async def edited(turn: Turn) -> list[Reply]:
    """An edited message replaces what it said before; one that reads as nothing changes nothing."""
    await turn.know_waters()
    ref = turn.incoming.message_ref
    entry = None if ref is None else await turn.uow.log.by_message(turn.chat.id, ref)
    if entry is None or entry.is_empty:
        return await _edited_without_entry(turn, entry)
    turn.now = entry.at
    parsed = parse(turn.incoming.text, turn.context())
    asked: list[Reply] = []
    if parsed.command is not None and parsed.command.name == "source":
        told = await sources.told_in(turn, parsed.command)
    else:
        default = tank_of(turn, entry)
        parsed, asked = await moves.settle(turn, moves.named(turn, parsed), default, anew=True)
        told = place(turn, parsed, default) if parsed.values or parsed.events else []
    if asked:
        return asked
    if not told:
        return [await turn.reply(words.edit_not_understood())]
    before = said(turn, entry)
    after = entry_of(turn, told, kind="edit", replaces=entry.id)
    lead = words.corrected(before, said(turn, after))
    replies = await store(turn, after, lead)
    if parsed.doubts:
        replies.append(await ask(turn, parsed.doubts, parsed))
    return replies


async def _edited_without_entry(turn: Turn, entry: Entry | None) -> list[Reply]:
    """An edit of a message that stored nothing may store now; one taken back stays so."""
    if entry is not None:
        return []
    parsed = parse(turn.incoming.text, turn.context())
    return await readings.keep(turn, parsed) if parsed.values or parsed.events else []
