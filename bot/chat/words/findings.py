"""Findings in one short line each."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from bot.chat.words.finding_reasons import why
from bot.chat.words.numbers import plain, small
from core.advice.findings import Finding
from core.analytes import ANALYTES

__all__ = ["line", "why"]

Facts = Mapping[str, float | str]


def _number(facts: Facts, name: str) -> float:
    return float(facts[name])


def _ammonia(facts: Facts) -> str:
    share = small(_number(facts, "nh3_n"))
    if "chronic_n" in facts and _number(facts, "total_n") > _number(facts, "chronic_n"):
        limit = small(_number(facts, "chronic_n"))
        why = f"total is over {limit} mg/L, the EPA 2013 long-term limit at this pH"
    else:
        why = f"{share} mg/L of it is un-ionised at pH {plain(_number(facts, 'ph'), 1)}"
    assumed = " (taking 30 °C)" if "temperature_assumed" in facts else ""
    return (
        f"Ammonia is dangerous: {why}{assumed}. Stop feeding, change water that matches in KH,"
        " do not raise pH."
    )


def _low_kh(facts: Facts) -> str:
    kh, limit = plain(_number(facts, "kh"), 1), plain(_number(facts, "limit"), 1)
    return f"KH {kh} is low (under {limit} °dH): pH can fall. Ask: dose kh {_next_step(facts)}"


def _next_step(facts: Facts) -> str:
    return plain(max(round(_number(facts, "limit") + 0.5), 1), 1)


def _moved(facts: Facts) -> str:
    return (
        f"pH went from {plain(_number(facts, 'was'), 1)} to {plain(_number(facts, 'ph'), 1)}"
        " since a reading at the same hour: look at KH before anything else."
    )


def _moved_other_hour(facts: Facts) -> str:
    return (
        f"pH was {plain(_number(facts, 'was'), 1)} at another hour; it swings over the day."
        " Test at the same hour to tell."
    )


def _contradiction(facts: Facts) -> str:
    said = f"pH {plain(_number(facts, 'ph'), 1)} with KH {plain(_number(facts, 'kh'), 1)}"
    if "co2_mg_l" in facts:
        return (
            f"{said} does not add up: it would mean over {small(_number(facts, 'co2_mg_l'))} mg/L"
            " CO2. Retest both."
        )
    return f"{said} does not add up. Retest both."


def _analyte(facts: Facts) -> str:
    """The analyte's label, with a capital as the line begins with it."""
    known = ANALYTES.get(str(facts["analyte"]))
    label = known.label if known else str(facts["analyte"])
    return label if label[:1].isupper() or label == "pH" else label.capitalize()


def _amount(facts: Facts, name: str) -> str:
    """A number of the finding's analyte, as fine as the analyte is shown."""
    known = ANALYTES.get(str(facts["analyte"]))
    return plain(_number(facts, name), known.decimals if known else 2)


def _with_unit(facts: Facts, name: str) -> str:
    known = ANALYTES.get(str(facts["analyte"]))
    unit = "" if known is None or known.unit == "pH" else f" {known.unit}"
    return f"{_amount(facts, name)}{unit}"


def _low_oxygen(facts: Facts) -> str:
    could = (
        f" (the water could hold {plain(_number(facts, 'saturation'), 1)})"
        if "saturation" in facts
        else ""
    )
    return (
        f"Oxygen {plain(_number(facts, 'oxygen'), 1)} mg/L is low{could}: move the surface,"
        " add air now."
    )


def _does_not_suit(facts: Facts) -> str:
    high = _number(facts, "value") > _number(facts, "high")
    word = "high" if high else "low"
    end = _with_unit(facts, "high" if high else "low")
    side = f"over {end}" if high else f"under {end}"
    more = _number(facts, "kinds") - len(str(facts["species"]).split(", "))
    others = f" and {more:.0f} more" if more > 0 else ""
    return (
        f"{_analyte(facts)} {_with_unit(facts, 'value')} is {word} for {facts['species']}{others}"
        f" ({side}): steady counts more, so never change it fast."
    )


def _do_not_go_together(facts: Facts) -> str:
    one, other = facts["species"], facts["species_2"]
    reason = facts["reason"]
    if reason == "water":
        return (
            f"{one} needs {facts['water']} water and {other} {facts['water_2']}: keep them in"
            " two tanks."
        )
    if reason == "eats":
        return f"A grown {one} eats {other}: part them before it does."
    if reason == "fights":
        return f"{one} may harass {other}: give hiding places and watch, or part them."
    label = ANALYTES[str(reason)].label
    spans = [
        f"{plain(_number(facts, low), 1)}–{plain(_number(facts, high), 1)}"
        for low, high in (("low", "high"), ("low_2", "high_2"))
    ]
    return (
        f"No {label} suits both {one} ({spans[0]}) and {other} ({spans[1]}): rehome one kind,"
        " without haste."
    )


def _unknown_animal(facts: Facts) -> str:
    said = f"I do not know “{facts['said']}”, so I judge no water for it."
    return f"{said} Did you mean {facts['nearest']}?" if "nearest" in facts else said


def _much_co2(facts: Facts) -> str:
    return (
        f"CO2 is about {small(_number(facts, 'co2_mg_l'))} mg/L, over 30: turn injection down or"
        " move the surface, and watch for gasping."
    )


def _perhaps_much_co2(facts: Facts) -> str:
    return (
        f"pH {plain(_number(facts, 'ph'), 1)} with KH {plain(_number(facts, 'kh'), 1)} may mean"
        f" {small(_number(facts, 'low'))} to {small(_number(facts, 'high'))} mg/L CO2: retest pH;"
        " if they gasp, aerate."
    )


def _sudden_jump(facts: Facts) -> str:
    return (
        f"{_analyte(facts)} went from {_amount(facts, 'was')} to {_with_unit(facts, 'value')} with"
        " nothing logged in between: retest before doing anything."
    )


def _gh_against_ions(facts: Facts) -> str:
    return (
        f"GH {plain(_number(facts, 'gh'), 1)} does not fit calcium and magnesium, which make"
        f" {plain(_number(facts, 'low'), 1)} to {plain(_number(facts, 'high'), 1)} °dH: retest."
    )


def _conductivity_too_low(facts: Facts) -> str:
    return (
        f"Conductivity {plain(_number(facts, 'conductivity'), 0)} µS/cm is under the"
        f" {plain(_number(facts, 'expected'), 0)} that this hardness alone makes: retest GH and KH,"
        " check the probe."
    )


def _other_salts(facts: Facts) -> str:
    return (
        f"Conductivity {plain(_number(facts, 'conductivity'), 0)} µS/cm is far over what hardness"
        f" makes (about {plain(_number(facts, 'expected'), 0)}): other salts have piled up, or the"
        " probe is off."
    )


def _neglected(facts: Facts) -> str:
    said = (
        f"Nitrate {plain(_number(facts, 'nitrate'), 0)}, KH {plain(_number(facts, 'kh'), 1)} and an"
        " acid pH: the water is used up. No large change!"
    )
    if "share" in facts:
        said += f" Change {_number(facts, 'share') * 100:.0f} % a day"
        said += " and retest KH and pH each day"
    else:
        said += " Measure your source water first (/source), then change a little each day"
    test = "; test ammonia before you start." if "ammonia" in facts else "."
    return said + test


def _heading(facts: Facts) -> str:
    rising = _number(facts, "per_day") > 0
    return (
        f"{_analyte(facts)} is {'rising' if rising else 'falling'} and reaches"
        f" {_with_unit(facts, 'limit')} in about {_days(facts)}{_act(facts, rising)}"
    )


def _days(facts: Facts) -> str:
    days = max(round(_number(facts, "days")), 1)
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
        f"Copper {small(_number(facts, 'copper'))} mg/L kills invertebrates ({facts['species']}):"
        " change water now, with water free of copper."
    )


def _animals_of_new_tank(facts: Facts) -> str:
    if facts["animals"] == "yes":
        return "feed little, test daily, change water when ammonia or nitrite is warned of."
    return "no animals yet, keep testing."


_LINES: Mapping[str, Callable[[Facts], str]] = {
    "ammonia": _ammonia,
    "ammonia_without_ph": lambda facts: (
        f"Ammonia {small(_number(facts, 'total_n'))} mg/L should be 0; send pH and temperature,"
        " they decide how poisonous it is."
    ),
    "nitrite": lambda facts: (
        f"Nitrite {small(_number(facts, 'nitrite'))} mg/L (as NO2) harms fish: change water,"
        " feed less, measure chloride."
    ),
    "nitrite_with_chloride": lambda facts: (
        f"Nitrite {small(_number(facts, 'nitrite'))} mg/L (as NO2), eased by chloride for the"
        " species tested; still find the cause."
    ),
    "nitrite_in_salt_water": lambda facts: (
        f"Nitrite {small(_number(facts, 'nitrite'))} mg/L: still cycling; in salt water a sign,"
        " not a poison."
    ),
    "nitrate": lambda facts: (
        f"Nitrate {plain(_number(facts, 'nitrate'), 0)} mg/L is over"
        f" {plain(_number(facts, 'limit'), 0)}: change water in small, frequent steps."
    ),
    "low_kh": _low_kh,
    "low_gh": lambda facts: (
        f"GH {plain(_number(facts, 'gh'), 1)} is under 1 °dH: too few minerals for any animal."
    ),
    "ph_moved": _moved,
    "ph_moved_other_hour": _moved_other_hour,
    "contradiction": _contradiction,
    "contradiction_low": lambda facts: (
        f"pH {plain(_number(facts, 'ph'), 1)} with KH {plain(_number(facts, 'kh'), 1)} at night"
        " leaves almost no CO2. Retest both."
    ),
    "low_oxygen": _low_oxygen,
    "chlorine": lambda facts: (
        f"Chlorine {small(_number(facts, 'chlorine'))} mg/L burns gills: treat the water with a"
        " dechlorinator by its label now, then aerate."
    ),
    "copper": _copper,
    "copper_unknown_stock": lambda facts: (
        f"Copper {small(_number(facts, 'copper'))} mg/L kills shrimps and snails: find where it"
        " comes from, test the tap."
    ),
    "copper_low_kh": lambda facts: (
        f"Copper {small(_number(facts, 'copper'))} mg/L at KH {plain(_number(facts, 'kh'), 1)}:"
        " low KH makes it more poisonous; change water, find where it comes from."
    ),
    "potassium_sum": lambda facts: (
        f"Doses have brought {plain(_number(facts, 'potassium'), 0)} mg/L potassium (caution over"
        f" {plain(_number(facts, 'limit'), 0)}): use sodium bicarbonate or water changes now."
    ),
    "potassium_with_mussels": lambda _: (
        "Mussels do not bear potassium salts: dose none of them, change some water."
    ),
    "neglected": _neglected,
    "does_not_suit": _does_not_suit,
    "do_not_go_together": _do_not_go_together,
    "unknown_animal": _unknown_animal,
    "much_co2": _much_co2,
    "perhaps_much_co2": _perhaps_much_co2,
    "softened": lambda facts: (
        f"GH {plain(_number(facts, 'gh'), 1)} with KH {plain(_number(facts, 'kh'), 1)} looks like"
        " softened tap water: it is full of sodium, not soft. Use the tap before the softener."
    ),
    "kh_above_gh": lambda facts: (
        f"KH {plain(_number(facts, 'kh'), 1)} is above GH {plain(_number(facts, 'gh'), 1)}: sodium"
        " water (or bicarbonate doses); fine if your animals are used to it."
    ),
    "sudden_jump": _sudden_jump,
    "gh_against_ions": _gh_against_ions,
    "conductivity_too_low": _conductivity_too_low,
    "other_salts": _other_salts,
    "expired_kit": lambda facts: (
        f"The kit for {_analyte(facts)} was good until {facts['expired']}: trust it less, check it"
        " against a known water."
    ),
    "cycling_ammonia": lambda facts: (
        "New tank, first stage: ammonia is there, nitrite not yet; " + _animals_of_new_tank(facts)
    ),
    "cycling_nitrite": lambda facts: (
        "New tank, second stage: nitrite is there; " + _animals_of_new_tank(facts)
    ),
    "cycling_done": lambda _: (
        "Ammonia and nitrite came and went: the filter works. Add animals a few at a time."
    ),
    "heading": _heading,
    "drifting": _drifting,
    "kh_under_source": lambda facts: (
        f"KH {plain(_number(facts, 'kh'), 1)} is far under your source's"
        f" {plain(_number(facts, 'source'), 1)}: small, more frequent changes bring it back."
    ),
    "gh_over_source": lambda facts: (
        f"GH {plain(_number(facts, 'gh'), 1)} is far over your source's"
        f" {plain(_number(facts, 'source'), 1)}: salts pile up. Top up with demineralised water."
    ),
    "steady": lambda facts: (
        f"Steady for {plain(_number(facts, 'weeks'), 0)} weeks and it suits your animals: change"
        " nothing."
    ),
}


def line(finding: Finding) -> str:
    """One finding in one line, with what to do first."""
    return _LINES[finding.id](finding.facts)
