"""Canonical plain names of what is dosed or put into a tank; names only, no chemistry.

The words people use for them are in the language files of `core.message`.
"""

from __future__ import annotations

SALTS: tuple[str, ...] = (
    "sodium bicarbonate",
    "potassium bicarbonate",
    "sodium carbonate",
    "sodium carbonate decahydrate",
    "potassium carbonate",
    "calcium carbonate",
    "calcium hydroxide",
    "calcium chloride",
    "calcium chloride dihydrate",
    "calcium sulfate",
    "calcium sulfate dihydrate",
    "magnesium sulfate",
    "magnesium sulfate heptahydrate",
    "magnesium chloride",
    "magnesium chloride hexahydrate",
    "sodium chloride",
    "sea salt",
    "potassium chloride",
    "ammonium chloride",
    "potassium nitrate",
    "potassium sulfate",
    "potassium phosphate",
    "monopotassium phosphate",
    "sodium thiosulfate",
    "sodium thiosulfate pentahydrate",
    "iron gluconate",
    "ferrous gluconate dihydrate",
    "ferrous sulfate",
    "ferrous sulfate heptahydrate",
    "citric acid",
    "hydrochloric acid",
    "sulfuric acid",
    "phosphoric acid",
    "acetic acid",
    "vinegar",
)
"""Things that are weighed or measured out."""

STRONG_ACIDS = frozenset({"hydrochloric acid", "sulfuric acid", "phosphoric acid", "nitric acid"})
WEAK_ACIDS = frozenset({"citric acid", "acetic acid", "vinegar"})
ACIDS = STRONG_ACIDS | WEAK_ACIDS
"""Never into water with animals in it."""

MEDIA: tuple[str, ...] = (
    "crushed coral",
    "aragonite",
    "limestone",
    "shells",
    "peat",
    "leaves",
    "driftwood",
    "activated carbon",
)
"""Things that lie in the filter or the tank."""

SUBSTANCES: frozenset[str] = frozenset(SALTS + MEDIA)
