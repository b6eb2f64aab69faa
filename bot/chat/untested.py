"""``second dose in, forgot to test``: the deed is kept, the next part waits for a test."""

from __future__ import annotations

from dataclasses import replace

from bot.chat import plan_talk
from bot.chat.given_plan import running
from bot.chat.model import Line, Reply
from bot.chat.turn import Turn
from bot.chat.words import doses as dose_words
from bot.chat.words import given_parts as words
from core.message import parse
from core.message.model import Parsed
from core.message.untested import deed_untested


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """As `bot.chat.plan_talk.answer`, where the deed may be told with that nothing was tested."""
    deed = deed_untested(turn.incoming.text)
    beside = parsed.values or parsed.events or parsed.question
    plan = None if deed is None or beside else await running(turn)
    if deed is None or plan is None:
        return await plan_talk.answer(turn, parsed)
    told = turn.incoming
    turn.incoming = replace(told, text=deed)
    answered = await plan_talk.answer(turn, parse(deed, turn.context()))
    turn.incoming = told
    if not answered:
        return await plan_talk.answer(turn, parsed)
    line = Line(words.nothing_untested(dose_words.to_test(plan.analytes)))
    return [replace(answered[0], lines=(*answered[0].lines, line)), *answered[1:]]
