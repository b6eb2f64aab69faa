"""The salts and acids that can be added to water: what one mole of each brings.

Names are plain and hydrates are always part of the name, since a salt and its hydrate differ by
up to 2.7 times in mass. What may go near animals is the advice's business, not this table's.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from core.errors import CoreError
from core.water.atoms import molar_mass

ION_FORMULA: Final = MappingProxyType(
    {
        "calcium": "Ca",
        "magnesium": "Mg",
        "sodium": "Na",
        "potassium": "K",
        "ammonia": "N",
        "chloride": "Cl",
        "sulfate": "SO4",
        "nitrate": "NO3",
        "nitrite": "NO2",
        "phosphate": "PO4",
        "thiosulfate": "S2O3",
        "borate": "B",
        "carbon": "C",
    }
)
"""What a concentration in mg/L of each part counts: ammonia as nitrogen, borate as boron."""


class UnknownSubstance(CoreError):
    """A substance is not in the table.

    Attributes
    ----------
    name : str
        The name asked for.
    """

    def __init__(self, name: str) -> None:
        self.name = name
        super().__init__(f"no substance named {name!r} in the table")


@dataclass(frozen=True, slots=True)
class Substance:
    """A pure substance and what one mole of it brings into water.

    Attributes
    ----------
    name : str
        Plain name, with its hydrate.
    formula : str
        Chemical formula; empty for sea salt, which is a mixture.
    molar_mass : float
        Mass of one mole as weighed, water of crystallisation included. [g/mol]
    alkalinity : float
        Total alkalinity that one mole adds; negative for an acid. [eq/mol]
    ions : mapping of str to float
        Moles of each part of a `Water` that one mole adds, by the names of its fields; "carbon"
        is total inorganic carbon. [mol/mol]
    """

    name: str
    formula: str
    molar_mass: float
    alkalinity: float
    ions: Mapping[str, float]

    @property
    def alkalinity_per_gram(self) -> float:
        """Alkalinity that one gram of the pure substance adds. [meq/g]."""
        return 1000.0 * self.alkalinity / self.molar_mass

    @property
    def hardness_per_gram(self) -> float:
        """Calcium and magnesium that one gram of the pure substance adds. [mmol/g]."""
        amount = self.ions.get("calcium", 0.0) + self.ions.get("magnesium", 0.0)
        return 1000.0 * amount / self.molar_mass

    def milligrams_per_gram(self, ion: str) -> float:
        """Mass of an ion (as `ION_FORMULA` counts it) in one gram of the substance. [mg/g]."""
        return 1000.0 * self.ions.get(ion, 0.0) * molar_mass(ION_FORMULA[ion]) / self.molar_mass


def _salt(name: str, formula: str, alkalinity: float = 0.0, **ions: float) -> Substance:
    return Substance(name, formula, molar_mass(formula), alkalinity, MappingProxyType(ions))


SEA_SALT: Final = Substance(
    name="sea salt",
    formula="",
    molar_mass=31.4038218,
    alkalinity=0.0015340 + 2 * 0.0002134 + 0.0000900 + 0.0000071,
    ions=MappingProxyType(
        {
            "sodium": 0.4188071,
            "magnesium": 0.0471678,
            "calcium": 0.0091823,
            "potassium": 0.0091159,
            "chloride": 0.4874839,
            "sulfate": 0.0252152,
            "carbon": 0.0015340 + 0.0002134 + 0.0000086,
            "borate": 0.0000900 + 0.0002807,
        }
    ),
)
"""One mole of the salts of sea water; strontium, bromide and fluoride (0.0009 mol) left out.

Reference Composition of Millero, Feistel, Wright & McDougall 2008, Deep-Sea Res. I 55:50-72,
table 3: abstract read, the mole fractions from memory; they add up to one, to no charge and to
the mean molar mass of the paper (a test does these sums). Its alkalinity counts HCO3-, CO3--
twice, B(OH)4- and OH-.
"""


SUBSTANCES: Final[Mapping[str, Substance]] = MappingProxyType(
    {
        substance.name: substance
        for substance in (
            SEA_SALT,
            _salt("sodium bicarbonate", "NaHCO3", 1, sodium=1, carbon=1),
            _salt("potassium bicarbonate", "KHCO3", 1, potassium=1, carbon=1),
            _salt("sodium carbonate", "Na2CO3", 2, sodium=2, carbon=1),
            _salt("sodium carbonate decahydrate", "Na2CO3.10H2O", 2, sodium=2, carbon=1),
            _salt("potassium carbonate", "K2CO3", 2, potassium=2, carbon=1),
            _salt("calcium carbonate", "CaCO3", 2, calcium=1, carbon=1),
            _salt("calcium hydroxide", "Ca(OH)2", 2, calcium=1),
            _salt("calcium chloride", "CaCl2", calcium=1, chloride=2),
            _salt("calcium chloride dihydrate", "CaCl2.2H2O", calcium=1, chloride=2),
            _salt("calcium sulfate", "CaSO4", calcium=1, sulfate=1),
            _salt("calcium sulfate dihydrate", "CaSO4.2H2O", calcium=1, sulfate=1),
            _salt("magnesium chloride", "MgCl2", magnesium=1, chloride=2),
            _salt("magnesium chloride hexahydrate", "MgCl2.6H2O", magnesium=1, chloride=2),
            _salt("magnesium sulfate", "MgSO4", magnesium=1, sulfate=1),
            _salt("magnesium sulfate heptahydrate", "MgSO4.7H2O", magnesium=1, sulfate=1),
            _salt("sodium chloride", "NaCl", sodium=1, chloride=1),
            _salt("potassium chloride", "KCl", potassium=1, chloride=1),
            _salt("potassium sulfate", "K2SO4", potassium=2, sulfate=1),
            _salt("ammonium chloride", "NH4Cl", ammonia=1, chloride=1),
            _salt("potassium nitrate", "KNO3", potassium=1, nitrate=1),
            # The zero level of phosphate is H2PO4-, as in Dickson's definition of alkalinity.
            _salt("monopotassium phosphate", "KH2PO4", potassium=1, phosphate=1),
            _salt("dipotassium phosphate", "K2HPO4", 1, potassium=2, phosphate=1),
            _salt("hydrochloric acid", "HCl", -1, chloride=1),
            _salt("sodium thiosulfate", "Na2S2O3", sodium=2, thiosulfate=1),
            _salt("sodium thiosulfate pentahydrate", "Na2S2O3.5H2O", sodium=2, thiosulfate=1),
        )
    }
)
"""The table, by name; purity is 1. Alkalinity is that of Dickson (1981): ammonium, boric acid,
H2PO4- and sulfate are its zero level."""


def substance(name: str) -> Substance:
    """Find a substance by its plain name.

    Parameters
    ----------
    name : str
        A key of `SUBSTANCES`, such as "magnesium sulfate heptahydrate".

    Returns
    -------
    Substance
        The substance, pure.

    Raises
    ------
    UnknownSubstance
        If the table has no such name.

    Examples
    --------
    >>> round(substance("sodium bicarbonate").alkalinity_per_gram, 2)
    11.9
    """
    try:
        return SUBSTANCES[name]
    except KeyError:
        raise UnknownSubstance(name) from None
