"""What is told after the first steps: none died since, much dechlorinator, how it stands."""

from __future__ import annotations

from bot.chat.words.text import _


def double_conditioned() -> list[str]:
    """Twice the label of a dechlorinator went in."""
    return [_("Up to twice the label of a dechlorinator harms no fish; no more of it, and aerate.")]


def much_conditioned() -> list[str]:
    """Many times the label of a dechlorinator went in, which takes up oxygen; common practice."""
    return [
        _("Air now, strong, through the night: that much dechlorinator takes up oxygen."),
        _("No more of it, and nothing against it. Look whether they breathe calmly."),
        _("Test pH and ammonia now and in an hour, oxygen if you can, and send them."),
    ]


def spared() -> list[str]:
    """No more died."""
    return [
        _("Good to hear. Watch how they breathe, and count them again in the morning."),
        _("Test ammonia, nitrite, pH and temperature, and send them: only they tell it is over."),
    ]


def say_if_worse() -> str:
    """Behind how it stands, where a call or a loss of the day is not explained by it."""
    return _("If any gasps: air at once. Still lying or dying? Say so, and I give the steps again.")
