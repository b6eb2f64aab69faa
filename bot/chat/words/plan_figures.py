"""Where a plan that was given leads, how sure that is, and what is free to choose in it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

from bot.chat.words import names
from bot.chat.words.levels import unit
from bot.chat.words.numbers import grams, litres, plain, span
from bot.chat.words.text import _, ngettext
from core.advice import limits

_IONS: Final = (("sodium", "sodium_mg_l"), ("potassium", "potassium_mg_l"))
"""What comes with a buffer, and the fact that holds how much. [mg/L]"""


def ends(facts: Mapping[str, Any]) -> list[str]:
    """The water that a plan leads to, by the facts of its answer."""
    lines = [
        _("{name} {start} → {end}{unit}.").format(
            name=names.analyte(goal["analyte"]),
            start=plain(goal["from"], 2),
            end=plain(goal["to"], 2),
            unit=unit(goal["analyte"]),
        )
        for goal in _goals(facts)
    ]
    stood, at_once = facts.get("ph_stood"), facts.get("ph_at_once")
    if stood is not None and at_once is not None:
        told = _("pH about {at_once} at once, {stood} after standing, {leaves} if CO2 leaves.")
        lines.append(told.format(at_once=plain(at_once, 1), **_stood(stood)))
    elif stood is not None:
        told = _("pH after standing about {stood} to {leaves}.")
        lines.append(told.format(**_stood(stood)))
    for ion, fact in _IONS:
        if (brought := facts.get(fact)) is not None:
            told = _("With it comes {ion}: {amount} mg/L.")
            lines.append(told.format(ion=names.analyte(ion), amount=plain(brought, 0)))
    return [*lines, _("Only the test tells what it became.")]


def much(facts: Mapping[str, Any]) -> list[str]:
    """Why it is so much, or so little: by the litres, and by how far the water is to move."""
    if facts.get("volume_l") is None:
        return []
    moved = names.listed(
        [
            _("{name} {start} → {end}{unit}").format(
                name=names.analyte(goal["analyte"]),
                start=plain(goal["from"], 2),
                end=plain(goal["to"], 2),
                unit=unit(goal["analyte"]),
            )
            for goal in _goals(facts)
            if goal.get("from") is not None
        ]
    )
    told = _("That is what {volume} takes for {moved}: half the litres take half of it.")
    return [told.format(volume=litres(facts["volume_l"]), moved=moved)] if moved else []


def reckoned(
    start: float,
    end: float,
    volume: float,
    salt: str,
    per_degree: float,
    parts: Sequence[float],
    *,
    faster: bool = False,
) -> list[str]:
    """The sum of a plan that raises KH by one salt: [°dH], [L], [g per °dH and litre], [g].

    `faster` where it is an emergency, which bears more a day.
    """
    rise, whole, count = end - start, sum(parts), len(parts)
    told = _(
        "The sum: KH {start} → {end} is {rise} °dH; 1 °dH takes {grams} of {salt} a litre:"
        " {rise} × {volume} × {grams} = {whole}."
    ).format(
        start=plain(start, 2),
        end=plain(end, 2),
        rise=plain(rise, 2),
        grams=grams(per_degree),
        salt=names.substance(salt),
        volume=litres(volume),
        whole=grams(whole),
    )
    if count < 2 or faster:
        return [told]
    in_parts = _("In {count} parts of {part}: KH may rise by {most} °dH a day at most.")
    most = plain(limits.KH_STEP, 1)
    return [told, in_parts.format(count=count, part=grams(parts[0]), most=most)]


def sure(facts: Mapping[str, Any]) -> list[str]:
    """Within which ends nine in ten fall, by the doubt of the kits."""
    interval = facts.get("interval")
    if not interval:
        return [
            _("As sure as the readings and the litres are: a kit's step, the net volume."),
            _("So retest before each next part."),
        ]
    told = []
    for key, name in (
        ("kh", names.analyte("kh")),
        ("gh", names.analyte("gh")),
        ("ph_stood", _("pH after standing")),
    ):
        if key in interval:
            low, high = interval[key]
            told.append(_("{name} {ends}").format(name=name, ends=span(low, high, 1)))
    return [
        _("By your kits' steps and the litres, nine times in ten it ends at: {told}.").format(
            told=", ".join(told)
        ),
        _("So retest before each next part."),
    ]


def stop() -> list[str]:
    """A plan may end after any part."""
    return [
        _("After any part it may rest: the water then stays where its last part brought it."),
        _("Test it, and go on later with a new plan: send the readings, and ask again."),
    ]


def store() -> list[str]:
    """How what is left is kept; common practice, no source."""
    return [
        _("Dry, closed and labelled it keeps; away from children and animals."),
        _("Stir up each part fresh. A solution of it: closed, labelled, and shaken before use."),
    ]


def hour() -> list[str]:
    """At which time of the day a part goes in; common practice, no source."""
    return [
        _("At any hour, and each part at the same one: 24 h apart."),
        _("Best when you can watch for an hour afterwards."),
    ]


def of_all_water(part: str, whole: str, volume: float | None, count: int, hours: float) -> str:
    """That an amount is of all the water, and what all parts are together. [L, h]"""
    water = _("the whole tank") if volume is None else _("the whole tank of {volume}")
    of = water if volume is None else water.format(volume=litres(volume))
    told = ngettext(
        "{part} for {of}, once: not per litre or gallon.",
        "{part} each time for {of}, not per litre or gallon: {count} parts {hours} h apart, {whole}"
        " in all.",
        count,
    )
    return told.format(part=part, whole=whole, of=of, count=count, hours=plain(hours, 0))


def takes(whole: str) -> str:
    """What the rest of a plan takes."""
    return _("The plan takes {whole} in all.").format(whole=whole)


def against(whole: str, at_hand: float, needed: float, near: float) -> str:
    """What is at hand against what a plan takes; `near` is how little no scale tells apart. [g]"""
    if needed / near <= at_hand <= needed * near:
        told = _("Yes, just: the plan takes {whole} in all.")
    elif at_hand > needed:
        told = _("Yes: the plan takes {whole} in all; of {at_hand} {rest} are left over.")
    else:
        told = _("No: the plan takes {whole} in all; {at_hand} are {rest} too little.")
    rest = grams(abs(at_hand - needed))
    return told.format(whole=whole, at_hand=grams(at_hand), rest=rest)


def _stood(stood: tuple[float, float]) -> dict[str, str]:
    return {"stood": plain(stood[0], 1), "leaves": plain(stood[1], 1)}


def _goals(facts: Mapping[str, Any]) -> list[dict[str, Any]]:
    goals: list[dict[str, Any]] = facts.get("goals") or []
    if not goals and {"from", "to"} <= facts.keys():
        goals = [{"analyte": "kh", "from": facts["from"], "to": facts["to"]}]
    return [goal for goal in goals if {"from", "to"} <= goal.keys()]
