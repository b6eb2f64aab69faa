"""A water: what is in it, per kilogram, and what was assumed where nobody measured."""

from __future__ import annotations

from dataclasses import dataclass, fields, replace
from enum import StrEnum
from operator import attrgetter
from types import MappingProxyType
from typing import TYPE_CHECKING, Final, Unpack

from core.water._elementwise import functions_for, require
from core.water.atoms import molar_mass
from core.water.density import density
from core.water.substances import ION_FORMULA

if TYPE_CHECKING:
    from core.water.readings import Readings

MEQ_PER_DH: Final = 2.0 * 10.0 / molar_mass("CaO")
"""Milliequivalents per litre in one German degree: 10 mg/L of CaO (check values R3)."""

TEMPERATURE_RANGE: Final = (-2.0, 45.0)
SALINITY_RANGE: Final = (0.0, 60.0)
MOST: Final = 1000.0
"""More than this of anything is no water any more. [mmol/kg]"""

CHARGE: Final = MappingProxyType(
    {
        "calcium": 2,
        "magnesium": 2,
        "sodium": 1,
        "potassium": 1,
        "ammonia": 1,
        "chloride": -1,
        "sulfate": -2,
        "nitrate": -1,
        "nitrite": -1,
        "phosphate": -1,
        "thiosulfate": -2,
    }
)
"""Charge of each ion at its zero level of alkalinity: ammonium, and H2PO4- for phosphate."""


class Assumption(StrEnum):
    """What was filled in where nobody measured; the words are the chat's."""

    TEMPERATURE_25 = "temperature_25"
    CALCIUM_TO_MAGNESIUM = "calcium_to_magnesium"
    HARDNESS_AS_KH = "hardness_as_kh"
    SEA_SALT = "sea_salt"
    TABLE_SALT = "table_salt"
    KH_OF_SEA_SALT = "kh_of_sea_salt"
    SODIUM_BALANCE = "sodium_balance"
    CHLORIDE_BALANCE = "chloride_balance"
    STANDS_IN_AIR = "stands_in_air"
    METER_PH = "meter_ph"
    CONDUCTIVITY_AS_SALT = "conductivity_as_salt"


class Contradiction(StrEnum):
    """Readings that can be, but hardly are: computed all the same, and flagged."""

    MUCH_CARBON_DIOXIDE = "much_carbon_dioxide"
    HARDLY_ANY_CARBON_DIOXIDE = "hardly_any_carbon_dioxide"
    PARTS_OVER_HARDNESS = "parts_over_hardness"
    CONDUCTIVITY_UNDER_IONS = "conductivity_under_ions"
    CHARGE_OFF = "charge_off"


@dataclass(frozen=True, slots=True)
class Water:
    """A water, frozen; everything done to it gives a new one.

    Amounts are per kilogram, so that mixing and dosing conserve them at any temperature. Every
    field may be an array, one element a possibility.

    Attributes
    ----------
    temperature : float
        -2 to 45. [°C]
    salinity : float
        Grams of sea salt (not of other salts) per kilogram, 0 to 60: it chooses between the
        fresh-water and the sea-water formulas. [g/kg]
    alkalinity : float
        Total alkalinity as Dickson (1981) defines it, organic anions included; negative where
        strong acid is left over. [meq/kg]
    carbon : float
        Total inorganic carbon. [mmol/kg]
    calcium, magnesium, sodium, potassium, chloride, sulfate : float
        Totals, pairs included. [mmol/kg]
    ammonia, nitrite, nitrate, phosphate : float
        Totals of nitrogen and phosphorus. [mmol/kg]
    borate, thiosulfate : float
        Totals. [mmol/kg]
    organic : float
        Weak organic acid (humic and tannic), by its carboxyl groups, dissociated or not.
        [mmol/kg]
    assumptions : tuple of Assumption
        What was filled in.
    contradictions : tuple of Contradiction
        What does not fit together.
    """

    temperature: float
    salinity: float = 0.0
    alkalinity: float = 0.0
    carbon: float = 0.0
    calcium: float = 0.0
    magnesium: float = 0.0
    sodium: float = 0.0
    potassium: float = 0.0
    chloride: float = 0.0
    sulfate: float = 0.0
    ammonia: float = 0.0
    nitrite: float = 0.0
    nitrate: float = 0.0
    phosphate: float = 0.0
    borate: float = 0.0
    thiosulfate: float = 0.0
    organic: float = 0.0
    assumptions: tuple[Assumption, ...] = ()
    contradictions: tuple[Contradiction, ...] = ()

    def __post_init__(self) -> None:
        for (name, low, high, unit), value in zip(RANGES, numbers_of(self), strict=True):
            if type(value) is not float or not low <= value <= high:  # arrays, and what is wrong
                require(name, value, low, high, unit)

    def changed(self, **numbers: float) -> Water:
        """Give the same water with other numbers: `dataclasses.replace` at a third of its cost.

        Raises
        ------
        OutOfRange
            If a number is not what its field may be; only what changes is looked at.
        """
        made = object.__new__(Water)
        for name, value in zip(EVERY, every_of(self), strict=True):
            object.__setattr__(made, name, value)
        for name, number in numbers.items():
            low, high, unit = RANGE_OF[name]
            require(name, number, low, high, unit)
            object.__setattr__(made, name, number)
        return made

    @classmethod
    def from_readings(cls, **given: Unpack[Readings]) -> Water:
        """Make a water of what a keeper knows: `core.water.readings.from_readings`."""
        from core.water.readings import from_readings  # it builds on this class

        return from_readings(**given)

    def assuming(self, *assumptions: Assumption) -> Water:
        """Give the same water with more assumptions to carry along, each once."""
        return replace(self, assumptions=tuple(dict.fromkeys((*self.assumptions, *assumptions))))

    def contradicting(self, *found: Contradiction) -> Water:
        """Give the same water with more contradictions to carry along, each once."""
        return replace(self, contradictions=tuple(dict.fromkeys((*self.contradictions, *found))))

    @property
    def density(self) -> float:
        """Density, counted from sea salt and temperature. [kg/L]."""
        return density(self.temperature, self.salinity)

    @property
    def kh(self) -> float:
        """Carbonate hardness as a kit titrates it: the whole alkalinity. [°dH]."""
        return self.alkalinity * self.density / MEQ_PER_DH

    @property
    def gh(self) -> float:
        """General hardness, calcium and magnesium. [°dH]."""
        return (self.calcium + self.magnesium) * self.density * 2.0 / MEQ_PER_DH

    @property
    def dissolved_salts(self) -> float:
        """Mass of all dissolved ions, carbon as bicarbonate. [g/kg]."""
        total = self.carbon * molar_mass("HCO3")
        for name, formula in ION_FORMULA.items():
            if name != "carbon":
                total = total + getattr(self, name) * molar_mass(formula)
        return total / 1000.0

    def mg_l(self, ion: str) -> float:
        """Concentration of an ion as `substances.ION_FORMULA` counts it. [mg/L].

        Ammonia is as nitrogen, nitrate as NO3, nitrite as NO2, phosphate as PO4, borate as boron.
        """
        amount: float = getattr(self, ion)
        return amount * molar_mass(ION_FORMULA[ion]) * self.density

    @property
    def charge(self) -> float:
        """What the ions lack to balance the alkalinity; 0 in any water that can be. [meq/kg].

        Sea salt leaves 0.1 % of its charge, since bromide and fluoride are not carried along.
        """
        total = -self.alkalinity
        for name, charge in CHARGE.items():
            total = total + charge * getattr(self, name)
        return total


AMOUNTS: Final = tuple(
    field.name
    for field in fields(Water)
    if field.name not in {"temperature", "salinity", "assumptions", "contradictions"}
)
"""The fields that are conserved amounts per kilogram, alkalinity the first of them."""

RANGES: Final = (
    ("temperature", *TEMPERATURE_RANGE, "°C"),
    ("salinity", *SALINITY_RANGE, "g/kg"),
    ("alkalinity", -MOST, MOST, "meq/kg"),
    *((name, 0.0, MOST, "mmol/kg") for name in AMOUNTS[1:]),
)
"""What each number may be, and its unit."""

RANGE_OF: Final = {name: (low, high, unit) for name, low, high, unit in RANGES}
EVERY: Final = tuple(field.name for field in fields(Water))
every_of: Final = attrgetter(*EVERY)
"""All fields of a water at once, in the order of `EVERY`."""

numbers_of: Final = attrgetter(*RANGE_OF)
"""Its numbers at once, in the order of `RANGES`: temperature, salinity, then `AMOUNTS`."""


def strength_of_totals(water: Water) -> float:
    """Ionic strength as if no ions paired and the alkalinity were bicarbonate. [mol/kg]."""
    xp = functions_for(water.alkalinity)
    squares = xp.maximum(water.alkalinity, 0.0)
    for name, charge in CHARGE.items():
        squares = squares + charge * charge * getattr(water, name)
    return 0.0005 * squares
