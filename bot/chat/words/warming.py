"""The warmth of new water in words."""

from __future__ import annotations

from bot.chat.words.numbers import at_most, litres, plain
from bot.chat.words.text import _
from core.advice.warming import SCALDS


def how() -> list[str]:
    """A number is missing."""
    return [_("Send for example: how much hot water for 30 l at 25 from 12 and 55")]


def impossible(wanted: float, cold: float, hot: float) -> list[str]:
    """No mix of the two is that warm."""
    return [
        _("No mix of {cold} and {hot} °C is {wanted} °C. Measure both and send them again.").format(
            cold=plain(cold, 1), hot=plain(hot, 1), wanted=plain(wanted, 1)
        ),
    ]


def mix(volume: float, wanted: float, needed: float, hot: float) -> list[str]:
    """How much of each, what to check, and the danger of hot water."""
    lines = [
        _("{needed} hot and {cold} cold make {volume} of {wanted} °C.").format(
            needed=litres(needed),
            cold=litres(volume - needed),
            volume=litres(volume),
            wanted=plain(wanted, 1),
        ),
        _("Stir and measure before it goes in; a tank moves 1 °C an hour and 2 °C a day at most."),
        _("Hot tap water can carry copper and softener salt: run it long, or use a kettle."),
    ]
    if hot > SCALDS:
        lines.append(_("Water this hot scalds: cold water into the bucket first, then the hot."))
    return lines


def warm_first(coldest: float) -> str:
    """How warm the new water must be for the share that was asked about."""
    return _("Warm the new water to {coldest} °C or more for that share.").format(
        coldest=plain(coldest, 1)
    )


def cool_first(warmest: float) -> str:
    """How warm the new water may be at most for the share that was asked about."""
    return _("Let the new water cool to {warmest} °C or less for that share.").format(
        warmest=plain(warmest, 1)
    )


def cooling(tank: str | None, warm: float | None, new: tuple[float, float] | None) -> list[str]:
    """How a tank is cooled: how fast, by what, and how warm new water may be for one degree."""
    pace = _("Cool it 1 °C an hour and 2 °C a day at most; measure each hour.")
    if tank is not None and warm is not None:
        pace = _("{tank}, {warm} °C: cool it 1 °C an hour and 2 °C a day at most.").format(
            tank=tank, warm=plain(warm, 1)
        )
    lines = [
        pace,
        _("Lid off, lamp off, heater off, a fan across the surface."),
        _("Stir the surface or give air: warm water holds little oxygen."),
    ]
    if new is not None:
        share, coldest = new
        lines.append(
            _("Or change {share} % with clean water of {coldest} °C: 1 °C less.").format(
                share=plain(100 * share, 0), coldest=plain(coldest, 1)
            )
        )
    lines.append(_("What evaporates is replaced by pure water (RO or distilled)."))
    return lines


def warming(tank: str | None, warm: float | None) -> list[str]:
    """How a tank is warmed: how fast, by what, and what scalds."""
    pace = _("Warm it 1 °C an hour and 2 °C a day at most; measure each hour.")
    if tank is not None and warm is not None:
        pace = _("{tank}, {warm} °C: warm it 1 °C an hour and 2 °C a day at most.").format(
            tank=tank, warm=plain(warm, 1)
        )
    return [
        pace,
        _("Set the heater 1 °C higher, wait until it is there, then the next."),
        _("No hot water into the tank: it scalds where it falls. Unplug a heater out of water."),
        _("Give air: warm water holds less oxygen. Common practice, no source."),
    ]


def ice(litres_: float | None, kilograms: float | None) -> str:
    """What ice may do and how."""
    if litres_ is None or kilograms is None:
        return _(
            "Loose ice chills one place at once: none. A closed bottle of it may float, out again"
            " after 1 °C."
        )
    return _(
        "Loose ice chills one place at once: none. A closed bottle of it may float, out again"
        " after 1 °C ({kilograms} kg for {volume})."
    ).format(kilograms=plain(kilograms, 1), volume=litres(litres_))


def mix_of(first: tuple[float, float], other: tuple[float, float], end: float) -> str:
    """How warm two waters are together."""
    return _("{litres} of {warm} °C and {more} of {as_warm} °C make {end} °C.").format(
        litres=litres(first[0]),
        warm=plain(first[1], 1),
        more=litres(other[0]),
        as_warm=plain(other[1], 1),
        end=plain(end, 1),
    )


def changed_to(tank: str, share: float, warm: float, now: float, end: float) -> str:
    """How warm a tank is after a change."""
    return _("{tank}: a change of {share} % with water of {warm} °C: {now} → {end} °C.").format(
        tank=tank,
        share=plain(100 * share, 0),
        warm=plain(warm, 1),
        now=plain(now, 1),
        end=plain(end, 1),
    )


def moved(by: float, coldest: float, warmest: float, most: float) -> list[str]:
    """Whether that is slow enough for animals, and how warm new water may be."""
    span = _("For so much the new water should be {coldest} to {warmest} °C.").format(
        coldest=plain(coldest, 1), warmest=plain(warmest, 1)
    )
    if abs(by) <= most:
        return [
            _("It moves {by} °C; with animals in it 1 °C an hour and 2 °C a day at most.").format(
                by=plain(abs(by), 1)
            ),
            _("Pour slowly, over an hour for each degree."),
        ]
    return [
        _("Too much at once for animals: {by} °C; 1 °C an hour and 2 °C a day at most.").format(
            by=plain(abs(by), 1)
        ),
        span,
    ]


def must_be(share: float, now: float, goal: float, new: float) -> list[str]:
    """How warm the new water must be."""
    return [
        _("For {now} → {goal} °C by a change of {share} %: the new water at {new} °C.").format(
            now=plain(now, 1),
            goal=plain(goal, 1),
            share=plain(100 * share, 0),
            new=plain(new, 1),
        ),
        _("Slowly, 1 °C an hour; measure it before it goes in. Dechlorinated, as always."),
    ]


def not_in_one(now: float, goal: float, most: float) -> str:
    """The wish is more than a day may move."""
    return _("{now} → {goal} °C is more than {most} °C: not in one day. The first step:").format(
        now=plain(now, 1), goal=plain(goal, 1), most=plain(most, 0)
    )


def no_such_water(share: float, goal: float, new: float) -> list[str]:
    """No water is so warm, or none may go in."""
    return [
        _("By {share} % to {goal} °C the new water would be {new} °C: not with animals.").format(
            share=plain(at_most(100 * share), 0), goal=plain(goal, 1), new=plain(new, 1)
        ),
        _("Change more of it over some hours, or go by a smaller step."),
    ]


def which_tank() -> list[str]:
    """How warm the tank is, or how much it holds, is not known."""
    return [
        _("How warm is the tank, and how much does it hold?"),
        _("Send for example: 20 l at 15 c in 100 l at 25 c what happens"),
    ]
