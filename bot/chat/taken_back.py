"""A call for help that was none: `no bleach went in, it was a joke`. It is asked before it is off.

What was read and logged stays, and so does what these show.
"""

from __future__ import annotations

from bot.chat.calls_kept import CALLED
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import taken_back as words
from bot.store.offers import Choice, Offer
from core.advice.emergencies import A_DAY
from core.message.model import Parsed
from core.message.taken_back import takes_back


async def answer(turn: Turn, parsed: Parsed) -> Reply | None:
    """Ask whether a call of the day is none; None where nothing of that is told."""
    beside = parsed.values or parsed.events or not turn.incoming.addressed
    if beside or not takes_back(turn.incoming.text):
        return None
    tank_id = turn.current_tank.id if turn.current_tank else None
    for made_at, called in await turn.uow.offers.told_of(turn.chat.id, CALLED):
        if not called or called["tank"] not in {tank_id, None} or turn.now - made_at > A_DAY:
            continue
        where = turn.current_tank.name if turn.current_tank else None
        yes = Choice(words.was_none(), "call_off", "yes", {"tank": tank_id})
        no = Choice(words.it_stands(), "call_stands", "no")
        facts = {"tank": where} if where else {}
        return await turn.reply(words.whether_none(where), choices=[yes, no], facts=facts)
    return None


async def press_off(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Set the calls of a tank aside."""
    await turn.uow.offers.set_aside(turn.chat.id, CALLED, choice.arguments["tank"])
    return [await turn.reply(words.off())]


async def press_stands(turn: Turn, _offer: Offer, _choice: Choice) -> list[Reply]:
    """Leave the call as it is."""
    return [await turn.reply(words.stands())]
