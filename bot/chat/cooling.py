"""``how do i cool it``, ``20 l of 15 c in 100 l at 25``: what warmth does in mixes and changes."""

from __future__ import annotations

from typing import Any, Final

from bot.chat import readings
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import warming as words
from bot.store.tanks import StoredTank
from core.advice import limits
from core.advice.warming import coldest_safe, ice_for, mixed, new_water, warmest_safe
from core.message.model import Parsed
from core.message.warmth import Warmth, warmth_asked

COOLING_SHARE: Final = 0.25
"""Of the water, where a change is to cool it: the usual one; common practice."""

AN_HOUR: Final = 1.0
"""Most that animals bear in an hour; common practice. [°C]"""

COLDEST, WARMEST = 4.0, 40.0
"""Colder or warmer water does not go in where animals are; common practice. [°C]"""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer what is asked of the warmth of water; None where nothing is."""
    if not turn.incoming.addressed:
        return None
    chat = turn.chat
    found = warmth_asked(turn.incoming.text, fahrenheit=chat.fahrenheit, us_gallons=chat.us_gallons)
    if found is None:
        return None
    stored = turn.current_tank
    warm = await _warmth(turn, stored)
    if found.asks == "cool":
        kept = await readings.keep(turn, parsed) if parsed.values and not parsed.doubts else []
        if kept:
            warm = await _warmth(turn, turn.current_tank)
        return [*kept, await _cooling(turn, turn.current_tank, warm, ice=found.ice)]
    if found.asks == "warm":
        name = None if stored is None else stored.name
        facts = {"step": AN_HOUR} if warm is None else {"step": AN_HOUR, "temperature": warm}
        return [await turn.reply(words.warming(name, warm), facts=facts)]
    if found.asks == "mix":
        return [await _mix(turn, found, stored, warm)]
    return [await _new(turn, found, stored, warm)]


async def _warmth(turn: Turn, stored: StoredTank | None) -> float | None:
    if stored is None:
        return None
    held = (await state_of(turn, stored, turn.now)).fresh("temperature")
    return None if held is None else held.value


async def _cooling(
    turn: Turn, stored: StoredTank | None, warm: float | None, *, ice: bool
) -> Reply:
    """How it is cooled; what is asked of ice comes before the rest."""
    volume = None if stored is None else stored.tank.volume_l
    facts: dict[str, Any] = {"step": AN_HOUR}
    new = kilograms = None
    if stored is not None:
        facts["tank"] = stored.name
    if warm is not None:
        new = COOLING_SHARE, coldest_safe(warm, COOLING_SHARE, AN_HOUR)
        facts |= {"temperature": warm, "share": COOLING_SHARE, "new_water_from": new[1]}
        if volume is not None:
            kilograms = ice_for(volume, warm, AN_HOUR)
            facts |= {"litres": volume, "ice_grams": 1000.0 * kilograms}
    lines = words.cooling(None if stored is None else stored.name, warm, new)
    lines.insert(1 if ice else len(lines) - 1, words.ice(volume, kilograms))
    return await turn.reply(lines, facts=facts)


async def _mix(turn: Turn, found: Warmth, stored: StoredTank | None, warm: float | None) -> Reply:
    """How warm two waters are together; of one, what it does to the tank as a change."""
    step = limits.TEMPERATURE_STEP
    if len(found.litres) == 2:
        first, other = sorted(zip(found.litres, found.warm, strict=True))
        end = mixed([first, other])
        share = first[0] / (first[0] + other[0])
        tank, lines = other[1], [words.mix_of(first, other, end)]
    else:
        volume = None if stored is None else stored.tank.volume_l
        if stored is None or volume is None or warm is None or found.litres[0] > volume:
            return await turn.reply(words.which_tank())
        share = found.litres[0] / volume
        end = warm + share * (found.warm[0] - warm)
        tank = warm
        lines = [words.changed_to(stored.name, share, found.warm[0], warm, end)]
    least = max(COLDEST, coldest_safe(tank, share, step))
    most = min(WARMEST, warmest_safe(tank, share, step))
    lines += words.moved(end - tank, least, most, step)
    facts = {"share": share, "before": tank, "end": end, "new_water_from": least}
    return await turn.reply(lines, facts=facts | {"new_water_to": most})


async def _new(turn: Turn, found: Warmth, stored: StoredTank | None, warm: float | None) -> Reply:
    """How warm the new water must be, for a day's step at most."""
    volume = None if stored is None else stored.tank.volume_l
    share = found.share
    if share is None and volume is not None and 0.0 < found.litres[0] <= volume:
        share = found.litres[0] / volume
    now = found.warm[0] if len(found.warm) == 2 else warm
    if share is None or now is None:
        return await turn.reply(words.which_tank())
    goal, lines = found.warm[-1], []
    if abs(goal - now) > limits.TEMPERATURE_STEP:
        lines.append(words.not_in_one(now, goal, limits.TEMPERATURE_STEP))
        goal = now + (limits.TEMPERATURE_STEP if goal > now else -limits.TEMPERATURE_STEP)
    new = new_water(now, goal, share)
    facts = {"share": share, "from": now, "to": goal, "new_water": new}
    if not COLDEST <= new <= WARMEST:
        return await turn.reply([*lines, *words.no_such_water(share, goal, new)], facts=facts)
    return await turn.reply([*lines, *words.must_be(share, now, goal, new)], facts=facts)
