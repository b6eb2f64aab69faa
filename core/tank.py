"""What the advice needs to know of a tank."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Literal

from core.message.model import Kit

TankKind = Literal["fresh", "brackish", "marine", "pond"]
KINDS: tuple[TankKind, ...] = ("fresh", "brackish", "marine", "pond")


Setup = Literal["planted", "unplanted", "reef", "fish_only"]
"""What a keeper says that a tank is made for; its record of animals tells the rest."""


@dataclass(frozen=True, slots=True)
class Stock:
    """So many animals of one species, as the keeper calls it."""

    species: str
    count: int
    counted: bool = True
    """Whether the keeper told how many; else `count` is the least that they can be."""


@dataclass(frozen=True, slots=True)
class Tank:
    """One tank as its keeper described it.

    Attributes
    ----------
    name : str
        As the keeper spells it.
    kind : str
        fresh, brackish, marine or pond.
    volume_l : float or None
        Net volume of water; None until it was asked for. [L]
    soft : bool
        True where the water is kept under 1 °dH on purpose.
    co2 : bool
        True where carbon dioxide is injected.
    setup : str or None
        planted, unplanted, reef or fish_only, where the keeper said so.
    set_up : datetime or None
        When it was set up, where the keeper said so.
    named : bool
        False for a tank made on the fly by a first reading, until the keeper names it.
    stock : tuple of Stock
        The animals on record.
    kits : mapping of analyte id to Kit
        How the keeper's kits read.
    """

    name: str
    kind: TankKind = "fresh"
    volume_l: float | None = None
    soft: bool = False
    co2: bool = False
    setup: Setup | None = None
    set_up: datetime | None = None
    named: bool = True
    stock: tuple[Stock, ...] = ()
    kits: Mapping[str, Kit] = field(default_factory=dict)

    @property
    def is_sea(self) -> bool:
        """True for a marine tank."""
        return self.kind == "marine"


ALLOWANCE = 0.15
"""Share of the outer box taken by glass, substrate and decor; common practice, no source."""

FILLED = 0.9
"""Share of the height that water stands at where its depth was not said; common practice."""


@dataclass(frozen=True, slots=True)
class Box:
    """A tank's outer measures and how deep the water stands. [cm]"""

    length: float
    width: float
    depth: float
    depth_said: bool

    @property
    def gross_l(self) -> float:
        """Volume of the box up to the water's surface. [L]"""
        return self.length * self.width * self.depth / 1000.0

    @property
    def net_l(self) -> float:
        """Water to expect after the allowance, for the keeper to confirm. [L]

        Examples
        --------
        >>> round(Box(100, 50, 40, depth_said=True).net_l, 1)
        170.0
        """
        return self.gross_l * (1.0 - ALLOWANCE)
