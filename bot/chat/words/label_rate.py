"""Words for what a label gives, scaled to a tank."""

from __future__ import annotations

from bot.chat.words.numbers import litres, plain
from bot.chat.words.text import _
from core.message.label_rate import Rate


def scaled(rate: Rate, much: float, tank: str, volume: float) -> list[str]:
    """So much for the tank. [the label's unit, L]"""
    if rate.often == "daily":
        told = _("{tank} ({volume}): {much} {unit} a day, by that label alone.")
    elif rate.often == "weekly":
        told = _("{tank} ({volume}): {much} {unit} a week, by that label alone.")
    else:
        told = _("{tank} ({volume}): {much} {unit} each time, by that label alone.")
    return [
        told.format(tank=tank, volume=litres(volume), much=plain(much, 1), unit=rate.unit),
        _("I do not know what is in it: their number, not checked by me. Nothing is stored."),
        _("Where it tells what it adds, send it: my food: 5 ml per 50 l raises nitrate 2"),
    ]


def needs_litres(rate: Rate) -> list[str]:
    """The tank's volume is not known."""
    told = _("{amount} {unit} for each {litres}, by that label. How many litres has the tank?")
    return [
        told.format(amount=plain(rate.amount, 1), unit=rate.unit, litres=litres(rate.litres)),
        _("Net: the water itself. Send it with the tank, for example: /tank new Fern 90 l"),
    ]
