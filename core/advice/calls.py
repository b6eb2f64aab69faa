"""Which danger a message names, and whether it speaks of animals in trouble."""

from __future__ import annotations

import re
from collections.abc import Collection
from typing import Final, Literal

from core.advice import heater_warmth
from core.advice.alarm_words import group, named
from core.message import acid_in
from core.message.fold import fold

Danger = Literal[
    "electric",
    "heater_dry",
    "drowning",
    "fumes",
    "co_air",
    "co2_air",
    "collapsed",
    "toxin",
    "breath",
    "splashed",
    "swallowed",
    "bleeding",
    "sting",
    "pet",
    "wound",
    "chlorine",
    "bleach",
    "copper_metal",
    "contaminated",
    "sulfide",
    "co2_high",
    "copper",
    "overdose",
    "jumped",
    "leak",
    "overfed",
    "heater_hot",
    "heater_cold",
    "heater",
    "power",
    "filter",
    "filter_harmed",
    "frozen",
    "ph_crash",
    "ph_high",
    "ammonia",
    "nitrite",
    "gasping",
    "maybe_dead",
    "general",
    "illness",
]

ORDER: Final[tuple[Danger, ...]] = Danger.__args__  # type: ignore[attr-defined]
"""Where a message names several: people first, then what is known to cause the rest."""

OF_PEOPLE: Final[frozenset[Danger]] = frozenset(ORDER[: ORDER.index("wound") + 1])
"""Dangers to people and pets: no tank's readings bear on them."""

TOO_HOT: Final = 29.0
TOO_COLD: Final = 21.0
"""What a heater that failed did, by the temperature: between them it is asked; common practice."""

OFF_AND_COLD: Final = 20.0
"""Under this a heater that is told to be off is a call: common practice. [°C]"""

NEAR: Final = 3
"""Words behind a heater within which it is told to be off."""

HEATED: Final[frozenset[Danger]] = frozenset({"heater", "heater_hot", "heater_cold"})
"""Dangers of a heater, which the water's warmth tells apart."""


def recognise(text: str) -> Danger | None:
    """Name the danger that a call for help is about; None where it is none.

    Examples
    --------
    >>> recognise("help ammonia"), recognise("meine Fische schnappen nach Luft"), recognise("kh 4")
    ('ammonia', 'gasping', None)
    """
    found = named(text)
    ids = found.get("danger", frozenset()) | found.get("whole", frozenset())
    danger = next((each for each in ORDER if each in ids), None)
    if danger is None and _off_and_cold(text):
        return "heater_cold"
    return _heated(text, danger) if danger in HEATED else danger


def in_water(text: str, tanks: Collection[str] = ()) -> Danger | None:
    """The danger of an acid, peroxide or bleach that few words tell to be in; None where none is.

    Parameters
    ----------
    text : str
        The message as written.
    tanks : collection of str
        Names of the chat's tanks, which may stand in it.

    Examples
    --------
    >>> in_water("acid 10 ml in"), in_water("10 ml of bleach in fern", ["Fern"])
    ('overdose', 'bleach')
    """
    thing = acid_in.went_in(text, tanks)
    if thing is None:
        return None
    return "bleach" if thing == "bleach" else "overdose"


def _off_and_cold(text: str) -> bool:
    """Whether a heater is told to be off beside water too cold for most that is heated."""
    words = re.findall(r"\w+", fold(text))
    heaters = [n for n, word in enumerate(words) if (word,) in group("heater")]
    offs = [n for n, word in enumerate(words) if (word,) in group("heater_off")]
    if not any(0 < off - heater <= NEAR for heater in heaters for off in offs):
        return False
    warmth = heater_warmth.told(text)
    return warmth is not None and warmth.celsius < OFF_AND_COLD and not asks(text)


def distressed(text: str) -> bool:
    """Whether a message that nobody understood speaks of animals in trouble."""
    return bool({"general", "odd"} & named(text).get("distress", frozenset()))


def behaves_oddly(text: str) -> bool:
    """Whether a message says that animals behave badly, beside what else it tells."""
    return "odd" in named(text).get("distress", ())


def lives(text: str) -> bool:
    """Whether a message says that an animal still breathes or moves."""
    return "alive" in named(text).get("distress", ())


def gasps(text: str) -> bool:
    """Whether a message says that animals gasp, whatever else it says."""
    return "gasping" in named(text).get("danger", ())


def feels(text: str) -> bool:
    """Whether a message says how a person feels or looks, and names no animal and no tank.

    Read only while somebody is in danger by what was told.

    Examples
    --------
    >>> feels("feel a bit sick"), feels("hes crying, his mouth is red"), feels("the fish are sick")
    (True, True, False)
    """
    return "person" in named(text).get("distress", ())


def names_animals(text: str) -> bool:
    """Whether a message names an animal or a tank."""
    return "animals" in named(text).get("distress", ())


def asks_antidote(text: str) -> bool:
    """Whether a message speaks of what people think to help against poison: milk, to be sick."""
    return "antidote" in named(text).get("distress", ())


def takes_alike(text: str) -> bool:
    """Whether a message takes one thing for another: the same, instead, as good."""
    return "alike" in named(text).get("distress", ())


def asks(text: str) -> bool:
    """Whether a message opens a question in any language: may I, how much, what if."""
    return "asks" in named(text).get("asked", ())


def asks_what_now(text: str) -> bool:
    """Whether a message asks nothing but what to do now."""
    return "what_now" in named(text).get("whole", ())


def _heated(text: str, danger: Danger) -> Danger:
    """Which way a heater failed, by the degrees that a message names, else by its words.

    Degrees tell nothing against "too hot": what water may be so is known by who says it.
    """
    warmth = heater_warmth.told(text)
    if warmth is None:
        return danger
    by_degrees = side(warmth.celsius, danger)
    failed = danger != "heater_hot" or heater_warmth.names_heater(text)
    return by_degrees if failed else danger


def side(temperature: float, otherwise: Danger) -> Danger:
    """Which way a heater failed, by a temperature; `otherwise` between the two. [°C]"""
    if temperature >= TOO_HOT:
        return "heater_hot"
    return "heater_cold" if temperature <= TOO_COLD else otherwise
