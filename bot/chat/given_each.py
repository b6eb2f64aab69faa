"""``ok did both`` after a plan for each of two tanks: a part of each went in, not two of one."""

from __future__ import annotations

from typing import Final

from bot.chat import doses, own_plan
from bot.chat.given_plan import LOG_SOME, OF_PLAN, Given, given
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, LOOKED_AT, PATIENCE
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import given_each as words
from bot.store.offers import Choice, Offer
from core.message.plan_said import said_of_plan
from core.message.tank_talk import names_both

LOG_EACH: Final = "log_each"
"""What the button of a part of each plan does."""
TWO: Final = 2
"""Parts of a plan of which `both` may be said as well."""


async def told(turn: Turn, plan: Given) -> list[Reply] | None:
    """Put a part of each plan on record; asked where both parts of the newer may be meant.

    None where one plan alone is spoken of, or parts are named.
    """
    said = said_of_plan(turn.incoming.text)
    if said is None or "part" in said.classes or not names_both(turn.incoming.text):
        return None
    before = await _before(turn, plan)
    of, newer = (
        None if before is None else doses.tank_of(turn, before.held),
        doses.tank_of(turn, plan.held),
    )
    if before is None or of is None or newer is None:
        return None
    if plan.count != TWO:
        return await _log(turn, [before, plan], turn.incoming.update_id)
    twice = doses.so_much_of(plan.held, float(TWO))
    choices = [
        Choice(words.a_part_each(of.name, newer.name), LOG_EACH, "", {"of": before.offer.id}),
        Choice(words.two_parts(newer.name), LOG_SOME, "", {"of": plan.offer.id, "held": twice}),
    ]
    lines, kept = words.which(of.name, newer.name), {OF_PLAN: plan.offer.id}
    return [await turn.reply(lines, choices=choices, context=kept)]


async def press(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Put a part of each of the two plans on record, once."""
    found = [
        await turn.uow.offers.get(each) for each in (choice.arguments["of"], offer.context[OF_PLAN])
    ]
    plans = [plan for each in found if each is not None and (plan := given(each)) is not None]
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    return await _log(turn, plans, str(offer.id))


async def _log(turn: Turn, plans: list[Given], once: str) -> list[Reply]:
    replies: list[Reply] = []
    for plan in plans:
        tank = doses.tank_of(turn, plan.held)
        held = plan.held | {"tank_id": None if tank is None else tank.id}
        said_by = f"{own_plan.log_id(plan.offer.id)}:{once}"
        replies += await doses.log_parts(turn, said_by, held)
    return replies


async def _before(turn: Turn, plan: Given) -> Given | None:
    """The plan of another tank that was given right before, where nothing of either went in."""
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if turn.now - offer.made_at > patience or offer.entry_id is not None:
            return None
        other = given(offer)
        if other is None or offer.id == plan.offer.id:
            continue
        tanks = [doses.tank_of(turn, each.held) for each in (other, plan)]
        logged = [await own_plan.share_logged(turn, p.offer.id, p.held) for p in (other, plan)]
        apart = None not in tanks and tanks[0] is not tanks[1]
        return other if apart and not any(logged) else None
    return None
