"""What is said of a number of dead that is a sum, or may be one."""

from __future__ import annotations

from bot.chat.words.text import _, ngettext


def in_all(total: int, before: int, species: str | None) -> str:
    """How many are dead in all, of which some were on record, and how more are told."""
    new = total - before
    example = _("lost {total} {species}") if species else _("{total} died")
    example = example.format(total=total, species=species)
    told = ngettext(
        "{total} dead in all: {before} on record before, {new} added. Were all {total} new? Send:"
        " undo, then {example}",
        "{total} dead in all: {before} on record before, {new} added. Were all {total} new? Send:"
        " undo, then {example}",
        total,
    )
    return told.format(total=total, before=before, new=new, example=example)


def on_record(tank: str, before: int) -> list[str]:
    """So many dead are on record already, and no fewer."""
    told = ngettext(
        "{tank}: {count} dead is on record already, so nothing is added. More? Send: 1 more died",
        "{tank}: {count} dead are on record already, so nothing is added. More? Send: 1 more died",
        before,
    )
    return [told.format(tank=tank, count=before)]


def which(tank: str, before: int) -> list[str]:
    """Ask how many died beside those on record."""
    asked = ngettext(
        "{tank}: {before} dead is on record. How many died since? Nothing is added yet.",
        "{tank}: {before} dead are on record. How many died since? Nothing is added yet.",
        before,
    )
    return [asked.format(tank=tank, before=before)]


def new_dead(count: int) -> str:
    """The button that adds so many dead."""
    return ngettext("{count} more died", "{count} more died", count).format(count=count)


def none_new() -> str:
    """The button that adds none."""
    return _("none more")
