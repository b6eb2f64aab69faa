"""A reminder that stands: skipped ahead, renamed, done in part, not done after all."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from bot.chat import (
    calls,
    reminder_answers,
    reminder_days,
    reminder_moving,
    reminders,
    task_deeds,
)
from bot.chat.model import Reply
from bot.chat.patience import PATIENCE
from bot.chat.reminding import local, said
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import reminder_talk as talk_words
from bot.chat.words import reminders as words
from bot.chat.words.text import _
from bot.reminders import planning
from bot.store.offers import Choice, Offer
from bot.store.reminders import Reminder
from core.message import parse
from core.message.model import Parsed
from core.message.reminder_deed import only, put_number, with_number
from core.message.reminder_deed import other_amount as amount_put_right
from core.message.reminder_talk import renaming
from core.message.reminder_which import added as added_thing
from core.message.reminder_which import with_thing
from core.schedule import Once, from_text, kind_of, split_time

HOURS: Final = 24
"""A smaller number may be an hour of the day."""


PAUSING: Final = "reminder_pausing"
"""Of an offer: that it was asked how long a reminder is to rest."""

MOST: Final = 8
"""Buttons of a question which one was meant."""


async def skip(
    turn: Turn, fitting: Sequence[Reminder], spoken: Reminder | None, *, named: bool, target: bool
) -> list[Reply] | None:
    """Let the next time of the one that is meant go; asked which, where several may be."""
    living = await turn.uow.reminders.of_chat(turn.chat.id)
    waiting = [each for each in (fitting if target else living) if each.open_due is not None]
    if waiting and not target:
        return await reminder_answers.by_number(turn, "skip", "")
    if len(waiting) == 1:
        return await reminder_answers.skip(turn, waiting[0])
    chosen = fitting if target else [spoken] if spoken is not None else living if named else []
    if not chosen:
        return None
    if len(chosen) == 1:
        return await _skipped(turn, chosen[0])
    choices = [
        Choice(said(turn, each)[:40], "skip_next", "", _pointer(each)) for each in chosen[:MOST]
    ]
    return [await turn.reply(talk_words.skip_which(), choices=choices)]


async def press_skip(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Let the next time of a button's reminder go, once."""
    living = await turn.uow.reminders.of_chat(turn.chat.id)
    chosen = [each for each in living if _pointer(each) == choice.arguments]
    return await _skipped(turn, chosen[0]) if chosen else [await turn.reply(general.already())]


def _pointer(reminder: Reminder) -> dict[str, object]:
    due = reminder.open_due or reminder.next_due
    return {"id": reminder.id, "due": due.isoformat() if due else ""}


async def _skipped(turn: Turn, reminder: Reminder) -> list[Reply]:
    if reminder.open_due is not None:
        return await reminder_answers.skip(turn, reminder)
    stood = reminder_answers.as_it_stood(reminder)
    if isinstance(from_text(reminder.rule), Once) or reminder.next_due is None:
        await planning.end(turn.uow, reminder, turn.now)
        lines = words.stopped(said(turn, reminder))
        return [await turn.reply(lines, expects="undo", context=stood)]
    after = await planning.skip_next(turn.uow, turn.chat, reminder, turn.now)
    lines = words.skipped(said(turn, reminder), local(turn, after.next_due), turn.local_now)
    return [await turn.reply(lines, expects="undo", context=stood)]


async def pause(turn: Turn, chosen: Sequence[Reminder], when: str) -> list[Reply] | None:
    """One reminder rests until what was said; else its next time is let go, or it ends."""
    if len(chosen) != 1:
        return None
    if when and (rested := await reminder_days.rest(turn, chosen[0], when)) is not None:
        return rested
    choices = [
        Choice(_(talk_words.SKIP_NEXT), "skip_next", "", _pointer(chosen[0])),
        Choice(_(talk_words.FOR_GOOD), "stop_reminder", "", {"ids": [chosen[0].id]}),
    ]
    lines = talk_words.pause_one(said(turn, chosen[0]))
    held = {"reminder_id": chosen[0].id, PAUSING: True}
    return [await turn.reply(lines, choices=choices, context=held, expects="followup")]


async def pause_ended(turn: Turn, offer: Offer, when: str) -> list[Reply] | None:
    """``i meant pause it``, right after one was ended: it stands again, and rests."""
    of = offer.context.get("reminder_id")
    ended = None if of is None else await turn.uow.reminders.get(of)
    if ended is None or ended.ended_at is None or "stood" not in offer.context:
        return None
    if offer.context.get("done") or turn.now - offer.made_at > PATIENCE:
        return None
    back = await reminder_answers.stand_again(turn, offer)
    if back is None:
        return None
    due = local(turn, back.next_due) or turn.local_now
    again = await turn.reply(talk_words.back_again(said(turn, back), due, turn.local_now))
    return [again, *(await pause(turn, [back], when) or [])]


async def until(turn: Turn, reminder: Reminder) -> list[Reply] | None:
    """``until april``, behind the question how one is to rest; None for other words."""
    return await reminder_days.rest(turn, reminder, turn.incoming.text.strip(" .!"))


async def done_all(turn: Turn, living: Sequence[Reminder]) -> list[Reply] | None:
    """``done with both``: all that wait were done."""
    waiting = [each for each in living if each.open_due is not None]
    if not waiting:
        return None
    return [reply for each in waiting for reply in await reminder_answers.done(turn, each)]


async def undone(turn: Turn, offer: Offer | None) -> list[Reply] | None:
    """``no, didn't do it``: what was told done right before is taken back."""
    if offer is None or not offer.context.get("done") or turn.now - offer.made_at > PATIENCE:
        return None
    return await reminder_answers.take_back(turn, offer)


async def renamed(
    turn: Turn, spoken: Reminder | None, fitting: Sequence[Reminder], what: str
) -> list[Reply] | None:
    """Let a reminder have another task; None where it is not sure which one."""
    chosen = [spoken] if spoken is not None else list(fitting)
    if len(chosen) != 1 or not what:
        return None
    await turn.uow.reminders.change(chosen[0].id, what=what, kind=kind_of(what))
    after = await turn.uow.reminders.get(chosen[0].id)
    if after is None:
        return None
    lines = talk_words.renamed(said(turn, chosen[0]), said(turn, after))
    facts = {"reminder": {"id": after.id, "what": after.what, "rule": after.rule}}
    held = reminder_answers.as_it_stood(chosen[0])
    former = {"what": chosen[0].what, "kind": chosen[0].kind}
    held["stood"] |= former
    return [await turn.reply(lines, facts=facts, context=held, expects="undo")]


async def other_amount(turn: Turn, spoken: Reminder | None) -> list[Reply] | None:
    """``not 5, 2.5 ml``: another amount in the task of the one that was just spoken of."""
    what = None if spoken is None else amount_put_right(turn.incoming.text, spoken.what)
    if spoken is None or what is None:
        return None
    tank = turn.tank_by_id(spoken.tank_id)
    refused = await task_deeds.too_much(turn, what, kind_of(what), tank)
    return refused or await renamed(turn, spoken, [], what)


async def bare_number(
    turn: Turn, offer: Offer | None, spoken: Reminder | None, parsed: Parsed
) -> list[Reply] | None:
    """``make it 30``: the minutes that it was set in, or the only amount of its task.

    What may be an hour as well is asked. None where it is neither, or an hour.
    """
    number = None if spoken is None or parsed.events else put_number(turn.incoming.text)
    if number is None or spoken is None or offer is None:
        return None
    made = offer.context.get(reminders.MADE) or {}
    before = made.get("said", [""])[-1]
    if reminder_moving.is_long(before):
        span = re.sub(r"\d+(?:[.,]\d+)?", number, (split_time(before) or ("", ""))[1], count=1)
        hour = number.isdecimal() and int(number) < HOURS
        return None if hour else await reminders.anew(turn, made, span)
    found = with_number(spoken.what, number)
    if found is None:
        return None
    if number.isdecimal() and int(number) < HOURS:
        asked = talk_words.amount_or_hour(
            said(turn, spoken), f"make it {found[1]}", f"make it at {number}:00"
        )
        return [await turn.reply(asked, context={"reminder_id": spoken.id})]
    tank = turn.tank_by_id(spoken.tank_id)
    refused = await task_deeds.too_much(turn, found[0], kind_of(found[0]), tank)
    return refused or await renamed(turn, spoken, [], found[0])


async def added(turn: Turn, spoken: Reminder | None, parsed: Parsed) -> list[Reply] | None:
    """``oh and the heater too``: one thing more in the task of the one just spoken of."""
    told = parsed.values or parsed.events or parsed.question is not None
    thing = None if told or "?" in turn.incoming.text else added_thing(turn.incoming.text)
    if spoken is None or thing is None or calls.is_danger(turn, parsed):
        return None
    if len(thing) <= 1 or turn.tank_named(thing.removeprefix("the ")) or split_time(thing):
        return None
    return await renamed(turn, spoken, [], with_thing(spoken.what, thing))


def renaming_of(turn: Turn) -> tuple[str, str] | None:
    """The task and its new words, where no tank has that name."""
    told = renaming(turn.incoming.text)
    return None if told is None or turn.tank_named(told[0]) is not None else told


async def in_part(
    turn: Turn, spoken: Reminder | None, living: Sequence[Reminder]
) -> list[Reply] | None:
    """``done but only 10``: the change that was due, with as much of it as was done."""
    less = only(turn.incoming.text)
    waiting = [each for each in living if each.open_due is not None]
    waiting = waiting or ([] if spoken is None else [spoken])
    if less is None or turn.route is None or len(waiting) != 1:
        return None
    return await of_amount(turn, waiting[0], *less)


async def of_amount(turn: Turn, first: Reminder, amount: float, unit: str) -> list[Reply] | None:
    """Log so much of the change that was due; asked for its unit where none was told."""
    tank = turn.tank_by_id(first.tank_id) or turn.current_tank
    if first.kind != "change" or tank is None or turn.route is None:
        return None
    if not unit:
        held = {"at": turn.now.isoformat(), "tank_id": tank.id}
        choices = [
            Choice(shown, "for_tank", "", {"text": f"changed {shown}", **held})
            for shown in (f"{amount:g} %", f"{amount:g} L")
        ]
        return [await turn.reply(talk_words.how_much_of_it(), choices=choices)]
    text = f"{tank.name}: changed {amount:g} {unit}"
    before = turn.incoming
    turn.incoming = replace(before, text=text)
    replies = await turn.route(turn, parse(text, turn.context()))
    turn.incoming = before
    return replies
