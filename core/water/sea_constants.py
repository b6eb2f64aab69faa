"""Stoichiometric constants of sea water: total pH scale, mol per kg of sea water.

Here the pairing of ions is inside the constants, so they hold for water whose salts are those of
the sea. `salinity` is practical salinity; every formula returns a natural logarithm.
"""

from __future__ import annotations

import math
from typing import Final, NamedTuple

from core.water._elementwise import functions_for
from core.water.ammonia import ln_ammonium_constant
from core.water.ph_scales import (
    KELVIN,
    hydrogen_activity_per_total,
    ln_bisulfate_constant,
    ln_hydrogen_fluoride_constant,
    total_fluoride,
    total_sulfate,
)

LN10: Final = math.log(10.0)


class LnSeaConstants(NamedTuple):
    """Natural logarithms at one temperature and salinity, total scale."""

    hydrogen: float  # a(H+) as a meter reads it per total-scale hydrogen ion
    k1: float
    k2: float
    water: float
    boric: float
    ammonium: float
    phosphoric_1: float
    phosphoric_2: float
    phosphoric_3: float
    calcite: float
    aragonite: float


def ln_sea_constants(temperature: float, salinity: float) -> LnSeaConstants:
    """All constants of sea water.

    Parameters
    ----------
    temperature : float
        0 to 45. [°C]
    salinity : float
        Practical salinity, 1 to 50; the sources' common range is 5 to 42.

    Returns
    -------
    LnSeaConstants
        Natural logarithms, total scale, mol/kg of sea water, gases in atm.

    Notes
    -----
    Carbonic acid: Waters, Millero & Woosley 2014 [1]_, since it alone reaches from nearly fresh
    water to 50 and meets the fresh-water values at zero. Water: Millero 1995 [2]_. Boric acid:
    Dickson 1990 [3]_. Phosphoric acid: Yao & Millero 1995 [4]_. Ammonium: Clegg & Whitfield 1995
    [5]_. Calcite and aragonite: Mucci 1983 [6]_. Coefficients
    as in the open source of CO2SYS for Python, which the tests compare each of them with.

    References
    ----------
    .. [1] Mar. Chem. 165:66-67 (corrigendum). .. [2] Geochim. Cosmochim. Acta 59:661-677.
    .. [3] Deep-Sea Res. 37:755-766. .. [4] Aquat. Geochem. 1:53-88.
    .. [5] Geochim. Cosmochim. Acta 59:2403-2421. .. [6] Am. J. Sci. 283:780-799.
    """
    xp = functions_for(temperature, salinity)
    kelvin = temperature + KELVIN
    ln_t, root = xp.log(kelvin), xp.sqrt(salinity)
    # The sea-water scale of some sources counts hydrogen fluoride, the total scale does not.
    bisulfate = 1.0 + total_sulfate(salinity) / xp.exp(ln_bisulfate_constant(temperature, salinity))
    fluoride = total_fluoride(salinity) / xp.exp(
        ln_hydrogen_fluoride_constant(temperature, salinity)
    )
    to_total = xp.log(bisulfate / (bisulfate + fluoride))
    phosphoric = _phosphoric(kelvin, salinity, ln_t, root)
    return LnSeaConstants._make(
        (
            xp.log(hydrogen_activity_per_total(temperature, salinity)),
            *_carbonic(kelvin, salinity, ln_t, root),
            _water(kelvin, salinity, ln_t, root) + to_total,
            _boric(kelvin, salinity, ln_t, root),
            ln_ammonium_constant(temperature, salinity),
            *(constant + to_total for constant in phosphoric),
            *_calcium_carbonate(kelvin, salinity, ln_t, root),
        )
    )


def _carbonic(kelvin: float, salinity: float, ln_t: float, root: float) -> tuple[float, float]:
    pk1 = (
        -126.34048 + 13.568513 * root + 0.031645 * salinity - 5.3834e-5 * salinity**2
        + (6320.813 - 539.2304 * root - 5.635 * salinity) / kelvin
        + (19.568224 - 2.0901396 * root) * ln_t
    )  # fmt: skip
    pk2 = (
        -90.18333 + 21.389248 * root + 0.12452358 * salinity - 3.7447e-4 * salinity**2
        + (5143.692 - 787.3736 * root - 19.84233 * salinity) / kelvin
        + (14.613358 - 3.3773006 * root) * ln_t
    )  # fmt: skip
    return -LN10 * pk1, -LN10 * pk2


def _water(kelvin: float, salinity: float, ln_t: float, root: float) -> float:
    return (
        148.9802 - 13847.26 / kelvin - 23.6521 * ln_t
        + (-5.977 + 118.67 / kelvin + 1.0495 * ln_t) * root - 0.01615 * salinity
    )  # fmt: skip


def _boric(kelvin: float, salinity: float, ln_t: float, root: float) -> float:
    return (
        (-8966.9 - 2890.53 * root - 77.942 * salinity + 1.728 * root * salinity
         - 0.0996 * salinity**2) / kelvin
        + 148.0248 + 137.1942 * root + 1.62142 * salinity
        - (24.4344 + 25.085 * root + 0.2474 * salinity) * ln_t + 0.053105 * root * kelvin
    )  # fmt: skip


def _phosphoric(
    kelvin: float, salinity: float, ln_t: float, root: float
) -> tuple[float, float, float]:
    return (
        -4576.752 / kelvin + 115.54 - 18.453 * ln_t
        + (-106.736 / kelvin + 0.69171) * root + (-0.65643 / kelvin - 0.01844) * salinity,
        -8814.715 / kelvin + 172.1033 - 27.927 * ln_t
        + (-160.34 / kelvin + 1.3566) * root + (0.37335 / kelvin - 0.05778) * salinity,
        -3070.75 / kelvin - 18.126
        + (17.27039 / kelvin + 2.81197) * root + (-44.99486 / kelvin - 0.09984) * salinity,
    )  # fmt: skip


def ln_henry(temperature: float, salinity: float) -> float:
    """Ln of CO2's solubility in sea water (Weiss 1974, Mar. Chem. 2:203-215), mol/kg/atm."""
    hundreds = (temperature + KELVIN) / 100.0
    return (
        -60.2409 + 93.4517 / hundreds + 23.3585 * functions_for(temperature).log(hundreds)
        + salinity * (0.023517 - 0.023656 * hundreds + 0.0047036 * hundreds**2)
    )  # fmt: skip


def _calcium_carbonate(
    kelvin: float, salinity: float, ln_t: float, root: float
) -> tuple[float, float]:
    shared = -0.077993 * kelvin + 71.595 / LN10 * ln_t
    calcite = (
        -171.9065 + shared + 2839.319 / kelvin
        + (-0.77712 + 0.0028426 * kelvin + 178.34 / kelvin) * root
        - 0.07711 * salinity + 0.0041249 * root * salinity
    )  # fmt: skip
    aragonite = (
        -171.945 + shared + 2903.293 / kelvin
        + (-0.068393 + 0.0017276 * kelvin + 88.135 / kelvin) * root
        - 0.10018 * salinity + 0.0059415 * root * salinity
    )  # fmt: skip
    return LN10 * calcite, LN10 * aragonite
