"""A new water as it stands today, whatever it comes from: its readings and what nobody measured."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Final

from bot.chat.turn import Turn
from bot.countries import latitude_of
from bot.store.log import Stored
from core.advice import limits
from core.advice.blending import pure
from core.advice.seasons import Season
from core.advice.state import Measured, State, measured
from core.advice.tainted import total_chlorine
from core.message.model import Value
from core.tank import Tank

PURE_NAMES: Final[Mapping[str, str]] = {"ro": "RO", "rain": "rain", "distilled": "distilled"}

_UNTREATED = re.compile(
    r"\b(ro|r\.o\.|osmosis|rain|rain ?water|distilled|demineralised|well|spring|bottled|mix)\b",
    re.IGNORECASE,
)
"""Names of waters that no supplier treats."""


@dataclass(frozen=True, slots=True)
class Supply:
    """A new water as it stands today.

    Attributes
    ----------
    name : str
        As the keeper calls it, or the blend in their words.
    state : State
        Its readings as it comes out: the fresh ones.
    treated : float
        Share of it that may hold chlorine which nobody measured, 0 to 1.
    stood : State or None
        The same once it has stood, where that was measured.
    season : Season or None
        Whose profile is used; None for a water without seasons.
    certain : bool
        False where nothing tells which season it is.
    other : Supply or None
        The same in the other season, where that is known and differs.
    measured_at : datetime or None
        When it was measured, where that is too long ago.
    parts : tuple of (str, float)
        What it is blended of.
    pure : bool
        True for RO, rain and distilled water.
    """

    name: str
    state: State
    treated: float = 0.0
    stood: State | None = None
    season: Season | None = None
    certain: bool = True
    other: Supply | None = None
    measured_at: datetime | None = None
    parts: tuple[tuple[str, float], ...] = ()
    pure: bool = False

    @property
    def readings(self) -> Mapping[str, Measured]:
        """What is known of it."""
        return self.state.readings


@dataclass(frozen=True, slots=True)
class Unclear:
    """Why the new water of a question cannot be told: ids of `bot.chat.words.waters.UNCLEAR`."""

    reason: str
    names: tuple[str, ...] = ()
    total: float | None = None


def latitude(turn: Turn) -> float | None:
    """Where the chat is, by its zone; None where nobody set one."""
    return latitude_of(turn.chat.zone_name) if turn.chat.zone_known else None


def pure_supply(turn: Turn, kind: str) -> Supply:
    """RO, rain or distilled water that nobody measured."""
    name = PURE_NAMES[kind]
    return Supply(name, pure(name, turn.local_now), pure=True)


def read(turn: Turn, rows: Iterable[Stored[Value]], tank: Tank) -> list[Measured]:
    """Stored values as intervals, newest first, in the chat's zone."""
    zone = turn.chat.zone
    told = (measured(row.what, row.at.astimezone(zone), tank, row.entry_id) for row in rows)
    return [reading for reading in told if reading is not None]


def treated(supply: Supply) -> float:
    """How much of a water may hold chlorine: by its reading, else by where it comes from."""
    total = total_chlorine(supply.state)
    if total is not None:
        return float(total > limits.CHLORINE_WARN)
    salt = supply.state.last("salinity")
    prepared = salt is not None and salt.value > limits.SALT_WATER
    return float(not prepared and not supply.pure and _UNTREATED.search(supply.name) is None)
