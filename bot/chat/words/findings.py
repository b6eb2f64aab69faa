"""Findings in one short line each."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from bot.chat.words.numbers import plain, small
from core.advice.findings import Finding

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
    "low_oxygen": lambda facts: (
        f"Oxygen {plain(_number(facts, 'oxygen'), 1)} mg/L is low: move the surface, add air now."
    ),
    "chlorine": lambda facts: (
        f"Chlorine {small(_number(facts, 'chlorine'))} mg/L burns gills: treat the water with a"
        " dechlorinator by its label now, then aerate."
    ),
}


def line(finding: Finding) -> str:
    """One finding in one line, with what to do first."""
    return _LINES[finding.id](finding.facts)
