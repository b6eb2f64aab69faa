"""Words for what went in and was not tested since, beside an answer of the readings."""

from __future__ import annotations

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
