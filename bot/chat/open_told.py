"""`no, the reef` behind what was told and is asked about: that is meant, nothing older.

So it is right after a deed that is doubted: what is on record of before stays where it is.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat.model import Line, Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import Turn
from bot.chat.words import misput, plan_talk
from bot.chat.words import readings as words
from bot.store.offers import BESIDE, Offer
from bot.store.tanks import StoredTank
from core.message import parse

TOLD: Final = "asked_of"
"""Under which is kept what was told and is asked about, and the newest entry of that time."""


async def keep(turn: Turn) -> None:
    """Keep the message as one that is asked about; nothing of it is on record."""
    held = {TOLD: {"text": turn.incoming.text, "entry": await newest(turn)}}
    await turn.uow.offers.add(
        turn.chat.id, Offer(choices=(), made_at=turn.now, expects=BESIDE, context=held)
    )


async def newest(turn: Turn) -> int:
    """The newest entry on record; 0 where there is none."""
    return max([0, *(each.id for each in await turn.uow.log.newest(turn.chat.id, 1))])


async def instead(turn: Turn, tank: StoredTank) -> list[Reply] | None:
    """What is asked about, read again for a tank; None where an entry was told after it."""
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    told = await turn.uow.offers.told_of(turn.chat.id, TOLD)
    made_at, held = told[0] if told else (turn.now, None)
    if held is None or turn.route is None or turn.now - made_at > patience:
        return None
    if held["entry"] != await newest(turn):
        return None
    turn.incoming = replace(turn.incoming, text=f"{tank.name}: {held['text']}")
    await turn.use_tank(tank)
    replies = await turn.route(turn, parse(turn.incoming.text, turn.context()))
    if turn.unheard:  # gave the second: of nothing that was told there
        turn.unheard = False
        return [await turn.reply(misput.how_much(tank.name))]
    lead = Line(words.so_it_is_of(tank.name))
    return [replace(each, lines=(lead, *each.lines)) for each in replies[:1]] + replies[1:]


async def pending(turn: Turn) -> bool:
    """Whether what was told last is still asked about, and no entry was told after it."""
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    told = await turn.uow.offers.told_of(turn.chat.id, TOLD)
    made_at, held = told[0] if told else (turn.now, None)
    return (
        held is not None and turn.now - made_at <= patience and held["entry"] == await newest(turn)
    )


async def how_much(turn: Turn) -> list[Reply]:
    """Ask how much of what went in; nothing of it is on record."""
    await keep(turn)
    return [await turn.reply(plan_talk.how_much_of_what())]
