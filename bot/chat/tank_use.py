"""``what does it use a day``, ``how often to dose for nitrate 10``: by the last two readings."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any, Final

from bot.chat import daily, levels
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, LOOKED_AT, PATIENCE
from bot.chat.routines import HOW_OFTEN
from bot.chat.standing import about
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import daily as daily_words
from bot.chat.words import days_to as missing_words
from bot.chat.words import questions as question_words
from bot.chat.words import tank_use as words
from core.advice.findings import limit_of_nitrate
from core.advice.pace import Pace, pace_of
from core.advice.scheduling import steps_of
from core.advice.state import State
from core.advice.trends import series
from core.advice.upkeep import USED_UP
from core.message.fold import fold
from core.message.model import Parsed, Question
from core.message.tank_use import asks_use, of_dosing

USED: Final = ("nitrate", "phosphate", "potassium", "iron", "kh", "gh", "calcium", "magnesium")
"""What a tank may use up."""

WEEK: Final = 7
HALF: Final = 0.5
"""A dose is due before more than half of the wish is used up; common practice, no source."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """What is used a day, of what is named or was just spoken of; None where that is not asked."""
    question = parsed.question
    if parsed.values or parsed.events or not turn.incoming.addressed:
        return None
    if not asks_use(turn.incoming.text):
        return None
    stored = about(turn, question or Question("history", parsed.tank))
    if stored is None:
        return None
    named = question.analyte if question is not None else None
    state = await state_of(turn, stored, turn.now)
    if stored.tank.is_sea and (named is None or named in USED_UP):
        return [await daily.use_of(turn, stored, state, named)]
    asked = [named] if named is not None else await _spoken_of(turn)
    paces = {each: pace for each in asked or USED if (pace := pace_of(state, each)) is not None}
    if not paces:
        lines = daily_words.unknown(stored.name, (asked or USED)[0])
        return [await turn.reply(lines, facts={"tank": stored.name})]
    lines = [_told(analyte, pace) for analyte, pace in paces.items()]
    lines[0] = f"{stored.name}: {lines[0]}"
    uses = {analyte: _facts(pace) for analyte, pace in paces.items()}
    return [await turn.reply(lines, facts={"tank": stored.name, "uses": uses})]


def _told(analyte: str, pace: Pace) -> str:
    if pace.is_sure and pace.used.per_day < 0.0:
        return words.rises(analyte, -pace.used.per_day)
    return question_words.used_up(analyte, pace.used)


def _facts(pace: Pace) -> dict[str, Any]:
    return {"per_day": pace.used.per_day, "between": [pace.used.low, pace.used.high]}


async def _spoken_of(turn: Turn) -> list[str]:
    """What the latest answers were about, of all that can be used up."""
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if turn.now - offer.made_at > patience:
            return []
        if found := [each for each in _analytes(offer.context.get("facts", {})) if each in USED]:
            return found
    return []


def _analytes(facts: Mapping[str, Any]) -> Sequence[str]:
    """What an answer was about, by its facts."""
    if "analyte" in facts:
        return [facts["analyte"]]
    if "goals" in facts or "values" in facts:
        return [each["analyte"] for each in facts.get("goals") or facts["values"]]
    if "product" in facts:
        return [str(facts["product"].get("analyte"))]
    return ["kh"] if "substance" in facts and "to" in facts else []


async def how_often(turn: Turn, question: Question) -> list[Reply] | None:
    """How often a dose holds a value, by the use of a day; None where that is not asked."""
    text = question.text or ""
    analyte, wish, stored = question.analyte, question.target, about(turn, question)
    if analyte not in USED or wish is None or wish <= 0.0 or stored is None:
        return None
    if not of_dosing(text) or HOW_OFTEN.search(fold(text)) is None:
        return None
    state = await state_of(turn, stored, turn.now)
    limit = limit_of_nitrate(state) if analyte == "nitrate" else None
    if limit is not None and wish > limit:
        return [await turn.reply(levels.told(analyte, state), facts={"tank": stored.name})]
    pace = pace_of(state, analyte)
    facts: dict[str, Any] = {"tank": stored.name, "analyte": analyte, "to": wish}
    if pace is None:
        told = len(series(state, analyte))
        return [await turn.reply(missing_words.missing(stored.name, analyte, told), facts=facts)]
    facts |= {"uses": {analyte: _facts(pace)}}
    if not pace.is_sure or pace.used.per_day <= 0.0:
        lines = [f"{stored.name}: {_told(analyte, pace)}", words.by_no_calendar()]
        return [await turn.reply(lines, facts=facts)]
    return [await turn.reply(_schedule(state, analyte, wish, pace, facts), facts=facts)]


def _schedule(
    state: State, analyte: str, wish: float, pace: Pace, facts: dict[str, Any]
) -> list[str]:
    """Every how many days which rise; adds facts."""
    rate = pace.used.per_day
    step = steps_of(state.tank).get(analyte, math.inf)
    if rate > step:
        return [_told(analyte, pace), daily_words.too_much(step, analyte)]
    days = max(1, min(WEEK, math.floor(min(HALF * wish, step) / rate)))
    facts |= {"every_days": days, "rise": days * rate}
    lines = [words.every(state.tank.name, analyte, days, days * rate, rate)]
    if pace.value < wish:
        lines.append(words.first_up(analyte, pace.value, wish))
    elif pace.value > wish:
        lines.append(words.first_down(analyte, pace.value, wish))
    return [*lines, words.ask(analyte, days * rate)]
