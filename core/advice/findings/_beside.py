"""What a finding must say otherwise because of another one that is said beside it."""

from __future__ import annotations

from typing import Final

from core.advice.findings._model import Finding

ACTED_ON: Final = frozenset(
    {"ammonia", "nitrite", "chlorine", "low_oxygen", "copper", "copper_low_kh"}
)
"""Poison, or want of air: what is to be done at once waits for no retest of another value."""


def ammonia_first(found: list[Finding]) -> list[Finding]:
    """Mark a low KH beside ammonia: a buffer would set the poison free."""
    if not any(finding.id in {"ammonia", "ammonia_without_ph"} for finding in found):
        return found
    return [
        Finding(each.id, each.severity, {**each.facts, "ammonia_first": 1.0})
        if each.id == "low_kh"
        else each
        for each in found
    ]


def retest_first(found: list[Finding]) -> list[Finding]:
    """Mark a low KH that no dose may rest on: it or pH jumped, or pH is beyond belief.

    A jump beside poison is marked too: then not everything may wait for the retest.
    """
    if any(_is_jump(f, "kh", "gh") for f in found):
        found = [f for f in found if f.id != "kh_above_gh"]  # of water that is in doubt
    if any(_is_jump(f, "ph") for f in found):
        found = [f for f in found if f.id not in {"ph_moved", "ph_moved_other_hour"}]
    if any(f.id in ACTED_ON and f.severity != "note" for f in found):
        found = [
            Finding(each.id, each.severity, {**each.facts, "urgent": 1.0})
            if each.id == "sudden_jump"
            else each
            for each in found
        ]
    doubted = (f.id == "ph_extreme" or _is_jump(f, "kh", "ph") for f in found)
    if not any(doubted):
        return found
    return [
        Finding(each.id, each.severity, {**each.facts, "retest_first": 1.0})
        if each.id == "low_kh"
        else each
        for each in found
    ]


def _is_jump(finding: Finding, *analytes: str) -> bool:
    return finding.id == "sudden_jump" and finding.facts["analyte"] in analytes
