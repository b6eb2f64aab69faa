"""Given any two of pH, alkalinity, inorganic carbon and CO2 pressure: the rest.

Each pair of knowns is one function: what Newton's method has to meet, how hydrogen and
bicarbonate are placed at each step, and a first guess.
"""

from __future__ import annotations

from typing import Final

from core.water._elementwise import PLAIN, Functions, functions_for, smallest
from core.water.conditional import Conditional
from core.water.constants import LN10
from core.water.errors import ImpossibleWater
from core.water.medium import Local, Medium, constants_at, first_strength, henry
from core.water.newton import Equilibrium, Place, Start, iterate, lacking
from core.water.speciation import Species, Totals

NO_CARBON: Final = 1e-12
"""Inorganic carbon of a water said to hold none. [mol/kg]"""


def from_alkalinity_and_carbon(m: Medium, alkalinity: float, carbon: float) -> Equilibrium:
    """Solve a closed water for its pH. [eq/kg], [mol/kg]."""
    xp = _functions(m, alkalinity, carbon)
    carbon = xp.maximum(carbon, NO_CARBON)

    def step(s: Species) -> tuple[float, float, float]:
        dy = lacking(carbon, s.carbon) / s.carbon_y
        along = -s.carbon_x / s.carbon_y  # keeps the carbon while hydrogen moves
        missing = alkalinity - s.alkalinity - s.alkalinity_y * dy
        return missing / (s.alkalinity_x + s.alkalinity_y * along), dy, along

    start = _start(m, alkalinity, xp)
    k = start.local
    h, hco3 = _closed_guess(k.carbonate, m.totals, alkalinity, carbon, xp)
    return iterate(m, xp, start, h * k.u, hco3, _closed, step)


def from_alkalinity_and_pressure(m: Medium, alkalinity: float, pressure: float) -> Equilibrium:
    """Solve a water that stands in air of a CO2 pressure. [eq/kg], [atm]."""
    xp = _functions(m, alkalinity, pressure)
    co2 = pressure * henry(m.temperature, m.salinity)

    def step(s: Species) -> tuple[float, float, float]:
        return (alkalinity - s.alkalinity) / (s.alkalinity_x - s.alkalinity_y), 0.0, -1.0

    start = _start(m, alkalinity, xp)
    k = start.local
    # hydrogen h² + alkalinity h = k1 co2 (1 + 2 k2 / h) + water, carbonate left out at first.
    c = k.carbonate
    paired, k2 = _paired(c, m.totals)
    k1 = c.k1 * paired
    without = _positive_root(c.hydrogen, alkalinity, k1 * co2 + c.water, xp)
    bases = k1 * co2 * (1.0 + 2.0 * k2 / without) + c.water
    h = _positive_root(c.hydrogen, alkalinity, bases, xp)
    return iterate(m, xp, start, h * k.u, 0.0, _in_air(co2), step)


def from_ph_and_alkalinity(m: Medium, ph: float, alkalinity: float) -> Equilibrium:
    """Solve for the carbon that a pH and an alkalinity imply. [eq/kg].

    Raises
    ------
    ImpossibleWater
        If hydroxide and the other bases alone are more than the alkalinity. In arrays such
        elements get next to no carbon instead.
    """
    xp = _functions(m, ph, alkalinity)
    h = xp.exp(-LN10 * ph)

    def step(s: Species) -> tuple[float, float, float]:
        wanted = alkalinity - s.alkalinity + s.carbonate_alkalinity
        if xp is PLAIN and wanted <= 0.0:
            raise ImpossibleWater("no_carbon", ph=ph, alkalinity_meq_kg=1000.0 * alkalinity)
        wanted = xp.maximum(wanted, NO_CARBON)
        return 0.0, lacking(wanted, s.carbonate_alkalinity) / s.alkalinity_y, 0.0

    start = _start(m, alkalinity, xp)
    k = start.local
    c = k.carbonate
    wanted = xp.maximum(alkalinity - c.water / h + c.hydrogen * h, 1e-7)
    return iterate(m, xp, start, h, wanted * h / (h + 2.0 * c.k2), _at(h), step)


def from_ph_and_carbon(m: Medium, ph: float, carbon: float) -> Equilibrium:
    """Solve for the alkalinity that a pH and an inorganic carbon imply. [mol/kg]."""
    xp = _functions(m, ph, carbon)
    carbon = xp.maximum(carbon, NO_CARBON)
    h = xp.exp(-LN10 * ph)

    def step(s: Species) -> tuple[float, float, float]:
        return 0.0, lacking(carbon, s.carbon) / s.carbon_y, 0.0

    start = _start(m, carbon, xp)
    k = start.local
    c = k.carbonate
    return iterate(m, xp, start, h, carbon / (1.0 + h / c.k1 + c.k2 / h), _at(h), step)


def from_ph_and_pressure(m: Medium, ph: float, pressure: float) -> Equilibrium:
    """Solve for alkalinity and carbon of a water of this pH in air of a CO2 pressure. [atm]."""
    xp = _functions(m, ph, pressure)
    co2 = pressure * henry(m.temperature, m.salinity)
    h = xp.exp(-LN10 * ph)

    def step(s: Species) -> tuple[float, float, float]:
        return 0.0, lacking(co2, s.co2) / s.co2, 0.0

    start = _start(m, 0.0, xp)
    k = start.local
    return iterate(m, xp, start, h, co2 * k.carbonate.k1 / h, _at(h), step)


def from_carbon_and_pressure(m: Medium, carbon: float, pressure: float) -> Equilibrium:
    """Solve for pH and alkalinity from inorganic carbon and CO2 pressure. [mol/kg], [atm].

    Raises
    ------
    ImpossibleWater
        If the dissolved CO2 of that pressure alone is more than the carbon.
    """
    xp = _functions(m, carbon, pressure)
    co2 = pressure * henry(m.temperature, m.salinity)
    rest = carbon - co2
    if smallest(rest) <= 0.0:
        raise ImpossibleWater("carbon_dioxide", carbon_mmol_kg=1000.0 * smallest(carbon))

    def step(s: Species) -> tuple[float, float, float]:
        return lacking(carbon, s.carbon) / (s.carbon_x - s.carbon_y), 0.0, -1.0

    start = _start(m, carbon, xp)
    k = start.local
    c = k.carbonate
    # rest = k1 co2 / h + k1 k2 co2 / h²
    h = _positive_root(rest, -c.k1 * co2, c.k1 * c.k2 * co2, xp)
    return iterate(m, xp, start, h * k.u, 0.0, _in_air(co2), step)


def _closed(k: Local, hu: float, hco3: float) -> tuple[float, float]:
    return hu / k.u, hco3


def _at(h: float) -> Place:
    """Keep the pH."""

    def place(_: Local, __: float, hco3: float) -> tuple[float, float]:
        return h, hco3

    return place


def _in_air(co2: float) -> Place:
    """Place bicarbonate so that CO2 is what the air holds in solution."""

    def place(k: Local, hu: float, _: float) -> tuple[float, float]:
        h = hu / k.u
        return h, co2 * k.carbonate.k1 / h

    return place


def _start(m: Medium, alkalinity: float, xp: Functions) -> Start:
    """First ionic strength and the constants there, for a first guess."""
    strength = first_strength(m.totals, alkalinity, xp)
    return Start(strength, constants_at(m, strength, xp))


def _functions(m: Medium, *known: float) -> Functions:
    return functions_for(*known) if m.xp is PLAIN else m.xp


def _positive_root(a: float, b: float, c: float, xp: Functions) -> float:
    """Positive root of ``a h² + b h - c = 0`` for positive a and c, without cancellation."""
    larger = xp.maximum(b, -b) + xp.sqrt(b * b + 4.0 * a * c)
    return xp.where(b > 0.0, 2.0 * c / larger, larger / (2.0 * a))


def _paired(k: Conditional, t: Totals) -> tuple[float, float]:
    """Bicarbonate with its pairs per free one, and k2 of both with theirs, of free metals."""
    paired = 1.0 + k.ca_hco3 * t.calcium + k.mg_hco3 * t.magnesium
    return paired, k.k2 * (1.0 + k.ca_co3 * t.calcium + k.mg_co3 * t.magnesium) / paired


def _closed_guess(
    k: Conditional, t: Totals, alkalinity: float, carbon: float, xp: Functions
) -> tuple[float, float]:
    """First hydrogen and bicarbonate from alkalinity and carbon, as if all metals were free.

    Bicarbonate is about the lesser of the alkalinity and what carbonate leaves of it, with floors
    where strong acid or hydroxide rules; then carbon less alkalinity is
    ``CO2 + H+ - CO3-- - OH-``, a quadratic in h.
    """
    paired, k2 = _paired(k, t)
    k1 = k.k1 * paired
    acid = k1 * carbon / (xp.maximum(-alkalinity, 0.0) + xp.sqrt(k1 * carbon))
    base = carbon * k.water / k2
    alkaline = base / (xp.maximum(alkalinity - 2.0 * carbon, 0.0) + xp.sqrt(base))
    floor = xp.minimum(xp.where(alkalinity < carbon, acid, alkaline), carbon)
    hco3 = xp.maximum(xp.minimum(alkalinity, 2.0 * carbon - alkalinity), floor)
    h = _positive_root(hco3 / k1 + k.hydrogen, alkalinity - carbon, hco3 * k2 + k.water, xp)
    return h, hco3 / paired
