"""Salt that went into fresh water already: what there is of it, and whether anybody weighed it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from core.advice import limits
from core.advice.potassium import dosed_so_far
from core.advice.state import State

SALTS: Final = frozenset({"sodium chloride", "sea salt"})


@dataclass(frozen=True, slots=True)
class Salted:
    """Salt that was put in since chloride was measured.

    Attributes
    ----------
    chloride : float
        What the weighed part of it brought, less changes; 0 where the volume is unknown. [mg/L]
    unweighed : bool
        True where some of it was told without its grams: spoons, or nothing at all.
    """

    chloride: float
    unweighed: bool

    @property
    def is_over(self) -> bool:
        """True where it is more than goes in on one day."""
        return self.chloride > limits.CHLORIDE_DOSE * limits.WEIGHED


def salted(state: State) -> Salted | None:
    """The salt that is in as far as it was told; None where none was, or it was measured since."""
    measured = state.last("chloride")
    doses = [
        each.what
        for each in state.events or ()
        if each.what.kind == "dose"
        and each.what.substance in SALTS
        and each.at <= state.now
        and not (measured is not None and each.at < measured.at)
    ]
    if not doses:
        return None
    unweighed = any(not dose.grams and dose.percent is None for dose in doses)
    return Salted(dosed_so_far(state, "chloride"), unweighed)
