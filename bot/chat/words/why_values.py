"""Why a value is too high or too low: the usual causes, and what of them this tank's record shows.

The causes are common practice, no source, but for those whose chemistry is named beside them.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words.names import label
from bot.chat.words.numbers import plain
from bot.chat.words.text import N_, _

FRESH: Final[Mapping[tuple[str, str], str]] = {
    ("ph", "high"): N_(
        "A high pH comes of little carbon dioxide (plants in light, strong air), of a high KH, or"
        " of what dissolves: limestone, coral sand, shells, cement."
    ),
    ("ph", "low"): N_(
        "A low pH comes of little KH, of much carbon dioxide (CO2 gas, crowding, a still surface)"
        " or of acids: peat, wood, and what filter bacteria make of ammonia."
    ),
    ("kh", "high"): N_(
        "KH comes with tap water, and from limestone, coral sand or shells; topping up with tap"
        " instead of RO or rain water adds to it each time."
    ),
    ("kh", "low"): N_(
        "KH is used up by the acid that filter bacteria make of ammonia, and by peat and wood. Soft"
        " tap, rain and RO water bring none. More food means more acid."
    ),
    ("gh", "high"): N_(
        "GH comes with tap water, from limestone and shells, and with salts of calcium and"
        " magnesium. What evaporates leaves it behind: top up with RO or rain water."
    ),
    ("gh", "low"): N_(
        "Soft tap, rain, RO and softened water have hardly any GH; shrimps, snails and plants take"
        " a little."
    ),
    ("conductivity", "high"): N_(
        "What evaporates leaves its salts behind; topping up with tap, fertiliser and salts add"
        " more."
    ),
    ("conductivity", "low"): N_("Soft water in changes and top-ups thins it: RO, rain, soft tap."),
    ("salinity", "high"): N_("Water evaporates and salt stays; or salt or salt water went in."),
    ("salinity", "low"): N_("Fresh water or much rain went in, or salt water was lost."),
}
SEA: Final[Mapping[tuple[str, str], str]] = {
    ("ph", "high"): N_(
        "A high pH comes of little carbon dioxide (light, open windows, strong skimming) or of"
        " limewater and carbonate that went in."
    ),
    ("ph", "low"): N_(
        "A low pH in the sea is mostly carbon dioxide of the room's air: open a window, move the"
        " surface. At night it is lowest. After that comes a low KH."
    ),
    ("kh", "high"): N_(
        "KH comes from dosing, from fresh salt mixes, and where corals grow little."
    ),
    ("kh", "low"): N_(
        "Corals, coralline algae and snails take KH with calcium: 2.8 °dH for 20 mg/L. Falling lime"
        " does too, where pH, KH or calcium went too high."
    ),
    ("calcium", "high"): N_("Calcium comes from dosing, reactors and salt mixes rich in it."),
    ("calcium", "low"): N_("Corals, coralline algae and snails take calcium together with KH."),
    ("magnesium", "high"): N_("Magnesium comes from dosing and from salt mixes rich in it."),
    ("magnesium", "low"): N_(
        "Magnesium falls slowly with growth and with changes to a mix that has little. Measure"
        " salinity first: thin water has little of all."
    ),
    ("salinity", "high"): N_(
        "Water evaporates and salt stays: top up with RO water each day, never with salt water."
    ),
    ("salinity", "low"): N_(
        "Too much fresh water went in, or salt water was lost: skimmer, leaks, changes with a thin"
        " mix. Check the meter with a reference too."
    ),
}
BOTH: Final[Mapping[tuple[str, str], str]] = {
    ("ammonia", "high"): N_(
        "Ammonia comes of a young or harmed filter (cleaned, dried, medicine), too much food or too"
        " many animals, something dead, or chloramine in tap water."
    ),
    ("nitrite", "high"): N_(
        "Nitrite is the second stage of a young filter, or of one that was harmed: cleaned too"
        " well, left without power, or treated."
    ),
    ("nitrate", "high"): N_(
        "Nitrate is where all food ends. It builds up between changes, and tap water and fertiliser"
        " can bring their own: measure the tap."
    ),
    ("nitrate", "low"): N_("Plants, algae and large changes take nitrate."),
    ("phosphate", "high"): N_(
        "Phosphate comes with food, with dead matter, and with some tap water and fertiliser."
    ),
    ("phosphate", "low"): N_("Plants, algae and absorbers take phosphate."),
    ("temperature", "high"): N_(
        "Warmth comes of the room, sun, lamps and pumps, or of a heater that sticks: feel it, and"
        " look at its lamp."
    ),
    ("temperature", "low"): N_(
        "Cold comes of a heater that is off, too small or out of the water, of a cold room, or of"
        " cold new water."
    ),
    ("oxygen", "low"): N_(
        "Oxygen is low where water is warm, crowded or still, where much rots, and at night among"
        " plants. More air at once."
    ),
}


def causes(analyte: str, way: str, *, sea: bool) -> str | None:
    """The usual causes; None where none are known of that value."""
    table = {**BOTH, **(SEA if sea else FRESH)}
    told = table.get((analyte, way))
    return None if told is None else _(told)


def by_carbon(co2: float, *, little: bool) -> str:
    """What pH and KH tell of it."""
    told = (
        _("By pH and KH there is about {co2} mg/L of CO2 here: little.")
        if little
        else _("By pH and KH there is about {co2} mg/L of CO2 here: that holds pH down.")
    )
    return told.format(co2=plain(co2, 0 if co2 >= 10.0 else 1))


def by_source(analyte: str, value: float, unit: str) -> str:
    """The water it is filled from has it."""
    told = _("Your source has {name} {value}{unit}: much of it comes with the water.")
    return told.format(name=label(analyte), value=plain(value, 1), unit=unit)


def as_measured(tank: str, told: str) -> str:
    """The last reading, before its causes."""
    return _("{tank}: {reading}.").format(tank=tank, reading=told)
