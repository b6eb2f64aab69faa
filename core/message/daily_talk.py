"""What is asked of a sea's daily use in other words: `whats the daily use`, `how many ml a day`.

All words of a text must be of ``daily_talk.txt`` or without weight: a text that says more is none.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Final, Literal

from core.message.fold import fold
from core.message.model import Context
from core.message.parser import parse
from core.message.reduced import reduced
from core.message.waters import one_of
from core.message.word_classes import Said, said
from core.message.wordfile import spelt

FILE: Final = "daily_talk.txt"

Asks = Literal["use", "hold", "stock", "as_ml", "raises", "together", "ammonia", "undosed"]

PLAUSIBLE: Final = {"kh": (4.0, 15.0), "calcium": (300.0, 550.0), "magnesium": (900.0, 1700.0)}
"""Of which of them a bare number may be in the sea: they are far apart."""


@dataclass(frozen=True, slots=True)
class DailyTalk:
    """What a text says of a daily use.

    Attributes
    ----------
    asks : str
        ``use``: what is used; ``hold``: what holds it; ``stock``: a solution is told; ``as_ml``: a
        plan in millilitres of one; ``raises``: what so many millilitres do; ``together``: may two
        parts go in at once; ``ammonia``: must it be measured; ``undosed``: nothing goes in.
    analyte, substance : str or None
        By their ids, where named; of a bare value the analyte that it can only be.
    target : float or None
        What is to be held.
    a_litre : float or None
        Salt in a litre of a solution. [g/L]
    millilitres : float or None
        Of a solution. [mL]
    in_ml : bool
        Whether millilitres are asked for.
    """

    asks: Asks
    analyte: str | None = None
    substance: str | None = None
    target: float | None = None
    a_litre: float | None = None
    millilitres: float | None = None
    in_ml: bool = False


def daily_talk(text: str) -> DailyTalk | None:
    """What a text says of a daily use; None where nothing, or it says more.

    Examples
    --------
    >>> daily_talk("so whats the daily use").asks
    'use'
    >>> found = daily_talk("how many ml a day to stay at 8.2")
    >>> found.asks, found.analyte, found.target, found.in_ml
    ('hold', 'kh', 8.2, True)
    >>> daily_talk("its 100 g baking soda in 1 l water").a_litre
    100.0
    >>> daily_talk("how much does 40 ml raise").millilitres
    40.0
    >>> daily_talk("dosed 40 ml") is None, daily_talk("alk 8") is None
    (True, True)
    """
    found = reduced(text)
    told = said(FILE, found.text, small=True)
    if told is None or len(found.analytes) > 1 or len(set(found.substances)) > 1:
        return None
    substance = found.substances[0] if found.substances else None
    analyte = found.analytes[0] if found.analytes else None
    classes = set(told.classes)
    values = [each for each in told.numbers if each.unit in {None, "degree"}]
    others = [each for each in told.numbers if each.unit not in {None, "degree"}]
    if others:
        return _of_solution(told, analyte, substance) if not values else None
    in_ml = told.has("ml")
    if not values:
        return _plain(told, classes, analyte, substance, in_ml)
    value = values[0].value
    meant = analyte or next((n for n, (a, b) in PLAUSIBLE.items() if a <= value <= b), None)
    holds = told.has("hold", "how_much") and len(values) == 1
    fits = meant in PLAUSIBLE and PLAUSIBLE[meant][0] <= value <= PLAUSIBLE[meant][1]
    if not holds or meant is None or not fits or not classes <= _OF_HOLDING:
        return None
    return DailyTalk("hold", meant, substance, value, in_ml=in_ml)


_OF_HOLDING: Final = frozenset(
    {
        "number",
        "hold",
        "how_much",
        "salt",
        "daily",
        "ml",
        "analyte",
        "solution",
        "dose",
        "raise",
        "pour",
    }
)


def _plain(
    told: Said, classes: set[str], analyte: str | None, substance: str | None, in_ml: bool
) -> DailyTalk | None:
    """Of a text without a number."""
    if told.has("use") and classes <= {"use", "which", "how_much", "daily", "analyte"}:
        return DailyTalk("use", analyte)
    a_day = told.has("daily") and bool(classes & {"salt", "ml"})
    if told.has("how_much") and (told.has("hold") or a_day) and classes <= _OF_HOLDING:
        held = told.has("hold", "daily") or bool(classes & {"salt", "ml"})
        return DailyTalk("hold", analyte, substance, in_ml=in_ml) if held else None
    if told.has("together") and classes & {"both", "pour"} and classes <= _OF_BOTH:
        return DailyTalk("together")
    if analyte == "ammonia" and told.has("needed") and classes <= _OF_NEED:
        return DailyTalk("ammonia")
    undosed = told.has("none", "dose") and classes <= {"none", "dose", "salt"}
    return DailyTalk("undosed") if undosed and analyte is None else None


_OF_BOTH: Final = frozenset({"together", "both", "pour", "may", "dose", "raise", "salt"})
_OF_NEED: Final = frozenset({"analyte", "needed", "measure", "which", "may"})


def _of_solution(told: Said, analyte: str | None, substance: str | None) -> DailyTalk | None:
    """Of a text that tells a solution, or millilitres of one."""
    grams, litres, ml = told.of("gram"), told.of("litre"), told.of("ml")
    classes, count = set(told.classes), len(told.numbers)
    a_litre = told.of("gram_litre")
    if grams is not None and litres is not None and count == 2 and litres > 0.0:
        a_litre = grams / litres
    elif grams is not None and told.has("of_a_litre") and count == 1:
        a_litre = grams
    elif a_litre is not None and count != 1:
        return None
    only = {"number", "salt", "water", "solution", "of_a_litre", "ml", "how_much"}
    if a_litre is not None and classes <= only:
        in_ml = told.has("ml")
        if in_ml:
            return DailyTalk("as_ml", analyte, substance, a_litre=a_litre, in_ml=True)
        if told.has("how_much") or not (substance or told.has("solution")):
            return None
        return DailyTalk("stock", analyte, substance, a_litre=a_litre)
    only = {"number", "how_much", "raise", "analyte", "solution", "dose", "which"}
    if ml is not None and count == 1 and told.has("raise") and classes <= only:
        asks = told.has("how_much") or told.has("which")
        return DailyTalk("raises", analyte, millilitres=ml) if asks else None
    return None


@cache
def _undosed() -> re.Pattern[str]:
    told = spelt("undosed.txt", {"word"})
    ways = one_of(way for _section, _meaning, these in told for way in these)
    return re.compile(
        rf"[\s,;.]+(?:and\s+|und\s+|et\s+|y\s+|e\s+|en\s+|i\s+|och\s+)?(?:{ways})\W*$"
    )


def without_undosed(text: str) -> str | None:
    """What stands before `no dosing` at the end of a text; None where that is not told.

    Examples
    --------
    >>> without_undosed("alk 7.2 no dosing"), without_undosed("no dosing")
    ('alk 7.2', None)
    """
    plain = fold(text)
    found = None if "?" in plain or len(plain) != len(text) else _undosed().search(plain)
    return text[: found.start()].strip() or None if found is not None else None


def parse_reading(text: str, context: Context) -> bool:
    """Whether a text is surely a reading, and nothing else."""
    found = parse(text, context)
    return bool(found.values) and not found.doubts and found.question is None
