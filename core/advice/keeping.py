"""May this animal join this tank? What of its water and of its company stands against it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final, Literal

from core.advice.findings import low_kh
from core.advice.livestock import (
    MILD,
    NOBODY_TOLD,
    SHOAL,
    Conflict,
    Misfit,
    Rivalry,
    Sexes,
    Species,
    fits,
    foreign_water,
    kept_in,
    least_volume,
    rival_of,
    table,
    together,
    volume_for,
)
from core.advice.state import State
from core.tank import Tank

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
        yes; no (something surely stands against it); care (only manners, room, their number
        or what they demand of their keeper does); retest (only the kits' doubt does); or
        unmeasured (nothing is known of the water).
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
    crowded: float | None = None
    """Water that so many, with the fish on record, need at least, where it holds less. [L]"""
    count: int = 1
    """How many are asked about."""
    few: int | None = None
    """How many there would be of a kind that lives in larger groups."""
    rival: Rivalry | None = None
    """Whether so many of the kind fight each other."""
    sexes: Sexes = NOBODY_TOLD
    """How many of the kind there would be are males and females, as far as told."""
    foreign: tuple[str, str] | None = None
    """The water that it lives in and the one of the tank, where these are two."""
    spent: bool = False
    """Whether the tank's buffer is gone: nobody should come before it is back."""
    names: Mapping[str, str] = field(default_factory=dict)
    """The keeper's own words for kinds, by scientific name."""

    def name_of(self, row: Species) -> str:
        """The keeper's own word for a kind, else its usual name."""
        return self.names.get(row.scientific, row.name)


def can_keep(
    asked: Species,
    state: State,
    said: str | None = None,
    count: int | None = None,
    sexes: Sexes = NOBODY_TOLD,
) -> Keeping:
    """Judge whether a kind may join a tank.

    Parameters
    ----------
    asked : Species
        The newcomer.
    state : State
        The tank, its newest readings and its animals.
    said : str, optional
        The newcomer as the keeper calls it.
    count : int, optional
        How many would come; None where that was not said: then no group is called too few.
    sexes : Sexes, optional
        How many of them are males and females, as far as told.
    """
    kept = kept_in(state.tank)
    misfits = tuple(fits(asked, state))
    pairs = together([asked, *kept.kinds])
    conflicts = tuple(
        c for c in pairs if asked.scientific in {c.one.scientific, c.other.scientific}
    )
    many = count or 1
    own = many + sum(n for row, n in kept.known if row.scientific == asked.scientific)
    held = kept.sexes_of(asked)
    sexes = Sexes(held.male + sexes.male, held.female + sexes.female)
    rival = rival_of(asked, own, sexes)
    few = own if asked.shoals and count is not None and own < SHOAL else None
    least, volume = least_volume(asked), state.tank.volume_l or float("inf")
    all_need = volume_for([*kept.known, (asked, many)])
    cramped = least if least is not None and volume < least else None
    crowded = all_need if volume < all_need and all_need > (cramped or 0.0) else None
    salt = state.last("salinity")
    foreign = None
    if foreign_water(asked, state.tank, None if salt is None else salt.value):
        here = "fresh" if state.tank.kind == "pond" else state.tank.kind
        foreign, misfits = (asked.water, here), ()
        conflicts = tuple(c for c in conflicts if c.reason == "water")
    # Twice what is little is out of the question.
    hopeless = any(need is not None and need >= 2.0 * volume for need in (cramped, crowded))
    buffer = low_kh(state)
    spent = asked.is_animal and buffer is not None and buffer.severity == "alarm"
    hard = spent or any(conflict.reason not in MILD for conflict in conflicts)
    known = any(of in state.readings for of in DECISIVE)
    if foreign or hard or hopeless or rival == "sure" or any(m.certain for m in misfits):
        verdict: Verdict = "no"
    elif misfits:
        verdict = "retest"
    elif conflicts or rival or few or cramped or crowded or (known and asked.demands):
        verdict = "care"
    else:
        verdict = "yes" if known else "unmeasured"
    return Keeping(
        asked,
        verdict,
        misfits,
        conflicts,
        tuple(of for of in _needed(asked) if of not in state.readings),
        tuple(stock.species for stock in kept.unknown if stock.count > 0),
        cramped,
        crowded,
        many,
        few,
        rival,
        sexes,
        foreign,
        spent,
        {**kept.said, asked.scientific: said or kept.name_of(asked)},
    )


def _needed(asked: Species) -> list[str]:
    """The decisive analytes that it has a range of; salt is no question of fresh-water kinds."""
    fresh = asked.water == "fresh"
    return [of for of in DECISIVE if of in asked.ranges and not (fresh and of == "salinity")]


def companions(asked: Species, tank: Tank) -> list[Species]:
    """Animals that nothing in the table stands against keeping with a kind, its own group first.

    Who fights, hunts or eats others is left out, whomever it is to live with.

    Parameters
    ----------
    asked : Species
        Whom they are to live with.
    tank : Tank
        Its animals count too, and whom it is too small for is left out.
    """
    kept, most = kept_in(tank).kinds, tank.volume_l or float("inf")
    held = {row.scientific: row for row in (asked, *kept)}
    found = [
        row
        for row in table().species
        if row.is_animal
        and row.water == asked.water
        and row.scientific not in held
        and (least_volume(row) or 0.0) <= most
        and not (row.fights or row.hunts or row.eats or row.picks or row.demands)
        and not (asked.rivals is not None and _genus(row) == _genus(asked))
        and not ("calm" in asked.demands and row.being == "fish")
        and not any(row in (c.one, c.other) for c in together([row, *held.values()]))
    ]
    return sorted(found, key=lambda row: (row.group != asked.group, row.scientific))


def _genus(row: Species) -> str:
    return row.scientific.partition(" ")[0]
