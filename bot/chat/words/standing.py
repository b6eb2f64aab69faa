"""How a tank stands and where it is going, in a few lines."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta

from bot.chat.words import names
from bot.chat.words.numbers import plain
from bot.chat.words.text import N_, _, ngettext
from core.advice.state import Measured
from core.advice.trends import Trend
from core.analytes import ANALYTES


def nothing_measured(tank: str) -> list[str]:
    """No reading to judge by."""
    return [
        _(
            "{tank}: nothing is measured yet. Send for example: ph 7.2 kh 4 ammonia 0 temp 24"
        ).format(tank=tank)
    ]


def lead(tank: str, line: str) -> str:
    """The worst finding, or the full answer to good water."""
    return names.of_tank(tank, line)


def nothing_off(tank: str) -> str:
    """No rule speaks; what was measured is within the limits that are known."""
    return _(
        "{tank}: nothing that was measured passes a limit that I know. Change nothing for it."
    ).format(tank=tank)


def within(tank: str) -> str:
    """No rule speaks, but not all that harms soonest is known."""
    return _("{tank}: what was measured is within the limits that I know.").format(tank=tank)


def kept_soft(kh: float) -> str:
    """A KH that is low for most belongs to this water. [°dH]"""
    told = _("KH {kh} is low for most, but this is soft water on purpose: dose none for it.")
    return told.format(kh=plain(kh, 1))


_UNTESTED = {
    ("ammonia", "nitrite"): N_(
        "Ammonia and nitrite are unknown, and they harm soonest: test and send them before you"
        " call it well."
    ),
    ("ammonia",): N_(
        "Ammonia is unknown, and it harms soonest: test and send it before you call it well."
    ),
    ("nitrite",): N_(
        "Nitrite is unknown, and it harms soonest: test and send it before you call it well."
    ),
}


def untested(analytes: Sequence[str]) -> str:
    """Of these nothing of late is known: ammonia, nitrite."""
    return _(_UNTESTED[tuple(analytes)])


def not_understood(part: str) -> str:
    """What was sent before and is not on record, so that no verdict counts it."""
    return _("I did not understand “{part}”, so it is not counted: send it in other words.").format(
        part=part
    )


def doubted(part: str, *, kit: bool) -> str:
    """A number that was asked about and not answered, or a test that was doubted."""
    if kit:
        return _("You doubt the last test (“{part}”): test again, and send it.").format(part=part)
    return _("“{part}” is not answered yet: is it right?").format(part=part)


def test_again(tank: str) -> list[str]:
    """The last test was done with a kit that is no good, or done wrong."""
    return [
        _("{tank}: then the last test proves nothing. Test again and send it.").format(tank=tank),
        _("Until then do as if the worse of what was read were true; nothing more goes in."),
    ]


def cannot_tell(tank: str, part: str, *, kit: bool) -> str:
    """No verdict while a number is asked about, or the test is doubted."""
    if kit:
        told = _("{tank}: I cannot tell: you doubt the last test (“{part}”). Test again, send it.")
        return told.format(tank=tank, part=part)
    told = _("{tank}: I cannot tell: is “{part}” right? Answer that, or test again and send it.")
    return told.format(tank=tank, part=part)


def cannot_tell_yet(tank: str) -> str:
    """No verdict while a number was not understood; what it was follows."""
    return _("{tank}: I cannot tell yet.").format(tank=tank)


def if_so(finding: str) -> str:
    """What a number would mean that nobody answered for: until then it counts as true."""
    return _("Until then take it as true: {finding}").format(finding=finding)


def before_change(tank: str, share: float, *, ill: Sequence[str]) -> list[str]:
    """Every reading is from before a change of much of the water: only a new test tells."""
    percent = plain(100.0 * share, 0)
    lines = [
        _(
            "{tank}: a new test must tell: all that was measured is from before you changed"
            " {percent} %. Test again, and send it."
        ).format(tank=tank, percent=percent)
    ]
    if ill:
        lines.append(_("Until then take it as not safe: no food, and if they gasp, air at once."))
        lines += [_("Before it: {finding}").format(finding=each) for each in ill]
    return lines


def done_since(tank: str, deeds: Sequence[str]) -> list[str]:
    """The readings are of before what was done, so that they tell of another water."""
    told = _("{tank}: I cannot tell. Since the last test: {deeds}.")
    return [
        told.format(tank=tank, deeds=", ".join(deeds[-3:])),
        _("Test again and send it; if animals behave oddly, ask: help"),
    ]


def lost_since(deaths: Sequence[str], missing: Sequence[str]) -> str:
    """Animals died of late, and what kills soonest was not measured after it."""
    told = _(
        "I cannot call it well: {deaths} of late, and not all was measured after it. Test {what}"
        " now and send it; look at the others."
    )
    asked = names.listed([names.label(each) for each in missing])
    return told.format(deaths=", ".join(deaths[-3:]), what=asked)


def only_old(tank: str) -> str:
    """Every reading is too old to judge the water by."""
    return _(
        "{tank}: I cannot tell, the newest reading is over three days old. Test again first."
    ).format(tank=tank)


def measured(readings: Iterable[Measured], now: datetime) -> list[str]:
    """The newest reading of each analyte: the fresh ones in a line, the old ones in another."""
    fresh: list[str] = []
    old: list[str] = []
    for each in readings:
        (fresh if each.is_fresh(now) else old).append(as_measured(each, now))
    lines = [_("Measured: {fresh}.").format(fresh=", ".join(fresh))] if fresh else []
    if old:
        lines.append(_("Old: {old}.").format(old=", ".join(old)))
    return lines


def as_measured(reading: Measured, now: datetime) -> str:
    """One reading with its unit, as far as it was told, and its age where it is old."""
    _name, unit, decimals = _row(reading.analyte)
    number = plain(reading.value, decimals)
    if reading.step == 0.0 and reading.low < reading.high and not reading.is_limit:
        number = (
            f"{plain(reading.low, decimals)}–{plain(reading.high, decimals)}"  # told as a range
        )
    if reading.qualifier in {"<", ">"}:
        told = _("under {number}") if reading.qualifier == "<" else _("over {number}")
        number = told.format(number=number)
    if reading.qualifier == "<" and reading.value <= 0.0:
        number, unit = _("not detected"), ""
    days = round(reading.age(now) / timedelta(days=1))
    template = (
        _("{name} {amount}")
        if reading.is_fresh(now)
        else ngettext("{name} {amount} ({days} day ago)", "{name} {amount} ({days} days ago)", days)
    )
    return template.format(name=names.label(reading.analyte), amount=f"{number}{unit}", days=days)


def due_next(what: str, when: str) -> str:
    """The next reminder of the tank."""
    return _("Due next: {task}, {when}.").format(task=what, when=when)


def change_now(tank: str, lines: Sequence[str], *, asked_when: bool = False) -> list[str]:
    """A finding is mended by new water; what was asked is whether to change, or when."""
    told = _("{tank}: {finding}") if asked_when else _("{tank}: yes. {finding}")
    return [told.format(tank=tank, finding=lines[0]), *lines[1:]]


def change_small(tank: str, lines: Sequence[str]) -> list[str]:
    """A large change is asked for where a finding wants new water: a little at a time."""
    told = _("{tank}: no, small ones, a day apart. {finding}")
    return [told.format(tank=tank, finding=lines[0]), *lines[1:]]


def change_unneeded(tank: str, last: timedelta | None) -> list[str]:
    """No reading asks for new water; the routine stands."""
    told = _("{tank}: nothing that was measured asks for a water change now.").format(tank=tank)
    return [told if last is None else f"{told} {_last_change(last)}"]


def change_for_ammonia(tank: str, total: Measured, now: datetime) -> str:
    """Ammonia is there, over a limit or not: new water thins it, a little at a time."""
    told = _("{tank}: {ammonia}: stop feeding, and change a little at a time until it is 0.")
    return told.format(tank=tank, ammonia=as_measured(total, now))


def if_ammonia_is_left() -> str:
    """The last ammonia is too old to decide."""
    return _("If any is left: stop feeding, and change a little at a time until it is 0.")


def none_live_there() -> str:
    """No animal is on record: it may be a filter that is being started."""
    return _("Where nothing lives yet, it is the filter's food: then leave it.")


def keep_routine() -> str:
    """What a routine is for."""
    return _("Keep to your routine: small and regular is better than large and rare.")


def _last_change(span: timedelta) -> str:
    if span < timedelta(days=1):
        return _("The last one was today.")
    days = round(span / timedelta(days=1))
    told = ngettext("The last one was {days} day ago.", "The last one was {days} days ago.", days)
    return told.format(days=days)


def reaches(tank: str, found: Trend, limit: float, days: Sequence[float]) -> list[str]:
    """When an analyte on the move is at a value, with the interval that its readings leave."""
    _name, unit, decimals = _row(found.analyte)
    moves = movement(found)
    told = {
        "tank": tank,
        "name": names.label(found.analyte),
        "amount": f"{plain(limit, decimals)}{unit}",
    }
    if days[0] == 0.0:
        now = _("{tank}: by its trend it is at {name} {amount} by now. Test it.")
        return [now.format(**told), moves]
    about = round(days[0])
    then = ngettext(
        "{tank}: {name} {amount} in about {days} day ({soonest} to {latest}).",
        "{tank}: {name} {amount} in about {days} days ({soonest} to {latest}).",
        about,
    ).format(
        days=about,
        soonest=f"{days[1]:.0f}",
        latest=f"{days[2]:.0f}" if math.isfinite(days[2]) else _("never"),
        **told,
    )
    return [then, moves]


def movement(found: Trend) -> str:
    """How fast an analyte moves, and what tells it."""
    _name, unit, _decimals = _row(found.analyte)
    span = round(found.span / timedelta(days=1))
    return ngettext(
        "It moves {per_day} a day, by {count} readings over {span} day.",
        "It moves {per_day} a day, by {count} readings over {span} days.",
        span,
    ).format(per_day=f"{found.per_day:+.2g}{unit}", count=found.count, span=span)


def no_movement() -> str:
    """What the kit leaves open is more than what moved."""
    return _("It does not surely move.")


def acid_of_nitrate(explained: float) -> str:
    """How much of a fall of KH the nitrate that builds up explains. [°dH a day]"""
    told = _("About {amount} °dH a day of that is acid from the nitrate that builds up.")
    return told.format(amount=plain(explained, 2))


def no_trend(tank: str, analyte: str) -> list[str]:
    """Too few readings, or they do not move surely."""
    return [
        _(
            "{tank}: I cannot tell. The readings of {name} on record show no sure movement"
            " that way."
        ).format(tank=tank, name=names.label(analyte)),
        _("Five readings over some days, without a change or dose between, are the least for it."),
    ]


def _row(analyte: str) -> tuple[str, str, int]:
    row = ANALYTES.get(analyte)
    if row is None:
        return analyte, "", 2
    return row.label, "" if row.unit == "pH" else f" {row.unit}", row.decimals
