"""What is said of an amount that was not given: what to do instead, and when it will be."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.text import _


def instead(why: Sequence[str]) -> list[str]:
    """The way round it is in the refusal: its lines again, what it asks for first."""
    return [_("No amount, but not nothing:"), *(why[1:] or why)]


def not_less(why: Sequence[str]) -> list[str]:
    """The same of a smaller amount, or of one of the keeper's own."""
    return [_("No, not so much either:"), *why]


def when() -> list[str]:
    """From when a plan that ammonia stands against is worked out."""
    return [
        _("As soon as ammonia is 0 or near it: test daily, send it with pH and temperature."),
        _("Then ask me again for the same: I plan it in daily parts."),
    ]


def unwilling(*, of_ammonia: bool) -> list[str]:
    """Water will not be changed."""
    lines = [
        _(
            "Then no food, strong air, and a test each day. What harms after a change is mostly"
            " chlorine, cold or another pH, not the change."
        ),
        _(
            "A tenth with dechlorinated water of the tank's own pH, KH and temperature, poured in"
            " slowly, is the safest you can do."
        ),
    ]
    if of_ammonia:
        lines.append(_("Nothing that raises pH until ammonia is 0."))
    return lines


def whether_in(amount: str, tank: str) -> list[str]:
    """Whether the amount that was asked about is what went in."""
    told = _("Did {amount} go into {tank}? Nothing is stored yet, and nothing more goes in.")
    return [told.format(amount=amount, tank=tank)]
