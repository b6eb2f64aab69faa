"""The same deed told of another tank, in words."""

from __future__ import annotations

from bot.chat.words.numbers import litres
from bot.chat.words.text import _


def how_much(tank: str, amount: float, *, fits: bool) -> list[str]:
    """Ask how many litres it was in the other tank; its own volume may not hold so many."""
    if fits:
        told = _("{volume} in {tank} as well? If it was another amount, send it: {tank} too 10 l")
    else:
        told = _("{volume} is more than {tank} holds. How much was it there? Send: {tank} too 10 l")
    return [told.format(volume=litres(amount), tank=tank)]


def so_much(tank: str, amount: float) -> str:
    """The button of the same amount."""
    return _("{volume} in {tank}").format(volume=litres(amount), tank=tank)


def volume_or_change(tank: str, held: float, said: float) -> list[str]:
    """A tank with another volume on record, and litres beside its name."""
    told = _("{tank} is down as {held}. What are the {said}? Nothing is stored yet.")
    return [told.format(tank=tank, held=litres(held), said=litres(said))]


def was_changed(tank: str, amount: float) -> str:
    """The button that makes it a water change."""
    return _("changed {volume} of {tank}").format(volume=litres(amount), tank=tank)


def holds(tank: str, amount: float) -> str:
    """The button that makes it the tank's volume."""
    return _("{tank} holds {volume}").format(volume=litres(amount), tank=tank)
