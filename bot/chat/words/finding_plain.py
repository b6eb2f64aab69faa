"""Findings whose line is one sentence with numbers in it, as a table."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words.finding_parts import SMALL
from bot.chat.words.text import N_

PLAIN: Final[Mapping[str, tuple[str, Mapping[str, int]]]] = {
    "ammonia_without_ph": (
        N_(
            "Ammonia {total_n} mg/L as N should be 0: stop feeding, send pH and temperature; they"
            " decide how poisonous it is."
        ),
        {"total_n": SMALL},
    ),
    "too_warm": (
        N_(
            "Temperature {temperature} °C is too warm for almost any animal (over {limit}): heater"
            " off, strong air, cool it by 1 °C an hour at most."
        ),
        {"temperature": 1, "limit": 0},
    ),
    "high_ph": (
        N_(
            "pH {ph} is high for almost any fish (over {limit}): retest with a fresh sample,"
            " measure ammonia, which is poison at this pH; no acid."
        ),
        {"ph": 1, "limit": 0},
    ),
    "low_ph": (
        N_(
            "pH {ph} is very low for almost any fish (under {limit}): retest with a fresh sample,"
            " measure KH and ammonia; nothing that raises it fast."
        ),
        {"ph": 1, "limit": 1},
    ),
    "sea_kh_high": (
        N_(
            "KH {kh} is over {limit} °dH: lime falls out of a sea and corals burn. Retest; no"
            " buffer, no calcium until it has fallen by itself."
        ),
        {"kh": 1, "limit": 0},
    ),
    "low_gh": (
        N_(
            "GH {gh} is under 1 °dH: too few minerals for any animal. Raise it by 2 °dH a day at"
            " most."
        ),
        {"gh": 1},
    ),
    "ph_moved": (
        N_(
            "pH went from {was} to {ph} since a reading at the same hour: look at KH before"
            " anything else."
        ),
        {"was": 1, "ph": 1},
    ),
    "ph_moved_other_hour": (
        N_(
            "pH went from {was} to {ph} between two hours of the day: look at KH. A day's swing"
            " may be part of it; a test at the same hour tells."
        ),
        {"was": 1, "ph": 1},
    ),
    "co2_against_ph": (
        N_(
            "CO2 {co2_mg_l} mg/L does not fit pH {ph} with KH {kh} °dH, which make {low} to {high}:"
            " retest, or an acid other than CO2 is at work."
        ),
        {"co2_mg_l": SMALL, "ph": 1, "kh": 1, "low": SMALL, "high": SMALL},
    ),
    "oxygen_by_day": (
        N_(
            "Oxygen {oxygen} mg/L is little by day (the water could hold {saturation}): plants use"
            " it up at night. Test before dawn."
        ),
        {"oxygen": 1, "saturation": 1},
    ),
    "chlorine": (
        N_(
            "Chlorine {chlorine} mg/L burns gills: treat the water with a dechlorinator by its"
            " label now, then aerate."
        ),
        {"chlorine": SMALL},
    ),
    "copper_unknown_stock": (
        N_(
            "Copper {copper} mg/L kills shrimps and snails: find where it comes from, test the tap."
        ),
        {"copper": SMALL},
    ),
    "copper_unseen": (
        N_(
            "A copper test that begins at {copper} mg/L cannot clear it for shrimps and snails,"
            " which die of less: use a finer test."
        ),
        {"copper": SMALL},
    ),
    "copper_low_kh": (
        N_(
            "Copper {copper} mg/L at KH {kh} °dH: low KH makes it more poisonous; change a quarter"
            " (dechlorinated, same KH), find where it comes from."
        ),
        {"copper": SMALL, "kh": 1},
    ),
    "potassium_sum": (
        N_(
            "Doses have brought {potassium} mg/L potassium (caution over {limit}): no more"
            " potassium salts; usual water changes lower it. For KH take sodium bicarbonate."
        ),
        {"potassium": 0, "limit": 0},
    ),
    "potassium_high": (
        N_(
            "Potassium {potassium} mg/L is high (caution over {limit}): dose no potassium salts,"
            " lower it by usual water changes, and test your tap."
        ),
        {"potassium": 0, "limit": 0},
    ),
    "potassium_with_mussels": (
        N_("Mussels do not bear potassium salts: dose none of them, change some water."),
        {},
    ),
    "softened": (
        N_(
            "GH {gh} with KH {kh} °dH looks like softened tap water: full of sodium, not soft. Take"
            " new water from before the softener, in small changes."
        ),
        {"gh": 1, "kh": 1},
    ),
    "kh_above_gh": (
        N_(
            "KH {kh} is above GH {gh} °dH: sodium water (or bicarbonate doses); fine if your"
            " animals are used to it."
        ),
        {"kh": 1, "gh": 1},
    ),
    "gh_against_ions": (
        N_("GH {gh} does not fit calcium and magnesium, which make {low} to {high} °dH: retest."),
        {"gh": 1, "low": 1, "high": 1},
    ),
    "conductivity_too_low": (
        N_(
            "Conductivity {conductivity} µS/cm is under the {expected} that this hardness alone"
            " makes: retest GH and KH, check the probe."
        ),
        {"conductivity": 0, "expected": 0},
    ),
    "other_salts": (
        N_(
            "Conductivity {conductivity} µS/cm is far over what hardness makes (about {expected}):"
            " other salts have piled up, or the probe is off."
        ),
        {"conductivity": 0, "expected": 0},
    ),
    "condensate_in": (
        N_(
            "Not for animals: such water holds metals and no buffer. Test copper, KH and pH now,"
            " and change a little with your usual water."
        ),
        {},
    ),
    "softened_in": (
        N_(
            "Softened water is not soft water: sodium, hardly any GH. Test GH and KH; from now on"
            " take it from before the softener, in small changes."
        ),
        {},
    ),
    "tap_in": (
        N_(
            "Was it dechlorinated? If not: dechlorinator (thiosulfate) into the tank now, for all"
            " of its water; chlorine burns gills."
        ),
        {},
    ),
    "tap_topped_up": (
        N_(
            "Top up with RO or distilled water: tap water adds hardness, nitrate and metals each"
            " time. Dechlorinated? Test salinity."
        ),
        {},
    ),
    "cycling_done": (
        N_("Ammonia and nitrite came and went: the filter works. Add animals a few at a time."),
        {},
    ),
    "kh_under_source": (
        N_(
            "KH {kh} is far under your source's {source} °dH: small, more frequent changes bring it"
            " back."
        ),
        {"kh": 1, "source": 1},
    ),
    "gh_over_source": (
        N_(
            "GH {gh} is far over your source's {source} °dH: salts pile up. Top up with"
            " demineralised (RO) water."
        ),
        {"gh": 1, "source": 1},
    ),
}
"""By the finding's id: the sentence, and each number's name in the facts with its decimals."""
