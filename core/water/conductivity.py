"""Conductivity: of sea and brackish water by the practical salinity scale, of fresh by its ions.

Everything a keeper's meter shows is compensated to 25 °C; the sea formulas take the conductivity
as it is at the water's temperature, so a compensated reading goes in with 25 °C.
"""

from __future__ import annotations

from types import MappingProxyType
from typing import Final

from core.water._elementwise import functions_for, require
from core.water.density import grams_from_practical, practical_from_grams

STANDARD: Final = 42.914
"""Conductivity of water of practical salinity 35 at 15 °C (Culkin & Smith 1980). [mS/cm]"""

TEMPERATURE_RANGE: Final = (-2.0, 45.0)
PRACTICAL_RANGE: Final = (0.0, 60.0)

HILL_BELOW: Final = 2.0
"""Practical salinity under which the extension of Hill et al. joins in (a step of 0.00001)."""

_A: Final = (0.0080, -0.1692, 25.3851, 14.0941, -7.0261, 2.7081)
_B: Final = (0.0005, -0.0056, -0.0066, -0.0375, 0.0636, -0.0144)
_C: Final = (0.6766097, 2.00564e-2, 1.104259e-4, -6.9698e-7, 1.0031e-9)
_K: Final = 0.0162


def practical_salinity(conductivity: float, temperature: float = 25.0) -> float:
    """Practical salinity of a sea or brackish water from its conductivity.

    Parameters
    ----------
    conductivity : float
        At `temperature`, zero or more. [mS/cm]
    temperature : float, optional
        -2 to 45 on ITS-90; 25 for a meter that compensates. [°C]

    Returns
    -------
    float
        Practical salinity. The scale is defined from 2 to 42; below 2 with the extension of Hill
        et al.

    Raises
    ------
    OutOfRange
        If an argument is out of range or not finite, or the salinity would be over 60.

    Examples
    --------
    >>> round(practical_salinity(STANDARD, 15.0 / 1.00024), 4)
    35.0

    References
    ----------
    .. [1] Practical Salinity Scale 1978: Fofonoff & Millard 1983, UNESCO Tech. Pap. Mar. Sci. 44,
       p. 6-12, coefficients from memory, checked against TEOS-10's own code.
    .. [2] Hill, Dauphinee & Woods 1986, IEEE J. Ocean. Eng. OE-11:109-112.
    """
    require("conductivity", conductivity, 0.0, 100.0, "mS/cm")
    require("temperature", temperature, *TEMPERATURE_RANGE, "°C")
    t68 = 1.00024 * temperature
    ratio = conductivity / STANDARD / _polynomial(_C, t68)
    practical = _from_ratio(ratio, t68)
    require("practical salinity", practical, *PRACTICAL_RANGE)
    return practical


def conductivity_of_practical(practical: float, temperature: float = 25.0) -> float:
    """Conductivity of a sea or brackish water at a temperature.

    Parameters
    ----------
    practical : float
        Practical salinity, 0 to 60.
    temperature : float, optional
        -2 to 45. [°C]

    Returns
    -------
    float
        Conductivity at that temperature. [mS/cm]

    Raises
    ------
    OutOfRange
        If an argument is out of range or not finite.

    Examples
    --------
    >>> round(conductivity_of_practical(35.0), 2)
    53.07
    """
    require("practical salinity", practical, *PRACTICAL_RANGE)
    require("temperature", temperature, *TEMPERATURE_RANGE, "°C")
    xp = functions_for(practical, temperature)
    t68 = 1.00024 * temperature
    root = xp.sqrt(practical / 35.0 * (1.0 + 0.1 * (1.0 - practical / 35.0)))
    for _ in range(12):  # Newton on the square root of the ratio, where the scale is smoothest
        slope = (_from_root(root + 1e-4, t68) - _from_root(root, t68)) / 1e-4
        root = xp.maximum(root - (_from_root(root, t68) - practical) / slope, 0.0)
    return root * root * _polynomial(_C, t68) * STANDARD


def salinity_from_conductivity(conductivity: float, temperature: float = 25.0) -> float:
    """Grams of sea salt per kilogram, from conductivity. [mS/cm], [°C], [g/kg].

    Takes and raises what `practical_salinity` does.
    """
    return grams_from_practical(practical_salinity(conductivity, temperature))


def conductivity_from_salinity(salinity: float, temperature: float = 25.0) -> float:
    """Conductivity of so many grams of sea salt per kilogram. [g/kg], [°C], [mS/cm].

    Takes and raises what `conductivity_of_practical` does.
    """
    return conductivity_of_practical(practical_from_grams(salinity), temperature)


EQUIVALENT: Final = MappingProxyType(
    {
        "calcium": (59.5, 2),
        "magnesium": (53.1, 2),
        "sodium": (50.1, 1),
        "potassium": (73.5, 1),
        "ammonia": (73.5, 1),
        "alkalinity": (44.5, 1),
        "chloride": (76.3, 1),
        "sulfate": (80.0, 2),
        "nitrate": (71.4, 1),
        "nitrite": (71.8, 1),
        "phosphate": (33.0, 1),
    }
)
"""Equivalent conductivity at infinite dilution and charge: Standard Methods 2510, table I (from
memory); nitrite and H2PO4- from handbooks (from memory). [mS/cm per eq/L at 25 °C]"""


def conductivity_of_ions(amounts: dict[str, float], strength: float) -> float:
    """Conductivity at 25 °C that a fresh water's ions account for.

    Parameters
    ----------
    amounts : dict of str to float
        Amounts by the names of `EQUIVALENT`; alkalinity counts as bicarbonate. [mmol/L], [meq/L]
    strength : float
        Ionic strength, up to 0.1. [mol/L]

    Returns
    -------
    float
        Conductivity at 25 °C. [µS/cm]

    Notes
    -----
    Onsager's limiting law at 25 °C, ion by ion, ``λ = λ° - z (0.229 λ° + 30.1) √I / (1 + √I)``
    (Robinson & Stokes 1959, Electrolyte Solutions, ch. 7, from memory; the denominator stretches
    it to 0.1 mol/L, common practice). Within 1 % of handbook values of KCl and CaCl2 at 0.01 eq/L;
    sulfates of calcium and magnesium pair and conduct up to a tenth less.
    """
    xp = functions_for(strength, *amounts.values())
    root = xp.sqrt(strength)
    damping = root / (1.0 + root)
    total = 0.0
    for ion, amount in amounts.items():
        limiting, charge = EQUIVALENT[ion]
        equivalent = limiting - charge * (0.229 * limiting + 30.1) * damping
        total = total + equivalent * charge * amount
    return total


def _from_ratio(ratio: float, t68: float) -> float:
    return _from_root(functions_for(ratio).sqrt(ratio), t68)


def _from_root(root: float, t68: float) -> float:
    """Practical salinity from the square root of the conductivity ratio, with Hill's extension."""
    xp = functions_for(root, t68)
    temperature = (t68 - 15.0) / (1.0 + _K * (t68 - 15.0))
    practical = _polynomial(_A, root) + temperature * _polynomial(_B, root)
    x, y = 400.0 * root * root, 10.0 * root
    low = _A[0] / (1.0 + 1.5 * x + x * x)
    low = low + _B[0] * temperature / (1.0 + y * (1.0 + y * (1.0 + y)))
    return xp.maximum(xp.where(practical < HILL_BELOW, practical - low, practical), 0.0)


def _polynomial(coefficients: tuple[float, ...], x: float) -> float:
    value = coefficients[-1]
    for coefficient in coefficients[-2::-1]:
        value = value * x + coefficient
    return value
