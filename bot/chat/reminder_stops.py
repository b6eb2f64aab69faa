"""``cancel the kh one``, ``stop``: a reminder that stands, ended or asked about."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import datetime
from typing import Any, Final

from bot.chat import (
    plan_reminders,
    reminder_answers,
    reminder_fewer,
    reminder_moving,
    reminders,
)
from bot.chat.model import Reply
from bot.chat.patience import LOOKED_AT
from bot.chat.reminding import said
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import reminder_talk as talk_words
from bot.chat.words import reminders as words
from bot.chat.words.text import _
from bot.reminders import planning
from bot.store.offers import Choice, Offer
from bot.store.reminders import Reminder
from core.message.reminder_talk import Talk, halts, talk
from core.schedule import Once, from_text, names_weekday

_CLAUSE: Final = re.compile(r"[.,;!\n]+|\b(?:and|so|then|please|und|bitte|et|y|e|en|i|och)\b")

MOST: Final = 8
"""Buttons of a question which one was meant."""


async def stop(
    turn: Turn,
    told: Talk,
    living: Sequence[Reminder],
    spoken: Reminder | None,
    fitting: Sequence[Reminder],
) -> list[Reply] | None:
    """End the reminder that is meant, or ask which; None where it is about something else."""
    if told.when and names_weekday(told.when):
        meant = fitting if told.target else [spoken] if spoken is not None else living
        return await reminder_fewer.answer(turn, meant, told.when)
    if told.when:
        return None
    if told.plan and (planned := await plan_reminders.stop(turn)) is not None:
        return planned
    if told.target:
        halted = told.named or halts(turn.incoming.text)
        if not halted or not (fitting or told.noun):
            return None
        chosen = fitting or living
    elif told.every:
        if not (told.noun or (living and halts(turn.incoming.text))):
            return None
        chosen = living
    elif spoken is not None:
        if spoken.open_due is not None and not told.noun and not _is_single(spoken):
            return [await _skipped_or_ended(turn, spoken, spoken.open_due)]
        if not told.noun and (moved := await _behind_move(turn, spoken)) is not None:
            return [moved]
        chosen = [spoken]
    elif told.noun:
        chosen = living
    else:
        return None
    kept = {single.id for each in chosen for single in await _kept_of(turn, each)}
    chosen = [each for each in chosen if each.id not in kept]
    sure = told.named or told.noun or not told.target
    if len(chosen) == 1 and sure and (fitting or not told.target) and (told.noun or not told.every):
        return await _ended(turn, chosen)
    return await _which(turn, chosen, every=told.plan or not told.target)


async def _behind_move(turn: Turn, spoken: Reminder) -> Reply | None:
    """Ask whether the move right before is taken back, or the reminder ends; else None."""
    offer = next(iter(await turn.uow.offers.latest(turn.chat.id)), None)
    made = {} if offer is None else offer.context.get(reminders.MADE) or {}
    moved = offer is not None and reminder_moving.MOVED in offer.context
    if offer is None or not (moved or made.get("former")):
        return None
    choices = [
        Choice(_(talk_words.UNDO_MOVE), "unmove_reminder", "", {"offer": offer.id}),
        Choice(_(talk_words.FOR_GOOD), "stop_reminder", "", {"ids": [spoken.id]}),
    ]
    return await turn.reply(talk_words.move_or_all(said(turn, spoken)), choices=choices)


async def press_unmove(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Take back the move of a reminder, where nothing became of it since."""
    moved = await turn.uow.offers.get(choice.arguments["offer"])
    if moved is None or moved.chat_id != turn.chat.id:
        return [await turn.reply(general.already())]
    back = reminder_moving.MOVED in moved.context
    taken = await (reminder_answers.take_back(turn, moved) if back else reminders.unmake(turn))
    return taken or [await turn.reply(general.already())]


async def _which(turn: Turn, chosen: Sequence[Reminder], *, every: bool = True) -> list[Reply]:
    """Ask which is to be stopped; `every` is whether all of them may be."""
    tasks = [said(turn, each) for each in chosen]
    choices = [
        Choice(task[:40], "stop_reminder", "", {"ids": [each.id]})
        for task, each in zip(tasks[:MOST], chosen, strict=False)
    ]
    if len(chosen) > 1 and every:
        everyone = {"ids": [each.id for each in chosen]}
        choices.append(Choice(_(talk_words.STOP_ALL), "stop_reminder", "", everyone))
    return [await turn.reply(words.stop_which(tasks), choices=choices)]


async def beside_call(turn: Turn) -> list[Reply]:
    """``he lies on the bottom. stop the doses``: no more is reminded of them, or it is asked."""
    clauses = [clause.strip() for clause in _CLAUSE.split(turn.incoming.text)]
    orders = [clause for clause in clauses if clause and halts(clause)]
    told = next((said for each in orders if (said := talk(each)) and said.plan), None)
    if told is None or told.verb != "stop" or turn.incoming.text.rstrip().endswith("?"):
        return []
    stored = turn.current_tank
    tank_id = None if stored is None else stored.id
    living = await turn.uow.reminders.of_chat(turn.chat.id)
    doses = [each for each in living if each.kind == "dose" and each.tank_id in {tank_id, None}]
    if not doses:
        return await plan_reminders.stop(turn) or []
    if len({each.what for each in doses}) == 1:
        ended = await _ended(turn, doses[:1])
        for each in doses[1:]:
            await planning.end(turn.uow, each, turn.now)
        return ended
    return await _which(turn, doses)


async def done_and_over(turn: Turn, reminder: Reminder, over: str) -> list[Reply]:
    """``done already, dont remind me again``: done; of a rhythm that is to end, asked on top."""
    replies = await reminder_answers.done(turn, reminder)
    if over == "stop" and not _is_single(reminder):
        replies += await _which(turn, [reminder], every=False)
    return replies


def _is_single(reminder: Reminder) -> bool:
    return isinstance(from_text(reminder.rule), Once)


async def _skipped_or_ended(turn: Turn, reminder: Reminder, due: datetime) -> Reply:
    """Ask whether only what is due is let go, or the reminder with all that is to come."""
    held = {"reminder_id": reminder.id, "due": due.isoformat()}
    choices = [
        Choice(_(words.SKIP), "skip", "", held),
        Choice(_(talk_words.FOR_GOOD), "stop_reminder", "", {"ids": [reminder.id]}),
    ]
    return await turn.reply(talk_words.skip_or_end(said(turn, reminder)), choices=choices)


async def _kept_of(turn: Turn, reminder: Reminder) -> list[Reminder]:
    """The single ones that keep times of a rhythm before a day that was let go."""
    kept: list[int] = []
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if offer.context.get("reminder_id") == reminder.id:
            kept += offer.context.get(reminder_answers.KEPT, [])
    living = await turn.uow.reminders.of_chat(turn.chat.id) if kept else []
    return [each for each in living if each.id in kept and each.open_due is None]


async def _ended(turn: Turn, chosen: Sequence[Reminder]) -> list[Reply]:
    also: list[dict[str, Any]] = []
    for each in chosen:
        for single in await _kept_of(turn, each):
            also.append(reminder_answers.as_it_stood(single))
            await planning.end(turn.uow, single, turn.now)
        await planning.end(turn.uow, each, turn.now)
    lines = words.stopped(" · ".join(said(turn, each) for each in chosen))
    if len(chosen) > 1:
        return [await turn.reply(lines)]
    held = {**reminder_answers.as_it_stood(chosen[0]), reminder_answers.ALSO: also}
    return [await turn.reply(lines, expects="undo", context=held)]


async def press_stop(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """End the reminders of a button that still live."""
    living = await turn.uow.reminders.of_chat(turn.chat.id)
    chosen = [each for each in living if each.id in choice.arguments["ids"]]
    return await _ended(turn, chosen) if chosen else [await turn.reply(general.already())]
