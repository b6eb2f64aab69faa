"""The animals on a tank's record, as far as the table knows them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

from core.advice._livestock_names import lookup
from core.advice._livestock_table import Species
from core.advice._livestock_words import Sexes, sex_of, sexed, without_sex
from core.tank import Stock, Tank


@dataclass(frozen=True, slots=True)
class Kept:
    """The animals on a tank's record, as far as the table knows them."""

    known: tuple[tuple[Species, int], ...]
    unknown: tuple[Stock, ...]
    """What the record calls by a name that is no row's, or several rows'."""
    said: Mapping[str, str] = field(default_factory=dict)
    """The keeper's own word for a kind, by its scientific name."""
    sexes: Mapping[str, Sexes] = field(default_factory=dict)
    """How many of a kind are males and females, as far as told, by its scientific name."""
    uncounted: frozenset[str] = frozenset()
    """The scientific names of kinds that are there in an untold number."""

    @property
    def kinds(self) -> Sequence[Species]:
        """The known kinds, each once, those with animals left."""
        return [row for row, count in self.known if count > 0]

    @property
    def invertebrates(self) -> list[str]:
        """The keeper's words for the kinds without a spine, a shared name too: shrimp, snails."""
        known = [self.name_of(row) for row in self.kinds if row.is_invertebrate]
        return [*known, *(each.species for each in self.unknown if _is_shared_of_them(each))]

    def counts(self, row: Species) -> bool:
        """Whether the keeper told how many of a kind there are."""
        return row.scientific not in self.uncounted

    def sexes_of(self, row: Species) -> Sexes:
        """How many of a kind are males and females, as far as told."""
        return self.sexes.get(row.scientific, Sexes())

    def name_of(self, row: Species) -> str:
        """The keeper's own word for a kind, else its usual name."""
        return self.said.get(row.scientific, row.name)


def _is_shared_of_them(stock: Stock) -> bool:
    found = lookup(stock.species)
    return stock.count > 0 and found.shared and all(r.is_invertebrate for r in found.candidates)


def kept_in(tank: Tank) -> Kept:
    """Look up what is on a tank's record."""
    return _kept(tank.stock)


def may_live_in(tank: Tank) -> tuple[Species, ...]:
    """The kinds on a tank's record, and those that a shared name there can mean: snails."""
    kept = kept_in(tank)
    shared = (lookup(stock.species) for stock in kept.unknown if stock.count > 0)
    meant = (row for found in shared if found.shared for row in found.candidates)
    return (*kept.kinds, *meant)


@lru_cache(maxsize=64)  # each rule about animals asks, and a tank's are the same for months
def _kept(on_record: tuple[Stock, ...]) -> Kept:
    known: dict[str, tuple[Species, int]] = {}
    said: dict[str, str] = {}
    sexes: dict[str, Sexes] = {}
    unknown: list[Stock] = []
    for stock in on_record:
        row = lookup(stock.species).species
        if row is None:
            unknown.append(stock)
            continue
        _, before = known.get(row.scientific, (row, 0))
        known[row.scientific] = (row, before + stock.count)
        said.setdefault(row.scientific, without_sex(stock.species))
        males, females = sexed(
            stock.count, frozenset({sex} if (sex := sex_of(stock.species)) else ())
        )
        before_them = sexes.get(row.scientific, Sexes())
        sexes[row.scientific] = Sexes(before_them.male + males, before_them.female + females)
    untold = (lookup(stock.species).species for stock in on_record if not stock.counted)
    uncounted = frozenset(row.scientific for row in untold if row is not None)
    return Kept(tuple(known.values()), tuple(unknown), said, sexes, uncounted)
