"""Findings about the sea's own ions, in one short line each."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.finding_parts import Facts, number
from bot.chat.words.numbers import plain
from bot.chat.words.text import _


def low(facts: Facts) -> str:
    """Less than sea water holds."""
    return _told(
        facts,
        _(
            "{ion} {value} mg/L is low, sea water has about {natural}: retest first. Ask: dose"
            " {asked} {natural}"
        ),
    )


def high(facts: Facts) -> str:
    """More than sea water holds."""
    return _told(
        facts,
        _(
            "{ion} {value} mg/L is high, sea water has about {natural}: retest, dose none of it,"
            " small changes bring it down."
        ),
    )


def _told(facts: Facts, template: str) -> str:
    ion = names.label(str(facts["analyte"]))
    natural = plain(number(facts, "natural"), 0)
    return template.format(
        ion=ion[:1].upper() + ion[1:],
        value=plain(number(facts, "value"), 0),
        natural=natural,
        asked=str(facts["analyte"]),
    )
