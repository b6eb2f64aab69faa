"""``is 2 dkh a day ok``, ``how fast may pH fall``: the most that a value may move in a day."""

from __future__ import annotations

from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import pace as words
from core.advice.most_a_day import MOST, change_of
from core.message.model import Parsed
from core.message.pace_asked import asked


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Say how fast it may change, and judge the change that is told; None where none is asked."""
    if parsed.values or not turn.incoming.addressed:
        return None
    pace = asked(turn.incoming.text)
    if pace is None or (pace.change is None and _is_wish(parsed)):
        return None
    most = MOST[pace.analyte]
    change = None if pace.change is None else change_of(pace.analyte, pace.change, pace.unit)
    facts = {"analyte": pace.analyte, "most": most, "change": change}
    return [await turn.reply(words.told(pace.analyte, most, change), facts=facts)]


def _is_wish(parsed: Parsed) -> bool:
    """Whether it is to be raised: what a wish without a value is told says the pace as well."""
    asked_for = parsed.question
    return asked_for is not None and asked_for.kind == "dose" and asked_for.analyte != "ph"
