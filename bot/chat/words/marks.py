"""English of the core that is said as it is, marked for translation: classes, groups, sources."""

from __future__ import annotations

from typing import Final

from bot.chat.words.text import N_

WATERS: Final = frozenset({N_("fresh"), N_("brackish"), N_("marine"), N_("pond")})
"""Kinds of tanks and of animals' waters."""

GROUPS: Final = frozenset(
    {
        N_("brackish"), N_("community"), N_("corals"), N_("goldfish and pond"), N_("livebearers"),
        N_("marine fish"), N_("marine invertebrates"), N_("plants"), N_("rift lakes"),
        N_("shrimps and snails"), N_("soft water"),
    }
)  # fmt: skip
"""Groups of the animals' table."""

CLASSES: Final = frozenset(
    {
        N_("very soft"), N_("soft"), N_("medium"), N_("fairly hard"), N_("moderately hard"),
        N_("hard"), N_("very hard"), N_("too low for most fish"), N_("low"), N_("enough"),
        N_("high"),
    }
)  # fmt: skip
"""Words of the classes of hardness and of the buffer."""

SCHEMES: Final = frozenset(
    {N_("USGS"), N_("WRMG 2007"), N_("EPA"), N_("the trade"), N_("common practice"),
     N_("pond texts")}
)  # fmt: skip
"""Whose classes they are."""

BANDS: Final = frozenset(
    {
        N_("0 to 60 mg/L"), N_("61 to 120 mg/L"), N_("121 to 180 mg/L"), N_("over 180 mg/L"),
        N_("under 1.5 mmol/L"), N_("1.5 to 2.5 mmol/L"), N_("over 2.5 mmol/L"),
        N_("0 to 3 °dH"), N_("3 to 6 °dH"), N_("6 to 11 °dH"), N_("8 to 12 °dH"),
        N_("11 to 22 °dH"), N_("over 22 °dH"),
        N_("under 20 mg/L"), N_("20 to 60 mg/L"), N_("60 to 200 mg/L"), N_("over 200 mg/L"),
        N_("under 7 °dH in the sea"), N_("7 to 12 °dH in the sea"),
        N_("over 12 °dH in the sea"),
    }
)  # fmt: skip
"""Of what the classes are said."""

SOURCES: Final = frozenset(
    {
        N_("0.02 mg/L: WEF MOP 8"),
        N_(
            "10 to 1 by mass: Durborow, Crosby & Brunson 1997, SRAC 462; not for every species:"
            " Tomasso 1986; levels: common practice"
        ),
        N_("copper: Wurts & Perschbacher 1994; an acid's CO2: computed; the rest: common practice"),
        N_("pure water: UF/IFAS VM 86; the rest: common practice"),
        N_("60 mg/L CaCO3: common practice; marine: Boyd, 100 to 130 mg/L in the sea"),
        N_("Camargo, Alonso & Salamanca 2005; corals: common practice"),
        N_(
            "nitrate: Camargo et al. 2005; potassium: from memory; iron, phosphate: common practice"
        ),
        N_("Standard Methods 2340 B"),
        N_("reference composition: Millero et al. 2008; shares: common practice"),
        N_("mean of the sea: Boyd; margins and warmth: common practice, no source"),
        N_("Standard Methods 2510 A; margins: our judgement"),
        N_("common practice, no source"),
        N_("from memory"),
        N_("grown lengths: from memory; litres and numbers: common practice, no source"),
        N_("invertebrates: common practice; low alkalinity: Wurts & Perschbacher 1994"),
        N_("slopes of Theil and Sen; limits as for the analyte"),
        N_("step limits and simulated mixing; common practice"),
        N_("the animals' table, source by source"),
        N_(
            "un-ionised share: Emerson et al. 1975, in salt water Clegg & Whitfield 1995; 0.05"
            " mg/L: UF/IFAS FA16; total: US EPA 2013, 822-R-13-001; 0.02 mg/L: common practice"
        ),
        N_("from memory, not looked up"),
        N_(
            "Froese, R. and D. Pauly (editors), FishBase, as cached on 14 February 2013 in the R"
            " package rfishbase (fields pH range and dH range; CC BY-NC 3.0); single values, cited"
            " species by species"
        ),
        N_(
            "Camargo, Alonso & Salamanca 2005, Chemosphere 58:1255-1267 (grade A): 10 mg/L"
            " nitrate-N harms sensitive fresh-water animals, 20 mg/L marine ones, in the long run"
        ),
        N_(
            "Wurts & Perschbacher 1994, Aquaculture 125:73-79 (grade A): copper kills the more,"
            " the lower the alkalinity"
        ),
    }
)
"""What a finding or a range rests on."""
