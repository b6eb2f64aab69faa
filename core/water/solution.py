"""A solved water: pH, carbon dioxide, species and saturation, in a keeper's units."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Final

from core.water import equilibrium as eq
from core.water._elementwise import PLAIN, functions_for, is_array, require
from core.water.ammonia import un_ionised_ammonia_n
from core.water.atoms import molar_mass
from core.water.density import practical_from_grams
from core.water.medium import Medium, henry, medium
from core.water.newton import Equilibrium
from core.water.ph_scales import hydrogen_activity_per_total
from core.water.speciation import Totals
from core.water.water import Water

BLOCK: Final = 8192
"""Elements of an array that are solved together: few enough to stay in the processor's cache."""

MOST_PRESSURE: Final = 1e6
"""Of CO2, that of pure gas at one atmosphere. [µatm]"""


@dataclass(frozen=True, slots=True)
class Solution:
    """What a water holds at equilibrium.

    Attributes
    ----------
    water : Water
        The water itself; where carbon or alkalinity was what was sought, with that filled in.
    hydrogen : float
        Activity of hydrogen as a meter reads it.
    co2, hco3, co3, calcium, magnesium : float
        Free concentrations; in the sea's formulas pairs are counted as free. [mol/kg]
    ionic_strength : float
        Of all ions, pairs counted as they are. [mol/kg]
    """

    water: Water
    hydrogen: float
    co2: float
    hco3: float
    co3: float
    calcium: float
    magnesium: float
    ionic_strength: float

    @property
    def ph(self) -> float:
        """PH as a kit or meter (calibrated in ordinary buffers) reads it."""
        return -functions_for(self.hydrogen).log10(self.hydrogen)

    @property
    def ph_total(self) -> float:
        """PH on the oceanographers' total scale; for sea water only."""
        factor = hydrogen_activity_per_total(
            self.water.temperature, practical_from_grams(self.water.salinity)
        )
        return self.ph + functions_for(factor).log10(factor)

    @property
    def co2_mg_l(self) -> float:
        """Dissolved carbon dioxide. [mg/L]."""
        return 1000.0 * self.co2 * molar_mass("CO2") * self.water.density

    @property
    def pco2(self) -> float:
        """Pressure of carbon dioxide that this water is in balance with. [µatm]."""
        return (
            1e6
            * self.co2
            / henry(self.water.temperature, practical_from_grams(self.water.salinity))
        )

    @property
    def nh3_n(self) -> float:
        """Un-ionised ammonia, by the formulas of `core.water.ammonia`. [mg/L as N]."""
        water = self.water
        return un_ionised_ammonia_n(
            water.mg_l("ammonia"), self.ph, water.temperature, water.salinity
        )


def solve(water: Water) -> Solution:
    """Solve a water as it is, closed: from its alkalinity and inorganic carbon.

    Parameters
    ----------
    water : Water
        Any; arrays give arrays.

    Returns
    -------
    Solution
        With `water` unchanged.

    Raises
    ------
    NotSolved
        If Newton's method does not arrive; no water is known for which it happens.
    """
    return _solve(
        water, eq.from_alkalinity_and_carbon, water.alkalinity / 1000.0, water.carbon / 1000.0, ()
    )


def with_ph(water: Water, ph: float) -> Solution:
    """Find the inorganic carbon that a pH reading and the water's alkalinity imply.

    Parameters
    ----------
    water : Water
        Its carbon is ignored.
    ph : float
        As a meter reads it, 2 to 12.

    Returns
    -------
    Solution
        With the carbon in its `water`.

    Raises
    ------
    OutOfRange
        If the pH is out of range or not finite.
    ImpossibleWater
        If no carbon fits (plain numbers only; elements of arrays get next to none).
    """
    require("pH", ph, 2.0, 12.0)
    return _solve(water, eq.from_ph_and_alkalinity, ph, water.alkalinity / 1000.0, ("carbon",))


def in_air(water: Water, pco2: float) -> Solution:
    """Find the inorganic carbon of a water that stands in air of a CO2 pressure.

    Parameters
    ----------
    water : Water
        Its carbon is ignored.
    pco2 : float
        Pressure of carbon dioxide: about 420 outdoors, 600 to 2000 in rooms and stocked tanks;
        up to 1e6. [µatm]

    Returns
    -------
    Solution
        With the carbon in its `water`.

    Raises
    ------
    OutOfRange
        If the pressure is not over 0.01 µatm and up to 1e6, or not finite.
    """
    require("CO2 pressure", pco2, 0.01, MOST_PRESSURE, "µatm")
    return _solve(
        water, eq.from_alkalinity_and_pressure, water.alkalinity / 1000.0, 1e-6 * pco2, ("carbon",)
    )


def with_ph_and_pressure(water: Water, ph: float, pco2: float) -> Solution:
    """Find alkalinity and carbon of a water from its pH and CO2 pressure. [µatm].

    The alkalinity and carbon of `water` are ignored; ranges as in `with_ph` and `in_air`.
    """
    require("pH", ph, 2.0, 12.0)
    require("CO2 pressure", pco2, 0.01, MOST_PRESSURE, "µatm")
    return _solve(water, eq.from_ph_and_pressure, ph, 1e-6 * pco2, ("alkalinity", "carbon"))


def with_ph_and_carbon(water: Water, ph: float) -> Solution:
    """Find the alkalinity that a pH and the water's inorganic carbon imply.

    The alkalinity of `water` is ignored; pH ranges as in `with_ph`.
    """
    require("pH", ph, 2.0, 12.0)
    return _solve(water, eq.from_ph_and_carbon, ph, water.carbon / 1000.0, ("alkalinity",))


def with_carbon_in_air(water: Water, pco2: float) -> Solution:
    """Find the alkalinity of a water from its inorganic carbon and CO2 pressure. [µatm].

    The alkalinity of `water` is ignored.

    Raises
    ------
    OutOfRange
        As `in_air`.
    ImpossibleWater
        If the dissolved CO2 alone is more than the carbon.
    """
    require("CO2 pressure", pco2, 0.01, MOST_PRESSURE, "µatm")
    return _solve(
        water, eq.from_carbon_and_pressure, water.carbon / 1000.0, 1e-6 * pco2, ("alkalinity",)
    )


_Solver = Callable[[Medium, float, float], Equilibrium]


def _solve(
    water: Water, solver: _Solver, first: float, second: float, sought: tuple[str, ...]
) -> Solution:
    """Solve and fill in what was sought; what was given stays as it was, to the last digit."""
    inputs = (*_totals(water), water.temperature, water.salinity, first, second)
    plain = functions_for(*inputs) is PLAIN
    found = _one_block(solver, inputs) if plain else _in_blocks(solver, inputs)
    alkalinity, carbon, *species = found
    if "alkalinity" in sought:
        water = water.changed(alkalinity=1000.0 * alkalinity)
    if "carbon" in sought:
        water = water.changed(carbon=1000.0 * carbon)
    return Solution(water, *species)


def _one_block(solver: _Solver, inputs: tuple[Any, ...]) -> tuple[Any, ...]:
    *totals, temperature, salinity, first, second = inputs
    m = medium(Totals._make(totals), temperature, practical_from_grams(salinity))
    found = solver(m, first, second)
    s = found.species
    return (
        found.alkalinity, found.carbon, found.h, found.co2, found.hco3, found.co3, s.calcium,
        s.magnesium, s.strength,
    )  # fmt: skip


def _in_blocks(solver: _Solver, inputs: tuple[Any, ...]) -> tuple[Any, ...]:
    """Solve arrays, large ones block by block, so that what is at work fits the cache."""
    import numpy  # only where there are arrays

    shape = numpy.broadcast_shapes(*(value.shape for value in inputs if is_array(value)))
    size = math.prod(shape)
    if size <= BLOCK:
        solved = _one_block(solver, inputs)
        return tuple(
            one if is_array(one) and one.shape == shape else numpy.broadcast_to(one, shape).copy()
            for one in solved
        )
    flat = [
        numpy.broadcast_to(value, shape).ravel() if is_array(value) else value for value in inputs
    ]
    found = [numpy.empty(size) for _ in range(9)]
    for start in range(0, size, BLOCK):
        part = slice(start, start + BLOCK)
        block = tuple(value[part] if is_array(value) else value for value in flat)
        for whole, solved in zip(found, _one_block(solver, block), strict=True):
            whole[part] = solved
    return tuple(whole.reshape(shape) for whole in found)


def _totals(water: Water) -> Totals:
    """Totals that speciation works on. [mol/kg]."""
    anions = water.chloride + water.nitrate + water.nitrite + 4.0 * water.thiosulfate
    return Totals(
        0.001 * water.calcium,
        0.001 * water.magnesium,
        0.001 * water.sodium,
        0.001 * water.potassium,
        0.001 * water.sulfate,
        0.001 * anions,
        0.001 * water.ammonia,
        0.001 * water.phosphate,
        0.001 * water.borate,
        0.001 * water.organic,
    )
