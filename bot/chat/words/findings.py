"""Findings in one short line each."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import date

from bot.chat.words import (
    finding_carbon,
    finding_courses,
    finding_deeds,
    finding_leaps,
    finding_nitrite,
    finding_sea,
    names,
)
from bot.chat.words.finding_animals import (
    cramped,
    crowded,
    do_not_go_together,
    does_not_suit,
    few_of_a_shoal,
    rivals,
    salt_in_fresh,
    unknown_animal,
    unlike_the_sea,
    wrong_water,
)
from bot.chat.words.finding_parts import (
    SMALL,
    Facts,
    filled,
    label,
    number,
    wish_of_kh,
)
from bot.chat.words.finding_plain import PLAIN
from bot.chat.words.finding_reasons import why
from bot.chat.words.numbers import plain, small
from bot.chat.words.text import N_, _
from bot.chat.words.traits import day
from core.advice import limits
from core.advice.findings import Finding

__all__ = ["line", "why"]


def _ammonia(facts: Facts) -> str:
    assumed = "temperature_assumed" in facts
    if "ph_now" in facts:
        return f"{_ammonia_of_day(facts, assumed=assumed)} {_(_ACT)}"
    if number(facts, "nh3_n") <= limits.NH3_WARN and "chronic_n" in facts:
        template = (
            _(
                "Ammonia is dangerous: over {chronic_n} mg/L as N, the long-term limit at this pH"
                " (taking 30 °C)."
            )
            if assumed
            else _(
                "Ammonia is dangerous: over {chronic_n} mg/L as N, the long-term limit at this pH."
            )
        )
        lead = filled(template, facts, chronic_n=SMALL)
    else:
        template = (
            _(
                "Ammonia is dangerous: {nh3_n} mg/L as N of it is poisonous NH3 at pH {ph} (taking"
                " 30 °C)."
            )
            if assumed
            else _("Ammonia is dangerous: {nh3_n} mg/L as N of it is poisonous NH3 at pH {ph}.")
        )
        lead = filled(template, facts, nh3_n=SMALL, ph=1)
    return f"{lead} {_(_ACT)}"


def _ammonia_seen(facts: Facts) -> str:
    """It harms nobody yet, and should be 0 all the same."""
    told = (
        _(
            "Ammonia rose from 0 to {total_n} mg/L as N, should be 0: feed little, test daily,"
            " change a little at the same KH, raise no pH."
        )
        if "was" in facts
        else _(
            "Ammonia {total_n} mg/L as N should be 0: feed little or nothing, test daily, change a"
            " little at the same KH, raise no pH."
        )
    )
    line = filled(told, facts, total_n=SMALL)
    if facts["animals"] == "yes":
        return line
    unless = _("If nothing lives there yet, leave it.")
    return f"{line} {unless}"


_ACT = N_("Stop feeding, change up to a quarter (dechlorinated, same KH), do not raise pH.")


def _ammonia_of_day(facts: Facts, *, assumed: bool) -> str:
    """Judged by the highest pH of the day, to which it may come again."""
    template = (
        _(
            "Ammonia is dangerous: {nh3_n} mg/L as N of it is poisonous NH3 at pH {ph}, the highest"
            " of the last day (taking 30 °C)."
        )
        if assumed
        else _(
            "Ammonia is dangerous: {nh3_n} mg/L as N of it is poisonous NH3 at pH {ph}, the highest"
            " of the last day."
        )
    )
    return filled(template, facts, nh3_n=SMALL, ph=1)


def _low_kh(facts: Facts) -> str:
    if "ammonia_first" in facts:
        told = _("KH {kh} is low (under {limit} °dH), but no buffer before the ammonia is gone.")
        return filled(told, facts, kh=1, limit=1)
    if "retest_first" in facts:
        told = _("KH {kh} is low (under {limit} °dH): pH can fall. Retest before any buffer.")
        return filled(told, facts, kh=1, limit=1)
    if "substance" in facts:
        return _(
            "KH {kh} was read before {substance} went in, which raises it. No more now: retest KH,"
            " pH and ammonia 24 h after it."
        ).format(kh=plain(number(facts, "kh"), 1), substance=names.said(str(facts["substance"])))
    if "source_kh" in facts:
        told = _(
            "KH {kh} is low (under {limit} °dH): pH can fall. Your source has {source_kh}: small"
            " changes, a day apart, raise it. Ask: how much can i change"
        )
        return filled(told, facts, kh=1, limit=1, source_kh=1)
    return _("KH {kh} is low (under {limit} °dH): pH can fall. Ask: dose kh {wish}").format(
        kh=plain(number(facts, "kh"), 1),
        limit=plain(number(facts, "limit"), 1),
        wish=wish_of_kh(facts),
    )


def _nitrate(facts: Facts) -> str:
    if "left" in facts:
        told = _(
            "Nitrate was {nitrate} mg/L, over {limit}, before water was changed: about {left} by"
            " that, more if the new water has some. Test it again."
        )
        return filled(told, facts, nitrate=0, limit=0, left=0)
    told = _("Nitrate {nitrate} mg/L is over {limit}: change water in small, frequent steps.")
    return filled(told, facts, nitrate=0, limit=0)


def _ph_extreme(facts: Facts) -> str:
    if number(facts, "ph") < number(facts, "limit"):
        told = _(
            "pH {ph} kills most fish, if it is true: retest now with a fresh sample; no buffer"
            " before ammonia is measured. Ask: what now"
        )
        return filled(told, facts, ph=1)
    told = _(
        "pH {ph} kills most fish within hours, if it is true: retest now with a fresh sample; no"
        " acid. Ask: what now"
    )
    return filled(told, facts, ph=1)


def _low_oxygen(facts: Facts) -> str:
    if number(facts, "oxygen") < limits.OXYGEN_ALARM:
        told = _(
            "Air now: oxygen {oxygen} mg/L is too little to breathe. Air stone, outlet to the"
            " surface. Ask: what now"
        )
        return filled(told, facts, oxygen=1)
    if "saturation" not in facts:
        told = _("Oxygen {oxygen} mg/L is low: move the surface, add air now.")
        return filled(told, facts, oxygen=1)
    told = _(
        "Oxygen {oxygen} mg/L is low (the water could hold {saturation}): move the surface, add air"
        " now."
    )
    return filled(told, facts, oxygen=1, saturation=1)


def _neglected(facts: Facts) -> str:
    used_up = _(
        "Nitrate {nitrate} mg/L, KH {kh} °dH and an acid pH: the water is used up. No large change!"
    )
    said = [filled(used_up, facts, nitrate=0, kh=1)]
    ammonia = facts.get("ammonia")
    if ammonia == "present":
        first = _("There is ammonia, which a rising pH makes poisonous. Ask: how much can i change")
        return " ".join([*said, first])
    if ammonia == "unknown":
        said.append(_("Test ammonia first."))
    if "share" in facts:
        told = _("Then {share} % a day, with KH and pH tested each day.")
        said.append(told.format(share=f"{number(facts, 'share') * 100:.0f}"))
    elif "source_kh" in facts:
        said.append(_("Even little is too fast: cut new water with RO to the tank's KH."))
    else:
        said.append(_("Measure your source water (/source), then change a little each day."))
    return " ".join(said)


def _copper(facts: Facts) -> str:
    if "species" not in facts:
        told = _(
            "Copper {copper} mg/L kills corals and other invertebrates: change a quarter now, with"
            " water like the tank's, free of copper."
        )
        return filled(told, facts, copper=SMALL)
    return _(
        "Copper {copper} mg/L kills invertebrates ({species}): change a quarter now, with"
        " dechlorinated water like the tank's, free of copper."
    ).format(copper=small(number(facts, "copper")), species=facts["species"])


def _expired_kit(facts: Facts) -> str:
    return _(
        "The {name} kit was good until {day}: trust it less, check it against a known water."
    ).format(name=label(facts), day=day(date.fromisoformat(str(facts["expired"]))))


_LINES: Mapping[str, Callable[[Facts], str]] = {
    "ammonia": _ammonia,
    "ammonia_seen": _ammonia_seen,
    "low_kh": _low_kh,
    "nitrate": _nitrate,
    "ph_extreme": _ph_extreme,
    "ph_fell": finding_leaps.fell,
    "ph_rose": finding_leaps.rose,
    "overdose": finding_deeds.overdose,
    "nutrient_overdose": finding_deeds.nutrient,
    "medicine_dosed": finding_deeds.medicine,
    "copper_before": finding_deeds.copper_before,
    "acid_dosed": finding_deeds.acid,
    "caustic_dosed": finding_deeds.caustic,
    "unknown_dosed": finding_deeds.unknown,
    "tap_in_sea": finding_deeds.tap_in_sea,
    "pure_in": finding_deeds.pure_in,
    "salt_topped_up": finding_deeds.salt_topped_up,
    "sea_ion_low": finding_sea.low,
    "sea_ion_high": finding_sea.high,
    "large_change": finding_deeds.large_change,
    "contradiction": finding_carbon.contradiction,
    "contradiction_low": finding_carbon.contradiction_low,
    "low_oxygen": _low_oxygen,
    "copper": _copper,
    "neglected": _neglected,
    "nitrite": finding_nitrite.harms,
    "nitrite_with_chloride": finding_nitrite.eased,
    "nitrite_in_salt_water": finding_nitrite.in_salt_water,
    "nitrite_seen": finding_nitrite.seen,
    "does_not_suit": does_not_suit,
    "salt_in_fresh": salt_in_fresh,
    "unlike_the_sea": unlike_the_sea,
    "do_not_go_together": do_not_go_together,
    "cramped": cramped,
    "crowded": crowded,
    "rivals": rivals,
    "wrong_water": wrong_water,
    "few_of_a_shoal": few_of_a_shoal,
    "unknown_animal": unknown_animal,
    "much_co2": finding_carbon.much_co2,
    "co2_by_older_kh": finding_carbon.by_older_kh,
    "perhaps_much_co2": finding_carbon.perhaps_much_co2,
    "sudden_jump": finding_courses.sudden_jump,
    "expired_kit": _expired_kit,
    "not_retested": finding_courses.not_retested,
    "cycling_ammonia": finding_courses.cycling_ammonia,
    "cycling_nitrite": finding_courses.cycling_nitrite,
    "heading": finding_courses.heading,
    "drifting": finding_courses.drifting,
    "steady": finding_courses.steady,
}


def line(finding: Finding) -> str:
    """One finding in one line, with what to do first."""
    if finding.id in PLAIN:
        template, decimals = PLAIN[finding.id]
        return filled(_(template), finding.facts, **decimals)
    return _LINES[finding.id](finding.facts)
