"""What does not add up: readings held against each other and against the one before."""

from __future__ import annotations

from typing import Final

from core.advice import contradictions, limits
from core.advice.carbon import carbon_dioxide as equilibrium
from core.advice.contradictions import co2_span, pair_of_ph_and_kh
from core.advice.findings._model import Facts, Finding, Severity, seen
from core.advice.hardness import MEQ_PER_DEGREE, MG_CACO3_PER_DEGREE
from core.advice.jumps import JUMPING, between, doses_between, jumped_from, unheated
from core.advice.state import Measured, State
from core.advice.tapped import looks_softened
from core.analytes import ANALYTES
from core.water.conductivity import conductivity_of_ions

CACO3_PER_CALCIUM: Final = 2.497
CACO3_PER_MAGNESIUM: Final = 4.118
"""Hardness from calcium and magnesium: Standard Methods 2340 B (grade A, factors grade B)."""

IONS_APART: Final = 0.15
"""Kits of hardness and calcium may differ by so much of the value besides their steps; ours."""


def contradiction(state: State) -> Finding | None:
    """A pH and a KH that cannot both be true of this water, whatever the kits' doubt."""
    found = contradictions.contradiction(state)
    return None if found is None else Finding(found.id, found.severity, dict(found.facts))


CO2_UNLIKELY: Final = 0.6
"""The simple rule is low by up to a third: under this share of the limit it need not be solved."""


def carbon_dioxide(state: State) -> Finding | None:
    """Too much carbon dioxide: measured, or implied by pH and KH whatever the kits' doubt."""
    reading = state.fresh("co2")
    if reading is not None and reading.qualifier != "<" and reading.value > limits.CO2_WARN:
        facts: Facts = {"co2_mg_l": reading.value}
        return Finding("much_co2", "warn", facts | _what_bears_on_it(state))
    pair = pair_of_ph_and_kh(state)
    if pair is None or contradiction(state) is not None or _beside(reading, pair):
        return None
    ph, kh = pair
    if co2_span(ph, kh)[1] < CO2_UNLIKELY * limits.CO2_WARN:
        return None
    known = state.fresh("temperature")
    found = equilibrium(ph, kh, known.value if known else None)
    if found is None:
        return None
    middle, least, most = found.mg_l, found.least, found.most
    facts = {"ph": ph.value, "kh": kh.value, "co2_mg_l": middle, "low": least, "high": most}
    facts |= _what_bears_on_it(state)
    if least > limits.CO2_WARN:
        return Finding("much_co2", "warn", facts)
    if middle > limits.CO2_WARN:
        return Finding("perhaps_much_co2", "note", facts)
    return None


def carbon_by_older_kh(state: State) -> Finding | None:
    """Much carbon dioxide, if the KH of days before still holds: else KH is being used up.

    Nothing is said where something was done to the water since that KH was read.
    """
    ph, kh = state.fresh("ph"), state.fresh("kh")
    if ph is None or kh is None or ph.is_limit or kh.is_limit or state.tank.is_sea:
        return None
    if ph.at - kh.at <= limits.SAME_HOUR or any(kh.at <= at for at in state.disturbances):
        return None
    reading, known = state.fresh("co2"), state.fresh("temperature")
    if reading is not None and abs(reading.at - ph.at) <= limits.SAME_HOUR:
        return None
    if co2_span(ph, kh)[1] < CO2_UNLIKELY * limits.CO2_WARN:
        return None
    found = equilibrium(ph, kh, known.value if known else None)
    if found is None or found.mg_l <= limits.CO2_WARN:
        return None
    facts: Facts = {"ph": ph.value, "kh": kh.value, "co2_mg_l": found.mg_l}
    severity: Severity = "warn" if found.least > limits.CO2_WARN else "note"
    return Finding("co2_by_older_kh", severity, facts | _what_bears_on_it(state))


def _beside(carbon: Measured | None, pair: tuple[Measured, Measured]) -> bool:
    """Whether carbon dioxide was measured with this pH and KH, so that nothing need be reckoned."""
    if carbon is None or carbon.is_limit:
        return False
    return all(abs(carbon.at - reading.at) <= limits.SAME_HOUR for reading in pair)


CO2_APART: Final = 1.5
"""A measured carbon dioxide and that of pH and KH may differ by such a factor besides the kits'
steps: drop checkers lag by hours; common practice."""


def carbon_against_ph(state: State) -> Finding | None:
    """Carbon dioxide as measured, which pH and KH of the same hour do not bear out."""
    measured, pair = state.fresh("co2"), pair_of_ph_and_kh(state)
    if measured is None or pair is None or not _beside(measured, pair):
        return None
    ph, kh = pair
    known = state.fresh("temperature")
    found = equilibrium(ph, kh, known.value if known else None)
    if found is None:
        return None
    low, high = _doubtful(measured)
    if high * CO2_APART >= found.least and low <= CO2_APART * found.most:
        return None
    facts: Facts = {"ph": ph.value, "kh": kh.value, "co2_mg_l": measured.value}
    return Finding("co2_against_ph", "note", facts | {"low": found.least, "high": found.most})


def _what_bears_on_it(state: State) -> Facts:
    """Ammonia, which driving carbon dioxide off would make poisonous; where the CO2 comes from."""
    facts: Facts = {}
    if seen(state.fresh("ammonia")) is not None:
        facts["ammonia"] = "present"
    if state.injected:
        facts["injected"] = "yes"
    return facts


def hardness_of_ions(state: State) -> Finding | None:
    """GH that its own calcium and magnesium do not make."""
    gh, calcium = state.fresh("gh"), state.fresh("calcium")
    magnesium = state.fresh("magnesium")
    if gh is None or calcium is None or gh.is_limit or calcium.is_limit or state.tank.is_sea:
        return None
    if magnesium is not None and magnesium.is_limit:
        return None
    ca, mg = _doubtful(calcium), _doubtful(magnesium) if magnesium is not None else (0.0, 0.0)
    low = (CACO3_PER_CALCIUM * ca[0] + CACO3_PER_MAGNESIUM * mg[0]) / MG_CACO3_PER_DEGREE
    high = (CACO3_PER_CALCIUM * ca[1] + CACO3_PER_MAGNESIUM * mg[1]) / MG_CACO3_PER_DEGREE
    too_little = magnesium is not None and high * (1.0 + IONS_APART) < gh.low
    if low * (1.0 - IONS_APART) > gh.high or too_little:
        facts: Facts = {"gh": gh.value, "calcium": calcium.value, "low": low, "high": high}
        if magnesium is not None:
            facts["magnesium"] = magnesium.value
        return Finding("gh_against_ions", "note", facts)
    return None


def _doubtful(reading: Measured) -> tuple[float, float]:
    """The ends of a reading, at least one step of the usual kit apart."""
    step = ANALYTES[reading.analyte].resolution
    return max(0.0, min(reading.low, reading.value - step)), max(reading.high, reading.value + step)


LEAST_SHARE: Final = 0.8
MOST_SHARE: Final = 2.5
MOST_BESIDE: Final = 150.0
"""Conductivity from 0.8 of what hardness alone makes up to 2.5 times and 150 µS/cm more is
taken as fitting; our judgement."""


def conductivity(state: State) -> Finding | None:
    """A conductivity that hardness alone outdoes, or that other salts must make up."""
    reading, gh, kh = state.fresh("conductivity"), state.fresh("gh"), state.fresh("kh")
    fresh = state.tank.kind in {"fresh", "pond"} and state.salinity <= 0.5
    if reading is None or gh is None or kh is None or not fresh:
        return None
    if reading.is_limit or gh.is_limit or kh.is_limit:
        return None
    least, most = (
        conductivity_of_hardness(gh.low, kh.low),
        conductivity_of_hardness(gh.high, kh.high),
    )
    facts: Facts = {"conductivity": reading.value, "gh": gh.value, "kh": kh.value}
    if reading.high < LEAST_SHARE * least:
        return Finding("conductivity_too_low", "note", facts | {"expected": least})
    if reading.low > MOST_SHARE * most + MOST_BESIDE:
        return Finding("other_salts", "note", facts | {"expected": most})
    return None


def conductivity_of_hardness(gh: float, kh: float) -> float:
    """The least conductivity of a water of this GH and KH. [°dH], [µS/cm at 25 °C]

    Calcium and bicarbonate, and the slowest ions that make up the balance.
    """
    hardness, alkalinity = gh * MEQ_PER_DEGREE, kh * MEQ_PER_DEGREE
    amounts = {
        "calcium": hardness / 2.0,
        "alkalinity": alkalinity,
        "sodium": max(alkalinity - hardness, 0.0),
        "nitrate": max(hardness - alkalinity, 0.0),
    }
    strength = (4.0 * amounts["calcium"] + alkalinity + abs(hardness - alkalinity)) / 2000.0
    return float(conductivity_of_ions(amounts, min(strength, 0.1)))


def softened(state: State) -> Finding | None:
    """KH above GH: sodium water, by a softener where GH is next to nothing."""
    gh, kh = state.fresh("gh"), state.fresh("kh")
    if gh is None or kh is None or state.tank.is_sea or kh.low <= gh.high:
        return None
    facts: Facts = {"gh": gh.value, "kh": kh.value}
    if looks_softened(kh.value, gh.value):
        return Finding("softened", "warn", facts)
    return Finding("kh_above_gh", "note", facts)


def sudden_jump(state: State) -> Finding | None:
    """A value that left its place within three days although nothing was done to the tank."""
    for analyte in JUMPING:
        now, before = state.last(analyte), jumped_from(state, analyte)
        if now is not None and before is not None:
            facts: Facts = {"analyte": analyte, "value": now.value, "was": before.value}
            if between(state, before, now):
                facts["changed"] = "yes"
            if doses_between(state, before, now):
                facts["dosed"] = "yes"
            if analyte == "temperature" and unheated(state):
                facts["fast"] = "yes"
            return Finding("sudden_jump", "warn", facts)
    return None


def expired_kit(state: State) -> Finding | None:
    """A reading by a kit past its day, among those of the latest test."""
    latest = max((reading.at for reading in state.readings.values()), default=state.now)
    for analyte, good_until in sorted(state.kit_expiry.items()):
        reading = state.last(analyte)
        if reading is not None and reading.at == latest and latest.date() > good_until:
            return Finding(
                "expired_kit", "note", {"analyte": analyte, "expired": good_until.isoformat()}
            )
    return None
