"""What the store knows of a tank's water, as the advice wants it."""

from __future__ import annotations

from datetime import datetime

from bot.chat.turn import Turn
from bot.store.tanks import StoredTank
from core.advice.state import Measured, State, measured, newest

LOOKED_AT = 200
"""Newest readings that are looked through: some twenty full tests."""


async def state_of(turn: Turn, stored: StoredTank, at: datetime) -> State:
    """The state of a tank's water as of a moment, in the chat's zone."""
    rows = await turn.uow.log.readings(stored.id, until=at, limit=LOOKED_AT)
    zone = turn.chat.zone
    found: list[Measured] = []
    for row in rows:
        reading = measured(row.what, row.at.astimezone(zone), stored.tank)
        if reading is not None:
            found.append(reading)
    latest = newest(found)
    ph = latest.get("ph")
    return State(
        tank=stored.tank,
        now=at.astimezone(zone),
        readings=latest,
        earlier=tuple(r for r in found if r.analyte == "ph" and ph is not None and r.at < ph.at),
    )
