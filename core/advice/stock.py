"""The animals on a tank's record: comings and goings added up, whatever words they were told in."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final, NamedTuple

from core.advice._livestock_words import is_young
from core.advice.livestock import Found, lookup
from core.message.fold import fold

ANY_ANIMAL: Final = frozenset(
    "fish fishes animal animals fisch fische tier tiere poisson poissons pez peces peixe peixes"  # noqa: SIM905
    " pesce pesci vis vissen ryba ryby ryb fisk fiskar animaux animales animais animali dieren"
    " zwierze zwierzeta djur".split()
)
"""Words for any animal, which tell no kind, without accents."""

CROWD: Final = 500
CROWD_PER_LITRE: Final = 5.0
"""More animals than both of these at once are asked about before they are believed; common
practice, no source."""


COMING: Final = frozenset({"added", "moved_in"})
GOING: Final = frozenset({"lost", "moved_out"})
"""Kinds of events by which animals come to a tank and leave it."""


class Came(NamedTuple):
    """Something that came or went: the kind of event, its name as told, how many."""

    kind: str
    species: str | None
    many: int | None


@dataclass(slots=True)
class _Held:
    name: str
    count: int
    found: Found


def tally(told: Iterable[Came]) -> dict[str, int]:
    """Add up what came and went.

    Parameters
    ----------
    told : iterable of Came
        In the order in which it happened.

    Returns
    -------
    dict of str to int
        By the keeper's first name of each kind. Two names of one species are one kind; the dead
        go from the only kind that their name can mean, and from none where it can mean several.

    Examples
    --------
    >>> tally([Came("added", "neon tetras", 10), Came("lost", "neons", 2)])
    {'neon tetras': 8}
    >>> tally([Came("added", "neon tetras", 10), Came("lost", None, 1)])
    {'neon tetras': 9}
    """
    held: dict[str, _Held] = {}
    for kind, species, many in told:
        if kind in COMING and species is not None:
            found = lookup(species)
            entry = held.setdefault(_key(species, found), _Held(species, 0, found))
            entry.count += many or 1
        elif kind in GOING and (entry_of := _meant(species, held)) is not None:
            entry_of.count = max(0, entry_of.count - (many or 1))
    return {entry.name: entry.count for entry in held.values() if entry.count}


def meant(stock: Mapping[str, int], species: str | None) -> str | None:
    """The name on record that animals can mean by theirs; None where it is none, or may be several.

    Examples
    --------
    >>> meant({"neon tetras": 8, "guppies": 3}, "tetras")
    'neon tetras'
    """
    held: dict[str, _Held] = {}
    for name, count in stock.items():
        found = lookup(name)
        held.setdefault(_key(name, found), _Held(name, count, found))
    entry = _meant(species, held)
    return None if entry is None else entry.name


def _key(species: str, found: Found) -> str:
    """One for all names of a kind, but young ones are counted by themselves: they bear less."""
    if found.species is None:
        return fold(species)
    return f"{found.species.scientific}, young" if is_young(species) else found.species.scientific


def _meant(species: str | None, held: dict[str, _Held]) -> _Held | None:
    """The kind on record that the dead are of; None where it may be several, or none."""
    living = [entry for entry in held.values() if entry.count]
    if names_no_kind(species):
        return living[0] if len(living) == 1 else None
    said = species or ""
    found = lookup(said)
    if (exact := held.get(_key(said, found))) is not None:
        return exact
    candidates = {row.scientific for row in found.candidates}
    fitting = [e for e in living if e.found.species and e.found.species.scientific in candidates]
    return fitting[0] if len(fitting) == 1 and found.shared else None


def names_no_kind(species: str | None) -> bool:
    """Whether a name is none, or that of any animal."""
    return species is None or fold(species).strip() in ANY_ANIMAL


def is_crowd(count: int, volume_l: float | None) -> bool:
    """Whether so many animals in so much water are more likely a slip than a tank.

    Examples
    --------
    >>> is_crowd(10_000, 90.0), is_crowd(10_000, 50_000.0), is_crowd(60, 20.0)
    (True, False, False)
    """
    return count > CROWD and (volume_l is None or count > CROWD_PER_LITRE * volume_l)
