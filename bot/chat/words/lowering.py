"""Words of what is lowered by new water."""

from __future__ import annotations

from collections.abc import Mapping

from bot.chat.words import names
from bot.chat.words.numbers import plain
from bot.chat.words.sources import figure
from bot.chat.words.text import _


def by_water(analyte: str) -> str:
    """How it is lowered at all."""
    if analyte == "nitrate":
        return _("Change water for some with less nitrate, feed less, let plants grow.")
    if analyte == "salinity":
        return _("Salinity is lowered by taking out water and filling up with RO, a little a day.")
    told = _("{name} is lowered by changing water for some with less of it, a little a day.")
    return told.format(name=names.label(analyte))


def in_sea(tank: str, analyte: str, value: float | None, source: str | None) -> list[str]:
    """In the sea, what belongs to the salt is lowered by no fresh water; `source` has less."""
    name = names.label(analyte)
    lead = (
        _("{tank}: not with RO or tap, that only thins the salt. Let the animals use it up.")
        if value is None
        else _(
            "{tank}, {value}: not with RO or tap, that only thins the salt. Let the animals use"
            " it up."
        )
    )
    told = (
        _("Mixed, aerated a day, measured, tell me: /source saltmix salinity 35 kh 7 calcium 420")
        if source is None
        else _("How much at once, ask me: what if i change 10% with {source}").format(source=source)
    )
    return [
        lead.format(tank=tank, value=figure(analyte, value or 0.0)),
        _("Until then no dose that raises {name}.").format(name=name),
        _("Or change some with new salt water, as salty as the tank, that has less {name}.").format(
            name=name
        ),
        told,
    ]


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


def salt_enough(tank: str, now: float) -> str:
    """The sea is no saltier than the sea. [g/kg]"""
    told = _("{tank}: no need: salinity {now} g/kg is that of sea water, about 35.")
    return told.format(tank=tank, now=plain(now, 1))


def out_again(facts: Mapping[str, float | str]) -> str:
    """What an overdose asks for: new water alone takes it out, however it tempts to undo it."""
    told = _(
        "That is the {substance} that went in: only new water takes it out. Nothing to undo it, no"
        " acid; stop feeding, test again after each change."
    )
    return told.format(substance=names.said(str(facts["substance"])))


def usual_water(tank: str) -> str:
    """First aid after an overdose, with new water that nobody measured."""
    told = _(
        "{tank}: change a tenth to a quarter now with your usual dechlorinated water, as warm as"
        " the tank, and again after some hours."
    )
    return told.format(tank=tank)


def salt_topped_up(step: float, *, sea: bool) -> list[str]:
    """What salt water in the place of what evaporated does. [g/kg a day]; common practice."""
    if not sea:
        return [
            _("Not in fresh water: what evaporates leaves its salt; each time it gets saltier."),
            _("Top up with RO or distilled water."),
        ]
    return [
        _("Salinity rises: what evaporates is only water, and each time salt comes to it."),
        _(
            "To raise it that is the slow way: by {step} g/kg a day at most, measured daily. Where"
            " it is right already, top up with RO."
        ).format(step=plain(step, 1)),
    ]
