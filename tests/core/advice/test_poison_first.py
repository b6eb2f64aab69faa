"""What was told to be too much of, and whether a usual test shows it."""

from __future__ import annotations

import pytest

from core.advice.poison_first import poison_of


@pytest.mark.parametrize(
    ("text", "poison"),
    [
        ("overdosed the copper medicine by like 3x", "copper"),
        ("zu viel kupfermedikament", "copper"),
        ("sprayed bleach cleaner near the tank", "bleach"),
        ("spilled some drain cleaner in it", "contaminated"),
        ("dumped half a bottle of algae killer in", "contaminated"),
        ("too much medicine", "contaminated"),
        ("zu viel algenmittel", "contaminated"),
        ("trop d'anti algues", "contaminated"),
        ("demasiado antialgas", "contaminated"),
        ("algicida demais", "contaminated"),
        ("troppo antialghe", "contaminated"),
        ("te veel algenmiddel", "contaminated"),
        ("za dużo preparatu na glony", "contaminated"),
        ("för mycket algmedel", "contaminated"),
        ("poured vinegar in", None),
        ("too much baking soda", None),
        ("too much fertilizer", None),
        ("double dosed the dechlorinator", None),
    ],
)
def test_poison_of(text: str, poison: str | None) -> None:
    assert poison_of(text) == poison
