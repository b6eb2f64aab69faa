"""What stays the same while one water is solved, and its constants at an ionic strength."""

from __future__ import annotations

from typing import NamedTuple

from core.water._elementwise import PLAIN_TYPES, Functions, functions_for
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
    AcidConstants,
    CarbonateConstants,
    SulfateConstants,
    acid_constants,
    carbonate_constants,
    debye_hueckel,
    fresh_constant,
    sulfate_constants,
)
from core.water.ph_scales import BLEND_FROM, sea_share
from core.water.sea_constants import ln_henry, ln_sea_constants
from core.water.speciation import Totals, absent


class Medium(NamedTuple):
    """What does not change while one water is solved."""

    totals: Totals
    temperature: float
    salinity: float
    debye: tuple[float, float]
    carbonate: CarbonateConstants
    sulfates: SulfateConstants | None
    acids: AcidConstants | None
    sea: Local | None
    share: float
    xp: Functions


class Local(NamedTuple):
    """The activity coefficient of one charge and the conditional constants of one step."""

    u: float
    carbonate: Conditional
    sulfates: Sulfates | None
    acids: Acids | None


def medium(totals: Totals, temperature: float, salinity: float = 0.0) -> Medium:
    """Prepare the constants of a water; `salinity` is the practical one, of its sea salt."""
    xp = functions_for(temperature, salinity, *totals)
    minor = any(not absent(total) for total in totals[6:])
    in_sea = not (isinstance(salinity, PLAIN_TYPES) and salinity <= BLEND_FROM)
    return Medium(
        totals,
        temperature,
        salinity,
        debye_hueckel(temperature),
        carbonate_constants(temperature),
        None if absent(totals.sulfate) else sulfate_constants(temperature),
        acid_constants(temperature) if minor else None,
        _sea(temperature, salinity, minor=minor) if in_sea else None,
        sea_share(salinity) if in_sea else 0.0,
        xp,
    )


def _sea(temperature: float, salinity: float, *, minor: bool) -> Local:
    """Constants of sea water: its salinity says all of its ionic strength."""
    ln, xp = ln_sea_constants(temperature, salinity), functions_for(temperature, salinity)
    return Local(1.0, sea_carbonate(ln, xp), None, sea_acids(ln, xp) if minor else None)


def constants_at(m: Medium, strength: float, xp: Functions) -> Local:
    """Conditional constants at an ionic strength. [mol/kg]."""
    if m.sea is not None and isinstance(m.share, float) and m.share == 1.0:
        return m.sea
    u = activity_coefficient(*m.debye, strength, xp)
    carbonate = fresh_carbonate(m.carbonate, u, strength)
    sulfates = None if m.sulfates is None else fresh_sulfates(m.sulfates, u, strength)
    acids = None if m.acids is None else fresh_acids(m.acids, u)
    if m.sea is not None:
        carbonate = blend_carbonate(carbonate, m.sea.carbonate, m.share, xp)
        sulfates = sulfates and blend_sulfates(sulfates, m.share)
        acids = acids and m.sea.acids and blend_acids(acids, m.sea.acids, m.share, xp)
    return Local(u, carbonate, sulfates, acids)


def first_strength(t: Totals, alkalinity: float, xp: Functions) -> float:
    """Ionic strength with all divalent ions free and the alkalinity as bicarbonate. [mol/kg]."""
    return 2.0 * (t.calcium + t.magnesium + t.sulfate) + 0.5 * (
        t.sodium + t.potassium + t.anions + xp.maximum(alkalinity, 1e-7)
    )


def henry(temperature: float, salinity: float) -> float:
    """Solubility of CO2. [°C], [practical salinity of sea salt], [mol/kg/atm].

    In fresh water Plummer & Busenberg (1982) without salting out (under 1 % up to 5 g/kg); in the
    sea Weiss (1974).
    """
    solubility = fresh_constant("henry", temperature)
    if isinstance(salinity, PLAIN_TYPES) and salinity <= BLEND_FROM:
        return solubility
    xp = functions_for(temperature, salinity)
    sea = xp.exp(ln_henry(temperature, salinity))
    return weighted_mean(solubility, sea, sea_share(salinity), xp)
