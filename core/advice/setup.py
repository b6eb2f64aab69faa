"""What a tank is made for, by its keeper's word and its record: plants, a reef, fish only."""

from __future__ import annotations

from core.advice.livestock import kept_in
from core.tank import Tank


def plants_grow(tank: Tank) -> bool | None:
    """Whether plants make oxygen by day and use it up at night; None where nobody said.

    Algae do so in any pond.
    """
    planted = tank.setup == "planted" or tank.kind == "pond"
    if planted or any(not row.is_animal for row in kept_in(tank).kinds):
        return True
    return False if tank.setup == "unplanted" else None


def is_reef(tank: Tank) -> bool:
    """Whether a marine tank is one of corals: by its keeper's word, or with a coral on record."""
    if not tank.is_sea:
        return False
    return tank.setup == "reef" or any(row.being == "coral" for row in kept_in(tank).kinds)


def holds_only_fish(tank: Tank) -> bool:
    """Whether nothing but fish lives in a tank: then salinity may fall faster.

    By the keeper's word where the record does not gainsay it, else by a record of known fish.
    """
    kept = kept_in(tank)
    kinds = [row for row in kept.kinds if row.is_animal]
    if tank.setup == "reef" or any(row.is_invertebrate for row in kinds):
        return False
    unknown = any(stock.count > 0 for stock in kept.unknown)
    return tank.setup == "fish_only" or (bool(kinds) and not unknown)
