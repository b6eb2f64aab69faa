"""Where the animals on record draw the line for what is put in, whatever the steps there."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from core.advice.livestock import kept_in
from core.advice.plan import Fact, Refusal
from core.advice.state import State
from core.analytes import ANALYTES

SALT_FOR_ANY_FRESH: Final = 3.0
"""More salt than this no tank of fresh-water animals is given without a vet; common practice, no
source. [g/kg]"""


@dataclass(frozen=True, slots=True)
class Bound:
    """An end that is past what an animal suits; `species` is the keeper's word, "" for any."""

    species: str
    analyte: str
    end: float
    high: float

    @property
    def refusal(self) -> Refusal:
        """The same as the reason why there is no plan."""
        facts: dict[str, Fact] = {"analyte": self.analyte, "to": self.end, "highest": self.high}
        return Refusal("past_animals", facts | {"species": self.species})


def past_animals(state: State, ends: Mapping[str, tuple[float, float]]) -> Bound | None:
    """Find the animal that a raised water would suit least; None where all bear it.

    Parameters
    ----------
    state : State
        The tank with its animals.
    ends : mapping of str to tuple of float
        Analyte → where it stands and where it would end, canonical units. A step of the usual
        kit over an animal's range is let pass, since no kit tells it.

    Returns
    -------
    Bound or None
        Of several the one whose range ends lowest. Without animals of the table only salt in
        fresh water has an end.
    """
    kept = kept_in(state.tank)
    found = [
        Bound(kept.name_of(kind), analyte, end, kind.ranges[analyte].high)
        for analyte, (start, end) in ends.items()
        for kind in kept.kinds
        if analyte in kind.ranges
        and end > start
        and end > kind.ranges[analyte].high + ANALYTES[analyte].resolution
    ]
    if found:
        return min(found, key=lambda bound: bound.high / max(bound.end, 1e-9))
    salt = ends.get("salinity")
    fresh = state.tank.kind in {"fresh", "pond"} and state.tank.name
    if salt is not None and fresh and salt[1] > max(salt[0], SALT_FOR_ANY_FRESH):
        return Bound("", "salinity", salt[1], SALT_FOR_ANY_FRESH)
    return None
