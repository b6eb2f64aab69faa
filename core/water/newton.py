"""Newton's method in the logarithms of two unknowns.

They are bicarbonate, and hydrogen times the activity coefficient of one charge: in these two the
shares of CO2 and hydroxide do not depend on the ionic strength. Ionic strength and free sulfate
follow each step to first order. One code for plain numbers and for arrays.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final, NamedTuple

from core.water._elementwise import Functions
from core.water.errors import NotSolved
from core.water.medium import Local, Medium, constants_at
from core.water.speciation import Species, evaluate

TOLERANCE: Final = 3e-10
"""Of what the last step leaves to be gone, in natural-log units: the step times its ratio to the
step before, since Newton's steps shrink by such a ratio or faster."""

STRENGTH_TOLERANCE: Final = 3e-10
"""Of the ionic strength, whose last change is made as well. [mol/kg]"""

MOST_STEPS: Final = 100
LONGEST_STEP: Final = 1.8
"""Longest step in the argument of `_grown`: a factor of 19."""

PATIENCE: Final = 10
SHRINKING: Final = 0.85
"""After so many steps the longest step of hydrogen shrinks each time: where a second buffer
(phosphate, ammonia) makes the titration curve bend twice, Newton's method alone can jump to and
fro across the bend for ever. What is left of the way is still six pH units long."""


class Equilibrium(NamedTuple):
    """A solved water: hydrogen activity, carbonate species, totals, and the other species."""

    h: float
    hco3: float
    co2: float
    co3: float
    alkalinity: float
    carbon: float
    species: Species


class Start(NamedTuple):
    """A first ionic strength, and the constants there."""

    strength: float
    local: Local


Place = Callable[[Local, float, float], tuple[float, float]]
"""From the constants and both unknowns: hydrogen and bicarbonate of this step."""

Step = Callable[[Species], tuple[float, float, float]]
"""From an evaluation: the step of ln hydrogen; that of ln bicarbonate without one of hydrogen;
and how much more of it a step of hydrogen calls for."""


def iterate(
    m: Medium, xp: Functions, start: Start, hu: float, hco3: float, place: Place, step: Step
) -> Equilibrium:
    """Step until neither unknown moves; `hu` is hydrogen times the coefficient of one charge."""
    strength, local = start
    sulfate = m.totals.sulfate
    furthest = 1.0
    for count in range(MOST_STEPS):
        h, hco3 = place(local, hu, hco3)
        species = evaluate(local.carbonate, local.sulfates, local.acids, m.totals, h, hco3, sulfate)
        dx, dy, along = step(species)
        if _moves(dx):
            dx = _limited(dx, LONGEST_STEP * SHRINKING ** max(0, count - PATIENCE), xp)
            dy = dy + along * dx
        before, furthest = furthest, max(_greatest(dx), _greatest(dy))
        left = furthest * min(1.0, furthest / (before + 1e-300))
        if left < TOLERANCE and _greatest(species.strength - strength) < STRENGTH_TOLERANCE:
            break
        hu, hco3 = _grown(hu, dx), _grown(hco3, _limited(dy, LONGEST_STEP, xp))
        strength = xp.maximum(
            species.strength + species.strength_x * dx + species.strength_y * dy,
            0.1 * species.strength,
        )
        sulfate = species.sulfate
        local = constants_at(m, strength, xp)
    else:
        raise NotSolved(MOST_STEPS, furthest)
    local = constants_at(m, species.strength, xp)
    h, hco3 = place(local, _grown(hu, dx), _grown(hco3, dy))
    k1, k2 = local.carbonate.k1, local.carbonate.k2
    return Equilibrium(
        h,
        hco3,
        hco3 * h / k1,
        hco3 * k2 / h,
        species.alkalinity + species.alkalinity_x * dx + species.alkalinity_y * dy,
        species.carbon + species.carbon_x * dx + species.carbon_y * dy,
        species,
    )


def _moves(step: Any) -> bool:
    """Tell whether a step is one at all: the pH that was given stays."""
    return not isinstance(step, float) or step != 0.0


def _limited(step: float, longest: float, xp: Functions) -> float:
    return xp.maximum(xp.minimum(step, longest), -longest) if _moves(step) else step


def _grown(value: float, step: float) -> float:
    """Grow a positive value by about ``exp(step)``, in a rational form good for small steps."""
    return value * (2.0 + step) / (2.0 - step) if _moves(step) else value


def lacking(wanted: float, present: float) -> float:
    """Difference of two positive amounts, damped as `present` times ln(wanted / present) is."""
    return 2.0 * present * (wanted - present) / (wanted + present)


def _greatest(step: Any) -> float:
    """Return the largest absolute element."""
    if isinstance(step, float):
        return abs(step)
    return float(abs(step).max())
