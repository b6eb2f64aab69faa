"""What is meant to go in, judged before it is in."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.text import _


def not_so_much() -> str:
    """It would be too much at once."""
    return _("No, not so much at once.")


def taken_as(substance: str) -> str:
    """The thing was not named: for what it is taken."""
    told = _("Taken as {substance}: if it is another thing, say which before any of it goes in.")
    return told.format(substance=names.substance(substance))
