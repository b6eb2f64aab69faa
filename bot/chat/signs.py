"""``water is cloudy``, ``snail shells are dissolving``: what it may mean, and what to measure."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat import unheard, verdicts
from bot.chat.calls_kept import CALLED
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import signs as words
from bot.store.tanks import StoredTank
from core.message.model import Parsed
from core.message.signs import checker, seen

_POISON: Final = ("ammonia", "nitrite")
TESTED: Final[Mapping[str, tuple[str, ...]]] = {
    "cloudy": _POISON,
    "green_water": ("nitrate", "phosphate"),
    "algae": ("nitrate", "phosphate"),
    "film": _POISON,
    "smell": _POISON,
    "foam": _POISON,
    "shells": ("ph", "kh", "gh"),
    "plants": ("nitrate", "phosphate", "iron"),
    "tea": ("ph", "kh"),
    "crust": ("gh", "kh"),
    "pearling": (),
    "gassed": (),
    "co2_yellow": ("ph", "kh"),
    "co2_green": (),
    "co2_blue": (),
    "coral": ("salinity", "temperature", "kh", "calcium", "magnesium", "nitrate", "phosphate"),
    "bloated": (*_POISON, "nitrate", "ph", "temperature"),
    "chasing": _POISON,
    "hiding": (*_POISON, "ph", "temperature"),
    "feeding": (*_POISON, "nitrate"),
    "lighting": ("nitrate", "phosphate"),
    "filter_care": _POISON,
    "ground_care": ("nitrate",),
    "snails": ("nitrate",),
    "listless": (*_POISON, "ph", "temperature"),
}
"""What tells whether the water is behind a sign; common practice, no source."""

LOOKED_AT: Final = 8
"""Newest answers among which a frozen pond is looked for."""

COLD: Final = 10.0
"""Water too cold to feed in, or hardly; common practice, no source. [°C]"""

CARE: Final = frozenset({"feeding", "lighting", "filter_care", "ground_care", "snails"})
"""What is asked of care rather than seen: what stands in the water goes before it."""


async def beside(turn: Turn, parsed: Parsed) -> list[Reply]:
    """What the colour of a CO2 checker means that is told beside values; else nothing."""
    text = turn.incoming.text
    span = checker(text) if parsed.values else None
    sign = None if span is None else seen(text[span[0] : span[1]])
    stored = turn.tank_named(parsed.tank or "") or turn.current_tank
    if sign is None or stored is None:
        return []
    if sign == "co2_yellow":
        state = await state_of(turn, stored, turn.now)
        if (held := state.fresh("ammonia")) is not None and held.value > 0:
            return []  # more air would free it; the answer to the values tells of CO2
    return [await turn.reply([words.means(sign)], facts={"sign": sign})]


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Say what a sign may mean, how what it hangs on stands here, and what is not measured."""
    sign = seen(turn.incoming.text)
    if sign is None:
        return None
    stored = turn.tank_named(parsed.tank or "") or turn.current_tank
    if sign == "feeding" and await _is_cold(turn, stored):
        return [await turn.reply([words.means("feeding_cold")], facts={"sign": sign})]
    if sign == "feeding" and (part := await unheard.open_poison(turn, stored)) is not None:
        return [await turn.reply([words.no_food_while_open(part)], facts={"sign": sign})]
    lines = [words.means(sign)]
    tested = TESTED[sign]
    if stored is None:
        return [await turn.reply([*lines, words.measure(tested)] if tested else lines)]
    state = await state_of(turn, stored, turn.now)
    fresh = [held for each in tested if (held := state.fresh(each)) is not None]
    if fresh:
        judged, found, _still = await verdicts.verdict(turn, stored, state, fresh)
        if found and sign in CARE:  # what is wrong decides how it is cared for
            lines = judged if sign == "feeding" and found[0].severity != "note" else judged + lines
        else:
            lines += judged if found else []
    old = [each for each in tested if state.fresh(each) is None]
    lines += [words.measure(old)] if old else []
    return [await turn.reply(lines, facts={"tank": stored.name, "sign": sign})]


async def _is_cold(turn: Turn, stored: StoredTank | None) -> bool:
    """Whether the water is too cold to feed in, by its thermometer or by its ice."""
    latest = await turn.uow.offers.latest(turn.chat.id, LOOKED_AT)
    iced = any(offer.context.get(CALLED, {}).get("danger") == "frozen" for offer in latest)
    if stored is None:
        return iced
    held = (await state_of(turn, stored, turn.now)).fresh("temperature")
    return iced if held is None else held.value < COLD
