"""A bought product that is called by what it is for: `how many drops of ph up`, `how much buffer`.

asked = "how much" [measure] job [ "for" volume ]
job = ("ph" | "kh" | "gh") ("up" | "down" | "buffer") | "buffer"

Its name tells what it shall do, and nothing of what is in it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
from typing import Final, Literal, NamedTuple

from core.message.amounts import volume_litres
from core.message.fold import fold
from core.message.plan_said import said_of_plan
from core.message.waters import one_of
from core.message.wordfile import spelt

LONGEST: Final = 90
"""A longer text says more. [characters]"""

Job = Literal["ph_up", "ph_down", "kh_up", "kh_down", "gh_up", "gh_down", "buffer"]

_VOLUME: Final = re.compile(r"\d{1,6}(?:[.,]\d{1,3})? ?(?:l|lit\w{1,5}|gal\w{0,5})\b")
_NUMBER: Final = re.compile(r"\d{1,2}(?:[.,]\d{1,2})?")
_EDGES: Final = " \t\n¿?¡!.,;:"


class Asked(NamedTuple):
    """What a product is called, and its job."""

    name: str
    job: Job


@cache
def _words(*meanings: str) -> str:
    told = spelt("named_for_job.txt", {"word"})
    return one_of(way for _section, meaning, these in told if meaning in meanings for way in these)


@cache
def _job() -> re.Pattern[str]:
    of = "|".join(f"(?P<{name}>{_words(name)})" for name in ("of_ph", "of_kh", "of_gh"))
    plus, minus = r"\+(?! ?\d)", r"-(?= |$)"
    ways = (
        rf"(?P<up>(?:{_words('up')})(?!\w)|{plus})",
        rf"(?P<down>(?:{_words('down')})(?!\w)|{minus})",
        rf"(?P<holds>{_words('buffer')})(?!\w)",
    )
    way = f"[ -]?(?:{'|'.join(ways)})"
    alone = rf"(?P<buffer>{_words('buffer')})(?:(?: (?:de|di|do|del|for|für|pour))? (?:ph|kh))?"
    return re.compile(rf"(?<!\w)(?:(?:{of})(?:{way})|{alone}(?!\w))")


@cache
def _patterns() -> tuple[re.Pattern[str], ...]:
    """The opening, measures, and words beside."""
    return tuple(
        re.compile(rf"(?<!\w)(?:{_words(*names)})(?!\w)")
        for names in (("ask",), ("ask", "measure", "beside"), ("have",), ("measure",))
    )


def asked(text: str, tanks: Sequence[str] = ()) -> Asked | None:
    """The product that so much of is asked for; None where more is said.

    Examples
    --------
    >>> asked("how many drops of ph up"), asked("how much buffer do i have")
    (Asked(name='ph up', job='ph_up'), None)
    >>> asked("how much kh plus 2"), asked("how much kh+ for 90 l").job
    (None, 'kh_up')
    """
    plain = " ".join(fold(text).split()).strip(_EDGES)
    found = _job().search(plain) if len(plain) <= LONGEST else None
    if found is None:
        return None
    opening, light, have, measure = _patterns()
    rest = f"{plain[: found.start()]} {plain[found.end() :]}"
    if opening.search(rest) is None or (found["buffer"] and have.search(rest)):
        return None
    if not measure.search(rest) and _NUMBER.search(_VOLUME.sub(" ", rest)):
        return None  # how much kh up to 5
    for tank in sorted(tanks, key=len, reverse=True):
        rest = re.sub(rf"(?<!\w){re.escape(fold(tank))}(?!\w)", " ", rest)
    rest = _NUMBER.sub(" ", light.sub(" ", _VOLUME.sub(" ", rest)))
    left = " ".join(rest.split()).strip(_EDGES)
    if left and said_of_plan(left) is None:
        return None
    return Asked(found[0].strip(), _job_of(found))


def volume_in(text: str, us_gallons: bool) -> float | None:
    """The water that it is asked for, in litres; None where none is told.

    Examples
    --------
    >>> volume_in("how much buffer for 90 l", True), volume_in("how much buffer", True)
    (90.0, None)
    """
    found = _VOLUME.search(fold(text))
    return None if found is None else volume_litres(found[0], us_gallons)


def _job_of(found: re.Match[str]) -> Job:
    if found["buffer"] or found["holds"]:
        return "buffer"
    of = "ph" if found["of_ph"] else "kh" if found["of_kh"] else "gh"
    job: Job = f"{of}_up" if found["up"] else f"{of}_down"  # type: ignore[assignment]
    return job
