"""``delete moss``: a tank's name alone is of the tank, which is asked about, and of no reminder.

So is a tank that its keeper has no more: ``sold that tank``.
"""

from __future__ import annotations

from bot.chat import tanks
from bot.chat.model import Reply
from bot.chat.turn import Turn
from core.message.model import Command, Parsed
from core.message.tank_deleted import tank_deleted, tank_gone


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Ask whether to delete the tank; None where nothing of that is told."""
    names = [tank.name for tank in turn.tanks if tank.tank.named]
    text, in_use = turn.incoming.text, turn.current_tank
    name = tank_deleted(text, names) if turn.incoming.addressed else None
    if name is None and turn.incoming.addressed and not parsed.values:
        name = tank_gone(text, names, None if in_use is None else in_use.name)
    if name is None:
        return None
    return await tanks.command(turn, Command("tank", f"delete {name}"), parsed)
