"""Words of water that is made ready for a change, and of how often a filter is cleaned."""

from __future__ import annotations

from bot.chat.words.numbers import plain
from bot.chat.words.text import N_, _

RO_WATER = N_("RO water")


def of_which_water(litres: float, goals: str) -> list[str]:
    """Ask what the new water is made of."""
    return [
        _("Nothing is stored. {litres} L of new water to {goals}: of which water?").format(
            litres=plain(litres, 1), goals=goals
        ),
        _("Send for example: recipe for {litres} l ro to {goals}").format(
            litres=plain(litres, 1), goals=goals
        ),
    ]


def test_water(*, sea: bool) -> list[str]:
    """How often water is tested, by common practice."""
    lines = [
        _(
            "A new tank, or one with new or ill animals: ammonia and nitrite every day or two."
            " After a dose: what it moves, 24 h later."
        )
    ]
    if sea:
        lines.append(
            _("A settled sea: salinity and KH twice a week, calcium, magnesium, nitrate weekly.")
        )
    else:
        lines.append(_("A settled tank: pH, KH and nitrate weekly, GH every month."))
    lines.append(_("Ask for a reminder: remind me to test every 7 days at 19:00"))
    return lines


def clean_filter() -> list[str]:
    """How often a filter is cleaned, by common practice."""
    return [
        _(
            "Clean the filter when less water comes out of it, every month or two: rinse it in"
            " water from the tank, never under the tap."
        ),
        _("Never all of its media at once, nor on the day of a large water change."),
    ]
