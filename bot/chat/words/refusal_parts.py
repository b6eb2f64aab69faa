"""What the words of several refusals are made of."""

from __future__ import annotations

from collections.abc import Mapping

from bot.chat.words import names
from bot.chat.words.levels import unit
from bot.chat.words.numbers import plain
from bot.chat.words.text import _

Facts = Mapping[str, float | str]


def analyte_of(facts: Facts) -> str:
    """The analyte of a refusal, in words; KH where none is told."""
    name = str(facts.get("analyte", "kh"))
    return names.analyte(name)


def substance_of(facts: Facts) -> str:
    """The substance of a refusal, as it is said."""
    return names.said(str(facts["substance"]))


def acid_named(facts: Facts) -> str:
    """The acid that was named, or acids."""
    return substance_of(facts) if "substance" in facts else _("strong acid")


EXAMPLES = {
    "calcium": "400",
    "magnesium": "1300",
    "salinity": "34",
    "nitrate": "10",
    "phosphate": "0.2",
    "potassium": "10",
    "iron": "0.05",
    "nitrite": "0.5",
}


def past_animals(facts: Facts) -> list[str]:
    """What is refused for the animals that it would not suit."""
    fields = {
        "species": str(facts["species"]),
        "analyte": names.label(str(facts["analyte"])),
        "asked": str(facts["analyte"]),
        "end": number(facts, "to"),
        "high": number(facts, "highest"),
        "unit": unit(str(facts["analyte"])),
    }
    if not facts["species"]:
        told = [_("No: {analyte} {end} g/kg is too much for fresh-water animals.")]
    else:
        told = [_("No: {species} suit {analyte} up to {high}, not {end}{unit}.")]
        told.append(_("Stay within that, for example: dose {asked} {high}"))
    return [line.format(**fields) for line in told]


def number(facts: Facts, name: str) -> str:
    """A fact as a number of two digits behind the point at most."""
    return plain(float(facts[name]), 2)


def with_unit(facts: Facts, name: str) -> str:
    """A fact with the unit of the analyte."""
    return f"{number(facts, name)}{unit(str(facts.get('analyte', 'kh')))}"


def lowered(facts: Facts) -> list[str]:
    """What brings a value down; in the sea pure water would bring salinity down with it."""
    if facts.get("analyte", "kh") in {"kh", "gh"}:
        return [
            _(
                "To lower it in fresh water, small changes with RO or rain: how much can i change"
                " with ro. In the sea let the animals use it up."
            )
        ]
    if facts["analyte"] in {"calcium", "magnesium"}:
        return [_("Let the animals use it up; usual water changes bring it back as well.")]
    return [_("To lower it, small water changes, a day apart: how much can i change")]


def read_as(facts: Facts, name: str) -> str:
    """An analyte with its number, where that is known."""
    if name not in facts:
        return names.label(name)
    told = _("{name} {amount}")
    amount = f"{number(facts, name)}{unit(name)}"
    return told.format(name=names.label(name), amount=amount)
