"""Equilibrium constants of fresh water at zero ionic strength: one table, each with its source.

``log10 K = a + b T + c / T + d log10 T + e / T²`` with T in kelvin, concentrations in mol/kg of
water, gases in atm. The tests hold every row to PHREEQC's own database and to the printed value
at 25 °C where the source prints one.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final, NamedTuple

from core.water._elementwise import functions_for, remembering
from core.water.ph_scales import KELVIN

LN10: Final = math.log(10.0)
_PER_KCAL: Final = 1.0 / (0.0019872 * LN10)
"""Reaction enthalpy in kcal/mol to -c of the table: van 't Hoff with R = 1.9872 cal/(mol K)."""


@dataclass(frozen=True, slots=True)
class Constant:
    """One equilibrium constant with temperature, and where it comes from."""

    reaction: str
    source: str
    a: float
    b: float = 0.0
    c: float = 0.0
    d: float = 0.0
    e: float = 0.0

    def ln(self, kelvin: float, ln_kelvin: float) -> float:
        """Natural logarithm of the constant; `ln_kelvin` is passed since rows share it."""
        value = self.a + self.c / kelvin
        if self.b:
            value = value + self.b * kelvin
        if self.d:
            value = value + self.d / LN10 * ln_kelvin
        if self.e:
            value = value + self.e / (kelvin * kelvin)
        return LN10 * value


def _van_t_hoff(reaction: str, source: str, log_k: float, kcal: float) -> Constant:
    """Constant from its value at 25 °C and its reaction enthalpy. [kcal/mol]."""
    slope = kcal * _PER_KCAL
    return Constant(reaction, source, a=log_k + slope / 298.15, c=-slope)


PLUMMER: Final = (
    "Plummer & Busenberg 1982, Geochim. Cosmochim. Acta 46:1011-1040, abstract (grade A)"
)
NORDSTROM: Final = (
    "Nordstrom et al. 1990, ACS Symp. Ser. 416, ch. 31, as in the USGS database phreeqc.dat "
    "(database read; the chapter from memory)"
)
DATABASE: Final = "USGS database phreeqc.dat (Parkhurst & Appelo 2013, USGS TM 6-A43)"
EMERSON: Final = (
    "Emerson et al. 1975, J. Fish. Res. Board Can. 32:2379-2383, as reproduced (grade B)"
)

FRESH_CONSTANTS: Final[Mapping[str, Constant]] = MappingProxyType(
    {
        "henry": Constant(
            "CO2(g) = CO2", PLUMMER, 108.3865, 0.01985076, -6919.53, -40.45154, 669365.0
        ),
        "k1": Constant(
            "CO2 + H2O = HCO3- + H+",
            PLUMMER, -356.3094, -0.06091964, 21834.37, 126.8339, -1684915.0,
        ),
        "k2": Constant(
            "HCO3- = CO3-- + H+",
            PLUMMER, -107.8871, -0.03252849, 5151.79, 38.92561, -563713.9,
        ),
        "water": Constant(
            "H2O = OH- + H+",
            NORDSTROM, -283.9710, -0.05069842, 13323.00, 102.24447, -1119669.0,
        ),
        "calcite": Constant(
            "CaCO3(calcite) = Ca++ + CO3--", PLUMMER, -171.9065, -0.077993, 2839.319, 71.595
        ),
        "aragonite": Constant(
            "CaCO3(aragonite) = Ca++ + CO3--", PLUMMER, -171.9773, -0.077993, 2903.293, 71.595
        ),
        "ca_hco3": Constant(
            "Ca++ + HCO3- = CaHCO3+", PLUMMER, 1209.120, 0.31294, -34765.05, -478.782
        ),
        "ca_co3": Constant(
            "Ca++ + CO3-- = CaCO3", PLUMMER, -1228.732, -0.299444, 35512.75, 485.818
        ),
        "mg_hco3": Constant(
            "Mg++ + HCO3- = MgHCO3+", NORDSTROM, -59.215, 0.0, 2537.455, 20.92298
        ),
        "mg_co3": Constant("Mg++ + CO3-- = MgCO3", NORDSTROM, 0.9910, 0.00667),
        "na_hco3": _van_t_hoff("Na+ + HCO3- = NaHCO3", DATABASE, -0.25, -1.0),
        "na_co3": _van_t_hoff("Na+ + CO3-- = NaCO3-", DATABASE, 1.27, 8.91),
        "ca_so4": _van_t_hoff("Ca++ + SO4-- = CaSO4", DATABASE, 2.25, 1.325),
        "mg_so4": _van_t_hoff("Mg++ + SO4-- = MgSO4", DATABASE, 2.37, 4.55),
        "na_so4": _van_t_hoff("Na+ + SO4-- = NaSO4-", DATABASE, 0.7, 1.12),
        "k_so4": Constant("K+ + SO4-- = KSO4-", DATABASE, 3.106, 0.0, -673.6),
        "ca_oh": Constant("Ca++ + H2O = CaOH+ + H+", DATABASE, -12.78),
        "mg_oh": _van_t_hoff("Mg++ + H2O = MgOH+ + H+", DATABASE, -11.44, 15.952),
        "hso4": Constant(
            "SO4-- + H+ = HSO4-", DATABASE, -56.889, 0.006473, 2307.9, 19.8858
        ),
        "ammonium": Constant("NH4+ = NH3 + H+", EMERSON, -0.09018, 0.0, -2729.92),
        "phosphoric_1": _van_t_hoff("H3PO4 = H2PO4- + H+", DATABASE, -2.168, -2.106),
        "phosphoric_2": _van_t_hoff("H2PO4- = HPO4-- + H+", DATABASE, -7.207, 0.99),
        "phosphoric_3": _van_t_hoff("HPO4-- = PO4--- + H+", DATABASE, -12.346, 3.53),
        "ca_hpo4": _van_t_hoff("Ca++ + HPO4-- = CaHPO4", DATABASE, 2.739, 3.3),
        "mg_hpo4": _van_t_hoff("Mg++ + HPO4-- = MgHPO4", DATABASE, 2.87, 3.3),
        "ca_h2po4": _van_t_hoff("Ca++ + H2PO4- = CaH2PO4+", DATABASE, 1.408, 3.4),
        "mg_h2po4": _van_t_hoff("Mg++ + H2PO4- = MgH2PO4+", DATABASE, 1.513, 3.4),
        "ca_po4": _van_t_hoff("Ca++ + PO4--- = CaPO4-", DATABASE, 6.459, 3.1),
        "mg_po4": _van_t_hoff("Mg++ + PO4--- = MgPO4-", DATABASE, 6.589, 3.1),
        "boric": _van_t_hoff("B(OH)3 + H2O = B(OH)4- + H+", DATABASE, -9.24, 3.224),
    }
)  # fmt: skip

ORGANIC_LOG_K: Final = -4.2
"""One weak acid for all humic and tannic ones: carboxyl pKa 3.8 to 4.4 (Chem. Biol. Technol.
Agric. 2021, s40538-021-00229-4, grade A); taken as a concentration constant at any temperature."""


class CarbonateConstants(NamedTuple):
    """Constants of the carbonate system and its pairs at one temperature, zero ionic strength."""

    k1: float
    k2: float
    water: float
    ca_hco3: float
    ca_co3: float
    ca_oh: float
    mg_hco3: float
    mg_co3: float
    mg_oh: float
    na_hco3: float
    na_co3: float


class SulfateConstants(NamedTuple):
    """Constants of sulfate's pairs at one temperature, zero ionic strength."""

    ca_so4: float
    mg_so4: float
    na_so4: float
    k_so4: float
    hso4: float


class AcidConstants(NamedTuple):
    """Constants of the minor acids at one temperature, zero ionic strength."""

    ammonium: float
    boric: float
    phosphoric_1: float
    phosphoric_2: float
    phosphoric_3: float
    ca_h2po4: float
    mg_h2po4: float
    ca_hpo4: float
    mg_hpo4: float
    ca_po4: float
    mg_po4: float


def fresh_constant(name: str, temperature: float) -> float:
    """One row of the table at a temperature. [°C]."""
    return _rows((name,), temperature)[0]


@remembering
def carbonate_constants(temperature: float) -> CarbonateConstants:
    """Constants of the carbonate system. [°C]."""
    return CarbonateConstants._make(_rows(CarbonateConstants._fields, temperature))


@remembering
def sulfate_constants(temperature: float) -> SulfateConstants:
    """Constants of sulfate's pairs. [°C]."""
    return SulfateConstants._make(_rows(SulfateConstants._fields, temperature))


@remembering
def acid_constants(temperature: float) -> AcidConstants:
    """Constants of the minor acids. [°C]."""
    return AcidConstants._make(_rows(AcidConstants._fields, temperature))


def _rows(names: tuple[str, ...], temperature: float) -> tuple[float, ...]:
    xp = functions_for(temperature)
    kelvin = temperature + KELVIN
    ln_kelvin = xp.log(kelvin)
    return tuple(xp.exp(FRESH_CONSTANTS[name].ln(kelvin, ln_kelvin)) for name in names)


@remembering
def debye_hueckel(temperature: float) -> tuple[float, float]:
    """Coefficients A (natural log, (kg/mol)^0.5) and B ((kg/mol)^0.5 per ångström) of water.

    From the dielectric constant of Malmberg & Maryott 1956, J. Res. NBS 56:1-8 (from memory), with
    ``A = 1.82483e6 ρ^0.5 / (εT)^1.5`` and ``B = 50.2916 ρ^0.5 / (εT)^0.5``; at 25 °C 0.511 (as
    decimal) and 0.329. The square root of the density in kg/L is within 0.4 % of one and left out.
    """
    celsius = temperature
    dielectric = 87.740 + celsius * (-0.40008 + celsius * (9.398e-4 - 1.410e-6 * celsius))
    product = dielectric * (celsius + KELVIN)
    root = functions_for(temperature).sqrt(product)
    return LN10 * 1.82483e6 / (product * root), 50.2916 / root
