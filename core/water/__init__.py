"""What tank water is, what it will do, and what can be done to it.

Pure functions over plain floats in stated units. Every argument that is a `float` may also be a
numpy array of float64: the result is then an array, by the same formula. Importing this package
does not load numpy; plain numbers never do.

A `Water` holds conserved amounts per kilogram and what was assumed to fill it
(`Water.from_readings`). `solve` finds its pH and everything else; `handling`, `dosing` and `life`
do things to it; `minerals`, `ammonia`, `poisons`, `oxygen`, `density`, `conductivity`, `buffering`
and `doubt` hold one idea each. `constants` and `sea_constants` are the tables of constants with
their sources; `conditional`, `speciation`, `medium`, `newton` and `equilibrium` are the solver.
"""

from core.water.ammonia import (
    acute_criterion,
    chronic_criterion,
    un_ionised_ammonia_n,
    un_ionised_fraction,
)
from core.water.buffering import buffer_intensity, days_of_reserve, ph_after
from core.water.conductivity import conductivity_from_salinity, salinity_from_conductivity
from core.water.density import salinity_from_specific_gravity, specific_gravity
from core.water.dosing import add, with_co2, with_organic_acid
from core.water.doubt import Estimate, Interval, sample
from core.water.errors import ImpossibleWater, MissingReading, NotSolved
from core.water.filling import conductivity_of_water
from core.water.handling import diluted, evaporated, mix, stood, topped_up
from core.water.life import nitrified, taken_up
from core.water.minerals import Rest, rest_on_mineral, saturation, saturation_index
from core.water.oxygen import oxygen_saturation
from core.water.poisons import (
    ammonia_freed,
    chloride_needed,
    chloride_to_nitrite,
    thiosulfate_needed,
)
from core.water.readings import Readings, from_readings
from core.water.solution import Solution, in_air, solve
from core.water.substances import SUBSTANCES, Substance, UnknownSubstance, substance
from core.water.water import Assumption, Contradiction, Water

__all__ = [
    "SUBSTANCES",
    "Assumption",
    "Contradiction",
    "Estimate",
    "ImpossibleWater",
    "Interval",
    "MissingReading",
    "NotSolved",
    "Readings",
    "Rest",
    "Solution",
    "Substance",
    "UnknownSubstance",
    "Water",
    "acute_criterion",
    "add",
    "ammonia_freed",
    "buffer_intensity",
    "chloride_needed",
    "chloride_to_nitrite",
    "chronic_criterion",
    "co2_mg_l",
    "conductivity_from_salinity",
    "conductivity_of_water",
    "days_of_reserve",
    "diluted",
    "evaporated",
    "from_readings",
    "in_air",
    "mix",
    "nitrified",
    "oxygen_saturation",
    "pco2",
    "ph",
    "ph_after",
    "rest_on_mineral",
    "salinity_from_conductivity",
    "salinity_from_specific_gravity",
    "sample",
    "saturation",
    "saturation_index",
    "solve",
    "specific_gravity",
    "stood",
    "substance",
    "taken_up",
    "thiosulfate_needed",
    "topped_up",
    "un_ionised_ammonia_n",
    "un_ionised_fraction",
    "with_co2",
    "with_organic_acid",
]


def ph(water: Water) -> float:
    """PH of a water as a kit or meter reads it; `solve` gives more for the same work."""
    return solve(water).ph


def co2_mg_l(water: Water) -> float:
    """Dissolved carbon dioxide of a water. [mg/L]."""
    return solve(water).co2_mg_l


def pco2(water: Water) -> float:
    """Pressure of carbon dioxide that a water is in balance with. [µatm]."""
    return solve(water).pco2
