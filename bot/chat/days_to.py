"""``how long till nitrate is 30``: by the tank's trend, its last two readings, or a plan."""

from __future__ import annotations

import math
from typing import Any, Final

from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, LOOKED_AT, PATIENCE
from bot.chat.standing import about
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import days_to as words
from bot.chat.words import questions as asked_words
from bot.chat.words import standing as standing_words
from core.advice.pace import changes_to, pace_of, parts_to
from core.advice.state import State
from core.advice.trends import DAY, FEWEST_POINTS, long_trend, series, trend
from core.message.model import Question

OF_CHANGE: Final = "largest_safe_share"
"""A fact of every answer about a change."""


async def answer(turn: Turn, question: Question, analyte: str, limit: float) -> list[Reply]:
    """When an analyte is at a value: by the plan of changes just told, else by its readings."""
    stored = about(turn, question)
    if stored is None:
        return [await turn.reply(asked_words.which_tank([tank.name for tank in turn.tanks]))]
    state = await state_of(turn, stored, turn.now)
    facts: dict[str, Any] = {"tank": stored.name, "analyte": analyte, "to": limit}
    if (planned := await _planned(turn, stored.name, analyte, limit)) is not None:
        lines, count = planned
        return [await turn.reply(lines, facts=facts | {"count": count})]
    if (by_trend := _by_trend(state, analyte, limit, facts)) is not None:
        return [await turn.reply(by_trend, facts=facts)]
    pace = pace_of(state, analyte)
    told = len(series(state, analyte))
    if pace is None:
        if told >= FEWEST_POINTS:
            return [await turn.reply(standing_words.no_trend(stored.name, analyte))]
        return [await turn.reply(words.missing(stored.name, analyte, told), facts=facts)]
    used = pace.used
    facts["per_day"], facts["between"] = -used.per_day, [-used.high, -used.low]
    if not pace.is_sure:
        return [await turn.reply([words.unsure(stored.name, analyte, pace)], facts=facts)]
    if (days := pace.days_to(limit)) is None:
        return [await turn.reply([words.away(stored.name, analyte, limit, pace)], facts=facts)]
    facts |= {"days": days[0], "soonest": days[1]}
    facts |= {"latest": days[2]} if math.isfinite(days[2]) else {}
    return [await turn.reply([words.by_pair(stored.name, analyte, limit, days)], facts=facts)]


def ahead_of(state: State, analyte: str, limit: float, facts: dict[str, Any]) -> list[str]:
    """When an analyte under a limit is at it, by its trend alone; adds the numbers to the facts."""
    now = state.last(analyte)
    if now is None or now.value >= limit:
        return []
    return _by_trend(state, analyte, limit, facts) or []


def _by_trend(state: State, analyte: str, limit: float, facts: dict[str, Any]) -> list[str] | None:
    """By its trend since it was disturbed, where that is too short by the season's; adds facts."""
    for found in (trend(state, analyte), long_trend(state, analyte)):
        days = found.days_to(limit) if found is not None and found.is_sure else None
        if found is not None and days is not None:
            since = (state.now - series(state, analyte)[-1].at).total_seconds() / DAY
            ahead = [max(each - since, 0.0) for each in days]
            facts |= {"days": ahead[0], "soonest": ahead[1], "per_day": found.per_day}
            if math.isfinite(ahead[2]):
                facts["latest"] = ahead[2]
            return standing_words.reaches(state.tank.name, found, limit, ahead)
    return None


async def _planned(
    turn: Turn, tank: str, analyte: str, limit: float
) -> tuple[list[str], int] | None:
    """After how many steps just planned it is met, in words; None where nothing planned does."""
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        facts = offer.context.get("facts", {})
        if offer.entry_id is not None or turn.now - offer.made_at > patience:
            return None  # something was told since
        if facts.get("tank") != tank:
            continue
        if OF_CHANGE in facts:
            count = changes_to(facts, analyte, limit)
            if count is None:
                return None
            told = words.by_plan(tank, analyte, limit, count, len(facts["steps"]))
            return [told, words.then_by_itself()], count
        if "every_hours" in facts:
            parts = parts_to(facts, analyte, limit)
            if parts is None:
                return None
            told = words.by_parts(tank, analyte, limit, *parts)
            return [told, words.test_before_each()], parts[0]
    return None
