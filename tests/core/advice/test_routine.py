"""The saw-tooth of a routine, by carrying it out."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.advice.routine import safe_routine, saw_tooth, share_to_stay_under


@given(
    per_day=st.floats(0.1, 5),
    source=st.floats(0, 20),
    share=st.floats(0.05, 0.95),
    every=st.floats(1, 30),
)
def test_it_ends_where_many_rounds_end(
    per_day: float, source: float, share: float, every: float
) -> None:
    value = 80.0
    for _ in range(2000):
        high = value + per_day * every
        value = high + (source - high) * share
    found = saw_tooth(per_day, source, share, every)
    assert found.high == pytest.approx(high)
    assert found.low == pytest.approx(value)


@given(
    per_day=st.floats(0.1, 3),
    source=st.floats(0, 20),
    target=st.floats(1, 60),
    every=st.floats(1, 14),
)
def test_the_share_keeps_the_high_at_the_target(
    per_day: float, source: float, target: float, every: float
) -> None:
    share = share_to_stay_under(target, per_day, source, every)
    if share is None:
        assert target <= source or per_day * every > target - source
    else:
        assert saw_tooth(per_day, source, share, every).high == pytest.approx(target)


@given(
    per_day=st.floats(0.05, 20.0),
    source=st.floats(0.0, 30.0),
    above=st.floats(0.5, 80.0),
    largest=st.floats(0.01, 1.0),
)
def test_a_safe_routine_holds_its_target_with_no_change_larger_than_is_safe(
    per_day: float, source: float, above: float, largest: float
) -> None:
    """Played through round by round from the target itself."""
    target = source + above
    found = safe_routine(target, per_day, source, largest)
    if found is None:
        # Not even daily changes of the largest share hold it.
        assert largest * above < per_day * (1.0 + 1e-9)
        return
    assert 0.0 < found.share <= largest
    level = target
    for _ in range(200):
        level -= found.share * (level - source)
        level += per_day * found.every_days
        assert level <= target * (1.0 + 1e-9)
