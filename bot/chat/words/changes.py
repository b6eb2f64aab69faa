"""A water change in words: whether it is too much, what it does, and what to do instead."""

from __future__ import annotations

from collections.abc import Mapping

from bot.chat.words.cautions import CAUTIONS
from bot.chat.words.numbers import litres, plain, small
from core.advice import limits
from core.advice.cautions import of_new_water
from core.advice.change_plan import ChangePlan
from core.advice.changes import Waters
from core.advice.routine import SawTooth
from core.analytes import ANALYTES

REASONS: Mapping[str, str] = {
    "kh": "KH would move too far in a day (1 °dH, and never more than doubled)",
    "kh_floor": "KH would end under 1 °dH, too little to hold pH",
    "gh": "GH would move more than 2 °dH in a day",
    "ph": "pH would move too far at once",
    "temperature": "the water would change by more than 2 °C",
    "salinity": "salinity would move too far in a day",
    "conductivity": "conductivity would move by more than 15 %, with hardness unknown",
    "ammonia": "it would set too much poisonous ammonia free",
    "share": "even in an emergency not more than half at a time",
}
ORDER = (
    "ammonia",
    "kh_floor",
    "kh",
    "ph",
    "gh",
    "salinity",
    "conductivity",
    "share",
    "temperature",
)


def percent(share: float) -> str:
    """A share of the water. [%]"""
    return f"{plain(100 * share, 0 if share >= 0.1 else 1)} %"


def head(plan: ChangePlan, waters: Waters, tank: str, volume_l: float | None) -> str:
    """The answer: yes, or no and what instead."""
    only = ""
    if plan.only_below is not None:
        only = f"Only if total ammonia is under {plain(plan.only_below, 2)} mg/L (measure it). "
    asked = amount(plan.share, volume_l)
    if not plan.broken:
        urgent = "poison is the greater danger: " if plan.emergency else ""
        return f"{only}{tank}: {urgent}{asked} at once is within the limits."
    why = next(REASONS[name] for name in ORDER if name in plan.broken)
    jump = abs(plan.after.at_once - waters.tank.ph_now)
    if "ph" in plan.broken and jump > limits.PH_DANGER:
        why += f"; pH would jump by {plain(jump, 1)}, which can kill"
    lead = f"{tank}: not {percent(plan.share)} at once: {why}."
    if not plan.steps:
        return lead
    step = amount(plan.steps[0], volume_l)
    pace = "hours apart" if plan.emergency else "one a day"
    return f"{only}{lead} Instead {len(plan.steps)} changes of {step}, {pace}."


def no_steps(plan: ChangePlan) -> list[str]:
    """Nothing of this water can be changed safely, or too little to be of use."""
    if "ammonia" in plan.broken:
        return [
            "First bring ammonia down: stop feeding, and change with water cut to the tank's own"
            " KH (with RO or rain), small and often. Then ask me again."
        ]
    if plan.broken == ("temperature",):
        return ["Bring the new water to the tank's temperature first, then ask me again."]
    if plan.largest_safe_share <= 0.0:
        return ["Match the new water to the tank first (KH, temperature), then ask me again."]
    return [f"At most {percent(plan.largest_safe_share)} a day of this water; retest in between."]


def amount(share: float, volume_l: float | None) -> str:
    """A share, with its litres where the volume is known."""
    return percent(share) + (f" ({litres(share * volume_l)})" if volume_l is not None else "")


def row(title: str, values: Mapping[str, float]) -> str:
    """One stage of the water on a line."""
    shown = [
        f"{name} {_figure(key, values[key])}".strip()
        for key, name in NAMES.items()
        if key in values
    ]
    return f"{title}: {', '.join(shown)}."


NAMES: Mapping[str, str] = {
    "ph": "pH",
    "kh": "KH",
    "gh": "GH",
    "nitrate": "nitrate",
    "temperature": "",
    "nh3_n": "NH3-N",
}


def _figure(key: str, number: float) -> str:
    if key == "temperature":
        return f"{plain(number, 1)} °C"
    if key == "nh3_n":
        return f"{small(number)} mg/L"
    if key == "nitrate":
        return f"{plain(number, 0 if number >= 10 else 1)} mg/L"
    return plain(number, 1)


def leaves(ph: float, nh3_n: float | None) -> str:
    """What stands if the carbon dioxide leaves."""
    poison = f", NH3-N {small(nh3_n)} mg/L" if nh3_n is not None else ""
    return f"If CO2 leaves: pH {plain(ph, 1)}{poison}."


def routine(found: SawTooth) -> str:
    """What a routine comes to."""
    return (
        f"{percent(found.share)} every {plain(found.every_days, 0)} days keeps nitrate between"
        f" {plain(found.low, 0)} and {plain(found.high, 0)} mg/L in the long run"
        f" (+{plain(found.per_day, 1)} a day by your readings)."
    )


def cut(share: float) -> str:
    """The new water must be cut first."""
    return (
        f"Cut the new water first: {percent(share)} of it RO or rain, so that its KH is the tank's;"
        " a higher pH would free the poison."
    )


def prepare(waters: Waters, source: str, *, chlorinated: bool) -> str:
    """What to do with the new water before it goes in."""
    if waters.source.kh < 0.5 and waters.source.gh < 0.5:
        return (
            f"{source} water has no minerals: never fill a tank with it alone, and match its"
            " temperature."
        )
    if not chlorinated:
        return "Match the temperature; go slowly."
    return (
        "Dechlorinate tap water first: a bucket for its own litres, a hose into the tank for the"
        " whole tank. Match the temperature; go slowly."
    )


def chloramine(safe: float) -> str:
    """What unmeasured chloramine would allow, told where it binds."""
    at_most = f"at most {percent(safe)} at once" if safe > 0.0 else "no change with it"
    return (
        f"Chloramine in the tap (up to 4 mg/L, unmeasured) would free ammonia: then {at_most}."
        " Test the tap's total chlorine."
    )


def more(plan: ChangePlan, waters: Waters, source: str) -> list[str]:
    """What the figures rest on."""
    lines = [
        f"New water: {source}, KH {plain(waters.source.kh, 1)}, GH {plain(waters.source.gh, 1)},"
        f" {plain(waters.source.temperature, 1)} °C.",
        f"Largest safe share at once: {percent(plan.largest_safe_share)}.",
        "A day: KH 1 °dH, GH 2 °dH, pH 0.3, 2 °C (common practice); un-ionised ammonia under"
        f" {plain(waters.limit, 2)} mg/L as N, which is never called safe.",
    ]
    if waters.tank.ph is None:
        lines.append(
            "No pH of the last three days: reckoned from a stocked tank's CO2 (2000 µatm)."
        )
    if waters.tank.temperature_assumed:
        lines.append("No temperature known: 30 °C taken, the worst for ammonia.")
    if "stands_in_air" in waters.source.assumptions:
        lines.append("The new water's pH is unknown: taken as stood in air.")
    for name in of_new_water(waters):
        lines += CAUTIONS[name][:1]
    if plan.emergency:
        lines.append(
            "Poison emergency: at most half at a time; only temperature, pH at once (0.5 up) and"
            " ammonia bind."
        )
    return lines


def no_tank() -> list[str]:
    """There is no tank to change."""
    return ["Which tank? Make one first, for example: /tank new Fern 90 l fresh"]


def no_share() -> list[str]:
    """How much is missing."""
    return ["How much? Send for example: what if i change 30%, or: nitrate under 20"]


def share_implausible() -> list[str]:
    """More than all of the water."""
    return ["A change is between 1 and 100 %. Send for example: what if i change 30%"]


def no_source(tank: str) -> list[str]:
    """The new water is unknown."""
    return [
        f"I cannot tell for {tank}: I do not know the new water.",
        "Measure it and send for example: /source tap ph 7.6 kh 8 gh 10 no3 5 temp 15",
    ]


def unknown_kh(tank: str, of_source: bool) -> str:
    """KH is missing, so nothing can be said of pH and ammonia."""
    if of_source:
        return (
            f"{tank}: I cannot tell whether that is safe: the new water's KH is unknown. Send for"
            " example: /source tap ph 7.6 kh 8 gh 10"
        )
    return f"{tank}: I cannot tell whether that is safe: send the tank's pH and KH first."


def unknown(tank: str, analyte: str, *, of_source: bool) -> list[str]:
    """A wish for an analyte that was not measured."""
    name = label(analyte)
    if of_source:
        return [
            f"{tank}: I need the new water's {name} as well. Send for example:"
            f" /source tap {analyte} 5"
        ]
    return [f"{tank}: I need {name} first. Measure it and send it, for example: {analyte} 40"]


def reached(analyte: str, now: float, target: float) -> list[str]:
    """No change is needed for it, or the new water leads away from it."""
    return [
        f"No change for that: {label(analyte)} is {plain(now, 1)}, and this water does not bring"
        f" it towards {plain(target, 1)}."
    ]


def out_of_reach(analyte: str, source: float, target: float) -> list[str]:
    """The new water holds as much."""
    return [
        f"No change with this water gets there: its own {label(analyte)} is {plain(source, 1)}.",
        f"Cut it with RO or rain until it is well past {plain(target, 1)}.",
    ]


def label(analyte: str) -> str:
    """An analyte as people write it."""
    known = ANALYTES.get(analyte)
    return known.label if known is not None else analyte
