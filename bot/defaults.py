"""What holds in a chat until somebody there says otherwise."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Units = Literal["metric", "us", "imperial"]


@dataclass(frozen=True, slots=True)
class Defaults:
    """Settings of a new chat.

    Attributes
    ----------
    timezone : str or None
        IANA name; None where nobody said: then UTC, and the first reminder asks.
    units : str
        metric; us (°F, US gallons) or imperial (°C, imperial gallons).
    language : str
        Of the replies; English for now.
    """

    timezone: str | None = None
    units: Units = "metric"
    language: str = "en"
