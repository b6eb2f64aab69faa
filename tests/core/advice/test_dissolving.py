"""How a part is made ready. Solubility of sodium bicarbonate: 103 g in a kilogram of water at 25 °C
(CRC Handbook, from memory); how thin is common practice, no source."""

from __future__ import annotations

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from core.advice.dissolving import STOCK_MOST, THIN, jug_litres, stock_for
from core.advice.effects import SOLUBLE

SALTS = ["sodium bicarbonate", "magnesium sulfate heptahydrate", "calcium sulfate dihydrate"]


@given(st.sampled_from(SALTS), st.floats(0.01, 5000.0))
def test_a_jug_is_thin_and_takes_the_salt_up(substance: str, grams: float) -> None:
    litres = jug_litres(substance, grams)
    assert litres % 0.5 == 0.0
    assert grams / litres <= THIN * (1.0 + 1e-6)
    assert grams / litres < SOLUBLE.get(substance, 103.0)


@given(st.sampled_from(SALTS), st.floats(0.01, 500.0))
@example("sodium bicarbonate", 0.951)  # ten times as much is no whole ten steps of a scale
def test_a_stock_holds_the_part_within_a_twentieth_and_dissolves(
    substance: str, grams: float
) -> None:
    stock = stock_for(substance, grams)
    if stock is None:
        return
    assert stock.grams == round(stock.grams) >= 10.0
    assert stock.grams <= STOCK_MOST < 103.0
    assert stock.grams * stock.millilitres / 1000.0 == pytest.approx(grams, rel=0.051)


@pytest.mark.parametrize(
    ("substance", "grams"),
    [
        ("sodium bicarbonate", 12.0),  # a kitchen scale weighs it
        ("sodium bicarbonate", 7.0),  # ten times as much would not surely dissolve
        ("sodium bicarbonate", 0.04),  # fewer millilitres than anybody measures
        ("calcium sulfate", 0.5),  # does not dissolve enough
    ],
)
def test_without_a_stock_it_is_weighed(substance: str, grams: float) -> None:
    assert stock_for(substance, grams) is None
