"""Every number of a change: the tank before it, at once, stood and aired, and their ends."""

from __future__ import annotations

from typing import Any

from bot.chat.change_asked import Asked
from core.advice.change_doubt import ChangeDoubt
from core.advice.change_plan import ChangePlan
from core.advice.changes import Mixed, nh3_now
from core.advice.changes import Waters as Mixing
from core.advice.state import State


def facts_of(asked: Asked, waters: Mixing, plan: ChangePlan, ro_share: float) -> dict[str, Any]:
    """All of a plan, and the water before and after what was asked."""
    facts: dict[str, Any] = {
        "tank": asked.stored.name,
        "source": asked.source_name,
        "share": plan.share,
        "largest_safe_share": plan.largest_safe_share,
        "steps": list(plan.steps),
        "before": _before(asked, waters),
        "at_once": water_after(waters, plan.after, "at_once"),
        "stood": water_after(waters, plan.after, "expected"),
        "if_co2_leaves": water_after(waters, plan.after, "leaves"),
    }
    if asked.stored.tank.volume_l is not None:
        facts["litres"] = plan.share * asked.stored.tank.volume_l
    if plan.broken:
        facts["broken"] = list(plan.broken)
    if plan.emergency:
        facts["emergency"] = True
    if ro_share:
        facts["ro_share"] = ro_share
    if plan.only_below is not None:
        facts["only_if_ammonia_below"] = plan.only_below
    return facts


def doubt_facts(doubt: ChangeDoubt | None) -> dict[str, Any]:
    """Between which ends the kits leave the figures, and what decides."""
    if doubt is None:
        return {}
    told: dict[str, Any] = {
        stage: {name: list(ends) for name, ends in figures.items()}
        for stage, figures in doubt.stages.items()
    }
    found = {"interval": {**told, "largest_safe_share": list(doubt.largest_safe_share)}}
    return found | ({"retest_first": list(doubt.retest_first)} if doubt.retest_first else {})


def _before(asked: Asked, waters: Mixing) -> dict[str, float]:
    found = readings_of(asked.tank, "kh", "gh", "nitrate")
    if max(waters.tank.water.salinity, waters.source.salinity) > 0.0:
        found["salinity"] = waters.tank.water.salinity
    if waters.tank.ph is not None:
        found["ph"] = waters.tank.ph
    if not waters.tank.temperature_assumed:
        found["temperature"] = waters.tank.water.temperature
    if waters.total_n is not None and waters.tank.ph is not None:
        found["nh3_n"] = nh3_now(waters)[0]
    return found


def water_after(waters: Mixing, after: Mixed, stage: str) -> dict[str, float]:
    """The water after a change, as far as it is known: `at_once`, `expected` or `leaves`."""
    found: dict[str, float] = {"kh": after.water.kh}
    if waters.tank.co2_known or stage == "leaves":
        found["ph"] = float(getattr(after, stage))
    if "gh" in waters.known and not waters.is_salty:
        found["gh"] = after.water.gh
    if max(waters.tank.water.salinity, waters.source.salinity) > 0.0:
        found["salinity"] = float(after.water.salinity)
    if waters.nitrate is not None:
        found["nitrate"] = waters.nitrate[0] + (waters.nitrate[1] - waters.nitrate[0]) * after.share
    if not waters.tank.temperature_assumed:
        warm = after.water if stage == "at_once" else waters.tank.water
        found["temperature"] = warm.temperature
    if waters.total_n is not None:
        place = ("at_once", "expected", "leaves").index(stage)
        if "ph" in found:
            found["nh3_n"] = float(after.nh3[place])
    return found


def readings_of(state: State, *names: str) -> dict[str, Any]:
    """The last readings of some analytes, as far as there are any."""
    readings = ((name, state.last(name)) for name in names)
    return {name: reading.value for name, reading in readings if reading is not None}
