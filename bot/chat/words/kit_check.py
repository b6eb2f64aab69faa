"""Words for reference water, by which a test kit is checked."""

from __future__ import annotations

from bot.chat.words.names import label, substance
from bot.chat.words.numbers import litres, plain
from bot.chat.words.text import _
from core.advice.reference_water import LEAST, MOST, Reference


def recipe(found: Reference, shown: float | None) -> list[str]:
    """How it is made, and what a kit should show of it."""
    name, value = label(found.analyte), plain(found.value, 1)
    lines = [
        _("A kit is checked on water of known {name}: here {name} {value} °dH.").format(
            name=name, value=value
        ),
        _("1. Stir {grams} g of {salt} into pure water (RO or distilled), 1 L in all.").format(
            grams=plain(found.grams, 0), salt=substance(found.substance)
        ),
        _("2. {millilitres} ml of that, by syringe, filled up with pure water to {volume}.").format(
            millilitres=plain(found.millilitres, 1), volume=litres(found.litres)
        ),
        _("3. Test it twice: {value}, give or take one degree, is right.").format(value=value),
    ]
    if shown is not None:
        lines.append(
            _("The {shown} that it showed is stored nowhere: send it as a reading.").format(
                shown=plain(shown, 1)
            )
        )
    else:
        lines.append(_("Then send what it shows, for example: kit says 6 on it"))
    lines.append(_("Into no tank: it is for the kit. Label it, out of the reach of children."))
    return lines


def within(found: Reference, shown: float) -> list[str]:
    """As near as a kit can tell."""
    return [
        _("It shows {shown} of {value} °dH: within a step, as near as drops can tell.").format(
            shown=plain(shown, 1), value=plain(found.value, 1)
        ),
        _("Of the tank it may be off by as much; nothing is stored of this."),
    ]


def off(found: Reference, shown: float, by: float) -> list[str]:
    """More than a kit may be off."""
    told = _("too high") if by > 0 else _("too low")
    return [
        _("It shows {shown} of {value} °dH: {by} {way}.").format(
            shown=plain(shown, 1), value=plain(found.value, 1), by=plain(abs(by), 1), way=told
        ),
        _("Test again: bottle upright, clean tube, the full sample, date of the kit."),
        _("If it stays so, dose nothing by this kit; check {name} with another.").format(
            name=label(found.analyte)
        ),
        _("Nothing is stored of this."),
    ]


def which() -> list[str]:
    """It is not said of what the kit is."""
    return [
        _("Of KH or of GH? I know how to make water of a known value for both."),
        _("Send for example: is my kh kit right"),
    ]


def no_recipe(ph: bool) -> list[str]:
    """What no kitchen makes."""
    first = (
        _("pH is checked in a buffer solution of known pH (pH 7), bought for meters.")
        if ph
        else _("For this one, water of a known value is bought as a standard solution.")
    )
    return [
        first,
        _("Or test the same water with a second kit, or at a shop, and compare."),
        _("Of KH and GH I know how it is made. Send for example: is my kh kit right"),
    ]


def out_of_reach() -> str:
    """The wish was brought to what a kit tells apart."""
    return _("Kits tell {least} to {most} °dH best, so that is what I made it.").format(
        least=plain(LEAST, 0), most=plain(MOST, 0)
    )
