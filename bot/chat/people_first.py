"""A danger to people that was told goes before what is asked of the water, until it is over.

Current in the water kills the hand of the next water change, and who asks for grams while a child
has drunk of a bottle has not called yet.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import calls, calls_kept, emergencies, readings
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import aid_people, refusals
from bot.chat.words import call_over as words
from bot.chat.words.emergencies import MOST
from bot.countries import country_of
from core.advice.call_over import HOLDS, SIGNS
from core.advice.calls import (
    OF_PEOPLE,
    ORDER,
    asks,
    asks_antidote,
    asks_what_now,
    feels,
    gasps,
    names_animals,
)
from core.advice.plan import Refusal
from core.message.fold import fold
from core.message.model import Parsed
from core.message.plan_said import substances_named
from core.message.tank_asked import tank_asked

BY_SUBSTANCE: Final = frozenset({"swallowed", "splashed", "breath"})
"""Dangers of which whoever helps asks what it was."""
FELT: Final = frozenset({*BY_SUBSTANCE, "fumes", "co_air", "co2_air", "toxin", "sting", "electric"})
"""Dangers behind which somebody feels ill."""
WIRED: Final = frozenset({"electric", "heater_dry"})
"""Dangers of current in the water, which a hand reaches into next."""
OF_SIGNS: Final = frozenset({*SIGNS, "illness"})
"""Dangers of animals by what they look like: of no animal named, a person may look so."""
NEVER: Final = frozenset({"mixing", "battery_acid", "caustic"})
"""What is refused whatever stands: it makes the danger worse."""
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
    if call is None:
        return None
    of_person = _is_of_person(turn, parsed, call)
    suffer = None if of_person else await _animals_in_live_water(turn, parsed, call)
    if not of_person and suffer is None and calls.is_danger(turn, parsed):
        return None
    names_it = of_person or _names_it(turn, parsed, call)
    if not names_it and suffer is None and not _asks(turn, parsed):
        return None
    at = call.at.astimezone(turn.chat.zone)
    lead = words.people_first(call.danger, call.said, at, turn.local_now)
    refused = [] if suffer is not None else _refused(turn, parsed, call)
    if names_it and not refused:
        said = " ".join(turn.incoming.text.split()).strip(" .!,")[:SAID]
        return [await steps(turn, call, lead, words.tell_them(said, rinsed=not of_person))]
    first = await steps(turn, call, *refused, lead) if suffer is None else suffer
    told = calls.without_mishap(turn, parsed) if suffer is not None else parsed
    told = replace(told, question=None)
    is_told = bool(told.values or told.events) and parsed.command is None
    kept = await readings.keep(turn, told) if is_told else []
    if suffer is not None:  # what is said of the dead reaches into the water
        kept = [replace(each, lines=each.lines[:1]) for each in kept]
    return [first, *kept]


async def unheard(turn: Turn) -> list[Reply] | None:
    """What nobody understood while somebody is in danger is told of that person: `hes 3`."""
    call = await standing(turn)
    if call is None or call.danger not in BY_SUBSTANCE or names_animals(turn.incoming.text):
        return None
    if len(turn.incoming.text.split()) > WORDS or not turn.incoming.addressed:
        return None
    at = call.at.astimezone(turn.chat.zone)
    lead = words.people_first(call.danger, call.said, at, turn.local_now)
    said = " ".join(turn.incoming.text.split()).strip(" .!,")[:SAID]
    return [await steps(turn, call, lead, words.tell_them(said, rinsed=False))]


async def steps(turn: Turn, call: calls_kept.Kept, lead: str, *beside: str) -> Reply:
    """The steps for people behind a first line, and what stands beside it."""
    told = aid_people.lines(call.danger, country_of(turn.chat.zone_name))
    return await turn.reply([lead, *beside, *told][:MOST], facts={"emergency": call.danger})


def _is_of_person(turn: Turn, parsed: Parsed, call: calls_kept.Kept) -> bool:
    """Whether a message says how somebody feels: `feel a bit sick`, of no animal and no tank."""
    text = turn.incoming.text
    if call.danger not in FELT or parsed.values or parsed.events or parsed.command:
        return False
    danger = calls.danger_of(turn, parsed)
    if danger in OF_PEOPLE or (danger is not None and danger not in OF_SIGNS):
        return False
    named = any(fold(tank.name) in fold(text) for tank in turn.tanks if tank.tank.named)
    return feels(text) and not named


async def _animals_in_live_water(turn: Turn, parsed: Parsed, call: calls_kept.Kept) -> Reply | None:
    """The current first where animals suffer in water that gave a shock; None where it did not."""
    if call.danger not in WIRED or parsed.command is not None:
        return None
    text = turn.incoming.text
    lost = any(event.kind == "lost" for event in parsed.events)
    danger = calls.found(turn, parsed).danger
    if danger in OF_PEOPLE or not (lost or danger in SIGNS or danger == "illness"):
        return None
    stored = turn.tank_named(parsed.tank or "") or turn.current_tank
    if danger is not None:
        await emergencies.remember(turn, stored, danger, gasping=gasps(text), said=text)
    at = call.at.astimezone(turn.chat.zone)
    lead = words.people_first(call.danger, call.said, at, turn.local_now)
    told = aid_people.lines(call.danger, country_of(turn.chat.zone_name))
    lines = [lead, *told[: MOST - 2], words.then_the_animals()]
    return await turn.reply(lines, facts={"emergency": call.danger})


def _refused(turn: Turn, parsed: Parsed, call: calls_kept.Kept) -> list[str]:
    """The no to what is asked beside a call: what is never mixed, nothing against what burns."""
    text = turn.incoming.text
    refused = calls.touched_by(text, asked=True).refused
    if refused in NEVER:
        return refusals.refused(Refusal(refused), None)[:1]
    if parsed.question is not None and parsed.question.kind == "dose":
        return []  # of the tank: people first
    against = substances_named(text) or asks_antidote(text)
    if call.danger in BY_SUBSTANCE and against and (calls.ASKS.search(text) or asks(text)):
        return [words.nothing_against()]
    return []


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
