"""Short answers to what is asked around a tank. Common practice, no source, where none is named."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.text import _


def top_up() -> list[str]:
    """Topping up is no change: what evaporates leaves all else behind (plain chemistry)."""
    return [
        _("No: water evaporates and leaves nitrate and minerals behind; topping up removes none."),
        _("A change takes a share of everything out. Top up besides, best with RO water:"),
        _("tap water raises GH and KH bit by bit."),
    ]


def bacteria() -> list[str]:
    """Whether a filter has lost its bacteria: only a test tells."""
    return [
        _("Only a test tells: ammonia and nitrite now, then each day for a week."),
        _("Both 0: they live. If either shows: feed little, change water, ask: what now"),
        _("They die of chlorine, of drying, of hours without flow, of some medicines, of soap."),
        _("A change of treated water does them no harm; they sit in the filter, not in the water."),
    ]


def air_off() -> list[str]:
    """Switching the air off; it is oxygen first."""
    return [
        _("Better leave it on: it keeps oxygen in, most of all by night and in warm water."),
        _("Never off while they gasp, with a medicine, or until a dose or a change has settled."),
        _("Else by day, if the filter still moves the surface; stay and watch: gasping: on again."),
        _("With ammonia in the water keep it as it is: air moves pH, and pH decides the poison."),
    ]


def keep() -> list[str]:
    """How a value is held where it is."""
    return [
        _("By a routine: the same share of the same water on the same day each week."),
        _("KH is used up by the filter: test it weekly, and what is missing comes back in small"),
        _("parts, 1 °dH a day at most. Ask: dose kh +1, and: remind me to test kh every 7 days"),
        _("GH and pH follow the new water; topping up with RO keeps them from creeping up."),
    ]


def pace() -> list[str]:
    """The most in an hour and in a day, as in the limits."""
    return [
        _("Temperature: 1 °C an hour, 2 °C a day at most; measure each hour."),
        _("All else goes by the day: KH 1 °dH, GH 2 °dH, pH 0.3, never all of it in an hour."),
    ]


def of_which(ways: Sequence[str]) -> list[str]:
    """Several values stand over the number that is wished."""
    return [_("Of what? Send one of these: {ways}").format(ways=" · ".join(ways))]


def smaller_changes() -> list[str]:
    """A plan of changes made slower."""
    return [
        _("Yes, slower is as good: smaller shares on more days, one a day."),
        _("Send the share that you want, for example: 15 % then"),
    ]


def conditioner() -> list[str]:
    """A product that is dosed by its label."""
    return [
        _("By its label: each is of another strength, and I do not know yours."),
        _("A bucket: for the litres of the bucket. A hose into the tank: for the whole tank."),
        _("In before the tap water, and no more of it than its label allows."),
        _("Send what its label says, and I reckon: my conditioner: 5 ml per 100 l"),
    ]


def away(day: str) -> list[str]:
    """Some weeks away; `day` is the last of them."""
    return [
        _("Shall reminders rest? Send: holiday until {day}. I paused nothing yet.").format(day=day),
        _("Change water and test some days before, not on the last: time to see what it does."),
        _("Clean no filter and add no animals just before. Begin no dose that you cannot test."),
        _("Healthy grown fish bear a week or two with little food; portions for a sitter."),
    ]
