"""Backwards: what so much of a substance does in so much water."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from core.advice import limits
from core.advice.ammonia_gate import gate_for
from core.advice.bounds import Bound, past_animals
from core.advice.buffers import STRONG
from core.advice.outlook import Outlook, Stage, outlook_for_buffer, outlook_of, staged, steepness
from core.advice.plan import Refusal, Weighed
from core.advice.potassium import judge_potassium
from core.advice.scheduling import SEA_SALT, added_ions, conflict, moved_by, steps_of
from core.advice.state import State
from core.errors import CoreError
from core.substances import ACIDS
from core.water import substance
from core.water.substances import SUBSTANCES
from core.water.water import MEQ_PER_DH

HYDRATES: Final[Mapping[str, tuple[str, str]]] = {
    "calcium chloride": ("calcium chloride", "calcium chloride dihydrate"),
    "calcium sulfate": ("calcium sulfate", "calcium sulfate dihydrate"),
    "magnesium sulfate": ("magnesium sulfate", "magnesium sulfate heptahydrate"),
    "magnesium chloride": ("magnesium chloride", "magnesium chloride hexahydrate"),
    "sodium thiosulfate": ("sodium thiosulfate", "sodium thiosulfate pentahydrate"),
}
"""Salts sold in two forms: where the form was not said, both are worked out."""

MOST_GRAMS_PER_LITRE: Final = 50.0
"""More than this in a litre is no dose but brine; common practice. [g/L]"""


SOLUBLE: Final[Mapping[str, float]] = {
    "calcium sulfate": 2.05,
    "calcium sulfate dihydrate": 2.6,
}
"""What a litre of pure water at 25 °C takes up, where that is less than anybody might weigh in:
0.205 g of CaSO4 in 100 g of water, CRC Handbook, from memory. [g/L]"""


@dataclass(frozen=True, slots=True)
class Effect:
    """What an amount does.

    Attributes
    ----------
    substance : str
        With its hydrate.
    grams, volume_l : float
        [g], [L]
    kh, gh, salinity : float
        By how much it moves them; salinity counts table salt and sea salt. [°dH, °dH, g/kg]
    added : mapping of str to float
        Ions that it brings. [mg/L]
    outlook, stage : Outlook and Stage, or None
        The water before and after; None without a KH to start from.
    days : int
        Days that the limits of KH, GH and pH would spread it over.
    poisons : bool
        True where a fresh reading of ammonia forbids it.
    bound : Bound or None
        The animals' end that it would pass, however slowly.
    potassium : str or None
        As `core.advice.potassium.judge_potassium` says of the tank's animals and doses.
    """

    substance: str
    grams: float
    volume_l: float
    kh: float
    gh: float
    salinity: float
    added: Mapping[str, float]
    outlook: Outlook | None
    stage: Stage | None
    days: int
    poisons: bool = False
    bound: Bound | None = None
    potassium: str | None = None


def effects_of(
    name: str, grams: float, volume_l: float, state: State | None
) -> tuple[Effect, ...] | Refusal:
    """Work out what a mass of a substance does; both forms where it is sold in two.

    Parameters
    ----------
    name : str
        A plain name.
    grams : float
        As weighed. [g]
    volume_l : float
        Net volume. [L]
    state : State or None
        The water that it goes into, if anything is known of it.

    Returns
    -------
    tuple of Effect, or Refusal
        Refusals: acid, hydrate_unknown, substance_unknown, mass_implausible, volume_implausible,
        insoluble, contradiction.
    """
    if name in ACIDS:
        return Refusal("acid", {"substance": name})
    if name == "sodium carbonate":
        return Refusal("hydrate_unknown", {"substance": name})
    if name not in SUBSTANCES:
        return Refusal("substance_unknown", {"substance": name})
    if not limits.VOLUME_SMALLEST <= volume_l <= limits.VOLUME_LARGEST:
        return Refusal("volume_implausible", {"volume_l": volume_l})
    if not 0.0 < grams <= MOST_GRAMS_PER_LITRE * volume_l:
        return Refusal("mass_implausible", {"volume_l": volume_l})
    if state is not None and (problem := conflict(state)) is not None:
        return problem
    for form in HYDRATES.get(name, (name,)):
        if grams > SOLUBLE.get(form, MOST_GRAMS_PER_LITRE) * volume_l:
            return Refusal("insoluble", {"substance": form, "volume_l": volume_l})
    try:
        return tuple(_effect(each, grams, volume_l, state) for each in HYDRATES.get(name, (name,)))
    except CoreError:
        return Refusal("contradiction", {})


def _effect(name: str, grams: float, volume_l: float, state: State | None) -> Effect:
    table = substance(name)
    kh = table.alkalinity_per_gram * grams / volume_l / MEQ_PER_DH
    gh = 2.0 * table.hardness_per_gram * grams / volume_l / MEQ_PER_DH
    salt = moved_by(name, state).get("salinity", 0.0) * grams / volume_l
    outlook = None if state is None else _outlook(state, buffers=table.alkalinity_per_gram > 0.0)
    stage, steep, poisons = None, 0.0, False
    added = added_ions([Weighed(name, grams)], volume_l)
    if outlook is not None:
        (stage,) = staged(outlook, [[(name, grams)]], volume_l)
        steep = steepness(outlook, None, stage)
        poisons = state is not None and _poisons(state, (name, grams), volume_l)
    days = max(
        1.0,
        steep / (limits.PH_STEP + limits.PH_ROUNDING),
        *_days(name, grams / volume_l, state),
    )
    return Effect(
        name,
        grams,
        volume_l,
        kh,
        gh,
        salt,
        added,
        outlook,
        stage,
        1 if days <= limits.WEIGHED else math.ceil(days),
        poisons=poisons,
        bound=None if state is None else _bound(state, {"kh": kh, "gh": gh, "salinity": salt}),
        potassium=None if state is None or name == SEA_SALT else judge_potassium(state, added),
    )


def _poisons(state: State, dose: tuple[str, float], volume_l: float) -> bool:
    """Whether ammonia forbids it, with the readings as they stand."""
    outlook = _outlook(state, buffers=False)
    if outlook is None:
        return False
    return gate_for(state, outlook, list(staged(outlook, [[dose]], volume_l))) == "ammonia"


def _bound(state: State, moves: Mapping[str, float]) -> Bound | None:
    held = {name: state.last(name) for name in moves}
    starts = {name: reading.value for name, reading in held.items() if reading is not None}
    starts["salinity"] = state.salinity
    return past_animals(
        state, {name: (starts[name], starts[name] + moves[name]) for name in starts}
    )


def _days(name: str, grams_per_litre: float, state: State | None) -> list[float]:
    """Days that the step of each analyte asks for."""
    steps = steps_of(state.tank if state is not None else None)
    return [
        grams_per_litre * abs(per_gram) / steps[analyte]
        for analyte, per_gram in moved_by(name, state).items()
        if analyte in steps
    ]


def _outlook(state: State, *, buffers: bool) -> Outlook | None:
    kh = state.last("kh")
    if kh is None or kh.is_limit:
        return None
    if buffers:
        return outlook_for_buffer(state, kh)
    return outlook_of(state, kh.value, kh_is_fresh=kh.is_fresh(state.now))


def is_strong(name: str) -> bool:
    """True for carbonates and hydroxides, which never go into stocked fresh water."""
    return name in STRONG
