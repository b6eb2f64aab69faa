"""The statements of the log, made once, and its rows as what they hold."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Any, cast

from sqlalchemy import (
    ColumnElement,
    Integer,
    RowMapping,
    Select,
    Table,
    bindparam,
    exists,
    func,
    select,
)

from bot.store.entries import Stored
from bot.store.models import EntryRow, EventRow, ReadingRow
from core.advice.stock import COMING, GOING
from core.message.model import Event, Value

ENTRIES, READINGS, EVENTS = (cast("Table", of.__table__) for of in (EntryRow, ReadingRow, EventRow))
"""The tables themselves: rows of hundreds, for which mapped objects cost more than all else."""

ENTRY_COLUMNS = (
    "update_id", "message_ref", "author_id", "author_name", "kind", "text", "at", "replaces",
)  # fmt: skip
NEW, NEW_READINGS, NEW_EVENTS = (of.insert() for of in (ENTRIES, READINGS, EVENTS))

_EVENT_COLUMNS = (
    "percent", "litres", "grams", "millilitres", "spoons", "count", "substance", "species", "text",
)  # fmt: skip


_HEIR = ENTRIES.alias("heir")
LIVE: ColumnElement[bool] = ~exists().where(_HEIR.c.replaces == ENTRIES.c.id)
"""Of the entry in the surrounding query: nothing replaces it. Made once, since making it costs
more than running it."""

_READING_COLUMNS = tuple(
    READINGS.c[name]
    for name in (
        "analyte", "value", "low", "high", "qualifier", "unit", "canonical_low", "canonical_high",
        "canonical_unit", "basis", "tank_id", "measured_at", "entry_id",
    )
)  # fmt: skip
"""In the order in which `reading` takes them: of one tank there may be hundreds."""
_NEWEST_FIRST = (READINGS.c.measured_at.desc(), READINGS.c.id.desc())
_EVENT_ALL = tuple(EVENTS.c)


@cache
def readings(analytes: bool, since: bool, until: bool, limit: bool) -> Select[Any]:
    """Build the query for a tank's readings with these restrictions, once."""
    query = (
        select(*_READING_COLUMNS)
        .join(ENTRIES, ENTRIES.c.id == READINGS.c.entry_id)
        .where(READINGS.c.tank_id == bindparam("tank"), LIVE)
        .order_by(*_NEWEST_FIRST)
    )
    if analytes:
        query = query.where(READINGS.c.analyte.in_(bindparam("analytes", expanding=True)))
    if since:
        query = query.where(READINGS.c.measured_at >= bindparam("since"))
    if until:
        query = query.where(READINGS.c.measured_at <= bindparam("until"))
    return query.limit(bindparam("most", type_=Integer)) if limit else query


def _last_of_each() -> Select[Any]:
    place = func.row_number().over(partition_by=READINGS.c.analyte, order_by=_NEWEST_FIRST)
    ranked = (
        select(READINGS.c.id, place.label("place"))
        .join(ENTRIES, ENTRIES.c.id == READINGS.c.entry_id)
        .where(
            READINGS.c.tank_id == bindparam("tank"),
            READINGS.c.analyte.in_(bindparam("analytes", expanding=True)),
            READINGS.c.measured_at <= bindparam("until"),
            LIVE,
        )
        .subquery()
    )
    return (
        select(*_READING_COLUMNS)
        .join(ranked, ranked.c.id == READINGS.c.id)
        .where(ranked.c.place == 1)
    )


LAST_OF_EACH = _last_of_each()


@cache
def events(kinds: bool, since: bool) -> Select[Any]:
    """Build the query for a tank's events with these restrictions, once."""
    query = (
        select(*_EVENT_ALL)
        .join(ENTRIES, ENTRIES.c.id == EVENTS.c.entry_id)
        .where(EVENTS.c.tank_id == bindparam("tank"), LIVE)
        .order_by(EVENTS.c.happened_at.desc(), EVENTS.c.id.desc())
    )
    if kinds:
        query = query.where(EVENTS.c.kind.in_(bindparam("kinds", expanding=True)))
    return query.where(EVENTS.c.happened_at >= bindparam("since")) if since else query


READINGS_OF_ENTRY = (
    select(*_READING_COLUMNS)
    .where(READINGS.c.entry_id == bindparam("entry"))
    .order_by(READINGS.c.id)
)
EVENTS_OF_ENTRY = (
    select(*_EVENT_ALL).where(EVENTS.c.entry_id == bindparam("entry")).order_by(EVENTS.c.id)
)

STOCK = (
    select(EVENTS.c.kind, EVENTS.c.species, EVENTS.c.count)
    .join(ENTRIES, ENTRIES.c.id == EVENTS.c.entry_id)
    .where(
        EVENTS.c.tank_id == bindparam("tank"),
        EVENTS.c.kind.in_(sorted(COMING | GOING)),
        EVENTS.c.happened_at <= bindparam("until"),
        LIVE,
    )
    .order_by(EVENTS.c.happened_at, EVENTS.c.id)
)


def reading_columns(entry_id: int, reading: Stored[Value]) -> dict[str, Any]:
    """The columns of a row for a reading of an entry."""
    value = reading.what
    low, high = (
        value.canonical
        if isinstance(value.canonical, tuple)
        else (value.canonical, value.canonical)
    )
    return {
        "entry_id": entry_id,
        "tank_id": reading.tank_id,
        "analyte": value.analyte,
        "value": value.value,
        "low": value.low,
        "high": value.high,
        "qualifier": value.qualifier,
        "unit": value.unit,
        "canonical_low": low,
        "canonical_high": high,
        "canonical_unit": value.canonical_unit,
        "basis": value.basis,
        "measured_at": reading.at,
    }


def event_columns(entry_id: int, event: Stored[Event]) -> dict[str, Any]:
    """The columns of a row for an event of an entry."""
    return {
        "entry_id": entry_id,
        "tank_id": event.tank_id,
        "kind": event.what.kind,
        "happened_at": event.at,
        **{name: getattr(event.what, name) for name in _EVENT_COLUMNS},
    }


def reading(row: Sequence[Any]) -> Stored[Value]:
    """The reading that a row of `_READING_COLUMNS` holds."""
    analyte, value, low, high, qualifier, unit, least, most, canonical_unit, basis, *where = row
    tank, at, entry = where
    canonical = least if least is None or most is None or least == most else (least, most)
    what = Value(analyte, value, low, high, qualifier, unit, canonical, canonical_unit, basis)
    return Stored(what, tank, at, entry)


def event(row: RowMapping) -> Stored[Event]:
    """The event that a row holds."""
    amounts: dict[str, Any] = {name: row[name] for name in _EVENT_COLUMNS}
    what = Event(kind=row["kind"], **amounts)
    return Stored(what, row["tank_id"], row["happened_at"], row["entry_id"])
