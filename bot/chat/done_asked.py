"""``done?``: where a plan or a reminder stands; nothing is put on record for it."""

from __future__ import annotations

from bot.chat import plan_parts
from bot.chat.given_plan import running
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import general as words
from core.message.done_asked import asked
from core.message.model import Parsed
from core.message.plan_said import Amounts


async def answer(turn: Turn, _parsed: Parsed) -> list[Reply] | None:
    """Say what is left of the plan that runs, or that nothing was taken as done."""
    if not turn.incoming.addressed or not asked(turn.incoming.text):
        return None
    plan = await running(turn)
    waiting = await turn.uow.reminders.of_chat(turn.chat.id, only_open=True)
    if plan is not None and not waiting:
        return await plan_parts.answer(turn, "go_on", plan, Amounts())
    return [await turn.reply(words.not_taken_as_done())]
