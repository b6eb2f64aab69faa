"""What the things are that are measured, in two short lines each.

Facts of the trade: common practice, no source, but for the numbers named with one.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words import names
from bot.chat.words.text import N_, _
from core.analytes import MEASURABLE

ENTRIES: Final[Mapping[str, tuple[str, ...]]] = {
    "kh": (
        N_(
            "KH (carbonate hardness, alkalinity) is the buffer: how much acid the water"
            " takes up before pH falls. 1 °dH = 17.8 ppm CaCO3 = 0.36 meq/L."
        ),
        N_(
            "Filter bacteria use it up and water changes bring it back. Low and falling is"
            " the danger. Ask: dose kh 6"
        ),
    ),
    "gh": (
        N_(
            "GH (general hardness) is calcium and magnesium together, which animals and"
            " plants take up. 1 °dH = 17.8 ppm CaCO3."
        ),
        N_("It does not hold pH; KH does. Either can be high without the other."),
    ),
    "ph": (
        N_("pH tells how acid water is: 7 is neutral, and each whole step is ten times."),
        N_(
            "It follows KH and carbon dioxide and swings over a day. Look at KH first;"
            " never chase pH."
        ),
    ),
    "ammonia": (
        N_(
            "Kits read total ammonia: poisonous NH3 and the milder ammonium. pH and warmth"
            " decide the share of NH3, so raising pH makes it worse."
        ),
        N_(
            "With animals it should be 0. Send it with pH and temperature and I tell how bad it is."
        ),
    ),
    "nitrite": (
        N_(
            "Filter bacteria make nitrite out of ammonia, others turn it into nitrate. In"
            " fresh water it poisons the blood; chloride helps some fishes, not all."
        ),
        N_("With animals it should be 0. In sea water it is a sign, hardly a poison."),
    ),
    "nitrate": (
        N_("Nitrate is the end of the filter's chain: plants and water changes take it out."),
        N_(
            "In fresh water I warn over 44 mg/L as NO3 (Camargo, Alonso & Salamanca 2005)."
            " Kits may count it as N, which is 4.43 times smaller."
        ),
    ),
    "phosphate": (
        N_("Phosphate comes with food and is taken up by plants and algae."),
        N_("Kits count it as PO4, or as P, which is 3.07 times smaller."),
    ),
    "co2": (
        N_(
            "Carbon dioxide is breathed out by animals and taken up by plants in the light;"
            " it lowers pH and leaves KH as it is."
        ),
        N_("Send pH and KH of one moment and ask co2. Over 30 mg/L is a danger to animals."),
    ),
    "conductivity": (
        N_("Conductivity counts all dissolved salts together, in µS/cm at 25 °C."),
        N_("It shows that the water changed, not which salt; TDS is the same said in mg/L."),
    ),
    "salinity": (
        N_(
            "Salinity is the salt in a kilogram of water; the sea has about 35 g/kg,"
            " specific gravity 1.026 at 25 °C."
        ),
        N_("Water that evaporates leaves its salt behind: top up with demineralised water."),
    ),
    "calcium": (
        N_(
            "Calcium is most of GH; corals, snails and shrimps build with it. The sea has"
            " about 412 mg/L."
        ),
        N_("Never dose it in one place or at one time with a buffer: lime falls out."),
    ),
    "magnesium": (
        N_("Magnesium is the other part of GH; plants need it. The sea has about 1284 mg/L."),
        N_("In the sea it keeps calcium and alkalinity dissolved."),
    ),
    "chlorine": (
        N_(
            "Chlorine and chloramine keep tap water clean and burn gills; over 0.02 mg/L is"
            " too much."
        ),
        N_("Treat the new water first. Chloramine sets ammonia free when it is treated."),
    ),
    "chloride": (
        N_("Chloride is what salt (sodium chloride) brings into the water. It is not chlorine."),
        N_(
            "It keeps nitrite out of many fishes' gills, so I look at it beside nitrite. Send"
            " for example: chloride 40"
        ),
    ),
    "potassium": (
        N_("Potassium is a food of plants. It is no part of GH, and few kits of it are exact."),
        N_("Potassium bicarbonate brings it along with KH. Send for example: potassium 10"),
    ),
    "iron": (
        N_("Iron is a food of plants that they need very little of; it falls out in days."),
        N_("Kits tell it roughly. Much of it helps nobody. Send for example: iron 0.1"),
    ),
    "copper": (
        N_("Copper kills shrimps, snails and corals at traces; soft water makes it worse."),
        N_("It comes from medicines, pipes and some foods. Send for example: copper 0.02"),
    ),
    "oxygen": (
        N_(
            "Oxygen dissolves where the surface moves; warm and salt water hold less. Plants"
            " make it by day and use it at night."
        ),
        N_("Lowest is before the light comes on: measure then. Send for example: oxygen 6"),
    ),
    "redox": (
        N_("Redox tells how strongly the water oxidises, in mV; probes drift."),
        N_("The trend of one probe says more than its number."),
    ),
}
SAME: Final = {"tds": "conductivity", "total_chlorine": "chlorine"}


def explained(analyte: str) -> list[str]:
    """What an analyte is, and what to do with that."""
    entry = ENTRIES.get(SAME.get(analyte, analyte))
    if entry is not None:
        return [_(line) for line in entry]
    name, unit = names.label(analyte), MEASURABLE[analyte].unit
    told = (
        _("I keep {name} as you send it in {unit}, and show how it moves.")
        if unit
        else _("I keep {name} as you send it, and show how it moves.")
    )
    return [
        told.format(name=name, unit=unit),
        _("Send for example: {name} 1, and: history of {name}").format(name=name),
    ]
