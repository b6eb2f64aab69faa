"""What the other words of the answers mean, in two short lines each; analytes are in `glossary`.

Facts of the trade: common practice, no source, but for the numbers named with one. Conversions
are those of `core.advice.hardness` (°dH) and of atomic weights (N).
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words.text import N_, _

_MINERALS: Final = N_(
    "Blended with tap water it lowers KH, GH and pH. Alone it holds no pH: it needs minerals"
    " first. Ask: how much salt for 20 l ro to gh 6 kh 4"
)
_UNIT: Final = N_("Ask for any number, for example: convert 8 dkh to ppm")

ENTRIES: Final[Mapping[str, tuple[str, ...]]] = {
    "ro": (
        N_(
            "RO water was pressed through a membrane (reverse osmosis) that holds back nearly all"
            " that is dissolved: its KH and GH are near 0."
        ),
        _MINERALS,
    ),
    "distilled": (
        N_("Distilled and demineralised water have no minerals: KH and GH are near 0."),
        _MINERALS,
    ),
    "rain": (
        N_(
            "Rain water has hardly any minerals: KH and GH are near 0. What lies on the roof and"
            " in the gutter comes with it."
        ),
        _MINERALS,
    ),
    "source_water": (
        N_(
            "Source water is what you fill your tank with: tap, well, rain, RO, or a blend. What"
            " is in it decides what a water change does."
        ),
        N_("Measure it once and send it: /source tap ph 7.6 kh 8 gh 12 no3 5"),
    ),
    "dechlorinator": (
        N_(
            "A dechlorinator (water conditioner; sodium thiosulfate is one) takes the chlorine out"
            " of tap water, which burns gills."
        ),
        N_(
            "It goes into the new water before the fish meet it, as its label says. Of chloramine"
            " it leaves some ammonia behind."
        ),
    ),
    "water_change": (
        N_(
            "A water change takes part of the tank's water out and puts new water in: nitrate"
            " gets less, used-up minerals come back."
        ),
        N_("Small and regular is better than large and rare. Ask: what if i change 20%"),
    ),
    "buffer": (
        N_(
            "A buffer takes up acid so that pH holds. In a tank that is bicarbonate, and the KH"
            " test counts it."
        ),
        N_("To add buffer is to raise KH, mostly with baking soda. Ask: dose kh 6"),
    ),
    "net_volume": (
        N_(
            "The net volume is the water that is really there: what a tank is sold as, less sand,"
            " stones and the empty rim, with the water in the filter."
        ),
        N_("It is often a tenth to a fifth less than the label says. Doses count on it."),
    ),
    "cycling": (
        N_(
            "Cycling is the growing of a filter: bacteria that turn ammonia into nitrite, then"
            " others that turn nitrite into nitrate. It takes weeks."
        ),
        N_("Until both stay at 0 animals are in danger: test daily. Ask: is it cycled"),
    ),
    "stage": (
        N_(
            "A new filter grows in two stages: in the first ammonia shows, in the second nitrite."
            " It is grown when both stay at 0."
        ),
        N_("Test both daily until then, and feed little."),
    ),
    "retest": (
        N_(
            "To retest is to measure the same again, with the same kit, before the next step: a"
            " slip of the kit must not become a dose."
        ),
        N_("Send what you find, for example: kh 5. I compare it with what I expected."),
    ),
    "air_stone": (
        N_(
            "An air stone breaks a pump's air into bubbles that move the surface; there water"
            " takes up oxygen and gives off carbon dioxide."
        ),
        N_("The filter's outlet at the surface does the same."),
    ),
    "aerate": (
        N_(
            "To aerate is to move the surface, with an air stone or the filter's outlet: water"
            " takes up oxygen there and gives off carbon dioxide."
        ),
        N_("pH rises a little when carbon dioxide leaves, and with it the poison in ammonia."),
    ),
    "remineralise": (
        N_(
            "To remineralise is to give RO or rain water its minerals: calcium and magnesium"
            " (GH) and bicarbonate (KH)."
        ),
        N_("Ask: how much salt for 20 l ro to gh 6 kh 4"),
    ),
    "usgs": (
        N_("USGS is the US Geological Survey. Its words for hardness, as CaCO3 (GH):"),
        N_(
            "soft to 60 ppm (3.4 °dH), moderately hard to 120 (6.7 °dH), hard to 180 (10.1 °dH),"
            " very hard above. Others draw other lines."
        ),
    ),
    "co2_injection": (
        N_(
            "CO2 injection feeds plants with carbon dioxide out of a bottle. It lowers pH while"
            " it runs and leaves KH as it is."
        ),
        N_("Over 30 mg/L is a danger to animals. Send pH and KH of one moment and ask: co2"),
    ),
    "degree": (
        N_(
            "°dH is the German degree of hardness, for KH (dKH) and GH (dGH):"
            " 1 °dH = 17.8 ppm CaCO3 = 0.36 meq/L."
        ),
        _UNIT,
    ),
    "ppm": (
        N_(
            "ppm is parts in a million; in fresh water the same as mg/L. Of KH and GH it counts"
            " CaCO3: 17.8 ppm = 1 °dH."
        ),
        _UNIT,
    ),
    "meq": (
        N_("meq/L counts acid that the water can take up: 1 meq/L = 2.8 °dH = 50 ppm CaCO3."),
        _UNIT,
    ),
    "mg_l": (N_("mg/L is a thousandth of a gram in a litre; in fresh water the same as ppm."),),
    "caco3": (
        N_(
            "CaCO3 is lime (calcium carbonate). KH and GH are often counted as if all of it were"
            " lime: 17.8 ppm CaCO3 = 1 °dH."
        ),
        _UNIT,
    ),
    "g_kg": (
        N_("g/kg is grams of salt in a kilogram of water; PSU and ppt say nearly the same."),
        N_("The sea has about 35 g/kg, specific gravity 1.026 at 25 °C."),
    ),
    "gravity": (
        N_(
            "Specific gravity (SG) tells how heavy water is beside pure water: the more salt, the"
            " heavier. The sea: about 1.026 at 25 °C, 35 g/kg."
        ),
        N_("It depends on warmth: read it at the temperature that the instrument is made for."),
    ),
    "conductivity": (
        N_("µS/cm (and mS/cm, a thousand of them) measure how well water conducts: its salts."),
        N_("More salt, more conductivity. It does not tell which salt."),
    ),
    "un_ionised": (
        N_(
            "Un-ionised ammonia (NH3) is the part of total ammonia that poisons; the rest,"
            " ammonium (NH4), is far milder. pH and warmth decide the share."
        ),
        N_("Kits show the total; send it with both, for example: ammonia 0.5 ph 7.6 temp 25"),
    ),
    "as_n": (
        N_(
            "As N counts only the nitrogen: 1 mg/L nitrate as N is 4.43 as NO3, nitrite as N 3.28"
            " as NO2, ammonia as N 1.29 as NH4."
        ),
        N_("The kit's leaflet says which it shows. Send for example: nitrate 5 as n"),
    ),
    "trend": (
        N_("A trend is how fast a value moves over several readings, and where it will be."),
        N_("Send readings with days between them and ask, for example: trend kh"),
    ),
    "invertebrate": (
        N_("Invertebrates are shrimps, crabs, snails, mussels, corals and their kin."),
        N_("Copper and many medicines kill them; most in fresh water bear no salt."),
    ),
    "fry": (N_("Fry are fishes that have just hatched or been born."),),
    "hydrate": (
        N_(
            "Many salts hold water in their crystals (dihydrate: 2 parts, heptahydrate: 7), and"
            " it is weighed with them; anhydrous has none."
        ),
        N_("The same grams do less of a hydrate: look which one the label names."),
    ),
    "drip": (
        N_(
            "To acclimatise is to bring new animals from the bag's water to the tank's, for"
            " example drop by drop through a thin hose."
        ),
        N_("Not for long where the bag holds ammonia. Send what is in the bag: bag: ph 6.8 kh 3"),
    ),
    "thiosulfate": (
        N_("Sodium thiosulfate binds chlorine at once: the simplest dechlorinator."),
        N_("Ask: how much thiosulfate for 100 l chlorine 1"),
    ),
    "baking_soda": (
        N_("Sodium bicarbonate is baking soda: it raises KH, and pH a little, nothing of GH."),
        N_("Not baking powder, not washing soda. Ask: dose kh 6"),
    ),
    "washing_soda": (
        N_("Sodium carbonate (soda ash, washing soda) drives pH up at once: not for fish tanks."),
        N_("Raise KH with baking soda (sodium bicarbonate). Ask: dose kh 6"),
    ),
    "potassium_bicarbonate": (
        N_("Potassium bicarbonate raises KH as baking soda does, and brings potassium with it."),
        N_("Ask: dose kh 6 with potassium bicarbonate"),
    ),
    "epsom_salt": (
        N_("Epsom salt is magnesium sulfate heptahydrate: it raises the magnesium part of GH."),
        N_("Ask: how much epsom salt to raise gh by 1"),
    ),
    "calcium_chloride": (
        N_("Calcium chloride raises the calcium part of GH. It gets hot as it dissolves."),
        N_("Dissolve a little at a time in cool water; never beside a buffer."),
    ),
    "gypsum": (
        N_("Gypsum is calcium sulfate: it raises the calcium part of GH and dissolves slowly."),
        N_("Ask: how much gypsum to raise gh by 1"),
    ),
    "sea_salt": (
        N_("Sea salt for tanks is made to give sea water in pure water: all its ions, and KH."),
        N_("Ask: how much sea salt for 100 l to 35"),
    ),
    "salt": (
        N_("Salt is sodium chloride. It raises salinity, not KH and not GH."),
        N_("It is no cure by guess: many plants, snails and shrimps bear none."),
    ),
}


def explained(term: str) -> list[str]:
    """What a word means, and what to do with that.

    Raises
    ------
    KeyError
        For a word that is not of `core.message.terms`.
    """
    return [_(line) for line in ENTRIES[term]]
