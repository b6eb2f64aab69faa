"""What was just done that animals may not bear: too much or the wrong thing, or other water.

A deed is on record whatever it was; here is what must be said with it at once.
"""

from __future__ import annotations

import math
from datetime import timedelta
from typing import Final

from core.advice import limits
from core.advice.alarm_words import named
from core.advice.effects import Effect, effects_of
from core.advice.findings._model import Facts, Finding, seen
from core.advice.livestock import kept_in
from core.advice.plan import Refusal
from core.advice.scheduling import SEA_SALT
from core.advice.spoons import least_grams
from core.advice.state import Happening, State
from core.message.waters import PURE, SALTED, kind_of
from core.substances import ACIDS, STRONG_ACIDS

MUCH: Final = 3
"""So many days' steps at once are an alarm, fewer a warning; common practice."""

SALTS: Final = frozenset({"sodium chloride", "sea salt"})
BEYOND: Final = "mass_implausible"
PER_PERCENT: Final = 10.0
"""Salinity of one percent of salt. [g/kg]"""

CARBONATES: Final = frozenset(
    {"sodium carbonate", "sodium carbonate decahydrate", "potassium carbonate", "calcium hydroxide"}
)
HARD: Final = frozenset({"tap", "well"})

LARGE_SHARE: Final = 0.6
"""A change of more than this is one to watch the animals after; common practice."""


SAME_DAY: Final = timedelta(hours=20)
"""Doses closer together are one day's: a part given some hours early is still the next day's."""


def overdose(state: State) -> Finding | None:
    """A dose just logged that moved the water by more than a day's step, or past the animals.

    With it counts what went in of the same on that day, but in the sea, where the animals use it
    up all day.
    """
    told = _latest(state, "dose")
    if told is None:
        return None
    dose, volume = told.what, told.what.litres or state.tank.volume_l
    if dose.percent is not None and dose.substance in SALTS:
        return _salted(dose.percent * PER_PERCENT, dose.substance)
    put_in = least_grams(dose)
    if dose.substance is None or put_in is None or not volume:
        return None
    # Of a salt that is sold in two forms the weaker one counts: less is sure to have gone in.
    grams = put_in if state.salinity > limits.SALT_WATER else _of_that_day(state, told)
    found = effects_of(dose.substance, grams, volume, state)
    if isinstance(found, Refusal):
        return _beyond(dose.substance, grams, volume) if found.reason == BEYOND else None
    effect = min(found, key=lambda each: each.days)
    if effect.days <= 1 and effect.bound is None and not effect.poisons:
        return None
    alarm = effect.days >= MUCH or effect.bound is not None or effect.poisons
    facts = _facts(effect, state)
    if dose.grams is None and dose.spoons is not None:
        facts["spoons"] = dose.spoons
    if effect.days <= 1:
        facts["reason"] = "ammonia" if effect.poisons else "animals"
    elif not alarm and _is_little(effect, facts, state, told):
        facts["reason"] = "little"
    return Finding("overdose", "alarm" if alarm else "warn", facts)


LITTLE: Final = 1.4
"""So many times a day's step is a little more than one, within an emergency's; our judgement."""


def _is_little(effect: Effect, facts: Facts, state: State, told: Happening) -> bool:
    """Whether a fresh tank moved by little more than a day's step, all that binds it known.

    KH by no more than `LITTLE` of its step and not doubled, GH likewise, pH within its own step.
    """
    start, ph, ammonia = (state.last(name) for name in ("kh", "ph", "ammonia"))
    if ammonia is None or ammonia.value >= limits.LITTLE_AMMONIA:
        return False
    doses = [each for each in state.events or () if each.what.kind == "dose"]
    if start is None or any(start.at <= each.at < told.at for each in doses):
        return False  # untested since the dose before
    at_once = facts.get("ph_at_once")
    if ph is None or not isinstance(at_once, float | int) or state.tank.is_sea:
        return False
    moved = at_once - ph.value <= limits.PH_STEP
    most = min(LITTLE * limits.KH_STEP, start.value * (limits.KH_FACTOR - 1.0))
    return (
        moved
        and effect.kh <= most
        and effect.gh <= LITTLE * limits.GH_STEP
        and effect.salinity < 1.0
    )


def _of_that_day(state: State, told: Happening) -> float:
    """All that went in of the same substance on the day of a dose, itself included. [g]"""
    return math.fsum(
        least_grams(each.what) or 0.0
        for each in state.events or ()
        if each.what.kind == "dose"
        and each.what.substance == told.what.substance
        and told.at - SAME_DAY < each.at <= told.at
    )


def _beyond(name: str, grams: float, volume: float) -> Finding:
    """More than any sum is made of: what it moved is told of salt alone, about a g/kg a gram."""
    facts: Facts = {"substance": name, "grams": grams, "days": MUCH}
    return Finding(
        "overdose", "alarm", facts | ({"salinity": grams / volume} if name in SALTS else {})
    )


def _salted(rise: float, name: str) -> Finding | None:
    """Salt told by its share of the water: each percent is 10 g/kg."""
    days = math.ceil(rise / limits.SALINITY_UP - 1e-9)
    if days <= 1:
        return None
    facts: Facts = {"substance": name, "days": days, "salinity": rise}
    return Finding("overdose", "alarm" if days >= MUCH else "warn", facts)


def _facts(effect: Effect, state: State) -> Facts:
    """Its numbers: in the sea of its ions, of which each has a step of its own, in place of GH."""
    facts: Facts = {"substance": effect.substance, "grams": effect.grams, "days": effect.days}
    moves = {"kh": effect.kh, "gh": effect.gh, "salinity": effect.salinity}
    if state.tank.is_sea:
        moves["gh"] = 0.0
        if effect.substance != SEA_SALT:
            moves |= {ion: effect.added.get(ion, 0.0) for ion in ("calcium", "magnesium")}
    facts |= {name: amount for name, amount in moves.items() if amount}
    if effect.stage is not None and effect.outlook is not None and effect.outlook.co2_known:
        facts["ph_at_once"] = effect.stage.at_once
    return facts


def large_change(state: State) -> Finding | None:
    """A change just logged of most of the water."""
    told = _latest(state, "water_change")
    if told is None:
        return None
    share = _share(told, state)
    if share is None or share <= LARGE_SHARE:
        return None
    return Finding("large_change", "warn", {"share": share})


def wrong_thing(state: State) -> tuple[Finding, ...]:
    """Medicine, acid or caustic just logged: each is named once, the worst of its kind."""
    found: dict[str, Finding] = {}
    for told in _done(state, {"dose"}):
        judged = _of_substance(told.what.substance or "", state)
        if judged is not None and (held := found.get(judged.id, judged)).severity != "alarm":
            found[judged.id] = judged if judged.severity == "alarm" else held
        elif judged is not None:
            found[judged.id] = held
    return tuple(found.values())


def _of_substance(name: str, state: State) -> Finding | None:
    kinds = named(name).get("deed", frozenset())
    if name in ACIDS:
        strong = name in STRONG_ACIDS
        return Finding("acid_dosed", "alarm" if strong else "warn", {"substance": name})
    if kinds & {"battery_acid", "caustic"}:
        return Finding("caustic_dosed", "alarm", {"substance": name})
    if name in CARBONATES and not state.tank.is_sea:
        return Finding("caustic_dosed", "warn", {"substance": name})
    if kinds & {"medicine", "copper"}:
        harmed = kept_in(state.tank).invertebrates
        facts: Facts = {"substance": name}
        if "copper" in kinds and harmed:
            return Finding("medicine_dosed", "alarm", facts | {"species": ", ".join(harmed[:3])})
        facts |= {"kind": next((k for k in ("copper", "formalin") if k in kinds), "medicine")}
        return Finding("medicine_dosed", "note", facts)
    if "unknown" in kinds:
        return Finding("unknown_dosed", "note", {"substance": name})
    return None


def copper_before(state: State) -> Finding | None:
    """Invertebrates in a tank that copper was dosed into and not measured in since."""
    harmed = kept_in(state.tank).invertebrates
    times = [
        each.at
        for each in state.events or ()
        if each.what.kind == "dose"
        and each.at < state.now
        and "copper" in named(each.what.substance or "").get("deed", frozenset())
    ]
    if not harmed or not times:
        return None
    measured = state.last("copper")
    if measured is not None and measured.at > max(times):
        return None  # what was measured is judged
    days = (state.now - max(times)).total_seconds() / 86400.0
    return Finding(
        "copper_before", "alarm", {"species": ", ".join(harmed[:3]), "dosed_days_ago": days}
    )


def wrong_water(state: State) -> tuple[Finding, ...]:
    """Water just put in that is not for animals as it is, or not for this tank."""
    found = [_of_water(told, state) for told in _done(state, {"water_change", "top_up"})]
    return tuple({each.id: each for each in found if each is not None}.values())


def _of_water(told: Happening, state: State) -> Finding | None:
    name = (told.what.substance or "").casefold()
    kinds = named(name).get("deed", frozenset())
    if "condensate" in kinds:
        return Finding("condensate_in", "warn")
    if "softened" in kinds:
        return Finding("softened_in", "warn")
    if name == SALTED:
        return _salt_topped_up(told, state) if told.what.kind == "top_up" else None
    known = kind_of(name)
    if state.tank.is_sea and known in HARD:
        topped_up = told.what.kind == "top_up"
        return Finding("tap_topped_up", "note") if topped_up else _fresh_into_sea(told, state)
    if known == "tap":
        return None if _dechlorinated(state) else Finding("tap_in", "note")
    pure = known in PURE and told.what.kind == "water_change" and not state.tank.is_sea
    return _pure(told, state) if pure else None


def _salt_topped_up(told: Happening, state: State) -> Finding:
    """Only water evaporates: salt that goes in with what is topped up stays and piles up.

    How far is told where the tank is salty, of water as salty as the tank.
    """
    facts: Facts = {}
    salt, volume = state.last("salinity"), state.tank.volume_l
    if salt is not None and salt.value > limits.SALT_WATER and volume and told.what.litres:
        facts["salinity"] = salt.value * (1.0 + min(told.what.litres / volume, 1.0))
    return Finding("salt_topped_up", "warn", facts)


def _dechlorinated(state: State) -> bool:
    """Whether a dechlorinator is on record with the new water."""
    doses = (each.what.substance or "" for each in _done(state, {"dose"}))
    return any("dechlorinated" in named(each).get("deed", ()) for each in doses)


def _fresh_into_sea(told: Happening, state: State) -> Finding:
    facts: Facts = {}
    share, salt = _share(told, state), state.last("salinity")
    if share is not None and salt is not None:
        facts["salinity"] = salt.value * (1.0 - share)
    return Finding("tap_in_sea", "warn", facts)


def _pure(told: Happening, state: State) -> Finding | None:
    """Pure water takes the buffer along: said where KH would end under what holds pH."""
    kh, share = state.last("kh"), _share(told, state)
    if state.tank.soft or kh is None or share is None:
        return None
    left = kh.value * (1.0 - share)
    if left >= limits.KH_SOFT:
        return None
    facts: Facts = {"kh": left}
    if seen(state.fresh("ammonia")) is not None:
        facts["ammonia"] = "present"  # water cut to a low KH is then what first aid asks for
    return Finding("pure_in", "warn", facts)


def _share(told: Happening, state: State) -> float | None:
    if told.what.percent is not None:
        return min(told.what.percent / 100.0, 1.0)
    volume = state.tank.volume_l
    return min(told.what.litres / volume, 1.0) if told.what.litres and volume else None


def _done(state: State, kinds: set[str]) -> list[Happening]:
    """All deeds of some kinds done at the moment that is judged."""
    return [each for each in state.events or () if each.what.kind in kinds and each.at == state.now]


def _latest(state: State, kind: str) -> Happening | None:
    """The newest deed of a kind, where it was done at the moment that is judged."""
    told = [each for each in state.events or () if each.what.kind == kind and each.at <= state.now]
    newest = max(told, key=lambda each: each.at, default=None)
    return newest if newest is not None and newest.at == state.now else None
