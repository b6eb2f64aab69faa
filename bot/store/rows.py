"""Rows that every message writes: put in by a statement that was built once."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, cast

from sqlalchemy import CursorResult, Insert
from sqlalchemy.ext.asyncio import AsyncSession


async def new_row(session: AsyncSession, into: Insert, columns: Mapping[str, Any]) -> int:
    """Put a row into a table and return its id; as an object of the session it costs thrice."""
    made = cast("CursorResult[Any]", await session.execute(into, columns))
    (row_id,) = cast("tuple[int]", made.inserted_primary_key)
    return row_id
