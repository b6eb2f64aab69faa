"""What is said of fish of the bottom that lie still at night."""

from __future__ import annotations

from bot.chat.words.text import _


def at_night() -> list[str]:
    """How rest is told from need."""
    return [
        _("At night they often rest so: lying still in the dark alone is no alarm."),
        _("Look once with the light on: do they breathe calmly, and move when it is bright?"),
        _("Gasping, fast breathing, or lying so by day too is one: then say help, and test."),
    ]
