"""A second opinion on water changes: what the limits forbid, worked out again step by step.

As `never_harm`: what a keeper would do with the answer is carried out change by change, with the
limits written here again and the masses mixed here; only the solver of `core.water` is common.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from tests.core.advice.never_harm_change_cases import Answer, Change, answer
from tests.core.advice.never_harm_change_days import Day, source_of


@dataclass
class Verdict:
    """What came of many changes."""

    as_asked: int = 0
    in_steps: int = 0
    emergencies: int = 0
    refused: Counter[str] = field(default_factory=Counter)
    safe: int = 0
    safe_planned: int = 0
    harms: list[str] = field(default_factory=list)

    def add(self, other: Verdict) -> None:
        """Count another's verdict in."""
        for name in self.__dataclass_fields__:
            setattr(self, name, getattr(self, name) + getattr(other, name))


def judge(asked: Iterable[Change]) -> Verdict:
    """Ask, carry out every step, and look for what the limits forbid."""
    verdict = Verdict()
    for case in asked:
        given = answer(case)
        verdict.safe += case.built_safe
        if given.plan is None or not given.plan.steps:
            verdict.refused[given.refused] += 1
            continue
        verdict.safe_planned += case.built_safe
        verdict.emergencies += given.plan.emergency
        if len(given.plan.steps) == 1:
            verdict.as_asked += 1
        else:
            verdict.in_steps += 1
        verdict.harms += [f"{harm}: {case}" for harm in harms_of(case, given)]
    return verdict


def harms_of(case: Change, given: Answer) -> Iterator[str]:
    """Everything that a plan of the planner does to its tank."""
    plan = given.plan
    assert plan is not None
    if plan.emergency and not _is_poisoned(case):
        yield "an emergency's limits without poison"
    if plan.emergency and _is_harder(case, given.ro_share):
        yield "an acid tank with ammonia given harder water"
    unmeasured = "ammonia" not in case.tank
    if unmeasured and plan.only_below is None:
        yield "no word on ammonia that nobody measured"
    yield from carried_out(
        case,
        plan.steps,
        emergency=plan.emergency,
        ro_share=given.ro_share,
        bears=plan.only_below if unmeasured else None,
    )


def carried_out(
    case: Change,
    steps: tuple[float, ...],
    *,
    emergency: bool = False,
    ro_share: float = 0.0,
    bears: float | None = None,
) -> Iterator[str]:
    """Change by change, a day apart, the tank at its own CO2 and temperature in between.

    Parameters
    ----------
    case : Change
        The tank and the new water.
    steps : tuple of float
        Shares, one a day.
    emergency : bool, optional
        Whether the limits are those of a tank with poison in it.
    ro_share : float, optional
        Pure water that the new one is cut with.
    bears : float, optional
        Total ammonia that the answer says it bears, where nobody measured. [mg/L as N]
    """
    if case.salinity is None:
        yield "brackish water changed that nobody measured"
        return
    here = Day.of_tank(case, 0.0 if bears is None else bears)
    source = source_of(case, ro_share)
    leaves_first, left = here.poison_if_co2_leaves, 1.0
    for number, share in enumerate(steps):
        after = here.changed(source, share)
        if number == 0 or bears is None:  # ammonia that is unknown is read again before each
            yield from _ammonia(case, here, after, leaves_first, emergency=emergency)
        yield from _moves(case, here, after, share, emergency=emergency)
        yield from _taints(case, here, after)
        here, left = after.rested(), left * (1.0 - share)
    over = 1.0 - left - case.share  # each of several is told in whole percents, rounded up
    if not -1e-6 <= over <= (0.01 * len(steps) if len(steps) > 1 else 1e-6):
        yield "does not change what was asked"


def _moves(case: Change, here: Day, after: Day, share: float, *, emergency: bool) -> Iterator[str]:
    """How far a day moves what the animals live in."""
    before, water = here.water, after.water
    now, then = here.phs, after.phs
    if abs(water.temperature - before.temperature) > 2.011:
        yield "temperature too fast"
    if water.salinity - before.salinity > 1.011:
        yield "salinity up too fast"
    if before.salinity - water.salinity > (2.011 if case.fish_only else 1.011):
        yield "salinity down too fast"
    if emergency:
        if share > 0.5001:
            yield "more than half at a time"
        if then[0] - now[0] > 0.5005:
            yield "pH up too fast for an emergency"
        return
    if max(abs(then[0] - now[1]), abs(then[1] - now[1]), abs(then[2] - now[2])) > 0.3105:
        yield "pH too fast"
    if abs(water.kh - before.kh) > 1.011 or water.kh - before.kh > _most(now[1], here.low) + 0.011:
        yield "KH too fast"
    if not case.soft and water.kh < 0.999 and water.kh < before.kh - 0.001:
        yield "KH ends under 1"
    if (case.salinity or 0.0) <= 1.0:
        yield from _minerals(case, here, after, share)


def _minerals(case: Change, here: Day, after: Day, share: float) -> Iterator[str]:
    """Hardness where both waters tell it, else conductivity, else so little that it is safe."""
    if "gh" in case.tank and "gh" in case.source:
        before, gh = here.water.gh, after.water.gh
        if abs(gh - before) > 2.011:
            yield "GH too fast"
        poor = case.soft and case.tank["gh"] < 1.0
        if not poor and gh < 0.999 and gh < before - 0.001:
            yield "GH ends under 1"
    elif here.minerals is not None and after.minerals is not None:
        if abs(after.minerals / here.minerals - 1.0) > 0.1501:
            yield "conductivity too fast"
    elif share > 0.1501:
        yield "too much of unknown minerals"


def _ammonia(
    case: Change, here: Day, after: Day, leaves_first: float, *, emergency: bool
) -> Iterator[str]:
    """The gate: with the tank's own CO2, and if that leaves."""
    if emergency:
        if after.poison > 1.01 * max(here.poison, 0.05):
            yield "an emergency's change adds poison"
        return
    leaves = after.poison_if_co2_leaves
    if max(after.poison, 0.0 if "ph" in case.tank else leaves) > 1.01 * case.limit:
        yield "ammonia over the gate"
    if leaves > 1.01 * case.limit and leaves > 1.26 * leaves_first:
        yield "ammonia over the gate if CO2 leaves"


def _taints(case: Change, here: Day, after: Day) -> Iterator[str]:
    """What no mixing makes harmless: copper to what has no spine, nitrite in fresh water."""
    if case.kept == "cherry shrimp" and after.copper > here.copper + 1e-9:
        yield "copper to invertebrates"
    fresh = case.kind != "marine" and (case.salinity or 0.0) <= 5.0
    if fresh and after.nitrite > here.nitrite + 1e-9 and after.nitrite >= 0.1001:
        yield "nitrite of the new water"


def _is_poisoned(case: Change) -> bool:
    """Whether ammonia or nitrite is at its alarm: 0.05 un-ionised, 0.5 as the ion."""
    if case.salinity is None:
        return False
    here = Day.of_tank(case, 0.0)
    fresh = case.kind != "marine" and case.salinity <= 5.0
    return here.poison_if_co2_leaves >= 0.0495 or (fresh and here.nitrite >= 0.4995)


def _is_harder(case: Change, ro_share: float) -> bool:
    """Whether new water lifts the KH of a fresh tank in which pH under 7 tames the ammonia."""
    acid = case.tank.get("ph", 7.0) < 7.0 and case.tank.get("ammonia", 1.0) > 0.0
    fresh = (case.salinity or 0.0) <= 1.0
    return fresh and acid and case.source["kh"] * (1.0 - ro_share) > case.tank["kh"] + 0.01


def _most(ph: float, low: float) -> float:
    """How far KH may rise: never more than doubled, or one small part where it is too low."""
    if low >= 1.0:
        return low
    return 0.1 if ph < 5.4999 else 0.25  # what is read as 5.5 is not under it
