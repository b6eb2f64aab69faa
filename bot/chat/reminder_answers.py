"""Answers to reminders: done, later, skip; by button, by number or by words."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, time, timedelta
from typing import Any, Final

from bot.chat import dose_on_hold, due, plan_reminders
from bot.chat.model import Reply
from bot.chat.reminding import fitting_task, local, said
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import reminder_talk as talk_words
from bot.chat.words import reminders as words
from bot.reminders import planning
from bot.store.offers import Choice, Offer
from bot.store.reminders import Reminder
from core.schedule import Once, from_text, moment_at

EVENING: Final = time(20, 0)
MORNING: Final = time(9, 0)
MOMENTS: Final = ("anchor", "next_due", "wake_at", "open_due", "ended_at")
SOON: Final = timedelta(days=1)
"""So long before it is due a reminder may be what was done."""
MOST: Final = 8
KEPT: Final = "reminder_kept"
"""Under which an offer has the single ones that keep times before a day that was let go."""
ALSO: Final = "reminder_also"
"""Under which an offer has how those stood that ended with it."""
LOOKED_AT: Final = 12
"""Latest offers among which a number's list is looked for."""


async def by_number(turn: Turn, verb: str, number: str) -> list[Reply]:
    """``done``, ``later`` or ``skip`` of the reminder that a number or words name, or the only one.

    Numbers are those of the latest message that listed reminders.
    """
    wanted = number.strip().casefold()
    waiting = await turn.uow.reminders.of_chat(turn.chat.id, only_open=True)
    if wanted.isascii() and wanted.isdigit():
        chosen = await numbered(turn, int(wanted[:6]))
        fitting = [] if chosen is None else [chosen]
    else:
        fitting = fitting_task(turn, waiting, wanted)
    if len(fitting) == 1:
        return await _answer(turn, fitting[0], verb, "hour")
    if not waiting and verb == "done" and not wanted and turn.incoming.addressed:
        return await _before_due(turn)
    if not waiting:
        return [await turn.reply(words.nothing_open())] if turn.incoming.addressed else []
    asked, _held = await dose_on_hold.of_turn(turn, fitting or waiting)
    tasks = [said(turn, each) for each in asked]
    listed = {"reminder_ids": [each.id for each in (fitting or waiting)]}
    return [await turn.reply(words.which(verb, tasks), expects="number", context=listed)]


async def _before_due(turn: Turn) -> list[Reply]:
    """``done`` while nothing waits: the only one that is due within hours, else it is asked.

    One that comes only once is asked about as well: it would never be told again.
    """
    living = await turn.uow.reminders.of_chat(turn.chat.id)
    coming = [each for each in living if is_soon(turn, each)]
    near = [each for each in coming if _due_in(turn, each) <= planning.EARLY]
    if len(near) == 1 and not isinstance(from_text(near[0].rule), Once):
        return await done(turn, near[0])
    if not coming:
        return [await turn.reply(words.nothing_open())]
    return await which_early(turn, coming)


async def which_early(
    turn: Turn,
    coming: Sequence[Reminder],
    at: datetime | None = None,
    lines: list[str] | None = None,
) -> list[Reply]:
    """Ask which of the reminders that come was done already, at a time."""
    when = {} if at is None else {"at": at.isoformat()}
    choices = [
        Choice(said(turn, each)[:40], "done_early", "", _pointer(each) | when)
        for each in coming[:MOST]
    ]
    return [await turn.reply(lines or talk_words.done_before_due(), choices=choices)]


def next_time(reminder: Reminder) -> dict[str, object]:
    """What a button keeps of the time of a reminder that is to be let go."""
    due = reminder.open_due or reminder.next_due
    return {"id": reminder.id, "due": due.isoformat() if due else ""}


def is_soon(turn: Turn, reminder: Reminder, within: timedelta = SOON) -> bool:
    """Tell whether a reminder waits for an answer, or is due within a day, or so long."""
    return reminder.open_due is not None or _due_in(turn, reminder) <= within


def _due_in(turn: Turn, reminder: Reminder) -> timedelta:
    return timedelta.max if reminder.next_due is None else reminder.next_due - turn.now


def _pointer(reminder: Reminder) -> dict[str, Any]:
    due = reminder.open_due or reminder.next_due
    return {"reminder_id": reminder.id, "due": due.isoformat() if due else ""}


async def done(
    turn: Turn, reminder: Reminder, at: datetime | None = None, who: str = ""
) -> list[Reply]:
    """Note that a task was done, be it due or not yet: now, unless at another time.

    `who` did it, where that was said.
    """
    return await _answer(turn, reminder, "done", "hour", at=at, who=who)


async def skip(turn: Turn, reminder: Reminder) -> list[Reply]:
    """Let what is due go."""
    return await _answer(turn, reminder, "skip", "hour")


async def put_off(turn: Turn, reminder: Reminder, moment: datetime) -> list[Reply]:
    """Ask again at a moment that was said."""
    return await _answer(turn, reminder, "later", moment.isoformat())


async def press_early(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Note that a task that is not due yet was done, once."""
    reminder = await turn.uow.reminders.get(choice.arguments["reminder_id"])
    if reminder is None or reminder.chat_id != turn.chat.id or reminder.ended_at is not None:
        return [await turn.reply(general.already())]
    told = dict(choice.arguments)
    at = told.pop("at", None)
    if _pointer(reminder) != told:
        return [await turn.reply(general.already())]
    return await done(turn, reminder, None if at is None else datetime.fromisoformat(at))


async def press_done(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Note that an open reminder's task was done."""
    return await _press(turn, choice, "done")


async def press_later(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Put an open reminder off."""
    return await _press(turn, choice, "later")


async def press_skip(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Let an open occurrence go."""
    return await _press(turn, choice, "skip")


async def press_open(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Show one reminder of a folded message with its own five buttons."""
    reminder = await _still_open(turn, choice)
    if reminder is None or reminder.open_due is None:
        return [await turn.reply(general.already())]
    was_due = reminder.open_due.astimezone(turn.chat.zone)
    (told,), held = await dose_on_hold.of_turn(turn, [reminder])
    lines = words.due(said(turn, told), was_due, turn.local_now, repeat=False)
    choices = due.answers(reminder, reminder.open_due)
    facts = dose_on_hold.facts(held)
    return [await turn.reply([*held, *lines], facts=facts, choices=choices)]


async def _press(turn: Turn, choice: Choice, verb: str) -> list[Reply]:
    reminder = await _still_open(turn, choice)
    if reminder is None:
        return [await turn.reply(general.already())]
    return await _answer(turn, reminder, verb, choice.arguments.get("until", "hour"))


async def _still_open(turn: Turn, choice: Choice) -> Reminder | None:
    """The reminder of a button, if the occurrence that the button is about still waits."""
    reminder = await turn.uow.reminders.get(choice.arguments["reminder_id"])
    if reminder is None or reminder.chat_id != turn.chat.id or reminder.ended_at is not None:
        return None
    asked = datetime.fromisoformat(choice.arguments["due"])
    # A button pressed between sending and settling finds the occurrence still on its way.
    being_sent = reminder.state == "sending" and reminder.next_due == asked
    return reminder if reminder.open_due == asked or being_sent else None


async def _answer(
    turn: Turn,
    reminder: Reminder,
    verb: str,
    until: str,
    *,
    at: datetime | None = None,
    who: str = "",
) -> list[Reply]:
    (told,), held = await dose_on_hold.of_turn(turn, [reminder])
    task = said(turn, told)
    at = at or turn.now
    if verb == "later":
        moment = _until(turn, until)
        await planning.put_off(turn.uow, reminder, moment)
        put_off_to = words.put_off(task, moment.astimezone(turn.chat.zone), turn.local_now)
        lines = [*held, *put_off_to]
    elif verb == "skip":
        after = await planning.skip(turn.uow, turn.chat, reminder, turn.now)
        lines = words.skipped(task, local(turn, after.next_due), turn.local_now)
    else:
        after = await planning.answer_done(turn.uow, turn.chat, reminder, at, early=True)
        lines = words.done(task, local(turn, after.next_due), turn.local_now, who or turn.author)
    changed = await turn.uow.reminders.get(reminder.id)
    upcoming = None if changed is None else local(turn, changed.next_due)
    facts = {
        "reminder": {
            "id": reminder.id,
            "what": told.what,
            "answer": verb,
            **({"next_due": upcoming.isoformat()} if upcoming else {}),
        },
        **dose_on_hold.facts(held),
    }
    edits = turn.incoming.message_ref if turn.incoming.kind == "press" else None
    stood = {**as_it_stood(reminder), **({"done": True} if verb == "done" else {})}
    choices = await plan_reminders.to_log(turn, reminder, at) if verb == "done" else []
    if choices:
        lines.append(talk_words.not_on_record())
    return [
        await turn.reply(
            lines, facts=facts, edits=edits, expects="undo", context=stood, choices=choices
        )
    ]


async def take_back(turn: Turn, offer: Offer) -> list[Reply] | None:
    """``undo`` right after an answer: the reminder is open again as it was before.

    None where it was changed since, or said again.
    """
    reminder = await turn.uow.reminders.get(offer.context["reminder_id"])
    back = None if reminder is None else await stand_again(turn, offer)
    if reminder is None or back is None:
        return None
    if back.what != reminder.what:
        lines = talk_words.renamed(said(turn, reminder), said(turn, back))
        return [await turn.reply(lines, context={"reminder_id": back.id})]
    if back.open_due is None and back.next_due is not None:
        due = back.next_due.astimezone(turn.chat.zone)
        return [await turn.reply(talk_words.back_again(said(turn, back), due, turn.local_now))]
    return [await turn.reply(words.open_again(said(turn, reminder)))]


async def stand_again(turn: Turn, offer: Offer) -> Reminder | None:
    """The reminder of an offer as it stood before; None where it was changed since."""
    reminder = await turn.uow.reminders.get(offer.context["reminder_id"])
    if reminder is None or reminder.open_due is not None or reminder.state != "due":
        return None
    if not await turn.uow.offers.take(offer.id, "undo"):
        return None
    await turn.uow.offers.close(offer.id)
    for kept in offer.context.get(KEPT, []):
        single = await turn.uow.reminders.get(kept)
        if single is not None and single.ended_at is None:
            await planning.end(turn.uow, single, turn.now)
    for held in [offer.context, *offer.context.get(ALSO, [])]:
        stood = {
            name: datetime.fromisoformat(value) if name in MOMENTS and value else value
            for name, value in held["stood"].items()
        }
        await turn.uow.reminders.change(held["reminder_id"], **stood)
    return await turn.uow.reminders.get(reminder.id)


def as_it_stood(reminder: Reminder) -> dict[str, Any]:
    """What an offer keeps to take back what it did to a reminder."""
    return {"reminder_id": reminder.id, "stood": _packed(reminder)}


def _packed(reminder: Reminder) -> dict[str, Any]:
    """What of a reminder an answer changes, as it stood."""
    moments = {name: getattr(reminder, name) for name in MOMENTS}
    packed = {name: value.isoformat() if value else None for name, value in moments.items()}
    # A button pressed between sending and settling: the occurrence counts as said.
    due = reminder.next_due if reminder.state == "sending" else reminder.open_due
    packed["open_due"] = due.isoformat() if due else None
    return {
        **packed,
        "rule": reminder.rule,
        "counts_from_done": reminder.counts_from_done,
        "state": "due" if due is None else "sent",
        "message_ref": reminder.message_ref,
    }


def _until(turn: Turn, until: str) -> datetime:
    """In an hour, this evening (tomorrow's if it is late), tomorrow morning, or when it says."""
    now, zone = turn.local_now, turn.chat.zone
    if until == "hour":
        return turn.now + timedelta(hours=1)
    if until not in {"evening", "tomorrow"}:
        return datetime.fromisoformat(until)
    tomorrow = now.date() + timedelta(days=1)
    if until == "tomorrow":
        return moment_at(tomorrow, MORNING, zone)
    evening = moment_at(now.date(), EVENING, zone)
    return evening if evening > turn.now else moment_at(tomorrow, EVENING, zone)


async def numbered(turn: Turn, number: int) -> Reminder | None:
    """The living reminder that stood under a number in the latest list, else among the open."""
    living = await turn.uow.reminders.of_chat(turn.chat.id)
    shown = [each.id for each in living if each.open_due is not None]
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if ids := offer.context.get("reminder_ids"):
            shown = ids
            break
    wanted = shown[number - 1] if 1 <= number <= len(shown) else None
    return next((each for each in living if each.id == wanted), None)
