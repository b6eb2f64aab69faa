"""A tank holds another amount of water than was on record: said, undone, and what it makes void."""

from __future__ import annotations

from typing import Final

from bot.chat import replanned, standing
from bot.chat.model import Reply
from bot.chat.tank_volumes import facts
from bot.chat.turn import Turn
from bot.chat.words import buttons, general
from bot.chat.words import tanks as words
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.message.model import Question

SAME: Final = 1e-3
"""So near, as a share, two volumes are one."""


async def changed(
    turn: Turn, stored: StoredTank, before: float | None, lead: str | None = None
) -> list[Reply]:
    """Say what a tank holds now, judge by it what went in, and answer the plan anew.

    `before` is what it held on record until now [L]; where that is another amount, what was
    reckoned for it is said to hold no more, and it can be taken back.
    """
    plan = await replanned.newest(turn)
    now = stored.tank.volume_l
    since = turn.now - standing.DAY
    dosed = bool(await turn.uow.log.events(stored.id, kinds=["dose"], since=since))
    lines = [lead] if lead is not None else words.changed(stored.tank)
    other = before is not None and now is not None and abs(before - now) > SAME * before
    if not other or before is None or now is None:
        replies = [await turn.reply(lines, facts=facts(stored))]
    else:
        planned = plan is not None and replanned.is_of(plan, stored)
        of_plan = words.not_for(before, now) if planned or dosed else words.until_now(before)
        lines = [*lines, of_plan]
        held = {"tank_id": stored.id, "volume_l": before, "was": now}
        # What was set by then is of the volume before: its amounts are not said again.
        living = [each.id for each in await turn.uow.reminders.of_chat(turn.chat.id)]
        replies = [
            await turn.reply(
                lines,
                facts=facts(stored) | {"before_l": before},
                choices=[Choice(buttons.undo(), "volume_back", "undo", held)],
                expects="undo",
                context={replanned.RESIZED: {**held, replanned.SET_BEFORE: living}},
            )
        ]
    if dosed:
        replies += await standing.status(turn, Question("safe", stored.name))
    return [*replies, *await replanned.for_volume(turn, stored, plan)]


async def take_back(turn: Turn, offer: Offer) -> list[Reply] | None:
    """``undo`` right after a tank got another volume: it has the one before again."""
    held = offer.context[replanned.RESIZED]
    stored = turn.tank_by_id(held["tank_id"])
    if stored is None or stored.tank.volume_l != held["was"]:
        return None  # changed since
    if not await turn.uow.offers.take(offer.id, "undo"):
        return None
    await turn.uow.offers.close(offer.id)
    back = await turn.change_tank(stored, volume_l=held["volume_l"])
    return [await turn.reply(words.resized_back(back.tank), facts=facts(back))]


async def press_back(turn: Turn, offer: Offer, _choice: Choice) -> list[Reply]:
    """Take a tank's other volume back."""
    replies = await take_back(turn, offer)
    return [await turn.reply(general.already())] if replies is None else replies
