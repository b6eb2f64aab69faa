"""What a finding must say otherwise because of another one that is said beside it."""

from __future__ import annotations

from typing import Final

from core.advice.ammonia_gate import gate_limit, shown, upper_total
from core.advice.findings._model import Finding, within
from core.advice.nobodys import is_nobodys
from core.advice.outlook import temperature_of
from core.advice.state import State
from core.water.ammonia import un_ionised_fraction

ACTED_ON: Final = frozenset(
    {"ammonia", "nitrite", "chlorine", "low_oxygen", "copper", "copper_low_kh"}
)
"""Poison, or want of air: what is to be done at once waits for no retest of another value."""

MOVES: Final = frozenset({"ph_moved", "ph_moved_other_hour"})
LEAPS: Final = frozenset({"ph_fell", "ph_rose"})

OF_CARBON: Final = frozenset({"contradiction", "much_co2", "perhaps_much_co2", "co2_by_older_kh"})
"""Findings that hold a pH against its KH."""

PH_IN_AIR: Final = 8.3
"""pH of water with KH 4 °dH in balance with the air at 25 °C: the highest that a buffer leads to.

By the constants of carbonic acid in Plummer & Busenberg 1982 (from memory: K1 10^-6.35, K0
10^-1.47) and 420 µatm."""


def ammonia_first(found: list[Finding], state: State) -> list[Finding]:
    """Mark a low KH beside ammonia: a buffer would set the poison free.

    Sour water holds much ammonium that harms nobody yet: what counts is what it would be once a
    buffer has raised pH.
    """
    warned = any(finding.id in {"ammonia", "ammonia_without_ph"} for finding in found)
    if not warned and not would_poison(state):
        return found
    return [
        Finding(each.id, each.severity, {**each.facts, "ammonia_first": 1.0})
        if each.id == "low_kh"
        else each
        for each in found
    ]


def would_poison(state: State) -> bool:
    """Whether the ammonia of a water is over the gate once its pH is as high as a buffer leads."""
    total = upper_total(state) if shown(state) is not None else None
    if total is None or is_nobodys(state):
        return False
    warmth = within(temperature_of(state)[0], 0.0, 50.0)
    share = un_ionised_fraction(PH_IN_AIR, warmth, within(state.salinity, 0.0, 60.0))
    return total * share > gate_limit(state)


def retest_first(found: list[Finding]) -> list[Finding]:
    """Mark a low KH that no dose may rest on: it or pH jumped, or pH is beyond belief.

    Or pH is low by carbon dioxide, which is let out first.
    A jump beside poison is marked too: then not everything may wait for the retest.
    """
    if any(_is_jump(f, "kh", "gh") for f in found):
        found = [f for f in found if f.id != "kh_above_gh"]  # of water that is in doubt
    if any(_is_jump(f, "ph") for f in found):
        found = [f for f in found if f.id not in MOVES | LEAPS]
    found = _leaps_apart(found)
    if any(f.id in ACTED_ON and f.severity != "note" for f in found):
        found = [
            Finding(each.id, each.severity, {**each.facts, "urgent": 1.0})
            if each.id == "sudden_jump"
            else each
            for each in found
        ]
    doubted = (f.id in {"ph_extreme", "much_co2"} or _is_jump(f, "kh", "ph") for f in found)
    if not any(doubted):
        return found
    return [
        Finding(each.id, each.severity, {**each.facts, "retest_first": 1.0})
        if each.id == "low_kh"
        else each
        for each in found
    ]


def _leaps_apart(found: list[Finding]) -> list[Finding]:
    """A leap of pH is no swing; where its carbon dioxide is spoken of, that says what to do."""
    if not any(each.id in LEAPS for each in found):
        return found
    told = any(each.id in OF_CARBON for each in found)
    return [
        Finding(each.id, each.severity, {**each.facts, "told": 1.0})
        if told and each.id == "ph_fell"
        else each
        for each in found
        if each.id not in MOVES
    ]


def _is_jump(finding: Finding, *analytes: str) -> bool:
    return finding.id == "sudden_jump" and finding.facts["analyte"] in analytes
