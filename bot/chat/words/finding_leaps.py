"""pH that fell or rose by more than a day's swing, in one line each."""

from __future__ import annotations

from bot.chat.words.finding_parts import Facts, filled
from bot.chat.words.text import _


def fell(facts: Facts) -> str:
    """What a fall within a day is, by what is known of KH and carbon dioxide."""
    if "told" in facts and "injected" in facts:
        told = _(
            "pH fell from {was} to {ph} within {hours} h: too far for CO2. Turn injection down, off"
            " if they gasp."
        )
    elif "told" in facts:
        told = _("pH fell from {was} to {ph} within {hours} h: that is no swing of a day.")
    elif "injected" in facts:
        told = _(
            "pH fell from {was} to {ph} within {hours} h: over ten times the CO2, if KH is still"
            " there. Turn it down, test KH; if they gasp, off and air."
        )
    elif "thin" in facts:
        told = _(
            "pH fell from {was} to {ph} within {hours} h: KH {kh} is too little to hold it, it"
            " crashes. Measure KH and ammonia now; raise nothing fast."
        )
        return filled(told, facts, was=1, ph=1, hours=0, kh=1)
    elif "kh" in facts:
        told = _(
            "pH fell from {was} to {ph} within {hours} h though KH {kh} holds it: much CO2, an acid"
            " or a wrong reading. Retest both; if they gasp, air."
        )
        return filled(told, facts, was=1, ph=1, hours=0, kh=1)
    elif "touched" in facts:
        told = _(
            "pH fell from {was} to {ph} within {hours} h, by what went in or a crash: too fast."
            " Measure KH and ammonia now; raise nothing fast."
        )
    else:
        told = _(
            "pH fell from {was} to {ph} within {hours} h: no swing, a crash if KH is used up."
            " Measure KH and ammonia now; if they gasp, air; raise nothing fast."
        )
    return filled(told, facts, was=1, ph=1, hours=0)


def rose(facts: Facts) -> str:
    """What a rise within a day is, and that it makes ammonia poisonous."""
    if "ammonia" in facts:
        told = _(
            "pH rose from {was} to {ph} within {hours} h: that turns ammonia to poison. Put nothing"
            " more in, no acid."
        )
    elif "touched" in facts:
        told = _(
            "pH rose from {was} to {ph} within {hours} h, by what went in: too fast. Test"
            " ammonia, more poisonous at a high pH; nothing more in, no acid."
        )
    elif "injected" in facts:
        told = _(
            "pH rose from {was} to {ph} within {hours} h: has the CO2 run out? Test ammonia, more"
            " poisonous at a high pH; bring CO2 back slowly."
        )
    else:
        told = _(
            "pH rose from {was} to {ph} within {hours} h: no swing. Test ammonia, more poisonous at"
            " a high pH; look for lime, a buffer or much algae; no acid."
        )
    return filled(told, facts, was=1, ph=1, hours=0)
