"""Answers to questions that need no plan."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.numbers import plain, small
from core.advice.carbon import CarbonDioxide
from core.analytes import ANALYTES
from core.units import label


def converted(value: float, unit: str | None, answers: Sequence[tuple[float, str]]) -> str:
    """A value and what it is in other units."""
    told = f"{plain(value, 4)} {label(unit) if unit else ''}".strip()
    return f"{told} = " + " = ".join(f"{_fine(number)} {label(each)}" for number, each in answers)


def what_to_convert() -> list[str]:
    """The number is missing."""
    return ["What shall I convert? Send for example: convert 8 dkh to ppm"]


def cannot_convert() -> list[str]:
    """The two units do not measure the same thing, or one is not known."""
    return ["I cannot convert that. Send for example: convert 8 dkh to ppm, or convert 20 gal to l"]


def spoons(substance: str, count: float, weighs: tuple[float, float, float]) -> list[str]:
    """Spoons in grams, with the warning that they are no measure."""
    about, least, most = (plain(each, 1) for each in weighs)
    level = "level teaspoon weighs" if count == 1 else "level teaspoons weigh"
    return [
        f"{plain(count, 2)} {level} about {about} g of {substance}, anything from {least} to"
        f" {most} g.",
        "Spoons are no measure for a dose: weigh it.",
    ]


def spoon_unknown(substance: str) -> list[str]:
    """No weight of a spoon is known."""
    return [f"I do not know what a spoon of {substance} weighs. Weigh it and send the grams."]


def carbon_dioxide(tank: str | None, ph: float, kh: float, found: CarbonDioxide) -> list[str]:
    """Dissolved carbon dioxide, how sure it is, and what it means."""
    where = f"{tank}: " if tank else ""
    lines = [
        f"{where}about {small(found.mg_l)} mg/L CO2 at pH {plain(ph, 2)} and KH {plain(kh, 2)} °dH"
        f" ({small(found.least)}–{small(found.most)} with the kits' doubt)."
    ]
    if found.is_high:
        lines.append("Over 30 mg/L is a danger to animals: move the surface, less gas at night.")
    if found.temperature_assumed:
        lines.append("Taken at 25 °C.")
    return lines


def carbon_dioxide_needs(tank: str | None) -> list[str]:
    """A reading is missing or old."""
    where = f" of {tank}" if tank else ""
    return [f"I need pH and KH{where}, read within three days. Send for example: ph 6.8 kh 4"]


def no_such_water() -> list[str]:
    """The readings cannot both be true."""
    return ["That pH and that KH do not go together in any water. Retest both."]


def not_safe(findings: Sequence[str]) -> list[str]:
    """At least one limit is passed."""
    return [f"No. {findings[0]}", *findings[1:]]


def within_limits(what: str) -> list[str]:
    """No rule speaks; that is not a promise."""
    return [f"No limit that I know is passed by {what}. That is no promise for every species."]


def ammonia_within(total: float, nh3_n: float, ph: float, temperature: float) -> list[str]:
    """Total ammonia under the limits, which is still no good sign."""
    return [
        f"Under the limits, but never called safe: {small(nh3_n)} mg/L of {small(total)} is"
        f" un-ionised at pH {plain(ph, 2)} and {plain(temperature, 1)} °C (limit 0.05 as N).",
        "Total ammonia should be 0: feed less, test again tomorrow. A higher pH makes it worse.",
    ]


def which_tank(names: Sequence[str]) -> list[str]:
    """No tank is meant, or there is none."""
    if not names:
        return ["No readings yet. Send for example: ph 7.2 kh 4"]
    return [f"Of which tank? {', '.join(names)}"]


def no_reason(tank: str) -> list[str]:
    """Nothing on record explains it."""
    return [
        f"{tank}: nothing that I have on record explains it. Measure pH, KH, GH, nitrate and"
        " temperature at one time and send them; KH comes before pH.",
    ]


def no_history(tank: str, analyte: str | None) -> list[str]:
    """Nothing was measured."""
    name = ANALYTES[analyte].label if analyte in ANALYTES else analyte
    return [f"{tank}: no readings{f' of {name}' if name else ''} yet."]


def no_source() -> list[str]:
    """No source water is on record."""
    return ["I do not know your source water. Send for example: /source tap ph 7.6 kh 8 gh 12"]


def no_need() -> list[str]:
    """The question names no number."""
    return ["Which value? Send for example: is ammonia 0.5 safe at ph 8.2 and 26 c?"]


def _fine(number: float) -> str:
    if number >= 100:
        return plain(number, 0)
    return (
        plain(number, 2 if number < 10 else 1) if number != round(number, 3) else plain(number, 4)
    )
