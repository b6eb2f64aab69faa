"""What an undo says of what is older than the line before it."""

from __future__ import annotations

from datetime import datetime

from bot.chat.words.numbers import when
from bot.chat.words.text import _


def older(what: str) -> list[str]:
    """The line before an undo put nothing on record."""
    told = _("Your last message put nothing on record that can be taken back. Older: {what}.")
    return [told.format(what=what), _("Press undo to take that back.")]


def old(what: str, at: datetime, now: datetime) -> list[str]:
    """What an undo would take back is old; both moments are local."""
    told = _("What was kept last is of {when}: {what}.").format(when=when(at, now), what=what)
    return [told, _("Press undo to take that back.")]
