"""Words for why a plan or a change is as it was told."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words import names
from bot.chat.words.change_verdict import REASONS
from bot.chat.words.levels import unit
from bot.chat.words.numbers import plain
from bot.chat.words.text import N_, _, ngettext

BECAUSE: Final[Mapping[str, str]] = {
    "kh": N_("KH lifts pH with it, and a fast rise of pH harms gills and sets poison free."),
    "calcium": N_("Much of it at once falls out as lime, and takes the buffer with it."),
    "magnesium": N_("Animals of the sea set their salts by the water, which takes them days."),
    "salinity": N_("Animals balance salt against the water; a fast step swells or dries them."),
}
"""Why each has a step of the day; common practice, the words ours."""


def slow_plan(analyte: str, step: float, parts: int) -> list[str]:
    """Why salts go in over days."""
    name = names.capital(names.label(analyte))
    lead = ngettext(
        "{name} may rise by {step}{unit} a day at most, so {count} part.",
        "{name} may rise by {step}{unit} a day at most, so {count} parts.",
        parts,
    )
    if analyte == "kh":
        lead = ngettext(
            "{name} may rise by {step}{unit} a day, and never more than double: so {count} part.",
            "{name} may rise by {step}{unit} a day, and never more than double: so {count} parts.",
            parts,
        )
    reason = BECAUSE.get(
        analyte, N_("Animals set their salts by the water, and a sudden step costs them much.")
    )
    return [
        lead.format(name=name, step=plain(step, 1), unit=unit(analyte), count=parts),
        _(reason),
        _("And a test between shows whether it does what was reckoned. Common practice, no law."),
    ]


def slow_change(broken: str | None) -> list[str]:
    """Why water is changed in small steps."""
    if broken is None:
        return [_("That change was within the limits at once: nothing needs to be slower.")]
    return [
        _("Because at once {reason}.").format(reason=_(REASONS[broken])),
        _("Animals bear a small step a day; a large one can kill days later."),
    ]


def at_once_already() -> list[str]:
    """One part is all."""
    return [_("It is one part already: nothing has to wait but the retest after it.")]


def that_is_it(own: str) -> list[str]:
    """The salt that is asked about is the plan's own."""
    return [_("That plan is with {salt} already.").format(salt=names.substance(own))]


def brings_none(other: str, analyte: str) -> list[str]:
    """The salt asked about does not raise what is wished."""
    told = _("Because {salt} brings no {name}.")
    return [told.format(salt=names.substance(other), name=names.analyte(analyte))]


def does_as_well(own: str, other: str, analyte: str) -> list[str]:
    """Another salt would do; which, is a matter of what comes with it."""
    told = _("It would do with {salt} as well: what differs is what comes with the {name}.")
    lines = [told.format(salt=names.substance(other), name=names.analyte(analyte))]
    if {own.partition(" ")[0], other.partition(" ")[0]} == {"sodium", "potassium"}:
        lines.append(
            _("Sodium piles up; potassium feeds plants, but snails, shrimps, mussels bear little.")
        )
    lines.append(_("To see it so: with {salt}").format(salt=names.said(other)))
    return lines
