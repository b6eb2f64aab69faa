"""Findings in one short line each."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import date

from bot.chat.words.finding_animals import (
    cramped,
    do_not_go_together,
    does_not_suit,
    few_of_a_shoal,
    unknown_animal,
)
from bot.chat.words.finding_parts import Facts, amount, analyte, label, number, with_unit
from bot.chat.words.finding_reasons import why
from bot.chat.words.numbers import plain, small
from bot.chat.words.traits import day
from core.advice import limits
from core.advice.findings import Finding

__all__ = ["line", "why"]


def _ammonia(facts: Facts) -> str:
    share = number(facts, "nh3_n")
    if share <= limits.NH3_WARN and "chronic_n" in facts:
        limit = small(number(facts, "chronic_n"))
        why = f"total is over {limit} mg/L, the EPA 2013 long-term limit at this pH"
    else:
        acidity = plain(number(facts, "ph"), 1)
        why = f"{small(share)} mg/L as N of it is un-ionised at pH {acidity}"
    assumed = " (taking 30 °C)" if "temperature_assumed" in facts else ""
    return (
        f"Ammonia is dangerous: {why}{assumed}. Stop feeding, change water that matches in KH,"
        " do not raise pH."
    )


def _low_kh(facts: Facts) -> str:
    kh, limit = plain(number(facts, "kh"), 1), plain(number(facts, "limit"), 1)
    return f"KH {kh} is low (under {limit} °dH): pH can fall. Ask: dose kh {_next_step(facts)}"


def _next_step(facts: Facts) -> str:
    return plain(max(round(number(facts, "limit") + 0.5), 1), 1)


def _moved(facts: Facts) -> str:
    return (
        f"pH went from {plain(number(facts, 'was'), 1)} to {plain(number(facts, 'ph'), 1)}"
        " since a reading at the same hour: look at KH before anything else."
    )


def _moved_other_hour(facts: Facts) -> str:
    return (
        f"pH was {plain(number(facts, 'was'), 1)} at another hour; it swings over the day."
        " Test at the same hour to tell."
    )


def _contradiction(facts: Facts) -> str:
    said = f"pH {plain(number(facts, 'ph'), 1)} with KH {plain(number(facts, 'kh'), 1)}"
    if "co2_mg_l" in facts:
        return (
            f"{said} does not add up: it would mean over {small(number(facts, 'co2_mg_l'))} mg/L"
            " CO2. Retest both."
        )
    return f"{said} does not add up. Retest both."


def _low_oxygen(facts: Facts) -> str:
    could = (
        f" (the water could hold {plain(number(facts, 'saturation'), 1)})"
        if "saturation" in facts
        else ""
    )
    return (
        f"Oxygen {plain(number(facts, 'oxygen'), 1)} mg/L is low{could}: move the surface,"
        " add air now."
    )


def _much_co2(facts: Facts) -> str:
    said = f"CO2 is about {small(number(facts, 'co2_mg_l'))} mg/L, over 30: turn injection down"
    if "ammonia" in facts:
        return f"{said}. {_NO_AIR}"
    return f"{said} or move the surface, and watch for gasping."


def _perhaps_much_co2(facts: Facts) -> str:
    said = (
        f"pH {plain(number(facts, 'ph'), 1)} with KH {plain(number(facts, 'kh'), 1)} may mean"
        f" {small(number(facts, 'low'))} to {small(number(facts, 'high'))} mg/L CO2: retest pH"
    )
    return f"{said}. {_NO_AIR}" if "ammonia" in facts else f"{said}; if they gasp, aerate."


_NO_AIR = "There is ammonia: extra air raises pH and makes it poisonous, so only if they gasp."


def _sudden_jump(facts: Facts) -> str:
    return (
        f"{analyte(facts)} went from {amount(facts, 'was')} to {with_unit(facts, 'value')} with"
        " nothing logged in between: retest before doing anything."
    )


def _gh_against_ions(facts: Facts) -> str:
    return (
        f"GH {plain(number(facts, 'gh'), 1)} does not fit calcium and magnesium, which make"
        f" {plain(number(facts, 'low'), 1)} to {plain(number(facts, 'high'), 1)} °dH: retest."
    )


def _conductivity_too_low(facts: Facts) -> str:
    return (
        f"Conductivity {plain(number(facts, 'conductivity'), 0)} µS/cm is under the"
        f" {plain(number(facts, 'expected'), 0)} that this hardness alone makes: retest GH and KH,"
        " check the probe."
    )


def _other_salts(facts: Facts) -> str:
    return (
        f"Conductivity {plain(number(facts, 'conductivity'), 0)} µS/cm is far over what hardness"
        f" makes (about {plain(number(facts, 'expected'), 0)}): other salts have piled up, or the"
        " probe is off."
    )


def _neglected(facts: Facts) -> str:
    said = (
        f"Nitrate {plain(number(facts, 'nitrate'), 0)}, KH {plain(number(facts, 'kh'), 1)} and an"
        " acid pH: the water is used up. No large change!"
    )
    ammonia = facts.get("ammonia")
    if ammonia == "present":
        return (
            f"{said} There is ammonia, which a rising pH makes poisonous. Ask: what if i change 5%"
        )
    if ammonia == "unknown":
        said += " Test ammonia first."
    if "share" not in facts and "source_kh" in facts:
        return f"{said} Even small changes are too fast: cut new water with RO to the tank's KH."
    if "share" not in facts:
        return f"{said} Measure your source water (/source), then change a little each day."
    share = number(facts, "share") * 100
    return f"{said} Then {share:.0f} % a day, with KH and pH tested each day."


def _heading(facts: Facts) -> str:
    rising = number(facts, "per_day") > 0
    return (
        f"{analyte(facts)} is {'rising' if rising else 'falling'} and reaches"
        f" {with_unit(facts, 'limit')} in about {_days(facts)}{_act(facts, rising)}"
    )


def _days(facts: Facts) -> str:
    days = max(round(number(facts, "days")), 1)
    return "a day" if days == 1 else f"{days} days"


def _act(facts: Facts, rising: bool) -> str:
    if facts["analyte"] == "nitrate" and rising:
        return ": change water before then."
    if facts["analyte"] == "kh" and not rising:
        return ": change water or dose in good time. Ask: dose kh +1"
    return ": test again in a few days, change nothing fast."


def _drifting(facts: Facts) -> str:
    return _heading(facts).replace(" is ", " is slowly ", 1)


def _copper(facts: Facts) -> str:
    return (
        f"Copper {small(number(facts, 'copper'))} mg/L kills invertebrates ({facts['species']}):"
        " change water now, with water free of copper."
    )


def _animals_of_new_tank(facts: Facts) -> str:
    if facts["animals"] == "yes":
        return "feed little, test daily, change water when ammonia or nitrite is warned of."
    return "add no animals yet, keep testing."


_LINES: Mapping[str, Callable[[Facts], str]] = {
    "ammonia": _ammonia,
    "ammonia_without_ph": lambda facts: (
        f"Ammonia {small(number(facts, 'total_n'))} mg/L should be 0; send pH and temperature,"
        " they decide how poisonous it is."
    ),
    "nitrite": lambda facts: (
        f"Nitrite {small(number(facts, 'nitrite'))} mg/L (as NO2) harms fish: change water,"
        " feed less, measure chloride."
    ),
    "nitrite_with_chloride": lambda facts: (
        f"Nitrite {small(number(facts, 'nitrite'))} mg/L (as NO2), eased by chloride for the"
        " species tested; still find the cause."
    ),
    "nitrite_in_salt_water": lambda facts: (
        f"Nitrite {small(number(facts, 'nitrite'))} mg/L: still cycling; in salt water a sign,"
        " not a poison."
    ),
    "nitrate": lambda facts: (
        f"Nitrate {plain(number(facts, 'nitrate'), 0)} mg/L is over"
        f" {plain(number(facts, 'limit'), 0)}: change water in small, frequent steps."
    ),
    "low_kh": _low_kh,
    "low_gh": lambda facts: (
        f"GH {plain(number(facts, 'gh'), 1)} is under 1 °dH: too few minerals for any animal."
        " Raise it by 2 °dH a day at most."
    ),
    "ph_moved": _moved,
    "ph_moved_other_hour": _moved_other_hour,
    "contradiction": _contradiction,
    "contradiction_low": lambda facts: (
        f"pH {plain(number(facts, 'ph'), 1)} with KH {plain(number(facts, 'kh'), 1)} at night"
        " leaves almost no CO2. Retest both."
    ),
    "low_oxygen": _low_oxygen,
    "chlorine": lambda facts: (
        f"Chlorine {small(number(facts, 'chlorine'))} mg/L burns gills: treat the water with a"
        " dechlorinator by its label now, then aerate."
    ),
    "copper": _copper,
    "copper_unknown_stock": lambda facts: (
        f"Copper {small(number(facts, 'copper'))} mg/L kills shrimps and snails: find where it"
        " comes from, test the tap."
    ),
    "copper_low_kh": lambda facts: (
        f"Copper {small(number(facts, 'copper'))} mg/L at KH {plain(number(facts, 'kh'), 1)}:"
        " low KH makes it more poisonous; change water, find where it comes from."
    ),
    "potassium_sum": lambda facts: (
        f"Doses have brought {plain(number(facts, 'potassium'), 0)} mg/L potassium (caution over"
        f" {plain(number(facts, 'limit'), 0)}): use sodium bicarbonate or water changes now."
    ),
    "potassium_with_mussels": lambda _: (
        "Mussels do not bear potassium salts: dose none of them, change some water."
    ),
    "neglected": _neglected,
    "does_not_suit": does_not_suit,
    "do_not_go_together": do_not_go_together,
    "cramped": cramped,
    "few_of_a_shoal": few_of_a_shoal,
    "unknown_animal": unknown_animal,
    "much_co2": _much_co2,
    "perhaps_much_co2": _perhaps_much_co2,
    "softened": lambda facts: (
        f"GH {plain(number(facts, 'gh'), 1)} with KH {plain(number(facts, 'kh'), 1)} looks like"
        " softened tap water: it is full of sodium, not soft. Use the tap before the softener."
    ),
    "kh_above_gh": lambda facts: (
        f"KH {plain(number(facts, 'kh'), 1)} is above GH {plain(number(facts, 'gh'), 1)}: sodium"
        " water (or bicarbonate doses); fine if your animals are used to it."
    ),
    "sudden_jump": _sudden_jump,
    "gh_against_ions": _gh_against_ions,
    "conductivity_too_low": _conductivity_too_low,
    "other_salts": _other_salts,
    "expired_kit": lambda facts: (
        f"The {label(facts)} kit was good until {day(date.fromisoformat(str(facts['expired'])))}:"
        " trust it less, check it against a known water."
    ),
    "cycling_ammonia": lambda facts: (
        "If the tank is new, its first stage: ammonia is there, nitrite not yet; "
        + _animals_of_new_tank(facts)
    ),
    "cycling_nitrite": lambda facts: (
        "If the tank is new, its second stage: nitrite is there; " + _animals_of_new_tank(facts)
    ),
    "cycling_done": lambda _: (
        "Ammonia and nitrite came and went: the filter works. Add animals a few at a time."
    ),
    "heading": _heading,
    "drifting": _drifting,
    "kh_under_source": lambda facts: (
        f"KH {plain(number(facts, 'kh'), 1)} is far under your source's"
        f" {plain(number(facts, 'source'), 1)}: small, more frequent changes bring it back."
    ),
    "gh_over_source": lambda facts: (
        f"GH {plain(number(facts, 'gh'), 1)} is far over your source's"
        f" {plain(number(facts, 'source'), 1)}: salts pile up. Top up with demineralised water."
    ),
    "steady": lambda facts: (
        f"Steady for {plain(number(facts, 'weeks'), 0)} weeks and it suits your animals: change"
        " nothing."
    ),
}


def line(finding: Finding) -> str:
    """One finding in one line, with what to do first."""
    return _LINES[finding.id](finding.facts)
