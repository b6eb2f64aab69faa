"""What was measured of water just made by a recipe: compared with it, no reading of the tank."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.asking import of_tank
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import ASKED, Turn
from bot.chat.words import mix_measured as words
from bot.chat.words.mix_measured import Compared
from bot.store.offers import Offer
from core.message.mix_measured import of_mix
from core.message.model import Parsed

ALIKE: Final = 1.0
"""A drop of a kit: so far apart a mix is still as wished; common practice. [°dH]"""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Compare it with the recipe; None where no recipe was answered last, or a tank is told of."""
    if not turn.incoming.addressed or not parsed.values or parsed.question or parsed.command:
        return None
    told = {parsed.tank, *(value.tank for value in parsed.values)}
    named = any(name and turn.tank_named(name) is not None for name in told)
    if (
        named
        or parsed.events
        or not of_mix(turn.incoming.text)
        or (offer := await _recipe(turn)) is None
    ):
        return None
    wished = offer.context["facts"]["to"]
    compared = [
        Compared(value.analyte, float(wished[value.analyte]), value.canonical)
        for value in parsed.values
        if value.analyte in wished and isinstance(value.canonical, float)
    ]
    turn.asked = offer.context.get(ASKED)  # still what is spoken of
    tank = turn.current_tank
    alike = all(abs(each.told - each.wished) <= ALIKE for each in compared)
    lines = words.of_mix(None if tank is None else tank.name, compared, alike=alike)
    facts = {"to": dict(wished), "measured": {each.analyte: each.told for each in compared}}
    return [await turn.reply(lines, choices=of_tank(turn, parsed), facts=facts)]


async def _recipe(turn: Turn) -> Offer | None:
    """The recipe that was answered last; None where something else was."""
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or turn.now - latest[0].made_at > patience:
        return None
    facts = latest[0].context.get("facts", {})
    wished = isinstance(facts.get("to"), Mapping) and facts.get("volume_l")
    return latest[0] if wished else None
