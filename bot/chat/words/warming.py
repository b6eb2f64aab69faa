"""The warmth of new water in words."""

from __future__ import annotations

from bot.chat.words.numbers import litres, plain
from bot.chat.words.text import _
from core.advice.warming import SCALDS


def how() -> list[str]:
    """A number is missing."""
    return [_("Send for example: how much hot water for 30 l at 25 from 12 and 55")]


def impossible(wanted: float, cold: float, hot: float) -> list[str]:
    """No mix of the two is that warm."""
    return [
        _("No mix of {cold} and {hot} °C is {wanted} °C. Measure both and send them again.").format(
            cold=plain(cold, 1), hot=plain(hot, 1), wanted=plain(wanted, 1)
        ),
    ]


def mix(volume: float, wanted: float, needed: float, hot: float) -> list[str]:
    """How much of each, what to check, and the danger of hot water."""
    lines = [
        _("{needed} hot and {cold} cold make {volume} of {wanted} °C.").format(
            needed=litres(needed),
            cold=litres(volume - needed),
            volume=litres(volume),
            wanted=plain(wanted, 1),
        ),
        _("Stir and measure before it goes in; a tank moves 1 °C an hour and 2 °C a day at most."),
        _("Hot tap water can carry copper and softener salt: run it long, or use a kettle."),
    ]
    if hot > SCALDS:
        lines.append(_("Water this hot scalds: cold water into the bucket first, then the hot."))
    return lines


def warm_first(coldest: float) -> str:
    """How warm the new water must be for the share that was asked about."""
    return _("Warm the new water to {coldest} °C or more for that share.").format(
        coldest=plain(coldest, 1)
    )


def cool_first(warmest: float) -> str:
    """How warm the new water may be at most for the share that was asked about."""
    return _("Let the new water cool to {warmest} °C or less for that share.").format(
        warmest=plain(warmest, 1)
    )
