"""A danger to people that was told goes before what is asked of the water, until it is over.

Current in the water kills the hand of the next water change, and who asks for grams while a child
has drunk of a bottle has not called yet.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import calls, calls_kept, readings
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import aid_people
from bot.chat.words import call_over as words
from bot.chat.words.emergencies import MOST
from bot.countries import country_of
from core.advice.call_over import HOLDS
from core.advice.calls import OF_PEOPLE, ORDER, asks, asks_what_now
from core.message.model import Parsed
from core.message.plan_said import substances_named
from core.message.tank_asked import tank_asked

BY_SUBSTANCE: Final = frozenset({"swallowed", "splashed", "breath"})
"""Dangers of which whoever helps asks what it was."""
WORDS: Final = 8
"""So many words, at most, say what it was."""
SAID: Final = 60
"""Characters of it that are said back."""


async def standing(turn: Turn) -> calls_kept.Kept | None:
    """The worst danger to people that was called out and not told to be over; None where none."""
    found = [
        each
        for each in await calls_kept.all_of(turn)
        if each.danger in OF_PEOPLE & HOLDS.keys()
        and not each.over
        and turn.now - each.at < HOLDS[each.danger]
    ]
    return min(found, key=lambda each: ORDER.index(each.danger), default=None)


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """The steps again in the place of an answer on water; None where none stands, or none asks.

    What is told beside the question is kept.
    """
    if not turn.incoming.addressed:
        return None
    call = await standing(turn)
    if call is None or calls.is_danger(turn, parsed):
        return None
    if not _asks(turn, parsed) and not _names_it(turn, parsed, call):
        return None
    at = call.at.astimezone(turn.chat.zone)
    lead = words.people_first(call.danger, call.said, at, turn.local_now)
    if _names_it(turn, parsed, call):
        said = " ".join(turn.incoming.text.split()).strip(" .!,")[:SAID]
        return [await steps(turn, call, lead, words.tell_them(said))]
    first = await steps(turn, call, lead)
    told = replace(parsed, question=None)
    is_told = bool(parsed.values or parsed.events) and parsed.command is None
    return [first, *(await readings.keep(turn, told) if is_told else [])]


async def steps(turn: Turn, call: calls_kept.Kept, lead: str, *beside: str) -> Reply:
    """The steps for people behind a first line, and what stands beside it."""
    told = aid_people.lines(call.danger, country_of(turn.chat.zone_name))
    return await turn.reply([lead, *beside, *told][:MOST], facts={"emergency": call.danger})


def _names_it(turn: Turn, parsed: Parsed, call: calls_kept.Kept) -> bool:
    """Whether a message says no more than what it was that somebody swallowed or got on them."""
    told = parsed.values or parsed.events or parsed.command or parsed.question
    named = substances_named(turn.incoming.text)
    is_short = len(turn.incoming.text.split()) <= WORDS
    return bool(named) and is_short and not told and call.danger in BY_SUBSTANCE


def _asks(turn: Turn, parsed: Parsed) -> bool:
    text = turn.incoming.text
    if parsed.question is not None or "?" in text:
        return True
    return asks(text) or asks_what_now(text) or tank_asked(text)
