"""When the next water change is usual."""

from __future__ import annotations

from datetime import datetime

from bot.chat.words.numbers import when
from bot.chat.words.text import _


def usual(tank: str, upcoming: datetime | None, now: datetime) -> list[str]:
    """When it is by common practice, a week after the last one where that is known; a reminder."""
    if upcoming is None:
        told = _("Common practice is a tenth to a quarter a week.")
    elif upcoming <= now:
        told = _(
            "Common practice is a tenth to a quarter a week, and one has gone by since the last."
        )
    else:
        told = _("Common practice is a tenth to a quarter a week: the next about {when}.")
        told = told.format(when=when(upcoming, now))
    example = _("To be reminded, send: remind me to change water in {tank} every 7 days at 19:00")
    return [told, example.format(tank=tank)]


def due_now() -> list[str]:
    """What was measured asks for new water, and none was given of late."""
    return [_("So it is due now.")]
