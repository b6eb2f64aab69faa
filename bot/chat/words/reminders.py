"""What is due, in words."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, timedelta

from bot.chat.words.numbers import when

LATE = timedelta(minutes=5)
"""From here on a message says when it had been due."""

DONE, HOUR, EVENING, TOMORROW, SKIP = "done", "in 1 hour", "this evening", "tomorrow", "skip"


def task(tank: str | None, what: str) -> str:
    """A task with its tank, unless its own words name the tank already."""
    if tank is None or tank.casefold() in what.casefold():
        return what
    return f"{tank}: {what}"


def due(said: str, was_due: datetime, now: datetime, *, repeat: bool) -> list[str]:
    """One reminder that is due; both moments local."""
    lines = [f"Due: {said}"]
    if now - was_due > LATE:
        lines[0] += f" (since {when(was_due, now)})"
    if repeat:
        lines.append("You may have had this one before: I was stopped while sending it.")
    return lines


def folded(entries: Sequence[tuple[str, datetime, bool]], now: datetime) -> list[str]:
    """Several reminders in one message, each with when it was due."""
    lines = [f"{len(entries)} things are due:"]
    for number, (said, was_due, repeat) in enumerate(entries, 1):
        again = ", maybe a repeat" if repeat else ""
        lines.append(f"{number}. {said} (since {when(was_due, now)}{again})")
    lines.append("Answer done 1, done 2 …, or press one.")
    return lines


def made(said: str, rule: str, first: datetime, now: datetime, replaced: str | None) -> list[str]:
    """A reminder was made."""
    lines = [f"I will remind you: {said}, {rule}. First: {when(first, now)}."]
    if replaced is not None:
        lines.append(f"This takes the place of “{replaced}”.")
    return lines


def made_once(said: str, first: datetime, now: datetime) -> list[str]:
    """A single reminder was made."""
    return [f"I will remind you: {said}, {when(first, now)}."]


def there_already(said: str, rule: str) -> list[str]:
    """The same reminder is on record."""
    return [f"You have that reminder already: {said}, {rule}."]


def zone_asked(zone: str) -> str:
    """The chat's clock is not known."""
    return f"I took {zone} for your clock. What time is it with you? Send: it is 19:40 here"


def listing(entries: Sequence[tuple[str, str, datetime | None, bool]], now: datetime) -> list[str]:
    """All that is due and pending: task, rule, moment, open or not."""
    if not entries:
        return ["Nothing is due. Try: remind me to test fern every 7 days at 19:00"]
    lines = []
    for number, (said, rule, moment, is_open) in enumerate(entries, 1):
        state = "open since" if is_open else "next"
        at = f"{state} {when(moment, now)}" if moment is not None else "once"
        lines.append(f"{number}. {said} · {rule} · {at}")
    return lines


def done(said: str, upcoming: datetime | None, now: datetime, who: str) -> list[str]:
    """A task was done."""
    by = f" by {who}" if who else ""
    return [f"Done{by}: {said}.{_next(upcoming, now)}"]


def closes(said: str, upcoming: datetime | None, now: datetime) -> str:
    """A reading or event did what a reminder asks for."""
    return f"That settles “{said}”.{_next(upcoming, now)}"


def open_again(said: str) -> list[str]:
    """An answer was taken back."""
    return [f"Taken back. This is open again: {said}."]


def skipped(said: str, upcoming: datetime | None, now: datetime) -> list[str]:
    """An occurrence was let go."""
    return [f"Skipped: {said}.{_next(upcoming, now)}"]


def put_off(said: str, until: datetime, now: datetime) -> list[str]:
    """A reminder was put off."""
    return [f"I will ask again {when(until, now)}: {said}."]


def which(verb: str, tasks: Sequence[str]) -> list[str]:
    """Several are open, and which one was meant was not said."""
    lines = [f"{number}. {said}" for number, said in enumerate(tasks, 1)]
    return [f"Which one? {verb} 1, {verb} 2 …", *lines]


def nothing_open() -> list[str]:
    """Nothing waits to be done."""
    return ["Nothing is waiting to be done. /remind lists what is coming."]


def stopped(said: str) -> list[str]:
    """A reminder was ended."""
    return [f"I will not remind you of this any more: {said}."]


def stop_which(tasks: Sequence[str]) -> list[str]:
    """No reminder, or more than one, fits what is to be stopped."""
    if not tasks:
        return ["There is no reminder to stop. /remind lists them."]
    return ["Which one shall I stop? " + " · ".join(tasks)]


def problem(reason: str, text: str, suggestion: str | None) -> list[str]:
    """Words of time that were not taken, with what to send instead."""
    said = {
        "no_time": "When shall I remind you?",
        "no_what": "What shall I remind you of?",
        "past": f"“{text}” is over already.",
        "impossible": f"No calendar or clock has “{text}”.",
        "ambiguous": f"“{text}” could be two things.",
        "too_often": "Once an hour is the most often I can do.",
        "too_far": "Ten years is the furthest I can see.",
        "unclear": f"I cannot read when that is: “{text}”." if text else "I cannot read when.",
    }[reason]
    example = suggestion or "remind me to test fern every 7 days at 19:00"
    return [f"{said} Nothing was set. Send for example: {example}"]


def quiet_set(span: str) -> list[str]:
    """Quiet hours were set."""
    return [f"Quiet hours {span}: what falls due then waits until they end."]


def quiet_off() -> list[str]:
    """Quiet hours were ended."""
    return ["Quiet hours are off: reminders come at any hour."]


def quiet_shown(span: str | None) -> list[str]:
    """Quiet hours as they are."""
    return [f"Quiet hours: {span or 'off'}. Change: quiet hours 22:00-07:00"]


def holiday_set(until: datetime, now: datetime) -> list[str]:
    """Reminders pause."""
    return [
        f"Reminders pause until {when(until, now)}; then at most one message catches up.",
        "Send holiday off to end it sooner.",
    ]


def holiday_off() -> list[str]:
    """Reminders go on."""
    return ["Reminders go on."]


def _next(upcoming: datetime | None, now: datetime) -> str:
    return "" if upcoming is None else f" Next: {when(upcoming, now)}."
