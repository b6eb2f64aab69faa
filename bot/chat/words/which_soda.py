"""Which soda went in: baking or washing soda."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.numbers import plain
from bot.chat.words.text import _


def which(kh: float | None) -> list[str]:
    """Ask it, with what the weaker of them does at the least. [°dH]"""
    lines = [_("Which soda was it? Until that is clear put in nothing more; test pH and KH now.")]
    if kh is not None:
        told = _(
            "As baking soda KH +{rise} °dH; as washing soda half as much again and more, and pH"
            " jumps at once."
        )
        lines.append(told.format(rise=plain(kh, 1)))
    return lines


def baking_meant() -> str:
    """For KH baking soda is meant, and no other that is called so."""
    return _("By baking soda (sodium bicarbonate): never washing soda or caustic soda.")


def it_was(substance: str) -> str:
    """The button for one of them."""
    return _("it was {soda}").format(soda=names.substance(substance))
