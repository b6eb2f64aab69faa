"""Words of what is lowered by new water."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.numbers import plain
from bot.chat.words.text import _


def by_water(analyte: str) -> str:
    """How it is lowered at all."""
    if analyte == "nitrate":
        return _("Change water for some with less nitrate, feed less, let plants grow.")
    told = _("{name} is lowered by changing water for some with less of it, a little a day.")
    return told.format(name=names.label(analyte))


def no_need(now: float, limit: float) -> str:
    """Nitrate is within its limit; how it is lowered all the same follows."""
    told = _("No need: nitrate {now} is within {limit}. To lower it change water, feed less:")
    return told.format(now=plain(now, 0), limit=plain(limit, 0))


def low_already(tank: str, kh: float) -> list[str]:
    """KH may not fall any further, and this water would take it down. [°dH]"""
    return [
        _("{tank}: not with this water: KH {kh} °dH must not get lower, or pH can fall.").format(
            tank=tank, kh=plain(kh, 1)
        ),
        _("Raise KH first, for example: dose kh 5"),
    ]
