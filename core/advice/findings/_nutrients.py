"""Potassium, nitrate, phosphate and iron that were put in: judged by where they led."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from core.advice import limits
from core.advice.findings._model import Facts, Finding
from core.advice.findings._poisons import limit_of_nitrate
from core.advice.iron_salts import iron_per_gram
from core.advice.livestock import may_live_in
from core.advice.potassium import bearable, dosed_so_far, left_of_measured
from core.advice.scheduling import SEA_SALT
from core.advice.state import Happening, State
from core.water import SUBSTANCES

NUTRIENTS: Final = ("potassium", "nitrate", "phosphate", "iron")

MUCH: Final = 3
"""So many times its limit is an alarm, less a warning; common practice."""

HARMLESS_SOON: Final = frozenset({"phosphate"})
"""Feeds algae and harms no animal at what salts bring: never an alarm; common practice."""


def overdosed(state: State) -> tuple[Finding, ...]:
    """What doses just logged brought of each, where that leads over what its tank is to have."""
    doses = [
        each
        for each in state.events or ()
        if each.what.kind == "dose" and each.at == state.now and each.what.grams
    ]
    found = (_judged(analyte, doses, state) for analyte in NUTRIENTS)
    return tuple(each for each in found if each is not None)


def level(state: State, analyte: str) -> float:
    """What doses and the last reading leave of it by now; of iron, which falls out, the day's.

    [mg/L]
    """
    if analyte == "iron":
        return 0.0
    return left_of_measured(state, analyte) + dosed_so_far(state, analyte)


def _judged(analyte: str, doses: Sequence[Happening], state: State) -> Finding | None:
    volume = state.tank.volume_l
    if not volume:
        return None
    brought = {
        each.what.substance or "": (each.what.grams or 0.0) * _per_gram(each, analyte) / volume
        for each in doses
    }
    added = math.fsum(brought.values())
    limit = _limit(analyte, state)
    if added <= 0.0 or limit is None:
        return None
    total = max(level(state, analyte), added)
    if total <= limit * limits.WEIGHED:
        return None
    facts: Facts = {
        "substance": max(brought, key=lambda name: brought[name]),
        "analyte": analyte,
        "added": added,
        "total": total,
    }
    if limit > 0.0:
        facts["limit"] = limit
    found = Finding("nutrient_overdose", "warn", facts)
    alarm = is_much(found, total) and analyte not in HARMLESS_SOON
    return replace(found, severity="alarm") if alarm else found


def is_much(finding: Finding, total: float) -> bool:
    """Whether a level is so far over a finding's limit; with mussels over that of shrimps."""
    limit = float(finding.facts.get("limit", limits.POTASSIUM_CAUTION_TENDER))
    return total >= MUCH * limit


def _per_gram(dose: Happening, analyte: str) -> float:
    """What a gram of what went in holds of it; of sea salt none is too much. [mg/g]"""
    name = dose.what.substance or ""
    if analyte == "iron":
        return iron_per_gram(name)
    if name == SEA_SALT or name not in SUBSTANCES:
        return 0.0
    return SUBSTANCES[name].milligrams_per_gram(analyte)


def _limit(analyte: str, state: State) -> float | None:
    """Over which it is too much; 0 of potassium with mussels, None where nothing is known."""
    if analyte == "potassium":
        kinds = may_live_in(state.tank)
        return 0.0 if any(row.mussel for row in kinds) else bearable(kinds)
    if analyte == "nitrate":
        return limit_of_nitrate(state)
    return limits.PHOSPHATE_MOST if analyte == "phosphate" else limits.IRON_STEP
