"""Answers to questions that need no plan."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from bot.chat.words.doses import UNITS
from bot.chat.words.names import label as name_of
from bot.chat.words.names import of_tank, said
from bot.chat.words.numbers import plain, small, span
from bot.chat.words.text import _, ngettext
from core.advice.carbon import CarbonDioxide
from core.advice.used_up import Consumption
from core.units import label


def converted(value: float, unit: str | None, answers: Sequence[tuple[float, str]]) -> str:
    """A value and what it is in other units."""
    told = f"{plain(value, 4)} {label(unit) if unit else ''}".strip()
    return f"{told} = " + " = ".join(f"{_fine(number)} {label(each)}" for number, each in answers)


def what_to_convert() -> list[str]:
    """The number is missing."""
    return [_("What shall I convert? Send for example: convert 8 dkh to ppm")]


def cannot_convert() -> list[str]:
    """The two units do not measure the same thing, or one is not known."""
    return [
        _("I cannot convert that. Send for example: convert 8 dkh to ppm, or convert 20 gal to l")
    ]


def spoons(substance: str, count: float, weighs: tuple[float, float, float]) -> list[str]:
    """Spoons in grams, with the warning that they are no measure."""
    about, least, most = (plain(each, 1) for each in weighs)
    told = ngettext(
        "{count} level teaspoon weighs about {about} g of {substance}, anything from {least} to"
        " {most} g.",
        "{count} level teaspoons weigh about {about} g of {substance}, anything from {least} to"
        " {most} g.",
        count,
    )
    return [
        told.format(
            count=plain(count, 2), about=about, substance=said(substance), least=least, most=most
        ),
        _("Spoons are no measure for a dose: weigh it."),
    ]


def weigh_it() -> list[str]:
    """What to do in the place of spoons."""
    return [
        _("Weigh it: a kitchen scale tells 10 g and more; less goes by a stock solution."),
        _("For that, ask a plan first (dose kh 4), then: i have no scale"),
    ]


def spoon_unknown(substance: str) -> list[str]:
    """No weight of a spoon is known."""
    return [
        _("I do not know what a spoon of {substance} weighs. Weigh it and send the grams.").format(
            substance=said(substance)
        )
    ]


def carbon_dioxide(
    tank: str | None, ph: float, kh: float, found: CarbonDioxide, *, ammonia: bool
) -> list[str]:
    """Dissolved carbon dioxide, how sure it is, what it means; air frees ammonia that is there."""
    told = _(
        "about {co2} mg/L CO2 at pH {ph} and KH {kh} °dH ({least}–{most} with the kits' doubt)."
    ).format(
        co2=small(found.mg_l),
        ph=plain(ph, 2),
        kh=plain(kh, 2),
        least=small(found.least),
        most=small(found.most),
    )
    lines = [of_tank(tank, told)]
    if found.is_high and ammonia:
        lines.append(
            _(
                "Over 30 mg/L is a danger to animals: less gas, none at night. There is ammonia:"
                " extra air only if they gasp."
            )
        )
    elif found.is_high:
        lines.append(_("Over 30 mg/L is a danger to animals: move the surface, less gas at night."))
    if found.temperature_assumed:
        lines.append(_("Taken at 25 °C."))
    return lines


def carbon_dioxide_needs(tank: str | None) -> list[str]:
    """A reading is missing or old."""
    if not tank:
        return [_("I need pH and KH, read within three days. Send for example: ph 6.8 kh 4")]
    told = _("I need pH and KH of {tank}, read within three days. Send for example: ph 6.8 kh 4")
    return [told.format(tank=tank)]


def no_such_water() -> list[str]:
    """The readings cannot both be true."""
    return [_("That pH and that KH do not go together in any water. Retest both.")]


def not_safe(findings: Sequence[str]) -> list[str]:
    """At least one limit is passed."""
    return [_("That is not safe. {finding}").format(finding=findings[0]), *findings[1:]]


def within_limits(what: str) -> list[str]:
    """No rule speaks; that is not a promise."""
    return [
        _("No limit that I know is passed by {what}. That is no promise for every species.").format(
            what=what
        )
    ]


TROPICAL: Final = (22.0, 28.0)
"""Where most tropical fish and corals are kept; common practice, no source. [°C]"""


def warmth(temperature: float) -> list[str]:
    """A temperature that no rule of this tank speaks about, judged as for tropical animals."""
    low, high = TROPICAL
    fields = {"told": plain(temperature, 1), "low": plain(low, 0), "high": plain(high, 0)}
    if low <= temperature <= high:
        lines = [_("{told} °C is within {low} to {high} °C, where most tropical animals live.")]
    elif temperature > high:
        lines = [
            _(
                "{told} °C is too warm for most: tropical animals are kept at {low} to {high} °C,"
                " and warm water holds little oxygen."
            ),
            _("Aerate first; then down by 1 °C an hour, not faster."),
        ]
    else:
        lines = [
            _(
                "{told} °C is too cold for tropical animals, which are kept at {low} to {high} °C;"
                " goldfish and other cold-water fish bear it."
            ),
            _("Up by 1 °C an hour, not faster."),
        ]
    lines.append(_("Common practice; tell me who lives there (added 6 …) and I judge for them."))
    return [line.format(**fields) for line in lines]


def used_up(analyte: str, used: Consumption) -> str:
    """What a reef uses up a day."""
    unsure = _(
        "The last two readings show no use of {name} beyond the kit's step ({between} {unit} a"
        " day)."
    )
    sure = _("It uses about {daily} {unit} {name} a day by the last two readings ({between}).")
    return (sure if used.is_sure else unsure).format(
        name=name_of(analyte),
        unit=UNITS.get(analyte, "mg/L"),
        daily=plain(used.per_day, 2),
        between=span(used.low, used.high, 2),
    )


def ammonia_within(total: float, nh3_n: float, ph: float, temperature: float) -> list[str]:
    """Total ammonia under the limits, which is still no good sign."""
    return [
        _(
            "Under the limits, but never called safe: {nh3_n} mg/L of {total} is un-ionised"
            " at pH {ph} and {temperature} °C (limit 0.05 as N)."
        ).format(
            nh3_n=small(nh3_n),
            total=small(total),
            ph=plain(ph, 2),
            temperature=plain(temperature, 1),
        ),
        _("Total ammonia should be 0: feed less, test again tomorrow. A higher pH makes it worse."),
    ]


def which_tank(names: Sequence[str]) -> list[str]:
    """No tank is meant, or there is none."""
    if not names:
        return [_("No readings yet. Send for example: ph 7.2 kh 4")]
    return [_("Of which tank? {names}").format(names=", ".join(names))]


def no_reason(tank: str) -> list[str]:
    """Nothing on record explains it."""
    return [
        _(
            "{tank}: nothing that I have on record explains it. Measure pH, KH, GH, nitrate"
            " and temperature at one time and send them; KH comes before pH."
        ).format(tank=tank),
    ]


def no_history(tank: str, analyte: str | None) -> list[str]:
    """Nothing was measured."""
    if analyte is None:
        return [_("{tank}: no readings yet.").format(tank=tank)]
    told = _("{tank}: no readings of {name} yet.")
    return [told.format(tank=tank, name=name_of(analyte))]


def no_source() -> list[str]:
    """No source water is on record."""
    return [_("I do not know your source water. Send for example: /source tap ph 7.6 kh 8 gh 12")]


def topping_up(*, is_sea: bool) -> list[str]:
    """What to fill up with: water that evaporated left its salts behind. Common practice."""
    if is_sea:
        return [
            _("Only with demineralised water (RO): what evaporated left its salt behind."),
            _("Tap water brings hardness, nitrate and chlorine; salt water raises salinity."),
        ]
    return [
        _("Best with demineralised water (RO): what evaporated left its minerals behind."),
        _("Tap water, dechlorinated and at the same temperature, raises GH and KH bit by bit."),
    ]


def no_need() -> list[str]:
    """The question names no number."""
    return [_("Which value? Send for example: is ammonia 0.5 safe at ph 8.2 and 26 c?")]


def _fine(number: float) -> str:
    if number >= 100:
        return plain(number, 0)
    return (
        plain(number, 2 if number < 10 else 1) if number != round(number, 3) else plain(number, 4)
    )
