"""Chores, changes of reminders that stand, and reminders of a plan's parts, in words."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import Final

from bot.chat.words import names
from bot.chat.words.numbers import when
from bot.chat.words.text import N_, _, ngettext

REMIND, DONE_NOW = N_("remind me of it"), N_("it is done, log it")
SKIP_NEXT = N_("skip the next time")
STOP_ALL, FOR_GOOD = N_("all of them"), N_("stop it for good")


_AGAIN: Final = {
    "water_change": N_("water change"),
    "dose": N_("dose again"),
    "filter": N_("clean the filter"),
    "media": N_("renew the filter medium"),
    "top_up": N_("top up"),
    "fed": N_("feed"),
}


def again(kind: str) -> str:
    """The task to do a deed once more, by the kind of its event."""
    return _(_AGAIN[kind]) if kind in _AGAIN else _("look again")


def test_again(tested: list[str]) -> str:
    """The task to test once more."""
    return _("retest {tested}").format(tested=names.both(tested))


def routine_told(what: str, rule: str, *, once: bool) -> list[str]:
    """A routine was told, or `once` what is meant to be done: neither is a deed."""
    told = (
        _("{task}, {rule}: not done yet, so nothing is logged. Tell me when it is.")
        if once
        else _("{task}, {rule}: a routine, so nothing is logged. Tell me each one when it is done.")
    )
    return [told.format(task=what, rule=rule), _("Shall I remind you of it?")]


def routine_past() -> list[str]:
    """What was done again and again was told, of no one day."""
    return [
        _("Nothing is logged: that tells no single day. Send for example: yesterday changed 30%")
    ]


def done_or_planned(what: str) -> list[str]:
    """A rhythm may be the name of a deed."""
    return [
        _("{task}: is it done, or shall I remind you? Nothing is stored yet.").format(task=what)
    ]


def done_too(amount: str) -> list[str]:
    """What is to be reminded of may have been done as well."""
    return [_("Was {amount} changed today as well? Not logged yet.").format(amount=amount)]


def too_much(what: str) -> list[str]:
    """A reminder of a dose that is too much for a day."""
    return [_("No reminder was set: {task} at a time is too much for a day.").format(task=what)]


def done_before_due() -> list[str]:
    """Nothing is due yet, and something is soon."""
    return [_("Nothing is due yet. Which one is done already?")]


def retest(tested: str) -> str:
    """The task to test again; `tested` as after a part of a plan."""
    return _("retest {tested}").format(tested=tested)


def part_of_plan(tested: str, number: int, count: int, part: str) -> str:
    """The task of a plan's part, which is tested before."""
    told = _("test {tested}, then part {number} of {count}: {part}")
    return told.format(tested=tested, number=number, count=count, part=part)


def not_sooner() -> str:
    """A part of a plan was asked for sooner than it may go in."""
    return _("It may not go in sooner, so I took that time.")


def plan_stopped(logged: int, count: int, tested: str) -> list[str]:
    """A plan is left where it is."""
    told = _("Stopped after {logged} of {count} parts on record: no more of it has to go in.")
    lines = [told.format(logged=logged, count=count)]
    if logged:
        lines.append(
            _("Test {tested} a day after the last part all the same.").format(tested=tested)
        )
    return lines


def how_much_yet() -> str:
    """What went in before a plan was left is not on record."""
    return _("How much of it went in before is not on record yet: tap it, or send the grams.")


def log_that(amount: str) -> str:
    """Put on record what was done."""
    return _("log {amount}").format(amount=amount)


def log_change(share: str) -> str:
    """Put on record that so much was changed."""
    return _("log a change of {share}").format(share=share)


def not_on_record() -> str:
    """What was done is not logged by its reminder."""
    return _("It is not on record yet. Press, or answer yes, if that much went in.")


UNDO_MOVE = N_("undo the move")


def move_or_all(said: str) -> list[str]:
    """The move right before, or the reminder with it."""
    return [_("Take the move back, or stop the reminder: {task}?").format(task=said)]


def skip_or_end(said: str) -> list[str]:
    """One time of a rhythm, or all of it."""
    return [_("Only this time, or for good: {task}?").format(task=said)]


def one_or_two(told: Sequence[tuple[str, datetime]], now: datetime) -> tuple[list[str], str, str]:
    """A number in a request may be the hour of another job: the question and its two buttons."""
    listed = [_("{task}, {when}").format(task=task, when=when(at, now)) for task, at in told]
    lines = [_("Is that one reminder, or are they these? {list}").format(list=" · ".join(listed))]
    return [*lines, _("Nothing is set yet.")], _("each by itself"), _("one reminder")


def skip_which() -> list[str]:
    """More than one reminder may be the one whose next time is let go."""
    return [_("Which one shall I skip next time?")]


def pause_one(said: str) -> list[str]:
    """One reminder is to rest, which only all can."""
    told = _("{task}: shall I only skip the next time, or stop it for good?")
    return [told.format(task=said), _("All of them rest with, for example: holiday until 4 May")]


def renamed(before: str, after: str) -> list[str]:
    """A reminder has other words."""
    return [_("{before} is now called: {after}.").format(before=before, after=after)]


def how_much_of_it() -> list[str]:
    """Less was changed than the task says, by a number without its unit."""
    return [_("How much was that? Nothing is logged yet.")]


def no_answer() -> list[str]:
    """Few words after a reminder that was told due, of which nothing is known."""
    return [_("I did not understand that, and noted nothing. This still waits:")]


def not_told_done() -> list[str]:
    """It is asked whether somebody did what is due."""
    return [_("Nobody told me that this is done:")]


def which_half(said: str) -> list[str]:
    """An hour that may be of the morning or of the evening."""
    return [_("{task}: which hour is that? It is not moved yet.").format(task=said)]


def not_later(said: str, due: datetime, now: datetime) -> list[str]:
    """A reminder was put off to what is not later."""
    told = _("{task} is due {when}, and that is no later. Until when shall I put it off?")
    return [told.format(task=said, when=when(due, now))]


UNTIL_STOPPED = N_("repeat until I stop it")


def each_time(count: int, last: str) -> str:
    """So many single reminders in the place of a rhythm with an end."""
    told = ngettext("only {count} time, {last}", "only {count} times, the last {last}", count)
    return told.format(count=count, last=last)


def move_which(when: str) -> list[str]:
    """More than one reminder fits what is to be moved."""
    return [_("Which one shall I move ({when})?").format(when=when)]


def moved(said: str, rule: str, first: datetime, now: datetime) -> list[str]:
    """A reminder is due at another time; `rule` is empty for a single one."""
    if not rule:
        return [_("Moved: {task}, {first}.").format(task=said, first=when(first, now))]
    told = _("Moved: {task}, {rule}. Next: {first}.")
    return [told.format(task=said, rule=rule, first=when(first, now))]


def later_when(said: str) -> list[str]:
    """A reminder that is not due yet is to come later, and it was not said when."""
    return [
        _("When shall I remind you instead: {task}? Send for example: in 2 h").format(task=said)
    ]


def back_again(said: str, due: datetime, now: datetime) -> list[str]:
    """A reminder is again as it was before it was changed or ended."""
    return [_("Taken back: {task}. Next: {when}.").format(task=said, when=when(due, now))]


def none_such(tasks: Sequence[str]) -> list[str]:
    """A reminder that is not there was to be changed."""
    if not tasks:
        return [_("There is no such reminder, and no other.")]
    return [_("There is no such reminder. There are: {tasks}").format(tasks=" · ".join(tasks))]


ONLY_ONCE = N_("only this once")


def not_due_then(said: str, due: datetime | None, now: datetime) -> list[str]:
    """A time was to be let go that is not the next one."""
    if due is None:
        return [_("{task} is not due then. Nothing is changed.").format(task=said)]
    told = _("{task} is due next {when}. I can let go only the next time, so nothing is changed.")
    return [told.format(task=said, when=when(due, now))]


def let_go_then(
    said: str,
    gone: datetime,
    before: Sequence[datetime],
    upcoming: datetime | None,
    now: datetime,
) -> list[str]:
    """A time was let go that is not the next one; those before it stay."""
    told = _("Skipped: {task}, {gone}. It stays: {before}.")
    after = [] if upcoming is None else [upcoming]
    listed = " · ".join(when(at, now) for at in [*before, *after])
    return [told.format(task=said, gone=when(gone, now), before=listed)]


def rests_anyway(said: str, due: datetime | None, now: datetime) -> list[str]:
    """A reminder is not due before its rest would end."""
    told = _("{task} is not due before that. Next: {when}.")
    return [told.format(task=said, when="" if due is None else when(due, now))]


def comes_before(said: str, at: datetime, now: datetime) -> list[str]:
    """A time was to be moved behind the time after it."""
    told = _("{task} comes again {when}, before that. Nothing is moved.")
    return [told.format(task=said, when=when(at, now))]


def not_before(at: datetime, now: datetime) -> str:
    """Let all times before a moment go."""
    return _("not before {when}").format(when=when(at, now))


def which_done() -> list[str]:
    """More than one reminder waits, of which one was done."""
    return [_("Which one is done?")]


def moved_or_done() -> list[str]:
    """A change told with a day may be a reminder's new day, or done on that day."""
    return [_("Shall I move the reminder, or was that done? Nothing is changed or logged yet.")]


def move_it(said: str, to: str) -> str:
    """Move a reminder to a time that was said."""
    return _("move it ({when}): {task}").format(when=to, task=said)


def it_was_done(at: datetime, now: datetime) -> str:
    """Put on record what was done at a moment."""
    return _("it was done {when}").format(when=when(at, now))


def done_for(said: str, due: datetime | None, now: datetime) -> list[str]:
    """Something was done so early that it may have been for the time before."""
    told = _("{task} is due {when}. Is that one done already, or was it for the time before?")
    return [told.format(task=said, when="" if due is None else when(due, now))]


def if_missed(
    what: str, again: datetime | None, now: datetime, *, from_done: bool, dose: bool
) -> list[str]:
    """What becomes of a reminder that is not answered; `again` is its next time but one, local."""
    stays = _("{task}: not answered, it stays on your list as open until you send done or skip.")
    lines = [stays.format(task=what)]
    if again is None:
        lines.append(_("It comes once: I do not say it again by myself."))
    else:
        told = _("It comes again {when}; what was missed does not add up.")
        lines.append(told.format(when=when(again, now)))
    if from_done and again is not None:
        lines.append(_("Done late, the next one counts from then."))
    if dose:
        lines.append(_("Never give two to make up for one."))
    return lines


def amount_or_hour(what: str, amount: str, hour: str) -> list[str]:
    """A number may be the amount of a task, or the hour of it."""
    told = _("{task}: is that the amount or the hour? Nothing is changed. Send {amount} or {hour}.")
    return [told.format(task=what, amount=amount, hour=hour)]
