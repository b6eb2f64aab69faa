"""Does the water suit the animals on record, and do they suit each other?"""

from __future__ import annotations

from collections.abc import Callable

from core.advice import limits
from core.advice.findings._model import Facts, Finding, Severity
from core.advice.livestock import (
    SHOAL,
    Conflict,
    Kept,
    Misfit,
    Species,
    fits,
    foreign_water,
    kept_in,
    least_volume,
    lookup,
    rival_of,
    together,
    volume_for,
)
from core.advice.state import State
from core.advice.stock import names_no_kind

FAR: float = 0.5
"""Outside of a range by so much of its width is worth a warning; common practice."""

FAR_IN_WARMTH: float = 2.0
"""Likewise for temperature. [°C]"""

DEADLY_IN_WARMTH: float = 4.0
"""So far outside of a kind's warmth is an emergency; common practice. [°C]"""

SHOWN = 3
"""Kinds that a finding names."""


def suits(analyte: str) -> Callable[[State], Finding | None]:
    """Make the rule that holds one analyte against the kinds on record."""

    def judge(state: State) -> Finding | None:
        if state.fresh(analyte) is None:
            return None
        off = [misfit for misfit in misfits(state) if misfit.analyte == analyte]
        found = _finding(off, kept_in(state.tank)) if off else None
        if found is None or analyte != "temperature" or state.tank.kind != "pond":
            return found
        return Finding(found.id, found.severity, {**found.facts, "pond": 1.0})

    return judge


def too_warm(state: State) -> Finding | None:
    """Water too warm for any animal of fresh water, where none is known; a pond follows the sun."""
    reading = state.fresh("temperature")
    if reading is None or state.tank.is_sea or kept_in(state.tank).kinds:
        return None
    off = reading.value - limits.WARMEST_FRESH
    if off <= 0.0:
        return None
    facts: Facts = {"temperature": reading.value, "limit": limits.WARMEST_FRESH}
    return Finding("too_warm", "alarm" if off >= FAR_IN_WARMTH else "warn", facts)


def misfits(state: State) -> list[Misfit]:
    """What surely does not suit a kind on record; what a retest would decide is left out."""
    return [misfit for row in _at_home(state) for misfit in fits(row, state) if misfit.certain]


def _at_home(state: State) -> list[Species]:
    """Kinds on record that are in their own kind of water: of the others nothing else is judged."""
    return [row for row in kept_in(state.tank).kinds if not _is_foreign(row, state)]


def _is_foreign(row: Species, state: State) -> bool:
    salt = state.last("salinity")
    return foreign_water(row, state.tank, None if salt is None else salt.value)


def _finding(off: list[Misfit], kept: Kept) -> Finding:
    worst = max(off, key=lambda misfit: misfit.excess)
    alike = [m for m in off if m.too_high == worst.too_high]
    facts: Facts = {
        "analyte": worst.analyte,
        "value": worst.value,
        "low": max(m.span.low for m in alike),
        "high": min(m.span.high for m in alike),
        "species": ", ".join(kept.name_of(m.species) for m in alike[:SHOWN]),
        "kinds": float(len(alike)),
        "source": worst.span.source,
    }
    if facts["low"] > facts["high"]:  # type: ignore[operator]  # both are numbers
        facts |= {"low": worst.span.low, "high": worst.span.high}
    return Finding("does_not_suit", _severity(worst), facts)


def _severity(misfit: Misfit) -> Severity:
    if not misfit.species.is_animal:
        return "note"
    end = misfit.span.high if misfit.too_high else misfit.span.low
    if misfit.analyte == "temperature":
        off = abs(misfit.value - end)
        if off >= DEADLY_IN_WARMTH:
            return "alarm"
        return "warn" if off >= FAR_IN_WARMTH else "note"
    return "warn" if misfit.excess >= FAR else "note"


def company(state: State) -> tuple[Finding, ...]:
    """Kinds on record that do not suit each other, the worst three pairs."""
    pairs: dict[tuple[str, str], Conflict] = {}
    kept = kept_in(state.tank)
    for conflict in together(_at_home(state)):
        pairs.setdefault((conflict.one.scientific, conflict.other.scientific), conflict)
    return tuple(_clash(conflict, kept) for conflict in list(pairs.values())[:SHOWN])


def _clash(conflict: Conflict, kept: Kept) -> Finding:
    severe = conflict.reason in {"water", "eats", "preys"}
    facts: Facts = {
        "reason": conflict.reason,
        "species": kept.name_of(conflict.one),
        "species_2": kept.name_of(conflict.other),
        **conflict.facts,
    }
    return Finding("do_not_go_together", "warn" if severe else "note", facts)


def other_water(state: State) -> tuple[Finding, ...]:
    """Kinds on record that live in other water than the tank's: of the sea in fresh, and so on."""
    kept = kept_in(state.tank)
    here = "fresh" if state.tank.kind == "pond" else state.tank.kind
    return tuple(
        Finding(
            "wrong_water",
            "warn" if row.is_animal else "note",
            {"species": kept.name_of(row), "water": row.water, "water_2": here},
        )
        for row in kept.kinds
        if _is_foreign(row, state)
    )[:SHOWN]


def room(state: State) -> tuple[Finding, ...]:
    """Rivals, fish too large or too many once grown, and kinds of groups kept too few."""
    kept, volume = kept_in(state.tank), state.tank.volume_l
    held = [(row, count) for row, count in kept.known if count > 0]
    rivals = [_rivals(row, count, kept) for row, count in held]
    found = [finding for finding in rivals if finding is not None]
    too_large = [_cramped(row, kept.name_of(row), volume) for row, _count in held]
    needed = volume_for(held)
    large = [float(str(each.facts["least_l"])) for each in too_large if each is not None]
    if volume is not None and volume < needed and needed > max(large, default=0.0):
        found.append(Finding("crowded", "note", {"least_l": needed, "volume_l": volume}))
    few = [
        _few(kept.name_of(row), count)
        for row, count in held
        if row.shoals and count < SHOAL and kept.counts(row)
    ]
    rest = [finding for finding in (*too_large, *few) if finding is not None]
    return tuple([*found, *rest][:SHOWN])


def _rivals(row: Species, count: int, kept: Kept) -> Finding | None:
    """Animals that fight their own kind: surely, or as their sexes decide, which is asked."""
    sexes = kept.sexes_of(row)
    fights = rival_of(row, count, sexes)
    if fights is None or row.rivals is None:
        return None
    facts: Facts = {"species": kept.name_of(row), "count": float(count), "rivals": row.rivals}
    if sexes.male:
        facts["males"] = float(sexes.male)
    if sexes.female:
        facts["females"] = float(sexes.female)
    return Finding("rivals", "warn" if fights == "sure" else "note", facts)


def _cramped(row: Species, name: str, volume: float | None) -> Finding | None:
    least = least_volume(row)
    if least is None or volume is None or row.length is None or volume >= least:
        return None
    facts: Facts = {"species": name, "length": row.length, "volume_l": volume, "least_l": least}
    return Finding("cramped", "note", facts)


def _few(name: str, count: int) -> Finding:
    return Finding("few_of_a_shoal", "note", {"species": name, "count": float(count)})


def unknown_stock(state: State) -> tuple[Finding, ...]:
    """Animals on record that the table does not know, so that nothing is judged for them.

    Those that came last are told first.
    """
    unknown = [stock for stock in reversed(kept_in(state.tank).unknown) if stock.count > 0]
    return tuple(_unknown(stock.species) for stock in unknown[:SHOWN])


def _unknown(said: str) -> Finding:
    facts: Facts = {"said": said[:60]}
    found = lookup(said)
    if names_no_kind(said):
        facts["any"] = "animal"
    elif found.candidates:
        near = ", ".join(row.name for row in found.candidates[:SHOWN])
        facts["shared" if found.shared else "nearest"] = near
    return Finding("unknown_animal", "note", facts)
