"""The second opinion on water changes can fail: harmful plans are fed to it, and broken limits.

A checker that never complains proves nothing.
"""

from __future__ import annotations

import math
import random
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from types import ModuleType
from typing import Any

import pytest

from core.advice import change_limits, changes, limits
from core.advice.tainted import UNTAINTED
from tests.core.advice import never_harm_change_cases as of
from tests.core.advice.never_harm_change_cases import Change, answer, cases
from tests.core.advice.never_harm_changes import carried_out, harms_of, judge

FRESH = {"kh": 5.0, "gh": 8.0, "ph": 7.4, "temperature": 25.0, "ammonia": 0.0}
TAP = {"kh": 5.0, "gh": 8.0, "ph": 7.4, "temperature": 25.0}
SEA = {"kh": 8.0, "ph": 8.1, "temperature": 25.0, "salinity": 35.0, "ammonia": 0.0}
MIXED_SALT = {"kh": 8.0, "ph": 8.1, "temperature": 25.0, "salinity": 35.0}


@dataclass(frozen=True)
class Harmful:
    """What a careless planner might say, and by how much less it would do no harm."""

    tank: dict[str, float] = field(default_factory=dict)
    source: dict[str, float] = field(default_factory=dict)
    share: float = 0.5
    less: float | None = 0.02
    lacking: tuple[str, ...] = ()
    sea: bool = False
    more: dict[str, Any] = field(default_factory=dict)
    plan: dict[str, Any] = field(default_factory=dict)

    def harms(self, share: float) -> set[str]:
        tank, source = (SEA, MIXED_SALT) if self.sea else (FRESH, TAP)
        tank, source = {**tank, **self.tank}, {**source, **self.source}
        for body in (tank, source):
            for name in self.lacking:
                body.pop(name, None)
        kind = {"kind": "marine"} if self.sea else {}
        case = Change(tank, source, tank["kh"], share, **{**kind, **self.more})
        return set(carried_out(case, (share,), **self.plan))


HARMFUL = {
    "KH too fast": Harmful({"kh": 3.0}, {"kh": 12.0}),
    "KH ends under 1": Harmful({"kh": 1.5, "ph": 6.8}, {"kh": 0.0, "gh": 8.0}, 0.6),
    "GH too fast": Harmful({"gh": 3.0}, {"gh": 15.0}),
    "GH ends under 1": Harmful({"gh": 2.0}, {"gh": 0.0}, 0.8),
    "conductivity too fast": Harmful(
        {"conductivity": 300.0}, {"conductivity": 600.0}, lacking=("gh",)
    ),
    "too much of unknown minerals": Harmful(share=0.2, lacking=("gh",)),
    "pH too fast": Harmful({"ph": 6.6}, {"ph": 8.2}, 0.9),
    "temperature too fast": Harmful(source={"temperature": 15.0}),
    "salinity up too fast": Harmful(source={"salinity": 38.0}, sea=True),
    "salinity down too fast": Harmful(sea=True, lacking=("salinity",), share=0.05, less=0.01),
    "copper to invertebrates": Harmful(
        source={"copper": 0.1}, more={"kept": "cherry shrimp"}, less=None
    ),
    "nitrite of the new water": Harmful(source={"nitrite": 0.3}),
    "ammonia over the gate": Harmful({"ph": 8.3}, {"ph": 8.3, "ammonia": 1.5}),
    "ammonia over the gate if CO2 leaves": Harmful({"ph": 6.9}, {"ph": 6.9, "ammonia": 3.0}),
    "brackish water changed that nobody measured": Harmful(
        sea=True, lacking=("salinity",), more={"kind": "brackish"}, less=None
    ),
    "more than half at a time": Harmful(share=0.6, plan={"emergency": True}),
    "pH up too fast for an emergency": Harmful(
        {"ph": 6.6, "kh": 1.0}, {"ph": 8.3, "kh": 9.0}, plan={"emergency": True}
    ),
    "an emergency's change adds poison": Harmful(
        {"ammonia": 0.5, "ph": 7.8}, {"ammonia": 4.0, "ph": 8.2}, plan={"emergency": True}
    ),
}  # fmt: skip


@pytest.mark.parametrize("harm", HARMFUL)
def test_a_harmful_plan_is_seen_and_a_small_one_is_not(harm: str) -> None:
    harmful = HARMFUL[harm]
    assert harm in harmful.harms(harmful.share)
    if harmful.less is not None:
        assert harm not in harmful.harms(harmful.less)


@pytest.mark.parametrize(
    ("more", "seen"),
    [
        ({"treated": 1.0}, True),  # nobody measured: as much as a supplier may put in
        ({"treated": 0.0}, False),
        ({"source": {"total_chlorine": 4.0, "chlorine": 0.0}}, True),
        ({"source": {"total_chlorine": 4.0, "chlorine": 4.0}}, False),  # no chloramine in it
    ],
)
def test_the_ammonia_of_chloramine_counts(more: dict[str, Any], seen: bool) -> None:
    source = {**TAP, "ph": 8.3, **more.get("source", {})}
    case = Change({**FRESH, "ph": 8.3}, source, 5.0, 0.6, treated=more.get("treated", 0.0))
    assert _poisons(case, 0.6) is seen


def test_a_filter_eats_what_chloramine_freed_by_the_next_day_but_not_the_waters_own() -> None:
    steps = (0.3, 0.3, 0.3, 0.3)
    tank, share = {**FRESH, "ph": 8.1}, 1.0 - 0.7**4
    freed = Change(tank, {**TAP, "ph": 8.1}, 5.0, share, treated=1.0)
    own = Change(tank, {**TAP, "ph": 8.1, "ammonia": 0.74}, 5.0, share)
    assert not _poisons(freed, *steps)
    assert _poisons(own, *steps)


def _poisons(case: Change, *steps: float) -> bool:
    return any(harm.startswith("ammonia over the gate") for harm in carried_out(case, steps))


def test_ammonia_that_nobody_measured_needs_a_word_and_is_held_to_it() -> None:
    tank = {name: value for name, value in FRESH.items() if name != "ammonia"}
    case = Change(tank, TAP, 5.0, 0.2)
    given = answer(case)
    assert given.plan is not None
    assert given.plan.only_below is not None
    assert list(harms_of(case, given)) == []
    silent = replace(given, plan=replace(given.plan, only_below=None))
    assert "no word on ammonia that nobody measured" in set(harms_of(case, silent))
    lax = replace(given, plan=replace(given.plan, only_below=2.0 * given.plan.only_below))
    assert any(harm.startswith("ammonia over the gate") for harm in harms_of(case, lax))


def test_an_emergency_needs_poison() -> None:
    case = Change(FRESH, TAP, 5.0, 0.2)
    given = answer(case)
    assert given.plan is not None
    assert not given.plan.emergency
    hasty = replace(given, plan=replace(given.plan, emergency=True))
    assert "an emergency's limits without poison" in set(harms_of(case, hasty))


def test_an_acid_tank_with_ammonia_needs_water_as_soft_as_its_own() -> None:
    case = Change({**FRESH, "kh": 2.0, "ph": 6.8, "nitrite": 2.0, "ammonia": 1.0}, TAP, 2.0, 0.3)
    given = answer(case)
    assert given.plan is not None
    assert given.plan.emergency
    assert given.ro_share == pytest.approx(0.6, abs=0.01)
    assert list(harms_of(case, given)) == []
    harm = "an acid tank with ammonia given harder water"
    assert harm in set(harms_of(case, replace(given, ro_share=0.0)))


def test_steps_that_miss_the_share_are_seen() -> None:
    assert "does not change what was asked" in set(
        carried_out(Change(FRESH, TAP, 5.0, 0.5), (0.2, 0.2))
    )


Kind = Callable[[random.Random], Change]
MUTATIONS: dict[str, tuple[ModuleType, str, Any, str, Kind]] = {
    "KH 1.6 a day": (limits, "KH_STEP", 1.6, "KH too fast", of._any),
    "GH 4 a day": (limits, "GH_STEP", 4.0, "GH too fast", of._any),
    "pH 0.6": (limits, "PH_STEP", 0.6, "pH too fast", of._any),
    "4 degrees": (limits, "TEMPERATURE_STEP", 4.0, "temperature too fast", of._any),
    "salinity up": (limits, "SALINITY_UP", 2.0, "salinity up too fast", of._salty),
    "salinity down": (limits, "SALINITY_DOWN", 4.0, "salinity down too fast", of._salty),
    "the floor of KH": (limits, "KH_SOFT", 0.3, "KH ends under 1", of._any),
    "the floor of GH": (changes, "_gh_floor", lambda _: 0.0, "GH ends under 1", of._any),
    "a third of conductivity": (limits, "CONDUCTIVITY_STEP", 0.33, "conductivity", of._unknown),
    "a third of the unknown": (limits, "UNKNOWN_MINERALS_SHARE", 0.33, "of unknown", of._unknown),
    "copper and nitrite": (changes, "taint_of", lambda *_: UNTAINTED, "copper to", of._tainted),
    "nitrite": (changes, "taint_of", lambda *_: UNTAINTED, "nitrite of", of._tainted),
    "brackish unknown": (of, "salinity_unknown", lambda _: False, "nobody measured", of._salty),
    "chloramine": (limits, "CHLORINE_ASSUMED", 0.0, "ammonia over the gate", of._tainted),
    "source's ammonia": (changes, "source_ammonia", lambda _: 0.0, "over the gate", of._tainted),
    "the gate": (limits, "NH3_GATE", 0.2, "ammonia over the gate", of._salty),
    "the gate if CO2 leaves": (limits, "NH3_RAISE", math.inf, "if CO2 leaves", of._any),
    "half at a time": (limits, "EMERGENCY_SHARE", 0.9, "more than half at a time", of._poisoned),
    "pH in an emergency": (limits, "EMERGENCY_PH_RISE", 2.0, "fast for an emergency", of._poisoned),
    "poison in an emergency": (
        change_limits, "_poison_in_emergency", lambda _, after: 0.0 * after.share, "adds poison",
        of._poisoned,
    ),
}  # fmt: skip
MOST = 300


@pytest.mark.parametrize(("where", "name", "by", "seen", "kind"), MUTATIONS.values(), ids=MUTATIONS)
def test_the_checker_of_changes_sees_a_broken_limit(
    where: ModuleType,
    name: str,
    by: Any,
    seen: str,
    kind: Kind,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Each limit is broken in the planner, one after the other; tried until the first harm."""
    monkeypatch.setattr(where, name, by)
    chance = random.Random(4)  # noqa: S311 - cases, the same each time
    tried = (kind(chance) for _ in range(MOST))
    assert any(seen in harm for case in tried for harm in judge([case]).harms)


def test_the_cases_try_every_kind_of_water() -> None:
    tried = list(cases(300, 1))
    assert {case.kind for case in tried} == {"fresh", "brackish", "marine"}
    assert any("gh" not in case.source for case in tried)
    assert any("conductivity" in case.source for case in tried)
    assert any(case.soft for case in tried)
