"""Words for what went in and was not tested since, beside an answer of the readings."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.text import _


def called() -> str:
    """Too much of something went in, as the keeper told."""
    return _(
        "Too much went in, as you told: add nothing more, test pH, KH and ammonia now, and watch"
        " the animals."
    )


def unknown(substance: str) -> str:
    """Something went in of which nobody knows what it moves."""
    return _(
        "I do not know what is in the {substance} that went in since: test pH, KH and ammonia;"
        " no more of it before that."
    ).format(substance=substance)


def read_before(substance: str) -> str:
    """What a dose moves was tested before it."""
    told = _(
        "No more {substance} today: what it moves was tested before it. Test pH, KH, GH and"
        " ammonia 24 h after it."
    )
    return told.format(substance=names.said(substance))


def not_told() -> str:
    """How much a dose moved is not known."""
    return _("How much that was I cannot tell without its grams and the litres of the tank.")


def untested(tank: str, deed: str) -> str:
    """A salt went in and nothing was read since: said before any amount."""
    return _("{tank}: {deed}, and nothing tested since: no more before KH and pH are read.").format(
        tank=tank, deed=deed
    )
