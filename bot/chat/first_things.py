"""``what should i raise first``: the order in which values are put right, by what is off here."""

from __future__ import annotations

from typing import Final

from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import findings as finding_words
from bot.chat.words import first_things as words
from bot.chat.words import standing as standing_words
from core.advice.findings import Finding, stands
from core.message.first_asked import asked
from core.message.model import Parsed

ORDER: Final = {
    "fresh": ("ammonia", "nitrite", "kh", "gh", "ph"),
    "marine": ("ammonia", "nitrite", "salinity", "magnesium", "kh", "calcium", "ph"),
}
"""Poison before all; in the sea salinity moves all else, and magnesium keeps lime from falling out
while the other two rise. pH follows KH. Common practice, no source."""
SHOWN: Final = 2


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Say the order, and what of it is off by the last readings; None where it is not asked."""
    if parsed.values or parsed.events or not turn.incoming.addressed:
        return None
    if not asked(turn.incoming.text):
        return None
    stored = turn.tank_named(parsed.tank or "") or turn.current_tank
    sea = stored is not None and stored.tank.is_sea
    lines = words.order(sea=sea)
    if stored is None:
        return [await turn.reply(lines)]
    state = await state_of(turn, stored, turn.now)
    order = ORDER["marine" if sea else "fresh"]
    found = stands(state, frozenset(each for each in order if each in state.readings))
    off = sorted(
        (each for each in found if each.severity != "note"), key=lambda each: _place(each, order)
    )
    said = [finding_words.line(each) for each in off[:SHOWN]]
    if said:
        lines = [standing_words.lead(stored.name, said[0]), *said[1:], *lines]
    if not state.readings:
        lines.append(words.measure(sea=sea))
    elif not off:
        lines.append(words.nothing_off(stored.name))
    facts = {"tank": stored.name, "findings": [each.id for each in off]}
    return [await turn.reply(lines, facts=facts)]


def _place(finding: Finding, order: tuple[str, ...]) -> int:
    """Where what a finding speaks of stands in the order; behind it where it is none of it."""
    spoken = {*finding.facts, finding.facts.get("analyte"), finding.id.removeprefix("low_")}
    return next((at for at, analyte in enumerate(order) if analyte in spoken), len(order))
