"""Reminders made and stopped; `bot.chat.agenda` lists them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import Any, Final

from bot.chat.model import Reply
from bot.chat.patience import LOOKED_AT
from bot.chat.reminding import fitting_task, said
from bot.chat.turn import Turn
from bot.chat.words import reminder_talk as talk_words
from bot.chat.words import reminders as words
from bot.chat.words.rules import describe
from bot.reminders import planning
from bot.store.offers import Choice
from bot.store.reminders import Draft, Reminder
from bot.store.tanks import StoredTank
from core.message.followups import heads
from core.message.model import Command, Parsed
from core.message.tanks import match
from core.message.unknown_tanks import unknown_place
from core.schedule import (
    Every,
    Kind,
    Once,
    Problem,
    Request,
    from_text,
    next_after,
    parse_anew,
    to_text,
)

MADE: Final = "reminder_made"
"""Under which an offer keeps the reminder that it confirms, and its words."""


async def anew(turn: Turn, made: Mapping[str, Any], when: str | None = None) -> list[Reply] | None:
    """``no, saturday`` right after a reminder was made: the same task at another time.

    `when` is the words of time, where they are known apart from the others.
    """
    reminder = await turn.uow.reminders.get(made["id"])
    if reminder is None or reminder.ended_at is not None or "said" not in made:
        return None
    told = [rest for rest, marks in heads(turn.incoming.text) if marks] if when is None else [when]
    for rest in told:
        said = [*made["said"], rest]
        request = parse_anew(said, turn.local_now, turn.chat.zone)
        if isinstance(request, Problem):
            lines = words.problem(
                request.reason, request.text, request.suggestion, turn.example_tank
            )
            held = {"id": reminder.id}
            options = request.options if request.reason == "ambiguous" and len(said) > 1 else ()
            choices = [
                Choice(each[:40], "move_reminder", "", {**held, "when": each}) for each in options
            ]
            return [await turn.reply(lines, choices=choices)]
        if request is not None:
            await planning.end(turn.uow, reminder, turn.now)
            return await make(turn, request, said, beside=made.get("beside", []), instead=reminder)
    return None


async def unmake(turn: Turn) -> list[Reply] | None:
    """End the reminder that was made last; None where something was put on record since.

    The one whose place it took stands again.
    """
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if offer.entry_id is not None:
            return None
        if MADE not in offer.context:
            continue
        reminder = await turn.uow.reminders.get(offer.context[MADE]["id"])
        if reminder is not None and reminder.ended_at is None:
            await planning.end(turn.uow, reminder, turn.now)
            if (others := offer.context[MADE].get("beside")) and "parts" in offer.context[MADE]:
                for part in await turn.uow.reminders.of_chat(turn.chat.id):
                    if part.id in others:  # of a plan all go
                        await planning.end(turn.uow, part, turn.now)
            former = await _restored(turn, offer.context[MADE].get("former"))
            if former is not None and former.next_due is not None:
                at = former.next_due.astimezone(turn.chat.zone)
                told = talk_words.back_again(said(turn, former), at, turn.local_now)
                return [await turn.reply(told, context={"reminder_id": former.id})]
            return [await turn.reply(words.stopped(said(turn, reminder)))]
    return None


async def _restored(turn: Turn, former: Mapping[str, Any] | None) -> Reminder | None:
    """The reminder that gave way to another, standing as before; None where none did."""
    if former is None:
        return None
    times = {name: datetime.fromisoformat(former[name]) for name in ("next_due", "wake_at")}
    await turn.uow.reminders.change(former["id"], state="due", ended_at=None, **times)
    return await turn.uow.reminders.get(former["id"])


def _kept(former: Reminder | None) -> dict[str, Any]:
    """What an offer keeps of the reminder that gave way; nothing of one that was open."""
    if former is None or former.next_due is None or former.wake_at is None:
        return {}
    times = {"next_due": former.next_due.isoformat(), "wake_at": former.wake_at.isoformat()}
    return {"former": {"id": former.id, **times}}


async def make_once(
    turn: Turn, what: str, kind: str, at: datetime, tank: StoredTank | None
) -> Reminder:
    """Keep a reminder for a single moment, as advice asks for; the same one only once."""
    rule = to_text(Once(at.astimezone(turn.chat.zone)))
    return (await _keep(turn, what, kind, rule, at, at, tank, counts=False))[0]


async def make_every(turn: Turn, what: str, kind: Kind, rule: Every, tank: StoredTank) -> Reminder:
    """Keep a reminder at intervals from now, as advice asks for."""
    first = next_after(rule, turn.now, turn.chat.zone, turn.now)
    if first is None:
        raise ValueError("an interval without an end has a next time")
    counts = kind in {"test", "change"}
    held = to_text(rule)
    return (await _keep(turn, what, kind, held, turn.now, first, tank, counts=counts))[0]


async def stop(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``stop reminding me to …``: end a reminder."""
    living = await turn.uow.reminders.of_chat(turn.chat.id)
    wanted = command.arguments.casefold().strip(" .!")
    fitting = fitting_task(turn, living, wanted)
    if len(fitting) != 1:
        tasks = [said(turn, each) for each in (fitting or living)]
        return [await turn.reply(words.stop_which(tasks))]
    await planning.end(turn.uow, fitting[0], turn.now)
    return [await turn.reply(words.stopped(said(turn, fitting[0])))]


async def make(
    turn: Turn,
    request: Request,
    text: Sequence[str],
    *,
    beside: Sequence[int] = (),
    instead: Reminder | None = None,
) -> list[Reply]:
    """Keep what was asked for; `text` is its words, with those that changed its time since.

    It takes the place of none of the reminders `beside` it, which the same message asks for; it
    is `instead` of one that was ended for it.
    """
    tank = tank_in(turn, request.what)
    rule = to_text(request.rule)
    reminder, replaced = await _keep(
        turn,
        request.what,
        request.kind,
        rule,
        request.anchor,
        request.first,
        tank,
        counts=request.counts_from_done,
        beside=beside,
    )
    first = request.first.astimezone(turn.chat.zone)
    told = said(turn, reminder)
    if isinstance(request.rule, Once):
        lines = words.made_once(told, first, turn.local_now)
    else:
        described = describe(request.rule, turn.chat.zone)
        if replaced is not None and replaced.id == reminder.id:
            return [await turn.reply(words.there_already(told, described))]
        former = None if replaced is None else rule_words(turn, replaced)
        lines = words.made(told, described, first, turn.local_now, former)
    if request.clock_time_said and not turn.chat.zone_known and not beside:
        lines.append(words.zone_asked(turn.chat.zone_name))
    facts = {
        "reminder": {
            "id": reminder.id,
            "tank": tank.name if tank else None,
            "what": reminder.what,
            "kind": reminder.kind,
            "rule": rule,
            "due": first.isoformat(),
        }
    }
    told_at = planning.wake_time(request.first, turn.chat)
    if planning.after_pause(request.first, turn.chat) != request.first:
        lines.append(words.told_after_pause(told_at.astimezone(turn.chat.zone), turn.local_now))
        facts["reminder"]["told"] = told_at.astimezone(turn.chat.zone).isoformat()
    gone = _kept(instead or (None if replaced is None or replaced.id == reminder.id else replaced))
    held = {MADE: {"id": reminder.id, "said": list(text), "beside": list(beside), **gone}}
    return [await turn.reply(lines, facts=facts, context=held, expects="followup")]


async def _keep(
    turn: Turn,
    what: str,
    kind: str,
    rule: str,
    anchor: datetime,
    first: datetime,
    tank: StoredTank | None,
    *,
    counts: bool,
    beside: Sequence[int] = (),
) -> tuple[Reminder, Reminder | None]:
    """Store a reminder; one for the same task gives way to it, and the same one stays.

    Returns the reminder that stands, and the one that it replaced (itself where nothing is new).
    """
    tank_id = tank.id if tank else None
    replaced = None
    once = isinstance(from_text(rule), Once)
    for old in await turn.uow.reminders.of_chat(turn.chat.id):
        same_task = old.tank_id == tank_id and old.what.casefold() == what.casefold()
        if same_task and old.rule == rule:
            return old, old
        repeats = not once and old.id not in beside
        if same_task and repeats and not isinstance(from_text(old.rule), Once):
            await planning.end(turn.uow, old, turn.now)
            replaced = old
    draft = Draft(
        what=what,
        kind=kind,
        rule=rule,
        counts_from_done=counts,
        anchor=anchor,
        next_due=first,
        wake_at=planning.wake_time(first, turn.chat),
        created_at=turn.now,
        created_by=turn.incoming.author_name,
        tank_id=tank_id,
        thread=turn.incoming.address.thread,
    )
    made = await turn.uow.reminders.get(await turn.uow.reminders.add(turn.chat.id, draft))
    if made is None:
        raise LookupError("a reminder that was just kept is gone")
    return made, replaced


def tank_in(turn: Turn, what: str) -> StoredTank | None:
    """The tank that a task names, else the only one; None for a task of the whole house."""
    names = [tank.name for tank in turn.tanks]
    tokens = [word.strip(" ,.:'’") for word in what.split()]
    for size in (3, 2, 1):
        for start in range(len(tokens) - size + 1):
            words_ = " ".join(tokens[start : start + size])
            exact = turn.tank_named(words_.removesuffix("'s").removesuffix("’s"))
            if exact is not None:
                return exact
    near = [found for word in tokens if len(word) > 3 and (found := match(word, names).name)]
    if len(set(near)) == 1:
        return turn.tank_named(near[0])
    if unknown_place(what, turn.context()) is not None:
        return None  # back kh, beside the only tank Front
    return turn.tanks[0] if len(turn.tanks) == 1 else None


def rule_words(turn: Turn, reminder: Reminder) -> str:
    """A reminder's rule by the chat's clock."""
    return describe(from_text(reminder.rule), turn.chat.zone)
