"""What is said of a plan whose need is asked for."""

from __future__ import annotations

from bot.chat.words.text import _


def no_need() -> list[str]:
    """That only a wish asks for it, and that a steady tank is left alone."""
    return [
        _("It is not needed: nothing that was measured asks for it, only your wish."),
        _("Water that is steady and suits its animals is best left alone."),
    ]


def asked_for() -> str:
    """That what was measured asks for it."""
    return _("It is needed: what was measured asks for it, in the steps of the plan.")


def left_alone() -> str:
    """What comes of leaving it."""
    return _("Left alone it stays so or gets worse: then test every day.")
