"""What is known of a kind, and what is not on record, in words."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import names
from bot.chat.words.companions import demands
from bot.chat.words.finding_animals import rival_line
from bot.chat.words.keeping import wants
from bot.chat.words.numbers import plain
from bot.chat.words.text import _
from core.advice.livestock import SHOAL, Species, least_volume


def needs(row: Species, said: str, *, size: bool) -> list[str]:
    """What suits a kind, how large it grows, its company; its size first where that is asked."""
    name = names.capital(said)
    told = _("{name} ({scientific}): {ranges}.").format(
        name=name, scientific=row.scientific, ranges=wants(row)
    )
    grown = _size(row, name)
    lines = [*grown, told] if size else [told, *grown]
    if row.shoals:
        lines.append(
            _("They live in groups: {count} or more. A few at a time.").format(count=SHOAL)
        )
    if row.rivals is not None:
        lines.append(rival_line(row.rivals, name))
    if not row.is_animal:
        return lines
    lines += demands(row, name)
    return [*lines, _("Whether they suit one of your tanks: can i keep {name}").format(name=said)]


def _size(row: Species, name: str) -> list[str]:
    """How large a grown one is, and the water that it needs at least, as far as known."""
    if row.length is None:
        return []
    least = least_volume(row)
    if least is not None:
        told = _(
            "{name} can grow to about {length} cm: under {volume} L is too little for sure, twice"
            " that is wiser."
        )
        volume = plain(round(least, -1), 0)
        return [told.format(name=name, length=plain(row.length, 0), volume=volume)]
    told = _("{name} can grow to about {length} cm.")
    return [told.format(name=name, length=plain(row.length, 0))]


def none(kinds: Sequence[str], tanks: Sequence[str]) -> str:
    """None of such are on record."""
    return _("No {kinds} on record in {tanks}.").format(
        kinds=names.either(list(kinds)), tanks=names.either(list(tanks)[:4])
    )
