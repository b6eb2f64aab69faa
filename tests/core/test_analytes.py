"""The table of analytes agrees with the contract and with the units."""

from __future__ import annotations

import pytest

from core.analytes import ANALYTES, plausible
from core.units import to_canonical

CONTRACT = [
    "temperature",
    "ph",
    "gh",
    "kh",
    "ammonia",
    "nitrite",
    "nitrate",
    "phosphate",
    "calcium",
    "magnesium",
    "potassium",
    "iron",
    "copper",
    "chlorine",
    "total_chlorine",
    "chloride",
    "sodium",
    "sulfate",
    "oxygen",
    "co2",
    "conductivity",
    "tds",
    "salinity",
    "redox",
    "silicate",
]


def test_ids_are_those_of_the_contract_in_order() -> None:
    assert list(ANALYTES) == CONTRACT


@pytest.mark.parametrize("row", ANALYTES.values(), ids=lambda row: row.id)
def test_canonical_unit_is_its_own(row) -> None:  # type: ignore[no-untyped-def]
    assert to_canonical(row.id, 1.5, row.unit) == 1.5
    assert row.low < row.high
    assert 0 < row.resolution < row.high - row.low
    assert row.decimals in {0, 1, 2}


@pytest.mark.parametrize(
    ("analyte", "number", "believable"),
    [
        ("ph", 7.2, True),
        ("ph", 72, False),  # the contract's own example of a lost point
        ("temperature", 250, False),
        ("kh", 400, False),  # ppm meant?
        ("kh", 18.0, True),  # the hardest rift lake
        ("salinity", 40.0, True),  # the saltiest sea with reefs
        ("magnesium", 1350, True),
        ("redox", -200, True),
    ],
)
def test_spans(analyte: str, number: float, believable: bool) -> None:
    assert plausible(analyte, number) is believable
