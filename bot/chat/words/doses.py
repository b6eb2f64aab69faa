"""A dose in words: what to do first, the caution before the grams, and what follows."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bot.chat.words.numbers import age, grams, litres, plain, small, span
from core.advice import limits
from core.advice.kit_doubt import KitDoubt
from core.advice.plan import Goal, Plan, Upkeep
from core.water import solve

NAMES = {
    "sodium bicarbonate": "sodium bicarbonate (baking soda)",
    "potassium bicarbonate": "potassium bicarbonate",
}

FINEST_SCALE = 0.1
"""Less than this a pocket scale does not tell; common practice. [g]"""

LOG_IT, RETEST = "log it", "remind me to retest in 24 h"


RETEST_POISON = "Retest ammonia and pH first: within your kits' doubt it would be too much. "
KEEP_CO2 = "Keep aeration and CO2 as they are and retest ammonia. "


UNITS: Mapping[str, str] = {"kh": "°dH", "gh": "°dH", "salinity": "g/kg"}
LABELS: Mapping[str, str] = {"kh": "KH", "gh": "GH"}


def way(goal: Goal) -> str:
    """From where to where."""
    unit = UNITS.get(goal.analyte, "mg/L")
    name = LABELS.get(goal.analyte, goal.analyte)
    if goal.relative:
        return f"{name} +{plain(goal.change, 2)} {unit}"
    fine = goal.change < 0.5 or 0.0 < goal.start < 0.5  # finer than that no kit tells
    decimals = 2 if fine else 1
    return f"{name} {plain(goal.start, decimals)} → {plain(goal.target, decimals)} {unit}"


def head(plan: Plan, tank: str | None, doubt: KitDoubt | None = None) -> str:
    """The answer: from where to where, in how many parts, and on what condition."""
    condition = _condition(plan, tank)
    if doubt is not None and doubt.over_gate:
        condition += RETEST_POISON
    where = f"{tank} ({litres(plan.volume_l)})" if tank else litres(plan.volume_l)
    ways = " and ".join(way(goal) for goal in plan.goals)
    if plan.blind:
        return f"{condition}{where}: one small part only, {ways}, then measure."
    if plan.is_old and plan.reading_age is not None:
        name = LABELS.get(plan.goals[0].analyte, plan.goals[0].analyte)
        return f"Retest first: the {name} reading is {age(plan.reading_age)}. {where}: {ways}."
    if plan.changed_since:
        name = LABELS.get(plan.goals[0].analyte, plan.goals[0].analyte)
        return f"Retest first: water was changed since the {name} reading. {where}: {ways}."
    pace = "in one part" if plan.count == 1 else f"in {plan.count} parts, one a day"
    if plan.within_kit:
        return (
            f"{condition}Retest first: {ways} is within what your kit can tell apart. {where}: in"
            " one part."
        )
    if plan.emergency:
        return f"{condition}{where}: an emergency, so up to 2 °dH a day: {ways} {pace}."
    return f"{condition}{where}: {ways} {pace}."


def _condition(plan: Plan, tank: str | None) -> str:
    if plan.gate is None:
        return ""
    keep = KEEP_CO2 if plan.gate.keep_co2 else ""
    if plan.gate.only_below is None or tank is None:
        return keep
    only = f"Only if total ammonia is under {plain(plan.gate.only_below, 2)} mg/L (measure it). "
    return only + keep


def caution(plan: Plan | None = None) -> str:
    """What goes before every number of grams; one line, the substance's own hazard first."""
    own = [CAUTIONS[name] for name in plan.cautions if name in CAUTIONS] if plan else []
    return " ".join(
        [
            *own,
            "Net volume counts; dissolve first, small steps, watch the animals; estimate from kits,"
            " not veterinary advice.",
        ]
    )


CAUTIONS: Mapping[str, str] = {
    "heats": "Calcium chloride gets hot: dissolve a little at a time in cool water.",
    "sea_precipitation": "Never calcium and buffer in one place or at one time.",
    "salt_species": "Not for plants, snails, loaches or catfish without asking.",
    "potassium": "Much potassium in all: watch snails, shrimps and plants; prefer sodium salts.",
    "saturated": "The water is nearly too full of lime already: retest calcium, KH and pH first.",
    "sodium": "Sodium adds up (8.2 mg/L a °dH): where KH keeps falling, rather change water.",
    "alkaline_dust": "Gloves and eye protection: the dust is alkaline.",
}


def amount(plan: Plan) -> str:
    """Grams of each part and in all, of every salt by its full name."""
    shown = [
        f"{grams(salt.grams / plan.count)} of {NAMES.get(salt.substance, salt.substance)}"
        for salt in plan.salts
    ]
    each = " and ".join(shown)
    least = min(salt.grams / plan.count for salt in plan.salts)
    if least < FINEST_SCALE:
        each += " (too little for most scales: dissolve ten times as much in 1 L, give 100 ml)"
    if plan.count == 1:
        return f"{each}, weighed, not by spoon."
    whole = " and ".join(grams(salt.grams) for salt in plan.salts)
    return (
        f"{each} a part, {plan.count} parts {plan.every_hours} h apart ({whole} in all), weighed,"
        " not by spoon."
    )


def ammonia(plan: Plan, tank: str | None) -> str | None:
    """What total ammonia decides, where the first sentence does not say it."""
    if plan.gate is None:
        return None
    if plan.gate.only_below is None:
        if plan.gate.nh3_n is None or plan.gate.nh3_n[1] == 0.0:
            return None
        expected, leaves = plan.gate.nh3_n
        return (
            f"Poisonous ammonia after it: {small(expected)} mg/L as N, {small(leaves)} if CO2"
            " leaves. Measure ammonia before each part."
        )
    if tank is not None and not plan.is_old and not plan.changed_since:
        return None
    return (
        f"Ammonia first: hold this only while total ammonia is under"
        f" {plain(plan.gate.only_below, 2)} mg/L as N; a higher pH makes it poisonous."
    )


def afterwards(plan: Plan, doubt: KitDoubt | None = None) -> str:
    """What the dose does to pH, and when to look."""
    last, outlook = plan.last, plan.outlook
    tested = "KH, pH and ammonia" if plan.goals[0].analyte == "kh" else _tested(plan)
    look = f"Retest {tested} 24 h after each part, before the next."
    if last is None or outlook is None:
        return look
    if outlook.co2_known:
        kits = f" ({span(*doubt.ph_stood, 1)} by your kits' doubt)" if doubt is not None else ""
        moves = (
            f"pH about {plain(last.at_once, 1)} at once, {plain(last.expected, 1)} after standing"
            f"{kits}, {plain(last.leaves, 1)} if CO2 leaves."
        )
    else:
        moves = f"pH after standing about {plain(last.expected, 1)} to {plain(last.leaves, 1)}."
    if plan.blind:
        return f"{moves} Measure pH after 1 h and after 24 h: that decides the next part."
    return f"{moves} {look}"


def _tested(plan: Plan) -> str:
    return " and ".join(LABELS.get(goal.analyte, goal.analyte) for goal in plan.goals)


def upkeep(found: Upkeep) -> str:
    """What the animals use up in a day, and what makes up for it."""
    unit = UNITS.get(found.analyte, "mg/L")
    used = found.used
    name = LABELS.get(found.analyte, found.analyte)
    if found.salt is None:
        return (
            f"It uses about {plain(used.per_day, 2)} {unit} {name} a day by your last two readings:"
            " too much to give at one time; retest before you make up for it."
        )
    return (
        f"Then, to hold it: {grams(found.salt.grams)} a day of the same, apart from any part: it"
        f" uses {plain(used.per_day, 2)} {unit} {name} a day by your last two readings"
        f" ({span(used.low, used.high, 2)})."
    )


def doubts(doubt: KitDoubt) -> list[str]:
    """Between which values the water will be in truth."""
    lines = [
        "By your kits' steps and 5 % of the volume, nine times in ten: KH"
        f" {span(*doubt.kh, 1)} °dH, pH {span(*doubt.ph_stood, 1)} after standing,"
        f" {span(*doubt.ph_leaves, 1)} if CO2 leaves."
    ]
    if doubt.gh is not None:
        lines.append(f"GH then {span(*doubt.gh, 1)} °dH.")
    if doubt.nh3_n is not None:
        lines.append(
            f"Poisonous ammonia then {small(doubt.nh3_n[0])}–{small(doubt.nh3_n[1])} mg/L as N."
        )
    return lines


def more(plan: Plan, doubt: KitDoubt | None = None) -> list[str]:
    """What the sum rests on."""
    brought = ", ".join(f"{small(amount)} mg/L {ion}" for ion, amount in plan.added.items())
    lines = [
        f"Taken as pure and dry. It adds {brought} in all.",
        steps(plan),
        *(doubts(doubt) if doubt is not None else []),
        *assumed(plan),
    ]
    if plan.emergency:
        lines.append(
            "An emergency: pH has fallen and little buffer is left, so KH may rise by up to 2 °dH a"
            " day; never with KH under 1."
        )
    if plan.gate is not None:
        lines.append(
            f"Limit: {plain(plan.gate.limit, 2)} mg/L un-ionised ammonia as N, which is never"
            " called safe."
        )
    if plan.added.get("potassium", 0.0) > limits.POTASSIUM_CAUTION_TENDER:
        lines.append("Potassium over 20 mg/L: caution with snails and shrimps; none with mussels.")
    return lines


def steps(plan: Plan) -> str:
    """What a day may bring, by the kind of water."""
    if plan.told is not None and plan.told.tank.is_sea:
        return (
            f"At most KH {plain(limits.KH_STEP, 1)} °dH, calcium {plain(limits.CALCIUM_STEP, 0)}"
            f" and magnesium {plain(limits.MAGNESIUM_STEP, 0)} mg/L, salinity"
            f" {plain(limits.SALINITY_UP, 1)} g/kg and pH {plain(limits.PH_STEP, 1)} a day (common"
            " practice)."
        )
    return (
        f"At most KH {plain(limits.KH_STEP, 1)} °dH and a doubling, GH {plain(limits.GH_STEP, 1)}"
        f" °dH and pH {plain(limits.PH_STEP, 1)} a day, counted from the low end of the reading"
        " (common practice)."
    )


def assumed(plan: Plan) -> list[str]:
    """What the pH was reckoned with."""
    outlook = plan.outlook
    if outlook is None:
        return ["KH unknown: nothing can be said of pH."]
    warm = plain(outlook.water.temperature, 0)
    lines = [
        f"Reckoned at {warm} °C"
        + (", the warmest, as no temperature is known." if outlook.temperature_assumed else ".")
    ]
    if outlook.ph is not None:
        co2 = small(solve(outlook.water).co2_mg_l)
        lines.append(
            f"pH {plain(outlook.ph, 2)} with this KH means about {co2} mg/L CO2 in the tank, taken"
            " to stay; “if CO2 leaves” is open air (420 µatm)."
        )
    else:
        lines.append(
            "No pH of the last three days: so from a stocked tank's CO2 (2000 µatm) to open air"
            " (420 µatm)."
        )
    lines += [ASSUMED[each] for each in outlook.water.assumptions if each in ASSUMED]
    return lines


ASSUMED: Mapping[str, str] = {
    "hardness_as_kh": "GH unknown: taken as KH.",
    "calcium_to_magnesium": "Calcium to magnesium taken as 3:1 by amount.",
    "sea_salt": "Ions taken from salinity as in sea water.",
    "meter_ph": "pH taken as a kit or an ordinarily calibrated meter reads it.",
}
"""What was filled in, by the ids of `core.water.Assumption`."""


def logged(tank: str, weighed: Sequence[Sequence[Any]]) -> str:
    """The first part was put in: substance and grams of each salt."""
    shown = ", ".join(f"{grams(mass)} {substance}" for substance, mass in weighed)
    return f"{tank}: logged {shown}."


def retest_set(when: str) -> str:
    """A retest will be asked for."""
    return f"I will remind you to retest {when}."


def retest_task() -> str:
    """The task of that reminder."""
    return "retest KH, pH and ammonia"


def no_tank_to_log() -> str:
    """A dose that belongs to no tank on record."""
    return "I do not know which tank that was. Send for example: quarry: dosed 3.6 g baking soda"


def incomplete() -> list[str]:
    """The wish is missing."""
    return ["How much of what? Send for example: dose kh 6, dose gh 8, or: kh +2"]
