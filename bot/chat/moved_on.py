"""Whether something else than a plan was spoken of since it was given: `10 g in` may be of that."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from bot.chat import own_plan, unheard
from bot.chat.given_plan import Given
from bot.chat.model import Reply
from bot.chat.patience import LOOKED_AT
from bot.chat.turn import Turn
from bot.chat.words import given_parts as words
from bot.store.offers import Choice

DOSED: Final = frozenset(
    {"kh", "gh", "calcium", "magnesium", "potassium", "nitrate", "phosphate", "iron", "salinity"}
)
"""Analytes that salts raise: a reading of one tells of what may go in next."""


async def since(turn: Turn, plan: Given) -> bool:
    """Whether a line was not understood, or another value or substance was told since a plan."""
    (newest, *_older) = await turn.uow.offers.latest(turn.chat.id)
    doubted = newest.id > plan.offer.id and any(c.verb == "take_doubt" for c in newest.choices)
    if doubted or await unheard.since(turn, newest):
        return True
    if not plan.salts:
        return False
    own, salts = set(plan.analytes), {name for name, _grams in plan.salts}
    if own & {"gh"}:
        own |= {"calcium", "magnesium"}
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if offer.id <= plan.offer.id:
            break
        if offer.entry_id is None:
            continue
        entry = await turn.uow.log.current(turn.chat.id, offer.entry_id)
        if entry is None:
            continue
        if await own_plan.is_part(turn, entry, plan.offer.id):
            break
        told = {each.what.analyte for each in entry.readings} & DOSED
        put_in = {each.what.substance for each in entry.events if each.what.kind == "dose"}
        if (told and not told & own) or put_in - salts:
            return True
    return False


async def ask(
    turn: Turn, held: Mapping[str, Any], logged: Choice, kept: Mapping[str, Any]
) -> Reply:
    """Ask what so much is of; `logged` is the button that says of the plan.

    `kept` makes a word that it is in (`done`) ask again.
    """
    if "spoons" in held:
        lines = words.spoons_of_what(held["spoons"])
        return await turn.reply(lines, expects="followup")
    lines = (
        words.millilitres_of_what(held["millilitres"])
        if "millilitres" in held
        else words.grams_of_what(held["grams"])
    )
    other = Choice(words.no_other(), "log_none", "no", {"other": True})
    return await turn.reply(lines, choices=[logged, other], context=kept)
