"""What is said where animals died."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import names
from bot.chat.words.numbers import plain, small
from bot.chat.words.text import N_, _, ngettext

PIPES = N_(
    "Pipes that were worked on can give copper, deadly to shrimps and snails: test tank and tap for"
    " copper before anything else."
)


def lost(cause: str | None, missing: Sequence[str]) -> list[str]:
    """The cause that is known, then what to look at before anything else.

    Parameters
    ----------
    cause : str or None
        What the last readings show to be wrong.
    missing : sequence of str
        Analytes that nobody read just now.
    """
    lines = [] if cause is None else [cause]
    if missing:
        asked = names.listed([names.label(each) for each in missing])
        told = _("Test {what} now, remove the dead, and look at any others.")
        return [*lines, told.format(what=asked)]
    if cause is None:
        lines.append(
            _("The last readings show no cause: test oxygen, chlorine and copper as well.")
        )
    return [*lines, _("Remove the dead, and look at any others.")]


def rose_by_doses(before: float, now: float, substance: str, grams: float | None) -> str:
    """KH came up too fast by what went in: the likely cause, and the end of the doses. [°dH]"""
    name = names.substance(substance)
    if grams is None:
        told = _(
            "KH rose from {before} to {now} °dH within days by what went in ({name}): too fast, and"
            " maybe the cause. No more of it, no acid; test pH and ammonia."
        )
        return told.format(before=plain(before, 1), now=plain(now, 1), name=name)
    told = _(
        "KH rose from {before} to {now} °dH within days by {grams} g of {name}: too fast, and maybe"
        " the cause. No more of it, no acid; test pH and ammonia."
    )
    return told.format(before=plain(before, 1), now=plain(now, 1), grams=small(grams), name=name)


def unrecorded(held: int, species: str, tank: str, elsewhere: Sequence[str]) -> str:
    """More were lost than a tank has on record; other tanks may have had them."""
    if held:
        told = ngettext(
            "Only {count} {species} was on record in {tank}.",
            "Only {count} {species} were on record in {tank}.",
            held,
        )
        return told.format(count=f"{held:,}", species=species, tank=tank)
    if elsewhere:
        return _("No {species} were on record in {tank}. Was it in {others}?").format(
            species=species, tank=tank, others=names.either(list(elsewhere))
        )
    return _("No {species} were on record in {tank}, so its list of animals stays.").format(
        species=species, tank=tank
    )


def it_was(tank: str) -> str:
    """The button that takes a loss to another tank."""
    return _("it was in {tank}").format(tank=tank)


def counted_as_one(species: str) -> str:
    """The dead were told without their number."""
    return _("Counted as one. Were there more? Send for example: no, lost 3 {species}").format(
        species=species
    )
