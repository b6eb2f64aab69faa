"""Potassium and other ions in the water: measured, and brought by doses, less what changes took."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from core.advice import limits
from core.advice.livestock import Species, may_live_in
from core.advice.state import State
from core.message.model import Event
from core.water import SUBSTANCES


def dosed_so_far(state: State, ion: str) -> float:
    """What logged doses brought of an ion since it was last measured, less what changes took away.

    Counts the doses of the history at hand; a water change of unknown share takes nothing, and
    doses by spoon or by volume have no known mass. A dose of the same moment went in after the
    reading. [mg/L]
    """
    volume = state.tank.volume_l
    if not volume:
        return 0.0
    measured = state.last(ion)
    total = 0.0
    for happening in sorted(state.events or (), key=lambda each: each.at):
        known = measured is not None and happening.at < measured.at
        if known or happening.at > state.now:
            continue
        event = happening.what
        salt = SUBSTANCES.get(event.substance or "")
        if event.kind == "dose" and event.grams and salt is not None:
            total += event.grams * salt.milligrams_per_gram(ion) / volume
        else:
            total *= 1.0 - _changed(event, volume)
    return total


def left_of_measured(state: State, ion: str) -> float:
    """What is left of an ion as it was last measured, once changes thinned it. [mg/L]

    The source's own share comes with the new water, where it was measured. The sea holds some
    400 mg/L potassium by nature: of that none is counted in salty water.
    """
    measured = state.last(ion)
    natural = ion == "potassium" and state.salinity > limits.SALT_WATER
    if measured is None or measured.qualifier == "<" or natural:
        return 0.0
    left = measured.value
    new = state.source.get(ion)
    for happening in sorted(state.events or (), key=lambda each: each.at):
        if happening.is_after(measured) and happening.at <= state.now:
            share = _changed(happening.what, state.tank.volume_l)
            left += share * ((0.0 if new is None else new.value) - left)
    return left


def _changed(event: Event, volume_l: float | None) -> float:
    """The share of the water that an event replaced; 0 where it is not known."""
    if event.kind != "water_change":
        return 0.0
    share = (event.percent or 0.0) / 100.0
    if not share and event.litres and volume_l:
        share = event.litres / volume_l
    return min(max(share, 0.0), 1.0)


def judge_potassium(state: State, added: Mapping[str, float]) -> str | None:
    """Judge what a dose adds: "mussels" (none for them), "much", or None.

    Parameters
    ----------
    state : State
        The tank, its animals, its doses and its potassium as last measured.
    added : mapping of str to float
        Ions of the dose. [mg/L]
    """
    more = added.get("potassium", 0.0)
    if more <= 0.0:
        return None
    kinds = may_live_in(state.tank)
    if any(row.mussel for row in kinds):
        return "mussels"
    there = left_of_measured(state, "potassium") + dosed_so_far(state, "potassium")
    return "much" if there + more > bearable(kinds) else None


def bearable(kinds: Iterable[Species]) -> float:
    """Potassium over which animals are to be thought of. [mg/L]"""
    tender = any(row.is_invertebrate for row in kinds)
    return limits.POTASSIUM_CAUTION_TENDER if tender else limits.POTASSIUM_CAUTION


def adds_up(state: State, added: Mapping[str, float]) -> bool:
    """Whether sodium of doses adds up: fresh water that was given a degree or more before."""
    if state.tank.is_sea or state.salinity > limits.SALT_WATER or not added.get("sodium"):
        return False
    return dosed_so_far(state, "sodium") >= limits.SODIUM_A_DEGREE
