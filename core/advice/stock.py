"""The animals on a tank's record: comings and goings added up, whatever words they were told in."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final, NamedTuple

from core.advice._livestock_words import (
    Sex,
    is_young,
    kind_alone,
    plain_name,
    sex_of,
    without_sex,
)
from core.advice.livestock import Found, lookup
from core.message import kinds
from core.message.fold import fold

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


class _Key(NamedTuple):
    """What is counted by itself: young ones bear less, and the sexes decide who fights."""

    kind: str
    young: bool
    sex: Sex | None


@dataclass(slots=True)
class _Held:
    name: str
    count: int
    found: Found
    counted: bool = False
    """Whether a number was told of any that came."""


_Stock = dict[_Key, _Held]


def tally(told: Iterable[Came]) -> dict[str, int]:
    """Add up what came and went.

    Parameters
    ----------
    told : iterable of Came
        In the order in which it happened.

    Returns
    -------
    dict of str to int
        By the keeper's first name of each kind. Two names of one species are one kind, but the
        sexes and the young are counted by themselves where they were told. The dead go from the
        only ones that their name can mean, from none where it can mean several, and from all
        where they are as many.

    Examples
    --------
    >>> tally([Came("added", "neon tetras", 10), Came("lost", "neons", 2)])
    {'neon tetras': 8}
    >>> tally([Came("added", "neon tetras", 10), Came("lost", None, 1)])
    {'neon tetras': 9}
    >>> tally([Came("added", "male guppies", 2), Came("added", "female guppies", 4),
    ...        Came("lost", "males", 1)])
    {'male guppies': 1, 'female guppies': 4}
    """
    return {entry.name: entry.count for entry in _added_up(told) if entry.count}


def uncounted(told: Iterable[Came]) -> frozenset[str]:
    """The names by which `tally` has kinds of which the keeper never told how many.

    Each counts as one, the least that they can be; such a loss takes none of them away.

    Examples
    --------
    >>> uncounted([Came("added", "tetras", None), Came("added", "guppies", 3)])
    frozenset({'tetras'})
    """
    return frozenset(entry.name for entry in _added_up(told) if entry.count and not entry.counted)


def _added_up(told: Iterable[Came]) -> Sequence[_Held]:
    held: _Stock = {}
    for kind, species, many in told:
        if kind in COMING and species is not None:
            found = lookup(species)
            entry = held.setdefault(_key(species, found), _Held(species, 0, found))
            entry.count += many or 1
            entry.counted |= many is not None
        elif kind in GOING:
            meant_by = _meant(species, held)
            some_die = kind == "lost" and not all(entry.counted for entry in meant_by)
            _take([] if some_die else meant_by, many or 1)
    return list(held.values())


def _take(meant_by: list[_Held], many: int) -> None:
    """Take animals from the only entry that they can be of, or all where they are as many."""
    if len(meant_by) == 1 or many == sum(entry.count for entry in meant_by):
        for entry in meant_by:
            entry.count = max(0, entry.count - many)


def meant(stock: Mapping[str, int], species: str | None) -> str | None:
    """The name on record that animals can mean by theirs; None where it is none, or may be several.

    Examples
    --------
    >>> meant({"neon tetras": 8, "guppies": 3}, "tetras")
    'neon tetras'
    """
    named = all_meant(stock, species)
    return named[0] if len(named) == 1 else None


def all_meant(stock: Mapping[str, int], species: str | None, *, every: bool = False) -> list[str]:
    """All names on record that animals can mean by theirs; with `every`, of either sex.

    Examples
    --------
    >>> all_meant({"male guppies": 1, "female guppies": 3, "neons": 8}, "guppies")
    ['male guppies', 'female guppies']
    """
    held: _Stock = {}
    for name, count in stock.items():
        found = lookup(name)
        held.setdefault(_key(name, found), _Held(name, count, found))
    return [entry.name for entry in _meant(species, held, every=every)]


def _key(species: str, found: Found) -> _Key:
    """One for all names of a kind."""
    kind = fold(without_sex(species)).removesuffix("s")  # 2 axolotl, then 1 of the axolotls
    kind = kind if found.species is None else found.species.scientific
    return _Key(kind, is_young(species), sex_of(species))


def _meant(species: str | None, held: _Stock, *, every: bool = False) -> list[_Held]:
    """The entries on record that the dead can be of, by their kind, age and sex as far as told.

    Where their sex is on record nowhere, those of no sex are meant; where theirs was not told,
    those of none come first.
    """
    living = {key: entry for key, entry in held.items() if entry.count}
    said = species or ""
    sex = sex_of(said)
    if said and is_young(said) and not kind_alone(plain_name(said)):
        return [entry for key, entry in living.items() if key.young]  # the fry, of any kind
    if not names_no_kind(species):
        found = lookup(said)
        key = _key(said, found)
        of_kind = {each: entry for each, entry in living.items() if each.kind == key.kind}
        if not of_kind and found.shared:
            candidates = {row.scientific for row in found.candidates}
            of_kind = {each: e for each, e in living.items() if each.kind in candidates}
        of_age = {each: entry for each, entry in of_kind.items() if each.young == key.young}
        living = of_age if of_age or key.young else of_kind
    alike = [entry for key, entry in living.items() if key.sex == sex]
    untold = [entry for key, entry in living.items() if key.sex is None]
    if sex is None and (every or names_no_kind(species)):
        return list(living.values())
    return alike or (untold if sex is not None else list(living.values()))


def names_no_kind(species: str | None) -> bool:
    """Whether a name is none, or that of any animal."""
    return species is None or kinds.names_any(without_sex(species)) or not without_sex(species)


def is_crowd(count: int, volume_l: float | None) -> bool:
    """Whether so many animals in so much water are more likely a slip than a tank.

    Examples
    --------
    >>> is_crowd(10_000, 90.0), is_crowd(10_000, 50_000.0), is_crowd(60, 20.0)
    (True, False, False)
    """
    return count > CROWD and (volume_l is None or count > CROWD_PER_LITRE * volume_l)
