"""``did you log it``: whether it is on record is told, and nothing is put on record for it."""

from __future__ import annotations

from datetime import timedelta
from typing import Final

from bot.chat import own_plan
from bot.chat.given_plan import Given, given
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, LOOKED_AT, PATIENCE
from bot.chat.plan_figures import part_of
from bot.chat.replacing import said as told_of
from bot.chat.turn import Turn
from bot.chat.words import doses as dose_words
from bot.chat.words import logged_asked as words
from bot.chat.words import plan_talk as plan_words
from bot.store.log import Entry
from core.message.logged_asked import of_record
from core.message.model import Command, Parsed

AMONG: Final = 12
"""Entries among which some hold what counts still."""

OF_LATE: Final = timedelta(days=2)
"""What was told since then may be meant, and one of it is as likely as the other."""

SHOWN: Final = 3


async def answer(turn: Turn, _parsed: Parsed) -> list[Reply] | None:
    """Say whether it is on record, or leave it off; None where neither is said."""
    said = of_record(turn.incoming.text) if turn.incoming.addressed else None
    if said is None:
        return None
    entry, plan = await _spoken_of(turn)
    if said == "asked":
        return [await _on_record(turn, entry, plan)]
    if said == "fraction":
        return None if plan is None else [await _how_many_grams(turn, plan)]
    if entry is None:
        return None if plan is None else [await turn.reply(plan_words.nothing_stored())]
    if turn.route is None:
        return None
    return await turn.route(turn, Parsed("command", command=Command("undo", "")))


async def _spoken_of(turn: Turn) -> tuple[Entry | None, Given | None]:
    """What was put on record where it was spoken of last, or else the plan that was."""
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if turn.now - offer.made_at > patience:
            break
        if offer.entry_id is not None:
            entry = await turn.uow.log.current(turn.chat.id, offer.entry_id)
            if entry is not None and not entry.is_empty:
                return entry, None
        if (plan := given(offer)) is not None:
            return None, plan
    return None, None


async def _newest(turn: Turn) -> Reply:
    """What is on record, however long ago it was told: who is told no may dose a second time."""
    kept = [entry for entry in await turn.uow.log.newest(turn.chat.id, AMONG) if not entry.is_empty]
    of_late = [entry for entry in kept if turn.now - entry.at <= OF_LATE]
    shown = [told_of(turn, entry) for entry in (of_late or kept[:1])[:SHOWN]]
    return await turn.reply(words.newest_on_record(shown) if shown else words.not_on_record())


async def _how_many_grams(turn: Turn, plan: Given) -> Reply:
    facts = {"parts": list(plan.parts)}
    return await turn.reply(words.how_many_grams(part_of(plan)), facts=facts)


async def _on_record(turn: Turn, entry: Entry | None, plan: Given | None) -> Reply:
    if entry is not None:
        return await turn.reply(words.on_record(told_of(turn, entry)))
    if plan is None:
        return await _newest(turn)
    logged = await own_plan.parts_logged(turn, plan.offer.id, plan.held)
    if logged:
        left = max(plan.count - logged, 0)
        lines = words.parts_on_record(min(logged, plan.count), plan.count)
        return await turn.reply(lines, facts={"left": left, "parts": list(plan.parts)})
    below = plan.facts.get("only_if_ammonia_below")
    only = None if below is None else dose_words.only_below(below)
    facts = {"left": plan.count, "parts": list(plan.parts)}
    facts |= {} if below is None else {"only_if_ammonia_below": below}
    return await turn.reply(plan_words.none_logged(plan.count, part_of(plan), only), facts=facts)
