"""May this animal join this tank? What of its water and of its company stands against it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final, Literal

from core.advice.livestock import Conflict, Misfit, Species, fits, kept_in, least_volume, together
from core.advice.state import State

Verdict = Literal["yes", "no", "care", "retest", "unmeasured"]

DECISIVE: Final = ("temperature", "ph", "gh", "salinity")
"""Of these some must have been measured before anything is promised."""


@dataclass(frozen=True, slots=True)
class Keeping:
    """Whether a kind may join a tank.

    Attributes
    ----------
    asked : Species
        Who is asked about.
    verdict : str
        yes; no (something surely stands against it); care (only manners or room do); retest
        (only the kits' doubt does); or unmeasured (nothing is known of the water).
    misfits : tuple of Misfit
        What of the water does not suit it.
    conflicts : tuple of Conflict
        Who on record does not suit it.
    unmeasured : tuple of str
        Analytes that it has a range of and that were never measured.
    unknown : tuple of str
        Names on record that the table does not know: of them nothing is said.
    """

    asked: Species
    verdict: Verdict
    misfits: tuple[Misfit, ...]
    conflicts: tuple[Conflict, ...]
    unmeasured: tuple[str, ...]
    unknown: tuple[str, ...]
    cramped: float | None = None
    """Water that it needs at least once grown, where the tank holds less. [L]"""
    names: Mapping[str, str] = field(default_factory=dict)
    """The keeper's own words for kinds, by scientific name."""

    def name_of(self, row: Species) -> str:
        """The keeper's own word for a kind, else its usual name."""
        return self.names.get(row.scientific, row.name)


def can_keep(asked: Species, state: State, said: str | None = None) -> Keeping:
    """Judge whether a kind may join a tank.

    Parameters
    ----------
    asked : Species
        The newcomer.
    state : State
        The tank, its newest readings and its animals.
    said : str, optional
        The newcomer as the keeper calls it.
    """
    kept = kept_in(state.tank)
    misfits = tuple(fits(asked, state))
    pairs = together([asked, *kept.kinds])
    conflicts = tuple(
        c for c in pairs if asked.scientific in {c.one.scientific, c.other.scientific}
    )
    if asked.water == "marine" and not state.tank.is_sea and "salinity" not in state.readings:
        verdict: Verdict = "no"
    else:
        verdict = _verdict(misfits, conflicts, state)
    least, volume = least_volume(asked), state.tank.volume_l
    cramped = least if least is not None and volume is not None and volume < least else None
    if cramped is not None and verdict == "yes":
        verdict = "care"
    return Keeping(
        asked,
        verdict,
        misfits,
        conflicts,
        tuple(of for of in _needed(asked) if of not in state.readings),
        tuple(stock.species for stock in kept.unknown if stock.count > 0),
        cramped,
        {**kept.said, asked.scientific: said or kept.name_of(asked)},
    )


def _verdict(misfits: tuple[Misfit, ...], conflicts: tuple[Conflict, ...], state: State) -> Verdict:
    hard = any(conflict.reason != "fights" for conflict in conflicts)
    if hard or any(misfit.certain for misfit in misfits):
        return "no"
    if misfits:
        return "retest"
    if conflicts:
        return "care"
    return "yes" if any(of in state.readings for of in DECISIVE) else "unmeasured"


def _needed(asked: Species) -> list[str]:
    """The decisive analytes that it has a range of; salt is no question of fresh-water kinds."""
    fresh = asked.water == "fresh"
    return [of for of in DECISIVE if of in asked.ranges and not (fresh and of == "salinity")]
