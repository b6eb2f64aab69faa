"""Words for solutions, their millilitres, and what is asked beside a daily dose."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.levels import unit
from bot.chat.words.numbers import grams, plain
from bot.chat.words.text import _


def solution(substance: str, a_litre: float) -> str:
    """A solution that was told. [g/L]"""
    told = _("{name}, {amount} in 1 L: 1 ml holds {part}. Nothing is stored.")
    return told.format(
        name=names.said(substance), amount=grams(a_litre), part=grams(a_litre / 1000.0)
    )


def too_thick(most: float) -> str:
    """More salt than a litre takes up. [g/L]"""
    told = _(
        "Only about {most} g dissolve in a litre at 20 °C: what lies at the bottom is not in the"
        " ml. Make it weaker."
    )
    return told.format(most=plain(most, 0))


def raises(millilitres: float, analyte: str, rise: float, tank: str) -> str:
    """What so much of a solution does. [mL]"""
    told = _("{ml} ml of it raise {name} in {tank} by about {rise}{unit}.")
    return told.format(
        ml=plain(millilitres, 1),
        name=names.label(analyte),
        tank=tank,
        rise=plain(rise, 2),
        unit=unit(analyte),
    )


def past_the_step(step: float, analyte: str) -> str:
    """So much is more than a day's step."""
    told = _("Not at once: more than may rise in a day ({step}{unit}).")
    return told.format(step=plain(step, 1), unit=unit(analyte))


def nothing_stored() -> str:
    """An amount was asked about, and is not logged."""
    return _("An estimate, by weight and volume; test after it. Nothing is stored.")


def ask_with_it() -> str:
    """What may be asked of a solution."""
    return _("Ask for example: how many ml a day to hold it, or: how much does 40 ml raise")


def in_millilitres(part: float, a_litre: float, millilitres: float) -> str:
    """A part of a plan in millilitres of a solution. [g, g/L, mL]"""
    told = _("{part} are {ml} ml of a solution with {amount} in 1 L.")
    return told.format(part=grams(part), ml=plain(millilitres, 0), amount=grams(a_litre))


def tell_the_solution() -> str:
    """Millilitres are asked for, of nobody knows what."""
    return _("In ml once I know the solution, for example: 80 g baking soda in 1 l water")


def other_salt() -> str:
    """The solution that was told holds another salt."""
    return _("The solution that you told holds another salt: these grams are not of it.")


def dosed_of_what(said: str, *, known: bool) -> list[str]:
    """A dose in millilitres of nobody knows what, or on nobody knows how many days."""
    if known:
        return [
            _("Not stored: “{said}”: on which days? Send each with its day.").format(said=said),
            _("Until then no use can be told from these readings."),
        ]
    return [
        _("Not stored: “{said}”: of what? Tell me the solution first.").format(said=said),
        _("For example: 80 g baking soda in 1 l water. Until then no use can be told."),
    ]


def dosed_in_grams(said: str, substance: str, amount: float, *, both: bool) -> list[str]:
    """The same dose in grams of the solution that was told, to be sent. [g]"""
    name = names.said(substance)
    lines = [
        _("Not stored yet: “{said}”, by the solution that you told {amount} each time.").format(
            said=said, amount=grams(amount)
        ),
        _("To put it on record, send: dosed {amount} {name}").format(
            amount=grams(amount), name=name
        ),
    ]
    if both:
        lines.append(
            _("And for the day before: dosed {amount} {name} yesterday").format(
                amount=grams(amount), name=name
            )
        )
    return [*lines, _("Without it the use that I tell is too small.")]


def nothing_dosed(tank: str) -> list[str]:
    """Nothing goes in yet: then two readings tell the use."""
    told = _("Good: with nothing going in, two readings some days apart tell what {tank} uses.")
    return [
        told.format(tank=tank),
        _("Send KH today and in two days, then ask: how much does it use a day"),
    ]


def never_together() -> list[str]:
    """Calcium and buffer; caution of `cautions.md`, computed with PHREEQC there."""
    return [
        _("No: calcium and buffer never in one place or at one time, lime falls out and is lost."),
        _("Each dissolved apart, the second some hours later and where the flow is strong."),
        _("Two salts of the same kind may follow each other, each well stirred in."),
    ]


def ammonia_is_needed() -> list[str]:
    """Why ammonia is asked for before KH or pH are raised; six times by pKa 9.25 (25 °C)."""
    return [
        _("Yes, once before it: more KH lifts pH, and a higher pH makes poison of ammonia."),
        _("Of the same ammonia about six times as much is poison at pH 8.2 as at 7.4."),
        _("If it reads 0, send: ammonia 0 and ask again. The test holds for three days."),
    ]
