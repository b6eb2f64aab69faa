"""Words for when a value is met where no long trend tells it: two readings, a plan, or neither."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Final

from bot.chat.words import names
from bot.chat.words.levels import unit
from bot.chat.words.numbers import plain
from bot.chat.words.text import _, ngettext
from core.advice.pace import Pace

EXAMPLES: Final[Mapping[str, str]] = {"ph": "7", "temperature": "24", "kh": "4", "salinity": "35"}


def by_pair(tank: str, analyte: str, limit: float, days: Sequence[float]) -> str:
    """When it is met, by the last two readings; days expected, soonest and latest."""
    about = round(days[0])
    return ngettext(
        "{tank}: {name} {limit}{unit} in about {days} day ({soonest} to {latest}), by the last two"
        " readings.",
        "{tank}: {name} {limit}{unit} in about {days} days ({soonest} to {latest}), by the last two"
        " readings.",
        about,
    ).format(
        tank=tank,
        name=names.label(analyte),
        limit=plain(limit, 2),
        unit=unit(analyte),
        days=about,
        soonest=f"{days[1]:.0f}",
        latest=f"{days[2]:.0f}" if math.isfinite(days[2]) else _("never"),
    )


def away(tank: str, analyte: str, limit: float, pace: Pace) -> str:
    """It moves away from the value."""
    told = (
        _("{tank}: not by itself: {name} falls by {rate}{unit} a day, away from {limit}.")
        if pace.used.per_day > 0.0
        else _(
            "{tank}: not by itself: {name} rises by about {rate}{unit} a day, away from {limit}."
        )
    )
    return told.format(
        tank=tank,
        name=names.label(analyte),
        rate=plain(abs(pace.used.per_day), 2),
        unit=unit(analyte),
        limit=plain(limit, 2),
    )


def unsure(tank: str, analyte: str, pace: Pace) -> str:
    """What moved is within the kit's step."""
    used = pace.used
    return _(
        "{tank}: I cannot tell: between the last two readings {name} moved by {low} to {high}{unit}"
        " a day, which the kit's step leaves open. Test again in some days."
    ).format(
        tank=tank,
        name=names.label(analyte),
        low=f"{-used.high:+.2g}",
        high=f"{-used.low:+.2g}",
        unit=unit(analyte),
    )


def by_plan(tank: str, analyte: str, limit: float, count: int, of: int) -> str:
    """After which of the changes just planned it is met."""
    return ngettext(
        "{tank}: {name} {limit}{unit} after {count} change of the {of} planned, one a day.",
        "{tank}: {name} {limit}{unit} after {count} changes of the {of} planned, one a day.",
        count,
    ).format(
        tank=tank,
        name=names.label(analyte),
        limit=plain(limit, 2),
        unit=unit(analyte),
        count=count,
        of=of,
    )


def by_parts(tank: str, analyte: str, limit: float, count: int, of: int) -> str:
    """After which part of the plan just told it is met."""
    return ngettext(
        "{tank}: {name} {limit}{unit} after {count} part of the {of} planned, one a day.",
        "{tank}: {name} {limit}{unit} after {count} parts of the {of} planned, one a day.",
        count,
    ).format(
        tank=tank,
        name=names.label(analyte),
        limit=plain(limit, 2),
        unit=unit(analyte),
        count=count,
        of=of,
    )


def test_before_each() -> str:
    """A plan is reckoned."""
    return _("That is reckoned: test before each next part.")


def then_by_itself() -> str:
    """A plan says nothing of what is made or used between."""
    return _("What food adds and plants use comes on top: test after the last.")


def missing(tank: str, analyte: str, known: int) -> list[str]:
    """Too few readings with nothing done between; `known` is how many are on record."""
    lead = _(
        "{tank}: I cannot tell yet. I need two readings of {name}, some days apart, with no change"
        " and no dose between."
    )
    name = names.label(analyte)
    example = _("Send one now and one in 3 to 7 days, for example: {name} {value}")
    if known:
        example = _(
            "Send one now, after the last change or dose, and one in 3 to 7 days, for example:"
            " {name} {value}"
        )
    value = EXAMPLES.get(analyte, "10")
    return [lead.format(tank=tank, name=name), example.format(name=name, value=value)]
