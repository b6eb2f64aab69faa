"""``uk gallons``, ``imperial``: which gallon the chat means, and what was asked in the other."""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping
from dataclasses import replace
from typing import Any

from bot.chat import followups, tanks_told
from bot.chat.model import Line, Reply
from bot.chat.patience import PATIENCE
from bot.chat.tank_volumes import ask_whether
from bot.chat.turn import ASKED, Turn
from bot.chat.words import settings as words
from bot.store.offers import AT_HAND, Offer
from core.message import parse
from core.message.model import Parsed, Question
from core.message.volume_said import gallons_told, names_gallons

Topics = Mapping[str, Callable[[Turn, Question, Parsed], Awaitable[list[Reply]]]]


async def answer(turn: Turn, parsed: Parsed, topics: Topics) -> list[Reply] | None:
    """Keep the gallon for the chat; ask of a tank that was told in it, or answer anew."""
    told = parsed.values or parsed.events or parsed.question or parsed.command
    meant = None if told or not turn.incoming.addressed else gallons_told(turn.incoming.text)
    if meant is None:
        return None
    of_us = meant == "us"
    is_new = turn.chat.us_gallons != of_us
    if is_new:
        await turn.change_chat(us_gallons=of_us)
    kept = words.gallon(us=of_us)
    stored = turn.current_tank
    held = None if stored is None else stored.tank.volume_l
    volume = tanks_told.in_gallons(held, meant) if is_new and held is not None else None
    if stored is not None and volume is not None:
        return [await ask_whether(turn, stored, volume)]
    for offer in await turn.uow.offers.latest(turn.chat.id, AT_HAND):
        if turn.now - offer.made_at > PATIENCE:
            break
        if (again := await _anew(turn, offer, meant, topics)) is not None:
            first, *others = again
            return [replace(first, lines=(Line(kept), *first.lines)), *others]
    return [await turn.reply([kept])]


async def _anew(turn: Turn, offer: Offer, meant: str, topics: Topics) -> list[Reply] | None:
    """What was asked for so many gallons, of the gallon that was meant; None where it was none."""
    asked: dict[str, Any] | None = offer.context.get(ASKED)
    if asked is None:
        return None
    first = parse(asked["text"], turn.context()).question
    if first is None or first.kind not in topics:
        return None
    before = replace(first, **asked["changes"])
    if "volume_l" not in asked["changes"]:
        if before.volume_l is None or not names_gallons(asked["text"]):
            return None
        return await followups.changed(turn, asked, before, {}, topics)
    volume = asked["changes"]["volume_l"]
    volume = None if volume is None else tanks_told.in_gallons(volume, meant)
    if volume is None:
        return None
    return await followups.changed(turn, asked, before, {"volume_l": volume}, topics)
