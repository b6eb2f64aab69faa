"""A bucket of water from demineralised water and weighed salts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from core.advice import limits
from core.advice.plan import Fact, Goal, Refusal, Weighed
from core.advice.salts import CALCIUM_TO_MAGNESIUM, HIGHEST, USUAL, weighed_for
from core.advice.scheduling import per_gram
from core.water import Water, add, in_air
from core.water.substances import SUBSTANCES

ORDER: Final = ("gh", "kh", "magnesium", "potassium")
"""What a recipe can reach, in the order in which it is worked out."""

DEMINERALISED: Final = Water(25.0)

TOLD: Final = 0.05
"""Less than this no kit tells apart. [°dH or mg/L]"""


@dataclass(frozen=True, slots=True)
class Recipe:
    """Salts for a bucket, and its pH after standing: in a stocked tank's air, and outdoors."""

    volume_l: float
    targets: Mapping[str, float]
    salts: tuple[Weighed, ...]
    ph_stood: tuple[float, float]


WATER_DENSITY = 0.997
"""Of pure water at 25 °C: CRC Handbook, from memory. [kg/L]"""


def sea_water(salinity: float, volume_l: float) -> Weighed | Refusal:
    """Weigh the sea salt that makes demineralised water as salty as is wished.

    Parameters
    ----------
    salinity : float
        Wished. [g/kg]
    volume_l : float
        Demineralised water, before the salt. [L]

    Notes
    -----
    Salinity is grams of salt in a kilogram of the mix: salt = water · S / (1000 − S), both in
    grams. Dry salt is meant; a bought mix holds water of its own, so its weight is the least.

    Examples
    --------
    >>> round(sea_water(35.0, 20.0).grams)
    723
    """
    if not limits.VOLUME_SMALLEST <= volume_l <= limits.VOLUME_LARGEST:
        return Refusal("volume_implausible", {"volume_l": volume_l})
    if not 0.0 < salinity <= HIGHEST["salinity"]:
        facts: dict[str, Fact] = {
            "analyte": "salinity", "to": salinity, "highest": HIGHEST["salinity"],
        }  # fmt: skip
        return Refusal("target_implausible", facts)
    grams = 1000.0 * WATER_DENSITY * volume_l * salinity / (1000.0 - salinity)
    return Weighed("sea salt", grams)


def recipe(
    targets: Mapping[str, float],
    volume_l: float | None,
    salts: tuple[str, ...] = (),
    ratio: float = CALCIUM_TO_MAGNESIUM,
    of: Water = DEMINERALISED,
) -> Recipe | Refusal:
    """Work out salts that make demineralised water, or another, into what is wished.

    Parameters
    ----------
    targets : mapping of str to float
        Any of gh, kh [°dH], magnesium, potassium [mg/L].
    volume_l : float or None
        The bucket. [L]
    salts : tuple of str
        What the keeper has, each by its full name; the usual ones for what none of them brings.
    ratio : float
        Calcium to magnesium by amount, of what is added.
    of : Water, optional
        The water that the salts go into; its KH and GH are counted.

    Returns
    -------
    Recipe or Refusal
        Refusals: volume_unknown, volume_implausible, target_implausible, target_reached,
        kh_too_low and those of `weighed_for`.

    Notes
    -----
    No animals live in a bucket, so no step limit binds; KH under 1 is refused, since nothing would
    hold its pH.
    """
    if volume_l is None:
        return Refusal("volume_unknown")
    if not limits.VOLUME_SMALLEST <= volume_l <= limits.VOLUME_LARGEST:
        return Refusal("volume_implausible", {"volume_l": volume_l})
    for name, target in targets.items():
        if name not in ORDER or not 0.0 <= target <= HIGHEST.get(name, 100.0):
            highest = HIGHEST.get(name, 100.0)
            facts: dict[str, Fact] = {"analyte": name, "to": target, "highest": highest}
            return Refusal("target_implausible", facts)
    kh = targets.get("kh", of.kh)
    if kh < limits.KH_SOFT:
        return Refusal("kh_too_low", {"kh": kh})
    starts = {"kh": of.kh, "gh": of.gh}
    goals = [Goal(name, starts.get(name, 0.0), targets[name]) for name in ORDER if name in targets]
    for goal in goals:
        if goal.change < -TOLD:
            ends: dict[str, Fact] = {"from": goal.start, "to": goal.target}
            return Refusal("target_reached", ends | {"analyte": goal.analyte})
    goals = [goal for goal in goals if goal.change > TOLD]
    if not goals:
        ends = {"from": starts["kh"], "to": kh, "analyte": "kh"}
        return Refusal("target_reached", ends)
    open_ = [goal.analyte for goal in goals if not any(_brings(s, goal.analyte) for s in salts)]
    usual = (salt for analyte in open_ for salt in USUAL[analyte])
    chosen = tuple(dict.fromkeys([*salts, *usual]))
    weighed = weighed_for(goals, chosen, volume_l, ratio)
    if isinstance(weighed, Refusal):
        return weighed
    water = of
    for salt in weighed:
        water = add(water, salt.substance, salt.grams, volume_l)
    rest = (in_air(water, limits.STOCKED_AIR).ph, in_air(water, limits.OPEN_AIR).ph)
    return Recipe(volume_l, dict(targets), weighed, rest)


def _brings(name: str, analyte: str) -> bool:
    """Whether a salt is of use for a goal; one that nobody knows is refused for all of them."""
    return name not in SUBSTANCES or per_gram(name, analyte) > 0.0
