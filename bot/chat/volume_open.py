"""How much a tank holds, while that is open: what an amount then says, and a plan's parts.

Open is a volume that was asked about and not answered, or told in words that nothing understood.
Neither a plan nor a part of an older one is told before the volume is settled; another amount
says which volume it is for.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta
from typing import Final

from bot.chat import replanned, tank_volumes, volume_unheard
from bot.chat.given_plan import OF_PLAN, Given, running
from bot.chat.model import Reply
from bot.chat.plan_figures import part_of
from bot.chat.tank_volumes import ASKED_VOLUME, ask_whether, facts
from bot.chat.turn import ASKED, Turn
from bot.chat.words import general
from bot.chat.words import volume_open as words
from bot.chat.words.numbers import plain
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank

SAME: Final = 0.01
"""So near, as a share, a volume told is the one on record."""

WAITS: Final = timedelta(hours=24)
"""So long an unanswered question of a volume makes an amount say which volume it is for."""

SETTLING: Final = frozenset({ASKED_VOLUME, replanned.RESIZED})
"""Keys of answers in which a volume was put right or asked about."""

LOOKED_AT: Final = 8
"""Newest offers among which such a question is looked for."""

OF_PART: Final = frozenset({"rest", "jugs", "stock"})
"""Facts of an answer that tells so much of a plan again."""


async def settled_first(turn: Turn, replies: Sequence[Reply]) -> list[Reply]:
    """The replies, but the question of the volume in the place of an amount that hangs on it."""
    told = [
        await _in_the_place_of(turn, each) or await _before_plan(turn, each) or each
        for each in replies
    ]
    return told if told != list(replies) else [*told, *await _unanswered(turn, replies)]


async def _before_plan(turn: Turn, reply: Reply) -> Reply | None:
    """What is open of the volume, before a plan that was just reckoned; None where nothing is."""
    stored = turn.tank_named(str(reply.facts.get("tank") or ""))
    if stored is None or (used := stored.tank.volume_l) is None or reply.token is None:
        return None
    plan = await turn.uow.offers.get(reply.token) if _is_amount_for(reply, stored) else None
    if plan is None or ASKED not in plan.context:
        return None
    held = {"tank_id": stored.id, "volume_l": used, "plan": plan.id}
    stays = Choice(words.stays(used), "volume_stays", "no", held)
    if (volume := await _asked(turn, stored)) is not None:
        lines = words.open_first(stored.name, used, volume)
        question = await ask_whether(turn, stored, volume, lines, no=stays)
    elif await _takes_room(turn, stored):
        question = await tank_volumes.ask_room(turn, stored, {"plan": plan.id})
    elif (text := await volume_unheard.left(turn, stored, SETTLING)) is not None:
        lines = words.unheard_first(stored.name, used, text)
        question = await turn.reply(lines, choices=[stays], facts=facts(stored))
    else:
        return None
    await turn.uow.offers.unshown(plan.id)
    return question


async def _in_the_place_of(turn: Turn, reply: Reply) -> Reply | None:
    """What is open of the volume, where a reply only tells a part of a plan again; else None."""
    if "events" in reply.facts or "volume_l" in reply.facts or reply.kind != "reply":
        return None
    plan = await running(turn)
    stored = None if plan is None else turn.tank_by_id(plan.tank_id)
    if plan is None or stored is None or stored.tank.volume_l is None:
        return None
    if OF_PART.isdisjoint(reply.facts) and part_of(plan) not in reply.text:
        return None
    used = stored.tank.volume_l
    if (was := _other_volume(plan, used)) is not None:
        return await _anew(turn, plan, stored, was)
    if (volume := await _asked(turn, stored)) is not None:
        lines = words.open_first(stored.name, used, volume)
        return await ask_whether(turn, stored, volume, lines, {OF_PLAN: plan.offer.id})
    if await _takes_room(turn, stored):
        return await tank_volumes.ask_room(turn, stored, {}, {OF_PLAN: plan.offer.id})
    if (text := await volume_unheard.left(turn, stored, SETTLING)) is None:
        return None
    told = words.unheard_first(stored.name, used, text)
    held = {"tank_id": stored.id, "volume_l": used}
    return await turn.reply(
        told,
        choices=[Choice(words.stays(used), "volume_stays", "", held)],
        facts=facts(stored),
        context={OF_PLAN: plan.offer.id},
    )


def _other_volume(plan: Given, used: float) -> float | None:
    """The volume that a plan was reckoned for, where the tank holds another by now. [L]"""
    was = plan.held.get("volume_l")
    if not isinstance(was, float | int) or abs(was - used) <= SAME * used:
        return None
    return float(was)


async def _anew(turn: Turn, plan: Given, stored: StoredTank, was: float) -> Reply:
    """A plan that was reckoned for another volume than its tank holds by now."""
    goal, target = plan.analytes[0], plan.facts.get("to")
    ask = f"dose {goal}" if target is None else f"dose {goal} {plain(target, 2)}"
    lines = words.ask_anew(was, stored.name, stored.tank.volume_l or 0.0, ask)
    choices = [Choice(ask, "say_again", "", {"text": ask})]
    held = facts(stored) | {"before_l": was}
    return await turn.reply(lines, choices=choices, facts=held, context={OF_PLAN: plan.offer.id})


async def _asked(turn: Turn, stored: StoredTank) -> float | None:
    """Another volume than on record that was asked about last and is not answered. [L]"""
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        held = offer.context.get(ASKED_VOLUME)
        if held is None or held["tank_id"] != stored.id:
            continue
        if offer.used is not None or turn.now - offer.made_at > WAITS:
            return None
        volume, used = float(held["volume_l"]), stored.tank.volume_l
        return None if used is None or abs(volume - used) <= SAME * used else volume
    return None


async def _takes_room(turn: Turn, stored: StoredTank) -> bool:
    """Whether it is open how much water stones and wood leave in a tank."""
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if not offer.context.keys().isdisjoint(SETTLING):
            return False
        if offer.context.get(tank_volumes.ROOM) == [stored.id, stored.tank.volume_l]:
            return offer.used is None and turn.now - offer.made_at <= WAITS
    return False


async def _unanswered(turn: Turn, replies: Sequence[Reply]) -> list[Reply]:
    """Say which volume an amount is for, while it is open what the tank holds; else nothing."""
    named = next((str(each.facts["tank"]) for each in replies if each.facts.get("tank")), "")
    stored = turn.tank_named(named) if named else None
    if stored is None or not any(_is_amount_for(each, stored) for each in replies):
        return []
    if (used := stored.tank.volume_l) is None:
        return []
    if (volume := await _asked(turn, stored)) is not None:
        lines = words.which_volume(stored.name, used, volume)
        return [await turn.reply(lines, facts=facts(stored) | {"told_l": volume})]
    text = await volume_unheard.left(turn, stored, SETTLING)
    if text is None:
        return []
    return [await turn.reply(words.perhaps_other(stored.name, used, text), facts=facts(stored))]


async def press_stays(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """The volume on record counts: what was not understood tells no other one."""
    stored = turn.tank_by_id(choice.arguments["tank_id"])
    if stored is None or not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    lines = words.so_it_stays(stored.name, choice.arguments["volume_l"])
    context = {ASKED_VOLUME: dict(choice.arguments)}
    told = await turn.reply(lines, expects="followup", context=context, facts=facts(stored))
    waiting = choice.arguments.get("plan")
    plan = None if waiting is None else await turn.uow.offers.get(waiting)
    return [told, *(await replanned.for_volume(turn, stored, plan) if plan is not None else ())]


def _is_amount_for(reply: Reply, stored: StoredTank) -> bool:
    """Whether a reply names how much of something is for a tank."""
    own = reply.facts.get("tank") == stored.name
    return own and not replanned.AMOUNTS.isdisjoint(reply.facts)
