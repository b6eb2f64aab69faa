"""Of which tank something is that was told without one, named right after it: `the left`."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import belongs
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.replacing import said
from bot.chat.turn import Turn
from bot.chat.words import tank_talk as words
from bot.store.log import Entry
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.message import parse
from core.message.misput import misput
from core.message.model import Command, Parsed
from core.message.tank_number import by_number, put_right

LEAST: Final = 2
"""So many tanks, of which another may be meant."""

_EDGES: Final = " ?!.,:@/"


def is_name_alone(turn: Turn) -> bool:
    """Whether a tank's name is all that was typed, or a command that is one: /tank."""
    return turn.tank_named(turn.incoming.text.strip(_EDGES)) is not None


async def told_shortly(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """`added 4 g to one`, of Tank one, and `to two i mean`: read again with the whole name."""
    said = turn.incoming
    if not said.addressed or len(turn.tanks) < LEAST or turn.typed is None:
        return None
    context = turn.context()
    if (whole := by_number(said.text, context)) is not None:
        turn.incoming = replace(said, text=whole)
        return await turn.typed(turn)
    if misput(said.text, context.tanks) is not None:
        return None  # of a plan's part that knows more
    if parsed.values or parsed.events or (name := put_right(said.text, context)) is None:
        return None
    turn.incoming = replace(said, text=f"i meant {name}")
    return await turn.typed(turn)


async def moved(turn: Turn, stored: StoredTank) -> list[Reply] | None:
    """Put what was just told without a tank in that one; None where nothing was."""
    entry = await _untold(turn, stored)
    if entry is None:
        return None
    await turn.use_tank(stored)
    return await belongs.move(turn, Command("move", stored.name), Parsed("none"), of=entry)


async def moved_beside(turn: Turn, stored: StoredTank, latest: Offer | None) -> list[Reply]:
    """Put what the question answered last told besides in that tank, with its wish; else nothing.

    `kh 4 in the lake want 10`, then `no i meant the reef`: both are of the reef.
    """
    newest = await turn.uow.log.newest(turn.chat.id, 1) if latest is not None else []
    entry = newest[0] if newest else None
    if latest is None or entry is None or entry.events or turn.route is None:
        return []
    if latest.entry_id is not None or latest.line.get("id") != entry.update_id:
        return []
    if {each.tank_id for each in entry.readings} == {stored.id}:
        return []
    replies = await belongs.move(turn, Command("move", stored.name), Parsed("none"), of=entry)
    await turn.use_tank(stored)
    goal = latest.context.get("facts", {}).get("to")
    if not isinstance(goal, int | float):
        return replies
    turn.incoming = replace(turn.incoming, text=f"dose kh {goal:g} in {stored.name}")
    return [*replies, *await turn.route(turn, parse(turn.incoming.text, turn.context()))]


async def offered(turn: Turn, stored: StoredTank) -> list[Reply]:
    """Ask of what was just told without a tank whether it is of that one; else nothing."""
    entry = await _untold(turn, stored)
    if entry is None:
        return []
    await turn.know_waters()
    text = f"that was {stored.name}"
    choices = [Choice(words.of_tank(stored.name), "say_again", "", {"text": text})]
    line = words.whether_of(said(turn, entry), stored.name)
    return [await turn.reply(line, choices=choices, facts={"tank": stored.name})]


async def _untold(turn: Turn, stored: StoredTank) -> Entry | None:
    """What was told last, where it named no tank and is kept in another than `stored`."""
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or latest[0].entry_id is None or turn.now - latest[0].made_at > patience:
        return None
    entry = await turn.uow.log.current(turn.chat.id, latest[0].entry_id)
    if entry is None or entry.is_empty:
        return None
    held = {each.tank_id for each in entry.readings} | {each.tank_id for each in entry.events}
    of = [turn.tank_by_id(each) for each in held]
    if len(of) != 1 or of[0] is None or of[0].id == stored.id:
        return None
    read = parse(entry.text, turn.context())
    told = [read.tank, *(each.tank for each in read.values), *(each.tank for each in read.events)]
    return None if any(told) or not (read.values or read.events) else entry
