"""Salts of iron whose strength is known, by the forms that they are sold in."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from core.water.atoms import molar_mass

FORMS: Final[Mapping[str, tuple[str, ...]]] = {
    "ferrous sulfate heptahydrate": ("ferrous sulfate heptahydrate",),
    "ferrous sulfate": ("ferrous sulfate heptahydrate", "ferrous sulfate monohydrate"),
    "ferrous gluconate dihydrate": ("ferrous gluconate dihydrate",),
    "iron gluconate": ("ferrous gluconate dihydrate", "ferrous gluconate"),
}
"""The forms that a named salt is sold in: where the hydrate was not said, each is worked out."""

FORMULA: Final[Mapping[str, str]] = {
    "ferrous sulfate heptahydrate": "FeSO4.7H2O",
    "ferrous sulfate monohydrate": "FeSO4.1H2O",
    "ferrous gluconate dihydrate": "FeC12H22O14.2H2O",
    "ferrous gluconate": "FeC12H22O14",
}


def iron_per_gram(name: str) -> float:
    """Iron in a gram of a salt, by the form that holds less of it; 0 of what is none. [mg/g]"""
    shares = (1000.0 * iron_share(form) for form in FORMS.get(name, ()))
    return min(shares, default=0.0)


def iron_share(form: str) -> float:
    """The part of a form's mass that is iron."""
    return molar_mass("Fe") / molar_mass(FORMULA[form])
