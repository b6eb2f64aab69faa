"""What plants bear: the ranges of the table's plants against a water."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from core.advice.livestock import Misfit, Species, fits, kept_in, table
from core.advice.scheduling import per_gram
from core.advice.state import State
from core.water.substances import SUBSTANCES

JUDGED: Final = ("ph", "gh", "kh", "temperature", "salinity")
"""What the table has ranges of for plants."""

FOOD: Final = ("nitrate", "phosphate", "potassium", "iron", "magnesium")
"""What plants eat of a salt; common practice."""


@dataclass(frozen=True, slots=True)
class Borne:
    """How many kinds of plants bear a water, and what the others do not.

    Attributes
    ----------
    values : mapping of str to float
        What was judged, canonical units.
    of : int
        Kinds looked at: those on record, else all of the table.
    on_record : bool
        Whether they are those on record.
    against : tuple of Misfit
        The worst of each kind that does not bear it, the worst kind first.
    """

    values: Mapping[str, float]
    of: int
    on_record: bool
    against: tuple[Misfit, ...]


def borne(values: Mapping[str, float], state: State) -> Borne:
    """Judge a water for the plants on a tank's record, else for all kinds of the table.

    Parameters
    ----------
    values : mapping of str to float
        By analyte, canonical units; of others than `JUDGED` nothing is said.
    state : State
        The tank.
    """
    told = {name: values[name] for name in JUDGED if name in values}
    own = [row for row in kept_in(state.tank).kinds if not row.is_animal]
    kinds: list[Species] = own or [row for row in table().species if not row.is_animal]
    worst = [found[0] for row in kinds if (found := fits(row, told))]
    worst.sort(key=lambda misfit: -misfit.excess)
    return Borne(told, len(kinds), bool(own), tuple(worst))


def ends(facts: Mapping[str, Any], state: State) -> dict[str, float]:
    """The water that a plan, an amount or a change leads to, by the facts of its answer.

    What they do not move stays as it was measured.
    """
    values = {name: reading.value for name, reading in state.readings.items() if name in JUDGED}
    for stage in (facts.get("end") or facts.get("stood") or {},):
        values |= {name: number for name, number in stage.items() if name in JUDGED}
    if "days" in facts:  # of an amount: by so much it rises
        for name in ("kh", "gh", "salinity"):
            if name in facts:
                values[name] = values.get(name, 0.0) + facts[name]
    goals = facts.get("goals") or [{"analyte": "kh", "to": facts.get("to")}]
    values |= {g["analyte"]: g["to"] for g in goals if g["analyte"] in JUDGED and g.get("to")}
    if facts.get("ph_stood"):
        values["ph"] = facts["ph_stood"][0]
    return values


def food_in(facts: Mapping[str, Any]) -> list[str]:
    """What plants eat of the salts that an answer's facts name."""
    salts = [facts.get("substance"), *(each.get("substance") for each in facts.get("salts", ()))]
    known = [salt for salt in salts if salt in SUBSTANCES]
    return [name for name in FOOD if any(per_gram(salt, name) > 0.0 for salt in known)]
