"""What is asked and told of a sea's salinity: `how do i get it down to 35`, `now 1.0264`.

All words of a text must be of ``salinity_talk.txt`` or without weight: a text that says more is
none. What "it" is, the chat looks up.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Final, Literal

from core.message.amounts import volume_litres
from core.message.fold import fold
from core.message.reduced import reduced
from core.message.waters import one_of
from core.message.word_classes import Said, said
from core.message.wordfile import spelt

FILE: Final = "salinity_talk.txt"

Asks = Literal["wish", "litres", "out", "one_go", "straight", "reading", "make"]

GRAVITIES: Final[tuple[float, float]] = (1.01, 1.04)
"""What a bare number may be of a sea's specific gravity."""

SALINITIES: Final[tuple[float, float]] = (20.0, 45.0)
"""What a bare number may be of a sea's salinity. [g/kg]"""


@dataclass(frozen=True, slots=True)
class SalinityTalk:
    """What a text says of salinity.

    Attributes
    ----------
    asks : str
        ``wish``: how it gets to a value; ``litres``: how much water goes out and in; ``out``: the
        same, if salinity is spoken of; ``one_go``:
        may it be all at once, as nothing lives there; ``straight``: may dry salt go in;
        ``reading``: a specific gravity alone; ``make``: water of a salinity in so many litres.
    value : float or None
        A salinity or a specific gravity, as told.
    litres : float or None
        [L]
    vessel, fishless : bool
        Whether it is a bucket, and whether only fish were said to be missing.
    named : bool
        Whether salinity or a salt is named.
    """

    asks: Asks
    value: float | None = None
    litres: float | None = None
    vessel: bool = False
    fishless: bool = False
    named: bool = False


def salinity_talk(text: str, *, us_gallons: bool = True) -> SalinityTalk | None:
    """What a text says of salinity; None where nothing, or it says more.

    Examples
    --------
    >>> salinity_talk("how do i get it down to 35").value
    35.0
    >>> salinity_talk("how much water out and ro in").asks, salinity_talk("now 1.0264").value
    ('litres', 1.0264)
    >>> salinity_talk("its a new tank, no animals, can i do it in one go").asks
    'one_go'
    >>> salinity_talk("can i add the salt straight in").asks, salinity_talk("kh 8") is None
    ('straight', True)
    """
    found = reduced(text)
    told = said(FILE, found.text, small=True)
    if told is None or set(found.analytes) - {"salinity"} or len(found.waters) > 1:
        return None
    if set(found.substances) - _SALTS:
        return None
    litres = _litres(told, us_gallons)
    values = [each.value for each in told.numbers if each.unit in {None, "salt"}]
    if len(values) + (litres is not None) != len(told.numbers) or len(values) > 1:
        return None
    value = values[0] if values else None
    named = told.has("salinity") or told.has("salt") or any(n.unit == "salt" for n in told.numbers)
    asks = _asks(told, value, litres)
    if asks is None:
        return None
    return SalinityTalk(
        asks, value, litres, told.has("bucket"), told.has("fishless"), named or _is_gravity(value)
    )


def _asks(told: Said, value: float | None, litres: float | None) -> Asks | None:
    classes = set(told.classes)
    if value is None and litres is None:
        if classes & {"one_go"} and classes & {"none", "bucket", "new", "fishless"}:
            return "one_go"
        if told.has("salt", "straight") and classes & {"add", "may", "into", "get"}:
            return "straight"
        if told.has("how_much", "salt", "up") and classes <= _OF_UP:
            return "wish"  # how much salt to bring it up
        if told.has("how_much", "water", "out", "into"):
            return "litres"
        return "out" if told.has("how_much", "out") and classes <= _OF_OUT else None
    if value is not None and litres is not None:
        makes = _is_gravity(value) or (told.has("salinity") and _is_salinity(value))
        only = {"number", "salinity", "water", "salt", "bucket", "how_much"}
        return "make" if makes and classes <= only else None
    if value is None:
        return None
    if classes & {"down", "up"} and classes & {"get", "how_much", "may", "to"}:
        return "wish" if _is_gravity(value) or _is_salinity(value) else None
    return "reading" if _is_gravity(value) and classes <= {"number", "now", "salinity"} else None


def _is_gravity(value: float | None) -> bool:
    return value is not None and GRAVITIES[0] <= value <= GRAVITIES[1]


def _is_salinity(value: float) -> bool:
    return SALINITIES[0] <= value <= SALINITIES[1]


_OF_UP: Final = frozenset({"how_much", "salt", "up", "to", "get", "may", "salinity", "add"})
_OF_OUT: Final = frozenset({"how_much", "out", "water", "get", "may"})
_SALTS: Final = frozenset({"sodium chloride", "sea salt"})
_VOLUMES: Final = {"litre": "l", "gallon": "gal"}


def _litres(told: Said, us_gallons: bool) -> float | None:
    found = [each for each in told.numbers if each.unit in _VOLUMES]
    if len(found) != 1:
        return None
    unit = _VOLUMES[found[0].unit or "litre"]
    return volume_litres(f"{found[0].value:g} {unit}", us_gallons=us_gallons)


@cache
def _moved() -> re.Pattern[str]:
    ways = {name: set[str]() for name in ("named", "moved", "aux", "from", "to")}
    for _section, meaning, told in spelt("salinity_moved.txt", {"word"}):
        ways[meaning].update(told)
    number = r"(\d{1,2}(?:[.,]\d{1,4})?)"
    unit = r"(?: ?(?:ppt|psu|‰|g/kg))?"
    named, moved, aux, start, end = (one_of(told) for told in ways.values())
    ends = rf"(?:{start})\s+{number}{unit}\s+(?:{end})\s+{number}{unit}"
    first = rf"(?:(?:{moved})\W+{ends}|(?:{aux})\W+{ends}\W+(?:{moved}))"
    return re.compile(rf"(?:{named})\W+{first}(?=$|[\s,;.!])(?P<rest>.*)")


def moved(text: str) -> tuple[float, float, str] | None:
    """From which to which salinity it is told to have gone, and what stands behind.

    Examples
    --------
    >>> moved("salinity went from 35 to 31, auto top off stuck")
    (35.0, 31.0, 'auto top off stuck')
    >>> moved("get salinity from 31 to 35") is None, moved("will salinity go from 35 to 31") is None
    (True, True)
    """
    plain = fold(text).strip()
    found = None if "?" in plain else _moved().match(plain)
    if found is None:
        return None
    numbers = [each for each in found.groups()[:-1] if each is not None]
    start, end = (float(each.replace(",", ".")) for each in numbers)
    return start, end, found["rest"].strip(" ,;.!-")
