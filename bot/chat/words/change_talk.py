"""What is said of a water change once it was answered: how it is done, how much, when the next."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from bot.chat.words import change_course, changes
from bot.chat.words.changes import percent
from bot.chat.words.numbers import at_most, litres, plain
from bot.chat.words.text import _, ngettext


def change_later(*, emergency: bool) -> list[str]:
    """A change is late, or may be."""
    return [
        _("Rather now: it is an emergency.")
        if emergency
        else _("A change may wait a day. Never two in one day to make up for it."),
        _("Test pH, KH and ammonia right before it; where they moved, ask again."),
    ]


def change_to_come(share: float, volume_l: float | None) -> list[str]:
    """A change is meant to be made. [share], [L]"""
    how_much = percent(at_most(share)) if volume_l is None else litres(volume_l)
    return [
        _("Fine: {amount}. Test again first if it is not today.").format(amount=how_much),
        _("When it is done, send: done"),
    ]


def next_change(*, emergency: bool) -> list[str]:
    """When the next of several changes may follow."""
    if emergency:
        return [_("Test again in an hour, and after some hours. Send the readings, and ask again.")]
    return [_("A day after this one. Test pH, KH and ammonia before it, send them, and ask again.")]


def how_warm(
    temperature: float | None, share: float, least: float | None, most: float | None
) -> list[str]:
    """How warm the new water should be, and what a share bears at least or at most. [°C]"""
    if temperature is None:
        return [_("As warm as the tank: measure both. Never more than 2 °C in a day.")]
    lines = [_("As warm as the tank: {degrees} °C.").format(degrees=plain(temperature, 1))]
    for told, bound in (
        (_("For {share} at once it must be {degrees} °C or more."), least),
        (_("For {share} at once it must be {degrees} °C or less."), most),
    ):
        if bound is not None:
            lines.append(told.format(share=percent(at_most(share)), degrees=plain(bound, 1)))
    return lines


def how_to_change(share: float, volume_l: float | None, temperature: float | None) -> list[str]:
    """One change, step by step. [share], [L], [°C]"""
    warm = (
        _("Make the new water ready: no chlorine in it, as warm as the tank.")
        if temperature is None
        else _("Make the new water ready: no chlorine in it, {degrees} °C as the tank.").format(
            degrees=plain(temperature, 1)
        )
    )
    return [
        warm,
        _("Heater and filter off. Take out {amount}.").format(
            amount=changes.amount(at_most(share), volume_l)
        ),
        _("Pour the new water in slowly, over a quarter of an hour, not onto animals or roots."),
        _("Heater and filter on again. Watch for an hour: if they gasp, air at once."),
    ]


def so_much(share: float, volume_l: float, count: int) -> list[str]:
    """How many litres one change is, of how much water. [share], [L]"""
    return [
        ngettext(
            "{share} of {volume} is {amount}.",
            "{share} of {volume} is {amount} each time, {count} times, one a day.",
            count,
        ).format(
            share=percent(at_most(share)),
            volume=litres(volume_l),
            amount=litres(at_most(share) * volume_l),
            count=count,
        )
    ]


def every_day(share: float, count: int) -> list[str]:
    """How often each of a few changes. [share]"""
    told = ngettext(
        "{share} once; then test, and ask again.",
        "{share} once a day, {count} times. No more at a time: that was the limit.",
        count,
    )
    return [
        told.format(share=percent(at_most(share)), count=count),
        _("Test pH, KH and ammonia right before each; where they moved, ask again."),
    ]


def every_so_many_days(share: float, days: int, weeks: int) -> list[str]:
    """How often each of many small changes. [share]"""
    told = ngettext(
        "{share} every {days} days, for about {weeks} week. No more at a time: that was the limit.",
        "{share} every {days} days, for about {weeks} weeks. No more at a time: that was the"
        " limit.",
        weeks,
    )
    return [
        told.format(share=percent(at_most(share)), days=days, weeks=weeks),
        _("Test pH, KH and ammonia right before each; where they moved, ask again."),
    ]


def hint_of_change() -> list[str]:
    """For a message behind a change that says nothing we know."""
    return [
        _("I did not understand that. Of this change you can ask or tell, for example:"),
        _("how many litres is that · is that safe · how do i do it · 20 % then · with ro · done"),
    ]


def no_volume(share: float) -> list[str]:
    """A share of nobody knows how much."""
    told = _("{share} of the water: how many litres that is I can tell once I know the tank's.")
    return [
        told.format(share=percent(at_most(share))),
        _("Send for example: my tank is 90 l"),
    ]


def so_long(count: int) -> list[str]:
    """Over how many days the changes go."""
    told = ngettext(
        "It is one change.",
        "{count} changes, one a day: {count} days. Test pH, KH and ammonia before each next one.",
        count,
    )
    return [told.format(count=count)]


def after_first(values: Mapping[str, float]) -> str:
    """The water right after the first of several changes."""
    return change_course.first(values)


def after_last(values: Mapping[str, float]) -> str:
    """The water once the last one has stood."""
    return change_course.end(values)


def test_it() -> str:
    """What is reckoned is no reading."""
    return _("That is reckoned: test pH, KH and ammonia an hour after it, and send them.")


def safe(share: float, steps: Sequence[float]) -> list[str]:
    """Whether a change keeps within the limits, by what was measured. Never called safe."""
    if not steps:
        return [_("Not {share} at once: it is over the limits.").format(share=percent(share))]
    if len(steps) == 1 and steps[0] >= share:
        told = _("{share} at once is within the limits, by what you measured.")
        first = told.format(share=percent(share))
    else:
        told = _("Not {share} at once: {step} a day is within the limits, by what you measured.")
        first = told.format(share=percent(share), step=percent(at_most(steps[0])))
    return [first, _("No change is without risk: watch for an hour; if they gasp, air at once.")]


def not_whole() -> str:
    """All of the water is never changed at once while animals are in it."""
    return _(
        "Not all of the water at once: other water of a sudden harms more than most of what is"
        " in it."
    )


def watch_it() -> str:
    """What is done beside a change of a part."""
    return _("Watch them for an hour after it; test pH and KH before the next one.")
