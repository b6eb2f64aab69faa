"""Words for shares of two waters."""

from __future__ import annotations

from bot.chat.words.text import _


def to_what(water: str) -> list[str]:
    """A share is asked for without what it is for, and no tank's KH is known."""
    return [
        _("To what? Send for example: how much {water} for 10 l at kh 4").format(water=water),
        _("With your tank's KH on record I match that."),
    ]


def as_the_tank(tank: str) -> str:
    """The mix is to have the KH of the tank."""
    return _("To match the KH of {tank}:").format(tank=tank)
