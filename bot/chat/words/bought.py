"""Where a salt is had, and what its label must say.

The E numbers are those of the European Union's list of food additives (Regulation (EC) 1333/2008,
annex II), the same as the Codex Alimentarius' INS numbers (CXG 36-1989); from memory. What shops
have is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words.text import N_, _

_PLANT_FOOD: Final = N_(
    "Sold pure as plant food; the label lists nothing else. Some countries restrict its sale."
)

WHERE: Final[Mapping[str, str]] = {
    "sodium bicarbonate": N_(
        "From a grocer's baking shelf: the label lists sodium bicarbonate (E 500) alone. Baking"
        " powder is something else."
    ),
    "potassium bicarbonate": N_(
        "Food grade (E 501), from a supplier of wine makers or bakers; nothing else in it."
    ),
    "sodium carbonate": N_(
        "Food or pure grade (E 500): no cleaner with scent, bleach or soap in it."
    ),
    "potassium carbonate": N_("Food grade (E 501), from a baker's supplier; nothing else in it."),
    "calcium chloride": N_(
        "Food grade (E 509), from a supplier of brewers or cheese makers; no road salt. The label"
        " tells whether it is the dihydrate."
    ),
    "calcium sulfate": N_(
        "Food grade gypsum (E 516), from a supplier of brewers; no building plaster."
    ),
    "magnesium sulfate": N_("Epsom salt from a chemist's (E 518), without scent, oil or colour."),
    "magnesium chloride": N_("Food grade (E 511), as tofu is made with; nothing else in it."),
    "sodium chloride": N_("Pure salt without iodine and without anti-caking agent."),
    "sea salt": N_("A salt mix made for marine aquaria; no salt for the kitchen or the bath."),
    "potassium chloride": N_("Food grade (E 508); no salt substitute with other things in it."),
    "ammonium chloride": N_("Food or pure grade (E 510); keep it from children."),
    "potassium nitrate": _PLANT_FOOD,
    "potassium sulfate": _PLANT_FOOD,
    "monopotassium phosphate": _PLANT_FOOD,
    "potassium phosphate": _PLANT_FOOD,
    "sodium thiosulfate": N_("Pure, as photographers use it; the label tells if pentahydrate."),
    "iron gluconate": N_("Food grade (E 579), from a chemist's or a plant supplier."),
}
"""By the salt without its water."""

OTHERWISE: Final = N_("Pure or food grade, with nothing else in it: the label must say so.")


def where(name: str) -> str:
    """Where a salt is had, and what its label must say; hydrates as the salt itself."""
    plain = name.replace("ferrous", "iron")
    found = next((told for salt, told in WHERE.items() if plain.startswith(salt)), OTHERWISE)
    return _(found)
