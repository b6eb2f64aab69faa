"""A dose in words: what to do first, the caution before the grams, and what follows."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bot.chat.words.numbers import age, grams, litres, plain, small
from core.advice import limits
from core.advice.plan import Goal, Plan
from core.water import solve

NAMES = {
    "sodium bicarbonate": "sodium bicarbonate (baking soda)",
    "potassium bicarbonate": "potassium bicarbonate",
}

LOG_IT, RETEST = "log it", "remind me to retest in 24 h"


KEEP_CO2 = "Keep aeration and CO2 as they are and retest ammonia. "


UNITS: Mapping[str, str] = {"kh": "°dH", "gh": "°dH", "salinity": "g/kg"}
LABELS: Mapping[str, str] = {"kh": "KH", "gh": "GH"}


def way(goal: Goal) -> str:
    """From where to where."""
    unit = UNITS.get(goal.analyte, "mg/L")
    name = LABELS.get(goal.analyte, goal.analyte)
    if goal.relative:
        return f"{name} +{plain(goal.change, 2)} {unit}"
    return f"{name} {plain(goal.start, 2)} → {plain(goal.target, 2)} {unit}"


def head(plan: Plan, tank: str | None) -> str:
    """The answer: from where to where, in how many parts, and on what condition."""
    where = f"{tank} ({litres(plan.volume_l)})" if tank else litres(plan.volume_l)
    ways = " and ".join(way(goal) for goal in plan.goals)
    if plan.blind:
        return f"{_condition(plan, tank)}{where}: one small part only, {ways}, then measure."
    if plan.is_old and plan.reading_age is not None:
        name = LABELS.get(plan.goals[0].analyte, plan.goals[0].analyte)
        return f"Retest first: the {name} reading is {age(plan.reading_age)}. {where}: {ways}."
    pace = "in one part" if plan.count == 1 else f"in {plan.count} parts, one a day"
    return f"{_condition(plan, tank)}{where}: {ways} {pace}."


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
    "alkaline_dust": "Gloves and eye protection: the dust is alkaline.",
}


def amount(plan: Plan) -> str:
    """Grams of each part and in all, of every salt by its full name."""
    shown = [
        f"{grams(salt.grams / plan.count)} of {NAMES.get(salt.substance, salt.substance)}"
        for salt in plan.salts
    ]
    each = " and ".join(shown)
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
    if tank is not None and not plan.is_old:
        return None
    return (
        f"Ammonia first: hold this only while total ammonia is under"
        f" {plain(plan.gate.only_below, 2)} mg/L as N; a higher pH makes it poisonous."
    )


def afterwards(plan: Plan) -> str:
    """What the dose does to pH, and when to look."""
    last, outlook = plan.last, plan.outlook
    tested = "KH, pH and ammonia" if plan.goals[0].analyte == "kh" else _tested(plan)
    look = f"Retest {tested} 24 h after each part, before the next."
    if last is None or outlook is None:
        return look
    if outlook.co2_known:
        moves = (
            f"pH about {plain(last.at_once, 1)} at once, {plain(last.expected, 1)} after standing,"
            f" {plain(last.leaves, 1)} if CO2 leaves."
        )
    else:
        moves = f"pH after standing about {plain(last.expected, 1)} to {plain(last.leaves, 1)}."
    if plan.blind:
        return f"{moves} Measure pH after 1 h and after 24 h: that decides the next part."
    return f"{moves} {look}"


def _tested(plan: Plan) -> str:
    return " and ".join(LABELS.get(goal.analyte, goal.analyte) for goal in plan.goals)


def within_kit() -> str:
    """The wish is no more than the kit can see."""
    return "That is within what your kit can tell apart: retest before you act."


def more(plan: Plan) -> list[str]:
    """What the sum rests on."""
    brought = ", ".join(f"{small(amount)} mg/L {ion}" for ion, amount in plan.added.items())
    lines = [
        f"Taken as pure and dry. It adds {brought} in all.",
        f"At most KH {plain(limits.KH_STEP, 1)} °dH and a doubling, GH"
        f" {plain(limits.GH_STEP, 1)} °dH and pH {plain(limits.PH_STEP, 1)} a day, counted from the"
        " low end of the reading (common practice).",
        *assumed(plan),
    ]
    if plan.gate is not None:
        lines.append(
            f"Limit: {plain(plan.gate.limit, 2)} mg/L un-ionised ammonia as N, which is never"
            " called safe."
        )
    if plan.added.get("potassium", 0.0) > limits.POTASSIUM_CAUTION_TENDER:
        lines.append("Potassium over 20 mg/L: caution with snails and shrimps; none with mussels.")
    return lines


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
