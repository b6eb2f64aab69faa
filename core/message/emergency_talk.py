"""What is told and asked while something is wrong in a tank: `now he looks worse`, `power is back`.

The words of ``emergency_talk.txt`` name what each word is of; here stands which of them make a
meaning, and which may stand beside them. Any other word makes it another message.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from core.message.fold import fold
from core.message.word_classes import said

Meaning = Literal[
    "milky",
    "cold_new",
    "conditioned",
    "co2_on",
    "co2_off",
    "air_on",
    "filter_on",
    "power_back",
    "scooped",
    "no_kit",
    "test_when",
    "feed",
    "cool_rate",
    "warm_rate",
    "survive",
    "will_live",
    "fish_now",
    "look_fine",
    "warmth_ok",
    "worse",
    "better",
    "spared",
    "not_eating",
    "much_conditioned",
]

FILE: Final = "emergency_talk.txt"

_BESIDE: Final = frozenset({"they", "day"})
"""Classes that may stand beside any meaning."""

_ASKS: Final = frozenset({"may", "how", "when", "must", "often", "will"})


@dataclass(frozen=True, slots=True)
class _Way:
    """Classes that must all be there, those that may be, and whether it asks (None: either)."""

    meaning: Meaning
    needs: frozenset[str]
    may: frozenset[str] = frozenset()
    asks: bool | None = None


def _way(meaning: Meaning, needs: str, may: str = "", *, asks: bool | None = None) -> _Way:
    return _Way(meaning, frozenset(needs.split()), frozenset(may.split()), asks)


_WAYS: Final = (
    _way("milky", "milky dosed", "water temp off"),
    _way("cold_new", "water cold", "temp what took", asks=False),
    _way("conditioned", "treated dechlorinator", "double", asks=False),
    _way("conditioned", "double dechlorinator", asks=False),
    _way("co2_on", "co2 on", "may again when off", asks=True),
    _way("co2_off", "co2 off", "air on treated", asks=False),
    _way("air_on", "air on", "treated", asks=False),
    _way("air_on", "air treated", asks=False),
    _way("filter_on", "filter on", "may again when must", asks=True),
    _way("power_back", "power returned", "on again", asks=False),
    _way("power_back", "power again on", asks=False),
    _way("power_back", "power on", asks=False),
    _way("power_back", "power again", asks=False),
    _way("power_back", "returned", asks=False),
    _way("power_back", "filter on", "again", asks=False),
    _way("power_back", "filter returned", "again on", asks=False),
    _way("scooped", "took most", "out water", asks=False),
    _way("no_kit", "none kit", "test again"),
    _way("no_kit", "none test"),
    _way("feed", "feed may", "again ok when", asks=True),
    _way("feed", "feed", "again when must ok", asks=True),
    _way("test_when", "test often", "may must kit again"),
    _way("test_when", "kit often", "may must test again"),
    _way("test_when", "test when", "may must again"),
    _way("test_when", "kit when", "may must again"),
    _way("test_when", "test must", "again", asks=True),
    _way("test_when", "test may again", "when", asks=True),
    _way("cool_rate", "fast cool", "may how"),
    _way("warm_rate", "fast warm", "may how"),
    _way("survive", "long live", "may will"),
    _way("will_live", "will live", "", asks=True),
    _way("will_live", "will ok", "", asks=True),
    _way("will_live", "will better", "", asks=True),
    _way("fish_now", "what do they", "again"),
    _way("better", "better swims", "again returned", asks=False),
    _way("look_fine", "swims", "ok well better again calm"),
    _way("look_fine", "better ok", "well calm", asks=True),
    _way("look_fine", "better calm", "well ok", asks=True),
    _way("look_fine", "well they", "ok calm", asks=True),
    _way("warmth_ok", "number ok", "live", asks=True),
    _way("spared", "spared", "what took better", asks=False),
    _way("not_eating", "not_eating", "what again", asks=False),
    _way("much_conditioned", "many_times dechlorinator", "treated mistake took", asks=False),
    _way("worse", "worse", "again what took off water"),
    _way("better", "better", "again returned what took off"),
    _way("better", "well they", "again", asks=False),
)


def meant(text: str) -> Meaning | None:
    """What a text tells or asks of an emergency; None where it may be of anything else.

    Examples
    --------
    >>> meant("now he looks worse"), meant("Strom ist wieder da"), meant("puedo dar de comer?")
    ('worse', 'power_back', 'feed')
    >>> meant("should i feed flakes or pellets") is None
    True
    """
    told = said(FILE, text)
    if told is None:
        return None
    of = frozenset(told.classes)
    asks = "?" in text or bool(of & _ASKS) or _opens(text)
    for way in _WAYS:
        fits = way.needs <= of <= way.needs | way.may | _BESIDE
        if fits and (way.asks is None or way.asks == asks):
            return way.meaning
    return None


def classes(text: str) -> frozenset[str]:
    """The classes of the words of a text; none where it has words of none."""
    told = said(FILE, text)
    return frozenset() if told is None else frozenset(told.classes)


def _opens(text: str) -> bool:
    """Whether a sentence opens as a question does: is 31 ok, did i add conditioner."""
    said_first = fold(text).strip(" ¿¡").split()
    return bool(said_first) and (said_first[0] in _VERBS or tuple(said_first[:2]) in _TURNED)


_VERBS: Final = frozenset(
    {"is", "are", "did", "does", "ist", "sind", "est", "es", "esta", "e", "jest", "czy", "ar"}
)
_TURNED: Final = frozenset(
    {("have", "i"), ("do", "i"), ("habe", "ich"), ("hab", "ich"), ("heb", "ik"), ("har", "jag")}
)


def number(text: str) -> float | None:
    """The one bare number of a text whose every word is of an emergency's talk."""
    told = said(FILE, text)
    return None if told is None else told.of(None)
