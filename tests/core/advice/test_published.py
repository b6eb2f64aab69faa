"""Limits, classes and criteria against published values; the name tells source and grade."""

from __future__ import annotations

import pytest

from core.advice import limits
from core.advice.findings import judge_ammonia
from core.advice.findings._checks import (
    CACO3_PER_CALCIUM,
    CACO3_PER_MAGNESIUM,
    conductivity_of_hardness,
)
from core.advice.hardness import (
    MG_CACO3_PER_DEGREE,
    buffer_class,
    detergent_law_class,
    hardness_class,
    hardness_classes,
    trade_classes,
)
from tests.core.advice.waters import read, state


def degrees(mg_caco3: float) -> float:
    return mg_caco3 / MG_CACO3_PER_DEGREE


@pytest.mark.parametrize(
    ("mmol", "word"),
    [(1.49, "soft"), (1.51, "medium"), (2.49, "medium"), (2.51, "hard")],
)
def test_wrmg_2007_hardness_classes_grade_b(mmol: float, word: str) -> None:
    """Soft under 1.5, medium to 2.5, hard over 2.5 mmol/L; 0.178327 mmol/L in a degree."""
    found = detergent_law_class(mmol / 0.178327)
    assert (found.word, found.scheme) == (word, "WRMG 2007")


def test_wrmg_2007_limits_in_german_degrees_grade_b() -> None:
    """8.4 and 14 °dH, as the secondary pages print them."""
    assert [detergent_law_class(gh).word for gh in (8.3, 8.5, 13.9, 14.1)] == [
        "soft", "medium", "medium", "hard",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("gh", "words"),
    [
        (1.0, ["very soft"]),
        (4.0, ["soft"]),
        (7.0, ["medium"]),
        (9.0, ["medium", "fairly hard"]),
        (11.5, ["fairly hard", "hard"]),
        (20.0, ["hard"]),
        (30.0, ["very hard"]),
    ],
)
def test_the_trades_hardness_bands_common_practice(gh: float, words: list[str]) -> None:
    assert [found.word for found in trade_classes(gh)] == words


def test_schemes_disagree_and_each_is_named() -> None:
    """8 °dH is hard to the USGS (grade A), soft to the WRMG (grade B), medium to the trade."""
    found = {held.scheme: held.word for held in hardness_classes(7.9)}
    assert found == {"USGS": "hard", "WRMG 2007": "soft", "the trade": "medium"}


@pytest.mark.parametrize(
    ("mg_caco3", "word"),
    [(19, "too low for most fish"), (21, "low"), (59, "low"), (61, "enough"), (199, "enough"),
     (201, "high")],
)  # fmt: skip
def test_buffer_classes_epa_20_grade_a_srac_464_grade_b(mg_caco3: float, word: str) -> None:
    found = buffer_class(degrees(mg_caco3))
    assert found.word == word
    assert found.scheme


@pytest.mark.parametrize(("kh", "word"), [(6.9, "low"), (7.0, "enough"), (12.1, "high")])
def test_marine_buffer_classes_common_practice(kh: float, word: str) -> None:
    assert buffer_class(kh, sea=True).word == word


def test_boyd_marine_alkalinity_grade_a_holds_our_marine_limit() -> None:
    """Boyd: 100 to 130 mg/L as CaCO3 in full-strength sea water."""
    assert 100.0 <= limits.KH_LOW_MARINE * MG_CACO3_PER_DEGREE <= 130.0


def test_standard_methods_2340b_grade_a_example_of_tidywater_grade_b() -> None:
    """Calcium 50 and magnesium 10 mg/L are 166.04 mg/L as CaCO3."""
    hardness = 50 * CACO3_PER_CALCIUM + 10 * CACO3_PER_MAGNESIUM
    assert hardness == pytest.approx(166.04, abs=0.02)


def test_usgs_classes_grade_a_at_their_ends() -> None:
    assert [hardness_class(degrees(mg)).word for mg in (60, 120, 180, 300)] == [
        "soft", "moderately hard", "hard", "very hard",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("ph", "temperature", "acute", "chronic"),
    [
        (7.0, 20.0, 17.0, 1.9),
        (8.0, 20.0, 3.9, 0.78),
        (8.0, 25.0, 2.6, 0.56),
        (8.0, 30.0, 1.7, 0.41),
        (8.5, 20.0, 1.5, 0.35),
        (6.5, 20.0, 23.0, 2.1),
    ],
    ids=["grade A", *["grade C, computed"] * 5],
)
def test_epa_2013_ammonia_criteria_are_what_is_judged_by(
    ph: float, temperature: float, acute: float, chronic: float
) -> None:
    """US EPA 822-R-13-001: total ammonia as N, one hour and thirty days."""
    held = judge_ammonia(
        state(read("ammonia", 1.0), read("ph", ph), read("temperature", temperature))
    )
    assert held is not None
    assert float(held["acute_n"]) == pytest.approx(acute, rel=0.04)
    assert float(held["chronic_n"]) == pytest.approx(chronic, rel=0.04)


@pytest.mark.parametrize(
    ("ph", "temperature", "fraction"),
    [(8.0, 20.0, 0.0381), (8.0, 24.0, 0.0502), (8.4, 28.0, 0.1495)],
)
def test_ufifas_fa16_fractions_grade_b(ph: float, temperature: float, fraction: float) -> None:
    """Table of UF/IFAS FA16, figure 4, as reproduced in a handbook."""
    held = judge_ammonia(
        state(read("ammonia", 1.0), read("ph", ph), read("temperature", temperature))
    )
    assert held is not None
    assert float(held["nh3_n"]) == pytest.approx(fraction, rel=0.002)


def test_srac_463_worked_example_grade_a() -> None:
    """PH 8.6, 30 °C, total 3: 0.73 mg/L un-ionised (Durborow, Crosby & Brunson 1992)."""
    held = judge_ammonia(state(read("ammonia", 3.0), read("ph", 8.6), read("temperature", 30.0)))
    assert held is not None
    assert float(held["nh3_n"]) == pytest.approx(0.73, abs=0.005)


def test_camargo_2005_nitrate_grade_a() -> None:
    """10 mg/L as N is 44 mg/L as NO3."""
    assert pytest.approx(10.0 * 62.004 / 14.007, abs=0.5) == limits.NITRATE_FRESH


def test_a_hard_waters_conductivity_is_plausible_grade_c() -> None:
    """Calcium bicarbonate at infinite dilution is 104 µS/cm per meq/L (Standard Methods 2510)."""
    meq = 10.0 * 0.356652
    assert 0.8 * 104.0 * meq < conductivity_of_hardness(10.0, 10.0) < 104.0 * meq
