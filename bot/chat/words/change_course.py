"""Several changes in the place of one, in words: the water on the way, and what to watch."""

from __future__ import annotations

from collections.abc import Mapping

from bot.chat.words import names
from bot.chat.words.changes import amount, figures, percent
from bot.chat.words.doses import only_below
from bot.chat.words.levels import unit
from bot.chat.words.numbers import at_most, plain, span
from bot.chat.words.text import _, ngettext
from core.advice import limits
from core.advice.change_course import EVERY_DAYS, Unsuited
from core.advice.change_limits import TINY
from core.advice.change_plan import ChangePlan


def as_routine(plan: ChangePlan, volume_l: float | None, weeks: int) -> str:
    """More changes than a person makes one a day: the same as a habit."""
    return ngettext(
        "Rather as a routine: {share} every {days} days, for about {weeks} week.",
        "Rather as a routine: {share} every {days} days, for about {weeks} weeks.",
        weeks,
    ).format(share=amount(at_most(plan.steps[0]), volume_l), days=EVERY_DAYS, weeks=weeks)


def enough(plan: ChangePlan, tank: str, volume_l: float | None, instead: str | None) -> str:
    """So many changes of the share that the keeper named, or of a smaller one, reach the value.

    `instead` is the routine in the place of more than a person makes one a day.
    """
    share = amount(plan.share, volume_l)
    if not plan.steps:
        told = _(
            "{tank}: more than {most} changes of {share} would be needed: ask for a larger one."
        )
        return told.format(tank=tank, most=limits.MOST_CHANGES, share=share)
    count, each = len(plan.steps), plan.steps[0]
    lead = [] if plan.only_below is None else [only_below(plan.only_below)]
    if instead is not None:
        told = ngettext(
            "{tank}: {count} change of {share}.", "{tank}: {count} changes of {share}.", count
        )
    elif plan.emergency:
        told = ngettext(
            "{tank}: {count} change of {share}, hours apart.",
            "{tank}: {count} changes of {share}, hours apart.",
            count,
        )
    else:
        told = ngettext(
            "{tank}: {count} change of {share} is enough.",
            "{tank}: {count} changes of {share}, one a day.",
            count,
        )
    lines = [*lead, told.format(tank=tank, count=count, share=amount(at_most(each), volume_l))]
    if each < plan.share - TINY:
        smaller = _("Not {share} each: day after day that would go too far.")
        lines.append(smaller.format(share=percent(plan.share)))
    return " ".join([*lines, *([] if instead is None else [instead])])


def with_ro(ro: float, count: int, share: float) -> str:
    """The new water thinned to the tank's KH: larger changes are safe."""
    return ngettext(
        "With {ro} of the new water RO or rain, {count} change of {share} would do.",
        "With {ro} of the new water RO or rain, {count} changes of {share} would do, one a day.",
        count,
    ).format(ro=percent(ro), count=count, share=percent(at_most(share)))


def first(values: Mapping[str, float]) -> str:
    """The water right after the first change."""
    return _("After the first, at once: {values}.").format(values=figures(values))


def end(values: Mapping[str, float]) -> str:
    """The water after the last one, once it has stood."""
    return _("After the last, stood: {values}.").format(values=figures(values))


def watch() -> str:
    """What to look at between them."""
    return _(
        "Before each next one measure pH, KH and ammonia; if the animals gasp or hide, stop and ask"
        " again."
    )


def does_not_suit(found: Unsuited) -> str:
    """Where the changes lead is no water for an animal on record."""
    return _("That end does not suit {species}: {name} {end}, they want {between}{unit}.").format(
        species=found.species,
        name=names.label(found.analyte),
        end=plain(found.end, 1),
        between=span(found.low, found.high, 1),
        unit=unit(found.analyte),
    )
