"""Source waters in words."""

from __future__ import annotations

from collections.abc import Sequence


def none_yet() -> list[str]:
    """No source is on record."""
    return ["No source water yet. Send for example: /source tap ph 7.6 kh 8 gh 12 no3 10 temp 12"]


def how() -> list[str]:
    """The line was not understood."""
    return ["Send for example: /source tap ph 7.6 kh 8 gh 12, or: /source tap for fern"]


def unknown(name: str, names: Sequence[str]) -> list[str]:
    """No source of that name."""
    have = f" You have {', '.join(names)}." if names else ""
    return [f"There is no source called {name[:60]}.{have}", *how()]


def no_such_tank(name: str) -> list[str]:
    """No tank of that name."""
    return [f"There is no tank called {name[:60]}."]


def chosen(source: str, tank: str) -> list[str]:
    """A tank is filled from a source."""
    return [f"{tank} is filled from {source} from now on."]


def empty(source: str) -> list[str]:
    """A source without readings."""
    return [f"{source}: nothing measured yet."]
