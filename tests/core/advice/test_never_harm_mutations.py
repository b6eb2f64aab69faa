"""Each limit is broken in the planner, one after the other: the second opinion must see each.

A checker that never complains proves nothing. Cases are tried until the first harm, so that a
limit that is well watched costs little.
"""

from __future__ import annotations

import math
import random
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Any

import pytest

from core.advice import ammonia_gate, crash, dosing, limits, salts, scheduling, upkeep
from core.advice.state import Measured
from tests.core.advice import never_harm_cases as of
from tests.core.advice.never_harm import judge

Kind = Callable[[random.Random], of.Case]
MOST = 1600
AT_A_TIME = 40


@dataclass(frozen=True)
class Broken:
    """What is broken, the harms by which it must be seen, and cases that meet it."""

    where: Any
    name: str
    by: Any
    seen: str
    kind: Kind = of._any


def _steps(analyte: str, step: float, table: str = "FRESH_STEPS") -> dict[str, Any]:
    held = {**getattr(scheduling, table), analyte: step}
    return {"where": scheduling, "name": table, "by": held}


def _without_at_once(outlook: Any, stages: Any, *, rise: float = 0.0) -> Any:
    calm = [replace(stage, at_once=stage.expected) for stage in stages]
    return _shares_of(outlook, calm, rise=rise)


def _no_care(gate: Any) -> Callable[..., Any]:
    def careless(*given: Any) -> Any:
        found = gate(*given)
        return found if isinstance(found, str) else replace(found, keep_co2=False)

    return careless


_shares_of = ammonia_gate.shares_of
_upper_total = ammonia_gate.upper_total


class _Sure:
    """A use that is always sure, and so many times what the readings show."""

    is_sure = True

    def __init__(self, earlier: Any, later: Any, times: float = 1.0) -> None:
        days = (later.at - earlier.at).total_seconds() / 86400.0
        self.per_day = max(1e-3, times * (earlier.value - later.value) / days)


def _off_scale(chance: random.Random) -> of.Case:
    """Ammonia over the end of the kit's scale."""
    case = of._crash(chance)
    ammonia = Measured("ammonia", 0.5, 0.5, math.inf, case.state.now, qualifier=">")
    readings = {**case.state.readings, "ammonia": ammonia}
    return replace(case, state=replace(case.state, readings=readings))


def _both(chance: random.Random) -> of.Case:
    """A reef that wants buffer and calcium."""
    case = of._sea(chance)
    held = case.value("calcium") or 400.0
    return replace(case, targets={"calcium": held + 20.0, "kh": (case.value("kh") or 7.0) + 1.0})


MUTATIONS = {
    "KH 1.6 a day": Broken(crash, "ORDINARY", 1.6, "KH too fast"),
    "an emergency without a cause": Broken(
        dosing, "kh_step", lambda *_, **__: 2.0, "KH too fast"
    ),
    "an emergency on old ammonia": Broken(
        crash, "FALLEN", 9.0, "KH too fast", of._crash
    ),
    "the step of pH": Broken(limits, "PH_STEP", 9.0, "pH too fast", of._sea),
    "a step of pH a tenth too long": Broken(limits, "PH_STEP", 0.33, "pH too fast", of._sea),
    "GH 3 a day": Broken(**_steps("gh", 3.0), seen="gh too fast"),
    "calcium 40 a day": Broken(
        **_steps("calcium", 40.0, "SEA_STEPS"), seen="calcium too fast", kind=of._sea
    ),
    "magnesium 80 a day": Broken(
        **_steps("magnesium", 80.0, "SEA_STEPS"), seen="magnesium too fast", kind=of._sea
    ),
    "salinity 2 a day": Broken(
        **_steps("salinity", 2.0), seen="salinity too fast", kind=of._brackish
    ),
    "salinity 2 a day in the sea": Broken(
        **_steps("salinity", 2.0, "SEA_STEPS"), seen="salinity too fast", kind=of._sea
    ),
    "plans under KH 1": Broken(limits, "KH_BLIND_BELOW", 0.0, "a blind plan"),
    "a first part too large": Broken(limits, "KH_FIRST_PART", 0.4, "a blind plan"),
    "the gate itself": Broken(limits, "NH3_GATE", 0.06, "ammonia over the gate"),
    "the gate of tender kinds": Broken(
        ammonia_gate, "is_tender", lambda _: False, "ammonia over the gate"
    ),
    "the gate at once": Broken(
        ammonia_gate, "shares_of", _without_at_once, "ammonia over the gate", of._sea
    ),
    "the gate if CO2 leaves": Broken(
        limits, "NH3_RAISE", math.inf, "ammonia over the gate if CO2 leaves"
    ),
    "the word on CO2": Broken(
        scheduling, "gate_for", _no_care(ammonia_gate.gate_for), "not told to keep CO2"
    ),
    "the upper end of ammonia": Broken(
        ammonia_gate, "_upper", lambda total: total.value, "ammonia over the gate"
    ),
    "ammonia off the scale": Broken(
        ammonia_gate, "_upper", lambda total: total.value + 0.1, "over the gate", _off_scale
    ),
    "unknown ammonia is none": Broken(
        ammonia_gate, "upper_total", lambda s: _upper_total(s) or 0.0, "ammonia over the gate"
    ),
    "old readings": Broken(limits, "STALE", limits.STALE * 8, "ammonia over the gate"),
    "unknown warmth is cool": Broken(limits, "WARMEST_ASSUMED", 12.0, "ammonia over the gate"),
    "contradictions": Broken(dosing, "conflict", lambda _: None, "dosed on a contradiction"),
    "lime that falls out": Broken(
        limits, "SATURATION_REFUSED", math.inf, "so full of lime", of._sea
    ),
    "carbonate as a buffer": Broken(
        dosing, "BUFFERS", dosing.BUFFERS | {"potassium carbonate"}, "carbonate near animals"
    ),
    "the hydrate of soda": Broken(
        dosing, "refused_substance", lambda *_: None, "without knowing the hydrate", of._sea
    ),
    "mussels and potassium": Broken(
        salts, "judge_potassium", lambda *_: None, "potassium with mussels", of._food
    ),
    "a tenth more": Broken(
        dosing, "MEQ_PER_DH", 1.1 * dosing.MEQ_PER_DH, "does not reach the wished kh"
    ),
    "hours between parts": Broken(limits, "DOSE_EVERY_HOURS", 12, "parts too close"),
    "a need in which the kit sees nothing": Broken(
        upkeep, "consumption", _Sure, "that the kit cannot see", of._sea
    ),
    "a need of a day and a half": Broken(
        upkeep, "consumption", lambda a, b: _Sure(a, b, 1.5), "readings do not show", of._sea
    ),
    "calcium and buffer together": Broken(
        salts, "is_one_at_a_time", lambda *_: False, "calcium and buffer at one time", _both
    ),
}  # fmt: skip


@pytest.mark.parametrize("broken", MUTATIONS.values(), ids=MUTATIONS)
def test_the_checker_sees_a_broken_limit(broken: Broken, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(broken.where, broken.name, broken.by)
    assert any(broken.seen in harm for harm in _harms(broken)), "nobody saw it"


def _harms(broken: Broken) -> Iterator[str]:
    chance = random.Random(4)  # noqa: S311 - cases, the same each time
    for _ in range(0, MOST, AT_A_TIME):
        cases = [broken.kind(chance) for _ in range(AT_A_TIME)]
        yield from judge([(case, answer) for case in cases for answer in of.planned(case)]).harms
