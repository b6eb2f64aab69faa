"""What is told and asked when a tank is new, and small talk, in whole sentences.

The words of ``first_evening.txt`` name what each word is of; here stands which of them make a
meaning, and which may stand beside them. Any other word makes it another message.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Final, Literal

from core.message.word_classes import Said, said, stripped
from core.message.wordfile import spelt
from core.units import US_GALLON_L

Meaning = Literal[
    "tank",
    "another_tank",
    "set_up",
    "filled",
    "begin",
    "how_far",
    "how_long",
    "may_buy",
    "nobody",
    "fishless",
    "ammonia_dosed",
    "bacteria",
]
Talk = Literal["hello", "thanks", "oops", "fine"]

FILE: Final = "first_evening.txt"

_TELLING: Final = frozenset(
    "tank bought first new another big small reef fresh none hello today done done_now filled"  # noqa: SIM905
    " yesterday".split()
)
_DAYS: Final = frozenset({"today", "yesterday"})
_MADE: Final = frozenset({"tank", "bought", "first", "new", "now", "hello", "none", *_DAYS})
_BEGIN: Final = frozenset({"want", "start", "where", "tank", "first", "new", "hello", "reef"})
_FAR: Final = frozenset(
    {"long", "ready", "run_in", "far", "am", "now", "tank", "new", "cycle", "day", "may", "does"}
)
_BUY: Final = frozenset({"buy", "fish", "may", "day", "now", "today", "first", "want", "long"})


@dataclass(frozen=True, slots=True)
class Told:
    """A meaning, with the litres told, the traits of another tank, and how many days ago."""

    meaning: Meaning
    litres: float | None = None
    classes: frozenset[str] = frozenset()
    days_ago: int = 0


def behind_greeting(text: str) -> str | None:
    """What a text says behind a greeting that it opens with; None where it has none, or no more.

    Examples
    --------
    >>> behind_greeting("hi i have a 20 gallon"), behind_greeting("good morning")
    ('i have a 20 gallon', None)
    """
    words = text.split()
    for size in range(min(_LONGEST_GREETING, len(words) - 1), 0, -1):
        if " ".join(words[:size]).casefold().strip(",.!") in _greetings():
            return " ".join(words[size:])
    return None


_LONGEST_GREETING: Final = 2


@cache
def _greetings() -> frozenset[str]:
    told = spelt(FILE, {"word", "unit"})
    return frozenset(way for _, meaning, ways in told if meaning == "hello" for way in ways)


def told(text: str, *, us_gallons: bool = True) -> Told | None:
    """What a text tells or asks of a new tank; None where it may be of anything else.

    Examples
    --------
    >>> told("just bought my first aquarium 54 litres no fish yet").litres
    54.0
    >>> told("hab gestern eingerichtet").days_ago, told("how far am i").meaning
    (1, 'how_far')
    >>> told("i changed 54 litres") is None
    True
    """
    found = said(FILE, text)
    if found is None:
        return None
    classes, asks = frozenset(found.classes), "?" in text
    if "number" in classes:
        return None if asks else _with_number(found, classes, us_gallons=us_gallons)
    days_ago = int("yesterday" in classes)
    if not asks and classes <= _MADE | {"done", "done_now", "filled"}:
        if "done_now" in classes or ("done" in classes and classes & _DAYS):
            return Told("set_up", days_ago=days_ago)
        if "filled" in classes and classes & _DAYS:
            return Told("filled", days_ago=days_ago)
    if not asks and "cycle" in classes and classes <= {"none", "cycle", "tank", "now", "new"}:
        return Told("fishless")
    if not asks and classes and classes <= {"none", "tank", "now"} and "none" in classes:
        return Told("nobody")
    if classes <= _BEGIN and ("where" in classes or {"want", "start"} <= classes):
        return Told("begin") if "tank" in classes or {"where", "start"} <= classes else None
    if "bacteria" in classes and classes <= {"bacteria", "work", "does", "may", "buy"}:
        return Told("bacteria") if asks or classes & {"work", "may"} else None
    if {"fish", "buy"} <= classes <= _BUY and (asks or classes & {"may", "want", "long"}):
        return Told("may_buy")
    if classes <= _FAR:
        if "long" in classes and classes & {"ready", "run_in", "cycle"}:
            return Told("how_long")
        if "far" in classes:
            return Told("how_far")
    return None


def _with_number(found: Said, classes: frozenset[str], *, us_gallons: bool) -> Told | None:
    """A tank by its litres, or ammonia dosed up to a level."""
    if len(found.numbers) != 1:
        return None
    (number,) = found.numbers
    rest = classes - {"number", "does"}
    if number.unit in {None, "ppm"} and {"dosed", "ammonia"} <= rest:
        is_level = "up_to" in rest and rest <= {"dosed", "ammonia", "up_to", "tank", "today", "now"}
        return Told("ammonia_dosed", litres=number.value) if is_level else None
    gallon = US_GALLON_L if us_gallons else 4.54609
    per = {"litre": 1.0, "gallon": gallon}.get(number.unit or "")
    if per is None or "tank" not in rest or not rest <= _TELLING:
        return None
    litres = number.value * per
    days_ago = int("yesterday" in rest)
    if rest & {"another", "new"} and not rest & {"first"}:
        return Told("another_tank", litres, rest, days_ago)
    if rest & {"bought", "first", "none"}:
        return Told("tank", litres, rest, days_ago)
    return None


def began(text: str) -> str | None:
    """What stands beside the word of setting up in a sentence of its own: `last sunday`.

    Examples
    --------
    >>> began("i set up my tank last sunday"), began("set up my tank"), began("last sunday")
    ('last sunday', None, None)
    """
    rest, taken = stripped(FILE, text, frozenset({"light", "tank", "done", "first", "new", "does"}))
    return rest if rest and "done" in taken and "?" not in text else None


def talk(text: str) -> Talk | None:
    """Small talk that asks nothing: a greeting, thanks, an oath, relief.

    Examples
    --------
    >>> talk("phew, thanks"), talk("mist"), talk("hi"), talk("thanks, and kh?") is None
    ('thanks', 'oops', 'hello', True)
    """
    found = said(FILE, text)
    if found is None or "?" in text:
        return None
    classes = set(found.classes) - {"today", "am", "now"}
    if not classes or not classes <= {"hello", "thanks", "relief", "oops"}:
        return None
    if "thanks" in classes:
        return "thanks"
    if "oops" in classes:
        return "oops"
    return "hello" if "hello" in classes else "fine"


def to_buy(text: str) -> str | None:
    """What may be bought, of a question that is asked so: can i get 10 tetras, 6 neons kaufen?

    None where it is not asked so. Whether it is animals is for others to say.
    """
    rest, taken = stripped(FILE, text, frozenset({"may", "buy", "day", "now", "light"}))
    if not rest or "buy" not in taken or not ("may" in taken or "?" in text):
        return None
    return rest
