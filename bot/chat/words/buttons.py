"""Labels of buttons that several topics give out."""

from __future__ import annotations

from bot.chat.words.text import _


def undo() -> str:
    """Take back what was stored."""
    return _("undo")


def no() -> str:
    """Leave it as it is."""
    return _("no")


def more() -> str:
    """Show what was kept back."""
    return _("more")


def delete(tank: str) -> str:
    """Take a tank off the list."""
    return _("yes, delete {tank}").format(tank=tank)
