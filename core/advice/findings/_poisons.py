"""Ammonia, nitrite, nitrate, chlorine, copper, too little oxygen, too much potassium."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from datetime import timedelta
from typing import Final

from core.advice import limits
from core.advice.day_ph import highest_ph
from core.advice.findings._model import Facts, Finding, Severity, seen, upper, within
from core.advice.livestock import kept_in, may_live_in, nitrate_limit
from core.advice.nobodys import is_nobodys
from core.advice.potassium import bearable, dosed_so_far, left_of_measured
from core.advice.setup import is_reef, plants_grow
from core.advice.state import Measured, State, ammonia_as_n, nitrite_as_no2
from core.water.ammonia import acute_criterion, chronic_criterion, un_ionised_fraction
from core.water.oxygen import oxygen_saturation


def ammonia(state: State) -> Finding | None:
    """Poisonous ammonia, and ammonium over the EPA 2013 criteria (fresh water).

    A result under the kit's scale ("<") is no finding: the kit cannot see it.
    """
    total = seen(state.fresh("ammonia"))
    if total is None or (is_nobodys(state) and feeds_filter(state)):
        return None
    judged = judge_ammonia(state)
    if judged is None:
        total_n = ammonia_as_n(upper(total), total.basis)
        return Finding("ammonia_without_ph", "warn", {"total_n": total_n})
    total_n, nh3_n = float(judged["total_n"]), float(judged["nh3_n"])
    if nh3_n >= limits.NH3_ALARM or total_n > float(judged.get("acute_n", math.inf)):
        return Finding("ammonia", "alarm", judged)
    if nh3_n > limits.NH3_WARN or total_n > float(judged.get("chronic_n", math.inf)):
        return Finding("ammonia", "warn", judged)
    if total.value < KIT_SEES or is_nobodys(state):
        return None
    lives = "yes" if kept_in(state.tank).kinds or state.tank.stock else "no"
    return Finding("ammonia_seen", "note", {**judged, "animals": lives, **_risen(state, total)})


KIT_SEES: Final = 0.1
"""Ammonia that the finest usual kit sees, as it counts it; common practice. [mg/L]"""

NITRITE_SEEN: Final = 0.05
"""Nitrite that the finest usual kit sees; common practice. [mg/L NO2]"""

AMMONIA_SEEN: Final = 0.25
"""Total ammonia that any kit surely sees. [mg/L as N]"""


def _risen(state: State, reading: Measured) -> Facts:
    """The 0 from which a reading rose since the one before, of the last weeks; else nothing."""
    before = state.past.previous(reading)
    if before is None or reading.at - before.at > LOOKED_AFTER or seen(before) is not None:
        return {}
    return {"was": 0.0}


def feeds_filter(state: State) -> bool:
    """Whether ammonia in a tank without animals is no more than its growing filter bears."""
    total = state.last("ammonia")
    return total is None or ammonia_as_n(upper(total), total.basis) <= limits.CYCLING_AMMONIA


def judge_ammonia(state: State) -> Mapping[str, float | str] | None:
    """Total and un-ionised ammonia as nitrogen, with the EPA 2013 criteria in fresh water.

    Un-ionised share by Emerson et al. 1975, with salinity by Clegg & Whitfield 1995. The upper
    end of a colour step counts, and the highest pH of a day (`highest_ph`), beside which the newest
    is named. Where no temperature is known the warmest is assumed, and the fact is named so. None
    without an ammonia and a pH that is young enough.
    """
    total, newest = state.last("ammonia"), state.fresh("ph")
    if total is None or newest is None:
        return None
    ph = highest_ph(state, newest)
    total_n = ammonia_as_n(upper(total), total.basis)
    known = state.fresh("temperature")
    temperature = within(known.value if known else limits.WARMEST_ASSUMED, 0.0, 50.0)
    acidity = within(ph.value, 2.0, 12.0)
    share = un_ionised_fraction(acidity, temperature, within(state.salinity, 0.0, 60.0))
    facts: Facts = {"total_n": total_n, "nh3_n": total_n * share, "ph": ph.value}
    facts["temperature" if known else "temperature_assumed"] = temperature
    if ph is not newest:
        facts["ph_now"] = newest.value
    if not state.tank.is_sea:
        facts["chronic_n"] = chronic_criterion(acidity, temperature)
        facts["acute_n"] = acute_criterion(acidity, temperature)
    return facts


def nitrite(state: State) -> Finding | None:
    """Nitrite against chloride; in the sea a sign of cycling, not a poison at kit levels."""
    reading = state.fresh("nitrite")
    if reading is None or reading.qualifier == "<" or is_nobodys(state):
        return None
    no2 = nitrite_as_no2(upper(reading), reading.basis)
    facts: Facts = {"nitrite": no2}
    if reading.basis is None:
        facts["typed"] = reading.value
    if no2 < limits.NITRITE_WARN:
        if no2 < NITRITE_SEEN or state.tank.is_sea:
            return None
        return Finding("nitrite_seen", "note", {**facts, **_risen(state, reading)})
    if state.tank.is_sea or (state.tank.kind == "brackish" and state.salinity > 5.0):
        return Finding("nitrite_in_salt_water", "note", facts)
    chloride = _chloride(state)
    if chloride is not None and chloride >= limits.CHLORIDE_PER_NITRITE * no2:
        return Finding("nitrite_with_chloride", "warn", facts | {"chloride": chloride})
    if _air_frees_ammonia(state):
        facts["ammonia"] = "present"
    return Finding("nitrite", "alarm" if no2 >= limits.NITRITE_ALARM else "warn", facts)


def _air_frees_ammonia(state: State) -> bool:
    """Whether ammonia is there at a pH, low or unknown, that extra air would raise."""
    ph = state.fresh("ph")
    acid = ph is None or ph.value < limits.AIRING_BELOW_PH
    return acid and seen(state.fresh("ammonia")) is not None


CHLORIDE_OF_SALINITY: Final = 1000.0 / 1.80655
"""Chlorinity of sea water is salinity over 1.80655 (Wooster, Lee & Dietrich 1969; from memory);
other salts of the trade hold as much or more of it. [mg/L per g/kg]"""


def _chloride(state: State) -> float | None:
    """Chloride as measured, else what the measured salinity of brackish water holds. [mg/L]"""
    measured, salt = state.last("chloride"), state.last("salinity")
    if measured is not None:
        return measured.low
    if salt is None or salt.low <= limits.SALT_WATER:
        return None
    return salt.low * CHLORIDE_OF_SALINITY


def nitrate(state: State) -> Finding | None:
    """Nitrate over what harms the kinds on record, else sensitive fresh-water animals.

    `left`: what changes since the test leave of it, where that is within the limit again.
    """
    reading = state.last("nitrate")
    if reading is None or reading.qualifier == "<":
        return None
    limit = limit_of_nitrate(state)
    if limit is None or reading.value <= limit:
        return None
    left = left_of_measured(state, "nitrate")
    thinned: Facts = {"left": left} if left <= limit else {}
    return Finding("nitrate", "warn", {"nitrate": reading.value, "limit": limit, **thinned})


def limit_of_nitrate(state: State) -> float | None:
    """The limit of the kinds on record, else that of corals or fresh water; None in other seas."""
    of_kinds = nitrate_limit(state.tank)
    limit = None if of_kinds is None else of_kinds[0]
    if is_reef(state.tank):
        return min(limit or limits.NITRATE_REEF, limits.NITRATE_REEF)
    return limit if limit is not None or state.tank.is_sea else limits.NITRATE_FRESH


def oxygen(state: State) -> Finding | None:
    """Too little dissolved oxygen, beside what the water could hold at its temperature."""
    reading = state.fresh("oxygen")
    if reading is None or reading.qualifier == ">" or reading.value >= limits.OXYGEN_WARN:
        return None
    severity: Severity = "alarm" if reading.value < limits.OXYGEN_ALARM else "warn"
    facts: Facts = {"oxygen": reading.value}
    known = state.fresh("temperature")
    if known is not None:
        warmth = within(known.value, 0.0, 45.0)
        facts["saturation"] = oxygen_saturation(warmth, within(state.salinity, 0.0, 60.0))
    return Finding("low_oxygen", severity, facts)


BY_DAY = range(10, 22)
"""Local hours in which plants make oxygen; common practice."""

LITTLE_BY_DAY = 0.8
"""Share of what the water could hold under which, by day, a planted tank runs short at night;
common practice. Where no temperature is known it is held to be 25 °C."""


def oxygen_by_day(state: State) -> Finding | None:
    """Oxygen that is enough by day but little for water in which plants use it up at night."""
    reading = state.fresh("oxygen")
    if reading is None or reading.is_limit or not (plants_grow(state.tank) or is_reef(state.tank)):
        return None
    if reading.value < limits.OXYGEN_WARN or reading.at.hour not in BY_DAY:
        return None
    known = state.fresh("temperature")
    warmth = within(known.value if known else 25.0, 0.0, 45.0)
    could = oxygen_saturation(warmth, within(state.salinity, 0.0, 60.0))
    if reading.value >= LITTLE_BY_DAY * could:
        return None
    return Finding("oxygen_by_day", "note", {"oxygen": reading.value, "saturation": could})


def chlorine(state: State) -> Finding | None:
    """Chlorine or chloramine left in the water."""
    for analyte in ("total_chlorine", "chlorine"):
        reading = seen(state.fresh(analyte))
        if reading is not None and reading.value > limits.CHLORINE_WARN:
            return Finding("chlorine", "alarm", {"chlorine": reading.value})
    return None


LOOKED_AFTER: Final = timedelta(days=30)
"""A bad reading that is older is no news any more; common practice."""


def not_retested(state: State) -> tuple[Finding, ...]:
    """Poisons and too little oxygen that were found and never tested again.

    Too old to say that they are there, not too old to say that nobody looked.
    """
    rules = {"ammonia": ammonia, "nitrite": nitrite, "oxygen": oxygen, "total_chlorine": chlorine,
             "chlorine": chlorine, "copper": copper}  # fmt: skip
    found = []
    for analyte, judge in rules.items():
        reading = state.last(analyte)
        if reading is None or reading.is_fresh(state.now):
            continue
        then = (
            None if reading.age(state.now) > LOOKED_AFTER else judge(replace(state, now=reading.at))
        )
        if then is not None and then.severity != "note":
            days = float(reading.age(state.now).days)
            facts: Facts = {"analyte": analyte, "value": upper(reading), "days": days}
            found.append(Finding("not_retested", "warn", facts))
    return tuple(found)


COPPER_SEEN: Final = 0.02
"""A test that begins over this cannot clear copper for invertebrates; common practice. [mg/L]"""


def copper(state: State) -> Finding | None:
    """Copper, which kills invertebrates at what kits can hardly see."""
    told = state.fresh("copper")
    kept = kept_in(state.tank)
    harmed = kept.invertebrates
    facts: Facts
    if told is not None and told.qualifier == "<" and told.value > COPPER_SEEN and harmed:
        facts = {"copper": told.value, "species": ", ".join(harmed[:3])}
        return Finding("copper_unseen", "note", facts)
    reading = seen(told)
    if reading is None:
        return None
    facts = {"copper": reading.value}
    if not harmed and is_reef(state.tank):
        return Finding("copper", "alarm", facts)  # by the keeper's word, though none is on record
    if harmed:
        return Finding("copper", "alarm", facts | {"species": ", ".join(harmed[:3])})
    if not kept.kinds:
        return Finding("copper_unknown_stock", "note", facts)
    kh = state.last("kh")
    if kh is not None and kh.value < limits.KH_LOW_FRESH and not state.tank.is_sea:
        return Finding("copper_low_kh", "warn", facts | {"kh": kh.value})
    return None


def potassium(state: State) -> Finding | None:
    """Potassium as it was measured and as doses brought it since, less what changes took away.

    The sea holds some 400 mg/L by nature, so salty water is judged by doses alone.
    """
    dosed = dosed_so_far(state, "potassium")
    there = left_of_measured(state, "potassium")
    if dosed <= 0.0 and state.fresh("potassium") is None:
        return None
    total = there + dosed
    if total <= 0.0:
        return None
    kinds = may_live_in(state.tank)
    if dosed > 0.0 and any(row.mussel for row in kinds):
        return Finding("potassium_with_mussels", "warn", {"potassium": total})
    limit = bearable(kinds)
    if total <= limit:
        return None
    return Finding(
        "potassium_sum" if there <= 0.0 else "potassium_high",
        "warn",
        {"potassium": total, "limit": limit},
    )
