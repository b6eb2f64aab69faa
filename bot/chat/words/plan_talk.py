"""What is said of a plan once it was given: how it goes in, when to go on, how it is weighed."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import bought, names
from bot.chat.words.doses import of
from bot.chat.words.numbers import grams, litres, plain
from bot.chat.words.text import _, ngettext
from core.advice.dissolving import Stock


def kept_apart(count: int, hours: float, whole: str = "") -> list[str]:
    """The parts of a plan are not to be given together; `whole` is what they are in all."""
    told = (
        _(
            "No: give the {count} parts {hours} h apart, and retest before each next one: {whole}"
            " in all."
        )
        if whole
        else _("No: give the {count} parts {hours} h apart, and retest before each next one.")
    )
    return [
        told.format(count=count, hours=plain(hours, 0), whole=whole),
        _("All at once the water would move faster than animals may bear."),
    ]


def not_together() -> list[str]:
    """Buffer and calcium never go in at one time; common practice, no source."""
    return [
        _("No: never calcium and alkalinity at one time: side by side they fall out as lime."),
        _("Give one, and the other some hours later, each from its own jug, into strong flow."),
        _("Of each no more than its one part a day, and the test before the next part."),
    ]


def which_first(*, magnesium: bool) -> list[str]:
    """In which order buffer and calcium go in; common practice, no source."""
    first = (
        _("Magnesium first: it keeps the other two dissolved. Then alkalinity.")
        if magnesium
        else _("Alkalinity first: it is used up fastest.")
    )
    return [
        first,
        _("Calcium some hours later, never at one time: side by side they fall out as lime."),
        _("Of each no more than its one part a day, and the test before the next part."),
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


def salts(parts: Sequence[tuple[str, float]]) -> str:
    """Each salt with its grams. [g]"""
    return ", ".join(of(mass, names.substance(name)) for name, mass in parts)


def of_product(amount: float, product: str) -> str:
    """So much of a bought product. [mL]"""
    return _("{ml} ml of {product}").format(ml=plain(amount, 1), product=product)


def no_more_than(mass: str, hours: float) -> list[str]:
    """More than a part is not to be given at once; so worded that it answers either question."""
    told = _("Not more than {part} at once, and nothing more for {hours} h: more moves it too far.")
    return [
        told.format(part=mass, hours=plain(hours, 0)),
        _("All at once the water would move faster than animals may bear."),
    ]


def within_limits(part: str, hours: float, only_below: str | None) -> list[str]:
    """A plan keeps within the limits by what was measured. Never called safe."""
    told = _("{part} every {hours} h is within the limits, by what you measured.")
    first = told.format(part=part, hours=plain(hours, 0))
    return [
        first if only_below is None else f"{only_below} {first}",
        _("No dose is without risk: test before each part; if they gasp or dash about, stop."),
    ]


def a_part(part: str, hours: float, left: int) -> list[str]:
    """What goes in each time."""
    told = ngettext(
        "{part}, once.",
        "{part} each time, {hours} h apart, {count} times, a test before each.",
        left,
    )
    return [told.format(part=part, hours=plain(hours, 0), count=left)]


def so_in_all(salts: Sequence[tuple[str, float, float]], count: int, hours: float) -> str:
    """Each salt with its grams in all and a part. [g]"""
    whole = names.both([of(mass, names.substance(name)) for name, _part, mass in salts])
    part = names.both([of(mass, names.substance(name)) for name, mass, _whole in salts])
    told = ngettext(
        "{whole}, once.",
        "{whole} in all, but in {count} parts {hours} h apart: {part} each time.",
        count,
    )
    return told.format(whole=whole, count=count, hours=plain(hours, 0), part=part)


def that_is_so(told: str) -> str:
    """So many grams are what was meant."""
    return _("Yes: {told}").format(told=told)


def that_is_not_so(told: str) -> str:
    """So many grams are not what was meant."""
    return _("No: {told}").format(told=told)


def so_long(count: int, hours: float, last: str) -> list[str]:
    """How long a plan takes; `last` is when its last part goes in at the earliest."""
    told = ngettext(
        "One part. Test {hours} h after it.",
        "{count} parts {hours} h apart: the last {last} at the earliest, if each test allows it.",
        count,
    )
    return [told.format(count=count, hours=plain(hours, 0), last=last)]


def still_left(count: int, left: int) -> str:
    """How far a plan is."""
    told = ngettext("{left} of {count} parts is left.", "{left} of {count} parts are left.", left)
    return told.format(left=left, count=count)


def none_logged(count: int, part: str, only_below: str | None) -> list[str]:
    """No part is on record yet: the first may go in, under its condition where it has one."""
    told = ngettext(
        "The part is not on record yet: {part}. When it is in, send: done",
        "None of the {count} parts is on record yet. The first: {part}. When it is in, send: done",
        count,
    )
    first = told.format(count=count, part=part)
    return [first if only_below is None else f"{only_below} {first}"]


def older_than_readings(ask: str) -> list[str]:
    """More was measured since a plan of which nothing is on record; `ask` gives it anew."""
    return [_("You measured again since that plan. Ask for it anew: {ask}").format(ask=ask)]


def tell_when_done() -> list[str]:
    """Something is meant to be done."""
    return [_("Fine. Tell me when it is done, and send what you measure. Nothing is stored yet.")]


def test_first(tested: str, ask: str) -> str:
    """Before the next part the water is tested; `ask` is the question that then gives it."""
    told = _("Test {tested} first and send them, then ask: {ask}")
    return told.format(tested=tested, ask=ask)


def worked_out() -> str:
    """What the amounts of a plan rest on."""
    return _("Reckoned by formula weight: taken as pure, in the net volume.")


def label_says() -> list[str]:
    """That a packet names another amount than the plan."""
    return [
        _("A packet may be of a mix, for another step, or by a scoop: it is not this reckoning."),
        _("Send what is in it, and how much of it the label gives for how many litres."),
        _("Until then give no more than the plan says."),
    ]


def needed(salts: Sequence[tuple[str, float]]) -> list[str]:
    """What a plan takes: each salt with all its grams and where it is had, and the tools."""
    lines = [
        _("{whole} in all. {where}").format(
            whole=of(mass, names.substance(name)), where=bought.where(name)
        )
        for name, mass in salts
    ]
    return [*lines, _("And a scale that shows 0.1 g, a clean jug, and the tests.")]


def hint_of_plan() -> list[str]:
    """For a message behind a plan that says nothing we know."""
    return [
        _("I did not understand that. Of this plan you can ask or tell, for example:"),
        _("is that safe · how many days · how do i dissolve it · where do i get it · in 4 parts"),
        _("with potassium bicarbonate · done · i gave double · what is left · why · never mind"),
    ]


def ask_for_a_dose() -> list[str]:
    """There is no plan yet whose grams a scale could weigh otherwise."""
    return [
        _("Not by spoon: a level teaspoon of baking soda is anything from 3.2 to 6 g."),
        _("Ask for a dose first, for example: dose kh 4. Then I tell how a kitchen scale does it."),
    ]


def what_went_in() -> list[str]:
    """So much of a thing that has no name went in."""
    return [
        _("What was it that went in? Send it with its name, for example: dosed 5 g baking soda"),
        _("Until then put in nothing more."),
    ]


def how_much_of_what() -> list[str]:
    """Of something that nobody told went in twice, or the rest."""
    return [
        _("How much of what went in? Send for example: dosed 5 g baking soda"),
        _("If animals gasp or dash about: help. Nothing is stored yet."),
    ]


def double_of_what() -> list[str]:
    """Twice as much of something that nobody named is asked for."""
    return [
        _("Twice as much of what? Nothing more goes in until that is clear."),
        _("Of a salt ask, for example: what does 10 g baking soda do in 120 l"),
        _("A dechlorinator: as its label has it for chloramine. A medicine: never more."),
        _("If it went in already, tell me how much, for example: dosed 5 g baking soda"),
    ]


def grams_of_which(mass: float, salts: Sequence[str]) -> list[str]:
    """So many grams of one of several salts; nobody told of which. [g]"""
    shown = [names.substance(name) for name in salts]
    told = _("{grams} of which: {salts}? Send for example: dosed {grams} {salt}")
    return [
        told.format(grams=grams(mass), salts=", ".join(shown), salt=shown[0]),
        _("Nothing is stored yet."),
    ]
