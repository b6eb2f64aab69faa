"""Does the water suit the animals on record, and do they suit each other?"""

from __future__ import annotations

from collections.abc import Callable

from core.advice.findings._model import Facts, Finding, Severity
from core.advice.livestock import Conflict, Misfit, Species, fits, kept_in, lookup, together
from core.advice.state import State

FAR: float = 0.5
"""Outside of a range by so much of its width is worth a warning; common practice."""

FAR_IN_WARMTH: float = 2.0
"""Likewise for temperature. [°C]"""

SHOWN = 3
"""Kinds that a finding names."""


def suits(analyte: str) -> Callable[[State], Finding | None]:
    """Make the rule that holds one analyte against the kinds on record."""

    def judge(state: State) -> Finding | None:
        if state.fresh(analyte) is None:
            return None
        off = [misfit for misfit in misfits(state) if misfit.analyte == analyte]
        return _finding(off) if off else None

    return judge


def misfits(state: State) -> list[Misfit]:
    """What surely does not suit a kind on record; what a retest would decide is left out."""
    kinds = kept_in(state.tank).kinds
    return [misfit for row in kinds for misfit in fits(row, state) if misfit.certain]


def _finding(off: list[Misfit]) -> Finding:
    worst = max(off, key=lambda misfit: misfit.excess)
    alike = [m for m in off if m.too_high == worst.too_high]
    facts: Facts = {
        "analyte": worst.analyte,
        "value": worst.value,
        "low": max(m.span.low for m in alike),
        "high": min(m.span.high for m in alike),
        "species": ", ".join(_names([m.species for m in alike])),
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
        return "warn" if abs(misfit.value - end) >= FAR_IN_WARMTH else "note"
    return "warn" if misfit.excess >= FAR else "note"


def _names(rows: list[Species]) -> list[str]:
    return [row.name for row in rows[:SHOWN]]


def company(state: State) -> tuple[Finding, ...]:
    """Kinds on record that do not suit each other, the worst three pairs."""
    pairs: dict[tuple[str, str], Conflict] = {}
    for conflict in together(kept_in(state.tank).kinds):
        pairs.setdefault((conflict.one.scientific, conflict.other.scientific), conflict)
    return tuple(_clash(conflict) for conflict in list(pairs.values())[:SHOWN])


def _clash(conflict: Conflict) -> Finding:
    severe = conflict.reason in {"water", "eats"}
    facts: Facts = {
        "reason": conflict.reason,
        "species": conflict.one.name,
        "species_2": conflict.other.name,
        **conflict.facts,
    }
    return Finding("do_not_go_together", "warn" if severe else "note", facts)


def unknown_stock(state: State) -> Finding | None:
    """Animals on record that the table does not know, so that nothing is judged for them."""
    unknown = [stock for stock in kept_in(state.tank).unknown if stock.count > 0]
    if not unknown:
        return None
    said = unknown[0].species
    facts: Facts = {"said": said[:60], "kinds": float(len(unknown))}
    near = [row.name for row in lookup(said).candidates]
    if near:
        facts["nearest"] = ", ".join(near[:SHOWN])
    return Finding("unknown_animal", "note", facts)
