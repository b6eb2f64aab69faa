"""A water change in words: whether it is too much, what it does, and what to do instead."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from bot.chat.words import names
from bot.chat.words.cautions import caution
from bot.chat.words.levels import unit
from bot.chat.words.numbers import at_most, litres, plain, small
from bot.chat.words.text import _, ngettext
from core.advice.cautions import of_new_water
from core.advice.change_plan import ChangePlan
from core.advice.changes import Waters
from core.advice.routine import SawTooth


def percent(share: float) -> str:
    """A share of the water. [%]"""
    return f"{plain(100 * share, 0 if share >= 0.1 else 1)} %"


def amount(share: float, volume_l: float | None) -> str:
    """A share, with its litres where the volume is known."""
    if volume_l is None:
        return percent(share)
    told = _("{share} ({volume})")
    return told.format(share=percent(share), volume=litres(share * volume_l))


def at_once(share: float, values: Mapping[str, float]) -> str:
    """The water right after the change."""
    told = _("{share} at once: {values}.")
    return told.format(share=percent(share), values=figures(values))


def stood(values: Mapping[str, float]) -> str:
    """The water once it has stood."""
    return _("After standing: {values}.").format(values=figures(values))


def would_give(share: float, values: Mapping[str, float]) -> str:
    """What a change mixes by amounts alone."""
    told = _("{share} would give: {values}.")
    return told.format(share=percent(share), values=figures(values))


def figures(values: Mapping[str, float]) -> str:
    """What is told of a water."""
    told = (key for key in SHOWN if key in values and not (key == "nh3_n" and values[key] == 0.0))
    return ", ".join(_figure(key, values[key]) for key in told)


SHOWN = ("salinity", "ph", "kh", "gh", "nitrate", "temperature", "nh3_n")
"""What is told of a water, in this order."""


def _figure(key: str, number: float) -> str:
    if key == "temperature":
        return f"{plain(number, 1)} °C"
    if key == "salinity":
        told = _("salinity {number} g/kg")
        return told.format(number=plain(number, 1))
    if key == "nh3_n":
        told = _("poisonous ammonia {number} mg/L as N")
        return told.format(number=small(number))
    if key == "nitrate":
        told = _("nitrate {number} mg/L")
        return told.format(number=plain(number, 0 if number >= 10 else 1))
    return f"{names.label(key)} {plain(number, 1)}{unit(key)}"


def leaves(ph: float, nh3_n: float | None) -> str:
    """What stands if the carbon dioxide leaves."""
    if not nh3_n:
        return _("If CO2 leaves: pH {ph}.").format(ph=plain(ph, 1))
    told = _("If CO2 leaves: pH {ph}, poisonous ammonia {nh3} mg/L as N.")
    return told.format(ph=plain(ph, 1), nh3=small(nh3_n))


def routine(found: SawTooth) -> str:
    """What a routine comes to."""
    days = plain(found.every_days, 0)
    return ngettext(
        "{share} every {days} day keeps nitrate between {low} and {high} mg/L in the long run"
        " (+{per_day} a day by your readings).",
        "{share} every {days} days keeps nitrate between {low} and {high} mg/L in the long run"
        " (+{per_day} a day by your readings).",
        int(days),
    ).format(
        share=percent(found.share),
        days=days,
        low=plain(found.low, 0),
        high=plain(found.high, 0),
        per_day=plain(found.per_day, 1),
    )


def dosed_since(kh: float) -> str:
    """The tank's readings are older than what went in. [°dH]"""
    told = _("Counted with what went in since the last test: KH about {kh} °dH. Test KH and pH.")
    return told.format(kh=plain(kh, 1))


def cut(share: float) -> str:
    """The new water must be cut first."""
    return _(
        "Cut the new water first: {share} of it RO or rain, so that its KH is the tank's; a higher"
        " pH would free the poison."
    ).format(share=percent(share))


def prepare(waters: Waters, source: str, *, chlorinated: bool) -> str:
    """What to do with the new water before it goes in."""
    if waters.source.kh < 0.5 and waters.source.gh < 0.5:
        return _(
            "{source} water has no minerals: never fill a tank with it alone, and match its"
            " temperature."
        ).format(source=names.water(source))
    if not chlorinated:
        return _("Match the temperature; go slowly.")
    return _(
        "Dechlorinate tap water first: a bucket for its own litres, a hose into the tank for the"
        " whole tank. Match the temperature; go slowly."
    )


def more(plan: ChangePlan, waters: Waters, source: str) -> list[str]:
    """What the figures rest on."""
    lines = [
        _("New water: {source}, KH {kh} °dH, GH {gh} °dH, {degrees} °C.").format(
            source=names.water(source),
            kh=plain(waters.source.kh, 1),
            gh=plain(waters.source.gh, 1),
            degrees=plain(waters.source.temperature, 1),
        ),
        _("Largest safe share at once: {share}.").format(
            share=percent(at_most(plan.largest_safe_share))
        ),
        _(
            "A day: KH 1 °dH, GH 2 °dH, pH 0.3, 2 °C (common practice); un-ionised ammonia under"
            " {limit} mg/L as N, which is never called safe."
        ).format(limit=plain(waters.limit, 2)),
    ]
    if waters.tank.ph is None:
        lines.append(
            _("No pH of the last three days: reckoned from a stocked tank's CO2 (2000 µatm).")
        )
    if waters.tank.temperature_assumed:
        lines.append(_("No temperature known: 30 °C taken, the worst for ammonia."))
    if "stands_in_air" in waters.source.assumptions:
        lines.append(_("The new water's pH is unknown: taken as stood in air."))
    for name in of_new_water(waters):
        lines += caution(name)[:1]
    if plan.emergency:
        lines.append(
            _(
                "Poison emergency: at most half at a time; only temperature, pH at once (0.5 up)"
                " and ammonia bind."
            )
        )
    return lines


def no_tank() -> list[str]:
    """There is no tank to change."""
    return [_("Which tank? Make one first, for example: /tank new Fern 90 l fresh")]


def no_share() -> list[str]:
    """How much is missing."""
    return [_("How much? Send for example: what if i change 30%, or: nitrate under 20")]


def share_implausible() -> list[str]:
    """More than all of the water."""
    return [_("A change is between 1 and 100 %. Send for example: what if i change 30%")]


def no_source(tank: str) -> list[str]:
    """The new water is unknown."""
    return [
        _("I cannot tell for {tank}: I do not know the new water.").format(tank=tank),
        _("Measure it and send for example: /source tap ph 7.6 kh 8 gh 10 no3 5 temp 15"),
    ]


def unknown_kh(tank: str, unknown: Collection[str]) -> str:
    """KH of the ``tank``, the ``source`` or both is missing: nothing is known of pH and ammonia."""
    if "source" not in unknown:
        template = _("{tank}: I cannot tell whether that is safe: send the tank's pH and KH first.")
    elif "tank" in unknown:
        template = _(
            "{tank}: I cannot tell whether that is safe: send the tank's pH and KH, and the new"
            " water's, for example: /source tap ph 7.6 kh 8 gh 10"
        )
    else:
        template = _(
            "{tank}: I cannot tell whether that is safe: the new water's KH is unknown. Send for"
            " example: /source tap ph 7.6 kh 8 gh 10"
        )
    return template.format(tank=tank)


def until_measured(most: float) -> str:
    """The largest share of a day until then; none where it is 0."""
    if most <= 0.0:
        return _(
            "Until then no change but with dechlorinated water of the tank's own pH and KH: what"
            " was measured forbids any other."
        )
    return _(
        "Until then at most {share} in one day, only where ammonia reads 0; dechlorinated, as warm"
        " as the tank."
    ).format(share=percent(at_most(most)))


def unknown(tank: str, analyte: str, *, of_source: bool) -> list[str]:
    """A wish for an analyte that was not measured."""
    template = (
        _(
            "{tank}: I need the new water's {name} as well. Send for example: /source tap"
            " {analyte} 5"
        )
        if of_source
        else _("{tank}: I need {name} first. Measure it and send it, for example: {analyte} 40")
    )
    return [template.format(tank=tank, name=names.label(analyte), analyte=names.said(analyte))]


def reached(analyte: str, now: float, target: float) -> list[str]:
    """No change is needed for it, or the new water leads away from it."""
    return [
        _(
            "No change for that: {name} is {now}, and this water does not bring it towards"
            " {target}."
        ).format(name=names.label(analyte), now=plain(now, 1), target=plain(target, 1))
    ]


def out_of_reach(analyte: str, source: float, target: float) -> list[str]:
    """The new water holds as much."""
    return [
        _("No change with this water gets there: its own {name} is {number}.").format(
            name=names.label(analyte), number=plain(source, 1)
        ),
        _("Cut it with RO or rain until it is well past {target}.").format(target=plain(target, 1)),
    ]
