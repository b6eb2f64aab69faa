"""Animals that came or went: who is meant, how many are believed, who lives where."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from bot.chat.words import names
from bot.chat.words.numbers import litres
from bot.chat.words.text import N_, _
from core.advice.livestock import (
    Found,
)
from core.message.model import Event


def which(said: str, found: Found, language: str = "en") -> list[str]:
    """Ask who is meant, or say that the name is not known."""
    name = said.strip()[:40]
    if not found.candidates:
        return [
            _(
                "I know no animal or plant called “{name}”. If it is one, send its scientific name,"
                " or a common one."
            ).format(name=name),
            _("If it is a medicine or a remedy: not by guess. Ask a vet who treats fish."),
        ]
    kind = _("{name} ({scientific})")
    rows = names.either(
        [
            kind.format(name=row.name_in(language), scientific=row.scientific)
            for row in found.candidates
        ]
    )
    if found.shared:
        return [_("“{name}” can be several kinds: {rows}?").format(name=name, rows=rows)]
    return [_("I do not know “{name}”. Did you mean {rows}?").format(name=name, rows=rows)]


def lost_which(count: int | None) -> list[str]:
    """Animals were lost of a kind that was not named, or whose name several share."""
    if count == 1:
        return [_("Of which kind was it? The record waits for that.")]
    return [_("Of which kind were they? The record waits for that.")]


def born_of_whom() -> list[str]:
    """Young animals were born of a kind that was not named."""
    return [_("Whose young are they? The record waits for that.")]


NOT_THERE: Final = N_("no, leave it out")
IN_ALL: Final = N_("so many in all")


NOBODY: Final = N_("yes, nobody is left")
STILL_THERE: Final = N_("no, they are still there")


def nobody_left(tank: str, on_record: Mapping[str, int]) -> list[str]:
    """Ask whether all animals of a tank are gone; nothing is stored yet."""
    held = counted([(count, name) for name, count in on_record.items()])
    asked = _("Is nobody left in {tank}? On record: {held}. Nothing is stored yet.")
    return [asked.format(tank=tank, held=held)]


def live_there(
    tank: str, kinds: Sequence[tuple[int | None, str]], on_record: Mapping[str, int]
) -> list[str]:
    """Ask whether animals that were told as a list live in a tank; nothing is stored yet."""
    lines = [
        _("Do these live in {tank}: {kinds}? Nothing is stored yet.").format(
            tank=tank, kinds=counted(kinds)
        )
    ]
    if on_record:
        held = counted([(count, name) for name, count in on_record.items()])
        lines.append(_("On record so far: {held}.").format(held=held))
    return lines


def as_on_record(tank: str, held: Mapping[str, int]) -> list[str]:
    """A count that says what is on record anyway."""
    kinds = counted([(count, name) for name, count in held.items()])
    return [_("That is what I have for {tank}: {held}.").format(tank=tank, held=kinds)]


def all_new(some_known: bool) -> str:
    """The button that adds the whole list."""
    return _("these came too") if some_known else _("yes, add them")


def living(stock: Mapping[str, Mapping[str, int | None]]) -> list[str]:
    """The animals on record, a line a tank."""
    lines = [
        names.of_tank(tank, counted([(count, name) for name, count in held.items()]))
        for tank, held in stock.items()
        if held
    ]
    empty = [tank for tank, held in stock.items() if not held]
    if empty:
        lines.append(
            _("{tanks}: no animals on record. Send for example: added 6 guppies").format(
                tanks=", ".join(empty)
            )
        )
    return lines


def counted(kinds: Sequence[tuple[int | None, str]]) -> str:
    """Numbers of animals in a row; the name alone of those whose number nobody told."""
    return ", ".join(
        said if count is None else _("{count} {species}").format(count=f"{count:,}", species=said)
        for count, said in kinds
    )


CROWD_NO: Final = N_("no, leave it out")


def crowd(tank: str, volume_l: float | None, event: Event) -> list[str]:
    """So many animals are more likely a slip; nothing is stored yet."""
    template = (
        _("{count} {species} in {tank}? That is a great many, so it is not stored yet.")
        if volume_l is None
        else _("{count} {species} in the {volume} of {tank}? That is a great many: not stored yet.")
    )
    volume = "" if volume_l is None else litres(volume_l)
    count = f"{event.count:,}"
    return [template.format(count=count, species=event.species, volume=volume, tank=tank)]


def crowd_yes(event: Event) -> str:
    """The button that stores so many animals."""
    return _("yes, {count}").format(count=f"{event.count:,}")
