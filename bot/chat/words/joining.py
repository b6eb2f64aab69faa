"""Animals that join their like."""

from __future__ import annotations

from bot.chat.words.text import _


def joined(tank: str) -> str:
    """More of a kind were noted in the tank where it lives."""
    return _("Noted in {tank}, where their like live.").format(tank=tank)
