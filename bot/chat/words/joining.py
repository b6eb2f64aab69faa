"""What is noted in another tank than the one in use."""

from __future__ import annotations

from bot.chat.words.text import _


def joined(tank: str) -> str:
    """More of a kind were noted in the tank where it lives."""
    return _("Noted in {tank}, where their like live.").format(tank=tank)


def of_the_sea(tank: str, used: str) -> str:
    """Sea water was noted in the only marine tank."""
    return _("Noted in {tank}: it is sea water, and {used} is fresh.").format(tank=tank, used=used)


def of_its_plan(tank: str, used: str) -> str:
    """A value was noted in the tank whose plan waits for it."""
    return _("Noted in {tank}: its plan waits for this test, and it is far from {used}'s.").format(
        tank=tank, used=used
    )
