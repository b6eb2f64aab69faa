"""What is said while a reminder waits for its answer: who did it, how much, or nothing we know."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from bot.chat import due, reminder_amend, reminder_answers
from bot.chat.model import Reply
from bot.chat.patience import PATIENCE
from bot.chat.reminding import said
from bot.chat.turn import Turn
from bot.chat.words import reminder_talk as talk_words
from bot.chat.words import reminders as words
from bot.store.offers import Choice
from bot.store.reminders import Reminder
from core.message.fold import fold
from core.message.model import Parsed
from core.message.reminder_deed import asks_of_another, doer, done_amount

WORDS: Final = 6
"""A text of more words is hardly an answer to a reminder."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``tom did it``, ``did 10`` of what waits; ``did tom feed`` tells nothing done."""
    if not turn.incoming.addressed or parsed.command is not None or parsed.values:
        return None
    text = turn.incoming.text
    who, amount = doer(text), done_amount(text)
    if who is None and amount is None and not fold(text).lstrip().startswith("did "):
        return None
    waiting = await turn.uow.reminders.of_chat(turn.chat.id, only_open=True)
    if not waiting:
        return None
    known = {word for tank in turn.tanks for word in fold(tank.name).split()}
    known |= {word for each in waiting for word in fold(each.what).split()}
    if asks_of_another(text, known):
        return [await _shown(turn, waiting, talk_words.not_told_done())]
    if parsed.events:
        return None
    if amount is not None and len(waiting) == 1:
        return await reminder_amend.of_amount(turn, waiting[0], *amount)
    if who is None or turn.tank_named(who) is not None:
        return None
    if len(waiting) > 1:
        return await reminder_answers.by_number(turn, "done", "")
    return await reminder_answers.done(turn, waiting[0], who=who)


async def again(turn: Turn) -> list[Reply] | None:
    """What is due once more, where it is what was said last and few words tell nothing we know."""
    text = turn.incoming.text
    if "?" in text or len(text.split()) > WORDS:
        return None
    offer = next(iter(await turn.uow.offers.latest(turn.chat.id, 1)), None)
    if offer is None or turn.now - offer.made_at > PATIENCE:
        return None
    due_now = {
        each.arguments["reminder_id"]
        for each in offer.choices
        if each.verb in {"done", "open_reminder"}
    }
    open_now = await turn.uow.reminders.of_chat(turn.chat.id, only_open=True)
    waiting = [each for each in open_now if each.id in due_now]
    return [await _shown(turn, waiting, talk_words.no_answer())] if waiting else None


async def _shown(turn: Turn, waiting: Sequence[Reminder], head: list[str]) -> Reply:
    """What waits, with its buttons."""
    told = [(each, each.open_due) for each in waiting if each.open_due is not None]
    at = [(each, moment, moment.astimezone(turn.chat.zone)) for each, moment in told]
    if len(at) == 1:
        ((only, moment, local),) = at
        lines = words.due(said(turn, only), local, turn.local_now, repeat=False)
        return await turn.reply([*head, *lines], choices=due.answers(only, moment))
    lines = words.folded([(said(turn, e), local, False) for e, _m, local in at], turn.local_now)
    choices = [
        Choice(
            said(turn, each)[:40],
            "open_reminder",
            "",
            {"reminder_id": each.id, "due": moment.isoformat()},
        )
        for each, moment, _local in at[: due.MOST_BUTTONS]
    ]
    held = {"reminder_ids": [each.id for each, _moment, _local in at]}
    return await turn.reply([*head, *lines], choices=choices, context=held)
