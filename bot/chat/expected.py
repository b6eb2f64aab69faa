"""Plain answers to what the tool asked: a volume, a tank's name, a clock time."""

from __future__ import annotations

from datetime import datetime, timedelta

from bot.chat import (
    dosing,
    doubts,
    how_many,
    just_told,
    labels,
    reminder_answers,
    replanned,
    reports,
    resizing,
    tank_volumes,
    treatment_answers,
)
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import tanks as words
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.advice.dosing import Wish
from core.advice.inhabitants import number_in
from core.advice.livestock import plain_name
from core.message.model import Parsed
from core.message.tanks import match
from core.message.volume_said import volume_alone

PATIENCE = timedelta(hours=12)
"""A question older than this is not what a plain answer is about."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Take a message as the answer to the latest question; None where it is none."""
    latest = await turn.uow.offers.latest(turn.chat.id)
    if latest and parsed.command is None and turn.now - latest[0].made_at <= PATIENCE:
        lived_in = await treatment_answers.typed(turn, latest[0])
        if lived_in is not None:
            return lived_in
    offer = next((each for each in latest if each.expects != "followup"), None)
    if offer is None or offer.expects is None or turn.now - offer.made_at > PATIENCE:
        return None
    if offer.expects == "volume":
        return await _volume(turn, offer, parsed)
    if offer.expects == "undo" and parsed.command is not None and parsed.command.name == "undo":
        if replanned.RESIZED in offer.context:
            return await resizing.take_back(turn, offer)
        if just_told.UNDO in offer.context:
            return await labels.take_back(turn, offer)
        return await reminder_answers.take_back(turn, offer)
    if offer.expects == reports.PASTED:
        return await reports.pasted(turn, offer, parsed)
    if offer.expects == how_many.COUNT:
        return await _count(turn, offer)
    if offer.expects == "tank_for_text":
        return await _tank(turn, offer)
    return None


async def _volume(turn: Turn, offer: Offer, parsed: Parsed) -> list[Reply] | None:
    if parsed.values or parsed.events or parsed.command is not None:
        return None
    text = turn.incoming.text.strip()
    if text.replace(",", ".").replace(".", "", 1).isdigit():
        text += " l"  # litres were asked for
    volume = volume_alone(text, turn.chat.us_gallons)
    stored = turn.tank_by_id(offer.context["tank_id"])
    if volume is None:
        if stored is None:
            return None
        lengths = await tank_volumes.confirm_lengths(turn, stored, text, offer.context["wish"])
        return None if lengths is None else [lengths]
    changed = None if stored is None else await tank_volumes.set_volume(turn, stored, volume)
    if changed is None:
        return [await turn.reply(words.volume_implausible(volume))]
    await turn.uow.offers.close(offer.id)
    return await _go_on(turn, changed, offer)


async def press_volume(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Take the volume that lengths gave."""
    stored = turn.tank_by_id(choice.arguments["tank_id"])
    if stored is None or not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    before = stored.tank.volume_l
    stored = await turn.change_tank(stored, volume_l=choice.arguments["volume_l"])
    if before is not None and offer.context.get("wish") is None:
        return await resizing.changed(turn, stored, before, words.volume_set(stored.tank))
    return await _go_on(turn, stored, offer)


async def _go_on(turn: Turn, stored: StoredTank, offer: Offer) -> list[Reply]:
    """Say the volume, and answer what had to wait for it."""
    replies = [await turn.reply([words.volume_set(stored.tank)], facts=tank_volumes.facts(stored))]
    if (wish := offer.context.get("wish")) is not None:
        replies.append(await dosing.answer(turn, Wish(**wish), stored))
        return replies
    return [*replies, *await replanned.for_volume(turn, stored)]


async def _count(turn: Turn, offer: Offer) -> list[Reply] | None:
    """A number alone, after animals whose number was not told."""
    words_ = plain_name(turn.incoming.text).split()
    count = number_in(words_[0]) if len(words_) == 1 else None
    if count is None or not await turn.uow.offers.take(offer.id, how_many.COUNT):
        return None
    text = how_many.told(offer.context["text"], offer.context["name"], count)
    return await doubts.say(turn, text, turn.now)


async def _tank(turn: Turn, offer: Offer) -> list[Reply] | None:
    """A tank's name alone, after a message that named none."""
    found = match(turn.incoming.text, [tank.name for tank in turn.tanks])
    tank = turn.tank_named(found.name) if found.name is not None else None
    if tank is None or not await turn.uow.offers.take(offer.id, "for_tank"):
        return None
    at = datetime.fromisoformat(offer.context["at"])
    return await doubts.say(turn, offer.context["text"], at, tank)
