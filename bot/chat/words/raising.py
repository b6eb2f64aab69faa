"""The gate before any raising of KH or pH, in words."""

from __future__ import annotations

from bot.chat.words.numbers import plain
from bot.chat.words.text import _


def measure_first() -> str:
    """Nobody measured ammonia of late."""
    return _("Measure ammonia first: a higher pH makes poison of it. Send for example: ammonia 0")


def ammonia_first(tank: str, total: float) -> str:
    """Ammonia stands before any part, though the gate may bear the smallest. [mg/L]"""
    return _(
        "{tank}: ammonia {total} mg/L comes first: a higher pH makes poison of it. Stop feeding,"
        " change a little, and measure it again before any part."
    ).format(tank=tank, total=plain(total, 2))


def leave_soft(tank: str) -> str:
    """The animals on record are at home in such water, or it is soft on purpose."""
    return _(
        "{tank}: kept soft for what lives in it: while pH is steady, leave KH as it is."
    ).format(tank=tank)


def one_small_part(part: float) -> str:
    """With so little KH no whole degree is planned. [°dH]"""
    return _(
        "With KH this low one small part only, {part} °dH at most: pH after 1 h and after 24 h"
        " decides the next. Ask: dose kh +{part}"
    ).format(part=plain(part, 2))
