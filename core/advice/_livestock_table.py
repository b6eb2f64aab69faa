"""The rows of the animals' table, each made when it is first wanted."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from importlib.resources import files
from typing import Any, Final, Literal

Level = Literal["low", "normal", "high"]
WaterKind = Literal["fresh", "brackish", "marine"]
Being = Literal["fish", "invertebrate", "coral", "plant"]
Rivals = Literal["kind", "males", "apart", "pair"]

RANGES: Final = ("temperature", "ph", "gh", "kh", "salinity")
"""The quantities that a row has a range of, as analyte ids."""

SENSITIVITIES: Final = ("ammonia", "nitrite", "nitrate", "copper", "salt", "change")

UNSOURCED: Final = frozenset({"practice", "memory"})
"""Ids of sources that are none: the trade's habit, and memory."""


@dataclass(frozen=True, slots=True)
class Span:
    """A range that suits, both ends included, and the id of its source."""

    low: float
    high: float
    source: str

    def overlap(self, other: Span) -> tuple[float, float] | None:
        """What two ranges have in common; None where they part."""
        low, high = max(self.low, other.low), min(self.high, other.high)
        return (low, high) if low <= high else None


@dataclass(frozen=True, slots=True)
class Sensitivity:
    """How badly something is borne, and the id of its source."""

    level: Level
    source: str


@dataclass(frozen=True, slots=True)
class Species:
    """A species, or a group of species that are kept alike.

    Attributes
    ----------
    scientific : str
        The scientific name; of a group its genus or family.
    group : str
        The company it is kept in, as the table names it.
    water : str
        fresh, brackish or marine.
    being : str
        fish, invertebrate, coral or plant.
    ranges : mapping of analyte to Span
        Temperature [°C], pH, GH and KH [°dH], salinity [g/kg]; what is missing is not judged.
    sensitivity : mapping of str to Sensitivity
        Towards ammonia, nitrite, nitrate, copper, salt and change.
    names : mapping of language to names
        Common names by language code, the usual one first.
    nitrate_limit : Span or None
        From 0 to what harms in the long run. [mg/L NO3]
    length : float or None
        Of a grown animal. [cm]
    hunts, fights : bool
        Eats what fits into its mouth; fights its like or its neighbours.
    shoals : bool
        Lives in a group of its kind, uneasy without.
    prey : str or None
        What it is to those that live on such: shrimps, snails, mussels or corals.
    eats, picks : frozenset of str
        What of these it eats whatever the size, and what it may eat.
    rivals : str or None
        Who of its kind fight: "kind" (one to a tank), "males" (one male), "apart" (a male
        and any other), "pair" (over two).
    demands : tuple of str
        What it asks of its keeper beside good water: "live_food", "feeding" (each by itself),
        "mature" (a tank that has long been steady), "light", "calm" (no faster company).
    several : bool
        True where the row stands for several species.
    mussel : bool
        True for mussels, which bear no potassium salts.
    sources : mapping of value to source id
        Where each value comes from.
    cited : mapping
        What a cited copy says of the species: its name there and the ends of its ranges.
    differs : mapping of analyte to str
        Why our range is not the cited one.
    """

    scientific: str
    group: str
    water: WaterKind
    being: Being
    ranges: Mapping[str, Span]
    sensitivity: Mapping[str, Sensitivity]
    names: Mapping[str, tuple[str, ...]]
    nitrate_limit: Span | None = None
    length: float | None = None
    hunts: bool = False
    fights: bool = False
    shoals: bool = False
    prey: str | None = None
    eats: frozenset[str] = frozenset()
    picks: frozenset[str] = frozenset()
    rivals: Rivals | None = None
    demands: tuple[str, ...] = ()
    several: bool = False
    mussel: bool = False
    sources: Mapping[str, str] = field(default_factory=dict)
    cited: Mapping[str, Any] = field(default_factory=dict)
    differs: Mapping[str, str] = field(default_factory=dict)

    @property
    def name(self) -> str:
        """The usual English name, else the scientific one."""
        return self.names["en"][0] if self.names.get("en") else self.scientific

    def name_in(self, language: str) -> str:
        """The usual name in a language, else the English one."""
        known = self.names.get(language)
        return known[0] if known else self.name

    def level(self, of: str) -> Level:
        """How sensitive it is; normal where the table does not say."""
        found = self.sensitivity.get(of)
        return found.level if found else "normal"

    @property
    def is_animal(self) -> bool:
        """False for plants."""
        return self.being != "plant"

    @property
    def is_invertebrate(self) -> bool:
        """True for shrimps, snails, mussels, corals and their like, which copper kills."""
        return self.being in {"invertebrate", "coral"}


class Table:
    """The rows, what the ids of their sources stand for, and where names lead.

    Attributes
    ----------
    sources : mapping of id to str
        What an id stands for.
    names, stems, words, heads : mapping of str to places
        Rows by joined name, by stem, by the stem of one word of their names, and by a word
        for several kinds, such as shrimp.
    """

    def __init__(self, raw: Mapping[str, Any]) -> None:
        self.sources: Mapping[str, str] = raw["sources"]
        self.names: Mapping[str, Sequence[int]] = raw["names"]
        self.stems: Mapping[str, Sequence[int]] = raw["stems"]
        self.heads: Mapping[str, Sequence[int]] = raw["heads"]
        self.words: Mapping[str, Sequence[int]] = raw["words"]
        self._groups: Mapping[str, Mapping[str, Any]] = raw["group"]
        self._raw: Sequence[Mapping[str, Any]] = raw["species"]
        self._made: dict[int, Species] = {}

    def row(self, place: int) -> Species:
        """The row at a place."""
        if place not in self._made:
            row = self._raw[place]
            self._made[place] = _species(row, self._groups[row["group"]])
        return self._made[place]

    def rows(self, places: Sequence[int]) -> tuple[Species, ...]:
        """The rows at some places."""
        return tuple(map(self.row, places))

    @cached_property
    def species(self) -> tuple[Species, ...]:
        """All rows."""
        return self.rows(range(len(self._raw)))


@lru_cache(maxsize=1)
def table() -> Table:
    """Read the table as `_livestock_compile` made it; the first call takes some milliseconds."""
    text = files("core.advice").joinpath("livestock.json").read_text(encoding="utf-8")
    return Table(json.loads(text))


def _species(row: Mapping[str, Any], group: Mapping[str, Any]) -> Species:
    sources: dict[str, str] = {**group["source"], **row["source"]}
    levels: dict[str, Level] = {**group["sensitivity"], **row.get("sensitivity", {})}
    limit = group.get("nitrate_limit")
    return Species(
        scientific=row["scientific"],
        group=row["group"],
        water=group["water"],
        being=group["being"],
        ranges=_ranges({**group, **row}, sources),
        sensitivity={of: Sensitivity(level, sources[of]) for of, level in levels.items()},
        names={language: tuple(names) for language, names in row["names"].items()},
        nitrate_limit=None if limit is None else Span(0.0, limit, sources["nitrate_limit"]),
        length=row.get("length"),
        hunts=row.get("hunts", False),
        fights=row.get("fights", False),
        shoals=row.get("shoals", False),
        prey=row.get("prey"),
        eats=frozenset(row.get("eats", ())),
        picks=frozenset(row.get("picks", ())),
        rivals=row.get("rivals"),
        demands=tuple(row.get("demands", ())),
        several=row.get("many", False),
        mussel=row.get("mussel", False),
        sources=sources,
        cited=row.get("fishbase", {}),
        differs=row.get("differs", {}),
    )


def _ranges(row: Mapping[str, Any], sources: Mapping[str, str]) -> dict[str, Span]:
    """The ranges of a row, its own before those of its group."""
    return {
        of: Span(float(row[of][0]), float(row[of][1]), sources[of]) for of in RANGES if of in row
    }
