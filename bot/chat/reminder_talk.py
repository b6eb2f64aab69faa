"""``move the filter one to friday``, ``cancel the kh one``, ``not yet``: a reminder that stands."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta
from typing import Final

from bot.chat import (
    agenda,
    pauses,
    plan_rounds,
    reminder_amend,
    reminder_answers,
    reminder_choice,
    reminder_days,
    reminder_more,
    reminder_moving,
    reminder_requests,
    reminder_same,
    reminder_stops,
    reminder_topic,
    reminders,
)
from bot.chat.model import Reply
from bot.chat.patience import PATIENCE
from bot.chat.reminder_moving import (
    MOVED,
    either_half,
    is_long,
    is_span,
    move,
    moved_or_done,
    of_day,
    put_off,
    to_plan,
)
from bot.chat.reminding import said
from bot.chat.turn import Turn
from bot.chat.words import reminder_talk as talk_words
from bot.chat.words import reminders as words
from bot.reminders import planning
from bot.store.offers import Offer
from bot.store.reminders import Reminder
from core.message.away_said import away
from core.message.choices import ordinal
from core.message.fold import fold
from core.message.model import Parsed
from core.message.reminder_deed import other_count
from core.message.reminder_said import at_same_time, without_same_time
from core.message.reminder_shift import shift
from core.message.reminder_talk import Talk, denies, is_other_day, talk
from core.message.reminder_when import (
    asks_if_missed,
    asks_when,
    before_start_then,
    left_out,
    names_part,
)
from core.schedule import (
    Every,
    Once,
    Plan,
    Weekly,
    from_text,
    kind_of,
    moved,
    names_weekday,
    next_after,
)
from core.schedule.rules import EVERY_DAY

HEARD: Final = frozenset({"later", "stop_reminding", "no", "correct"})
"""Commands whose words may be about a reminder that stands."""

NAMED_SOON: Final = timedelta(days=2)
"""So long before it is due a reminder that is named may be what was done."""

BY_SORT: Final = frozenset({"change", "feed"})
"""Sorts of task of which each is the same, in whatever words: wc, water change 30%."""

STEM: Final = 4
"""So many letters of two words alike make them one: filter, Filters, filtret."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Do what is said of a reminder that stands; None where it is about something else."""
    command = None if parsed.command is None else parsed.command.name
    renames = command == "tank" and not turn.incoming.text.startswith("/")
    denied = command in {"remind", "done"} and denies(turn.incoming.text)
    by = shift(turn.incoming.text)
    heard = renames or denied or command in {None, *HEARD} or (command == "move" and by is not None)
    other_day = command == "remind" and is_other_day(turn.incoming.text)
    heard = heard or other_day
    if not turn.incoming.addressed or parsed.values or not heard:
        return None
    if (taken := await reminder_choice.answer(turn, parsed)) is not None:
        return taken
    offer = next(iter(await turn.uow.offers.latest(turn.chat.id)), None)
    living = await turn.uow.reminders.of_chat(turn.chat.id)
    spoken = None if offer is None else await spoken_of(turn, offer, living)
    if (other := reminder_amend.renaming_of(turn)) is not None:
        fitting = [each for each in living if other[0] and _fits(turn, each, _words(other[0]))]
        one = None if other[0] else spoken
        if (called := await reminder_amend.renamed(turn, one, fitting, other[1])) is not None:
            return called
    if renames:
        return None
    if (part := await reminder_amend.in_part(turn, spoken, living)) is not None:
        return part
    if (counted := other_count(turn.incoming.text)) is not None and spoken is not None:
        rule = from_text(spoken.rule)
        if isinstance(rule, Every) and rule.count == counted[0]:
            return await move(turn, [spoken], counted[1])
    if command is None and (same := await reminder_same.answer(turn, spoken, parsed)) is not None:
        return same
    if command is None and (more := await reminder_more.answer(turn, spoken, parsed)) is not None:
        return more
    job = await reminder_more.other_job(turn, offer, spoken, parsed) if command is None else None
    if job is not None:
        return job
    another = await reminder_topic.for_another(turn, spoken) if command is None else None
    if another is not None and not parsed.events and parsed.question is None:
        return await reminder_requests.single(turn, another)
    if by is not None and by.target:
        of_it = [each for each in living if _fits(turn, each, by.target)]
        named_by = " ".join(by.target)
        of_it = reminder_moving.due_on(turn, living, named_by) if names_part(named_by) else of_it
        return await reminder_moving.shift(turn, of_it[0], by) if len(of_it) == 1 else None
    if by is not None and (spoken or len(living) == 1) and not parsed.events:
        return await reminder_moving.shift(turn, spoken or living[0], by)
    if command == "move":
        return None
    amount = await reminder_amend.other_amount(turn, spoken)
    if amount is not None:
        return amount
    if command is None and (joined := await reminder_amend.added(turn, spoken, parsed)) is not None:
        return joined
    if spoken is not None and asks_when(turn.incoming.text):
        at = (spoken.open_due or spoken.next_due or turn.now).astimezone(turn.chat.zone)
        lines = words.made_once(said(turn, spoken), at, turn.local_now)
        return [await turn.reply(lines, context={"reminder_id": spoken.id})]
    if command is None and spoken is not None:
        both = await reminder_requests.on_both_days(turn, turn.incoming.text)
        if both is not None:
            return both
    if (begun := await _start_then(turn, spoken, living)) is not None:
        return begun
    if spoken is not None and (rest := await _without_days(turn, spoken)) is not None:
        return rest
    if spoken is not None and asks_if_missed(turn.incoming.text):
        return [await _if_missed(turn, spoken)]
    put = await reminder_amend.bare_number(turn, offer, spoken, parsed) if command is None else None
    if put is not None:
        return put
    pausing = offer is not None and reminder_amend.PAUSING in offer.context
    rests = await reminder_amend.until(turn, spoken) if spoken is not None and pausing else None
    if rests is not None:
        return rests
    text = at_same_time(turn.incoming.text, await reminder_topic.same_time(turn))
    told = talk(text, standing=bool(living))
    if told is not None and told.verb == "move" and (told.target or told.day):
        told = talk(without_same_time(turn.incoming.text), standing=bool(living)) or told
    if told is None or (parsed.question is not None and not (told.named or told.noun)):
        return None
    if told.verb == "list":
        return await agenda.listed(turn, named=True)
    fitting = [each for each in living if told.target and _fits(turn, each, told.target)]
    if told.once and told.day:
        of_it = fitting if told.target else living
        return await reminder_days.instead(turn, of_it, told.day, told.when)
    if told.day and (told.when or told.verb in {"stop", "skip"}):
        chosen = fitting if told.target else living
        return await _by_time(turn, told, chosen)
    if told.every and told.when and told.verb in {"move", "when"} and not told.target:
        return await _every(turn, told, offer, living)
    if told.verb == "stop" and not fitting and offer is not None:
        place = ordinal(" ".join(told.target))
        listed = offer.context.get("reminder_ids", [])
        if place is not None and place < len(listed):
            fitting = [each for each in living if each.id == listed[place]]
            told = replace(told, named=bool(fitting))
    if told.verb in {"stop", "move"} and told.noun and told.target and not (fitting or told.plan):
        return [await turn.reply(talk_words.none_such([said(turn, each) for each in living]))]
    if told.verb == "skip":
        if told.when:
            if not told.target and sum(each.open_due is not None for each in living) > 1:
                return await reminder_answers.by_number(turn, "skip", "")
            return await reminder_days.skip(turn, _meant(told, fitting, spoken, living), told.when)
        target = bool(told.target)
        return await reminder_amend.skip(turn, fitting, spoken, named=told.named, target=target)
    if told.verb == "pause":
        one_of = fitting if told.target else [] if spoken is None else [spoken]
        if not one_of and not told.target and offer is not None:
            return await reminder_amend.pause_ended(turn, offer, told.when)
        return await reminder_amend.pause(turn, one_of, told.when)
    if told.verb == "undone":
        return await reminder_amend.undone(turn, offer)
    if told.verb == "stop":
        return await reminder_stops.stop(turn, told, living, spoken, fitting)
    if told.verb == "did":
        if told.when and not parsed.events and (spoken is not None or told.target):
            waiting = [each for each in living if each.open_due is not None]
            soon = _meant(told, fitting, spoken, [])
            waiting = [each for each in waiting if not told.target or each in fitting]
            return await reminder_days.done(turn, parsed, waiting, soon)
        return (
            None if parsed.events or told.when else await _did(turn, told, living, fitting, spoken)
        )
    if told.later and told.verb == "late" and len(fitting) == 1 and fitting[0].open_due is None:
        if not told.when:
            held = {"reminder_id": fitting[0].id}
            asked = talk_words.later_when(said(turn, fitting[0]))
            return [await turn.reply(asked, context=held, expects="followup")]
        told = replace(told, verb="move")
    if told.verb in {"late", "another_day"}:
        return await _late(turn, told, living, spoken, fitting)
    if not told.when or (told.target and not fitting):
        return None
    if told.once:
        return await reminder_days.once(turn, _meant(told, fitting, spoken, []), told.when)
    if told.later and is_span(told.when) and len(fitting) == 1:
        return await put_off(turn, fitting[0], told.when, fitting[0].next_due)
    if told.target and told.anew and parsed.events and not told.named:
        return await moved_or_done(turn, parsed, fitting, told.when)
    if told.target:
        moves = told.verb == "move" or told.anew
        named = told.named or (moves and len(fitting) == 1 and not parsed.events)
        return await move(turn, fitting, told.when, later=told.later) if named else None
    if spoken is None or offer is None:
        only = living if told.noun and told.verb == "move" else []
        return await move(turn, only, told.when, later=told.later) if only else None
    if told.later and is_span(told.when):
        return await put_off(turn, spoken, told.when, spoken.open_due or spoken.next_due)
    made = offer.context.get(reminders.MADE)
    if made is not None and (parts := await plan_rounds.anew(turn, made, told.when)) is not None:
        return parts
    before = (made or {}).get("said", [""])[-1]
    told = replace(told, when=reminder_moving.as_long(turn, spoken, before, told))
    if not told.when:
        return None
    if spoken.open_due is not None and not _repeats(turn, told.when):
        return await put_off(turn, spoken, told.when)
    hour = either_half(turn, spoken, told.when)
    if (
        made is not None
        and "said" in made
        and not told.later
        and not hour
        and not _kept(turn, spoken, told)
        and not (is_long(before) and not is_span(told.when))
    ):
        return await reminders.anew(turn, made, told.when)
    return await move(turn, [spoken], told.when, later=told.later)


async def _start_then(
    turn: Turn, spoken: Reminder | None, living: Sequence[Reminder]
) -> list[Reply] | None:
    """``im away till the 12th so start then``: the one spoken of begins on that day.

    Where none is spoken of, all of them pause until then.
    """
    front = before_start_then(turn.incoming.text)
    told = None if front is None else away(front, turn.local_now, turn.chat.zone)
    if told is None or told.until is None or not living:
        return None
    day = f"{told.until.astimezone(turn.chat.zone):%Y-%m-%d}"
    if spoken is None:
        return await pauses.pause(turn, told.until, told.since)
    if isinstance(from_text(spoken.rule), Every | Once):
        return await move(turn, [spoken], day)
    return await reminder_amend.pause(turn, [spoken], f"until {day}")


async def _without_days(turn: Turn, spoken: Reminder) -> list[Reply] | None:
    """``not on sundays``: days of the week that a rhythm of more days is to leave out."""
    days = left_out(turn.incoming.text)
    rule = from_text(spoken.rule)
    zone = turn.chat.zone
    if isinstance(rule, Every) and (rule.count, rule.unit) == (1, "days"):
        due = (spoken.next_due or turn.now).astimezone(zone)
        at = rule.at or due.time().replace(second=0, microsecond=0)
        rule = Weekly(EVERY_DAY, at)
    if not days or not isinstance(rule, Weekly):
        return None
    left = tuple(day for day in rule.days if day not in days)
    if not left or left == rule.days:
        return None
    new = replace(rule, days=left)
    first = next_after(new, turn.now, zone, turn.now)
    return None if first is None else await to_plan(turn, spoken, Plan(new, turn.now, first))


async def _if_missed(turn: Turn, reminder: Reminder) -> Reply:
    """``and if i miss a day?``: what becomes of the one just spoken of."""
    due = reminder.open_due or reminder.next_due or turn.now
    once = isinstance(from_text(reminder.rule), Once)
    after = None if once else planning.occurrence_after(reminder, turn.chat, due)
    lines = talk_words.if_missed(
        said(turn, reminder),
        None if after is None else after.astimezone(turn.chat.zone),
        turn.local_now,
        from_done=reminder.counts_from_done,
        dose=reminder.kind == "dose",
    )
    return await turn.reply(lines, context={"reminder_id": reminder.id})


async def _by_time(turn: Turn, told: Talk, chosen: list[Reminder]) -> list[Reply] | None:
    """``the morning one``: moved, let go or ended; None where none stands at all."""
    if told.verb not in {"stop", "skip"}:
        return await of_day(turn, chosen, told.day, told.when)
    of_it = reminder_moving.due_on(turn, chosen, told.day)
    if not of_it:
        none = talk_words.none_such([said(turn, each) for each in chosen])
        return [await turn.reply(none)] if chosen else None
    if told.when:
        return await reminder_days.skip(turn, of_it, told.when)
    if told.verb == "skip":
        return await reminder_amend.skip(turn, of_it, None, named=True, target=True)
    named = replace(told, target=told.target or (told.day,), named=True)
    return await reminder_stops.stop(turn, named, chosen, None, of_it)


async def _every(
    turn: Turn, told: Talk, offer: Offer | None, living: Sequence[Reminder]
) -> list[Reply] | None:
    """``both at 7 in the evening``: those set in one message, else all that stand."""
    made = {} if offer is None else offer.context.get(reminders.MADE, {})
    beside = {made.get("id"), *made.get("beside", [])}
    chosen = [each for each in living if each.id in beside] if len(beside) > 1 else list(living)
    if not chosen:
        return None
    return [reply for each in chosen for reply in await move(turn, [each], told.when)]


def _meant(
    told: Talk, fitting: list[Reminder], spoken: Reminder | None, others: list[Reminder]
) -> list[Reminder]:
    """Those that are named, else the one that was just spoken of, else the others."""
    if told.target:
        return fitting
    return [spoken] if spoken is not None else others if told.named else []


async def spoken_of(turn: Turn, offer: Offer, living: Sequence[Reminder]) -> Reminder | None:
    """The reminder that the newest reply set, told or put off."""
    if turn.now - offer.made_at > PATIENCE:
        return None
    about = offer.context.get(reminders.MADE, {}).get("id") or offer.context.get("reminder_id")
    due = [each.arguments["reminder_id"] for each in offer.choices if each.verb == "done"]
    listed = offer.context.get("reminder_ids", [])
    due += listed if len(listed) == 1 else []
    return next((each for each in living if each.id in {about, *due}), None)


def _words(said: str) -> tuple[str, ...]:
    return tuple(fold(said).split())


def _fits(turn: Turn, reminder: Reminder, target: tuple[str, ...]) -> bool:
    """Whether all words of a target are of a reminder's task, or it is of the same sort."""
    of_task = fold(said(turn, reminder)).replace("'", " ").split()
    if all(any(_alike(word, other.strip(",.:;")) for other in of_task) for word in target):
        return True
    sort = kind_of(" ".join(target))
    return sort in BY_SORT and sort == reminder.kind


def _alike(word: str, other: str) -> bool:
    return word == other or (
        len(word) >= STEM and len(other) >= STEM and word[:STEM] == other[:STEM]
    )


async def _late(
    turn: Turn,
    told: Talk,
    living: Sequence[Reminder],
    spoken: Reminder | None,
    fitting: Sequence[Reminder],
) -> list[Reply] | None:
    """Put off what waits; of what is not due yet, move the one that was just spoken of."""
    when = told.when or ("tomorrow" if told.verb == "another_day" else "")
    waiting = [each for each in living if each.open_due is not None]
    if told.target:
        waiting = [each for each in fitting if each.open_due is not None]
        only = fitting[0] if len(fitting) == 1 and told.named else None
        if not waiting and only is not None and is_span(when):
            return await put_off(turn, only, when, only.next_due)
        if not waiting:
            return None
    if len(waiting) == 1:
        return await put_off(turn, waiting[0], when)
    if waiting:
        return await reminder_answers.by_number(turn, "later", "")
    if spoken is None or told.target:
        return await agenda.listed(turn) if when and living and not told.target else None
    offer = next(iter(await turn.uow.offers.latest(turn.chat.id)))
    if not when:
        held = {"reminder_id": spoken.id}
        asked = talk_words.later_when(said(turn, spoken))
        return [await turn.reply(asked, context=held, expects="followup")]
    answered = "stood" in offer.context and MOVED not in offer.context
    since = turn.now if answered else (spoken.next_due or turn.now)
    return await put_off(turn, spoken, when, since)


def _repeats(turn: Turn, when: str) -> bool:
    due = Once(turn.now)
    to = moved(due, turn.now, turn.now, when, turn.local_now, turn.chat.zone)
    return to is not None and not isinstance(to.rule, Once)


def _kept(turn: Turn, reminder: Reminder, told: Talk) -> bool:
    """Whether a rhythm stays, and only its next time is another: tomorrow."""
    rule, due = from_text(reminder.rule), reminder.next_due
    if due is None or isinstance(rule, Once):
        return False
    to = moved(rule, due, reminder.anchor, told.when, turn.local_now, turn.chat.zone)
    return to is not None and to.rule == rule and not names_weekday(told.when)


async def _did(
    turn: Turn,
    told: Talk,
    living: Sequence[Reminder],
    fitting: Sequence[Reminder],
    spoken: Reminder | None,
) -> list[Reply] | None:
    """``did the sponge``: the only reminder of such a task that waits, or comes soon.

    ``did it already``: the one that was just spoken of.
    """
    if not told.target and told.every:
        return await reminder_amend.done_all(turn, living)
    if told.over and spoken is not None and (not told.target or spoken in fitting):
        return await reminder_stops.done_and_over(turn, spoken, told.over)
    if not told.target:
        waits = any(each.open_due is not None for each in living)
        if not waits and spoken is not None:
            return await reminder_answers.done(turn, spoken)
        return await reminder_answers.by_number(turn, "done", "") if waits else None
    soon = [each for each in fitting if reminder_answers.is_soon(turn, each, NAMED_SOON)]
    return await reminder_answers.done(turn, soon[0]) if len(soon) == 1 else None
