"""Words for what a tank should have by now, reckoned and not measured."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from bot.chat.words import names
from bot.chat.words.sources import figure
from bot.chat.words.text import _


def estimate(tank: str, values: Mapping[str, float], since: str) -> list[str]:
    """What it should have, and since which test."""
    told = _("{tank}, by reckoning and not measured: about {values}.")
    listed = ", ".join(figure(name, value) for name, value in values.items())
    return [
        told.format(tank=tank, values=listed),
        _("From the last readings and this: {since}.").format(since=since),
        _("What the animals, plants and food do is not in it: test to know. Nothing is stored."),
    ]


def not_reckoned(tank: str, analytes: Sequence[str], since: str) -> list[str]:
    """It cannot be reckoned: a poison, a pH, or a deed of which too little is known."""
    told = _("{tank}: {name} cannot be reckoned from what I know. Only a test tells it now.")
    listed = names.listed([names.label(each) for each in analytes])
    return [
        told.format(tank=tank, name=listed),
        _("Since the last reading: {since}.").format(since=since),
    ]


def nothing_since(tank: str, values: Mapping[str, float]) -> list[str]:
    """Nothing was logged since the last readings: those stand."""
    told = _("{tank}: nothing is logged since the last readings: {values}.")
    listed = ", ".join(figure(name, value) for name, value in values.items())
    return [
        told.format(tank=tank, values=listed),
        _("If you changed water or dosed, tell me, for example: changed 30%"),
    ]


def should_be(analyte: str, value: float) -> str:
    """What an analyte should be, behind its last reading."""
    told = _("By reckoning about {value} now, not measured; what lives there is not in it.")
    return told.format(value=figure(analyte, value))


def at_best(analyte: str, before: float, least: float) -> str:
    """How low an analyte may be, where nobody knows what the new water has of it."""
    told = _("It was {before}; now {least} at best, if the new water has none.")
    return told.format(before=figure(analyte, before), least=figure(analyte, least))
