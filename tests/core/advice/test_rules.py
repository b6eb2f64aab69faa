"""Every rule beyond the first table where it must speak, be silent, and at its edge."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

import pytest

from core.advice.findings import BY_ID, FIRST, RULES, stands
from core.advice.state import Happening, State
from core.tank import Stock, Tank, TankKind
from tests.core.advice.waters import NOON, by_kit, done, findings, read, state, tank

SEA = tank(kind="marine")
SHRIMPS, TETRAS = tank("cherry shrimp"), tank("neon tetra")


def falling(analyte: str, first: float, per_day: float, days: int = 12) -> list:
    """Daily readings of a kit finer than the fall."""
    return [
        read(analyte, first + per_day * (days - ago), ago, step=0.1) for ago in range(days, -1, -1)
    ]


def weekly(analyte: str, first: float, per_week: float, weeks: int = 11) -> list:
    """Weekly readings of a drop kit."""
    return [
        read(analyte, first + per_week * (weeks - ago), ago * 7, step=1.0)
        for ago in range(weeks, -1, -1)
    ]


CHANGES = tuple(done("water_change", 7 * week + 3, percent=30.0) for week in range(12))
NEGLECT = [by_kit("nitrate", 120), by_kit("kh", 2), by_kit("ph", 6.2)]
TAP = [by_kit("kh", 9), by_kit("ph", 7.6), by_kit("gh", 12)]
STEADY = [
    reading
    for ago in (28, 21, 14, 7, 0)
    for reading in (by_kit("ph", 7.0, ago), by_kit("kh", 5, ago), by_kit("gh", 7, ago))
]
CYCLE = [read("ammonia", 2.0, 20, basis="N"), read("ammonia", 0.0, 1), read("ammonia", 0.0)]


LITRES = tank(volume_l=120.0)


def dosed(grams: float) -> Happening:
    """Baking soda, now."""
    return done("dose", 0.0, substance="sodium bicarbonate", grams=grams)


def _few(
    count: int, name: str = "neon tetra", kind: TankKind = "fresh", volume_l: float | None = None
) -> Tank:
    return Tank("Fern", kind, volume_l, stock=(Stock(name, count),))


def _sexed(name: str, males: int, females: int) -> Tank:
    stock = (Stock(f"male {name}", males), Stock(f"female {name}", females))
    return Tank("Fern", stock=stock)


def salted(substance: str, grams: float) -> Happening:
    """So many grams of a salt, now."""
    return done("dose", 0.0, substance=substance, grams=grams)


NINETY_SHRIMPS = tank("cherry shrimp", volume_l=90.0)


def put(substance: str) -> Happening:
    """So much of a thing, now."""
    return done("dose", 0.0, substance=substance, millilitres=5.0)


def filled(water: str, percent: float = 20.0) -> Happening:
    """A change with a water, now."""
    return done("water_change", 0.0, substance=water, percent=percent)


def set_up(setup: str, kind: str = "fresh", *stock: str) -> Tank:
    """A tank whose keeper said what it is made for."""
    return tank(*stock, kind=kind, setup=setup)


WARM = read("temperature", 25.0)
ALMOST_NONE = [read("ph", 9.6, low=9.4, high=9.8), read("kh", 4.0)]

CASES: list[tuple[str, str, State, str | None]] = [
    # the sea's own ions: 412 and 1284 mg/kg at 35 g/kg, 421 and 1314 mg/L (Millero 2008, grade A)
    ("unlike_the_sea", "speak: thinner than corals bear, nobody on record; Boyd: mean 35",
     state(read("salinity", 29.0), of=SEA), "warn"),
    ("unlike_the_sea", "speak: 25 g/kg", state(read("salinity", 25.0), of=SEA), "alarm"),
    ("unlike_the_sea", "speak: 31 °C, common practice", state(read("temperature", 31.0), of=SEA),
     "warn"),
    ("unlike_the_sea", "speak: 33 °C", state(read("temperature", 33.0), of=SEA), "alarm"),
    ("unlike_the_sea", "silent: as the sea",
     state(read("salinity", 35.0), read("temperature", 25.0), of=SEA), None),
    ("unlike_the_sea", "silent: fresh water", state(read("salinity", 0.2)), None),
    ("unlike_the_sea", "silent: animals on record are judged by their own ranges",
     state(read("salinity", 29.0), of=tank("clownfish", kind="marine")), None),
    ("unlike_the_sea", "silent: brackish water swings",
     state(read("salinity", 12.0), of=tank(kind="brackish")), None),
    ("unlike_the_sea", "edge: 32 itself", state(read("salinity", 32.0), of=SEA), None),
    ("unlike_the_sea", "edge: 29 g/kg is well for fish alone, common practice",
     state(read("salinity", 29.0), of=tank(kind="marine", setup="fish_only")), None),
    ("unlike_the_sea", "edge: too old to say", state(read("salinity", 25.0, 40), of=SEA), None),
    ("salt_in_fresh", "speak: sea water, nobody on record", state(read("salinity", 34.8)), "warn"),
    ("salt_in_fresh", "silent: salt against disease, common practice",
     state(read("salinity", 3.0)), None),
    ("salt_in_fresh", "silent: a sea", state(read("salinity", 35.0), of=SEA), None),
    ("salt_in_fresh", "silent: brackish", state(read("salinity", 12.0), of=tank(kind="brackish")),
     None),
    ("salt_in_fresh", "silent: animals on record are judged by their own ranges",
     state(read("salinity", 34.8), of=tank("betta")), None),
    ("salt_in_fresh", "edge: 5 itself", state(read("salinity", 5.0)), None),
    ("salt_in_fresh", "edge: too old to say", state(read("salinity", 34.8, 40)), None),
    ("sea_ion_low", "speak: 250 of 421", state(read("calcium", 250.0), of=SEA), "warn"),
    ("sea_ion_low", "silent: fresh water", state(read("calcium", 50.0)), None),
    ("sea_ion_low", "edge: 380 of 412 is little under the sea's own, common practice",
     state(read("calcium", 380.0), read("salinity", 35.0), of=SEA), None),
    ("sea_ion_low", "speak: 1000 of 1174 at 32 g/kg",
     state(read("magnesium", 1000.0), read("salinity", 32.0), of=SEA), "warn"),
    ("sea_ion_high", "silent: 1350 is usual at 32 g/kg, common practice",
     state(read("magnesium", 1350.0), read("salinity", 32.0), of=SEA), None),
    ("sea_ion_high", "speak: 600 of 421", state(read("calcium", 600.0), of=SEA), "warn"),
    ("sea_ion_high", "silent: as the sea", state(read("magnesium", 1300.0), of=SEA), None),
    ("sea_ion_high", "edge: the same 484 is too much where the sea is thinner",
     state(read("calcium", 480.0), read("salinity", 31.0), of=SEA), "warn"),
    # what was just done
    ("overdose", "speak: KH by 1 °dH a day, common practice; 36 g in 120 L are 10",
     state(read("kh", 4.0), of=LITRES, events=(dosed(36.0),)), "alarm"),
    ("overdose", "silent: a day's step, 3.6 g in 120 L",
     state(read("kh", 4.0), of=LITRES, events=(dosed(3.5),)), None),
    ("overdose", "edge: two days' steps are a warning",
     state(read("kh", 4.0), of=LITRES, events=(dosed(6.0),)), "warn"),
    ("large_change", "speak: most of the water, common practice",
     state(events=(done("water_change", 0.0, percent=90.0),)), "warn"),
    ("large_change", "silent: half",
     state(events=(done("water_change", 0.0, percent=50.0),)), None),
    ("large_change", "edge: it was yesterday",
     state(events=(done("water_change", 1.0, percent=90.0),)), None),
    # the wrong thing, the wrong water: common practice where nothing else is named
    ("overdose", "speak: in the sea calcium by 20 mg/L a day (the limits); 60 g of the dihydrate in"
     " 300 L are 54.5 (40.078 / 147.01)",
     state(read("calcium", 400.0), read("salinity", 35.0), of=tank(kind="marine", volume_l=300.0),
           events=(salted("calcium chloride dihydrate", 60.0),)), "alarm"),
    ("overdose", "silent: in the sea 120 g of magnesium chloride in 300 L are 48 mg/L, 50 a day",
     state(read("salinity", 35.0), of=tank(kind="marine", volume_l=300.0),
           events=(salted("magnesium chloride hexahydrate", 120.0),)), None),
    # 1 g of K2SO4 holds 449 mg K (78.197 / 174.26), of KNO3 387 mg K and 613 mg NO3 (101.10), of
    # KH2PO4 698 mg PO4 (94.971 / 136.09), of iron gluconate dihydrate 116 mg Fe (55.845 / 482.17)
    ("nutrient_overdose", "speak: 20 g of potassium sulfate in 90 L are 100 mg/L, over 20 with"
     " shrimps", state(of=NINETY_SHRIMPS, events=(salted("potassium sulfate", 20.0),)), "alarm"),
    ("nutrient_overdose", "speak: 5 mg/L there and 25 put in the same moment",
     state(read("potassium", 5.0), of=NINETY_SHRIMPS, events=(salted("potassium sulfate", 5.0),)),
     "warn"),
    ("nutrient_overdose", "speak: with mussels none at all",
     state(of=tank("swan mussel", volume_l=90.0), events=(salted("potassium sulfate", 1.0),)),
     "warn"),
    ("nutrient_overdose", "speak: 10 g of potassium nitrate in 100 L are 61 mg/L nitrate, over 44"
     " (Camargo et al. 2005)",
     state(of=tank("neon tetra", volume_l=100.0), events=(salted("potassium nitrate", 10.0),)),
     "warn"),
    ("nutrient_overdose", "speak: in the sea its own nitrate counts, over 20 with corals",
     state(read("nitrate", 15.0), read("salinity", 35.0),
           of=tank("acropora", kind="marine", volume_l=100.0),
           events=(salted("potassium nitrate", 1.5),)), "warn"),
    ("nutrient_overdose", "speak: phosphate is never an alarm, common practice",
     state(of=tank("neon tetra", volume_l=100.0),
           events=(salted("monopotassium phosphate", 5.0),)), "warn"),
    ("nutrient_overdose", "speak: 5 g of iron gluconate in 90 L are 6.4 mg/L, half of one at"
     " a time",
     state(of=tank("neon tetra", volume_l=90.0), events=(salted("iron gluconate", 5.0),)), "alarm"),
    ("nutrient_overdose", "silent: 100 mg/L without its litres", state(of=SHRIMPS, events=(
     salted("potassium sulfate", 20.0),)), None),
    ("nutrient_overdose", "silent: 10 mg/L of potassium for plants, beside shrimps",
     state(of=NINETY_SHRIMPS, events=(salted("potassium sulfate", 2.0),)), None),
    ("nutrient_overdose", "silent: 20 g of soda bring none of it",
     state(of=NINETY_SHRIMPS, events=(salted("sodium bicarbonate", 20.0),)), None),
    ("nutrient_overdose", "silent: sea salt brings potassium in the sea's own ratio",
     state(of=tank(kind="marine", volume_l=100.0), events=(salted("sea salt", 3500.0),)), None),
    ("nutrient_overdose", "edge: 20 mg/L to a tenth of a gram, weighed",
     state(of=NINETY_SHRIMPS, events=(salted("potassium sulfate", 4.05),)), None),
    ("nutrient_overdose", "edge: 45 mg/L without invertebrates",
     state(of=tank("neon tetra", volume_l=90.0), events=(salted("potassium sulfate", 9.0),)), None),
    ("nutrient_overdose", "edge: it was yesterday",
     state(of=NINETY_SHRIMPS,
           events=(done("dose", 1.0, substance="potassium sulfate", grams=20.0),)), None),
    ("salt_topped_up", "speak: 5 L in 300 L of 35 g/kg are 35.6, by amounts",
     state(read("salinity", 35.0), of=tank(kind="marine", volume_l=300.0),
           events=(done("top_up", 0.0, substance="salt water", litres=5.0),)), "warn"),
    ("salt_topped_up", "speak: nothing is known of its salt",
     state(of=LITRES, events=(done("top_up", 0.0, substance="salt water"),)), "warn"),
    ("salt_topped_up", "silent: pure water",
     state(of=SEA, events=(done("top_up", 0.0, substance="ro", litres=5.0),)), None),
    ("salt_topped_up", "silent: the sea is changed with salt water",
     state(of=SEA, events=(done("water_change", 0.0, substance="salt water", percent=10.0),)),
     None),
    ("salt_topped_up", "edge: of no name at all",
     state(of=SEA, events=(done("top_up", 0.0, litres=5.0),)), None),
    ("overdose", "edge: a day's step that frees ammonia over its gate; 6.7 g in 230 L are 1 °dH",
     state(read("kh", 4.0), read("ph", 8.2), WARM, read("ammonia", 1.0),
           of=tank("neon tetra", volume_l=230.0), events=(dosed(6.7),)), "alarm"),
    ("acid_dosed", "speak: a strong acid", state(events=(put("hydrochloric acid"),)), "alarm"),
    ("acid_dosed", "silent: soda", state(events=(put("sodium bicarbonate"),)), None),
    ("acid_dosed", "edge: vinegar is a weak one", state(events=(put("vinegar"),)), "warn"),
    ("caustic_dosed", "speak: PHREEQC: +2.8 °dH by carbonate is pH 9 (computed)",
     state(events=(put("Natronlauge"),)), "alarm"),
    ("caustic_dosed", "silent: lime water in the sea is usual",
     state(of=SEA, events=(put("calcium hydroxide"),)), None),
    ("caustic_dosed", "edge: carbonate in fresh water",
     state(events=(put("sodium carbonate"),)), "warn"),
    ("medicine_dosed", "speak: copper kills invertebrates",
     state(of=SHRIMPS, events=(put("Kupfermittel"), put("formol"))), "alarm"),
    ("medicine_dosed", "silent: plant food", state(events=(put("fertilizer"),)), None),
    ("medicine_dosed", "edge: copper beside fish is for label and vet",
     state(of=TETRAS, events=(put("copper medicine"),)), "note"),
    ("copper_before", "speak: shrimps after a dose of copper, common practice",
     state(of=SHRIMPS, events=(done("dose", 9.0, substance="copper medicine"),)), "alarm"),
    ("copper_before", "silent: fish only",
     state(of=TETRAS, events=(done("dose", 9.0, substance="copper medicine"),)), None),
    ("copper_before", "edge: measured since",
     state(read("copper", 0.0, 1), of=SHRIMPS,
           events=(done("dose", 9.0, substance="copper medicine"),)), None),
    ("unknown_dosed", "speak: nobody knows what is in it",
     state(events=(put("ph down"),)), "note"),
    ("unknown_dosed", "silent: a known salt", state(events=(put("potassium nitrate"),)), None),
    ("unknown_dosed", "edge: it was yesterday",
     state(events=(done("dose", 1.0, substance="ph down", millilitres=5.0),)), None),
    ("condensate_in", "speak: metals, no buffer", state(events=(filled("Kondenswasser"),)), "warn"),
    ("condensate_in", "silent: rain", state(events=(filled("rain water"),)), None),
    ("condensate_in", "edge: topped up with it",
     state(events=(done("top_up", 0.0, substance="dehumidifier"),)), "warn"),
    ("softened_in", "speak: sodium for calcium", state(events=(filled("softened water"),)), "warn"),
    ("softened_in", "silent: tap", state(events=(filled("tap"),)), None),
    ("softened_in", "edge: in Polish", state(events=(filled("zmiękczona woda"),)), "warn"),
    ("pure_in", "speak: KH 4 less three quarters is 1.0 at most, UF/IFAS VM 86, grade A",
     state(read("kh", 4.0), events=(filled("ro", 80.0),)), "warn"),
    ("pure_in", "silent: KH stays", state(read("kh", 4.0), events=(filled("ro", 30.0),)), None),
    ("pure_in", "edge: soft on purpose",
     state(read("kh", 1.0), of=tank(soft=True), events=(filled("ro", 30.0),)), None),
    ("tap_in", "speak: up to 4 mg/L chlorine (the limits)",
     state(events=(filled("Leitungswasser", 30.0),)), "note"),
    ("tap_in", "silent: no supplier chlorinates a well",
     state(events=(filled("well", 30.0),)), None),
    ("tap_in", "edge: a dechlorinator is on record with it",
     state(events=(filled("tap", 30.0), done("dose", 0.0, substance="thiosulfate", grams=1.0))),
     None),
    ("tap_in_sea", "speak: no salt in it",
     state(read("salinity", 35.0), of=SEA, events=(filled("Leitungswasser", 20.0),)), "warn"),
    ("tap_in_sea", "silent: fresh water", state(events=(filled("tap", 20.0),)), None),
    ("tap_in_sea", "edge: how salt the tank is, nobody knows",
     state(of=SEA, events=(filled("tap", 20.0),)), "warn"),
    ("tap_topped_up", "speak: what it brings stays",
     state(of=SEA, events=(done("top_up", 0.0, substance="tap", litres=5.0),)), "note"),
    ("tap_topped_up", "silent: RO",
     state(of=SEA, events=(done("top_up", 0.0, substance="ro", litres=5.0),)), None),
    ("tap_topped_up", "edge: fresh water of tap stays tap",
     state(events=(done("top_up", 0.0, substance="tap", litres=5.0),)), None),
    ("overdose", "speak: salt to half a percent is 5 g/kg, 1 a day (the limits)",
     state(events=(done("dose", 0.0, substance="sodium chloride", percent=0.5),)), "alarm"),
    # copper
    ("copper", "speak: kills invertebrates, common practice",
     state(read("copper", 0.05), of=SHRIMPS), "alarm"),
    ("copper", "silent: no invertebrates", state(read("copper", 0.05), of=TETRAS), None),
    ("copper", "edge: the kit sees nothing", state(read("copper", 0.0), of=SHRIMPS), None),
    ("copper_unknown_stock", "speak: nobody on record", state(read("copper", 0.05)), "note"),
    ("copper_unknown_stock", "silent: fish are known",
     state(read("copper", 0.05), of=TETRAS), None),
    ("copper_unknown_stock", "edge: under the kit's scale",
     state(read("copper", 0.05, low=0.0, qualifier="<")), None),
    ("copper_unseen", "speak: the kit begins over what harms, common practice",
     state(read("copper", 0.15, low=0.0, qualifier="<"), of=SHRIMPS), "note"),
    ("copper_unseen", "silent: fish only",
     state(read("copper", 0.15, low=0.0, qualifier="<"), of=TETRAS), None),
    ("copper_unseen", "edge: a fine test clears it",
     state(read("copper", 0.02, low=0.0, qualifier="<"), of=SHRIMPS), None),
    ("copper_low_kh", "speak: Wurts & Perschbacher 1994, grade A",
     state(read("copper", 0.1), read("kh", 1.5), of=TETRAS), "warn"),
    ("copper_low_kh", "silent: well buffered",
     state(read("copper", 0.1), read("kh", 8), of=TETRAS), None),
    ("copper_low_kh", "edge: 60 mg/L is 3.36 °dH",
     state(read("copper", 0.1), read("kh", 3.37), of=TETRAS), None),
    ("copper", "speak: a reef with no coral on record, common practice",
     state(read("copper", 0.05), of=set_up("reef", "marine")), "alarm"),
    ("copper", "silent: a fish-only sea of known fish",
     state(read("copper", 0.05), of=set_up("fish_only", "marine", "clownfish")), None),
    # ammonia: fractions by Emerson et al. 1975, grade B: 25 °C, pH 8.0 is 5.38 %
    ("ammonia", "speak: 0.5 mg/L at pH 8, 25 °C is 0.027 un-ionised",
     state(read("ammonia", 0.5), read("ph", 8.0), WARM), "warn"),
    ("ammonia", "silent: 0.0014 un-ionised, under the long-term limit",
     state(read("ammonia", 0.25), read("ph", 7.0), WARM), None),
    ("ammonia", "edge: 0.36 is 0.0194, under 0.02 (common practice)",
     state(read("ammonia", 0.36), read("ph", 8.0), WARM), None),
    ("ammonia", "edge: 0.38 is 0.0204, over it",
     state(read("ammonia", 0.38), read("ph", 8.0), WARM), "warn"),
    ("ammonia", "edge: 1.85 at pH 7, 20 °C is under the chronic 1.9, EPA 2013, grade B",
     state(read("ammonia", 1.85), read("ph", 7.0), read("temperature", 20.0)), None),
    ("ammonia", "edge: 1.95 is over the chronic 1.9",
     state(read("ammonia", 1.95), read("ph", 7.0), read("temperature", 20.0)), "warn"),
    ("ammonia", "edge: 17.5 is over the acute 17, EPA 2013, grade B",
     state(read("ammonia", 17.5), read("ph", 7.0), read("temperature", 20.0)), "alarm"),
    ("ammonia", "edge: 0.95 at pH 8, 25 °C is 0.051, over 0.05, UF/IFAS FA16, grade B",
     state(read("ammonia", 0.95), read("ph", 8.0), WARM), "alarm"),
    ("ammonia", "silent: four days old, which only a test can tell",
     state(read("ammonia", 2.0, 4), read("ph", 8.0), WARM), None),
    ("ammonia_without_ph", "speak: pH decides", state(read("ammonia", 0.5)), "warn"),
    ("ammonia_without_ph", "silent: none", state(read("ammonia", 0.0)), None),
    ("ammonia_without_ph", "edge: a pH of four days ago decides nothing",
     state(read("ammonia", 0.5), read("ph", 7.0, 4)), "warn"),
    ("not_retested", "speak: ammonia 2 at pH 8, four days ago, never again",
     state(read("ammonia", 2.0, 4), read("ph", 8.0, 4), read("ph", 8.0)), "warn"),
    ("not_retested", "speak: nitrite", state(read("nitrite", 1.0, 5), read("ph", 7.0)), "warn"),
    ("not_retested", "speak: copper, five days before shrimps came",
     state(read("copper", 0.1, 5), of=SHRIMPS), "warn"),
    ("not_retested", "silent: tested again",
     state(read("ammonia", 2.0, 4), read("ammonia", 0.0), read("ph", 8.0)), None),
    ("not_retested", "silent: it was harmless",
     state(read("ammonia", 0.25, 4), read("ph", 7.0, 4), read("ph", 7.0)), None),
    ("not_retested", "edge: three days are young enough for the finding itself",
     state(read("nitrite", 1.0, 3), read("ph", 7.0)), None),
    ("not_retested", "edge: a month is too long ago",
     state(read("nitrite", 1.0, 31), read("ph", 7.0)), None),
    # nitrite
    ("nitrite", "speak: 0.2 as the ion, common practice",
     state(read("nitrite", 0.2, basis="ion")), "warn"),
    ("nitrite", "silent: none", state(read("nitrite", 0.0)), None),
    ("nitrite", "edge: 0.09 is under 0.1", state(read("nitrite", 0.09, basis="ion")), None),
    ("nitrite", "edge: 0.1", state(read("nitrite", 0.1, basis="ion")), "warn"),
    ("nitrite", "edge: 0.5 is an alarm", state(read("nitrite", 0.5, basis="ion")), "alarm"),
    ("nitrite", "edge: chloride 9.9 to 1, SRAC 462, grade B",
     state(read("nitrite", 1.0, basis="ion"), read("chloride", 9.9)), "alarm"),
    ("nitrite_with_chloride", "speak: 20 to 1, SRAC 462, grade B",
     state(read("nitrite", 1.0, basis="ion"), read("chloride", 20)), "warn"),
    ("nitrite_with_chloride", "silent: chloride unknown",
     state(read("nitrite", 1.0, basis="ion")), None),
    ("nitrite_with_chloride", "edge: 10 to 1 by mass, SRAC 462, grade B",
     state(read("nitrite", 1.0, basis="ion"), read("chloride", 10)), "warn"),
    ("nitrite_in_salt_water", "speak: the sea", state(read("nitrite", 1.0), of=SEA), "note"),
    ("nitrite_in_salt_water", "silent: fresh water", state(read("nitrite", 1.0)), None),
    ("nitrite_in_salt_water", "edge: brackish of 5 g/kg is not salt enough",
     state(read("nitrite", 1.0), read("salinity", 5.0), of=tank(kind="brackish")), None),
    ("nitrite_in_salt_water", "edge: brackish of 6 g/kg",
     state(read("nitrite", 1.0), read("salinity", 6.0), of=tank(kind="brackish")), "note"),
    # chlorine and oxygen
    ("chlorine", "speak: WEF MOP 8, grade A", state(read("total_chlorine", 0.1)), "alarm"),
    ("chlorine", "silent: none", state(read("chlorine", 0.0)), None),
    ("chlorine", "edge: 0.02 mg/L itself, WEF MOP 8, grade A",
     state(read("total_chlorine", 0.02)), None),
    ("low_oxygen", "speak: under 5, common practice", state(read("oxygen", 4.0)), "warn"),
    ("low_oxygen", "silent", state(read("oxygen", 8.0)), None),
    ("low_oxygen", "edge: 5 itself", state(read("oxygen", 5.0)), None),
    ("low_oxygen", "edge: under 3 is an alarm", state(read("oxygen", 2.99)), "alarm"),
    # buffer
    ("low_kh", "silent: crystal red shrimp bear no more than 2 °dH, common practice",
     state(by_kit("kh", 1), of=tank("crystal red shrimp")), None),
    ("low_kh", "speak: under 1 °dH with them too",
     state(by_kit("kh", 0.5), of=tank("crystal red shrimp")), "warn"),
    ("low_kh", "speak: under 60 mg/L, common practice", state(by_kit("kh", 2)), "warn"),
    ("low_kh", "silent", state(by_kit("kh", 6)), None),
    ("low_kh", "silent: read before 36 g of soda in 120 L raised it by 10 °dH, common practice",
     state(read("kh", 2, 0.1), of=LITRES, events=(dosed(36.0),)), None),
    ("low_kh", "edge: 3.6 g are a day's step, so it is still said",
     state(read("kh", 2, 0.1), of=LITRES, events=(dosed(3.5),)), "warn"),
    ("low_kh", "edge: 60 mg/L is 3.36 °dH", state(read("kh", 3.37)), None),
    ("low_kh", "edge: marine 7 °dH, in Boyd's 100 to 130 mg/L, grade A",
     state(read("kh", 7.0), of=SEA), None),
    ("low_kh", "edge: marine 6.9 °dH", state(read("kh", 6.9), of=SEA), "warn"),
    ("low_kh", "edge: soft on purpose, 1 °dH", state(read("kh", 1.0), of=tank(soft=True)), None),
    ("low_kh", "edge: fell with nothing done, told beside a jump",
     state(read("kh", 2.0), read("kh", 6.0, 1), events=()), "warn"),
    ("low_kh", "edge: only soft-water fish, 2 °dH", state(by_kit("kh", 2), of=TETRAS), None),
    ("low_kh", "speak: soft-water fish beside guppies",
     state(by_kit("kh", 2), of=tank("neon tetra", "guppy")), "warn"),
    ("ph_extreme", "speak: too low, from memory", state(by_kit("ph", 4.5)), "alarm"),
    ("ph_extreme", "speak: too high", state(by_kit("ph", 10.0)), "alarm"),
    ("ph_extreme", "silent", state(by_kit("ph", 7.0)), None),
    ("ph_extreme", "edge: 5 and 9.5 are its ends", state(read("ph", 5.0)), None),
    ("ph_extreme", "edge: 9.5", state(read("ph", 9.5)), None),
    ("ph_extreme", "edge: soft on purpose", state(read("ph", 4.5), of=tank(soft=True)), None),
    ("ph_extreme", "edge: soft on purpose, under 4",
     state(read("ph", 3.9), of=tank(soft=True)), "alarm"),
    ("high_ph", "speak: nobody known, common practice", state(read("ph", 9.3)), "warn"),
    ("high_ph", "silent", state(read("ph", 8.6)), None),
    ("high_ph", "silent: kinds on record are judged by their own ranges",
     state(read("ph", 9.3), of=TETRAS), None),
    ("high_ph", "silent: the sea has its own", state(read("ph", 9.3), of=SEA), None),
    ("high_ph", "edge: 9 itself", state(read("ph", 9.0)), None),
    ("high_ph", "edge: over 9.5 it is deadly", state(read("ph", 9.6)), None),
    ("low_ph", "speak: nobody known, common practice", state(read("ph", 5.2)), "warn"),
    ("low_ph", "speak: 5 itself is not deadly yet", state(read("ph", 5.0)), "warn"),
    ("low_ph", "silent", state(read("ph", 6.0)), None),
    ("low_ph", "edge: 5.5 itself", state(read("ph", 5.5)), None),
    ("low_ph", "edge: under 5 it is deadly", state(read("ph", 4.9)), None),
    ("low_ph", "silent: soft on purpose", state(read("ph", 5.2), of=tank(soft=True)), None),
    ("low_ph", "silent: kinds on record are judged by their own ranges",
     state(read("ph", 5.2), of=TETRAS), None),
    ("low_ph", "silent: the sea has its own", state(read("ph", 5.2), of=SEA), None),
    ("too_warm", "speak: nobody known, common practice", state(read("temperature", 33.0)), "warn"),
    ("too_warm", "speak: 34 °C", state(read("temperature", 34.0)), "alarm"),
    ("too_warm", "silent: 31 °C is borne by some", state(read("temperature", 31.0)), None),
    ("too_warm", "silent: kinds on record are judged by their own ranges",
     state(read("temperature", 34.0), of=TETRAS), None),
    ("too_warm", "silent: the sea has its own", state(read("temperature", 34.0), of=SEA), None),
    ("too_warm", "edge: 32 itself", state(read("temperature", 32.0)), None),
    ("sea_kh_high", "speak: lime falls out, common practice",
     state(read("kh", 25.0), of=SEA), "warn"),
    ("sea_kh_high", "silent: 9 °dH", state(read("kh", 9.0), of=SEA), None),
    ("sea_kh_high", "silent: fresh water may be so hard", state(read("kh", 20.0)), None),
    ("sea_kh_high", "edge: 14 itself", state(read("kh", 14.0), of=SEA), None),
    ("does_not_suit", "speak: 4 °C over its warmth is an emergency",
     state(read("temperature", 30.0), of=TETRAS), "alarm"),
    ("low_gh", "speak: no minerals, common practice", state(by_kit("gh", 0.5)), "warn"),
    ("low_gh", "silent", state(by_kit("gh", 5)), None),
    ("low_gh", "edge: 1 °dH", state(read("gh", 1.0)), None),
    ("ph_fell", "speak: 1.2 since yesterday, under what most fish bear",
     state(read("ph", 6.2), read("ph", 7.4, 1)), "alarm"),
    ("ph_fell", "speak: at another hour too, no swing is so wide",
     state(read("ph", 7.0), read("ph", 8.2, 0.4)), "warn"),
    ("ph_fell", "speak: water kept soft is used to acid, not to the fall",
     state(read("ph", 6.2), read("ph", 7.4, 1), of=tank(soft=True)), "warn"),
    ("ph_fell", "speak: CO2 that was turned on",
     state(read("ph", 6.2), read("ph", 7.4, 0.4), injected=True), "warn"),
    ("ph_fell", "silent: 0.9", state(read("ph", 6.5), read("ph", 7.4, 1)), None),
    ("ph_fell", "silent: it rose", state(read("ph", 7.4), read("ph", 6.2, 1)), None),
    ("ph_fell", "silent: a pond by night",
     state(read("ph", 7.6), read("ph", 8.8, 0.5), of=tank(kind="pond")), None),
    ("ph_fell", "silent: a fall by one is what CO2 is meant to do",
     state(read("ph", 6.6), read("ph", 7.6, 0.4), injected=True), None),
    ("ph_fell", "edge: 1.0", state(read("ph", 6.6), read("ph", 7.6, 1)), "warn"),
    ("ph_fell", "edge: 6.5 itself is no alarm",
     state(read("ph", 6.5), read("ph", 7.6, 1)), "warn"),
    ("ph_fell", "edge: more than three days ago",
     state(read("ph", 6.2), read("ph", 7.4, 3.1)), None),
    ("ph_rose", "speak: 1.2 within half a day",
     state(read("ph", 8.6), read("ph", 7.4, 0.5)), "warn"),
    ("ph_rose", "silent: 0.9", state(read("ph", 8.3), read("ph", 7.4, 0.5)), None),
    ("ph_rose", "silent: CO2 that goes off at night",
     state(read("ph", 7.6), read("ph", 6.4, 0.5), injected=True), None),
    ("ph_rose", "edge: 1.0", state(read("ph", 8.4), read("ph", 7.4, 1)), "warn"),
    ("ph_moved", "speak: 0.4 since yesterday's hour",
     state(read("ph", 6.8), read("ph", 7.2, 1)), "warn"),
    ("ph_moved", "silent: 0.2", state(read("ph", 7.0), read("ph", 7.2, 1)), None),
    ("ph_moved", "edge: 0.3", state(read("ph", 6.9), read("ph", 7.2, 1)), "warn"),
    ("ph_moved", "edge: more than three days ago",
     state(read("ph", 6.8), read("ph", 7.2, 3.1)), None),
    ("ph_moved_other_hour", "speak: half a day apart",
     state(read("ph", 6.8), read("ph", 7.2, 0.5)), "note"),
    ("ph_moved_other_hour", "silent: 0.2", state(read("ph", 7.0), read("ph", 7.2, 0.5)), None),
    ("ph_moved_other_hour", "edge: three hours apart in the day are the same hour",
     state(read("ph", 6.8), read("ph", 7.2, 0.125)), None),
    # what cannot be: 3 · KH · 10^(7 − pH), common practice
    ("contradiction", "speak: pH 6.0, KH 4 is 120", state(read("ph", 6.0), read("kh", 4)), "warn"),
    ("contradiction", "silent: 12", state(read("ph", 7.0), read("kh", 4)), None),
    ("contradiction", "edge: 3 · 5 · 10^0.5 is 47, under 50",
     state(read("ph", 6.5), read("kh", 5)), None),
    ("contradiction", "edge: 3 · 6 · 10^0.5 is 57", state(read("ph", 6.5), read("kh", 6)), "warn"),
    ("contradiction", "edge: 57 with injection, under 100",
     state(read("ph", 6.5), read("kh", 6), injected=True), None),
    ("contradiction", "edge: the kits leave 19 to 57",
     state(by_kit("ph", 6.5), by_kit("kh", 4)), None),
    ("co2_against_ph", "speak: 15 measured, pH 6.4 with KH 5 make 34 to 106",
     state(read("co2", 15), by_kit("ph", 6.4), by_kit("kh", 5)), "note"),
    ("co2_against_ph", "silent: 12 measured of 12",
     state(read("co2", 12), by_kit("ph", 7.0), by_kit("kh", 4)), None),
    ("co2_against_ph", "edge: measured half a day before",
     state(read("co2", 15, 0.5), by_kit("ph", 6.4), by_kit("kh", 5)), None),
    ("much_co2", "silent: measured beside pH and KH, it need not be reckoned",
     state(read("co2", 15), by_kit("ph", 6.2), by_kit("kh", 5)), None),
    ("neglected", "edge: nitrate of a month ago is no pattern of now",
     state(read("nitrate", 120, 31), *NEGLECT[1:], source=TAP), None),
    # light and dark
    ("oxygen_by_day", "speak: 6 of 8.26 mg/L (EN 25814, grade B), planted",
     state(read("oxygen", 6.0), WARM, of=set_up("planted")), "note"),
    ("oxygen_by_day", "speak: plants on record", state(read("oxygen", 6.0), WARM,
                                                       of=tank("anubias")), "note"),
    ("oxygen_by_day", "speak: a pond", state(read("oxygen", 6.0), WARM, of=tank(kind="pond")),
     "note"),
    ("oxygen_by_day", "silent: nobody said that anything grows",
     state(read("oxygen", 6.0), WARM), None),
    ("oxygen_by_day", "silent: at night it is what it is",
     state(read("oxygen", 6.0, 0.4), WARM, of=set_up("planted")), None),
    ("oxygen_by_day", "silent: low already", state(read("oxygen", 4.0), WARM,
                                                   of=set_up("planted")), None),
    ("oxygen_by_day", "edge: 0.8 of 8.26 is 6.6",
     state(read("oxygen", 6.62), WARM, of=set_up("planted")), None),
    ("contradiction_low", "speak: nothing grows, so the hour is all one",
     state(*ALMOST_NONE, of=set_up("unplanted")), "warn"),
    ("contradiction_low", "silent: by day plants may have used it up",
     state(*ALMOST_NONE, of=set_up("planted")), None),
    ("contradiction_low", "silent: nobody said that nothing grows", state(*ALMOST_NONE), None),
    ("contradiction_low", "edge: plants on record gainsay the word",
     state(*ALMOST_NONE, of=set_up("unplanted", "fresh", "anubias")), None),
    ("nitrate", "speak: 25 mg/L in a reef, common practice",
     state(read("nitrate", 25), of=set_up("reef", "marine")), "warn"),
    ("nitrate", "silent: in a sea of which nothing is known",
     state(read("nitrate", 25), of=SEA), None),
    ("nitrate", "edge: the limit itself",
     state(read("nitrate", 20), of=set_up("reef", "marine")), None),
    ("nitrate", "speak: marine fish, 20 mg/L as N, Camargo et al. 2005, grade A",
     state(read("nitrate", 90), of=set_up("fish_only", "marine", "clownfish")), "warn"),
    # potassium: 1 g of the bicarbonate holds 390.5 mg (39.098 / 100.115)
    ("potassium_sum", "speak: 10 g in 100 L is 39 mg/L, over 20 with shrimps",
     state(of=tank("cherry shrimp", volume_l=100.0),
           events=(done("dose", 5, substance="potassium bicarbonate", grams=10.0),)), "warn"),
    ("potassium_sum", "silent: 39 mg/L is under 50 without invertebrates",
     state(of=tank("neon tetra", volume_l=100.0),
           events=(done("dose", 5, substance="potassium bicarbonate", grams=10.0),)), None),
    ("potassium_sum", "edge: half of it changed leaves 19.5 with shrimps",
     state(of=tank("cherry shrimp", volume_l=100.0),
           events=(done("water_change", 1, percent=50.0),
                   done("dose", 5, substance="potassium bicarbonate", grams=10.0))), None),
    ("potassium_high", "speak: 80 mg/L measured with shrimps, from memory",
     state(read("potassium", 80.0), of=tank("cherry shrimp")), "warn"),
    ("potassium_high", "silent: changed since, half of 30 mg/L is left",
     state(read("potassium", 30.0, 3.0), of=tank("cherry shrimp"),
           events=(done("water_change", 1, percent=50.0),)), None),
    ("potassium_high", "silent: the sea holds 400 by nature",
     state(read("potassium", 400.0), read("salinity", 35.0), of=tank(kind="marine")), None),
    ("potassium_high", "silent: as much as plants are given",
     state(read("potassium", 20.0), of=tank("cherry shrimp")), None),
    ("potassium_high", "edge: 40 mg/L without invertebrates",
     state(read("potassium", 40.0), of=tank("neon tetra")), None),
    ("potassium_with_mussels", "speak: none at all",
     state(of=tank("swan mussel", volume_l=100.0),
           events=(done("dose", 5, substance="potassium bicarbonate", grams=1.0),)), "warn"),
    ("potassium_with_mussels", "silent: sodium instead",
     state(of=tank("swan mussel", volume_l=100.0),
           events=(done("dose", 5, substance="sodium bicarbonate", grams=1.0),)), None),
    ("potassium_with_mussels", "edge: measured since, the measurement counts",
     state(read("potassium", 3.0), of=tank("swan mussel", volume_l=100.0),
           events=(done("dose", 5, substance="potassium bicarbonate", grams=1.0),)), None),
    # carbon dioxide
    ("much_co2", "speak: a drop checker over 30", state(read("co2", 40)), "warn"),
    ("much_co2", "silent", state(read("co2", 15)), None),
    ("much_co2", "edge: the limit itself", state(read("co2", 30)), None),
    ("co2_by_older_kh", "speak: pH 6.2 a day after KH 5 is 104, common practice's rule 95",
     state(by_kit("kh", 5, 1), by_kit("ph", 6.2), events=()), "warn"),
    ("co2_by_older_kh", "silent: measured together another rule says it",
     state(by_kit("kh", 5), by_kit("ph", 6.2), events=()), None),
    ("co2_by_older_kh", "silent: pH 7.0 with KH 5 is 15",
     state(by_kit("kh", 5, 1), by_kit("ph", 7.0), events=()), None),
    ("co2_by_older_kh", "edge: water was changed since that KH",
     state(by_kit("kh", 5, 1), by_kit("ph", 6.2), events=(done("water_change", 0.5),)), None),
    ("co2_by_older_kh", "edge: a KH of four days before is of another water",
     state(by_kit("kh", 5, 4), by_kit("ph", 6.2), events=()), None),
    ("perhaps_much_co2", "speak: pH 6.5, KH 4 is about 40 by meter, 25 to 63 by chart",
     state(read("ph", 6.5, low=6.3, high=6.7), read("kh", 4, low=3.0)), "note"),
    ("perhaps_much_co2", "silent: pH 7.0, KH 4 is 12",
     state(by_kit("ph", 7.0), by_kit("kh", 4)), None),
    ("perhaps_much_co2", "edge: in the sea pH and KH do not tell it so",
     state(by_kit("ph", 6.5), by_kit("kh", 4), of=SEA), None),
    # hardness against its ions: 2.497 Ca + 4.118 Mg, Standard Methods 2340 B
    ("gh_against_ions", "speak: calcium 100 alone is 14 °dH",
     state(read("gh", 6), read("calcium", 100)), "note"),
    ("gh_against_ions", "silent: calcium 50, magnesium 10 is 166 mg/L, 9.3 °dH",
     state(read("gh", 9), read("calcium", 50), read("magnesium", 10)), None),
    ("gh_against_ions", "edge: little calcium may leave room for magnesium",
     state(read("gh", 9), read("calcium", 20)), None),
    ("conductivity_too_low", "speak: GH 20 conducts far over 100",
     state(read("conductivity", 100), read("gh", 20), read("kh", 12)), "note"),
    ("conductivity_too_low", "silent", state(read("conductivity", 400), read("gh", 8),
                                             read("kh", 5)), None),
    ("conductivity_too_low", "edge: a salted tank is not judged",
     state(read("conductivity", 100), read("gh", 20), read("kh", 12), read("salinity", 2)), None),
    ("other_salts", "speak: 1,500 at GH 5", state(read("conductivity", 1500), read("gh", 5),
                                                  read("kh", 4)), "note"),
    ("other_salts", "silent", state(read("conductivity", 300), read("gh", 5), read("kh", 4)), None),
    ("other_salts", "edge: half as much again is usual",
     state(read("conductivity", 350), read("gh", 6), read("kh", 4)), None),
    # softened water
    ("softened", "speak: GH 1, KH 12", state(by_kit("gh", 1), by_kit("kh", 12)), "warn"),
    ("softened", "silent: GH over KH", state(by_kit("gh", 8), by_kit("kh", 4)), None),
    ("softened", "edge: KH 4 is little", state(by_kit("gh", 2), by_kit("kh", 4)), None),
    ("kh_above_gh", "speak: rift-lake water", state(by_kit("gh", 8), by_kit("kh", 12)), "note"),
    ("kh_above_gh", "silent", state(by_kit("gh", 12), by_kit("kh", 8)), None),
    ("kh_above_gh", "edge: one drop apart is within the kits",
     state(by_kit("gh", 8), by_kit("kh", 9)), None),
    # a jump
    ("sudden_jump", "speak: KH 8 to 4 with nothing done",
     state(by_kit("kh", 8, 1), by_kit("kh", 4), events=()), "warn"),
    ("sudden_jump", "speak: KH 3 to 9 over 3 g of soda in 120 L, which makes 3.8",
     state(by_kit("kh", 3, 1), by_kit("kh", 9), of=LITRES,
           events=(done("dose", 0.5, substance="sodium bicarbonate", grams=3.0),)), "warn"),
    ("sudden_jump", "silent: KH 3 to 9 over 20 g of soda in 120 L, which makes 8.6",
     state(by_kit("kh", 3, 1), by_kit("kh", 9), of=LITRES,
           events=(done("dose", 0.5, substance="sodium bicarbonate", grams=20.0),)), None),
    ("sudden_jump", "silent: KH 3 to 9 over a buffer of unknown strength",
     state(by_kit("kh", 3, 1), by_kit("kh", 9), of=LITRES,
           events=(done("dose", 0.5, substance="kh buffer", millilitres=10.0),)), None),
    ("sudden_jump", "silent: water was changed",
     state(by_kit("kh", 8, 1), by_kit("kh", 4), events=(done("water_change", 0.5),)), None),
    ("sudden_jump", "speak: GH 8 to 14 over a change of a tenth: of 35 at most it makes 10.7",
     state(by_kit("gh", 8, 1), by_kit("gh", 14),
           events=(done("water_change", 0.5, percent=10.0),)), "warn"),
    ("sudden_jump", "silent: GH 8 to 14 over a change of a quarter, which well water may make",
     state(by_kit("gh", 8, 1), by_kit("gh", 14),
           events=(done("water_change", 0.5, percent=25.0),)), None),
    ("sudden_jump", "speak: the own tap is as hard as the tank was",
     state(by_kit("gh", 12, 1), by_kit("gh", 18), source=TAP,
           events=(done("water_change", 0.5, percent=25.0),)), "warn"),
    ("sudden_jump", "speak: a sea 35 to 32 over a tenth of sea water, which makes 34.5 at least",
     state(read("salinity", 35.0, 1), read("salinity", 32.0), of=SEA,
           events=(done("water_change", 0.5, percent=10.0, substance="salt water"),)), "warn"),
    ("sudden_jump", "silent: a sea 35 to 32 over a tenth of RO, which makes 31.5",
     state(read("salinity", 35.0, 1), read("salinity", 32.0), of=SEA,
           events=(done("water_change", 0.5, percent=10.0, substance="ro"),)), None),
    ("sudden_jump", "speak: 19 to 23 °C at once after a heater failed, one in an hour",
     state(read("temperature", 19.0, 0.01), read("temperature", 23.0), events=(),
           called={"heater_cold": NOON}), "warn"),
    ("sudden_jump", "silent: 19 to 23 °C in five hours after a heater failed",
     state(read("temperature", 19.0, 5 / 24), read("temperature", 23.0), events=(),
           called={"heater_cold": NOON}), None),
    ("sudden_jump", "silent: 25 to 19 °C at once: without a heater it falls by itself",
     state(read("temperature", 25.0, 0.01), read("temperature", 19.0), events=(),
           called={"heater_cold": NOON}), None),
    ("sudden_jump", "speak: 32 to 27 °C at once after a heater stuck",
     state(read("temperature", 32.0, 0.01), read("temperature", 27.0), events=(),
           called={"heater_hot": NOON}), "warn"),
    ("sudden_jump", "edge: two degrees are within two drops",
     state(by_kit("kh", 6, 1), by_kit("kh", 5), events=()), None),
    ("sudden_jump", "speak: pH 6.5 to 8.5 within the minute, common practice",
     state(read("ph", 8.5), read("ph", 6.5, 1e-4), events=()), "warn"),
    ("sudden_jump", "silent: so far in three hours pH may swing",
     state(read("ph", 8.5), read("ph", 6.5, 0.125), events=()), None),
    ("sudden_jump", "edge: 0.4 of pH is within a chart's steps",
     state(by_kit("ph", 7.4), by_kit("ph", 7.0, 1e-4), events=()), None),
    ("sudden_jump", "edge: 0.9 of pH within an hour where CO2 is let in",
     state(read("ph", 6.4), read("ph", 7.3, 0.04), injected=True, events=()), None),
    ("sudden_jump", "silent: water was changed before the pH moved",
     state(read("ph", 8.5), read("ph", 6.5, 0.02),
           events=(done("water_change", 0.01, percent=30.0),)), None),
    ("sudden_jump", "speak: KH 3 to 13 within the minute",
     state(by_kit("kh", 3), by_kit("kh", 13), events=()), "warn"),
    ("kh_above_gh", "silent: KH jumped, so that it is in doubt",
     state(by_kit("kh", 3, 0.5), by_kit("kh", 13), by_kit("gh", 6), events=()), None),
    ("expired_kit", "speak: past its day",
     state(by_kit("kh", 6), kit_expiry={"kh": date(2026, 1, 31)}), "note"),
    ("expired_kit", "silent: good", state(by_kit("kh", 6), kit_expiry={"kh": date(2027, 1, 1)}),
     None),
    ("expired_kit", "edge: its last day",
     state(by_kit("kh", 6), kit_expiry={"kh": NOON.date()}), None),
    # neglect
    ("neglected", "speak: nitrate 120, KH 2 of 9, pH 6.2 of 7.6",
     state(*NEGLECT, source=TAP), "warn"),
    ("neglected", "silent: nitrate is low",
     state(by_kit("nitrate", 20), *NEGLECT[1:], source=TAP), None),
    ("neglected", "edge: KH 4 of 9 is not spent",
     state(NEGLECT[0], by_kit("kh", 4), NEGLECT[2], source=TAP), None),
    # ammonia under every limit
    ("ammonia_seen", "speak: a half at pH 7",
     state(read("ammonia", 0.5, basis="N"), read("ph", 7.0), read("temperature", 25.0)), "note"),
    ("ammonia_seen", "silent: none", state(read("ammonia", 0.0), read("ph", 7.0)), None),
    ("ammonia_seen", "speak: rose from none",
     state(read("ammonia", 0.0, 1), read("ammonia", 0.2, basis="NH4"), read("ph", 6.9)), "note"),
    ("ammonia_seen", "edge: less than the finest usual kit sees",
     state(read("ammonia", 0.09, basis="N"), read("ph", 7.0)), None),
    ("nitrite_seen", "speak: a trace of the ion",
     state(read("nitrite", 0.05, basis="ion")), "note"),
    ("nitrite_seen", "speak: rose from none",
     state(read("nitrite", 0.0, 1), read("nitrite", 0.05, basis="ion")), "note"),
    ("nitrite_seen", "silent: none", state(read("nitrite", 0.0)), None),
    ("nitrite_seen", "silent: in the sea a trace is no sign of anything",
     state(read("nitrite", 0.05, basis="ion"), of=SEA), None),
    ("nitrite_seen", "edge: less than the finest usual kit sees",
     state(read("nitrite", 0.04, basis="ion")), None),
    # a new tank
    ("cycling_ammonia", "speak: ammonia and no nitrite yet",
     state(read("ammonia", 2.0, basis="N"), read("nitrite", 0.0),
           began=NOON - timedelta(days=9)), "note"),
    ("cycling_ammonia", "silent: an old tank",
     state(read("ammonia", 2.0), began=NOON - timedelta(days=400)), None),
    ("cycling_ammonia", "edge: the kit sees nothing",
     state(read("ammonia", 0.25, low=0.0, qualifier="<"), began=NOON - timedelta(days=9)), None),
    ("cycling_nitrite", "speak: nitrite has come",
     state(read("ammonia", 1.0), read("nitrite", 1.0), began=NOON - timedelta(days=20)), "note"),
    ("cycling_nitrite", "silent: none", state(read("nitrite", 0.0),
                                              began=NOON - timedelta(days=20)), None),
    ("cycling_nitrite", "edge: the sixtieth day is the last",
     state(read("nitrite", 1.0), began=NOON - timedelta(days=61)), None),
    ("cycling_done", "speak: both came and went, twice clear",
     state(*CYCLE, read("nitrite", 1.0, 8, basis="ion"), read("nitrite", 0.0, 1),
           read("nitrite", 0.0), began=NOON - timedelta(days=30)), "note"),
    ("cycling_done", "silent: nitrite was never seen",
     state(*CYCLE, read("nitrite", 0.0, 1), read("nitrite", 0.0),
           began=NOON - timedelta(days=30)), None),
    ("cycling_done", "edge: clear only once",
     state(*CYCLE, read("nitrite", 1.0, 1, basis="ion"), read("nitrite", 0.0),
           began=NOON - timedelta(days=30)), None),
    # animals
    ("does_not_suit", "speak: hard water for neon tetras", state(by_kit("gh", 20), of=TETRAS),
     "warn"),
    ("does_not_suit", "silent", state(by_kit("gh", 6), of=TETRAS), None),
    ("does_not_suit", "edge: a drop over, which a retest would decide",
     state(by_kit("gh", 11), of=TETRAS), None),
    ("do_not_go_together", "speak: no pH suits both", state(of=tank("neon tetra", "tropheus")),
     "note"),
    ("do_not_go_together", "silent", state(of=tank("neon tetra", "corydoras")), None),
    ("do_not_go_together", "edge: ranges that just meet",
     state(of=tank("guppy", "bronze cory")), None),
    ("unknown_animal", "speak: not in the table", state(of=tank("gryphon")), "note"),
    ("unknown_animal", "silent", state(of=TETRAS), None),
    ("unknown_animal", "edge: a plural is known", state(of=tank("Neon Tetras")), None),
    ("wrong_water", "speak: a fish of the sea in fresh water, nothing measured",
     state(of=tank("clownfish")), "warn"),
    ("wrong_water", "speak: a plant of fresh water in the sea is no emergency",
     state(of=tank("anubias", kind="marine")), "note"),
    ("wrong_water", "silent: in the sea", state(of=tank("clownfish", kind="marine")), None),
    ("wrong_water", "silent: what was measured counts, not what the tank is called",
     state(read("salinity", 34.0), of=tank("clownfish")), None),
    ("wrong_water", "edge: mollies live in either", state(of=tank("molly", kind="brackish")), None),
    ("rivals", "speak: two bettas, common practice", state(of=_few(2, "betta")), "warn"),
    ("rivals", "silent: one", state(of=_few(1, "betta")), None),
    ("rivals", "speak: of gouramis the sexes decide, which nobody told: asked, common practice",
     state(of=_few(3, "dwarf gourami")), "note"),
    ("rivals", "speak: two males", state(of=_few(2, "male dwarf gouramis")), "warn"),
    ("rivals", "silent: a male and his females",
     state(of=_sexed("dwarf gouramis", 1, 3)), None),
    ("rivals", "edge: a male betta hunts his females", state(of=_sexed("bettas", 1, 3)), "warn"),
    ("rivals", "edge: females alone may bear each other",
     state(of=_few(4, "female bettas")), "note"),
    ("rivals", "edge: clownfish live in pairs",
     state(of=_few(2, "ocellaris clownfish", kind="marine")), None),
    ("rivals", "edge: a third one is driven to death",
     state(of=_few(3, "ocellaris clownfish", kind="marine")), "warn"),
    ("crowded", "speak: six goldfish of 39 L each in 200 L, common practice",
     state(of=tank("goldfish", volume_l=200.0)), "note"),
    ("crowded", "silent: in 300 L", state(of=tank("goldfish", volume_l=300.0)), None),
    ("crowded", "silent: shrimps are not counted",
     state(of=tank("cherry shrimp", volume_l=1.0)), None),
    ("crowded", "edge: six neon tetras of 2 L each",
     state(of=tank("neon tetra", volume_l=12.0)), None),
    ("cramped", "speak: an oscar of 32 cm in 90 L, common practice",
     state(of=_few(1, "oscar", volume_l=90.0)), "note"),
    ("cramped", "silent: in 400 L", state(of=tank("oscar", volume_l=400.0)), None),
    ("cramped", "silent: nobody told the volume", state(of=tank("oscar")), None),
    ("cramped", "edge: 0.25 L for the square of 32 cm",
     state(of=tank("oscar", volume_l=256.0)), None),
    ("few_of_a_shoal", "speak: two neon tetras, common practice", state(of=_few(2)), "note"),
    ("few_of_a_shoal", "silent: none are left", state(of=_few(0)), None),
    ("few_of_a_shoal", "silent: a betta lives alone", state(of=_few(1, "betta")), None),
    ("few_of_a_shoal", "edge: six are enough", state(of=_few(6)), None),
    # trends
    ("heading", "speak: KH falls 0.3 a day to 3.4",
     state(*falling("kh", 9.0, -0.3), events=()), "warn"),
    ("heading", "silent: rises away from it", state(*falling("kh", 5.0, 0.3), events=()), None),
    ("heading", "edge: nothing was measured since the change",
     state(*falling("kh", 9.0, -0.3), events=(done("water_change", 0.0),)), None),
    ("drifting", "speak: changed each week, the season still falls",
     state(*weekly("kh", 8.5, -0.4), events=CHANGES), "note"),
    ("drifting", "silent: far from any limit",
     state(*weekly("kh", 20.0, -0.4), events=CHANGES), None),
    ("drifting", "edge: less than a step of the kit",
     state(*weekly("kh", 4.5, -0.08), events=CHANGES), None),
    # source
    ("kh_under_source", "speak: KH 4 of 12", state(by_kit("kh", 4), source=[by_kit("kh", 12)]),
     "note"),
    ("kh_under_source", "silent", state(by_kit("kh", 10), source=[by_kit("kh", 12)]), None),
    ("kh_under_source", "edge: half of it", state(by_kit("kh", 6), source=[by_kit("kh", 12)]),
     None),
    ("gh_over_source", "speak: GH 14 of 8", state(by_kit("gh", 14), source=[by_kit("gh", 8)]),
     "note"),
    ("gh_over_source", "silent: it suits the fish on record",
     state(by_kit("gh", 14), source=[by_kit("gh", 8)], of=tank("guppy")), None),
    ("gh_over_source", "edge: three degrees", state(by_kit("gh", 11), source=[by_kit("gh", 8)]),
     None),
    ("gh_over_source", "silent: demineralised water that was hardened on purpose",
     state(by_kit("gh", 8), source=[by_kit("gh", 0)]), None),
    ("sudden_jump", "silent: a pond follows the weather",
     state(read("temperature", 12, 1), read("temperature", 16), of=tank(kind="pond"), events=()),
     None),
    # steady
    ("steady", "speak: four weeks, suited, nothing off", state(*STEADY, of=TETRAS), "note"),
    ("steady", "silent: nobody is on record", state(*STEADY), None),
    ("steady", "silent: nitrate climbs, by too few readings for a trend",
     state(*STEADY, *(read("nitrate", 35.0 - ago, ago) for ago in (21, 14, 7, 0)), of=TETRAS),
     None),
    ("steady", "edge: two weeks are too short", state(*STEADY[6:], of=TETRAS), None),
]  # fmt: skip


@pytest.mark.parametrize(
    ("rule", "case", "held", "severity"), CASES, ids=[f"{c[0]}: {c[1]}" for c in CASES]
)
def test_rule(rule: str, case: str, held: State, severity: str | None) -> None:
    told = (*held.readings, "stock", "dose", "water_change")
    found = findings(held, *told).get(rule)
    assert (found.severity if found else None) == severity, case


@pytest.mark.parametrize("rule", sorted(BY_ID))
@pytest.mark.parametrize("kind", ["speak", "silent", "edge"])
def test_every_rule_has_its_cases(rule: str, kind: str) -> None:
    assert [c for c in CASES if c[0] == rule and c[1].startswith(kind)]


def test_rules_are_whole() -> None:
    for rule in RULES:
        assert rule.wakes, rule.ids
        assert rule.ids
        assert rule.first in FIRST
        assert rule.source


def test_what_another_finding_says_is_not_said_twice() -> None:
    held = findings(state(*NEGLECT, source=TAP))
    assert "neglected" in held
    assert not {"nitrate", "low_kh", "kh_under_source"} & held.keys()


def test_a_change_after_neglect_keeps_the_step_limits() -> None:
    """KH 2 (1 to 2) with source 9: +1 °dH at most is a seventh; the planner looks at pH too."""
    share = float(findings(state(*NEGLECT, source=TAP))["neglected"].facts["share"])
    assert 0.05 < share <= 1.0 / 7.0


def test_where_no_buffer_is_left_no_share_is_told() -> None:
    spent = [by_kit("nitrate", 150), by_kit("kh", 0.5), by_kit("ph", 5.2), read("ammonia", 0.0)]
    facts = findings(state(*spent, source=[by_kit("kh", 18), by_kit("ph", 7.6)]))["neglected"].facts
    assert "share" not in facts


def test_with_ammonia_the_change_itself_is_reckoned_first() -> None:
    facts = findings(state(*NEGLECT, read("ammonia", 1.0), source=TAP))["neglected"].facts
    assert facts["ammonia"] == "present"
    assert "share" not in facts


@pytest.mark.parametrize(
    "of",
    [{"of": SEA}, {"of": tank(kind="pond")}, {"of": set_up("planted"), "injected": True}],
    ids=["reef", "pond", "planted with CO2"],
)
def test_what_swings_by_nature_is_held_against_its_own_swing(of: dict[str, Any]) -> None:
    swing = [read("ph", 8.0 if ago % 2 else 8.4, ago / 2) for ago in range(1, 15)]
    assert "ph_moved" not in findings(state(read("ph", 8.0), *swing, **of))
    assert "ph_moved" in findings(state(read("ph", 7.6), *swing, **of))


def test_a_leap_of_ph_is_called_no_swing() -> None:
    told = findings(state(read("ph", 6.2), read("ph", 7.4, 0.4)))
    assert "ph_fell" in told
    assert not {"ph_moved", "ph_moved_other_hour"} & told.keys()


def test_the_highest_of_the_day_tells_how_far_it_fell() -> None:
    fell = findings(state(read("ph", 6.4), read("ph", 6.9, 0.2), read("ph", 7.6, 0.5)))["ph_fell"]
    assert (fell.facts["was"], fell.facts["hours"]) == (7.6, 12.0)


def test_a_tank_that_went_so_far_before_swings() -> None:
    swing = [read("ph", 6.6 if ago % 2 else 7.7, ago / 2) for ago in range(1, 15)]
    assert "ph_fell" not in findings(state(read("ph", 6.6), *swing))
    assert "ph_fell" in findings(state(read("ph", 6.2), *swing))


def test_of_a_fall_kh_tells_what_it_is() -> None:
    thin = findings(state(read("ph", 6.2), read("ph", 7.4, 1), read("kh", 1.0)))["ph_fell"].facts
    assert (thin["kh"], thin["thin"]) == (1.0, "yes")
    held = findings(state(read("ph", 7.0), read("ph", 8.0, 1), read("kh", 6.0)))["ph_fell"].facts
    assert held["kh"] == 6.0
    assert "thin" not in held
    old = findings(state(read("ph", 7.0), read("ph", 8.0, 1), read("kh", 6.0, 1)))["ph_fell"].facts
    assert "kh" not in old


def test_a_fall_beside_its_carbon_dioxide_leaves_the_advice_to_that() -> None:
    told = findings(state(read("ph", 6.2), read("ph", 7.4, 1), read("kh", 6.0)))
    assert "contradiction" in told
    assert "told" in told["ph_fell"].facts


def test_what_was_done_in_between_is_named() -> None:
    dosed = (done("dose", 0.2, substance="sodium bicarbonate", grams=5.0),)
    rose = findings(state(read("ph", 8.2), read("ph", 7.0, 0.4), events=dosed))["ph_rose"]
    assert rose.facts["touched"] == "yes"


def test_a_jump_within_the_hour_is_to_be_read_again() -> None:
    told = findings(state(read("ph", 6.2), read("ph", 7.4, 1e-3), events=()))
    assert "sudden_jump" in told
    assert "ph_fell" not in told


def test_a_planted_tank_without_co2_is_held_against_the_same_hour() -> None:
    swing = [read("ph", 7.6 if ago % 2 else 7.2, ago / 2) for ago in range(1, 15)]
    held = findings(state(read("ph", 7.6), *swing, of=set_up("planted")))
    assert "ph_moved" in held


def test_a_source_with_more_buffer_is_named_beside_a_low_kh() -> None:
    low = by_kit("kh", 2)
    better, worse = (state(low, source=[by_kit("kh", kh)]) for kh in (6, 3))
    assert findings(better)["low_kh"].facts["source_kh"] == 6.0
    assert "source_kh" not in findings(worse)["low_kh"].facts
    sea = state(by_kit("kh", 5), source=[by_kit("kh", 9)], of=SEA)
    assert "source_kh" not in findings(sea)["low_kh"].facts


def test_in_the_sea_calcium_is_told_as_calcium() -> None:
    """60 g of the dihydrate in 300 L: 60 * 40.078 / 147.01 / 300 = 54.5 mg/L (atomic masses)."""
    held = state(
        read("salinity", 35.0),
        of=tank(kind="marine", volume_l=300.0),
        events=(salted("calcium chloride", 60.0),),
    )
    facts = findings(held, "dose")["overdose"].facts
    assert facts["calcium"] == pytest.approx(54.5, rel=0.01)
    assert "gh" not in facts


@pytest.mark.parametrize(
    ("since", "total"),
    [((), 99.7), ((done("water_change", 0.5, percent=50.0),), 49.9),
     ((done("water_change", 0.5, percent=90.0),), None)],
)  # fmt: skip
def test_what_was_put_in_too_much_of_stands_until_changes_took_it_out(
    since: tuple[Happening, ...], total: float | None
) -> None:
    """20 g of K2SO4 in 90 L are 99.7 mg/L; a tenth of it is under the 20 of shrimps."""
    put_in = done("dose", 1.0, substance="potassium sulfate", grams=20.0)
    held = state(read("ph", 7.0), of=NINETY_SHRIMPS, events=(put_in, *since))
    found = {each.id: each for each in stands(held, frozenset({"ph"}))}
    if total is None:
        assert "nutrient_overdose" not in found
    else:
        assert found["nutrient_overdose"].facts["total"] == pytest.approx(total, rel=0.01)
