"""Names of analytes, salts, ions and media as a keeper hears them: marked here, once for all.

The core knows each by an English name that is its id; what is said is looked up from that.
"""

from __future__ import annotations

from functools import reduce
from typing import Final

from bot.chat.words.text import N_, _
from core.analytes import ANALYTES

MARKED: Final = frozenset(
    {
        N_("temperature"), N_("pH"), N_("GH"), N_("KH"), N_("ammonia"), N_("nitrite"),
        N_("nitrate"), N_("phosphate"), N_("calcium"), N_("magnesium"), N_("potassium"),
        N_("iron"), N_("copper"), N_("free chlorine"), N_("total chlorine"), N_("chloride"),
        N_("sodium"), N_("sulfate"), N_("oxygen"), N_("CO2"), N_("conductivity"), N_("TDS"),
        N_("salinity"), N_("redox"), N_("silicate"), N_("thiosulfate"),
        N_("strontium"), N_("iodine"), N_("boron"), N_("lithium"), N_("bromide"), N_("fluoride"),
        N_("manganese"), N_("zinc"), N_("molybdenum"), N_("barium"), N_("nickel"),
        N_("chromium"), N_("cobalt"), N_("vanadium"), N_("selenium"), N_("aluminium"),
        N_("arsenic"), N_("cadmium"), N_("lead"),
        N_("crushed coral"), N_("aragonite"), N_("limestone"), N_("shells"), N_("peat"),
        N_("leaves"), N_("driftwood"), N_("activated carbon"),
        N_("sea salt"), N_("sodium bicarbonate"), N_("potassium bicarbonate"),
        N_("sodium carbonate"), N_("sodium carbonate decahydrate"), N_("potassium carbonate"),
        N_("calcium carbonate"), N_("calcium hydroxide"), N_("sodium hydroxide"),
        N_("calcium chloride"), N_("calcium chloride dihydrate"), N_("calcium sulfate"),
        N_("calcium sulfate dihydrate"), N_("magnesium chloride"),
        N_("magnesium chloride hexahydrate"), N_("magnesium sulfate"),
        N_("magnesium sulfate heptahydrate"), N_("sodium chloride"), N_("potassium chloride"),
        N_("potassium sulfate"), N_("ammonium chloride"), N_("potassium nitrate"),
        N_("potassium phosphate"), N_("monopotassium phosphate"), N_("dipotassium phosphate"),
        N_("sodium thiosulfate"), N_("sodium thiosulfate pentahydrate"), N_("ferrous sulfate"),
        N_("ferrous sulfate heptahydrate"), N_("ferrous sulfate monohydrate"),
        N_("ferrous gluconate"), N_("ferrous gluconate dihydrate"), N_("iron gluconate"),
        N_("acetic acid"), N_("citric acid"), N_("hydrochloric acid"), N_("nitric acid"),
        N_("phosphoric acid"), N_("sulfuric acid"), N_("vinegar"), N_("hydrogen peroxide"),
    }
)  # fmt: skip
"""Every name of the core that a keeper hears."""

PURE: Final = frozenset({N_("RO"), N_("rain"), N_("distilled")})
"""Waters that need no source on record."""

_SHORT: Final = frozenset({"kh", "gh", "ph"})


def said(name: str) -> str:
    """A salt, an ion or a medium; what the keeper named and nobody marked stays as it is."""
    return _(name) if name in MARKED else name


def water(name: str) -> str:
    """A source of water; one that the keeper named stays as it is."""
    return _(name) if name in PURE else name


def substance(name: str) -> str:
    """A salt by its full name, with the kitchen's word for it."""
    return _("sodium bicarbonate (baking soda)") if name == "sodium bicarbonate" else said(name)


def analyte(of: str) -> str:
    """An analyte within a sentence: KH, GH and pH, else the id's own word."""
    return label(of) if of in _SHORT else said(of)


def first_tank() -> str:
    """The name of the tank that a first reading makes."""
    return _("Tank")


def label(of: str) -> str:
    """An analyte as people write it."""
    known = ANALYTES.get(of)
    return said(of if known is None else known.label)


def both(parts: list[str]) -> str:
    """Join by "and": one, "one and other", and so on."""
    return reduce(lambda one, other: _("{one} and {other}").format(one=one, other=other), parts)


def either(parts: list[str]) -> str:
    """Join by "or"."""
    return reduce(lambda one, other: _("{one} or {other}").format(one=one, other=other), parts)


def listed(parts: list[str]) -> str:
    """Join by commas and a last "and"."""
    *first, last = parts
    return both([", ".join(first), last]) if first else last


def of_tank(tank: str | None, text: str) -> str:
    """Say whose water a sentence is about, where it is a tank's."""
    return _("{tank}: {text}").format(tank=tank, text=text) if tank else text


def capital(name: str) -> str:
    """A name at the beginning of a line."""
    return name[:1].upper() + name[1:]
