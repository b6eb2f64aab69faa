"""What is said of a plan once it was given: how it goes in, when to go on, how it is weighed."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import changes, names
from bot.chat.words.doses import of
from bot.chat.words.numbers import at_most, grams, litres, plain
from bot.chat.words.text import _, ngettext
from core.advice.dissolving import Stock


def kept_apart(count: int, hours: float) -> list[str]:
    """The parts of a plan are not to be given together."""
    told = _("No: give the {count} parts {hours} h apart, and retest before each next one.")
    return [
        told.format(count=count, hours=plain(hours, 0)),
        _("All at once the water would move faster than animals may bear."),
    ]


def how(
    jugs: Sequence[tuple[str, float, float]], hazards: Sequence[str], *, dry: bool
) -> list[str]:
    """How one part goes in: each salt with its grams and the litres that it is stirred into.

    `dry` where it was asked whether it may go straight in.
    """
    lines = [_("No: not dry, and not into the filter.")] if dry else []
    lines += [
        _("Stir {part} into {volume} of tank water in a clean jug until it is clear.").format(
            part=of(mass, names.substance(name)), volume=litres(volume)
        )
        for name, mass, volume in jugs
    ]
    lines.append(
        _("Pour it in slowly, over a quarter of an hour, where the filter's current spreads it.")
        if len(jugs) == 1
        else _("Pour them in slowly, one after the other, where the filter's current spreads each.")
    )
    lines.append(
        _(
            "Never dry, into the filter, or onto animals and roots. Watch for an hour: if they gasp"
            " or dash about, stop."
        )
    )
    return [*lines, *(_(each) for each in hazards)]


def not_by_spoon(substance: str, weighs: tuple[float, float, float] | None) -> str:
    """Why no spoon measures it. [g]"""
    name = names.substance(substance)
    if weighs is None:
        return _("Not by spoon: nobody knows what a spoon of {name} weighs.").format(name=name)
    told = _("Not by spoon: a level teaspoon of {name} is anything from {least} to {most} g.")
    return told.format(name=name, least=plain(weighs[1], 1), most=plain(weighs[2], 1))


def weighed(substance: str, mass: float, stock: Stock | None) -> str:
    """How a kitchen scale tells one part. [g]"""
    name = names.substance(substance)
    if stock is None:
        return _("Weigh {part} on a scale that tells {step} apart.").format(
            part=of(mass, name), step=grams(max(mass / 20.0, 0.01))
        )
    return _(
        "A kitchen scale will do: {whole} in 1 L of water, stirred until clear; {ml} ml of it hold"
        " {part}."
    ).format(whole=of(stock.grams, name), ml=plain(stock.millilitres, 0), part=grams(mass))


def keep_stock() -> str:
    """A jug of something that looks like water."""
    return _("Label it, and keep it closed and away from children.")


def rather_change(analyte: str, target: float) -> str:
    """The way without weighing. [canonical unit]"""
    told = _("Without a scale give none: changing water may do it too. Ask: {question}")
    question = _("raise {name} to {target} with tap").format(name=analyte, target=plain(target, 2))
    return told.format(question=question)


def when_next(tested: str, hours: float, at: str, *, begun: bool, goes_on: bool) -> list[str]:
    """When to test what the plan tells to, and what may follow. `at` is a day after the part."""
    told = (
        _("Test {tested} from {at} on: {hours} h after what went in.")
        if begun
        else _("Test {tested} {hours} h after a part: if it goes in now, {at}.")
    )
    lines = [told.format(tested=tested, hours=plain(hours, 0), at=at)]
    lines.append(
        _("The next part only after that: send the readings, and ask again.")
        if goes_on
        else _("Give no more before that.")
    )
    return lines


def part_later(tested: str, *, emergency: bool) -> list[str]:
    """A part is late, or may be."""
    lines = [
        _("Rather now: this is an emergency. But never two parts in one day.")
        if emergency
        else _("A part may wait a day or two. Never give two in one day to make up for it.")
    ]
    told = _("Test {tested} right before it; where they moved, ask for the dose again.")
    return [*lines, told.format(tested=tested)]


def change_later(*, emergency: bool) -> list[str]:
    """A change is late, or may be."""
    return [
        _("Rather now: it is an emergency.")
        if emergency
        else _("A change may wait a day. Never two in one day to make up for it."),
        _("Test pH, KH and ammonia right before it; where they moved, ask again."),
    ]


def next_change(*, emergency: bool) -> list[str]:
    """When the next of several changes may follow."""
    if emergency:
        return [_("Test again in an hour, and after some hours. Send the readings, and ask again.")]
    return [_("A day after this one. Test pH, KH and ammonia before it, send them, and ask again.")]


def how_to_change(share: float, volume_l: float | None, temperature: float | None) -> list[str]:
    """One change, step by step. [share], [L], [°C]"""
    warm = (
        _("Make the new water ready: no chlorine in it, as warm as the tank.")
        if temperature is None
        else _("Make the new water ready: no chlorine in it, {degrees} °C as the tank.").format(
            degrees=plain(temperature, 1)
        )
    )
    return [
        warm,
        _("Heater and filter off. Take out {amount}.").format(
            amount=changes.amount(at_most(share), volume_l)
        ),
        _("Pour the new water in slowly, over a quarter of an hour, not onto animals or roots."),
        _("Heater and filter on again. Watch for an hour: if they gasp, air at once."),
    ]


def all_logged(count: int) -> list[str]:
    """All parts are on record already."""
    told = ngettext(
        "The part is on record already. Give no more; test first.",
        "All {count} parts are on record already. Give no more; test first.",
        count,
    )
    return [told.format(count=count)]


def nothing_stored() -> list[str]:
    """A plan or an answer is left as it is."""
    return [_("All right. Nothing was stored: an answer changes nothing until you log it.")]


def still_on_record() -> list[str]:
    """What was told stays, unless it is taken back."""
    return [_("What you told is still on record. To take it back, send: undo")]
