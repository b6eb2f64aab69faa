"""Column types that both engines share."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Any

from sqlalchemy import DateTime, Dialect
from sqlalchemy.types import TypeDecorator


class UtcDateTime(TypeDecorator[datetime]):
    """An aware moment, kept in UTC; a naive one is refused before it can be misread.

    PostgreSQL keeps ``timestamp with time zone``; SQLite keeps UTC text of fixed width, so that
    comparing texts compares moments.
    """

    impl = DateTime
    cache_ok = True

    def load_dialect_impl(self, dialect: Dialect) -> Any:
        """``timestamptz`` where the engine has it."""
        return dialect.type_descriptor(DateTime(timezone=dialect.name == "postgresql"))

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """Aware in, UTC to the engine."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError("a moment without a zone cannot be stored")
        utc = value.astimezone(UTC)
        return utc if dialect.name == "postgresql" else utc.replace(tzinfo=None)

    def process_result_value(self, value: datetime | None, _dialect: Dialect) -> datetime | None:
        """Aware UTC out, whatever the engine gave."""
        if value is None:
            return None
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)
