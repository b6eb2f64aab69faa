"""A reminder that stands on some days: skipped today, resting for two weeks, done yesterday."""

from __future__ import annotations

from datetime import datetime, time, timedelta

from bot.chat import reminder_answers, reminder_moving, reminders
from bot.chat.model import Reply
from bot.chat.reminding import local, said
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import reminder_talk as talk_words
from bot.chat.words import reminders as words
from bot.chat.words.text import _
from bot.reminders import planning
from bot.store.offers import Choice, Offer
from bot.store.reminders import Reminder
from core.message.fold import fold
from core.message.model import Parsed
from core.message.reminder_talk import THIS_WEEK
from core.message.reminder_when import alone
from core.schedule import (
    Once,
    from_text,
    moment_at,
    names_weekday,
    parse_moment,
    parse_until,
)

A_DAY = timedelta(days=1)

FEW = 3
"""So many times before the day that is let go are kept, each as one of its own."""


async def skip(turn: Turn, chosen: list[Reminder], when: str) -> list[Reply] | None:
    """``skip feed today``: let what is due on those days go; asked where nothing is due then.

    What is due later than the next time cannot be let go yet, and that is said.
    """
    days = _days(turn, when)
    if days is None or not chosen:
        return None
    within = [each for each in chosen if _is_within(each, days)]
    if len(within) == 1:
        return await _rested(turn, within[0], days[1], skipped=True)
    if not within and len(chosen) == 1 and (times := _before(turn, chosen[0], days)):
        return await _rested_later(turn, chosen[0], times, days)
    asked = within or chosen
    choices = [
        Choice(said(turn, each)[:40], "skip_next", "", reminder_answers.next_time(each))
        for each in asked[: reminder_answers.MOST]
    ]
    if within:
        return [await turn.reply(talk_words.skip_which(), choices=choices)]
    if len(asked) == 1:
        due = local(turn, asked[0].open_due or asked[0].next_due)
        lines = talk_words.not_due_then(said(turn, asked[0]), due, turn.local_now)
        choices = [Choice(_(talk_words.SKIP_NEXT), "skip_next", "", choices[0].arguments)]
        held = {"reminder_id": asked[0].id}
        return [await turn.reply(lines, choices=choices, context=held)]
    return [await turn.reply(talk_words.skip_which(), choices=choices)]


def _before(turn: Turn, reminder: Reminder, days: tuple[datetime, datetime]) -> list[datetime]:
    """The few times of a rule before those days and the first on them; none where none is."""
    at = reminder.next_due
    if reminder.open_due is not None or at is None or isinstance(from_text(reminder.rule), Once):
        return []
    before: list[datetime] = []
    while at is not None and at < days[0] and len(before) <= FEW:
        before.append(at)
        at = planning.occurrence_after(reminder, turn.chat, at)
    on_them = at is not None and days[0] <= at < days[1]
    return [*before, at] if at is not None and on_them else []


async def _rested_later(
    turn: Turn, reminder: Reminder, times: list[datetime], days: tuple[datetime, datetime]
) -> list[Reply]:
    """Let those days go and keep the times before the last, each as one of its own."""
    stood = reminder_answers.as_it_stood(reminder)
    tank = turn.tank_by_id(reminder.tank_id)
    what, kind = reminder.what, reminder.kind
    kept = [await reminders.make_once(turn, what, kind, at, tank) for at in times[:-1]]
    after = await planning.rest(turn.uow, turn.chat, reminder, days[1], turn.now)
    zone, upcoming = turn.chat.zone, local(turn, after.next_due)
    *kept_at, gone = [at.astimezone(zone) for at in times]
    lines = talk_words.let_go_then(said(turn, reminder), gone, kept_at, upcoming, turn.local_now)
    facts = {"reminder": {"id": after.id, "what": after.what, "answer": "skip"}}
    if upcoming is not None:
        facts["reminder"]["next_due"] = upcoming.isoformat()
    held = {**stood, reminder_answers.KEPT: [each.id for each in kept]}
    return [await turn.reply(lines, facts=facts, expects="undo", context=held)]


async def instead(turn: Turn, chosen: list[Reminder], day: str, when: str) -> list[Reply] | None:
    """``cant do next sat, remind me the sunday instead``: the one due that day, once on another.

    Asked which, where several are due then; told where none is.
    """
    days = _days(turn, day)
    moment = parse_moment(when, turn.local_now, turn.chat.zone)
    if days is None or not isinstance(moment, datetime):
        return None
    one = [each for each in chosen if _is_within(each, days)]
    if not one and names_weekday(day) and len(day.split()) == 1:  # sunday, said on a sunday
        before = days[0] - 7 * A_DAY, days[1] - 7 * A_DAY
        one = [each for each in chosen if _is_within(each, before)]
    if not one:
        return [await turn.reply(talk_words.none_such([said(turn, each) for each in chosen]))]
    to = [_near(turn, each, _usual(turn, each, when, moment), when) for each in one]
    if len(one) == 1:
        return await _once(turn, one[0], to[0])
    choices = [
        Choice(said(turn, each)[:40], "rest_until", "", {"id": each.id, "until": at.isoformat()})
        for each, at in zip(one[: reminder_answers.MOST], to, strict=False)
    ]
    return [await turn.reply(talk_words.move_which(when), choices=choices)]


def _near(turn: Turn, reminder: Reminder, moment: datetime, when: str) -> datetime:
    """Of a day of the week the one next to when it is due, that is still to come."""
    due = reminder.open_due or reminder.next_due
    if due is None or not names_weekday(when):
        return moment
    zone = turn.chat.zone
    at = moment.astimezone(zone)
    near = [moment_at(at.date() + 7 * each * A_DAY, at.time(), zone) for each in range(-1, 6)]
    return min((each for each in near if each > turn.now), key=lambda each: abs(each - due))


async def rest(turn: Turn, reminder: Reminder, when: str) -> list[Reply] | None:
    """``pause the filter one for 2 weeks``: what is due until then is let go; None if unclear."""
    until = parse_until(when, turn.local_now, turn.chat.zone)
    if not isinstance(until, datetime) or isinstance(from_text(reminder.rule), Once):
        return None
    if reminder.open_due is None and reminder.next_due is not None and reminder.next_due >= until:
        due = local(turn, reminder.next_due)
        return [
            await turn.reply(talk_words.rests_anyway(said(turn, reminder), due, turn.local_now))
        ]
    return await _rested(turn, reminder, until, skipped=False)


async def done(
    turn: Turn, parsed: Parsed, waiting: list[Reminder], soon: list[Reminder]
) -> list[Reply] | None:
    """``did it yesterday already``: what waits, else what comes soon, was done at that time.

    Asked which one, where several may be; None where no time that is over is told.
    """
    at = parsed.at
    if at is None or at > turn.now:
        return None
    chosen = waiting or soon
    sure = len(chosen) == 1 and reminder_answers.is_soon(turn, chosen[0], 2 * A_DAY)
    if sure and not _was_before(turn, chosen[0], at):
        return await reminder_answers.done(turn, chosen[0], at)
    if len(chosen) == 1:
        due = local(turn, chosen[0].open_due or chosen[0].next_due)
        lines = talk_words.done_for(said(turn, chosen[0]), due, turn.local_now)
        return await reminder_answers.which_early(turn, chosen, at, lines)
    which = talk_words.which_done() if waiting else None
    return await reminder_answers.which_early(turn, chosen, at, which) if chosen else None


def _was_before(turn: Turn, reminder: Reminder, at: datetime) -> bool:
    """Whether another time of a rule on fixed days lay between a deed and what is due."""
    due = reminder.open_due or reminder.next_due
    if due is None or reminder.counts_from_done:
        return False
    after = planning.occurrence_after(reminder, turn.chat, at)
    return after is not None and after < due


async def once(turn: Turn, chosen: list[Reminder], when: str) -> list[Reply] | None:
    """``move it to saturday just this week``: the next time only; None where it is not sure."""
    if len(chosen) != 1 or not when:
        return None
    moment = parse_moment(when, turn.local_now, turn.chat.zone)
    if not isinstance(moment, datetime):
        return [await turn.reply(words.problem("unclear", when, None))]
    return await _once(turn, chosen[0], _usual(turn, chosen[0], when, moment))


async def press_once(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Let the reminder that was moved for good come at that time once, and else as before."""
    back = await reminder_answers.stand_again(turn, offer)
    if back is None:
        return [await turn.reply(general.already())]
    return await _once(turn, back, datetime.fromisoformat(choice.arguments["until"]))


async def _once(turn: Turn, reminder: Reminder, moment: datetime) -> list[Reply]:
    """Ask at a moment; refused where another time of the rule comes before it."""
    due = reminder.open_due or reminder.next_due or turn.now
    after = planning.occurrence_after(reminder, turn.chat, due)
    if after is not None and moment >= after and not isinstance(from_text(reminder.rule), Once):
        return [await reminder_moving.asked_to_rest(turn, reminder, after, moment)]
    return await reminder_answers.put_off(turn, reminder, moment)


def _usual(turn: Turn, reminder: Reminder, when: str, moment: datetime) -> datetime:
    """A day that was said without its hour, at the hour that the reminder has."""
    due = reminder.open_due or reminder.next_due
    exact = parse_until(when, turn.local_now, turn.chat.zone)
    at_hour = isinstance(exact, datetime) and exact.astimezone(turn.chat.zone).time() != time()
    if due is None or at_hour:
        return moment
    hour = due.astimezone(turn.chat.zone).time().replace(second=0, microsecond=0)
    kept = moment_at(moment.astimezone(turn.chat.zone).date(), hour, turn.chat.zone)
    return kept if kept > turn.now else moment


async def press_rest(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Let the times before a button's moment go, and come at it."""
    reminder = await turn.uow.reminders.get(choice.arguments["id"])
    until = datetime.fromisoformat(choice.arguments["until"])
    gone = reminder is None or reminder.chat_id != turn.chat.id or reminder.ended_at is not None
    if reminder is None or gone or until <= turn.now:
        return [await turn.reply(general.already())]
    return await reminder_answers.put_off(turn, reminder, until)


async def _rested(turn: Turn, reminder: Reminder, until: datetime, *, skipped: bool) -> list[Reply]:
    stood = reminder_answers.as_it_stood(reminder)
    if isinstance(from_text(reminder.rule), Once):
        await planning.end(turn.uow, reminder, turn.now)
        told = words.stopped(said(turn, reminder))
        return [await turn.reply(told, expects="undo", context=stood)]
    after = await planning.rest(turn.uow, turn.chat, reminder, until, turn.now)
    upcoming = local(turn, after.next_due)
    say = words.skipped if skipped else words.rests
    lines = say(said(turn, reminder), upcoming, turn.local_now)
    facts = {"reminder": {"id": after.id, "what": after.what, "answer": "skip"}}
    if upcoming is not None:
        facts["reminder"]["next_due"] = upcoming.isoformat()
    return [await turn.reply(lines, facts=facts, expects="undo", context=stood)]


def _is_within(reminder: Reminder, days: tuple[datetime, datetime]) -> bool:
    """Whether what waits, or else what comes next, is of those days."""
    if reminder.open_due is not None:
        return reminder.open_due < days[1] and days[0] - A_DAY <= reminder.open_due
    return reminder.next_due is not None and days[0] <= reminder.next_due < days[1]


def _days(turn: Turn, when: str) -> tuple[datetime, datetime] | None:
    """From when to when the days are that were said, by the chat's clock; None where unclear."""
    zone, today = turn.chat.zone, turn.local_now.date()
    if when == THIS_WEEK:
        end = today + timedelta(days=7 - today.weekday())
        return moment_at(today, time(), zone), moment_at(end, time(), zone)
    if alone("next_week", fold(when)):
        start = today + timedelta(days=7 - today.weekday())
        return moment_at(start, time(), zone), moment_at(start + 7 * A_DAY, time(), zone)
    last = parse_moment(f"{when} 23:59", turn.local_now, zone)
    if not isinstance(last, datetime):
        return None
    day = last.astimezone(zone).date()
    return moment_at(day, time(), zone), moment_at(day + A_DAY, time(), zone)
