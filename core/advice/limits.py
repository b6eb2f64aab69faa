"""The numbers that advice is bound by, each with where it comes from.

Common practice without a source unless one is named. Code may be stricter, never laxer.
"""

from __future__ import annotations

from datetime import timedelta
from typing import Final

STALE: Final = timedelta(days=3)
"""A reading older than this does not decide a dose by itself; common practice."""

# How fast water may change around animals -------------------------------------------------

KH_STEP: Final = 1.0
"""Most that KH may rise in a day; common practice. [°dH]"""

KH_STEP_EMERGENCY: Final = 2.0
"""The same where buffer is running out and pH has fallen; common practice. [°dH]"""

KH_FACTOR: Final = 2.0
"""KH is never more than doubled in a day: doubling is 0.3 pH, stood with stood."""

KH_BLIND_BELOW: Final = 1.0
"""Under this low end of a reading there is no plan, only one small part. [°dH]"""

KH_FIRST_PART: Final = 0.25
"""That part; common practice. [°dH]"""

KH_FIRST_PART_ACID: Final = 0.1
"""That part where pH is under `ACID_PH`; common practice. [°dH]"""

ACID_PH: Final = 5.5

DOSE_EVERY_HOURS: Final = 24

# Ammonia ----------------------------------------------------------------------------------

NH3_WARN: Final = 0.02
"""Un-ionised ammonia that is warned of; common practice. [mg/L as N]"""

NH3_ALARM: Final = 0.05
"""Harms fish: UF/IFAS FA16, figure 2, seen in a copy (grade B). [mg/L as N]"""

NH3_GATE: Final = 0.05
"""No plan may take un-ionised ammonia over this; never called safe. [mg/L as N]"""

LITTLE_AMMONIA: Final = 0.1
"""Total ammonia under what kits show, as N: less than a colour step; common practice. [mg/L]"""

NH3_GATE_TENDER: Final = 0.03
"""The gate for the sea, fry, shrimps and mussels; from memory, near the marine chronic
criterion of EPA 440/5-88-004 (0.035 mg/L NH3). [mg/L as N]"""

WARMEST_ASSUMED: Final = 30.0
"""Temperature taken where none is known, since warmth makes ammonia worse. [°C]"""

COOLEST_ASSUMED: Final = 10.0
"""Where this would pass the gate and `WARMEST_ASSUMED` would not, ask first. [°C]"""

SEA_SALINITY: Final = 35.0
"""Salinity of a marine tank that was never measured. [g/kg]"""

# Other limits -----------------------------------------------------------------------------

NITRITE_WARN: Final = 0.1
"""In fresh water where chloride is under ten times nitrite, or unknown. [mg/L NO2]"""

NITRITE_ALARM: Final = 0.5
"""As above. [mg/L NO2]"""

CHLORIDE_PER_NITRITE: Final = 10.0
"""By mass: Durborow, Crosby & Brunson, SRAC 462, 1997 (grade B); channel catfish."""

WEIGHED: Final = 1.05
"""A day's step that was weighed on kitchen scales is still one step; common practice."""

AIRING_BELOW_PH: Final = 7.5
"""Under it driving carbon dioxide off would free ammonia: computed with PHREEQC."""

NITRATE_FRESH: Final = 44.0
"""10 mg/L as N: Camargo, Alonso & Salamanca 2005 (grade A). [mg/L NO3]"""

NITRATE_REEF: Final = 20.0
"""For corals; common practice. [mg/L NO3]"""

KH_LOW_FRESH: Final = 60.0 / 17.848
"""60 mg/L CaCO3 holds pH; common practice. [°dH]"""

KH_LOW_MARINE: Final = 7.0
"""125 mg/L CaCO3; Boyd gives 100 to 130 for full-strength sea water (grade A). [°dH]"""

KH_SOFT: Final = 1.0
"""For water that is kept soft on purpose; common practice. [°dH]"""

GH_LOWEST: Final = 1.0
"""Under this any animal lacks minerals; common practice. [°dH]"""

PH_DEADLY_LOW: Final = 5.0
PH_DEADLY_HIGH: Final = 9.5
"""Outside of these pH most fish die within hours to days; from memory."""

PH_HIGH: Final = 9.0
"""Over this no fish of fresh water is at home, and ammonia is poison there; common practice."""

PH_LOW: Final = 5.5
"""Under this hardly any fish that is not from blackwater is at home; common practice."""

WARMEST_FRESH: Final = 32.0
"""Over this hardly any animal of fresh water lives for long; common practice. [°C]"""

KH_HIGH_MARINE: Final = 14.0
"""Over this lime falls out of a sea and corals burn; common practice. [°dH]"""

PH_BLACKWATER: Final = 4.0
"""Likewise the low end where water is soft on purpose or a kind on record lives so; from memory."""

PH_MOVED: Final = 0.3
"""A change of pH worth telling, like with like; common practice."""

PH_LEAPT: Final = 1.0
"""So far pH hardly swings within a day in a tank: ten times the acid; common practice."""

PH_LEAPT_INJECTED: Final = 1.1
"""Likewise where carbon dioxide is let in: a fall by one is what is aimed at; common practice."""

SAME_HOUR: Final = timedelta(hours=3)
"""pH swings over a day: only readings this close in time of day compare."""

CO2_WARN: Final = 30.0
"""Common practice. [mg/L]"""

CO2_CONTRADICTION: Final = 50.0
"""Carbon dioxide that pH and KH together cannot truly mean without injection. [mg/L]"""

CO2_CONTRADICTION_INJECTED: Final = 100.0
"""The same with injection. [mg/L]"""

CO2_TOO_LITTLE: Final = 0.1
"""Less than this by night is no water standing in air. [mg/L]"""

OXYGEN_WARN: Final = 5.0
"""Common practice. [mg/L]"""

OXYGEN_ALARM: Final = 3.0
"""Common practice. [mg/L]"""

CHLORINE_WARN: Final = 0.02
"""Total chlorine; WEF MOP 8 extract (grade A). [mg/L]"""

SODIUM_A_DEGREE: Final = 8.2
"""What sodium bicarbonate brings for one degree of KH: computed with PHREEQC. [mg/L per °dH]"""

POTASSIUM_CAUTION: Final = 50.0
"""Potassium summed from doses; from memory. [mg/L]"""

POTASSIUM_CAUTION_TENDER: Final = 20.0
"""The same with snails or shrimps; from memory. [mg/L]"""

PHOSPHATE_MOST: Final = 3.0
"""More in all feeds nothing but algae; common practice. [mg/L PO4]"""

PH_CRASHED: Final = 6.5
"""Under this, with little buffer, a keeper's word that pH crashed counts: the low end for fish of
SRAC 464 (grade A)."""

# Kits -------------------------------------------------------------------------------------

PH_RESOLUTION: Final = 0.2
"""A colour-chart pH is this sure each way; from memory."""

TEMPERATURE_RESOLUTION: Final = 0.5
"""A tank's thermometer is this sure each way; from memory. [°C]"""

VOLUME_DOUBT: Final = 0.05
"""Share by which a net volume is in doubt each way; from memory."""

VOLUME_SMALLEST: Final = 0.5
"""A volume under this is taken for a slip. [L]"""

VOLUME_LARGEST: Final = 100_000.0
"""A volume over this is taken for a slip. [L]"""

# Plans ------------------------------------------------------------------------------------

OPEN_AIR: Final = 420.0
"""Carbon dioxide of outdoor air; from memory. [µatm]"""

STOCKED_AIR: Final = 2000.0
"""Carbon dioxide that a stocked tank may come to rest at; common practice. [µatm]"""

PH_STEP: Final = 0.3
"""Most that pH may move in a day, like with like; FAO-type text for 0.5 (grade B)."""

PH_ROUNDING: Final = 0.01
"""Allowed over `PH_STEP`: a doubling of KH moves the standing pH by 0.30."""

PH_DANGER: Final = 0.5
"""Over this the danger is named: FAO-type text, acclimatising fish (grade B)."""

NH3_RAISE: Final = 1.25
"""A plan that raises un-ionised ammonia more than this, over the gate if CO2 leaves, is none."""

LEAST_PART: Final = 0.1
"""A part smaller than this is none; common practice. [°dH]"""

GH_STEP: Final = 2.0
"""Most that GH may move in a day; common practice. [°dH]"""

SALINITY_UP: Final = 1.0
"""Most that salinity may rise in a day; common practice. [g/kg]"""

SALINITY_DOWN: Final = 2.0
"""Most that it may fall in a day with fish only; with any invertebrate 1. [g/kg]"""

CALCIUM_STEP: Final = 20.0
"""Most that calcium may rise in a day in the sea; from memory. [mg/L]"""

MAGNESIUM_STEP: Final = 50.0
"""The same of magnesium; from memory. [mg/L]"""

SATURATION_CAUTION: Final = 8.0
"""Saturation of aragonite from which lime may fall out: in sea water common practice; in fresh
water, where it is a calcite index of 1.1 at 25 °C, our judgement."""

SATURATION_REFUSED: Final = 10.0
"""Over this nothing is dosed; common practice."""

TEMPERATURE_STEP: Final = 2.0
"""Most that temperature may move in a day of routine; common practice. [°C]"""

CONDUCTIVITY_STEP: Final = 0.15
"""Share by which a change may move conductivity, where hardness is unknown; common practice."""

UNKNOWN_MINERALS_SHARE: Final = CONDUCTIVITY_STEP
"""Most that is changed where neither hardness nor conductivity tells how far the waters are apart:
new water without any minerals would then just move them by that limit."""

CHLORIDE_DOSE: Final = 100.0
"""Most chloride that is added at a time against nitrite; common practice. [mg/L]"""

CHLORINE_ASSUMED: Final = 4.0
"""Total chlorine where nobody measured: US EPA MRDL, an annual mean (grade A). [mg/L]"""

THIOSULFATE_EXCESS: Final = 0.25
"""Common practice."""

CYCLING_AMMONIA: Final = 4.0
"""Most total ammonia of a fishless cycle; from memory. [mg/L as N]"""

SALT_WATER: Final = 1.0
"""Over this a water is salty: salinity, not hardness, tells what it holds; our judgement. [g/kg]"""

EMERGENCY_SHARE: Final = 0.5
"""Most that is changed at a time when poison is the greater danger; common practice."""

EMERGENCY_PH_RISE: Final = 0.5
"""Most that pH may then rise at once; common practice."""

NEED_LOOKED_BACK: Final = timedelta(days=14)
"""Two readings further apart than this tell no daily need any more; common practice."""

IRON_STEP: Final = 0.5
"""Most iron that goes in at a time; common practice. [mg/L]"""

LEAST_SHARE: Final = 0.02
"""A change smaller than this is none; common practice."""

MOST_CHANGES: Final = 60
"""More changes than this, one a day, are no plan."""

SALT_ENOUGH: Final = 5.0
"""Over this salinity nitrite is no poison at kit levels; common practice. [g/kg]"""
