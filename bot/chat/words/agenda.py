"""Words about what is next of plans, beside the reminders of the list of all that is due."""

from __future__ import annotations

from datetime import datetime

from bot.chat.words.numbers import at_most, plain, when
from bot.chat.words.text import _


def first_part(tank: str, part: str, count: int, only: str | None) -> str:
    """A plan of which nothing is on record."""
    told = (
        _("{tank}: {part}, the first of {count} parts, is not on record yet.")
        if count > 1
        else _("{tank}: {part} is not on record yet.")
    )
    first = told.format(tank=tank, part=part, count=count)
    return first if only is None else f"{only} {first}"


def work_out_anew(tank: str, ask: str) -> str:
    """Something was measured since a plan of which nothing is on record."""
    told = _("{tank}: your plan is older than your last readings; ask again: {ask}")
    return told.format(tank=tank, ask=ask)


def next_part(
    tank: str, tested: str, left: int, count: int, ask: str, at: datetime, now: datetime
) -> str:
    """A part is on record: the test, then the question that gives the next."""
    told = _("{tank}: test {tested} {when}, then ask: {ask} ({left} of {count} parts left)")
    moment = _("now") if at <= now else when(at, now)
    return told.format(tank=tank, tested=tested, when=moment, ask=ask, left=left, count=count)


def go_on(tank: str, left: int, count: int, ask: str) -> str:
    """The retest is sent: the question that gives the next part."""
    told = _("{tank}: the next part; ask: {ask} ({left} of {count} parts left)")
    return told.format(tank=tank, ask=ask, left=left, count=count)


def last_test(tank: str, tested: str, at: datetime, now: datetime) -> str:
    """All parts are in: what is left is the test."""
    told = _("{tank}: all parts are in; test {tested} {when}")
    moment = _("now") if at <= now else when(at, now)
    return told.format(tank=tank, tested=tested, when=moment)


def next_change(tank: str, share: float, left: int, at: datetime, now: datetime) -> str:
    """The next of several changes, a day after the one before."""
    told = _(
        "{tank}: measure pH, KH and ammonia {when}, then the next change ({share} %, {left} left)"
    )
    moment = _("now") if at <= now else when(at, now)
    percent = plain(100.0 * at_most(share), 1)
    return told.format(tank=tank, when=moment, share=percent, left=left)


def none_then() -> str:
    """Nothing is due in the days that were asked about, but later."""
    return _("Nothing is due then. What comes next:")


def wrong_there(tank: str, line: str) -> str:
    """What is wrong in a tank, which goes before all that is due."""
    return _("First {tank}: {line}").format(tank=tank, line=line)


def called_there(tank: str) -> str:
    """Something was called out in a tank, and nothing settled it since."""
    return _("First {tank}: what was told of it today still stands.").format(tank=tank)


def none_set() -> list[str]:
    """No reminder is set, but a part of a plan waits."""
    return [_("No reminder is set. What waits is of a plan:")]


def no_reminder() -> list[str]:
    """Beside what is wrong no reminder waits."""
    return [_("No reminder waits beside that.")]
