"""How full a tank is, where nothing else is said: `tank is half drained`, `only 2/3 full`.

how full = { tank | light } ( share ( full | empty ) | state ( "to" | "by" ) share | share missing )
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message import quantities
from core.message.amounts import LITRES
from core.message.asking_words import asks
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import Token, cut
from core.message.volume_said import gallon_before
from core.message.waters import one_of
from core.message.word_classes import Said, said
from core.message.wordfile import spelt

FILE: Final = "how_full.txt"
LONGEST: Final = 70
"""A longer text says more. [characters]"""

SAME: Final = 0.01
"""So near, as a share, a volume told is the one on record."""

OTHER_SAME: Final = 1e-3
"""The same of gallons of the other kind, which are meant less often."""
LEAST_LEFT: Final = 0.4
"""Less water, as a share, is not left beside stones and sand; ours."""

_SHARES: Final = {
    "half": 1 / 2, "third": 1 / 3, "two_thirds": 2 / 3, "quarter": 1 / 4, "three_quarters": 3 / 4,
}  # fmt: skip
_STATES: Final = frozenset({"full", "empty", "lowered", "missing"})
_OTHERS: Final = frozenset({"to", "by", "tank", "number"})
_DEEDS: Final = frozenset({"water_change", "top_up", "dose", "fed"})
"""What is done with an amount, and leaves the tank as full."""
_FRACTION: Final = re.compile(r"(?<![\d/])([1-9]) ?/ ?([2-9])(?![\d/])")


def how_full(text: str) -> float | None:
    """The share of its volume that is in a tank; None where more or nothing of it is said.

    Examples
    --------
    >>> how_full("tank is half drained"), how_full("its only 3/4 full"), how_full("filled to 70%")
    (0.5, 0.75, 0.7)
    >>> how_full("drained to a quarter"), how_full("water level is down by a quarter")
    (0.25, 0.75)
    >>> how_full("is it half full?"), how_full("drained half"), how_full("half full of algae")
    (None, None, None)
    """
    plain = _FRACTION.sub(lambda found: f"{100 * int(found[1]) / int(found[2]):.4f} %", fold(text))
    if "?" in text or len(text) > LONGEST or plain.lstrip().startswith(("is ", "are ")):
        return None
    told = said(FILE, plain)
    if told is None:
        return None
    share, states = _share(told), [each for each in told.classes if each in _STATES]
    if share is None or len(states) != 1 or set(told.classes) - _STATES - _OTHERS - set(_SHARES):
        return None
    (state,) = states
    first = next(each for each in told.classes if each in _STATES | set(_SHARES) | {"number"})
    placed = {"to", "by"} & set(told.classes[told.classes.index(state) :])
    if first == state and state != "full" and not placed:
        return None  # drained half: a deed
    if state == "lowered" and not (placed and "tank" in told.classes):
        return None  # a quarter low, down by 20 %
    if state == "full" or ("to" in placed and "by" not in placed and first == state):
        return share
    return 1.0 - share


def _share(told: Said) -> float | None:
    """The one share that a text tells."""
    named = [_SHARES[each] for each in told.classes if each in _SHARES]
    named += [each.value / 100.0 for each in told.numbers if each.unit == "percent"]
    whole = len(told.numbers) == sum(each.unit == "percent" for each in told.numbers)
    return named[0] if len(named) == 1 and whole and 0.0 < named[0] < 1.0 else None


_SECTIONS: Final = frozenset(
    {"word", "unit", "level", "elsewhere", "displaced", "behind", "sump", "part"}
)


def part_measured(text: str) -> tuple[str, str] | None:
    """The part beside the tank whose values are told with its own litres, and the values' text.

    Examples
    --------
    >>> part_measured("sump 40l kh 6"), part_measured("my filter holds 20 l, kh 6 ph 7")
    (('sump', 'kh 6'), ('filter', 'kh 6 ph 7'))
    >>> part_measured("sump kh 6"), part_measured("tank 40 l kh 6"), part_measured("kh 6, sump 40l")
    (None, None, None)
    """
    plain = fold(text)
    tokens = cut(plain, lexicon(), text)
    place = next((i for i, token in enumerate(tokens) if token.kind == "analyte"), 0)
    head = tokens[:place]
    if any(token.kind in {"event", "tank", "nl", "ask"} or token.value == "home" for token in head):
        return None
    if not any(unit in LITRES and unit != "mL" for _value, unit in _amounts(head)):
        return None
    found = _ways("part").search(plain, 0, head[-1].end)
    return None if found is None else (text[slice(*found.span())], text[tokens[place].start :])


@cache
def _ways(of: str) -> re.Pattern[str]:
    told = spelt(FILE, _SECTIONS)
    ways = one_of(way for section, _language, found in told if section == of for way in found)
    return re.compile(rf"(?<!\w)(?:{ways})(?!\w)")


def may_tell_volume(text: str, held: float | None = None) -> bool:
    """Whether a text that was not understood may tell how much water is in a tank.

    `held` is what the tank holds on record [L]: a text with that number may be of it.

    Examples
    --------
    >>> may_tell_volume("id say 70 l once the stones are out"), may_tell_volume("i drained it some")
    (True, True)
    >>> may_tell_volume("90 is the label, really 75", 90.0)
    True
    >>> may_tell_volume("the fish eat 5 flakes"), may_tell_volume("changed 20 l with whatever")
    (False, False)
    >>> may_tell_volume("45l tank", 45.0), may_tell_volume("20 gal tank", 75.7)
    (False, False)
    """
    plain = fold(text)
    tokens = cut(plain, lexicon(), plain)
    deeds = any(token.kind == "event" and token.value in _DEEDS for token in tokens)
    if asks(text) or deeds or any(token.kind in {"ask", "analyte"} for token in tokens):
        return False
    if _ways("level").search(plain) is not None:
        return True
    told = _amounts(tokens)
    if len(told) == 1 and held is not None and _is_held(*told[0], held):
        return False
    return any(
        (unit in LITRES and unit != "mL") or (unit is None and value == held)
        for value, unit in told
    )


def other_volume(text: str, held: float, *, us_gallons: bool = True) -> float | None:
    """The one other volume that a text which was not understood tells beside `held`. [L]

    None where it tells none, or several.

    Examples
    --------
    >>> other_volume("its 60 l not 100 i measured", 100.0), other_volume("100 l or so", 100.0)
    (60.0, None)
    >>> other_volume("more like 80 with the rocks", 90.0), other_volume("sump has 40 l", 200.0)
    (80.0, 240.0)
    >>> other_volume("prob only 33 gallons of water in it", 151.4) is not None
    True
    >>> other_volume("sorry 78 f, its 60 l not 100", 100.0)
    60.0
    >>> other_volume("60 or 70 l", 100.0), other_volume("changed 20 l with whatever", 100.0)
    (None, None)
    >>> other_volume("my other one has 60 l", 100.0), other_volume("i took out 30 l", 100.0)
    (None, None)
    """
    plain = fold(gallon_before(text))
    if (beside := _beside(plain, held, us_gallons=us_gallons)) is not None:
        return beside
    if not may_tell_volume(text, held) or _ways("elsewhere").search(plain) is not None:
        return None
    told = [each for each in _amounts(cut(plain, lexicon(), plain)) if not _is_held(*each, held)]
    told = [each for each in told if each[1] in LITRES or each[1] is None]
    told = [each for each in told if each != (held, None)]
    value, unit = told[0] if len(told) == 1 else (0.0, None)
    if unit is None or unit == "mL" or unit not in LITRES:
        return None
    return value * LITRES["uk gal" if unit == "gal" and not us_gallons else unit]


def _beside(plain: str, held: float, *, us_gallons: bool) -> float | None:
    """So much with a sump's litres on top, or without what stones take; None where neither is."""
    tokens = cut(plain, lexicon(), plain)
    if asks(plain) or any(token.kind in {"ask", "analyte", "event"} for token in tokens):
        return None
    told = [each for each in _amounts(tokens) if not _is_held(*each, held) and each[0] != held]
    if len(told) != 1:
        return None
    ((value, unit),) = told
    if unit is not None:
        if unit not in LITRES or unit == "mL" or _ways("sump").search(plain) is None:
            return None
        return held + value * LITRES["uk gal" if unit == "gal" and not us_gallons else unit]
    if _ways("displaced").search(plain) is None or _ways("elsewhere").search(plain) is not None:
        return None
    rest = plain[plain.rindex(f"{value:g}") + len(f"{value:g}") :] if f"{value:g}" in plain else "?"
    if (rest := rest.strip(" \t.,;!")) and _ways("behind").match(rest) is None:
        return None  # 80 pellets
    return value if LEAST_LEFT * held <= value < held else None


def left_beside(text: str) -> float | None:
    """The litres of a text of a tank nobody told of yet, as stones and sand leave it. [L]

    Examples
    --------
    >>> left_beside("tank is 180 but with the stones I guess 150 or so")
    150.0
    >>> left_beside("tank is 180 with the stones"), left_beside("kh 4 with the stones")
    (None, None)
    """
    plain = fold(text)
    tokens = cut(plain, lexicon(), plain)
    told = _amounts(tokens)
    if len(told) != 2 or any(unit not in {None, "L"} for _value, unit in told):
        return None
    held, left = (value for value, _unit in told)
    bare = re.sub(r"(?<=\d) ?(?:l|litres?|liters?)(?!\w)", "", plain)
    return left if _beside(bare, held, us_gallons=True) == left else None


def _amounts(tokens: list[Token]) -> list[tuple[float, str | None]]:
    """The numbers of a message with their units."""
    told = []
    for place, token in enumerate(tokens):
        found = quantities.read(tokens, place) if quantities.is_number(token) else None
        if found is not None and found.value is not None:
            told.append((found.value, found.unit))
    return told


def _is_held(value: float, unit: str | None, held: float) -> bool:
    """Whether so much is what a tank holds on record, in gallons of either kind. [L]"""
    ways = [(value * LITRES[unit], SAME)] if unit in LITRES else []
    if unit == "gal":
        ways.append((value * LITRES["uk gal"], OTHER_SAME))  # 33 of these are no 40 of the other
    return any(abs(each - held) <= near * held for each, near in ways)
