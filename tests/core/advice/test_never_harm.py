"""The planner of the chat against a second, short opinion; a million cases in tests/bench."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.advice.plan import Plan, Weighed
from tests.core.advice import never_harm_change_cases, never_harm_changes
from tests.core.advice.never_harm import judge
from tests.core.advice.never_harm_cases import cases, planned

CASES = 5_000
PARTS = (7, 8, 9, 10)
"""Seeds of four parts, 20,000 cases in all, that two cores can share; the bench runs a million."""

CHANGES = 240
"""Water changes, each with its schedule and all its days: some 15 ms a change, so fewer of them."""


@pytest.mark.parametrize("seed", PARTS)
def test_no_plan_harms_and_what_can_be_helped_is(seed: int) -> None:
    """Refusing everything is no way out; that plans reach the wish is among the harms."""
    verdict = judge([(case, answer) for case in cases(CASES, seed) for answer in planned(case)])
    assert verdict.harms == []
    assert verdict.planned > CASES / 10
    assert verdict.safe > CASES / 6
    assert verdict.safe_planned >= 0.95 * verdict.safe
    assert len(verdict.refused) >= 8, "the cases hardly try the gates"


@pytest.mark.parametrize(
    ("spoil", "harm"),
    [
        (lambda p: replace(p, count=1), "too fast"),
        (lambda p: replace(p, every_hours=6), "parts too close"),
        (lambda p: replace(p, salts=(Weighed("a white powder", 3.0),)), "nobody knows"),
        (lambda p: replace(p, salts=(replace(p.salts[0], grams=2 * p.grams),)), "reach the wish"),
        (lambda p: replace(p, salts=(replace(p.salts[0], substance="calcium sulfate"),)), "wish"),
    ],
)
def test_the_checker_sees_a_spoilt_plan(spoil: object, harm: str) -> None:
    """A checker that never complains proves nothing."""
    found: list[str] = []
    for case in cases(60, 3):
        for plan in planned(case):
            if isinstance(plan, Plan) and plan.count > 2 and plan.goals[0].analyte == "kh":
                found += judge([(case, spoil(plan))]).harms  # type: ignore[operator]
    assert any(harm in each for each in found)


def test_no_water_change_harms_and_most_that_can_be_made_are() -> None:
    changed = never_harm_changes.judge(never_harm_change_cases.cases(CHANGES, 5))
    assert changed.harms == []
    assert changed.as_asked > CHANGES / 20
    assert changed.in_steps > CHANGES / 20
    assert changed.emergencies > 0
    assert changed.safe_planned >= 0.95 * changed.safe
    assert len(changed.refused) >= 20, "the cases hardly try the limits"
