"""A reminder that stands moved to another time, or put off; asked where its hour may be two."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import datetime, time, timedelta
from typing import Final

from bot.chat import chores, plan_reminders, reminder_answers
from bot.chat.model import Reply
from bot.chat.reminding import said
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import reminder_talk as talk_words
from bot.chat.words import reminders as words
from bot.chat.words.numbers import when as day_and_hour
from bot.chat.words.rules import describe
from bot.chat.words.text import _
from bot.reminders import planning
from bot.store.offers import Choice, Offer
from bot.store.reminders import Reminder
from core.message.fold import fold
from core.message.model import Parsed
from core.message.reminder_shift import Shift
from core.message.reminder_talk import Talk
from core.message.reminder_when import names_part
from core.schedule import (
    Every,
    Once,
    Plan,
    Weekly,
    from_text,
    is_midnight,
    moved,
    names_weekday,
    parse_moment,
    split_time,
    tells_span,
    two_half_hours,
    two_hours,
)

MOVED: Final = "reminder_moved"
"""What an offer has that moved a reminder, beside how it stood."""

FAR: Final = 2
"""So many times as long as it was, a bare number may as well be an hour of the day."""

NEAR: Final = timedelta(hours=4)
"""A part of the day and an hour that is of it are no further apart."""

MIDNIGHTS: Final = ("00:00", "23:59")
"""The beginning of a day and its end, in a minute of its own."""

MOST: Final = 8
"""Buttons of a question which one was meant."""

_BARE: Final = re.compile(r"at (\d{1,2})")


async def press_move(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Move the reminder of a button."""
    living = await turn.uow.reminders.of_chat(turn.chat.id)
    chosen = [each for each in living if each.id == choice.arguments["id"]]
    if not chosen:
        return [await turn.reply(general.already())]
    return await move(turn, chosen, choice.arguments["when"])


def either_half(turn: Turn, reminder: Reminder, when: str) -> list[str]:
    """The two hours that a bare one may be: a small one, or one of the afternoon; else none."""
    if two := two_hours(when):
        return list(two)
    if halves := _half_hours(turn, reminder, when):
        return halves
    bare = _BARE.fullmatch(when)
    due = reminder.next_due or reminder.open_due
    single = isinstance(from_text(reminder.rule), Once)
    if single and due is not None and is_midnight(when) and not _is_today(turn, due):
        day = f"{due.astimezone(turn.chat.zone):%Y-%m-%d}"
        return [f"{day} {each}" for each in MIDNIGHTS]
    if bare is None or due is None or due.astimezone(turn.chat.zone).hour < 12:
        return []
    hour = int(bare[1])
    return [f"at {hour:02}:00", f"at {hour + 12}:00"] if 0 < hour < 12 else []


def _shown(turn: Turn, hour: str) -> str:
    """What the button of an hour shows, with its day where it has one."""
    if not hour.endswith(MIDNIGHTS):
        return hour.removeprefix("at ")
    at = parse_moment(hour, turn.local_now, turn.chat.zone)
    if not isinstance(at, datetime):
        return hour
    return day_and_hour(at.astimezone(turn.chat.zone), turn.local_now)


def _half_hours(turn: Turn, reminder: Reminder, when: str) -> list[str]:
    """What ``half 5`` may be: half before that hour or behind it, in the half of day it is due.

    Only what is still to come, where it is due today.
    """
    zone = turn.chat.zone
    due = reminder.open_due or reminder.next_due or turn.now
    hours = two_half_hours(when, late=due.astimezone(zone).hour >= 12)
    if len({split_time(each) for each in hours}) < 2:
        return []
    rule = from_text(reminder.rule)
    ahead = [
        each
        for each in hours
        if (to := moved(rule, due, reminder.anchor, each, turn.local_now, zone)) is not None
        and (not _is_today(turn, due) or to.first.astimezone(zone).date() == turn.local_now.date())
    ]
    return ahead or list(hours)


def _is_today(turn: Turn, due: datetime) -> bool:
    return due.astimezone(turn.chat.zone).date() == turn.local_now.date()


async def move(
    turn: Turn, chosen: Sequence[Reminder], when: str, *, later: bool = False
) -> list[Reply]:
    """Move the only reminder that was meant, else ask which; `later`: not to the day it is due."""
    if len(chosen) > 1:
        choices = [
            Choice(said(turn, each)[:40], "move_reminder", "", {"id": each.id, "when": when})
            for each in chosen[:MOST]
        ]
        return [await turn.reply(talk_words.move_which(when), choices=choices)]
    (only,) = chosen
    rule, zone = from_text(only.rule), turn.chat.zone
    due = only.next_due or only.open_due or turn.now
    if hours := either_half(turn, only, when):
        choices = [
            Choice(_shown(turn, each), "move_reminder", "", {"id": only.id, "when": each})
            for each in hours
        ]
        asked = talk_words.which_half(said(turn, only))
        return [await turn.reply(asked, choices=choices, context={"reminder_id": only.id})]
    to = moved(rule, due, only.anchor, when, turn.local_now, zone)
    same_day = to is not None and to.first.astimezone(zone).date() == due.astimezone(zone).date()
    if later and same_day and to is not None and to.first <= due:
        to = moved(rule, due, only.anchor, when, due.astimezone(zone), zone)
        if to is None or to.first <= due:
            same = talk_words.not_later(said(turn, only), due.astimezone(zone), turn.local_now)
            return [await turn.reply(same)]
    if to is None:
        return [await turn.reply(words.problem("unclear", when, None, turn.example_tank))]
    return await to_plan(turn, only, to, when)


async def to_plan(turn: Turn, only: Reminder, to: Plan, when: str = "") -> list[Reply]:
    """Move a reminder to a rule and its first moment, never before a part may go in."""
    rule, zone = from_text(only.rule), turn.chat.zone
    least = await plan_reminders.earliest(turn, only)
    sooner = least is not None and to.first < least
    if sooner and least is not None:
        to = Plan(Once(least.astimezone(zone)), turn.now, least)
    if (between := _lost(turn, only, to)) is not None:
        return [await asked_to_rest(turn, only, between, to.first)]
    after = await planning.move(turn.uow, turn.chat, only, to)
    told = "" if isinstance(to.rule, Once) else describe(to.rule, zone)
    lines = talk_words.moved(said(turn, after), told, to.first.astimezone(zone), turn.local_now)
    lines += [talk_words.not_sooner()] if sooner else []
    facts = {
        "reminder": {
            "id": after.id,
            "what": after.what,
            "rule": after.rule,
            "due": to.first.isoformat(),
        }
    }
    held = {**reminder_answers.as_it_stood(only), MOVED: True}
    other_day = isinstance(rule, Weekly) and isinstance(to.rule, Weekly) and rule != to.rule
    once = other_day and names_weekday(when)
    until = {"until": to.first.isoformat()}
    choices = [Choice(_(talk_words.ONLY_ONCE), "move_once", "", until)] if once else []
    return [await turn.reply(lines, facts=facts, context=held, expects="undo", choices=choices)]


async def shift(turn: Turn, reminder: Reminder, told: Shift) -> list[Reply]:
    """Move a reminder by so much: what is asked already is put off, a rule keeps its new hour."""
    zone = turn.chat.zone
    due = (reminder.open_due or reminder.next_due or turn.now).astimezone(zone)
    if reminder.open_due is not None and not told.earlier:
        return await put_off(turn, reminder, f"in {told.span}")
    after = parse_moment(f"in {told.span}", due, zone)
    if not isinstance(after, datetime):
        return [await turn.reply(words.problem("unclear", told.span, None, turn.example_tank))]
    by = due - after if told.earlier else after - due
    usual = getattr(from_text(reminder.rule), "at", None)
    if isinstance(usual, time) and due.time().replace(second=0, microsecond=0) != usual:
        if reminder.open_due is None and due + by > turn.now:
            return await reminder_answers.put_off(turn, reminder, due + by)
        due = due.replace(hour=usual.hour, minute=usual.minute, second=0, microsecond=0)
    to = due + by
    if to.date() == due.date():
        return await move(turn, [reminder], f"at {to:%H:%M}")
    if to <= turn.now:
        return [await turn.reply(words.problem("past", told.span, None, turn.example_tank))]
    rule = from_text(reminder.rule)
    rule = Once(to) if isinstance(rule, Once) else rule
    return await to_plan(turn, reminder, Plan(rule, reminder.anchor, to))


def _lost(turn: Turn, reminder: Reminder, to: Plan) -> datetime | None:
    """The next time but one of a rule that is kept, where the new time is behind it."""
    rule, due = from_text(reminder.rule), reminder.next_due
    if due is None or to.rule != rule or isinstance(rule, Once):
        return None
    if isinstance(rule, Every) and (rule.unit != "days" or rule.count > 1):
        return None  # its interval goes on from there
    between = planning.occurrence_after(reminder, turn.chat, due)
    return between if between is not None and between < to.first else None


async def asked_to_rest(
    turn: Turn, reminder: Reminder, between: datetime, until: datetime
) -> Reply:
    """Ask whether the times before a moment are to be let go; nothing is moved."""
    zone = turn.chat.zone
    lines = talk_words.comes_before(said(turn, reminder), between.astimezone(zone), turn.local_now)
    label = talk_words.not_before(until.astimezone(zone), turn.local_now)
    held = {"id": reminder.id, "until": until.isoformat()}
    choices = [Choice(label[:40], "rest_until", "", held)]
    return await turn.reply(lines, choices=choices, context={"reminder_id": reminder.id})


async def moved_or_done(
    turn: Turn, parsed: Parsed, chosen: Sequence[Reminder], when: str
) -> list[Reply] | None:
    """``water change on monday instead``: it is asked whether it is moved, or was done then."""
    (event, *_rest) = parsed.events
    tank = turn.current_tank if chosen[0].tank_id is None else turn.tank_by_id(chosen[0].tank_id)
    at = event.at or parsed.at
    choices = [
        Choice(talk_words.move_it(said(turn, each), when)[:40], "move_reminder", "",
               {"id": each.id, "when": when})
        for each in chosen[:MOST]
    ]  # fmt: skip
    if event.kind == "water_change" and tank is not None and at and at <= turn.now:
        share = "" if event.percent is None else f" {event.percent:g}%"
        text = f"changed{share}" if share else chores.CHANGED
        held = {"text": text, "at": at.isoformat(), "tank_id": tank.id}
        label = talk_words.it_was_done(at.astimezone(turn.chat.zone), turn.local_now)
        choices.append(Choice(label[:40], "for_tank", "", held))
    return [await turn.reply(talk_words.moved_or_done(), choices=choices)]


async def of_day(turn: Turn, living: Sequence[Reminder], day: str, when: str) -> list[Reply] | None:
    """Move the one that is due on a weekday; None where none stands, and told where none is then.

    Of one that comes on more days only one would go: it is asked for in other words.
    """
    if not living:
        return None
    named = parse_moment(day, turn.local_now, turn.chat.zone)
    if not isinstance(named, datetime):
        return [await turn.reply(words.problem("unclear", day, None, turn.example_tank))]
    weekday = named.astimezone(turn.chat.zone).weekday()
    rules = [from_text(each.rule) for each in living if names_weekday(day)]
    days = [rule.days for rule in rules if isinstance(rule, Weekly) and len(rule.days) > 1]
    chosen = due_on(turn, living, day)
    if any(weekday in each for each in days):
        return [
            await turn.reply(words.problem("unclear", f"{day} · {when}", None, turn.example_tank))
        ]
    if not chosen:
        return [await turn.reply(talk_words.none_such([said(turn, each) for each in living]))]
    return await move(turn, chosen, when)


def due_on(turn: Turn, living: Sequence[Reminder], day: str) -> list[Reminder]:
    """Those that are due on a weekday, in a part of the day, or at an hour.

    One that comes on more than one day of the week is of none of them.
    """
    zone = turn.chat.zone
    named = parse_moment(day, turn.local_now, zone)
    chosen = []
    for each in living:
        rule, due = from_text(each.rule), each.next_due or each.open_due
        if due is None or not isinstance(named, datetime):
            continue
        at, meant = due.astimezone(zone), named.astimezone(zone)
        usual = getattr(rule, "at", None)
        if isinstance(usual, time):
            at = at.replace(hour=usual.hour, minute=usual.minute)
        if any(letter.isdigit() for letter in day):
            fits = (at.hour, at.minute) == (meant.hour, meant.minute)
        elif names_part(day):
            fits = is_near(at, meant)
        else:
            several = isinstance(rule, Weekly) and len(rule.days) > 1
            fits = not several and due.astimezone(zone).weekday() == meant.weekday()
        chosen += [each] if fits else []
    return chosen


def is_near(hour: datetime, at: datetime) -> bool:
    """Whether the hour of one moment is of the part of the day that another one stands for."""
    return abs(timedelta(hours=hour.hour - at.hour, minutes=hour.minute - at.minute)) <= NEAR


def as_long(turn: Turn, reminder: Reminder, said: str, told: Talk) -> str:
    """The words of time of `2 hours` and `2` where it was set as so long from now, or so often.

    "" where a length says nothing of its rule.
    """
    bare = _BARE.fullmatch(told.when)
    timed = split_time(said)
    if bare is not None and timed is not None and is_long(said):
        number = re.sub(r"\d+", bare[1], timed[1], count=1)
        at_hour = told.when in fold(turn.incoming.text)
        before = re.search(r"\d+", timed[1])
        far = before is not None and int(bare[1]) > FAR * int(before[0])  # 8 after 3: an hour
        return told.when if at_hour or far or number == timed[1] else number
    if not told.bare or reminder.open_due is not None:
        return told.when
    rule = from_text(reminder.rule)
    if isinstance(rule, Once):
        return told.when
    if told.verb != "move":
        return ""
    every = f"every {told.when.removeprefix('in ')}"
    to = moved(rule, turn.now, reminder.anchor, every, turn.local_now, turn.chat.zone)
    return every if to is not None and to.rule != rule else ""


async def put_off(
    turn: Turn, reminder: Reminder, when: str, since: datetime | None = None
) -> list[Reply]:
    """Ask again at a time that was said, in an hour where none was; a span counts from `since`."""
    moment: datetime | None = turn.now + timedelta(hours=1)
    if len(two := two_hours(when)) > 1 and (hours := _moments(turn, two)):
        due = reminder.open_due or reminder.next_due
        held = {"reminder_id": reminder.id, "due": due.isoformat() if due else ""}
        choices = [
            Choice(each, "later", "", {**held, "until": moment.isoformat()})
            for each, moment in hours
        ]
        asked = talk_words.which_half(said(turn, reminder))
        return [await turn.reply(asked, choices=choices, context={"reminder_id": reminder.id})]
    if when:
        start = (since or turn.now) if is_span(when) else turn.now
        found = parse_moment(when, start.astimezone(turn.chat.zone), turn.chat.zone)
        moment = found if isinstance(found, datetime) else None
    if moment is None:
        return [await turn.reply(words.problem("unclear", when, None, turn.example_tank))]
    return await reminder_answers.put_off(turn, reminder, moment)


def _moments(turn: Turn, two: tuple[str, ...]) -> list[tuple[str, datetime]]:
    """The words of time that are still to come, each with its moment."""
    found = [(each, parse_moment(each, turn.local_now, turn.chat.zone)) for each in two]
    return [(each, moment) for each, moment in found if isinstance(moment, datetime)]


def is_long(said: str) -> bool:
    """Whether a request tells how long from now, and no hour: `in 3 hours to feed`."""
    timed = split_time(said)
    return timed is not None and is_span(timed[1])


def is_span(when: str) -> bool:
    """Tell whether words of time are how long from now: `in 2 h`."""
    return when.startswith("in ") and tells_span(when.removeprefix("in "))
