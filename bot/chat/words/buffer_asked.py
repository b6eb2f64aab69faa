"""What is said of how much buffer it is, where that is asked in few words."""

from __future__ import annotations

from bot.chat.words.text import _


def not_weekly(told: str) -> list[str]:
    """A plan is given once; KH is tested and raised again only where it fell."""
    return [
        _("Once, not every week: {told}").format(told=told),
        _("Then test KH each week; only where it fell again, ask for the dose anew."),
    ]


def no_routine() -> str:
    """A buffer is no routine."""
    return _("Not by the week: only until KH is reached. Then test it weekly; more where it fell.")


def a_day_apart() -> str:
    """How long from part to part."""
    return _("24 h from part to part, and a test of KH, pH and ammonia before each.")


def not_at_once() -> str:
    """KH does not go up in one go, nor sooner."""
    return _("No, not all at once: pH goes up with KH, faster than animals may bear.")


def ask(text: str) -> str:
    """How the amount and its parts are asked for."""
    return _("For the grams and their parts ask: {text}").format(text=text)
