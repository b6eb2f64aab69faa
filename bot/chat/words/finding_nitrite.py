"""Nitrite in words, with what the kit showed where nobody said how it counts."""

from __future__ import annotations

from bot.chat.words.finding_parts import Facts, number
from bot.chat.words.numbers import small
from bot.chat.words.text import _


def told(facts: Facts) -> str:
    """An amount of nitrite as the ion; where the kit's basis is not known, as it was typed too."""
    ion = small(number(facts, "nitrite"))
    if "typed" not in facts:
        return _("{nitrite} mg/L (as NO2)").format(nitrite=ion)
    return _("{typed} mg/L ({nitrite} as NO2, if your kit counts N)").format(
        typed=small(number(facts, "typed")), nitrite=ion
    )


def harms(facts: Facts) -> str:
    """Nitrite in fresh water; beside ammonia that air would turn to poison, air waits."""
    template = (
        _(
            "Nitrite {nitrite} harms fish: feed less, change up to a quarter (dechlorinated, same"
            " KH). Beside ammonia: more air only if they gasp."
        )
        if "ammonia" in facts
        else _(
            "Nitrite {nitrite} harms fish: aerate, feed less, change up to a quarter"
            " (dechlorinated, same KH), measure chloride."
        )
    )
    return template.format(nitrite=told(facts))


def eased(facts: Facts) -> str:
    """Nitrite beside enough chloride."""
    return _(
        "Nitrite {nitrite}, eased by chloride for the species tested; still find the cause."
    ).format(nitrite=told(facts))


def in_salt_water(facts: Facts) -> str:
    """Nitrite in the sea."""
    return _("Nitrite {nitrite}: still cycling; in salt water a sign, not a poison.").format(
        nitrite=told(facts)
    )


def seen(facts: Facts) -> str:
    """A trace of nitrite in fresh water: no limit is passed, and it should be 0 all the same."""
    template = (
        _(
            "Nitrite rose from 0 to {nitrite} and should be 0: feed little, test daily, change a"
            " little at the same KH."
        )
        if "was" in facts
        else _(
            "Nitrite {nitrite} should be 0: feed little, test daily, change a little at the same"
            " KH."
        )
    )
    return template.format(nitrite=told(facts))
