"""Short ways to say a state of a tank."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC, datetime, timedelta

from core.advice.findings import Finding, find
from core.advice.state import Happening, Measured, State, newest
from core.message.model import Event
from core.tank import Stock, Tank

NOON = datetime(2026, 3, 1, 12, tzinfo=UTC)

WHOLE_STEPS = {"kh": 1.0, "gh": 1.0}


def read(analyte: str, value: float, days_ago: float = 0.0, **parts: object) -> Measured:
    """A reading, exact unless its doubt is said."""
    at = NOON - timedelta(days=days_ago)
    held: dict[str, object] = {"low": value, "high": value, "at": at} | parts
    return Measured(analyte, value, **held)  # type: ignore[arg-type]


def by_kit(analyte: str, value: float, days_ago: float = 0.0) -> Measured:
    """A reading as a drop kit or a colour chart tells it."""
    if analyte in WHOLE_STEPS:
        return read(analyte, value, days_ago, low=max(0.0, value - 1.0), step=1.0)
    if analyte == "ph":
        return read(analyte, value, days_ago, low=value - 0.2, high=value + 0.2, step=0.2)
    return read(analyte, value, days_ago)


def done(kind: str, days_ago: float, **amounts: object) -> Happening:
    """Something done to the tank."""
    return Happening(NOON - timedelta(days=days_ago), Event(kind, **amounts))  # type: ignore[arg-type]


def tank(*stock: str, kind: str = "fresh", **parts: object) -> Tank:
    """A tank with six of each kind."""
    animals = tuple(Stock(name, 6) for name in stock)
    return Tank("Fern", kind, stock=animals, **parts)  # type: ignore[arg-type]


def state(
    *readings: Measured,
    of: Tank | None = None,
    source: Iterable[Measured] = (),
    **parts: object,
) -> State:
    """The state of a tank with all these readings in its history."""
    history: dict[str, tuple[Measured, ...]] = {}
    for reading in readings:
        history[reading.analyte] = (*history.get(reading.analyte, ()), reading)
    latest = newest(readings)
    ph = latest.get("ph")
    earlier = sorted(
        (r for r in readings if r.analyte == "ph" and ph is not None and r.at < ph.at),
        key=lambda r: r.at,
        reverse=True,
    )
    return State(
        of or Tank("Fern"),
        NOON,
        latest,
        tuple(earlier),
        history,
        source={r.analyte: r for r in source},
        **parts,  # type: ignore[arg-type]
    )


def findings(held: State, *told: str) -> dict[str, Finding]:
    """What is found, by id, when everything was just told."""
    return {f.id: f for f in find(held, frozenset(told) or frozenset({*held.readings, "stock"}))}
