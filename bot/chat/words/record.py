"""Words about all that is on record of a tank, told or summed up."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from typing import Final

from bot.chat.words import names, numbers
from bot.chat.words.text import _, ngettext

SAME: Final = 1e-6
"""Values nearer than this are one, in their canonical unit."""


def head(tank: str, count: int) -> str:
    """How much of the record follows."""
    told = ngettext(
        "{tank}: {count} entry on record for that:",
        "{tank}: {count} entries on record for that, the newest first:",
        count,
    )
    return told.format(tank=tank, count=count)


def nothing(tank: str) -> str:
    """Nothing was told then."""
    return _("{tank}: nothing on record for that.").format(tank=tank)


def last(told: str) -> str:
    """What is on record nearest to what was asked about."""
    return _("The last on record: {told}").format(told=told)


def none_in(tank: str, substance: str | None) -> str:
    """Nothing went in then, as far as anybody said."""
    if substance is None:
        return _("{tank}: no dose on record for that.").format(tank=tank)
    told = _("{tank}: no {substance} on record for that.")
    return told.format(tank=tank, substance=names.substance(substance))


def total(tank: str, sums: Mapping[str, Mapping[str, float]]) -> str:
    """What went in, added up."""
    told = names.listed([_summed(name, of) for name, of in sums.items()])
    return _("{tank}: {told} in all.").format(tank=tank, told=told)


def _summed(substance: str, of: Mapping[str, float]) -> str:
    """One substance with its amounts. [g, mL, spoons]"""
    name = names.substance(substance) if substance else _("something without a name")
    amounts = []
    if "grams" in of:
        amounts.append(numbers.grams(of["grams"]))
    if "millilitres" in of:
        amounts.append(f"{numbers.plain(of['millilitres'], 1)} mL")
    if (spoons := of.get("spoons")) is not None:
        counted = ngettext("{count} teaspoon", "{count} teaspoons", round(spoons))
        amounts.append(counted.format(count=numbers.plain(spoons, 2)))
    if not amounts:
        return _("{name}, nobody told how much").format(name=name)
    return _("{amounts} of {name}").format(amounts=names.both(amounts), name=name)


def counted(count: int, first: datetime, now: datetime) -> str:
    """In how many doses, and since when."""
    told = ngettext("One dose: {when}.", "{count} doses, the first {when}.", count)
    return told.format(count=count, when=numbers.when(first, now))


def spoons_unweighed() -> str:
    """Spoons add up to no grams."""
    return _("A spoon is no measure: how many grams that was is not known.")


def moved(tank: str, analyte: str, by: float, *, since: bool = False) -> str:
    """Which way a value went between its two newest readings, or `since` a day. [canonical unit]"""
    if abs(by) < SAME:
        template = _("{tank}: {name} read the same both times. The newest first:")
    elif since and by > 0.0:
        template = _("{tank}: {name} rose between these two readings, the newest first:")
    elif since:
        template = _("{tank}: {name} fell between these two readings, the newest first:")
    elif by > 0.0:
        template = _("{tank}: {name} rose between its last two readings, the newest first:")
    else:
        template = _("{tank}: {name} fell between its last two readings, the newest first:")
    return template.format(tank=tank, name=names.label(analyte))


def no_two(tank: str, analyte: str) -> str:
    """One reading or none tells no way."""
    told = _("{tank}: two readings of {name} tell that, and I have not got two.")
    return told.format(tank=tank, name=names.label(analyte))
