"""``dosed 2 g baking soda instead`` behind a dose on record: it went in for that one, not as well.

Right behind it the dose is put right; where more was said since, it is asked which is meant.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Final

from bot.chat import corrections
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import dosed_instead as words
from bot.chat.words import general
from bot.store.log import Entry
from bot.store.offers import Choice, Offer
from core.message import parse
from core.message.beside_dose import without_instead
from core.message.model import Parsed
from core.message.plan_words import telling

LATELY: Final = timedelta(hours=12)
"""So long a dose on record may be what was given up for another; ours."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Put the dose on record right, or ask; None where none of late may be meant."""
    said = turn.incoming
    plain = without_instead(said.text) if said.addressed and "?" not in said.text else None
    if plain is None or parsed.values or parsed.question or said.reply_to is not None:
        return None
    told = _dose_told(turn, plain)
    entry = None if told is None else await _dose_of_late(turn)
    if told is None or entry is None:
        return None
    grams, substance = told[0], told[1] or entry.events[0].what.substance or ""
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    if latest and latest[0].entry_id == entry.id and parsed.at is None:
        return await corrections.as_dose(turn, entry, f"{grams:.10g} g {substance}")
    before = entry.events[0].what
    arguments = {"entry": entry.id, "grams": grams, "substance": substance}
    choices = [
        Choice(words.in_its_place(), "dose_instead", "", arguments),
        Choice(words.as_well(), "dose_as_well", "", arguments),
    ]
    lines = words.whether(grams, substance, before.grams or 0.0, before.substance or "")
    return [
        await turn.reply(lines, choices=choices, facts={"substance": substance, "grams": grams})
    ]


async def press_instead(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Put the dose on record right as what went in for it, once."""
    entry = await turn.uow.log.current(turn.chat.id, choice.arguments["entry"])
    if entry is None or not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    return await corrections.as_dose(turn, entry, _told(choice))


async def press_as_well(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Put on record what went in beside the dose that is there, once."""
    taken = turn.route is not None and await turn.uow.offers.take(offer.id, choice.verb)
    if turn.route is None or not taken:
        return [await turn.reply(general.already())]
    told = f"dosed {_told(choice)}"
    turn.incoming = replace(turn.incoming, text=told)
    return await turn.route(turn, parse(told, turn.context()))


def _told(choice: Choice) -> str:
    return f"{choice.arguments['grams']:.10g} g {choice.arguments['substance']}"


def _dose_told(turn: Turn, plain: str) -> tuple[float, str | None] | None:
    """So much as is told to be in, and of what where that is told. [g]"""
    heard = telling(plain)
    if heard is not None and heard.meaning == "gave_it" and heard.amounts.grams is not None:
        return heard.amounts.grams, None
    parsed = parse(plain, turn.context())
    if parsed.doubts or parsed.values or parsed.question or len(parsed.events) != 1:
        return None
    (dose,) = parsed.events
    of_tank = dose.tank is None or turn.tank_named(dose.tank) == turn.current_tank
    if dose.kind != "dose" or dose.grams is None or dose.substance is None or not of_tank:
        return None
    return dose.grams, dose.substance


async def _dose_of_late(turn: Turn) -> Entry | None:
    """The newest entry of late that is one dose by weight in the tank in use; None where none is.

    A dose of several salts is none: which of them it was for is open.
    """
    for entry in await turn.uow.log.newest(turn.chat.id, corrections.OF_LATE):
        if turn.now - entry.at > LATELY:
            return None
        if not any(event.what.kind == "dose" for event in entry.events):
            continue
        alone = len(entry.events) == 1 and not entry.readings
        stored = turn.current_tank
        own = stored is None or entry.events[0].tank_id == stored.id
        return entry if alone and own and entry.events[0].what.grams is not None else None
    return None
