"""Who eats algae, asked for without a name: `which fish eat algae`, `was frisst Algen`."""

from __future__ import annotations

from typing import Final

from core.advice._livestock_words import plain_name
from core.advice.asked_company import WHAT
from core.advice.livestock import Species, lookup, table
from core.message import herd

LONGEST: Final = 80
"""A longer text asks for more. [characters]"""

GRAZERS: Final = (
    "Caridina multidentata",
    "Neritina",
    "Otocinclus vittatus",
    "Ancistrus",
    "Crossocheilus oblongus",
    "Neocaridina davidi",
    "Planorbidae",
    "Turbo",
    "Zebrasoma flavescens",
)
"""Kinds of the table that graze on algae all their lives, the keenest of a water first.

Common practice, no source.
"""

_ALGAE: Final = frozenset("algae alga algen algues algas alghe alger glony glonow".split())  # noqa: SIM905
_EAT: Final = frozenset(
    "eat eats eating graze grazes clean cleans fressen frisst essen mange mangent comen come comer"  # noqa: SIM905
    " comem mangia mangiano eten eet jedza je zjada zjadaja ater".split()
)


def asked(text: str) -> bool:
    """Whether it is asked which animals eat algae.

    Examples
    --------
    >>> asked("which fish eat algae"), asked("was frisst Algen?"), asked("do nerites eat algae")
    (True, True, False)
    """
    words = plain_name(text[: LONGEST + 1]).split()
    if len(text) > LONGEST or not words or words[0] not in WHAT:
        return False
    return not _ALGAE.isdisjoint(words) and not _EAT.isdisjoint(words)


def meant(text: str) -> list[Species]:
    """Those of them that a text asks for: shrimp or snails, where it says so.

    Examples
    --------
    >>> [row.name for row in meant("which snails eat algae")]
    ['nerite snail', 'ramshorn snail', 'turbo snail']
    """
    rows = {row.scientific: row for row in table().species}
    grazers = [rows[name] for name in GRAZERS]
    words = [word for word in plain_name(text).split() if len(word) > _SHORT]
    words = [word for word in words if herd.saying(word) != "any"]  # which fish
    shared = [found.candidates for found in map(lookup, words) if found.shared]
    return [row for row in grazers if row in shared[0]] if shared else grazers


_SHORT: Final = 3
"""Letters of a word that names no animals."""
