"""``what's due``: one list of reminders and of what is next of open plans, the soonest first."""

from __future__ import annotations

from datetime import datetime, time, timedelta
from typing import Any, Final

from bot.chat import danger_first, dose_on_hold, pauses, plans_due, reminders, what_now
from bot.chat.model import Reply
from bot.chat.reminding import local, said
from bot.chat.turn import Turn
from bot.chat.words import agenda as words
from bot.chat.words import reminders as reminder_words
from bot.store.reminders import Reminder
from core.advice.calls import asks_what_now
from core.message.due_asked import SPANS, due_asked
from core.message.model import Parsed
from core.schedule import moment_at

LISTED: Final = 30
"""Lines that fit one message."""


async def listed(turn: Turn, *, named: bool = False) -> list[Reply]:
    """All that waits; `named` where reminders are asked for by their name."""
    asked = due_asked(turn.incoming.text, [tank.name for tank in turn.tanks])
    named = named or (asked is not None and asked.reminders)
    return [await _listed(turn, None, named=named)]


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """The list of what is due, or of some days of it; None where it is not asked for.

    ``what do i have to do`` is of what is wrong while something is, and of how the tank stands
    where nothing waits.
    """
    if not turn.incoming.addressed or parsed.values or parsed.command is not None:
        return None
    asked = due_asked(turn.incoming.text, [tank.name for tank in turn.tanks])
    if asked is None:
        return None
    if asked.may_be_a_call:
        stored = turn.current_tank
        if stored is not None and (await what_now.danger_in(turn, stored))[0] is not None:
            return await _wrong(turn)
        waits = await turn.uow.reminders.of_chat(turn.chat.id) or await plans_due.steps(turn)
        if not waits and asked.span in {None, "today"} and not asked.anything:
            return None
    return [await _listed(turn, asked.span, named=asked.reminders)]


async def _wrong(turn: Turn) -> list[Reply] | None:
    """What is wrong, where nothing else is to be done first; None where its steps are asked for."""
    said, _named = what_now.without_tank(turn, turn.incoming.text)
    wrong = await danger_first.standing(turn)
    if asks_what_now(said) or not wrong.lines:
        return None
    return [await turn.reply(wrong.lines, facts=wrong.facts, choices=wrong.choices)]


async def _listed(turn: Turn, span: str | None, *, named: bool) -> Reply:
    """All that waits, with the reminders numbered; those of some days first where asked for.

    Where reminders are `named`, what of a plan may be done by now stands last, and that there are
    none is said first where only plans wait.
    """
    living, held = await dose_on_hold.of_turn(turn, await turn.uow.reminders.of_chat(turn.chat.id))
    steps = await plans_due.steps(turn)
    behind = named and span is None
    rows: list[tuple[datetime | None, str]] = [
        (None if behind and step.at <= turn.now else step.at, step.told) for step in steps
    ]
    numbered = [(_moment(each), _line(turn, each, number)) for number, each in enumerate(living, 1)]
    undated = datetime.max.replace(tzinfo=turn.now.tzinfo) if named else turn.now
    entries = sorted([*rows, *numbered], key=lambda row: row[0] or undated)
    facts: dict[str, Any] = {"reminders": [_fact(turn, each) for each in living]}
    if steps:
        facts["plans"] = [step.facts for step in steps]
    if span is not None:
        first, last = _ends(turn, span)
        within = [row for row in entries if row[0] is None or first <= row[0] < last]
        head = [] if within else [words.none_then()]
        entries = within or entries[:1]
        lines = [*head, *(told for _at, told in entries)] if entries else []
    else:
        lines = [told for _at, told in entries]
    wrong = await danger_first.standing(turn)
    facts |= wrong.facts | dose_on_hold.facts(held)
    if not lines:
        untold = reminder_words.none_set if named else reminder_words.nothing_due
        lines = words.no_reminder() if wrong.lines else untold(turn.example_tank)
        return await turn.reply([*wrong.lines, *lines], facts=facts, choices=wrong.choices)
    none = words.none_set() if named and not living and not held else []
    lines = [*wrong.lines, *none, *held, *_paused(turn, facts), *lines]
    listed = {"reminder_ids": [each.id for each in living]} if living else {}
    return await turn.reply(
        lines[:LISTED],
        more=lines[LISTED:],
        facts=facts,
        choices=wrong.choices,
        context=listed,
        expects="number" if living else None,
    )


def _paused(turn: Turn, facts: dict[str, Any]) -> list[str]:
    """That reminders rest, now or later."""
    told = pauses.pause_of(turn)
    if told is None:
        return []
    since, until = local(turn, turn.chat.paused_from), local(turn, turn.chat.paused_until)
    facts["paused"] = {
        name: at.isoformat() for name, at in (("from", since), ("until", until)) if at is not None
    }
    return told[:1]


def _moment(reminder: Reminder) -> datetime | None:
    return reminder.open_due or reminder.next_due


def _ends(turn: Turn, span: str) -> tuple[datetime, datetime]:
    """From when to when some days are, by the chat's clock; what is late is of today."""
    today = turn.local_now.date()
    last = moment_at(today + timedelta(days=SPANS[span]), time(), turn.chat.zone)
    if span != "tomorrow":
        return datetime.min.replace(tzinfo=turn.now.tzinfo), last
    return moment_at(today + timedelta(days=1), time(), turn.chat.zone), last


def _line(turn: Turn, reminder: Reminder, number: int) -> str:
    return reminder_words.entry(
        number,
        said(turn, reminder),
        reminders.rule_words(turn, reminder),
        local(turn, _moment(reminder)),
        turn.local_now,
        is_open=reminder.open_due is not None,
    )


def _fact(turn: Turn, reminder: Reminder) -> dict[str, Any]:
    tank = turn.tank_by_id(reminder.tank_id)
    moment = local(turn, _moment(reminder))
    return {
        "id": reminder.id,
        "tank": tank.name if tank else None,
        "what": reminder.what,
        "rule": reminder.rule,
        "due": moment.isoformat() if moment else None,
        "open": reminder.open_due is not None,
    }
