"""Words for a plan, a dose or a change as animals bear it that are named; none is a yes or a no."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from bot.chat.words import names
from bot.chat.words.levels import unit
from bot.chat.words.numbers import plain
from bot.chat.words.text import _, ngettext

DECIDING: tuple[str, ...] = ("temperature", "ph", "gh", "kh")
"""What the table has of nearly every animal."""


def judged(
    tank: str,
    kinds: Sequence[str],
    suited: Sequence[str],
    values: Mapping[str, float],
    *,
    every: bool,
) -> list[str]:
    """Which of the kinds that may be meant the water suits where it leads."""
    if not values:
        return [_("{tank}: I know nothing of its water. Measure it first.").format(tank=tank)]
    water = ", ".join(
        f"{names.label(name)} {plain(number, 1)}{unit(name)}" for name, number in values.items()
    )
    if every:
        told = _("{tank}, for {kinds}: {water}: within what suits them.")
    elif not suited:
        told = _("{tank}, for {kinds}: {water}: not all of it suits them.")
    else:
        told = _("{tank}, for {kinds}: {water}: within what suits {suited}.")
    fields = {"tank": tank, "kinds": names.listed(list(kinds)), "water": water}
    lines = [told.format(**fields, suited=names.listed(list(suited) or [""]))]
    deciding = [name for name in DECIDING if name != "gh" or "salinity" not in values]
    if missing := [names.label(name) for name in deciding if name not in values]:
        lines.append(_("Not known of it: {missing}.").format(missing=", ".join(missing)))
    return lines


def in_parts(count: int) -> str:
    """A plan is borne only in its parts."""
    told = ngettext(
        "Only as {count} part, tested before each next one: all at once would be too fast.",
        "Only in {count} parts, tested before each next one: all at once would be too fast.",
        count,
    )
    return told.format(count=count)


def over_days(days: int) -> str:
    """An amount belongs over more days."""
    told = ngettext(
        "All at once it is too much for animals: it belongs over at least {count} day.",
        "All at once it is too much for animals: it belongs over at least {count} days.",
        days,
    )
    return told.format(count=days)


def in_steps() -> str:
    """A change is borne only in its smaller steps."""
    return _("Only in the smaller changes: all at once it would be too much for animals.")


def salt(species: Sequence[str]) -> str:
    """Who bears salt badly."""
    return _("Salt: {species} bear it badly. Rather change water than salt it.").format(
        species=names.listed(list(species))
    )


def watch() -> str:
    """What is done whoever it is for."""
    return _("Slowly; watch them for an hour, and stop if they gasp or hide.")
