"""Findings in one short line each."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import date

from bot.chat.words import finding_deeds, finding_nitrite, finding_sea
from bot.chat.words.finding_animals import (
    cramped,
    crowded,
    do_not_go_together,
    does_not_suit,
    few_of_a_shoal,
    rivals,
    unknown_animal,
    wrong_water,
)
from bot.chat.words.finding_parts import Facts, amount, analyte, label, number, with_unit
from bot.chat.words.finding_plain import PLAIN, SMALL
from bot.chat.words.finding_reasons import why
from bot.chat.words.numbers import plain, small
from bot.chat.words.text import N_, _, ngettext
from bot.chat.words.traits import day
from core.advice import limits
from core.advice.findings import Finding

__all__ = ["line", "why"]


def _told(template: str, facts: Facts, **decimals: int) -> str:
    """A template with numbers of a finding, each to so many decimals."""
    numbers = {
        name: small(number(facts, name)) if fine == SMALL else plain(number(facts, name), fine)
        for name, fine in decimals.items()
    }
    return template.format(**numbers)


def _ammonia(facts: Facts) -> str:
    assumed = "temperature_assumed" in facts
    if number(facts, "nh3_n") <= limits.NH3_WARN and "chronic_n" in facts:
        template = (
            _(
                "Ammonia is dangerous: total is over {chronic_n} mg/L, the EPA 2013 long-term limit"
                " at this pH (taking 30 °C)."
            )
            if assumed
            else _(
                "Ammonia is dangerous: total is over {chronic_n} mg/L, the EPA 2013 long-term limit"
                " at this pH."
            )
        )
        lead = _told(template, facts, chronic_n=SMALL)
    else:
        template = (
            _(
                "Ammonia is dangerous: {nh3_n} mg/L as N of it is un-ionised at pH {ph} (taking"
                " 30 °C)."
            )
            if assumed
            else _("Ammonia is dangerous: {nh3_n} mg/L as N of it is un-ionised at pH {ph}.")
        )
        lead = _told(template, facts, nh3_n=SMALL, ph=1)
    act = _("Stop feeding, change up to a quarter (same KH), do not raise pH.")
    return f"{lead} {act}"


def _low_kh(facts: Facts) -> str:
    if "ammonia_first" in facts:
        told = _("KH {kh} is low (under {limit} °dH), but no buffer before the ammonia is gone.")
        return _told(told, facts, kh=1, limit=1)
    if "source_kh" in facts:
        told = _(
            "KH {kh} is low (under {limit} °dH): pH can fall. Your source has {source_kh}: small"
            " changes, a day apart, raise it. Ask: what if i change 15%"
        )
        return _told(told, facts, kh=1, limit=1, source_kh=1)
    return _("KH {kh} is low (under {limit} °dH): pH can fall. Ask: dose kh {wish}").format(
        kh=plain(number(facts, "kh"), 1),
        limit=plain(number(facts, "limit"), 1),
        wish=plain(max(round(number(facts, "limit") + 0.5), 1), 1),
    )


def _contradiction(facts: Facts) -> str:
    if "co2_mg_l" not in facts:
        told = _("pH {ph} with KH {kh} does not add up. Retest both.")
        return _told(told, facts, ph=1, kh=1)
    told = _(
        "pH {ph} with KH {kh} does not add up: it would mean over {co2_mg_l} mg/L CO2. Retest both."
    )
    return _told(told, facts, ph=1, kh=1, co2_mg_l=SMALL)


def _low_oxygen(facts: Facts) -> str:
    if "saturation" not in facts:
        told = _("Oxygen {oxygen} mg/L is low: move the surface, add air now.")
        return _told(told, facts, oxygen=1)
    told = _(
        "Oxygen {oxygen} mg/L is low (the water could hold {saturation}): move the surface, add air"
        " now."
    )
    return _told(told, facts, oxygen=1, saturation=1)


def _much_co2(facts: Facts) -> str:
    if "injected" in facts:
        told = _(
            "CO2 is about {co2_mg_l} mg/L, over 30: turn injection down, off at night, and watch"
            " for gasping."
        )
    elif "ammonia" in facts:
        told = _("CO2 is about {co2_mg_l} mg/L, over 30: where it is injected, turn it down.")
    else:
        told = _(
            "CO2 is about {co2_mg_l} mg/L, over 30: move the surface, watch for gasping; where it"
            " is injected, turn it down."
        )
    said = _told(told, facts, co2_mg_l=SMALL)
    return f"{said} {_(_NO_AIR)}" if "ammonia" in facts else said


def _contradiction_low(facts: Facts) -> str:
    if "plants" in facts:
        told = _(
            "pH {ph} with KH {kh} leaves almost no CO2, and nothing grows that uses it up. Retest"
            " both."
        )
    else:
        told = _("pH {ph} with KH {kh} at night leaves almost no CO2. Retest both.")
    return _told(told, facts, ph=1, kh=1)


def _perhaps_much_co2(facts: Facts) -> str:
    if "ammonia" in facts:
        told = _("pH {ph} with KH {kh} may mean {low} to {high} mg/L CO2: retest pH.")
        return f"{_told(told, facts, ph=1, kh=1, low=SMALL, high=SMALL)} {_(_NO_AIR)}"
    told = _(
        "pH {ph} with KH {kh} may mean {low} to {high} mg/L CO2: retest pH; if they gasp, aerate."
    )
    return _told(told, facts, ph=1, kh=1, low=SMALL, high=SMALL)


_NO_AIR = N_("There is ammonia: extra air raises pH and makes it poisonous, so only if they gasp.")


def _sudden_jump(facts: Facts) -> str:
    return _(
        "{name} went from {was} to {amount} with nothing logged in between: retest before doing"
        " anything."
    ).format(name=analyte(facts), was=amount(facts, "was"), amount=with_unit(facts, "value"))


def _neglected(facts: Facts) -> str:
    used_up = _("Nitrate {nitrate}, KH {kh} and an acid pH: the water is used up. No large change!")
    said = [_told(used_up, facts, nitrate=0, kh=1)]
    ammonia = facts.get("ammonia")
    if ammonia == "present":
        first = _("There is ammonia, which a rising pH makes poisonous. Ask: what if i change 5%")
        return " ".join([*said, first])
    if ammonia == "unknown":
        said.append(_("Test ammonia first."))
    if "share" in facts:
        told = _("Then {share} % a day, with KH and pH tested each day.")
        said.append(told.format(share=f"{number(facts, 'share') * 100:.0f}"))
    elif "source_kh" in facts:
        said.append(_("Even small changes are too fast: cut new water with RO to the tank's KH."))
    else:
        said.append(_("Measure your source water (/source), then change a little each day."))
    return " ".join(said)


def _heading(facts: Facts) -> str:
    days = max(round(number(facts, "days")), 1)
    if number(facts, "per_day") > 0:
        template = ngettext(
            "{name} is rising and reaches {limit} in about a day",
            "{name} is rising and reaches {limit} in about {days} days",
            days,
        )
    else:
        template = ngettext(
            "{name} is falling and reaches {limit} in about a day",
            "{name} is falling and reaches {limit} in about {days} days",
            days,
        )
    return _moving(template, days, facts)


def _drifting(facts: Facts) -> str:
    days = max(round(number(facts, "days")), 1)
    if number(facts, "per_day") > 0:
        template = ngettext(
            "{name} is slowly rising and reaches {limit} in about a day",
            "{name} is slowly rising and reaches {limit} in about {days} days",
            days,
        )
    else:
        template = ngettext(
            "{name} is slowly falling and reaches {limit} in about a day",
            "{name} is slowly falling and reaches {limit} in about {days} days",
            days,
        )
    return _moving(template, days, facts)


def _moving(template: str, days: int, facts: Facts) -> str:
    """Where an analyte is going, and what to do about it."""
    rising = number(facts, "per_day") > 0
    if facts["analyte"] == "nitrate" and rising:
        act = _("change water before then.")
    elif facts["analyte"] == "kh" and not rising:
        act = _("change water or dose in good time. Ask: dose kh +1")
    else:
        act = _("test again in a few days, change nothing fast.")
    move = template.format(name=analyte(facts), limit=with_unit(facts, "limit"), days=days)
    return _("{move}: {act}").format(move=move, act=act)


def _copper(facts: Facts) -> str:
    if "species" not in facts:
        told = _(
            "Copper {copper} mg/L kills corals and other invertebrates: change water now, with"
            " water free of copper."
        )
        return _told(told, facts, copper=SMALL)
    return _(
        "Copper {copper} mg/L kills invertebrates ({species}): change water now, with water free of"
        " copper."
    ).format(copper=small(number(facts, "copper")), species=facts["species"])


def _expired_kit(facts: Facts) -> str:
    return _(
        "The {name} kit was good until {day}: trust it less, check it against a known water."
    ).format(name=label(facts), day=day(date.fromisoformat(str(facts["expired"]))))


def _not_retested(facts: Facts) -> str:
    days = round(number(facts, "days"))
    return ngettext(
        "{name} was {amount} {days} day ago and was not tested since: test it again now.",
        "{name} was {amount} {days} days ago and was not tested since: test it again now.",
        days,
    ).format(name=analyte(facts), amount=with_unit(facts, "value"), days=days)


def _cycling_ammonia(facts: Facts) -> str:
    if "nitrite" in facts:
        return _(
            "If the tank is new, ammonia is its first stage. Test nitrite too, feed little, test"
            " both daily."
        )
    if facts["animals"] == "yes":
        return _(
            "If the tank is new, its first stage: ammonia is there, nitrite not yet; feed little,"
            " test daily, change water when ammonia or nitrite is warned of."
        )
    return _(
        "If the tank is new, its first stage: ammonia is there, nitrite not yet; add no animals"
        " yet, keep testing."
    )


def _cycling_nitrite(facts: Facts) -> str:
    if facts["animals"] == "yes":
        return _(
            "If the tank is new, its second stage: nitrite is there; feed little, test daily,"
            " change water when ammonia or nitrite is warned of."
        )
    return _(
        "If the tank is new, its second stage: nitrite is there; add no animals yet, keep testing."
    )


def _steady(facts: Facts) -> str:
    weeks = round(number(facts, "weeks"))
    return ngettext(
        "Steady for {weeks} week and it suits your animals: change nothing.",
        "Steady for {weeks} weeks and it suits your animals: change nothing.",
        weeks,
    ).format(weeks=weeks)


_LINES: Mapping[str, Callable[[Facts], str]] = {
    "ammonia": _ammonia,
    "low_kh": _low_kh,
    "overdose": finding_deeds.overdose,
    "medicine_dosed": finding_deeds.medicine,
    "copper_before": finding_deeds.copper_before,
    "acid_dosed": finding_deeds.acid,
    "caustic_dosed": finding_deeds.caustic,
    "unknown_dosed": finding_deeds.unknown,
    "tap_in_sea": finding_deeds.tap_in_sea,
    "pure_in": finding_deeds.pure_in,
    "sea_ion_low": finding_sea.low,
    "sea_ion_high": finding_sea.high,
    "large_change": finding_deeds.large_change,
    "contradiction": _contradiction,
    "contradiction_low": _contradiction_low,
    "low_oxygen": _low_oxygen,
    "copper": _copper,
    "neglected": _neglected,
    "nitrite": finding_nitrite.harms,
    "nitrite_with_chloride": finding_nitrite.eased,
    "nitrite_in_salt_water": finding_nitrite.in_salt_water,
    "does_not_suit": does_not_suit,
    "do_not_go_together": do_not_go_together,
    "cramped": cramped,
    "crowded": crowded,
    "rivals": rivals,
    "wrong_water": wrong_water,
    "few_of_a_shoal": few_of_a_shoal,
    "unknown_animal": unknown_animal,
    "much_co2": _much_co2,
    "perhaps_much_co2": _perhaps_much_co2,
    "sudden_jump": _sudden_jump,
    "expired_kit": _expired_kit,
    "not_retested": _not_retested,
    "cycling_ammonia": _cycling_ammonia,
    "cycling_nitrite": _cycling_nitrite,
    "heading": _heading,
    "drifting": _drifting,
    "steady": _steady,
}


def line(finding: Finding) -> str:
    """One finding in one line, with what to do first."""
    if finding.id in PLAIN:
        template, decimals = PLAIN[finding.id]
        return _told(_(template), finding.facts, **decimals)
    return _LINES[finding.id](finding.facts)
