"""Words for what plants bear. None begins with yes or no: both ways are asked."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import names
from bot.chat.words.levels import unit
from bot.chat.words.numbers import plain, span
from bot.chat.words.text import _, ngettext
from core.advice.livestock import Misfit
from core.advice.plants import Borne

SHOWN = 3


def borne(found: Borne, tank: str) -> list[str]:
    """How many kinds of plants bear a water, and what is too much for the others."""
    water = ", ".join(
        f"{names.label(name)} {plain(number, 1)}{unit(name)}"
        for name, number in found.values.items()
    )
    if not found.values:
        return [
            _("{tank}: pH, GH and KH decide what plants bear; I know none of them.").format(
                tank=tank
            ),
            _("Measure them and send, for example: ph 7 kh 4 gh 8"),
        ]
    well = found.of - len(found.against)
    if not found.on_record and not found.against:
        told = _("{tank}, for plants: {water} suits all {all} common kinds that I know.")
    elif not found.on_record:
        told = _("{tank}, for plants: {water} suits {count} of {all} common kinds.")
    elif found.against:
        told = _("{tank}, for its plants: {water} suits {count} of {all} kinds on record.")
    else:
        told = _("{tank}, for its plants: {water} suits all that are on record.")
    lines = [told.format(tank=tank, water=water, count=well, all=found.of)]
    if found.against:
        lines.append(against(found.against))
    practice = _("Common practice, no source.")
    lines[-1] = f"{lines[-1]} {practice}"
    return lines


def against(found: Sequence[Misfit]) -> str:
    """Whom it does not suit, and what they want."""
    told = "; ".join(
        _("{name} wants {label} {between}{unit}").format(
            name=each.species.name,
            label=names.label(each.analyte),
            between=span(each.span.low, each.span.high, 1),
            unit=unit(each.analyte),
        )
        for each in found[:SHOWN]
    )
    left = len(found) - SHOWN
    if left <= 0:
        return _("Not so well: {told}.").format(told=told)
    return ngettext(
        "Not so well: {told}; and {count} kind more.",
        "Not so well: {told}; and {count} kinds more.",
        left,
    ).format(told=told, count=left)


def food(analytes: Sequence[str]) -> str:
    """What of a salt feeds plants."""
    return _("The {what} in it feeds plants; too much at once feeds algae.").format(
        what=names.listed([names.label(each) for each in analytes])
    )


def salt() -> str:
    """Salt is the worst that plants are given."""
    return _("Salt stays until water is changed: most plants bear 1 g/kg (0.1 %) at the very most.")


def unknown_in(substance: str) -> str:
    """What went in is no salt that is known."""
    return _(
        "I do not know what is in {substance}: its label must say that plants bear it."
    ).format(substance=substance)


def animals_first() -> str:
    """Plants bear faster moves than animals."""
    return _("Plants bear faster changes than animals, whose limits set the steps of a day.")


def no_sea(tank: str) -> list[str]:
    """The table has plants of fresh water only."""
    return [
        _("{tank}: I know what plants of fresh water bear, not those of the sea.").format(tank=tank)
    ]
