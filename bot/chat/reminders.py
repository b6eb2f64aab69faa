"""Reminders in the conversation: made, listed, answered, put off, stopped, paused."""

from __future__ import annotations

from datetime import datetime, time, timedelta
from typing import Final

from bot.chat import due
from bot.chat.model import Reply
from bot.chat.reminding import local, said
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import reminders as words
from bot.reminders import planning
from bot.store.offers import Choice, Offer
from bot.store.reminders import Draft, Reminder
from bot.store.tanks import StoredTank
from core.message.model import Command, Parsed
from core.message.tanks import match
from core.schedule import (
    Once,
    Problem,
    Request,
    describe,
    from_text,
    moment_at,
    parse_quiet,
    parse_request,
    parse_until,
    to_text,
)

EVENING: Final = time(20, 0)
MORNING: Final = time(9, 0)
LISTED: Final = 30
"""Reminders that fit one message."""
LOOKED_AT: Final = 12
"""Latest offers among which a number's list is looked for."""


async def command(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``/remind`` lists; ``remind me to …`` makes."""
    if not command.arguments.strip():
        return await _list(turn)
    request = parse_request(command.arguments, turn.local_now, turn.chat.zone)
    if isinstance(request, Problem):
        lines = words.problem(request.reason, request.text, request.suggestion)
        return [await turn.reply(lines)]
    return await _make(turn, request)


async def make_once(
    turn: Turn, what: str, kind: str, at: datetime, tank: StoredTank | None
) -> Reminder:
    """Keep a reminder for a single moment, as advice asks for; the same one only once."""
    rule = to_text(Once(at.astimezone(turn.chat.zone)))
    return (await _keep(turn, what, kind, rule, at, at, tank, counts=False))[0]


async def by_number(turn: Turn, verb: str, number: str) -> list[Reply]:
    """``done``, ``later`` or ``skip`` of the reminder that a number or words name, or the only one.

    Numbers are those of the latest message that listed reminders.
    """
    wanted = number.strip().casefold()
    waiting = await turn.uow.reminders.of_chat(turn.chat.id, only_open=True)
    if wanted.isascii() and wanted.isdigit():
        chosen = await _numbered(turn, int(wanted[:6]))
        fitting = [] if chosen is None else [chosen]
    else:
        fitting = _fitting(turn, waiting, wanted)
    if len(fitting) == 1:
        return await _answer(turn, fitting[0], verb, "hour")
    if not waiting:
        return [await turn.reply(words.nothing_open())] if turn.incoming.addressed else []
    tasks = [said(turn, each) for each in (fitting or waiting)]
    listed = {"reminder_ids": [each.id for each in (fitting or waiting)]}
    return [await turn.reply(words.which(verb, tasks), expects="number", context=listed)]


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
    lines = words.due(said(turn, reminder), was_due, turn.local_now, repeat=False)
    return [await turn.reply(lines, choices=due.answers(reminder, reminder.open_due))]


async def stop(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``stop reminding me to …``: end a reminder."""
    living = await turn.uow.reminders.of_chat(turn.chat.id)
    wanted = command.arguments.casefold().strip(" .!")
    fitting = _fitting(turn, living, wanted)
    if len(fitting) != 1:
        tasks = [said(turn, each) for each in (fitting or living)]
        return [await turn.reply(words.stop_which(tasks))]
    await planning.end(turn.uow, fitting[0], turn.now)
    return [await turn.reply(words.stopped(said(turn, fitting[0])))]


async def quiet(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``quiet hours 22:00-07:00`` and ``quiet hours off``."""
    wanted = command.arguments.strip()
    if not wanted:
        return [await turn.reply(words.quiet_shown(turn.chat.quiet))]
    if wanted.casefold() == "off":
        await turn.change_chat(quiet=None)
        lines = words.quiet_off()
    else:
        span = parse_quiet(wanted)
        if isinstance(span, Problem):
            return [await turn.reply(words.problem("unclear", wanted, "quiet hours 22:00-07:00"))]
        await turn.change_chat(quiet=str(span))
        lines = words.quiet_set(str(span))
    await planning.reschedule(turn.uow, turn.chat, turn.now, zone_changed=False)
    return [await turn.reply(lines)]


async def holiday(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``holiday until 4 May``: nothing is said until that day begins."""
    wanted = command.arguments.strip()
    if wanted.casefold() in {"off", "over", "end"}:
        await turn.change_chat(paused_until=None)
        await planning.reschedule(turn.uow, turn.chat, turn.now, zone_changed=False)
        return [await turn.reply(words.holiday_off())]
    until = parse_until(wanted, turn.local_now, turn.chat.zone)
    if isinstance(until, Problem):
        lines = words.problem(until.reason, until.text or wanted, "holiday until 4 May")
        return [await turn.reply(lines)]
    await turn.change_chat(paused_until=until)
    await planning.reschedule(turn.uow, turn.chat, turn.now, zone_changed=False)
    shown = until.astimezone(turn.chat.zone)
    return [await turn.reply(words.holiday_set(shown, turn.local_now))]


async def _make(turn: Turn, request: Request) -> list[Reply]:
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
    )
    first = request.first.astimezone(turn.chat.zone)
    told = said(turn, reminder)
    if isinstance(request.rule, Once):
        lines = words.made_once(told, first, turn.local_now)
    else:
        rule_words = describe(request.rule, turn.chat.zone)
        if replaced is not None and replaced.id == reminder.id:
            return [await turn.reply(words.there_already(told, rule_words))]
        former = None if replaced is None else _rule_words(turn, replaced)
        lines = words.made(told, rule_words, first, turn.local_now, former)
    if request.clock_time_said and not turn.chat.zone_known:
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
    return [await turn.reply(lines, facts=facts)]


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
        if same_task and not once and not isinstance(from_text(old.rule), Once):
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
    return turn.tanks[0] if len(turn.tanks) == 1 else None


async def _list(turn: Turn) -> list[Reply]:
    living = await turn.uow.reminders.of_chat(turn.chat.id)
    entries = [
        (
            said(turn, each),
            _rule_words(turn, each),
            local(turn, each.open_due or each.next_due),
            each.open_due is not None,
        )
        for each in living
    ]
    facts = {
        "reminders": [
            {
                "id": each.id,
                "tank": tank.name if (tank := turn.tank_by_id(each.tank_id)) else None,
                "what": each.what,
                "rule": each.rule,
                "due": moment.isoformat() if (moment := entry[2]) else None,
                "open": each.open_due is not None,
            }
            for each, entry in zip(living, entries, strict=True)
        ]
    }
    lines = words.listing(entries[:LISTED], turn.local_now)
    more = words.listing(entries[LISTED:], turn.local_now) if len(entries) > LISTED else []
    listed = {"reminder_ids": [each.id for each in living]}
    expects = "number" if living else None
    return [await turn.reply(lines, more=more, facts=facts, context=listed, expects=expects)]


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


async def _answer(turn: Turn, reminder: Reminder, verb: str, until: str) -> list[Reply]:
    task = said(turn, reminder)
    if verb == "later":
        moment = _until(turn, until)
        await planning.put_off(turn.uow, reminder, moment)
        lines = words.put_off(task, moment.astimezone(turn.chat.zone), turn.local_now)
    elif verb == "skip":
        after = await planning.skip(turn.uow, turn.chat, reminder, turn.now)
        lines = words.skipped(task, local(turn, after.next_due), turn.local_now)
    else:
        after = await planning.answer_done(turn.uow, turn.chat, reminder, turn.now)
        lines = words.done(task, local(turn, after.next_due), turn.local_now, turn.author)
    changed = await turn.uow.reminders.get(reminder.id)
    upcoming = None if changed is None else local(turn, changed.next_due)
    facts = {
        "reminder": {
            "id": reminder.id,
            "what": reminder.what,
            "answer": verb,
            **({"next_due": upcoming.isoformat()} if upcoming else {}),
        }
    }
    edits = turn.incoming.message_ref if turn.incoming.kind == "press" else None
    return [await turn.reply(lines, facts=facts, edits=edits)]


def _until(turn: Turn, until: str) -> datetime:
    """In an hour, this evening (tomorrow's if it is late), or tomorrow at the usual morning."""
    now, zone = turn.local_now, turn.chat.zone
    if until == "hour":
        return turn.now + timedelta(hours=1)
    tomorrow = now.date() + timedelta(days=1)
    if until == "tomorrow":
        return moment_at(tomorrow, MORNING, zone)
    evening = moment_at(now.date(), EVENING, zone)
    return evening if evening > turn.now else moment_at(tomorrow, EVENING, zone)


async def _numbered(turn: Turn, number: int) -> Reminder | None:
    """The living reminder that stood under a number in the latest list, else among the open."""
    living = await turn.uow.reminders.of_chat(turn.chat.id)
    shown = [each.id for each in living if each.open_due is not None]
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if ids := offer.context.get("reminder_ids"):
            shown = ids
            break
    wanted = shown[number - 1] if 1 <= number <= len(shown) else None
    return next((each for each in living if each.id == wanted), None)


def _fitting(turn: Turn, reminders: list[Reminder], wanted: str) -> list[Reminder]:
    """The reminders whose task is what was said, else those whose task holds it."""
    if not wanted:
        return reminders
    exact = [r for r in reminders if wanted in {r.what.casefold(), said(turn, r).casefold()}]
    return exact or [each for each in reminders if wanted in said(turn, each).casefold()]


def _rule_words(turn: Turn, reminder: Reminder) -> str:
    return describe(from_text(reminder.rule), turn.chat.zone)
