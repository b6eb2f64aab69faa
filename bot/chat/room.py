"""``is my tank overstocked``: what the fish on record need once grown, beside what there is."""

from __future__ import annotations

import re
from typing import Final

from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import room as words
from core.advice.livestock import kept_in, plain_name, volume_for
from core.message.model import Parsed

_ASKS: Final = re.compile(
    r"\bover ?stocked\b|\btoo many (?:fish|fishes|animals)\b"
    r"|\buberbesetzt\b|\bzu viele (?:fische|tiere)\b"
    r"|\bsurpeuple\b|\btrop de poissons\b"
    r"|\b(?:sobrepoblad[oa]|superpoblad[oa])\b|\bdemasiados peces\b"
    r"|\bsuperlotad[oa]\b|\bsuperpovoad[oa]\b|\bpeixes demais\b|\bdemasiados peixes\b"
    r"|\bsovra(?:ffollat|ppopolat)[oa]\b|\btroppi pesci\b"
    r"|\boverbevolkt\b|\bte veel vissen\b"
    r"|\bprzerybion[yea]\b|\bza duzo ryb\b"
    r"|\boverbefolkat\b|\bfor manga fiskar\b"
)
"""Words for too many fish, without accents, in the nine languages."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """What is known of a tank's room; None where that is not asked."""
    text = turn.incoming.text
    if parsed.values or parsed.events or not turn.incoming.addressed:
        return None
    if len(text) > LONGEST or _ASKS.search(plain_name(text)) is None:
        return None
    said = f" {plain_name(text)} "
    named = [tank for tank in turn.tanks if f" {plain_name(tank.name)} " in said]
    stored = named[0] if len(named) == 1 else turn.current_tank
    if stored is None:
        return None
    kept = kept_in((await state_of(turn, stored, turn.now)).tank)
    volume, least = stored.tank.volume_l, volume_for(kept.known)
    unknown = [held.species for held in kept.unknown if held.count > 0]
    if volume is None or not kept.known:
        return [await turn.reply(words.untold(stored.name, volume), facts={"tank": stored.name})]
    facts = {"tank": stored.name, "volume_l": volume, "least_l": round(least, 1)}
    return [await turn.reply(words.room(stored.name, volume, least, unknown), facts=facts)]


LONGEST: Final = 200
"""A longer text asks more than this. [characters]"""
