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
    if pace is None:
        return None
    most = MOST[pace.analyte]
    change = None if pace.change is None else change_of(pace.analyte, pace.change, pace.unit)
    facts = {"analyte": pace.analyte, "most": most, "change": change}
    return [await turn.reply(words.told(pace.analyte, most, change), facts=facts)]
