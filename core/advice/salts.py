"""Doses of salts to a target: hardness, the sea's calcium and magnesium, plant food, salinity."""

from __future__ import annotations

from collections.abc import Mapping, Sequence, Set
from dataclasses import dataclass, field
from typing import Final

from core.advice import limits
from core.advice.bounds import past_animals
from core.advice.dosing import KH_HIGHEST, refused_substance, volume_for
from core.advice.effects import HYDRATES
from core.advice.nnls import non_negative
from core.advice.outlook import Outlook, outlook_of, with_premises
from core.advice.plan import Fact, Goal, Plan, Refusal, Weighed
from core.advice.potassium import judge_potassium
from core.advice.scheduling import (
    SEA_SALT,
    added_ions,
    changes_of,
    conflict,
    in_parts,
    per_gram,
    saturation_caution,
)
from core.advice.since import changed_since, first_part, moved_today, outdated
from core.advice.state import State
from core.advice.upkeep import with_upkeep
from core.errors import CoreError
from core.substances import ACIDS
from core.water import SUBSTANCES, substance

CALCIUM_TO_MAGNESIUM: Final = 3.0
"""By amount, where nothing else is wished; common practice."""

HIGHEST: Final[Mapping[str, float]] = {
    "kh": KH_HIGHEST,
    "gh": 30.0,
    "calcium": 500.0,
    "magnesium": 1500.0,
    "nitrate": limits.NITRATE_FRESH,
    "phosphate": limits.PHOSPHATE_MOST,
    "potassium": 40.0,
    "salinity": 40.0,
}
"""A wish over this is taken for a slip or another unit; common practice. Canonical units."""

USUAL: Final[Mapping[str, tuple[str, ...]]] = {
    "kh": ("sodium bicarbonate",),
    "gh": ("calcium chloride dihydrate", "magnesium sulfate heptahydrate"),
    "calcium": ("calcium chloride dihydrate",),
    "magnesium": ("magnesium chloride hexahydrate",),
    "nitrate": ("potassium nitrate",),
    "phosphate": ("monopotassium phosphate",),
    "potassium": ("potassium sulfate",),
    "salinity": ("sea salt",),
}
"""What is taken where no salt was named, each by its full name."""

IN_SEA_ONLY: Final = frozenset({"calcium", "magnesium"})


@dataclass(frozen=True, slots=True)
class SaltWish:
    """Targets by analyte, and the salts that the keeper has.

    `starts` are the question's own premises of where each begins; `deltas` are rises where no
    target was said; `parts` are wished at least. Canonical units.
    """

    targets: Mapping[str, float] = field(default_factory=dict)
    deltas: Mapping[str, float] = field(default_factory=dict)
    starts: Mapping[str, float] = field(default_factory=dict)
    substances: tuple[str, ...] = ()
    volume_l: float | None = None
    premises: Mapping[str, float] = field(default_factory=dict)
    calcium_to_magnesium: float = CALCIUM_TO_MAGNESIUM
    parts: int = 1


def plan_salts(wish: SaltWish, state: State, *, known_tank: bool) -> tuple[Plan, ...] | Refusal:
    """Work out plans for one or two targets, one for each form that a named salt is sold in.

    Parameters
    ----------
    wish : SaltWish
        What is wanted.
    state : State
        The tank and its last readings; an empty one for a question without set-up.
    known_tank : bool
        False where the question is about any water.
    """
    volume = volume_for(wish.volume_l, state)
    if isinstance(volume, Refusal):
        return volume
    told = with_premises(state, {**wish.premises, **wish.starts})
    goals = goals_of(wish, told)
    if isinstance(goals, Refusal):
        return goals
    if is_one_at_a_time({goal.analyte for goal in goals}, state):
        return Refusal("one_at_a_time", {"analyte": goals[0].analyte})
    if (problem := conflict(told)) is not None:
        return problem
    ends = {goal.analyte: (goal.start, goal.target) for goal in goals if not goal.relative}
    if (bound := past_animals(state, ends)) is not None:
        return bound.refusal
    read = [state.readings[g.analyte] for g in goals if _is_read(g, wish, state)]
    for reading in read:
        if (problem := outdated(state, reading)) is not None:
            return problem
    plans = []
    for salts in _choices(wish, goals):
        weighed = weighed_for(goals, salts, volume, wish.calcium_to_magnesium)
        if isinstance(weighed, Refusal):
            return weighed
        plan = _plan(goals, weighed, told, volume, known_tank=known_tank, least=wish.parts)
        if isinstance(plan, Refusal):
            return plan
        of_record = {reading.analyte for reading in read}
        after = {name: end for name, end in first_part(plan).items() if name in of_record}
        if (stepped := moved_today(state, after)) is not None:
            return stepped
        plans.append(plan)
    return tuple(plans)


def _is_read(goal: Goal, wish: SaltWish, state: State) -> bool:
    """Whether a goal starts from a reading on record, not from the question."""
    stated = goal.analyte in wish.starts or goal.analyte in wish.premises
    return not stated and not goal.relative and goal.analyte in state.readings


def is_one_at_a_time(analytes: Set[str], state: State) -> bool:
    """Whether wishes may not go in together: in the sea calcium and buffer fall out as lime."""
    return state.tank.is_sea and "kh" in analytes and len(analytes) > 1


def goals_of(wish: SaltWish, state: State) -> tuple[Goal, ...] | Refusal:
    """From where to where each analyte goes, or why not."""
    found = []
    for analyte in (*wish.targets, *(name for name in wish.deltas if name not in wish.targets)):
        if analyte not in HIGHEST:
            return Refusal("analyte_unknown", {"analyte": analyte})
        if analyte in IN_SEA_ONLY and not state.tank.is_sea and analyte not in wish.starts:
            return Refusal("use_gh", {"analyte": analyte})
        reading = state.last(analyte)
        if reading is None and analyte in wish.deltas and analyte != "kh":
            found.append(Goal(analyte, 0.0, wish.deltas[analyte], relative=True))
            continue
        if reading is None:
            return Refusal("reading_unknown", {"analyte": analyte})
        if reading.is_limit and reading.qualifier == ">":
            return Refusal("reading_unknown", {"analyte": analyte})
        target = wish.targets.get(analyte, reading.value + wish.deltas.get(analyte, 0.0))
        if target > HIGHEST[analyte]:
            return Refusal(
                "target_implausible",
                {"analyte": analyte, "to": target, "highest": HIGHEST[analyte]},
            )
        found.append(Goal(analyte, reading.value, target))
    for goal in found:
        # One target that is reached already makes the whole wish doubtful: nothing is dosed.
        if goal.change <= 1e-9:
            facts: dict[str, Fact] = {"from": goal.start, "to": goal.target}
            return Refusal("target_reached", facts | {"analyte": goal.analyte})
    return tuple(found)


def _choices(wish: SaltWish, goals: Sequence[Goal]) -> list[tuple[str, ...]]:
    """The sets of salts to plan with: each form of a salt whose hydrate was not said."""
    named = wish.substances or tuple(
        dict.fromkeys(salt for goal in goals for salt in USUAL[goal.analyte])
    )
    for place, name in enumerate(named):
        if wish.substances and name in HYDRATES:
            return [(*named[:place], form, *named[place + 1 :]) for form in HYDRATES[name]]
    return [named]


def weighed_for(
    goals: Sequence[Goal], salts: Sequence[str], volume_l: float, ratio: float
) -> tuple[Weighed, ...] | Refusal:
    """Masses of the salts that meet all goals, or why they cannot.

    Hardness is asked of calcium and magnesium in a ratio where both kinds of salt are there.
    """
    for name in salts:
        if name in ACIDS:
            return Refusal("acid", {"substance": name})
        if name == "sodium carbonate":
            return Refusal("hydrate_unknown", {"substance": name})
        if name not in SUBSTANCES:
            return Refusal("substance_unknown", {"substance": name})
    rows, wanted = [], []
    for goal in goals:
        for part, share in _parts_of(goal, salts, ratio):
            rows.append([per_gram(name, part) / volume_l for name in salts])
            wanted.append(goal.change * share)
    scaled = [[x / max(w, 1e-12) for x in row] for row, w in zip(rows, wanted, strict=True)]
    amounts = non_negative(scaled, [1.0] * len(wanted))
    for goal in goals:
        got = sum(
            amount * per_gram(name, goal.analyte) / volume_l
            for amount, name in zip(amounts, salts, strict=True)
        )
        if abs(got - goal.change) > 0.02 * goal.change:
            return Refusal("salt_does_not", {"analyte": goal.analyte, "substance": salts[0]})
    return tuple(
        Weighed(name, amount) for name, amount in zip(salts, amounts, strict=True) if amount > 1e-9
    )


def _parts_of(goal: Goal, salts: Sequence[str], ratio: float) -> list[tuple[str, float]]:
    if goal.analyte != "gh":
        return [(goal.analyte, 1.0)]
    brings = [substance(name).ions for name in salts]
    both = all(any(ion in ions for ions in brings) for ion in ("calcium", "magnesium"))
    if not both:
        return [("gh", 1.0)]
    return [("gh_calcium", ratio / (1.0 + ratio)), ("gh_magnesium", 1.0 / (1.0 + ratio))]


def _plan(
    goals: Sequence[Goal],
    salts: tuple[Weighed, ...],
    state: State,
    volume: float,
    *,
    known_tank: bool,
    least: int,
) -> Plan | Refusal:
    for salt in salts:
        is_buffer = per_gram(salt.substance, "kh") > 0.0 and salt.substance != SEA_SALT
        if is_buffer and (problem := refused_substance(salt.substance, state)):
            return problem
    kh = state.last("kh")
    outlook: Outlook | None = None
    if kh is not None and not kh.is_limit:
        try:
            outlook = outlook_of(state, kh.value, kh_is_fresh=kh.is_fresh(state.now))
        except CoreError:
            return Refusal("contradiction", {"kh": kh.value})
    rises = changes_of(state, salts, volume)["kh"] > 0.0
    if kh is not None and rises and kh.low < limits.KH_BLIND_BELOW:
        return Refusal("kh_alone_first", {"kh": kh.value})
    schedule = in_parts(state, outlook, salts, volume, least=least)
    if isinstance(schedule, Refusal):
        return schedule
    added = added_ions(salts, volume)
    # Sea salt brings potassium in the sea's own ratio, which is none too much.
    potassium = None if salts[0].substance == SEA_SALT else judge_potassium(state, added)
    if potassium == "mussels":
        return Refusal("potassium_mussels", {"substance": salts[0].substance})
    reading = state.last(goals[0].analyte)
    asked_now = reading is None or reading.at == state.now
    gate = schedule.gate
    if gate is not None and not schedule.raises_ph and gate.only_below is not None:
        gate = None  # nothing is made worse: no condition
    plan = Plan(
        goals=tuple(goals),
        volume_l=volume,
        salts=salts,
        count=schedule.count,
        every_hours=limits.DOSE_EVERY_HOURS,
        outlook=outlook,
        stages=schedule.stages,
        gate=gate,
        added=added,
        reading_age=None if asked_now or reading is None else reading.age(state.now),
        told=state,
        changed_since=not asked_now and reading is not None and changed_since(state, reading),
        within_kit=reading is not None and 0.0 < goals[0].change < reading.step + 1e-9,
        cautions=(
            *_cautions(salts, state, known_tank=known_tank),
            *saturation_caution(schedule, state),
            *(["potassium"] if potassium else []),
        ),
    )
    return with_upkeep(plan, state)


def _cautions(salts: Sequence[Weighed], state: State, *, known_tank: bool) -> tuple[str, ...]:
    """Ids of what must be said before the grams of these salts."""
    found = []
    names = {salt.substance for salt in salts}
    if any(name.startswith("calcium chloride") for name in names):
        found.append("heats")
    calcium = any(substance(name).ions.get("calcium") for name in names)
    if calcium and len(names) > 1 and any(per_gram(name, "kh") > 0.0 for name in names):
        found.append("apart")
    if state.tank.is_sea and any(
        substance(n).ions.get("calcium") or substance(n).alkalinity for n in names
    ):
        found.append("sea_precipitation")
    if known_tank and "sodium chloride" in names:
        found.append("salt_species")
    return tuple(found)
