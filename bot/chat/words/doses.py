"""A dose in words: what to do first, the caution before the grams, and what follows."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from bot.chat.words.numbers import age, grams, litres, plain, small
from core.advice import limits
from core.advice.plan import Plan, Refusal
from core.water import solve

NAMES = {
    "sodium bicarbonate": "sodium bicarbonate (baking soda)",
    "potassium bicarbonate": "potassium bicarbonate",
}

LOG_IT, RETEST = "log it", "remind me to retest in 24 h"


KEEP_CO2 = "Keep aeration and CO2 as they are and retest ammonia. "


def head(plan: Plan, tank: str | None) -> str:
    """The answer: from where to where, in how many parts, and on what condition."""
    goal = plan.goals[0]
    where = f"{tank} ({litres(plan.volume_l)})" if tank else litres(plan.volume_l)
    way = f"KH {plain(goal.start, 2)} → {plain(goal.target, 2)} °dH"
    if plan.blind:
        return f"{_condition(plan, tank)}{where}: one small part only, {way}, then measure."
    if plan.is_old and plan.reading_age is not None:
        return f"Retest first: the KH reading is {age(plan.reading_age)}. {where}: {way}."
    pace = "in one part" if plan.count == 1 else f"in {plan.count} parts, one a day"
    return f"{_condition(plan, tank)}{where}: {way} {pace}."


def _condition(plan: Plan, tank: str | None) -> str:
    if plan.gate is None:
        return ""
    keep = KEEP_CO2 if plan.gate.keep_co2 else ""
    if plan.gate.only_below is None or tank is None:
        return keep
    only = f"Only if total ammonia is under {plain(plan.gate.only_below, 2)} mg/L (measure it). "
    return only + keep


def caution() -> str:
    """What goes before every number of grams."""
    return (
        "Net volume counts; dissolve first, small steps, watch the animals; estimate from kits,"
        " not veterinary advice."
    )


def amount(plan: Plan) -> str:
    """Grams of each part and in all."""
    name = NAMES.get(plan.substance, plan.substance)
    if plan.count == 1:
        return f"{grams(plan.grams)} of {name}, weighed, not by spoon."
    return (
        f"{grams(plan.parts[0])} of {name} a part, {plan.count} parts {plan.every_hours} h"
        f" apart ({grams(plan.grams)} in all), weighed, not by spoon."
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
    last = plan.last
    if plan.outlook.co2_known:
        way = (
            f"pH about {plain(last.at_once, 1)} at once, {plain(last.expected, 1)} after standing,"
            f" {plain(last.leaves, 1)} if CO2 leaves."
        )
    else:
        way = f"pH after standing about {plain(last.expected, 1)} to {plain(last.leaves, 1)}."
    if plan.blind:
        return f"{way} Measure pH after 1 h and after 24 h: that decides the next part."
    return f"{way} Retest KH, pH and ammonia 24 h after each part, before the next."


def within_kit() -> str:
    """The wish is no more than the kit can see."""
    return "That is within what your kit can tell apart: retest before you act."


def more(plan: Plan) -> list[str]:
    """What the sum rests on."""
    brought = ", ".join(f"{small(amount)} mg/L {ion}" for ion, amount in plan.added.items())
    lines = [
        f"Taken as pure and dry. It adds {brought} in all.",
        f"At most {plain(limits.KH_STEP, 1)} °dH, a doubling and pH {plain(limits.PH_STEP, 1)} a"
        " day, counted from the low end of the reading (common practice).",
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
    outlook, warm = plan.outlook, plain(plan.outlook.water.temperature, 0)
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


def logged(tank: str, mass: float, substance: str) -> str:
    """The first part was put in."""
    return f"{tank}: logged {grams(mass)} {substance}."


def retest_set(when: str) -> str:
    """A retest will be asked for."""
    return f"I will remind you to retest {when}."


def retest_task() -> str:
    """The task of that reminder."""
    return "retest KH, pH and ammonia"


def no_tank_to_log() -> str:
    """A dose that belongs to no tank on record."""
    return "I do not know which tank that was. Send for example: quarry: dosed 3.6 g baking soda"


def refused(refusal: Refusal, tank: str | None) -> list[str]:
    """Why there is no plan, and what to do instead; never an amount."""
    facts = refusal.facts
    lines = _REFUSALS[refusal.reason](facts)
    where = f"{tank}: " if tank else ""
    return [f"{where}{lines[0]}", *lines[1:]]


def _number(facts: Mapping[str, float | str], name: str) -> str:
    return plain(float(facts[name]), 2)


_REFUSALS: Mapping[str, Callable[[Mapping[str, float | str]], list[str]]] = {
    "volume_unknown": lambda _facts: [
        "How many litres of water are in it? Send for example: 90 l",
        "Net: the water itself, not the tank's label.",
    ],
    "volume_implausible": lambda facts: [
        f"No plan for {_number(facts, 'volume_l')} L: that is no tank I can believe."
        " Send the net volume again, for example: 90 l"
    ],
    "kh_unknown": lambda _facts: [
        "I need the KH first. Measure it and send for example: kh 4",
    ],
    "kh_limit": lambda facts: [
        f"No plan: KH over {_number(facts, 'kh')} is off your kit's scale.",
        "Dilute the sample by half with distilled water, test again and send twice the number.",
    ],
    "target_reached": lambda facts: [
        f"No dose: KH {_number(facts, 'from')} is already at {_number(facts, 'to')} or over.",
        "To lower KH, blend in water without buffer (RO, rain) in small changes.",
    ],
    "target_implausible": lambda facts: [
        f"No plan to KH {_number(facts, 'to')}: over {_number(facts, 'highest')} °dH suits no tank."
        " If you meant ppm, send kh with ppm.",
    ],
    "contradiction": lambda facts: [
        f"No dose yet: pH {_number(facts, 'ph')} with KH {_number(facts, 'kh')} does not add up.",
        "Retest both, with a fresh sample; check the kits' dates.",
    ],
    "ammonia": lambda facts: [
        "No buffer now: with this much ammonia a higher pH would poison the animals"
        f" (total ammonia {_number(facts, 'ammonia')} mg/L).",
        "First: stop feeding, change water that matches in KH and temperature, small and often.",
        "If they gasp, add air. Then measure ammonia and pH again and ask me again.",
    ],
    "ammonia_unmeasured": lambda facts: [
        f"No dose yet: with KH {_number(facts, 'kh')} I must know ammonia first.",
        "Measure total ammonia and pH and send both, for example: ammonia 0 ph 6.4",
    ],
    "temperature_unknown": lambda _facts: [
        "Not yet: how warm is the water? With this much ammonia it decides.",
        "Send for example: temp 24",
    ],
    "hydrate_unknown": lambda _facts: [
        "No number for sodium carbonate yet: is it anhydrous or the decahydrate (washing soda"
        " crystals)? They differ 2.7 times by weight.",
        "Look on the label and send the name with it.",
    ],
    "acid": lambda facts: [
        f"No {facts['substance']} for water with animals in it: a strong fall of pH and a burst of"
        " CO2 can kill at once.",
        "Lower KH with RO or rain water first, in small changes; pH follows by itself.",
        "Acid only for water in a separate container, and never mixed with other chemicals.",
    ],
    "mass_implausible": lambda facts: [
        f"No answer for that much in {_number(facts, 'volume_l')} L: send mass and volume again,"
        " for example: what does 10 g baking soda do in 120 l"
    ],
    "ph_step": lambda _facts: [
        "No dose of this: even a small part would move pH by more than 0.3 at once.",
        "Take bicarbonate instead, or prepare water apart, without animals.",
    ],
    "saturation": lambda facts: [
        "No dose now: the water is so full of lime"
        f" (saturation {_number(facts, 'saturation')}) that it would fall out as snow.",
        "Retest calcium, KH and pH; let the animals use it up first.",
    ],
    "carbonate": lambda _facts: [
        "No carbonate or hydroxide for water with animals in it: it lifts pH far too fast.",
        "Use bicarbonate instead: dose kh 6 with baking soda",
    ],
    "substance_unknown": lambda facts: [
        f"No number for “{facts['substance']}”: I do not know what is in it.",
        "I can work with sodium bicarbonate (baking soda) or potassium bicarbonate.",
    ],
}


def only_kh() -> list[str]:
    """A dose of something else is asked for."""
    return [
        "I cannot work out a dose for that yet; so far I can raise KH.",
        "For example: dose kh 6, or how much baking soda for 120 l from kh 3 to 6",
    ]


def incomplete() -> list[str]:
    """The wish is missing."""
    return ["To which KH? Send for example: dose kh 6, or: kh +2"]
