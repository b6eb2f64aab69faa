"""Calcite and aragonite: saturation, and where a water ends that stands over them.

Crushed coral, shells and aragonite sand are aragonite with some calcite; limestone is calcite.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any, Final, Literal

from core.water._elementwise import PLAIN_TYPES, functions_for, largest
from core.water.conditional import ION_SIZE, weighted_mean
from core.water.constants import debye_hueckel, fresh_constant
from core.water.density import practical_from_grams
from core.water.ph_scales import BLEND_FROM, sea_share
from core.water.sea_constants import ln_sea_constants
from core.water.solution import Solution, in_air, solve
from core.water.water import Water

Mineral = Literal["calcite", "aragonite"]

LN10: Final = 2.302585092994046
MOST_DISSOLVED: Final = 50.0
"""More calcium carbonate than this never dissolves in tank water. [mmol/kg]"""

NEAR_ENOUGH: Final = 1e-7
"""Of the saturation index."""

MOST_STEPS: Final = 60


def saturation_index(solution: Solution, mineral: Mineral = "calcite") -> float:
    """Saturation index of a solved water.

    Parameters
    ----------
    solution : Solution
        From `solve`, `in_air` and the like.
    mineral : {"calcite", "aragonite"}, optional
        Which form of calcium carbonate.

    Returns
    -------
    float
        log10 of the ion activity product over the solubility product: 0 at saturation, negative
        where the mineral dissolves, minus infinity (a large negative number) without calcium.

    Notes
    -----
    Fresh water: Plummer & Busenberg 1982; sea water: Mucci 1983; between 5 and 15 g/kg of sea
    salt a blend of the logarithms.

    Examples
    --------
    >>> from core.water.water import Water
    >>> tap = Water.from_readings(ph=7.6, kh=8.0, gh=12.0, temperature=15.0)
    >>> round(saturation_index(solve(tap)), 1)
    0.1
    """
    xp = functions_for(solution.co3, solution.calcium, solution.water.temperature)
    product = xp.maximum(solution.calcium, 1e-12) * solution.co3
    return xp.log10(product / solubility_product(solution, mineral))


def saturation(solution: Solution, mineral: Mineral = "aragonite") -> float:
    """Saturation state Ω, the saturation index as a ratio, as reef keepers know it."""
    index = saturation_index(solution, mineral)
    return functions_for(index).exp(LN10 * index)


def solubility_product(solution: Solution, mineral: Mineral) -> float:
    """Solubility product in free concentrations, at this water's ionic strength. [(mol/kg)²]."""
    water = solution.water
    strength, practical = solution.ionic_strength, practical_from_grams(water.salinity)
    xp = functions_for(strength, water.temperature, practical)
    a, b = debye_hueckel(water.temperature)
    root = xp.sqrt(strength)
    fresh = fresh_constant(mineral, water.temperature) * xp.exp(
        8.0 * a * root / (1.0 + ION_SIZE * b * root)
    )
    if isinstance(practical, PLAIN_TYPES) and practical <= BLEND_FROM:
        return fresh
    ln_sea: float = getattr(ln_sea_constants(water.temperature, practical), mineral)
    return weighted_mean(fresh, xp.exp(ln_sea), sea_share(practical), xp)


@dataclass(frozen=True, slots=True)
class Rest:
    """Where a water comes to rest over a mineral.

    Attributes
    ----------
    solution : Solution
        The water at its end.
    dissolved : float
        Calcium carbonate that went into solution; negative where it came out. [mmol/kg]
    """

    solution: Solution
    dissolved: float


def rest_on_mineral(
    water: Water,
    mineral: Mineral = "aragonite",
    pco2: float | None = None,
    *,
    precipitates: bool = False,
) -> Rest:
    """Find where a water ends that stands over calcium carbonate long enough.

    Parameters
    ----------
    water : Water
        The water at the start.
    mineral : {"calcite", "aragonite"}, optional
        Coral and shells are aragonite, limestone is calcite.
    pco2 : float, optional
        Carbon dioxide of the air it stays in balance with; None for water shut off from air.
        [µatm]
    precipitates : bool, optional
        Whether a water over saturation drops to it. In tanks it hardly ever does (magnesium,
        phosphate and organics hold it up: common practice, no source), so by default such a water
        stays as it is and nothing dissolves.

    Returns
    -------
    Rest
        The water at its end and what dissolved; 0 where the medium does nothing.

    Raises
    ------
    OutOfRange
        If the CO2 pressure is out of range.

    Notes
    -----
    Each mole of CaCO3 adds two equivalents of alkalinity, one mole of calcium and, shut off from
    air, one of carbon; the end is where the saturation index is zero.

    Examples
    --------
    >>> soft = Water.from_readings(ph=6.5, kh=1.0, gh=2.0, temperature=25.0)
    >>> end = rest_on_mineral(soft, "aragonite", pco2=1000.0)
    >>> end.dissolved > 0.2
    True
    """

    def index(amount: float) -> tuple[float, Solution]:
        dosed = replace(
            water,
            alkalinity=water.alkalinity + 2.0 * amount,
            carbon=water.carbon + amount,
            calcium=water.calcium + amount,
        )
        solved = solve(dosed) if pco2 is None else in_air(dosed, pco2)
        return saturation_index(solved, mineral), solved

    low, high = _bounds(water, precipitates)

    def amount(x: float) -> float:
        # The index rises like a logarithm; against the cube root it is nearly straight.
        return low + (high - low) * x * x * x

    dissolved = amount(_zero_of(lambda x: index(amount(x))[0], 0.0 * low, 1.0 + 0.0 * high))
    return Rest(index(dissolved)[1], dissolved)


def _bounds(water: Water, precipitates: bool) -> tuple[float, float]:
    """Least and most that can dissolve. [mmol/kg]."""
    xp = functions_for(water.alkalinity, water.carbon, water.calcium, water.temperature)
    shape = 0.0 * (water.alkalinity + water.carbon + water.calcium + water.temperature)
    if not precipitates:
        return shape, MOST_DISSOLVED + shape
    least = xp.minimum(water.calcium, 0.5 * xp.maximum(water.alkalinity, 0.0) + shape)
    return -0.999 * xp.minimum(least, water.carbon), MOST_DISSOLVED + shape


def _zero_of(index: Callable[[float], float], low: float, high: float) -> float:
    """Find where a rising index is zero, by regula falsi with the Illinois halving.

    Where it is over zero at `low` already, that is the answer. Element by element for arrays.
    """
    at_low, at_high = index(low), index(high)
    xp = functions_for(at_low, at_high)
    done: Any = at_low >= 0.0
    x, last = low, 0.0 * at_low
    for _ in range(MOST_STEPS):
        share = at_low / (at_low - at_high)
        x = xp.where(done, low, low + xp.minimum(xp.maximum(share, 0.0), 1.0) * (high - low))
        at_x = xp.where(done, 0.0, index(x))
        if largest(xp.maximum(at_x, -at_x)) < NEAR_ENOUGH:
            break
        # An end that stays twice running loses half its weight, so that both close in.
        side = xp.where(at_x < 0.0, -1.0, 1.0)
        again = xp.where(side == last, 0.5, 1.0)
        under: Any = side < 0.0
        low, at_low, high, at_high, last = (
            xp.where(under, x, low),
            xp.where(under, at_x, again * at_low),
            xp.where(under, high, x),
            xp.where(under, again * at_high, at_x),
            side,
        )
    return x
