"""The animals on a tank's record, as far as the table knows them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

from core.advice._livestock_names import lookup
from core.advice._livestock_table import Species
from core.tank import Stock, Tank


@dataclass(frozen=True, slots=True)
class Kept:
    """The animals on a tank's record, as far as the table knows them."""

    known: tuple[tuple[Species, int], ...]
    unknown: tuple[Stock, ...]
    """What the record calls by a name that is no row's, or several rows'."""
    said: Mapping[str, str] = field(default_factory=dict)
    """The keeper's own word for a kind, by its scientific name."""

    @property
    def kinds(self) -> Sequence[Species]:
        """The known kinds, each once, those with animals left."""
        return [row for row, count in self.known if count > 0]

    def name_of(self, row: Species) -> str:
        """The keeper's own word for a kind, else its usual name."""
        return self.said.get(row.scientific, row.name)


def kept_in(tank: Tank) -> Kept:
    """Look up what is on a tank's record."""
    return _kept(tank.stock)


@lru_cache(maxsize=64)  # each rule about animals asks, and a tank's are the same for months
def _kept(on_record: tuple[Stock, ...]) -> Kept:
    known: dict[str, tuple[Species, int]] = {}
    said: dict[str, str] = {}
    unknown: list[Stock] = []
    for stock in on_record:
        row = lookup(stock.species).species
        if row is None:
            unknown.append(stock)
            continue
        _, before = known.get(row.scientific, (row, 0))
        known[row.scientific] = (row, before + stock.count)
        said.setdefault(row.scientific, stock.species)
    return Kept(tuple(known.values()), tuple(unknown), said)
