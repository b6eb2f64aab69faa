"""Short whole sentences around an answer or a tank: `should i do 80% now`, `just add acid?`.

The words of ``how_asked.txt`` name what each word is of; here stands which of them make a meaning,
and which may stand beside them. Any other word makes it another message.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from core.message.reduced import reduced
from core.message.word_classes import Number, Said, said

FILE: Final = "how_asked.txt"

Meaning = Literal[
    "reach",
    "share",
    "change_back",
    "top_up",
    "bacteria",
    "air_off",
    "acid",
    "keep",
    "spread",
    "in_days",
    "half_part",
    "cycling",
    "cycled_how",
    "new_tank",
    "conditioner",
    "what_does",
    "medium",
    "nitrate_salt",
    "every",
    "away",
    "week",
    "pace",
    "by_now",
    "fed_yesterday",
]


@dataclass(frozen=True, slots=True)
class Asked:
    """A meaning, its numbers (mg/L, %, days, litres), and the ids of what is named."""

    meaning: Meaning
    number: float | None = None
    other: float | None = None
    substance: str | None = None
    analyte: str | None = None


@dataclass(frozen=True, slots=True)
class _Way:
    """Classes that must stand in a sentence, the others that may, and units of its numbers.

    `asks` tells that it takes a question mark, or one of the classes that ask.
    """

    meaning: Meaning
    must: str
    may: str = ""
    units: tuple[tuple[str | None, ...], ...] = ()
    asks: bool = False


_FREE: Final = frozenset({"light", "goal", "that", "rate", "number", "does"})
"""Classes that may stand in every sentence: small words that some need as their mark."""

_TOLD: Final = frozenset({"every", "fed_yesterday"})
"""What is told: with a question mark it is not."""

_ASKING: Final = frozenset({"ask", "ok", "how", "what", "much", "whats"})
_WORDS: Final = {"kh": "kh", "oxygen": "do", "ammonia": "ammonia"}
"""Analytes that have a say here, by their ids; oxygen is rather the verb that it is written as."""

_BARE: Final = (None, "ppm")

WAYS: Final = (
    _Way("reach", "much change reach", "water ask over now", (_BARE,)),
    _Way("share", "ask", "do change now water", (("percent",),)),
    _Way("change_back", "ask change back", "do now water reach"),
    _Way("top_up", "topup same", "change water ask what ok do"),
    _Way("top_up", "topup change", "water ask what ok same do", asks=True),
    _Way("bacteria", "kill bacteria", "now ask do off"),
    _Way("air_off", "air off", "ask ok now do", asks=True),
    _Way("acid", "acid", "add ask ok now do put fed water tank", asks=True),
    _Way("keep", "how keep there", "kh over do water"),
    _Way("spread", "long spread", "ask over do much"),
    _Way("in_days", "over do", "ask instead", (("day",),)),
    _Way("in_days", "over spread", "do ask instead", (("day",),)),
    _Way("in_days", "over not", "do spread ask instead", (("day",), (None, "day"))),
    _Way("half_part", "half part first", "ask do now put fed add instead"),
    _Way("cycling", "long cycle", "take spread ready do tank new"),
    _Way("cycled_how", "cycle know ready", "how do tank over new what"),
    _Way("new_tank", "tank new fish ask", "setup put fed now over ago do", (("day", "week"),)),
    _Way("new_tank", "tank new fish ask", "setup put fed now over ago do"),
    _Way("new_tank", "setup fish ask", "tank put fed now over ago do", (("day", "week"),)),
    _Way("conditioner", "much conditioner", "water ask put do over", (("litre", "gallon"),)),
    _Way("what_does", "whats salt", "does do"),
    _Way("medium", "salt ok", "put ask", asks=True),
    _Way("nitrate_salt", "much salt", "ask do put", (("ppm",),)),
    _Way("every", "every", "do change water instead now", (("percent",), ("day",))),
    _Way("away", "holiday", "going over put do ago", (("day", "week"),)),
    _Way("week", "plan week", "what whats over"),
    _Way("fed_yesterday", "fed ammonia yesterday", "tank", (("ml",),)),
    _Way("by_now", "be", "what much whats kh analyte do", asks=True),
    _Way("pace", "pace safe", "what whats much how ask over"),
)


def how_asked(text: str) -> Asked | None:
    """What a text asks in one of these ways; None where it says more, or anything else.

    Examples
    --------
    >>> how_asked("how much water should i change to get to 20")
    Asked(meaning='reach', number=20.0, other=None, substance=None, analyte=None)
    >>> how_asked("just add acid?").meaning, how_asked("added acid") is None
    ('acid', True)
    >>> how_asked("do 25% every 3 days then").other
    3.0
    >>> how_asked("should i do 80% now or wait") is None
    True
    """
    found = reduced(text)
    if found.waters or len(found.substances) > 1:
        return None
    pieces = found.text.split("@analyte")
    names = [_WORDS.get(each, "@analyte") for each in found.analytes]
    plain = "".join(map("".join, zip(pieces, [*names, ""], strict=True)))
    told = said(FILE, plain, small=True)
    if told is None:
        return None
    asks = "?" in text or not _ASKING.isdisjoint(told.classes)
    classes = frozenset(told.classes)
    for way in WAYS:
        must = frozenset(way.must.split())
        if not must <= classes or not classes - _FREE <= must | set(way.may.split()):
            continue
        if way.meaning in _TOLD and "?" in text:
            return None
        if (way.asks and not asks) or (numbers := _numbers(told, way)) is None:
            continue
        substance = found.substances[0] if found.substances else None
        analyte = found.analytes[0] if len(found.analytes) == 1 else None
        return Asked(way.meaning, *numbers, substance=substance, analyte=analyte)
    return None


def _numbers(told: Said, way: _Way) -> tuple[float | None, float | None] | None:
    """The numbers of a sentence in the order of a way's units; None where they are others."""
    if len(told.numbers) != len(way.units):
        return None
    left: list[Number] = list(told.numbers)
    values: list[float | None] = []
    for units in way.units:
        fits = next((each for each in left if each.unit in units), None)
        if fits is None:
            return None
        left.remove(fits)
        days = 7.0 if fits.unit == "week" else 1.0
        values.append(fits.value * days)
    padded = [*values, None, None]
    return padded[0], padded[1]
