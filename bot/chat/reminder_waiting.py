"""What is said while a reminder waits for its answer: who did it, how much, or nothing we know."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from bot.chat import due, reminder_amend, reminder_answers, reminder_talk
from bot.chat.model import Reply
from bot.chat.patience import PATIENCE
from bot.chat.reminding import said
from bot.chat.turn import Turn
from bot.chat.words import reminder_talk as talk_words
from bot.chat.words import reminders as words
from bot.store.offers import Choice
from bot.store.reminders import Reminder
from core.message import parse
from core.message.fold import fold
from core.message.guesses import name_for
from core.message.lexicon import lexicon
from core.message.model import Parsed
from core.message.reminder_deed import asks_of_another, doer, doing, done_amount, done_number
from core.message.tokens import cut

WORDS: Final = 6
"""A text of more words is hardly an answer to a reminder."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``tom did it``, ``did 10`` of what waits; ``did tom feed`` tells nothing done."""
    if not turn.incoming.addressed or parsed.command is not None or parsed.values:
        return None
    text = turn.incoming.text
    who, amount = doer(text), done_amount(text)
    who = doing(text) if who is None else who
    if who is None and amount is None and not fold(text).lstrip().startswith("did "):
        return None
    waiting = await turn.uow.reminders.of_chat(turn.chat.id, only_open=True)
    if not waiting:
        others = who is not None and not parsed.events and turn.tank_named(who) is None
        return await _by_another(turn, who or "") if others else None
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


async def _by_another(turn: Turn, who: str) -> list[Reply] | None:
    """``my daughter is doing it now``: the one just spoken of, else it is asked which that comes.

    So it does not fall due all the same; None where none comes soon.
    """
    living = await turn.uow.reminders.of_chat(turn.chat.id)
    offer = next(iter(await turn.uow.offers.latest(turn.chat.id)), None)
    spoken = None if offer is None else await reminder_talk.spoken_of(turn, offer, living)
    if spoken is not None:
        return await reminder_answers.done(turn, spoken, who=who)
    coming = [each for each in living if reminder_answers.is_soon(turn, each)]
    return await reminder_answers.which_early(turn, coming) if coming else None


async def with_value(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``done 25.5`` while a test of one value waits: what was read is kept, and the test is done.

    Of more than one test it is asked which; None where no bare number is told behind the word.
    """
    told = parsed.values or parsed.events or parsed.question or parsed.doubts
    if told or not turn.incoming.addressed or turn.route is None:
        return None
    number = done_number(turn.incoming.text)
    if number is None:
        return None
    waiting = await turn.uow.reminders.of_chat(turn.chat.id, only_open=True)
    listed = await reminder_answers.numbered(turn, int(number)) if number.isdecimal() else None
    if listed is not None:
        return None  # done 2: the second of those that are listed
    tests = [(each, analyte) for each in waiting if (analyte := tested(each)) is not None]
    if len(tests) != 1:
        return None
    ((reminder, analyte),) = tests
    stored = turn.tank_by_id(reminder.tank_id) or turn.current_tank
    of = "" if stored is None else f"{stored.name}: "
    said_so = f"{of}{name_for(analyte)} {number}"
    value = parse(said_so, turn.context())
    if len(value.values) != 1 or value.doubts or value.events or value.question:
        return None
    text, turn.incoming = turn.incoming, replace(turn.incoming, text=said_so)
    replies = await turn.route(turn, value)
    turn.incoming = text
    still = await turn.uow.reminders.of_chat(turn.chat.id, only_open=True)
    if any(each.id == reminder.id for each in still):
        replies = [*replies, *await reminder_answers.done(turn, reminder)]
    return replies


def tested(reminder: Reminder) -> str | None:
    """The one value that a reminder is to test; None where it is another task, or of more."""
    if reminder.kind != "test":
        return None
    named = {
        str(token.value).partition("@")[0]
        for token in cut(fold(reminder.what), lexicon())
        if token.kind == "analyte"
    }
    return next(iter(named)) if len(named) == 1 else None


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
