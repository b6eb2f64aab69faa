"""Animals that were moved between tanks, in words."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.text import _


def whence(names: Sequence[str]) -> list[str]:
    """Ask which tank they left."""
    asked = _("Which tank did they leave? {names}. Nothing is stored yet.")
    return [asked.format(names=", ".join(names))]


def too_many(count: int) -> list[str]:
    """More animals than a tank holds, most likely a slip."""
    asked = _("{count} moved at once? That is a great many, so nothing is stored. Send it again.")
    return [asked.format(count=f"{count:,}")]


def moved_out(animals: str, to: str | None) -> str:
    """Animals that left a tank, for another or for good."""
    if to is None:
        return _("moved {animals} away").format(animals=animals)
    return _("moved {animals} to {tank}").format(animals=animals, tank=to)


def moved_in(animals: str, whence: str | None) -> str:
    """Animals that came to a tank from another."""
    if whence is None:
        return _("{animals} moved in").format(animals=animals)
    return _("{animals} moved in from {tank}").format(animals=animals, tank=whence)
