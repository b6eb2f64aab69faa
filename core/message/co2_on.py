"""``turned co2 back on``: the gas is told to be on again, or up; nothing is asked."""

from __future__ import annotations

from core.message.word_classes import said


def turned_on(text: str) -> bool:
    """Whether a text says nothing but that CO2 was turned on or up.

    Examples
    --------
    >>> turned_on("turned co2 back on"), turned_on("CO2 wieder angemacht")
    (True, True)
    >>> turned_on("turned co2 off"), turned_on("should i turn co2 on?"), turned_on("co2 30")
    (False, False, False)
    """
    if "?" in text:
        return False
    told = said("co2_on.txt", text, small=True)
    return told is not None and told.has("co2", "on") and not told.has("never") and not told.numbers
