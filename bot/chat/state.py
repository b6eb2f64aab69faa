"""What the store knows of a tank's water, as the advice wants it."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from bot.chat.turn import Turn
from bot.store.tanks import StoredTank
from core.advice.state import Measured, State, measured, newest
from core.tank import Stock

LOOKED_AT = 48
"""Newest readings that are looked through: some ten tests of five analytes."""

DECIDING = ("kh", "ph", "gh", "ammonia", "temperature", "salinity", "chloride")
"""What an old reading of still matters, if only to say that it is old."""


async def state_of(turn: Turn, stored: StoredTank, at: datetime) -> State:
    """The state of a tank's water as of a moment, in the chat's zone."""
    rows = await turn.uow.log.readings(stored.id, until=at, limit=LOOKED_AT)
    missing = set(DECIDING) - {row.what.analyte for row in rows}
    if missing and len(rows) == LOOKED_AT:
        rows += await turn.uow.log.last_of_each(stored.id, sorted(missing), until=at)
    zone = turn.chat.zone
    found: list[Measured] = []
    for row in rows:
        reading = measured(row.what, row.at.astimezone(zone), stored.tank)
        if reading is not None:
            found.append(reading)
    latest = newest(found)
    animals = await turn.uow.log.stock(stored.id, until=at)
    stock = tuple(Stock(species, count) for species, count in animals.items())
    ph = latest.get("ph")
    return State(
        tank=replace(stored.tank, stock=stock),
        now=at.astimezone(zone),
        readings=latest,
        earlier=tuple(r for r in found if r.analyte == "ph" and ph is not None and r.at < ph.at),
    )
