"""Given any two of pH, alkalinity, inorganic carbon and CO2 pressure: the rest.

Newton's method in the logarithms of two unknowns: bicarbonate, and hydrogen times the activity
coefficient of one charge, since in these two the shares of CO2 and hydroxide do not depend on the
ionic strength. Ionic strength and free sulfate follow each step to first order. One code for
plain numbers and for arrays.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final, NamedTuple

from core.water._elementwise import PLAIN, Functions, functions_for, smallest
from core.water.conditional import (
    Acids,
    Conditional,
    Sulfates,
    activity_coefficient,
    blend_acids,
    blend_carbonate,
    blend_sulfates,
    fresh_acids,
    fresh_carbonate,
    fresh_sulfates,
    sea_acids,
    sea_carbonate,
    weighted_mean,
)
from core.water.constants import (
    LN10,
    AcidConstants,
    CarbonateConstants,
    SulfateConstants,
    debye_hueckel,
    fresh_constant,
    fresh_constants,
)
from core.water.errors import ImpossibleWater, NotSolved
from core.water.ph_scales import BLEND_FROM, sea_share
from core.water.sea_constants import LnSeaConstants, ln_henry, ln_sea_constants
from core.water.speciation import Species, Totals, absent, evaluate

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

NO_CARBON: Final = 1e-12
"""Inorganic carbon of a water said to hold none. [mol/kg]"""


class Medium(NamedTuple):
    """What does not change while one water is solved."""

    totals: Totals
    temperature: float
    salinity: float
    debye: tuple[float, float]
    carbonate: CarbonateConstants
    sulfates: SulfateConstants | None
    acids: AcidConstants | None
    sea: LnSeaConstants | None
    share: float
    xp: Functions


class Equilibrium(NamedTuple):
    """A solved water: hydrogen activity, carbonate species, totals, and the other species."""

    h: float
    hco3: float
    co2: float
    co3: float
    alkalinity: float
    carbon: float
    species: Species


class _Local(NamedTuple):
    """The activity coefficient of one charge and the conditional constants of one step."""

    u: float
    carbonate: Conditional
    sulfates: Sulfates | None
    acids: Acids | None


_Place = Callable[[_Local, float, float], tuple[float, float]]
"""From the constants and both unknowns: hydrogen and bicarbonate of this step."""

_Step = Callable[[Species], tuple[float, float, float]]
"""From an evaluation: the step of ln hydrogen; that of ln bicarbonate without one of hydrogen;
and how much more of it a step of hydrogen calls for."""


def medium(totals: Totals, temperature: float, salinity: float = 0.0) -> Medium:
    """Prepare the constants of a water; `salinity` is the practical one, of its sea salt."""
    xp = functions_for(temperature, salinity, *totals)
    minor = not all(absent(total) for total in totals[6:])
    in_sea = not (isinstance(salinity, float | int) and salinity <= BLEND_FROM)
    return Medium(
        totals,
        temperature,
        salinity,
        debye_hueckel(temperature),
        CarbonateConstants._make(fresh_constants(CarbonateConstants._fields, temperature)),
        None
        if absent(totals.sulfate)
        else SulfateConstants._make(fresh_constants(SulfateConstants._fields, temperature)),
        AcidConstants._make(fresh_constants(AcidConstants._fields, temperature)) if minor else None,
        ln_sea_constants(temperature, salinity) if in_sea else None,
        sea_share(salinity) if in_sea else 0.0,
        xp,
    )


def from_alkalinity_and_carbon(m: Medium, alkalinity: float, carbon: float) -> Equilibrium:
    """Solve a closed water for its pH. [eq/kg], [mol/kg]."""
    xp = _functions(m, alkalinity, carbon)
    carbon = xp.maximum(carbon, NO_CARBON)

    def step(s: Species) -> tuple[float, float, float]:
        dy = _lacking(carbon, s.carbon) / s.carbon_y
        along = -s.carbon_x / s.carbon_y  # keeps the carbon while hydrogen moves
        missing = alkalinity - s.alkalinity - s.alkalinity_y * dy
        return missing / (s.alkalinity_x + s.alkalinity_y * along), dy, along

    strength, k = _start(m, alkalinity, xp)
    h, hco3 = _closed_guess(k.carbonate, m.totals, alkalinity, carbon, xp)
    return _iterate(m, xp, strength, h * k.u, hco3, _closed, step)


def from_alkalinity_and_pressure(m: Medium, alkalinity: float, pressure: float) -> Equilibrium:
    """Solve a water that stands in air of a CO2 pressure. [eq/kg], [atm]."""
    xp = _functions(m, alkalinity, pressure)
    co2 = pressure * henry(m.temperature, m.salinity)

    def step(s: Species) -> tuple[float, float, float]:
        return (alkalinity - s.alkalinity) / (s.alkalinity_x - s.alkalinity_y), 0.0, 0.0

    strength, k = _start(m, alkalinity, xp)
    # Carbonate left out: hydrogen h² + alkalinity h = k1 co2 + water.
    c = k.carbonate
    h = _positive_root(c.hydrogen, alkalinity, c.k1 * co2 + c.water, xp)
    return _iterate(m, xp, strength, h * k.u, 0.0, _in_air(co2), step)


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
        return 0.0, _lacking(wanted, s.carbonate_alkalinity) / s.alkalinity_y, 0.0

    strength, k = _start(m, alkalinity, xp)
    c = k.carbonate
    wanted = xp.maximum(alkalinity - c.water / h + c.hydrogen * h, 1e-7)
    return _iterate(m, xp, strength, h, wanted * h / (h + 2.0 * c.k2), _at(h), step)


def from_ph_and_carbon(m: Medium, ph: float, carbon: float) -> Equilibrium:
    """Solve for the alkalinity that a pH and an inorganic carbon imply. [mol/kg]."""
    xp = _functions(m, ph, carbon)
    carbon = xp.maximum(carbon, NO_CARBON)
    h = xp.exp(-LN10 * ph)

    def step(s: Species) -> tuple[float, float, float]:
        return 0.0, _lacking(carbon, s.carbon) / s.carbon_y, 0.0

    strength, k = _start(m, carbon, xp)
    c = k.carbonate
    return _iterate(m, xp, strength, h, carbon / (1.0 + h / c.k1 + c.k2 / h), _at(h), step)


def from_ph_and_pressure(m: Medium, ph: float, pressure: float) -> Equilibrium:
    """Solve for alkalinity and carbon of a water of this pH in air of a CO2 pressure. [atm]."""
    xp = _functions(m, ph, pressure)
    co2 = pressure * henry(m.temperature, m.salinity)
    h = xp.exp(-LN10 * ph)

    def step(s: Species) -> tuple[float, float, float]:
        return 0.0, _lacking(co2, s.co2) / s.co2, 0.0

    strength, k = _start(m, 0.0, xp)
    return _iterate(m, xp, strength, h, co2 * k.carbonate.k1 / h, _at(h), step)


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
        return _lacking(carbon, s.carbon) / (s.carbon_x - s.carbon_y), 0.0, 0.0

    strength, k = _start(m, carbon, xp)
    c = k.carbonate
    # rest = k1 co2 / h + k1 k2 co2 / h²
    h = _positive_root(rest, -c.k1 * co2, c.k1 * c.k2 * co2, xp)
    return _iterate(m, xp, strength, h * k.u, 0.0, _in_air(co2), step)


def henry(temperature: float, salinity: float) -> float:
    """Solubility of CO2. [°C], [practical salinity of sea salt], [mol/kg/atm].

    In fresh water Plummer & Busenberg (1982) without salting out (under 1 % up to 5 g/kg); in the
    sea Weiss (1974).
    """
    solubility = fresh_constant("henry", temperature)
    if isinstance(salinity, float | int) and salinity <= BLEND_FROM:
        return solubility
    xp = functions_for(temperature, salinity)
    sea = xp.exp(ln_henry(temperature, salinity))
    return weighted_mean(solubility, sea, sea_share(salinity), xp)


def constants_at(m: Medium, strength: float, xp: Functions) -> _Local:
    """Conditional constants at an ionic strength. [mol/kg]."""
    if m.sea is not None and isinstance(m.share, float) and m.share == 1.0:
        acids = None if m.acids is None else sea_acids(m.sea, xp)
        return _Local(1.0, sea_carbonate(m.sea, xp), None, acids)
    u = activity_coefficient(*m.debye, strength, xp)
    carbonate = fresh_carbonate(m.carbonate, u, strength)
    sulfates = None if m.sulfates is None else fresh_sulfates(m.sulfates, u, strength)
    acids = None if m.acids is None else fresh_acids(m.acids, u)
    if m.sea is not None:
        carbonate = blend_carbonate(carbonate, sea_carbonate(m.sea, xp), m.share, xp)
        sulfates = sulfates and blend_sulfates(sulfates, m.share)
        acids = acids and blend_acids(acids, sea_acids(m.sea, xp), m.share, xp)
    return _Local(u, carbonate, sulfates, acids)


def _iterate(
    m: Medium, xp: Functions, strength: float, hu: float, hco3: float, place: _Place, step: _Step
) -> Equilibrium:
    """Step until neither unknown moves; `hu` is hydrogen times the coefficient of one charge."""
    sulfate = m.totals.sulfate
    furthest = 1.0
    for count in range(MOST_STEPS):
        local = constants_at(m, strength, xp)
        h, hco3 = place(local, hu, hco3)
        species = evaluate(local.carbonate, local.sulfates, local.acids, m.totals, h, hco3, sulfate)
        dx, dy, along = step(species)
        if _moves(dx):
            dx = _limited(dx, LONGEST_STEP * min(1.0, SHRINKING ** (count - PATIENCE)), xp)
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


def _closed(k: _Local, hu: float, hco3: float) -> tuple[float, float]:
    return hu / k.u, hco3


def _at(h: float) -> _Place:
    """Keep the pH."""

    def place(_: _Local, __: float, hco3: float) -> tuple[float, float]:
        return h, hco3

    return place


def _in_air(co2: float) -> _Place:
    """Place bicarbonate so that CO2 is what the air holds in solution."""

    def place(k: _Local, hu: float, _: float) -> tuple[float, float]:
        h = hu / k.u
        return h, co2 * k.carbonate.k1 / h

    return place


def _start(m: Medium, alkalinity: float, xp: Functions) -> tuple[float, _Local]:
    strength = _first_strength(m.totals, alkalinity, xp)
    return strength, constants_at(m, strength, xp)


def _moves(step: Any) -> bool:
    """Tell whether a step is one at all: the pH that was given stays."""
    return not isinstance(step, float) or step != 0.0


def _limited(step: float, longest: float, xp: Functions) -> float:
    return xp.maximum(xp.minimum(step, longest), -longest) if _moves(step) else step


def _grown(value: float, step: float) -> float:
    """Grow a positive value by about ``exp(step)``, in a rational form good for small steps."""
    return value * (2.0 + step) / (2.0 - step) if _moves(step) else value


def _lacking(wanted: float, present: float) -> float:
    """Difference of two positive amounts, damped as `present` times ln(wanted / present) is."""
    return 2.0 * present * (wanted - present) / (wanted + present)


def _functions(m: Medium, *known: float) -> Functions:
    return functions_for(*known) if m.xp is PLAIN else m.xp


def _greatest(step: Any) -> float:
    """Return the largest absolute element."""
    if isinstance(step, float):
        return abs(step)
    return float(max(step.max(), -step.min()))


def _first_strength(t: Totals, alkalinity: float, xp: Functions) -> float:
    """Ionic strength with all divalent ions free and the alkalinity as bicarbonate. [mol/kg]."""
    return 2.0 * (t.calcium + t.magnesium + t.sulfate) + 0.5 * (
        t.sodium + t.potassium + t.anions + xp.maximum(alkalinity, 1e-7)
    )


def _positive_root(a: float, b: float, c: float, xp: Functions) -> float:
    """Positive root of ``a h² + b h - c = 0`` for positive a and c, without cancellation."""
    larger = xp.maximum(b, -b) + xp.sqrt(b * b + 4.0 * a * c)
    return xp.where(b > 0.0, 2.0 * c / larger, larger / (2.0 * a))


def _closed_guess(
    k: Conditional, t: Totals, alkalinity: float, carbon: float, xp: Functions
) -> tuple[float, float]:
    """First hydrogen and bicarbonate from alkalinity and carbon, as if all metals were free.

    Bicarbonate is about the lesser of the alkalinity and what carbonate leaves of it, with floors
    where strong acid or hydroxide rules; then carbon less alkalinity is
    ``CO2 + H+ - CO3-- - OH-``, a quadratic in h.
    """
    paired = 1.0 + k.ca_hco3 * t.calcium + k.mg_hco3 * t.magnesium
    k1 = k.k1 * paired
    k2 = k.k2 * (1.0 + k.ca_co3 * t.calcium + k.mg_co3 * t.magnesium) / paired
    acid = k1 * carbon / (xp.maximum(-alkalinity, 0.0) + xp.sqrt(k1 * carbon))
    base = carbon * k.water / k2
    alkaline = base / (xp.maximum(alkalinity - 2.0 * carbon, 0.0) + xp.sqrt(base))
    floor = xp.minimum(xp.where(alkalinity < carbon, acid, alkaline), carbon)
    hco3 = xp.maximum(xp.minimum(alkalinity, 2.0 * carbon - alkalinity), floor)
    h = _positive_root(hco3 / k1 + k.hydrogen, alkalinity - carbon, hco3 * k2 + k.water, xp)
    return h, hco3 / paired
