"""Findings of carbon dioxide, by pH and KH, in one line each."""

from __future__ import annotations

from bot.chat.words.finding_parts import SMALL, Facts, filled
from bot.chat.words.text import N_, _


def contradiction(facts: Facts) -> str:
    """pH and KH that no carbon dioxide can bring together."""
    if "co2_mg_l" not in facts:
        told = _("pH {ph} with KH {kh} °dH does not add up. Retest both; if they gasp, air now.")
        return filled(told, facts, ph=1, kh=1)
    told = _(
        "pH {ph} with KH {kh} °dH does not add up: it would mean over {co2_mg_l} mg/L CO2. Retest"
        " both; if they gasp, air now and CO2 injection off."
    )
    return filled(told, facts, ph=1, kh=1, co2_mg_l=SMALL)


def much_co2(facts: Facts) -> str:
    """Too much carbon dioxide, and what to do about it."""
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
    said = filled(told, facts, co2_mg_l=SMALL)
    return f"{said} {_(_NO_AIR)}" if "ammonia" in facts else said


def by_older_kh(facts: Facts) -> str:
    """Much carbon dioxide by a KH of days before, or a KH that is used up: which, tells a test."""
    if "ammonia" in facts:
        told = _(
            "pH {ph} is low for KH {kh} °dH of before: CO2 about {co2_mg_l} mg/L (over 30) if KH is"
            " still so, else KH is used up. Retest KH and pH now."
        )
        return f"{filled(told, facts, ph=1, kh=1, co2_mg_l=SMALL)} {_(_NO_AIR)}"
    told = _(
        "pH {ph} is low for KH {kh} °dH of before: CO2 about {co2_mg_l} mg/L (over 30) if KH is"
        " still so, else KH is used up. Retest KH and pH now; if they gasp, aerate."
    )
    return filled(told, facts, ph=1, kh=1, co2_mg_l=SMALL)


def contradiction_low(facts: Facts) -> str:
    """pH and KH that leave no carbon dioxide where nothing uses it up."""
    if "plants" in facts:
        told = _(
            "pH {ph} with KH {kh} °dH leaves almost no CO2, and nothing grows that uses it up."
            " Retest both."
        )
    else:
        told = _("pH {ph} with KH {kh} °dH at night leaves almost no CO2. Retest both.")
    return filled(told, facts, ph=1, kh=1)


def perhaps_much_co2(facts: Facts) -> str:
    """Perhaps too much carbon dioxide, within the doubt of the kits."""
    if "ammonia" in facts:
        told = _("pH {ph} with KH {kh} °dH may mean {low} to {high} mg/L CO2: retest pH.")
        return f"{filled(told, facts, ph=1, kh=1, low=SMALL, high=SMALL)} {_(_NO_AIR)}"
    told = _(
        "pH {ph} with KH {kh} °dH may mean {low} to {high} mg/L CO2: retest pH; if they gasp,"
        " aerate."
    )
    return filled(told, facts, ph=1, kh=1, low=SMALL, high=SMALL)


_NO_AIR = N_("There is ammonia: extra air raises pH and makes it poisonous, so only if they gasp.")
