"""Words about a part of each of two plans."""

from __future__ import annotations

from bot.chat.words.text import _


def which(first: str, second: str) -> list[str]:
    """Ask whether both tanks or both parts are meant."""
    told = _("A part in {first} and one in {second}, or both parts in {second}? Not logged yet.")
    return [told.format(first=first, second=second)]


def a_part_each(first: str, second: str) -> str:
    """The button for a part in each tank."""
    return _("one each: {first}, {second}").format(first=first, second=second)


def two_parts(tank: str) -> str:
    """The button for both parts in one tank."""
    return _("both parts in {tank}").format(tank=tank)
