"""The gate before any raising of KH or pH, in words."""

from __future__ import annotations

from bot.chat.words.text import _


def measure_first() -> str:
    """Nobody measured ammonia of late."""
    return _("Measure ammonia first: a higher pH makes poison of it. Send for example: ammonia 0")
