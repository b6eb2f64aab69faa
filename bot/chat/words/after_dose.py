"""What a dose that is in the water did, in words."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.text import _


def unknown(substance: str) -> list[str]:
    """Something of which nobody knows what is in it, or how much of it went in."""
    told = _(
        "I do not know what so much of {substance} does: test pH, KH and ammonia in an hour, watch"
        " the animals, add no more of it."
    )
    return [
        told.format(substance=names.said(substance)),
        _("Tell me what is in it and its grams, for example: dosed 5 g baking soda"),
    ]


def litres_first(tank: str) -> str:
    """Without its volume nothing can be said."""
    told = _("How many litres has {tank}? Then I can tell. Send for example: /tank {tank} 90 l")
    return told.format(tank=tank)


def test_later() -> str:
    """The sum is one; what the water says counts."""
    return _("That is the sum: test pH and KH in an hour, before anything else goes in.")


def by_spoons() -> str:
    """Spoons are judged by what is sure."""
    return _("That is the least that such spoons weigh: weigh it next time.")


def unknown_in(tank: str, substance: str) -> str:
    """What went in since the last test is not known: no word of it that all is well."""
    told = _(
        "{tank}: nothing that was measured passes a limit, but I do not know what is in the"
        " {substance} that went in since. Test pH, KH and ammonia; no more of it before that."
    )
    return told.format(tank=tank, substance=substance)
