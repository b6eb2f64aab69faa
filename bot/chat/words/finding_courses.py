"""Findings of where a tank is going, in one line each: values that move, a new tank's stages."""

from __future__ import annotations

from bot.chat.words.finding_parts import Facts, amount, analyte, number, with_unit
from bot.chat.words.text import _, ngettext


def sudden_jump(facts: Facts) -> str:
    """A value that went too far for what was done; beside poison not everything may wait."""
    if "fast" in facts:
        told = _(
            "{name} went from {was} to {amount}, faster than the 1 °C an hour that animals bear:"
            " stop there, do not turn it back, watch their breathing, send it again in an hour."
        )
    elif "dosed" in facts:
        told = _(
            "{name} went from {was} to {amount}, more than what was logged can explain: put nothing"
            " more in, retest it now, and look whether somebody else gave any."
        )
    elif "changed" in facts:
        told = _changed(facts)
    elif "urgent" in facts and facts["analyte"] == "kh":
        told = _(
            "{name} went from {was} to {amount} with nothing logged in between: retest it first."
            " The new water should have what it then reads; no dose by it."
        )
    elif "urgent" in facts:
        told = _(
            "{name} went from {was} to {amount} with nothing logged in between: retest it now, but"
            " what is urgent does not wait for it."
        )
    elif facts["analyte"] == "temperature":
        told = _(
            "{name} went from {was} to {amount} with nothing logged in between: retest. Around"
            " animals 1 °C an hour and 2 °C a day is the most."
        )
    else:
        told = _(
            "{name} went from {was} to {amount} with nothing logged in between: retest before"
            " doing anything."
        )
    return told.format(
        name=analyte(facts), was=amount(facts, "was"), amount=with_unit(facts, "value")
    )


def _changed(facts: Facts) -> str:
    """The same with water changes in between, which cannot have led so far."""
    if "urgent" in facts:
        return _(
            "{name} went from {was} to {amount}, more than what was changed can explain: retest it"
            " now, but what is urgent does not wait for it."
        )
    if facts["analyte"] == "temperature":
        return _(
            "{name} went from {was} to {amount}, more than what was changed can explain: retest."
            " Around animals 1 °C an hour and 2 °C a day is the most."
        )
    return _(
        "{name} went from {was} to {amount}, more than what was changed can explain: retest it, and"
        " test the new water, before doing anything."
    )


def heading(facts: Facts) -> str:
    """A value that reaches a limit within days."""
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


def drifting(facts: Facts) -> str:
    """A value that slowly goes to a limit."""
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


def not_retested(facts: Facts) -> str:
    """A bad value that was not tested since."""
    days = round(number(facts, "days"))
    return ngettext(
        "{name} was {amount} {days} day ago and was not tested since: test it again now.",
        "{name} was {amount} {days} days ago and was not tested since: test it again now.",
        days,
    ).format(name=analyte(facts), amount=with_unit(facts, "value"), days=days)


def cycling_ammonia(facts: Facts) -> str:
    """The first stage of a new tank."""
    if facts["animals"] == "none":
        return _(
            "First stage, without animals: ammonia feeds the filter, nitrite comes next. Nothing to"
            " change for it; test both every other day."
        )
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


def cycling_nitrite(facts: Facts) -> str:
    """The second stage of a new tank."""
    if facts["animals"] == "none":
        return _(
            "Second stage, without animals: nitrite is there, and must read 0 again before fish"
            " come. Test both every other day."
        )
    if facts["animals"] == "yes":
        return _(
            "If the tank is new, its second stage: nitrite is there; feed little, test daily,"
            " change water when ammonia or nitrite is warned of."
        )
    return _(
        "If the tank is new, its second stage: nitrite is there; add no animals yet, keep testing."
    )


def steady(facts: Facts) -> str:
    """Nothing moves and all are suited: the routine is right."""
    weeks = round(number(facts, "weeks"))
    return ngettext(
        "Steady for {weeks} week and it suits your animals: keep your routine as it is.",
        "Steady for {weeks} weeks and it suits your animals: keep your routine as it is.",
        weeks,
    ).format(weeks=weeks)
