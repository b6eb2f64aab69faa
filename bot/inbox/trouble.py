"""Errors as the log may show them, and which of them pass by themselves."""

from __future__ import annotations

import logging
import random
import secrets
import traceback
from datetime import timedelta

from sqlalchemy.exc import DBAPIError, InterfaceError, OperationalError
from sqlalchemy.exc import TimeoutError as PoolTimeoutError

LONGEST_WAIT_S = 60.0


def new_reference() -> str:
    """Make a short reference that a keeper can quote and an operator can find in the log."""
    return secrets.token_hex(4)


def describe(error: BaseException) -> str:
    """Kind and place of an error, without its words: they may hold a message or a token."""
    frames = traceback.extract_tb(error.__traceback__)[-6:]
    places = " < ".join(f"{frame.filename}:{frame.lineno}" for frame in reversed(frames))
    return f"{type(error).__name__} at {places or 'no place'}"


def report(log: logging.Logger, text: str, *facts: object) -> None:
    """Tell the operator of an error, never with a traceback: its last line would be words."""
    log.error(text, *facts)


def is_database_trouble(error: BaseException) -> bool:
    """Tell whether the database was busy or away, which says nothing about the message."""
    if isinstance(error, DBAPIError) and error.connection_invalidated:
        return True
    kinds = (OperationalError, InterfaceError, PoolTimeoutError, ConnectionError)
    return isinstance(error, kinds)


def wait_before(attempt: int, longest_s: float = LONGEST_WAIT_S) -> timedelta:
    """How long to wait after a failed attempt (from 1): doubling from a second, and uneven."""
    full = min(longest_s, 2.0 ** min(attempt - 1, 10))
    return timedelta(seconds=full * random.uniform(0.75, 1.0))  # noqa: S311 - spreads retries
