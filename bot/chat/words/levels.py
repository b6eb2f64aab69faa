"""What values are too much or too little: limits asked for, and values judged for no known kind."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words.names import label
from bot.chat.words.numbers import plain, small
from bot.chat.words.text import N_, _
from core.advice import limits
from core.analytes import ANALYTES

FIXED: Final[Mapping[str, str]] = {
    "nitrite": N_(
        "Nitrite should be 0 with animals. In fresh water I warn from {nitrite_warn} mg/L as NO2"
        " and call it an alarm from {nitrite_alarm}; in sea water it is a sign, hardly a poison."
    ),
    "chlorine": N_(
        "Chlorine should be 0 with animals: over {chlorine} mg/L, free or total, is too much,"
        " and most kits cannot see that little."
    ),
    "copper": N_(
        "Copper should be 0 where shrimps, snails or corals live: they die of less than most"
        " kits can see. Fish bear little of it in soft water."
    ),
    "oxygen": N_("Oxygen should stay over {oxygen_warn} mg/L; under {oxygen_alarm} is an alarm."),
    "co2": N_("CO2 over {co2} mg/L is a danger to animals; without plants none is needed."),
    "kh": N_(
        "KH under {kh_fresh} °dH lets pH fall in fresh water, under {kh_marine} °dH in the sea."
        " Water kept soft for soft-water animals may have less, watched closely."
    ),
    "gh": N_("GH under {gh} °dH has too few minerals for any animal."),
}
SAME: Final = {"total_chlorine": "chlorine"}


def fixed(analyte: str) -> str | None:
    """The limit of an analyte that depends on nothing else, or None."""
    told = FIXED.get(SAME.get(analyte, analyte))
    if told is None:
        return None
    return _(told).format(
        nitrite_warn=plain(limits.NITRITE_WARN, 1),
        nitrite_alarm=plain(limits.NITRITE_ALARM, 1),
        chlorine=plain(limits.CHLORINE_WARN, 2),
        oxygen_warn=plain(limits.OXYGEN_WARN, 0),
        oxygen_alarm=plain(limits.OXYGEN_ALARM, 0),
        co2=plain(limits.CO2_WARN, 0),
        kh_fresh=plain(limits.KH_LOW_FRESH, 1),
        kh_marine=plain(limits.KH_LOW_MARINE, 0),
        gh=plain(limits.GH_LOWEST, 0),
    )


def ammonia() -> str:
    """Ammonia has no safe level."""
    return _("Ammonia should be 0 with animals: no amount of it is called safe.")


def ammonia_from(total_n: float, ph: float, temperature: float) -> str:
    """From which total ammonia is warned of at a pH."""
    told = _("At pH {ph} and {temperature} °C I warn over {total} mg/L in all (counted as N).")
    return told.format(ph=plain(ph, 2), temperature=plain(temperature, 1), total=small(total_n))


def ammonia_needs_ph() -> str:
    """How poisonous ammonia is depends on pH."""
    return _("How little harms depends on pH and warmth. Ask: safe ammonia at ph 8 and 26 c")


def nitrate(limit: float | None) -> str:
    """From where nitrate is warned of; None in a sea without corals."""
    if limit is None:
        return _(
            "Nitrate: in the sea without corals I know no limit. Keep it low by water changes."
        )
    told = _("Nitrate over {limit} mg/L as NO3 is too much here: I warn over it.")
    return told.format(limit=plain(limit, 0))


def span(analyte: str, low: float, high: float, kinds: str) -> str:
    """Where a value suits all animals on record."""
    told = _("For {kinds}: {name} {low}–{high}{unit}.")
    return told.format(
        name=label(analyte),
        low=plain(low, 1),
        high=plain(high, 1),
        unit=unit(analyte),
        kinds=kinds,
    )


def no_span(analyte: str, kinds: str) -> str:
    """No value suits all animals on record."""
    return _("No {name} suits all of {kinds}.").format(name=label(analyte), kinds=kinds)


def depends(analyte: str) -> str:
    """Only the animals decide."""
    told = _(
        "Which {name} is right depends on who lives there: send them (added 6 …) and I tell for"
        " them, or ask: can i keep …"
    )
    return told.format(name=label(analyte))


def too_high_for(analyte: str, value: float, many: int, of: int) -> str:
    """A value that is over the range of some of the kinds that are known."""
    told = _("{name} {value}{unit} is too high for {many} of the {of} kinds that I know.")
    return _told_of(told, analyte, value, many, of)


def too_low_for(analyte: str, value: float, many: int, of: int) -> str:
    """A value that is under the range of some of the kinds that are known."""
    told = _("{name} {value}{unit} is too low for {many} of the {of} kinds that I know.")
    return _told_of(told, analyte, value, many, of)


def no_newcomers(tank: str, poison: str) -> str:
    """What was measured stands against new animals."""
    told = _("No new animals in {tank} now: there is {poison}. Wait until it reads 0.")
    return told.format(tank=tank, poison=label(poison))


def not_before_tested(tank: str) -> str:
    """What was put in of late stands against new animals."""
    return _("No new animals in {tank} now: test the water first.").format(tank=tank)


def after_deaths(tank: str) -> list[str]:
    """Animals died of late: the cause comes before new ones."""
    return [
        _("Not now: animals died in {tank} of late. Find out why before others come.").format(
            tank=tank
        ),
        _("Test ammonia, nitrite, pH and temperature, and send them."),
    ]


def tell_who() -> str:
    """Ask for the animals, for whom it can be judged."""
    return _("Tell me who lives there (added 6 …) and I judge for them.")


def unit(analyte: str) -> str:
    """The unit behind a number, with a blank before it; empty for pH."""
    told = ANALYTES[analyte].unit
    return f" {told}" if told and told != "pH" else ""


def _told_of(template: str, analyte: str, value: float, many: int, of: int) -> str:
    return template.format(
        name=label(analyte), value=plain(value, 2), unit=unit(analyte), many=many, of=of
    )
