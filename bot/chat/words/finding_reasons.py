"""The reasoning behind a finding: what it means, its numbers, and where they come from."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words.finding_parts import analyte, with_unit
from bot.chat.words.numbers import plain, small
from core.advice.findings import BY_ID, Finding
from core.advice.livestock import source_text
from core.analytes import ANALYTES

_MEANING: Final[Mapping[str, str]] = {
    "ammonia": (
        "Ammonia is in two forms: un-ionised NH3, which poisons through the gills, and ammonium,"
        " which counts at low pH. pH and warmth decide the share, so raising pH makes it worse."
    ),
    "ammonia_without_ph": (
        "How much of the total is poisonous depends on pH and temperature; neither is known."
    ),
    "nitrite": (
        "Nitrite enters through the gills in place of chloride and blocks oxygen in the blood."
    ),
    "nitrite_with_chloride": (
        "Ten parts of chloride to one of nitrite keep it out in channel catfish; not in every"
        " species (largemouth bass had no benefit)."
    ),
    "nitrite_in_salt_water": (
        "Salt water holds so much chloride that nitrite hardly gets in; it tells that the filter"
        " is not ready."
    ),
    "nitrate": "In the long run nitrate over this harms sensitive animals; it is not an emergency.",
    "low_kh": (
        "KH is what holds pH. The filter and the animals make acid all the time; once KH is used"
        " up, pH falls."
    ),
    "low_gh": "Animals need calcium and magnesium from the water; soft is not the same as empty.",
    "ph_moved": "pH follows KH and CO2. Correcting pH itself swings it; the cause is looked for.",
    "ph_moved_other_hour": "Plants use CO2 by day, so pH is higher in the evening than at dawn.",
    "contradiction": (
        "pH and KH together tell the CO2. No tank water holds as much as these would mean, so one"
        " of the two readings is wrong, or an acid other than CO2 is at work."
    ),
    "contradiction_low": (
        "By night nothing uses CO2 up, and air gives more than these two readings leave."
    ),
    "much_co2": "CO2 over 30 mg/L hinders breathing, most of all at night and in warm water.",
    "perhaps_much_co2": "A colour chart is sure to 0.2 pH: that alone is a factor of 2.5 in CO2.",
    "low_oxygen": "Warm water holds less; plants and filters use it up at night.",
    "chlorine": "Chlorine burns gills and kills the filter's bacteria.",
    "copper": "Copper that a kit can just see kills shrimps, snails and corals.",
    "copper_unknown_stock": "Copper that a kit can just see kills shrimps, snails and corals.",
    "copper_low_kh": "At alkalinity 20 mg/L a dose killed all fish that at 75 mg/L killed few.",
    "potassium_sum": "Each °dH by potassium bicarbonate brings 13.9 mg/L potassium; it stays.",
    "potassium_with_mussels": "Potassium is poisonous to mussels at little more than they live in.",
    "neglected": (
        "Nitrate high and KH used up go together: making nitrate takes 0.45 °dH KH for each"
        " 10 mg/L. The animals got used to it slowly; a large change is a shock, and raises pH,"
        " which turns ammonium into ammonia."
    ),
    "does_not_suit": (
        "The range is what the table holds as suiting; just outside is no emergency, and a steady"
        " water is worth more than the middle of a range."
    ),
    "do_not_go_together": "The ranges, sizes and manners are those of the animals' table.",
    "cramped": (
        "Grown lengths differ; under a quarter litre for each square centimetre of its length a"
        " fish cannot swim and turn as it must. It is a lower bound, not a recommendation."
    ),
    "few_of_a_shoal": "Fish of groups are frightened alone, eat less and fall ill more easily.",
    "unknown_animal": "Only animals of the table have ranges; nothing is guessed.",
    "softened": (
        "A softener swaps calcium for sodium: GH goes, KH stays. Animals lack minerals in it."
    ),
    "kh_above_gh": "KH is bicarbonate; where it exceeds GH, sodium or potassium goes with it.",
    "sudden_jump": (
        "Water hardly moves so far in three days by itself: a slip, a worn kit, or something that"
        " was done and not logged."
    ),
    "gh_against_ions": "GH (mg/L CaCO3) is 2.497 × calcium + 4.118 × magnesium.",
    "conductivity_too_low": "The ions of GH and KH conduct; less than theirs cannot be.",
    "other_salts": (
        "What GH and KH do not account for is sodium, chloride, nitrate, sulfate; more of it the"
        " longer water only evaporates and is topped up."
    ),
    "expired_kit": "Reagents age, and an aged kit misreads without showing it.",
    "cycling_ammonia": (
        "Bacteria that eat ammonia come first, those that eat nitrite weeks later; until then"
        " either can be at poisonous levels."
    ),
    "cycling_nitrite": "Ammonia is being eaten; the bacteria that eat nitrite are still to come.",
    "cycling_done": "Two tests in a row without ammonia and nitrite, after both were there.",
    "heading": "The slope is the median of all pairs of readings since water was last disturbed.",
    "drifting": "The slope is the median of all pairs of readings of the season, changes and all.",
    "kh_under_source": "The tank uses KH up faster than the changes bring it back.",
    "gh_over_source": "Water evaporates, hardness stays; topping up with tap water adds more.",
    "steady": "No trend, nothing off for the animals: any change would be for the worse.",
}

_UNITS: Final[Mapping[str, tuple[str, str, int]]] = {
    "total_n": ("total ammonia", "mg/L as N", 3),
    "nh3_n": ("un-ionised", "mg/L as N", 4),
    "chronic_n": ("long-term limit of the total", "mg/L as N", 2),
    "acute_n": ("short-term limit of the total", "mg/L as N", 2),
    "ph": ("pH", "", 1),
    "was": ("before", "", 2),
    "temperature": ("at", "°C", 1),
    "temperature_assumed": ("temperature unknown, taken as", "°C", 0),
    "nitrite": ("nitrite", "mg/L NO2", 2),
    "chloride": ("chloride", "mg/L", 0),
    "nitrate": ("nitrate", "mg/L NO3", 0),
    "kh": ("KH", "°dH", 1),
    "gh": ("GH", "°dH", 1),
    "source": ("source", "°dH", 1),
    "source_kh": ("source KH", "°dH", 1),
    "co2_mg_l": ("CO2", "mg/L", 4),
    "oxygen": ("oxygen", "mg/L", 1),
    "saturation": ("saturation", "mg/L", 1),
    "chlorine": ("chlorine", "mg/L", 2),
    "copper": ("copper", "mg/L", 2),
    "potassium": ("potassium from doses", "mg/L", 0),
    "conductivity": ("conductivity", "µS/cm", 0),
    "expected": ("expected", "µS/cm", 0),
    "length": ("grown length", "cm", 0),
    "volume_l": ("tank", "L", 0),
    "least_l": ("least", "L", 0),
    "count": ("kept", "", 0),
    "calcium": ("calcium", "mg/L", 0),
    "magnesium": ("magnesium", "mg/L", 0),
    "kh_to_nitrate_per_day": ("of which nitrate explains", "°dH a day", 3),
}


def why(finding: Finding) -> list[str]:
    """The reasoning of a finding in at most four lines: meaning, numbers, source."""
    numbers = _numbers(finding)
    lines = [_MEANING[finding.id], f"Numbers: {numbers}." if numbers else "", _source(finding)]
    return [line for line in lines if line]


def _numbers(finding: Finding) -> str:
    facts = finding.facts
    parts = []
    if "per_day" in facts and "analyte" in facts:
        parts.append(_slope(finding))
    elif "analyte" in facts and "value" in facts and "low" in facts:
        parts.append(_range(finding))
    elif "analyte" in facts and "value" in facts:
        parts.append(f"{analyte(facts)} {with_unit(facts, 'value')}")
    for name, (label, unit, decimals) in _UNITS.items():
        number = facts.get(name)
        if name == "count" and "per_day" in facts:
            continue  # of readings, which the slope has told
        if isinstance(number, int | float):
            shown = small(number) if decimals == 4 else plain(number, decimals)
            parts.append(f"{label} {shown} {unit}".strip())
    if "limit" in facts and "per_day" not in facts:
        parts.append(f"limit {plain(float(facts['limit']), 1)}")
    return ", ".join(parts)


def _slope(finding: Finding) -> str:
    facts = finding.facts
    known = ANALYTES.get(str(facts["analyte"]))
    unit = known.unit if known else ""
    per_day, slow, fast = (small_signed(float(facts[n])) for n in ("per_day", "slowest", "fastest"))
    soonest = f"{float(facts['soonest']):.0f}"
    latest = f"{float(facts['latest']):.0f}" if "latest" in facts else "many"
    span = f" ({slow} to {fast})" if slow != fast else ""
    days = soonest if soonest == latest else f"{soonest} to {latest}"
    return (
        f"{per_day} {unit} a day{span} from {float(facts['count']):.0f} readings;"
        f" {days} days to {plain(float(facts['limit']), 1)}"
    )


def small_signed(number: float) -> str:
    """A small number with its sign, to two figures."""
    return f"{'−' if number < 0 else '+'}{small(abs(number))}"


def _range(finding: Finding) -> str:
    facts = finding.facts
    low, high = plain(float(facts["low"]), 1), plain(float(facts["high"]), 1)
    return f"{analyte(facts)} {with_unit(facts, 'value')}, suits {low} to {high}"


def _source(finding: Finding) -> str:
    rule = BY_ID[finding.id]
    own = finding.facts.get("source")
    if finding.id == "does_not_suit" and isinstance(own, str):
        return f"Source: {source_text(own)}."
    return f"Source: {rule.source}."
