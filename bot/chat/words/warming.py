"""The warmth of new water in words."""

from __future__ import annotations

from bot.chat.words.numbers import litres, plain
from core.advice.warming import SCALDS


def how() -> list[str]:
    """A number is missing."""
    return ["Send for example: how much hot water for 30 l at 25 from 12 and 55"]


def impossible(wanted: float, cold: float, hot: float) -> list[str]:
    """No mix of the two is that warm."""
    return [
        f"No mix of {plain(cold, 1)} and {plain(hot, 1)} °C is {plain(wanted, 1)} °C. Measure both"
        " and send them again.",
    ]


def mix(volume: float, wanted: float, needed: float, hot: float) -> list[str]:
    """How much of each, what to check, and the danger of hot water."""
    lines = [
        f"{litres(needed)} hot and {litres(volume - needed)} cold make {litres(volume)} of"
        f" {plain(wanted, 1)} °C.",
        "Stir and measure before it goes in; a tank moves 1 °C an hour and 2 °C a day at most.",
        "Hot tap water can carry copper and softener salt: run it long, or use a kettle.",
    ]
    if hot > SCALDS:
        lines.append("Water this hot scalds: cold water into the bucket first, then the hot.")
    return lines


def warm_first(coldest: float) -> str:
    """How warm the new water must be for the share that was asked about."""
    return f"Warm the new water to {plain(coldest, 1)} °C or more for that share."
