"""What is due, in words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta
from typing import Final

from bot.chat.words import names
from bot.chat.words.numbers import when
from bot.chat.words.text import N_, _, ngettext

ANSWERS = (N_("done"), N_("later"), N_("skip"))
"""Words that answer a reminder."""

LATE = timedelta(minutes=5)
"""From here on a message says when it had been due."""

DONE, HOUR, EVENING, TOMORROW, SKIP = (
    N_("done"),
    N_("in 1 hour"),
    N_("this evening"),
    N_("tomorrow"),
    N_("skip"),
)


def task(tank: str | None, what: str) -> str:
    """A task with its tank, unless its own words name the tank already."""
    if tank is None or tank.casefold() in what.casefold():
        return what
    return names.of_tank(tank, what)


def due(said: str, was_due: datetime, now: datetime, *, repeat: bool) -> list[str]:
    """One reminder that is due; both moments local."""
    template = _("Due: {task} (since {when})") if now - was_due > LATE else _("Due: {task}")
    lines = [template.format(task=said, when=when(was_due, now))]
    if repeat:
        lines.append(_("You may have had this one before: I was stopped while sending it."))
    return lines


def folded(entries: Sequence[tuple[str, datetime, bool]], now: datetime) -> list[str]:
    """Several reminders in one message, each with when it was due."""
    count = len(entries)
    lines = [
        ngettext("{count} thing is due:", "{count} things are due:", count).format(count=count)
    ]
    for number, (said, was_due, repeat) in enumerate(entries, 1):
        template = (
            _("{number}. {task} (since {when}, maybe a repeat)")
            if repeat
            else _("{number}. {task} (since {when})")
        )
        lines.append(template.format(number=number, task=said, when=when(was_due, now)))
    lines.append(_("Answer done 1, done 2 …, or press one."))
    return lines


def made(said: str, rule: str, first: datetime, now: datetime, replaced: str | None) -> list[str]:
    """A reminder was made."""
    lines = [
        _("I will remind you: {task}, {rule}. First: {first}.").format(
            task=said, rule=rule, first=when(first, now)
        )
    ]
    if replaced is not None:
        lines.append(_("This takes the place of “{replaced}”.").format(replaced=replaced))
    return lines


def made_once(said: str, first: datetime, now: datetime) -> list[str]:
    """A single reminder was made."""
    return [_("I will remind you: {task}, {first}.").format(task=said, first=when(first, now))]


def there_already(said: str, rule: str) -> list[str]:
    """The same reminder is on record."""
    return [_("You have that reminder already: {task}, {rule}.").format(task=said, rule=rule)]


def zone_asked(zone: str) -> str:
    """The chat's clock is not known."""
    return _(
        "I took {zone} for your clock. What time is it with you? Send: it is 19:40 here"
    ).format(zone=zone)


def example(tank: str | None) -> str:
    """A request for a reminder as it may be sent, of the keeper's own tank where there is one."""
    if tank is None:
        return _("remind me to test the water every 7 days at 19:00")
    return _("remind me to test {tank} every 7 days at 19:00").format(tank=tank)


def nothing_due(tank: str | None) -> list[str]:
    """Neither a reminder nor a part of a plan waits; `tank` is one of the keeper's own."""
    return [_("Nothing is due. Try: {example}").format(example=example(tank))]


def none_set(tank: str | None) -> list[str]:
    """No reminder at all, where they are asked for by name."""
    return [_("No reminder is set. Try: {example}").format(example=example(tank))]


def entry(
    number: int, said: str, rule: str, moment: datetime | None, now: datetime, *, is_open: bool
) -> str:
    """A reminder of the list: task, rule, moment, open or not."""
    if moment is None:
        template = _("{number}. {task} · {rule} · once")
    elif is_open:
        template = _("{number}. {task} · {rule} · open since {when}")
    else:
        template = _("{number}. {task} · {rule} · next {when}")
    told = "" if moment is None else when(moment, now)
    return template.format(number=number, task=said, rule=rule, when=told)


def done(said: str, upcoming: datetime | None, now: datetime, who: str) -> list[str]:
    """A task was done."""
    template = _("Done by {who}: {task}.") if who else _("Done: {task}.")
    return [_then(template.format(task=said, who=who), upcoming, now)]


def closes(said: str, upcoming: datetime | None, now: datetime) -> str:
    """A reading or event did what a reminder asks for."""
    return _then(_("That settles “{task}”.").format(task=said), upcoming, now)


def still_to_test(said: str, left: Sequence[str]) -> str:
    """A reading did a part of what a reminder asks for; `left` are analytes."""
    shown = names.both([names.analyte(each) for each in left])
    return _("“{task}” stays open: {left} still to test.").format(task=said, left=shown)


def open_again(said: str) -> list[str]:
    """An answer was taken back."""
    return [_("Taken back. This is open again: {task}.").format(task=said)]


def skipped(said: str, upcoming: datetime | None, now: datetime) -> list[str]:
    """An occurrence was let go."""
    return [_then(_("Skipped: {task}.").format(task=said), upcoming, now)]


def rests(said: str, upcoming: datetime | None, now: datetime) -> list[str]:
    """All times of one reminder before a moment are let go."""
    return [_then(_("It rests until then: {task}.").format(task=said), upcoming, now)]


def put_off(said: str, until: datetime, now: datetime) -> list[str]:
    """A reminder was put off."""
    return [_("I will ask again {until}: {task}.").format(until=when(until, now), task=said)]


def which(verb: str, tasks: Sequence[str]) -> list[str]:
    """Several are open, and which one was meant was not said."""
    lines = [f"{number}. {said}" for number, said in enumerate(tasks, 1)]
    return [_("Which one? {verb} 1, {verb} 2 …").format(verb=_(verb)), *lines]


def nothing_open() -> list[str]:
    """Nothing waits to be done."""
    return [_("Nothing is waiting to be done. /remind lists what is coming.")]


def stopped(said: str) -> list[str]:
    """A reminder was ended."""
    return [_("I will not remind you of this any more: {task}.").format(task=said)]


def stop_which(tasks: Sequence[str]) -> list[str]:
    """No reminder, or more than one, fits what is to be stopped."""
    if not tasks:
        return [_("There is no reminder to stop. /remind lists them.")]
    return [_("Which one shall I stop? {tasks}").format(tasks=" · ".join(tasks))]


def problem(reason: str, text: str, suggestion: str | None, tank: str | None = None) -> list[str]:
    """Words of time that were not taken, with what to send instead; `tank` is a keeper's own."""
    key = "unread" if reason == "unclear" and not text else reason
    told = _("{problem} Nothing was set. Send for example: {example}")
    shown = suggestion or example(tank)
    return [told.format(problem=_(_PROBLEMS[key]).format(text=text), example=shown)]


_PROBLEMS: Final[Mapping[str, str]] = {
    "no_time": N_("When shall I remind you?"),
    "no_what": N_("What shall I remind you of?"),
    "past": N_("“{text}” is over already."),
    "impossible": N_("No calendar or clock has “{text}”."),
    "ambiguous": N_("“{text}” could be two things."),
    "too_often": N_("Once an hour is the most often I can do."),
    "too_far": N_("Ten years is the furthest I can see."),
    "ends": N_("What repeats goes on here until you stop it: I keep no “{text}”."),
    "unclear": N_("I cannot read when that is: “{text}”."),
    "unread": N_("I cannot read when."),
}
"""By the reasons of `core.schedule.Problem`."""


def quiet_set(span: str) -> list[str]:
    """Quiet hours were set."""
    return [_("Quiet hours {span}: what falls due then waits until they end.").format(span=span)]


def quiet_off() -> list[str]:
    """Quiet hours were ended."""
    return [_("Quiet hours are off: reminders come at any hour.")]


def quiet_shown(span: str | None) -> list[str]:
    """Quiet hours as they are."""
    if not span:
        return [_("Quiet hours: off. Change: quiet hours 22:00-07:00")]
    return [_("Quiet hours: {span}. Change: quiet hours 22:00-07:00").format(span=span)]


def quiet_asked(span: str) -> list[str]:
    """Hours without messages were asked for in other words."""
    return [_("Quiet hours {span} each day? Nothing is set yet.").format(span=span)]


def holiday_set(until: datetime, now: datetime, since: datetime | None = None) -> list[str]:
    """Reminders pause, from now on or from when on."""
    told = _("Reminders pause until {until}; then at most one message catches up.")
    if since is not None:
        told = _("Reminders pause from {since} until {until}; then at most one message catches up.")
    shown = {} if since is None else {"since": when(since, now)}
    return [
        told.format(until=when(until, now), **shown),
        _("Send holiday off to end it sooner."),
    ]


def told_after_pause(at: datetime, now: datetime) -> str:
    """A reminder is due while reminders pause."""
    return _("Reminders pause then: this one is told {when}.").format(when=when(at, now))


def holiday_only_one() -> list[str]:
    """A second pause was told that does not touch the one that stands."""
    return [_("One pause is kept at a time, so the other is not set. Which one do you mean?")]


def holiday_instead(since: datetime, until: datetime) -> str:
    """The button of the pause that is to take the place of the one that stands."""
    told = _("instead {since} to {until}")
    return told.format(since=f"{since:%Y-%m-%d}", until=f"{until:%Y-%m-%d}")


def holiday_until_when() -> list[str]:
    """It was not said when a pause ends."""
    return [_("Until when shall reminders pause? Send for example: until 4 May")]


def holiday_off() -> list[str]:
    """Reminders go on."""
    return [_("Reminders go on.")]


def _then(sentence: str, upcoming: datetime | None, now: datetime) -> str:
    """A sentence, and when the task comes next."""
    if upcoming is None:
        return sentence
    told = _("Next: {when}.").format(when=when(upcoming, now))
    return f"{sentence} {told}"
