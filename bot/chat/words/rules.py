"""A reminder's rule in words, to stand after the task that it is about."""

from __future__ import annotations

from datetime import time, tzinfo
from typing import Final

from bot.chat.words import names
from bot.chat.words.text import N_, _, ngettext
from core.schedule import Every, Monthly, NthWeekday, Once, Rule, Weekly, Yearly
from core.schedule.rules import LAST

WEEKDAYS: Final = (
    N_("Monday"), N_("Tuesday"), N_("Wednesday"), N_("Thursday"), N_("Friday"), N_("Saturday"),
    N_("Sunday"),
)  # fmt: skip
MONTHS: Final = (
    N_("January"), N_("February"), N_("March"), N_("April"), N_("May"), N_("June"), N_("July"),
    N_("August"), N_("September"), N_("October"), N_("November"), N_("December"),
)  # fmt: skip
DAYS: Final = (
    N_("1st"), N_("2nd"), N_("3rd"), N_("4th"), N_("5th"), N_("6th"), N_("7th"), N_("8th"),
    N_("9th"), N_("10th"), N_("11th"), N_("12th"), N_("13th"), N_("14th"), N_("15th"), N_("16th"),
    N_("17th"), N_("18th"), N_("19th"), N_("20th"), N_("21st"), N_("22nd"), N_("23rd"), N_("24th"),
    N_("25th"), N_("26th"), N_("27th"), N_("28th"), N_("29th"), N_("30th"), N_("31st"),
)  # fmt: skip
"""Days of a month."""

PLACES: Final = {
    1: N_("first"), 2: N_("second"), 3: N_("third"), 4: N_("fourth"), LAST: N_("last"),
}  # fmt: skip
"""Which of a month's Mondays."""

WEEK: Final = tuple(range(7))


def describe(rule: Rule, zone: tzinfo | None = None) -> str:
    """Say a rule.

    Parameters
    ----------
    rule : Rule
        The rule.
    zone : tzinfo or None
        The zone in which a single moment is told; None tells it as it was said.

    Returns
    -------
    str
        Without a capital letter or a full stop. A day from the 29th on says what it means in a
        shorter month.

    Examples
    --------
    >>> describe(Monthly((31,), time(9)))
    'on the 31st of every month at 09:00 (in shorter months on the last day)'
    """
    match rule:
        case Once(at):
            local = at if zone is None else at.astimezone(zone)
            return _("on {weekday} {day} {month} {year} at {clock}").format(
                weekday=_(WEEKDAYS[local.weekday()]),
                day=local.day,
                month=_(MONTHS[local.month - 1]),
                year=local.year,
                clock=_clock(local.time()),
            )
        case Every(count, unit, at):
            told = _interval(count, unit)
            return told if at is None else _at(told, at)
        case Weekly(days, at, every):
            return _at(_weekly(days, every), at)
        case Monthly(days, at, every):
            told = _at(_monthly(days, every), at)
            later = _("(in shorter months on the last day)")
            return f"{told} {later}" if days[-1] > 28 else told
        case NthWeekday(nth, weekday, at):
            return _("on the {place} {weekday} of every month at {clock}").format(
                place=_(PLACES[nth]), weekday=_(WEEKDAYS[weekday]), clock=_clock(at)
            )
        case Yearly(month, of_month, at):
            told = _("every year on {day} {month} at {clock}").format(
                day=of_month, month=_(MONTHS[month - 1]), clock=_clock(at)
            )
            later = _("(in common years on the 28th)")
            return f"{told} {later}" if (month, of_month) == (2, 29) else told


def _at(rule: str, at: time) -> str:
    return _("{rule} at {clock}").format(rule=rule, clock=_clock(at))


def _interval(count: int, unit: str) -> str:
    if unit == "months" and count % 12 == 0:
        unit, count = "years", count // 12
    told = {
        "hours": ngettext("every hour", "every {count} hours", count),
        "days": ngettext("every day", "every {count} days", count),
        "weeks": ngettext("every week", "every {count} weeks", count),
        "months": ngettext("every month", "every {count} months", count),
        "years": ngettext("every year", "every {count} years", count),
    }[unit]
    return told.format(count=count)


def _weekly(days: tuple[int, ...], every: int) -> str:
    listed = names.listed([_(WEEKDAYS[day]) for day in days])
    if every > 1:
        told = ngettext("every {count} week on {days}", "every {count} weeks on {days}", every)
        return told.format(count=every, days=listed)
    if days == WEEK:
        return _("every day")
    if days == WEEK[:5]:
        return _("every weekday (Monday to Friday)")
    return _("every {days}").format(days=listed)


def _monthly(days: tuple[int, ...], every: int) -> str:
    told = ngettext("on the {days} of every month", "on the {days} of every {count} months", every)
    return told.format(days=names.listed([_(DAYS[day - 1]) for day in days]), count=every)


def _clock(at: time) -> str:
    return at.isoformat(timespec="minutes")
