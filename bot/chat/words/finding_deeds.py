"""Findings about what was just done, in one short line each."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.finding_parts import Facts, number
from bot.chat.words.numbers import grams, plain
from bot.chat.words.text import _


def overdose(facts: Facts) -> str:
    """A dose of more than a day's step."""
    moved = [
        template.format(amount=plain(number(facts, name), 1))
        for name, template in (
            ("kh", _("KH +{amount} °dH")),
            ("gh", _("GH +{amount} °dH")),
            ("salinity", _("salinity +{amount} g/kg")),
            ("ph_at_once", _("pH about {amount}")),
        )
        if name in facts
    ]
    return _(
        "Too much for one day: {grams} of {substance} ({moved}). Add nothing more, test pH, KH and"
        " ammonia now."
    ).format(
        grams=grams(number(facts, "grams")),
        substance=names.said(str(facts["substance"])),
        moved=", ".join(moved),
    )


def large_change(facts: Facts) -> str:
    """Most of the water was changed."""
    return _(
        "A very large change ({share} %): test pH, temperature and ammonia now, watch the animals."
    ).format(share=plain(100.0 * number(facts, "share"), 0))
