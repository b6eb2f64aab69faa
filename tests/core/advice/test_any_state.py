"""Findings of any state at all: an answer, in order, the same each time, and never a crash."""

from __future__ import annotations

import math
from datetime import timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from bot.chat.words.findings import line, why
from core.advice.findings import BY_ID, RANK, find, fresh_only
from core.advice.state import Happening, Measured, State, newest
from core.analytes import ANALYTES
from core.message.model import Event
from core.tank import KINDS, Stock, Tank
from tests.core.advice.waters import NOON

NAMES = ("neon tetra", "cherry shrimp", "oscar", "clownfish", "acropora", "swan mussel", "gryphon",
         "anubias", "angelfish", "koi")  # fmt: skip
BASES = {"ammonia": (None, "N", "NH4", "NH3"), "nitrite": (None, "N", "ion")}


@st.composite
def readings(draw: st.DrawFn) -> Measured:
    """Any reading that the parser could hand on."""
    row = ANALYTES[draw(st.sampled_from(sorted(ANALYTES)))]
    value = draw(st.floats(row.low, row.high))
    qualifier = draw(st.sampled_from("===<>~"))
    doubt = draw(st.sampled_from([0.0, row.resolution]))
    low, high = max(0.0, value - doubt), value + doubt
    if qualifier == "<":
        low, high = 0.0, value
    if qualifier == ">":
        low, high = value, math.inf
    at = NOON - timedelta(hours=draw(st.integers(0, 24 * 90)))
    basis = draw(st.sampled_from(BASES.get(row.id, (None,))))
    return Measured(row.id, value, low, high, at, qualifier, basis, doubt)  # type: ignore[arg-type]


@st.composite
def events(draw: st.DrawFn) -> Happening:
    """Anything done, some of it senseless."""
    kind = draw(st.sampled_from(["water_change", "dose", "top_up", "moved", "note", "added"]))
    amount = draw(st.one_of(st.none(), st.floats(0, 500)))
    substance = draw(st.sampled_from([None, "potassium bicarbonate", "sea salt", "moon dust"]))
    return Happening(
        NOON - timedelta(hours=draw(st.integers(-48, 24 * 90))),
        Event(kind, percent=amount, grams=amount, substance=substance),
    )


@st.composite
def states(draw: st.DrawFn) -> State:
    """Any tank, any history, in any order, with gaps and duplicates."""
    told = draw(st.lists(readings(), max_size=25))
    history: dict[str, tuple[Measured, ...]] = {}
    for reading in told:
        history[reading.analyte] = (*history.get(reading.analyte, ()), reading)
    source = newest(draw(st.lists(readings(), max_size=5)))
    stock = tuple(
        Stock(name, draw(st.sampled_from([0, 1, 6, 10_000])))
        for name in draw(st.lists(st.sampled_from(NAMES), max_size=4))
    )
    tank = Tank(
        "Fern",
        draw(st.sampled_from(KINDS)),
        draw(st.sampled_from([None, 90.0])),
        soft=draw(st.booleans()),
        stock=stock,
    )
    return State(
        tank,
        NOON,
        newest(told),
        tuple(r for r in told if r.analyte == "ph"),
        history,
        draw(st.one_of(st.none(), st.lists(events(), max_size=6).map(tuple))),
        source,
        draw(st.sampled_from([None, NOON - timedelta(days=20), NOON + timedelta(days=1)])),
        injected=draw(st.booleans()),
    )


EVERYTHING = frozenset({*ANALYTES, "stock", "dose"})


@settings(max_examples=120)
@given(states())
def test_any_state_is_answered_in_words_the_worst_first(state: State) -> None:
    found = find(state, EVERYTHING)
    assert [RANK[f.severity] for f in found] == sorted(RANK[f.severity] for f in found)
    assert found == find(state, EVERYTHING)
    assert fresh_only(found, [], NOON) == found
    for finding in found:
        assert finding.id in BY_ID
        assert len(line(finding)) < 260
        assert why(finding)
        for fact in finding.facts.values():
            assert isinstance(fact, str) or math.isfinite(fact)


@settings(max_examples=60)
@given(states())
def test_what_was_not_told_wakes_nothing(state: State) -> None:
    assert find(state, frozenset()) == []


@settings(max_examples=60)
@given(states(), st.sampled_from(sorted(ANALYTES)))
def test_steady_is_said_alone(state: State, told: str) -> None:
    ids = [finding.id for finding in find(state, frozenset({told}))]
    assert "steady" not in ids or ids == ["steady"]
