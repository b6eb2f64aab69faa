"""``how do i lower nitrate``: with how much of which water, in the tank as it is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any, Final

from bot.chat import change_bounds, changes, first_share
from bot.chat.change_asked import Asked, asked_of
from bot.chat.model import Line, Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from bot.chat.words import changes as change_words
from bot.chat.words import lowering as words
from bot.store.tanks import StoredTank
from core.advice import limits
from core.advice.by_now import by_now
from core.advice.change_plan import plan_change
from core.advice.changes import waters_of
from core.advice.findings import limit_of_nitrate
from core.advice.may_rise import raising_refused
from core.errors import CoreError
from core.message.model import Parsed, Question

ANALYTES: Final = frozenset({"nitrate", "kh", "gh", "salinity"})
"""What new water lowers, and nothing else that is good for a tank."""

OF_SALT: Final = frozenset({"kh", "gh", "calcium", "magnesium"})
"""What belongs to sea salt: less of it for its salt comes with other salt water, not with RO."""

USUAL: Final = 0.25
"""The share of a usual change; more is not proposed unasked. Ours."""
LEAST: Final = 0.01


SEA_ENOUGH: Final = 0.5
"""So little over the sea's own salinity is none to correct; common practice. [g/kg]"""


async def salinity(
    turn: Turn, question: Question, stored: StoredTank, beside: Sequence[str] = ()
) -> list[Reply]:
    """Salt water out and pure water in, a little a day; in the sea down to what seas have."""
    if not stored.tank.is_sea:
        return await how(turn, question, "salinity")
    asked = replace(question, analyte="salinity", target=limits.SEA_SALINITY)
    now = by_now(await state_of(turn, stored, turn.now)).last("salinity")
    if now is None:
        lines = change_words.unknown(stored.name, "salinity", of_source=False)
        return [await turn.reply(lines)]
    if now.value <= limits.SEA_SALINITY + SEA_ENOUGH:
        facts = {"tank": stored.name, "readings": {"salinity": now.value}}
        return [await turn.reply([words.salt_enough(stored.name, now.value)], facts=facts)]
    parsed = Parsed("question", question=asked)
    return await changes.change(turn, asked, parsed, [*beside, words.by_water("salinity")])


async def how(turn: Turn, question: Question, analyte: str) -> list[Reply]:
    """The largest change that is safe at once, of water that has less of it."""
    stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
    if analyte == "salinity" and stored is not None and stored.tank.is_sea:
        return await salinity(turn, question, stored)
    asked = await asked_of(turn, replace(question, target=0.0))
    if not isinstance(asked, Reply) and not _has_less(asked, analyte):
        pure = replace(question, target=0.0, text=f"{question.text} with ro")
        asked = await asked_of(turn, pure)
    if isinstance(asked, Reply):
        return [_led(await first_share.led(turn, question, asked), words.by_water(analyte))]
    now = asked.tank.last(analyte)
    if now is None:
        return [await turn.reply(change_words.unknown(asked.stored.name, analyte, of_source=False))]
    if asked.source.last(analyte) is None and analyte != "salinity":
        lines = change_words.unknown(asked.stored.name, analyte, of_source=True)
        return [_led(await turn.reply(lines), words.by_water(analyte))]
    share = _share(asked)
    if share < LEAST:
        kh = asked.tank.last("kh")
        lines = words.low_already(asked.stored.name, kh.value if kh else 0.0)
        gated = raising_refused(asked.tank) is not None  # then nothing may lift it either
        return [await turn.reply(lines[:1] if gated else lines)]
    reply = await changes.answer(turn, replace(question, percent=100 * share), asked, share)
    limit = limit_of_nitrate(asked.tank) if analyte == "nitrate" else None
    if limit is not None and now.value <= limit:
        return [_led(reply, words.no_need(now.value, limit))]
    return [_led(reply, words.by_water(analyte))]


async def in_sea(turn: Turn, question: Question, stored: StoredTank) -> Reply | None:
    """Lowering what belongs to sea salt, in the sea, where no salt water with less is on record.

    Pure water only thins the salt: alkalinity for its salinity stays what it was. None for any
    other question, or where the tank's own new water is such salt water.
    """
    analyte, target = question.analyte or "", question.target
    asks_share = question.percent is not None or question.litres is not None
    if not stored.tank.is_sea or analyte not in OF_SALT or asks_share:
        return None
    now = (await state_of(turn, stored, turn.now)).last(analyte)
    lowered = now is not None and target is not None and target < now.value
    if not lowered and (target is not None or question.kind != "change"):
        return None
    held = await Waters.of(turn)
    default, fitting = held.default_for(stored), None
    for source in held.sources:
        new = await held.supply(source)
        there = new.state.last(analyte)
        less = now is not None and there is not None and there.value < now.value
        if less and new.state.salinity > limits.SALT_WATER:
            if default is not None and source.id == default.id:
                return None
            fitting = fitting or source.name
    facts: dict[str, Any] = {"tank": stored.name, "refused": "not_by_fresh", "analyte": analyte}
    reading = None if now is None else now.value
    facts |= {} if reading is None else {"value": reading}
    return await turn.reply(words.in_sea(stored.name, analyte, reading, fitting), facts=facts)


def _has_less(asked: Asked, analyte: str) -> bool:
    now, new = asked.tank.last(analyte), asked.source.last(analyte)
    return now is None or new is None or new.value < now.value


def _share(asked: Asked) -> float:
    """A usual change, or the largest that is safe at once and leaves KH where it holds pH."""
    try:
        waters = waters_of(asked.tank, asked.source)
    except CoreError:
        waters = None
    if waters is None:
        return USUAL  # what is missing or contradicts is said then
    counted = change_bounds.counted_in(waters, asked.supply, 0.0)
    largest = plan_change(waters, USUAL, counted=counted).largest_safe_share
    now, new = asked.tank.last("kh"), asked.source.last("kh")
    if now is not None and new is not None and new.value < now.value:
        low = limits.KH_LOW_MARINE if asked.tank.tank.is_sea else limits.KH_LOW_FRESH
        largest = min(largest, (now.value - low) / (now.value - new.value))
    return max(0, int(100 * min(USUAL, largest))) / 100


def _led(reply: Reply, lead: str) -> Reply:
    return replace(reply, lines=(Line(lead), *reply.lines))
