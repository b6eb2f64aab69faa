"""Each rule where it must speak, where it must be silent, and at its edge."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from core.advice.findings import RULES, Finding, find
from core.advice.hardness import hardness_class
from core.advice.state import Measured, State
from core.tank import Tank

NOON = datetime(2026, 3, 1, 12, tzinfo=UTC)


def measured(analyte: str, value: float, **parts: object) -> Measured:
    held: dict[str, object] = {"low": value, "high": value, "at": NOON} | parts
    return Measured(analyte, value, **held)  # type: ignore[arg-type]


def found(
    *readings: Measured, tank: Tank | None = None, earlier: tuple[Measured, ...] = ()
) -> dict[str, Finding]:
    state = State(tank or Tank("Fern"), NOON, {r.analyte: r for r in readings}, earlier)
    return {f.id: f for f in find(state, frozenset(state.readings))}


KH_4, SEA, SOFT = measured("kh", 4, low=3.0), Tank("Lagoon", "marine"), Tank("Fern", soft=True)
WARM = measured("temperature", 25.0)


@pytest.mark.parametrize(
    ("rule", "readings", "tank", "severity", "reason"),
    [
        ("low_kh", [measured("kh", 2)], None, "warn", "under 60 mg/L CaCO3, common practice"),
        ("low_kh", [measured("kh", 3.37)], None, None, "60 mg/L is 3.36 °dH: the edge"),
        ("low_kh", [measured("kh", 0.5)], None, "alarm", "next to no buffer"),
        ("low_kh", [measured("kh", 6.9)], SEA, "warn", "marine under 7 °dH; Boyd, grade A"),
        ("low_kh", [measured("kh", 7.0)], SEA, None, "marine edge"),
        ("low_kh", [measured("kh", 2)], SOFT, None, "soft on purpose"),
        ("low_kh", [measured("kh", 0.5)], SOFT, "warn", "soft, but under 1 °dH"),
        ("low_gh", [measured("gh", 0.5)], None, "warn", "no minerals, common practice"),
        ("low_gh", [measured("gh", 1.0)], None, None, "edge"),
        ("nitrate", [measured("nitrate", 50)], None, "warn", "Camargo et al. 2005, grade A"),
        ("nitrate", [measured("nitrate", 44)], None, None, "the limit itself"),
        ("nitrate", [measured("nitrate", 50)], SEA, None, "the limit is of fresh water"),
        ("nitrite", [measured("nitrite", 0.5, basis="ion")], None, "alarm", "common practice"),
        ("nitrite", [measured("nitrite", 0.2, basis="ion")], None, "warn", "common practice"),
        ("nitrite", [measured("nitrite", 0.2)], None, "alarm", "unsaid basis: 0.66 as the ion"),
        ("nitrite", [measured("nitrite", 0.05, basis="ion")], None, None, "under the limit"),
        ("nitrite_in_salt_water", [measured("nitrite", 1.0)], SEA, "note", "still cycling"),
        (
            "nitrite_with_chloride",
            [measured("nitrite", 1.0, basis="ion"), measured("chloride", 10)],
            None,
            "warn",
            "10:1 by mass, SRAC 462, grade B",
        ),
        (
            "nitrite",
            [measured("nitrite", 1.0, basis="ion"), measured("chloride", 9.9)],
            None,
            "alarm",
            "under 10:1",
        ),
        (
            "ammonia",
            [measured("ammonia", 1.0), measured("ph", 8.0), WARM],
            None,
            "alarm",
            "1 mg/L at pH 8.0, 25 °C is 0.054 un-ionised (cautions, PHREEQC)",
        ),
        (
            "ammonia",
            [measured("ammonia", 0.5), measured("ph", 8.0), WARM],
            None,
            "warn",
            "0.027 un-ionised, over 0.02",
        ),
        (
            "ammonia",
            [measured("ammonia", 5.0), measured("ph", 6.5), WARM],
            None,
            "warn",
            "0.009 un-ionised, but three times the EPA 2013 chronic value",
        ),
        (
            "ammonia",
            [measured("ammonia", 0.25), measured("ph", 7.0), WARM],
            None,
            None,
            "0.0014 un-ionised, under the chronic value",
        ),
        (
            "ammonia",
            [measured("ammonia", 0.25, low=0.0, qualifier="<"), measured("ph", 8.6), WARM],
            None,
            None,
            "the kit cannot see it",
        ),
        ("ammonia_without_ph", [measured("ammonia", 0.5)], None, "warn", "pH decides"),
        ("contradiction", [measured("ph", 6.0, low=5.8, high=6.2), KH_4], None, "warn", "133 CO2"),
        ("contradiction", [measured("ph", 7.0, low=6.8, high=7.2), KH_4], None, None, "12 CO2"),
        ("contradiction", [measured("ph", 3.9, low=3.7, high=4.1), KH_4], None, "alarm", "pH < 4"),
        ("low_oxygen", [measured("oxygen", 4.0)], None, "warn", "under 5"),
        ("low_oxygen", [measured("oxygen", 2.0)], None, "alarm", "under 3"),
        ("low_oxygen", [measured("oxygen", 5.0)], None, None, "edge"),
        ("chlorine", [measured("total_chlorine", 0.1)], None, "alarm", "WEF MOP 8, grade A"),
        ("chlorine", [measured("total_chlorine", 0.02)], None, None, "edge"),
    ],
)
def test_rules(
    rule: str, readings: list[Measured], tank: Tank | None, severity: str | None, reason: str
) -> None:
    held = found(*readings, tank=tank).get(rule)
    assert (held.severity if held else None) == severity, reason


@pytest.mark.parametrize(
    ("hours", "change", "rule"),
    [
        (48, 0.4, "ph_moved"),
        (26, 0.3, "ph_moved"),
        (24, 0.2, None),
        (12, 0.4, "ph_moved_other_hour"),
        (96, 0.4, None),
    ],
    ids=["same hour", "two hours off, at the limit", "too little", "other hour", "too long ago"],
)
def test_ph_is_compared_like_with_like(hours: int, change: float, rule: str | None) -> None:
    before = measured("ph", 7.0 + change, at=NOON - timedelta(hours=hours))
    moved = set(found(measured("ph", 7.0), earlier=(before,))) & {"ph_moved", "ph_moved_other_hour"}
    assert moved == ({rule} if rule else set())


def test_too_little_co2_is_a_contradiction_only_at_night() -> None:
    ph, kh = measured("ph", 9.6, low=9.4, high=9.8), measured("kh", 4.0)
    assert "contradiction_low" not in found(ph, kh)
    night = NOON.replace(hour=3)
    state = State(Tank("Fern"), night, {"ph": replace(ph, at=night), "kh": replace(kh, at=night)})
    assert "contradiction_low" in {f.id for f in find(state, frozenset({"ph"}))}


def test_the_worst_comes_first_and_old_readings_do_not_speak_again() -> None:
    readings = [measured("nitrate", 60), measured("kh", 0.2), measured("oxygen", 2.0)]
    state = State(Tank("Fern"), NOON, {r.analyte: r for r in readings})
    assert [f.id for f in find(state, frozenset(state.readings))][:2] == ["low_oxygen", "low_kh"]
    assert [f.id for f in find(state, frozenset({"nitrate"}))] == ["nitrate"]


def test_every_rule_names_what_wakes_it() -> None:
    assert all(needs for needs in (rule.wakes for rule in RULES))


@pytest.mark.parametrize(
    ("mg_caco3", "word"),
    [(60, "soft"), (61, "moderately hard"), (120, "moderately hard"), (121, "hard"), (180, "hard"),
     (181, "very hard")],
)  # fmt: skip
def test_usgs_hardness_classes_grade_a(mg_caco3: float, word: str) -> None:
    """USGS FAQ 'Do you have information about water hardness in the United States?'."""
    assert hardness_class(mg_caco3 / 17.848).word == word
