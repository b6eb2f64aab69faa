"""Quarantine: what is done with a tank of its own, how often and how long; common practice."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

QUARANTINE_DAYS: Final = 28
"""Common practice, no source."""


@dataclass(frozen=True, slots=True)
class Duty:
    """Something to do with a quarantine tank, every so many days until it ends."""

    id: Literal["look", "test", "change"]
    every_days: int


QUARANTINE: Final[tuple[Duty, ...]] = (Duty("look", 1), Duty("test", 2), Duty("change", 3))
"""A tank of its own with its own nets and reminders, for `QUARANTINE_DAYS`; common practice, no
source. No medicine by guess: a fish vet decides."""
