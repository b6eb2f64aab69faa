"""Potassium and sodium summed over doses: what earlier ones left, less what changes took away."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from core.advice import limits
from core.advice.state import State
from core.water import SUBSTANCES

MINDS: Final = ("snail", "shrimp", "nerite", "prawn", "crayfish")
MUSSELS: Final = ("mussel", "clam")


def dosed_so_far(state: State, ion: str) -> float:
    """What logged doses brought of an ion since it was last measured, less what changes took away.

    Counts the doses of the history at hand; a water change of unknown share takes nothing, and
    doses by spoon or by volume have no known mass. [mg/L]
    """
    volume = state.tank.volume_l
    if not volume:
        return 0.0
    measured = state.last(ion)
    total = 0.0
    for happening in sorted(state.events or (), key=lambda each: each.at):
        known = measured is not None and happening.at <= measured.at
        if known or happening.at > state.now:
            continue
        event = happening.what
        salt = SUBSTANCES.get(event.substance or "")
        if event.kind == "dose" and event.grams and salt is not None:
            total += event.grams * salt.milligrams_per_gram(ion) / volume
        elif event.kind == "water_change":
            share = (event.percent or 0.0) / 100.0 or (event.litres or 0.0) / volume
            total *= 1.0 - min(max(share, 0.0), 1.0)
    return total


def judge_potassium(state: State, added: Mapping[str, float]) -> str | None:
    """Judge what a dose adds: "mussels" (none for them), "much", or None.

    Parameters
    ----------
    state : State
        The tank, its animals and its doses.
    added : mapping of str to float
        Ions of the dose. [mg/L]
    """
    more = added.get("potassium", 0.0)
    if more <= 0.0:
        return None
    kept = " ".join(stock.species.casefold() for stock in state.tank.stock if stock.count > 0)
    if any(word in kept for word in MUSSELS):
        return "mussels"
    tender = any(word in kept for word in MINDS)
    limit = limits.POTASSIUM_CAUTION_TENDER if tender else limits.POTASSIUM_CAUTION
    return "much" if dosed_so_far(state, "potassium") + more > limit else None


def adds_up(state: State, added: Mapping[str, float]) -> bool:
    """Whether sodium of doses adds up: fresh water that was given a degree or more before."""
    if state.tank.is_sea or state.salinity > limits.SALT_WATER or not added.get("sodium"):
        return False
    return dosed_so_far(state, "sodium") >= limits.SODIUM_A_DEGREE
