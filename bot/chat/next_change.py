"""``when should i do the next change``: by the reminder for it, else by the readings and the usual.

Where a reading asks for new water it is now, or as soon as the step limits let another one follow;
where none does, common practice tells when.
"""

from __future__ import annotations

from datetime import timedelta
from typing import Final

from bot.chat import agenda, standing, what_now
from bot.chat.days_to import ahead_of
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import change_talk
from bot.chat.words import next_change as words
from bot.store.tanks import StoredTank
from core.advice.findings import limit_of_nitrate
from core.message.change_when import asks_when
from core.message.model import Parsed, Question

WEEK: Final = timedelta(days=7)
"""Between two changes of a usual routine; common practice, no source."""

DAY: Final = timedelta(days=1)

POISONS: Final = frozenset({"ammonia", "nitrite", "chlorine"})
"""Dangers whose next change follows on a test."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """When the next change is sensible; None where that is not asked, or no tank is known."""
    names = [tank.name for tank in turn.tanks]
    asked = turn.incoming.addressed and not parsed.values and parsed.command is None
    if not asked or parsed.events or not names or not asks_when(turn.incoming.text, names):
        return None
    _said, named = what_now.without_tank(turn, turn.incoming.text.rstrip(" ?!."))
    by_question = parsed.question.tank if parsed.question is not None else None
    stored = turn.tank_named(by_question or parsed.tank or "") or named or turn.current_tank
    if stored is None:
        return await standing.change_needed(turn, Question("when"))
    for reminder in await turn.uow.reminders.of_chat(turn.chat.id):
        if reminder.kind == "change" and reminder.tank_id in {stored.id, None}:
            return await agenda.listed(turn)
    return [await _by_readings(turn, stored)]


async def _by_readings(turn: Turn, stored: StoredTank) -> Reply:
    """What the readings ask for, and when a change may follow or is usual."""
    question = Question("when", tank=stored.name, text=turn.incoming.text)
    (reply,) = await standing.change_needed(turn, question)
    if "emergency" in reply.facts:
        return reply
    lines, facts = [line.text for line in reply.lines], dict(reply.facts)
    changes = await turn.uow.log.events(stored.id, kinds=("water_change",))
    last = max((each.at for each in changes if each.at <= turn.now), default=None)
    today = last is not None and turn.now - last < DAY
    if facts.get("findings") or "largest_safe_share" in facts or "changed" in facts:
        danger = await what_now.unsettled(turn, stored)
        if today or danger in POISONS:
            lines += change_talk.next_change(emergency=danger in POISONS)
        elif not any("left" in finding for finding in facts.get("findings", ())):
            lines += words.due_now()
        return await turn.reply(lines, facts=facts)
    state = await state_of(turn, stored, turn.now)
    limit = limit_of_nitrate(state)
    lines += [] if limit is None else ahead_of(state, "nitrate", limit, facts)
    upcoming = None if last is None else (last + WEEK).astimezone(turn.chat.zone)
    lines += words.usual(stored.name, upcoming, turn.local_now)
    return await turn.reply(lines, facts=facts)
