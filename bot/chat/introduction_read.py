"""What of a message introduces tanks, and what was measured in the same breath.

`450 l discus tank, 6 adults, 29c`: clauses that are readings and nothing else are taken out first,
so that neither hides the other.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final, NamedTuple

from bot.chat import tank_words
from bot.chat.turn import Turn
from core.advice.introduced_by_name import introduced_by_name
from core.advice.introduced_loosely import beside_values, introduced_loosely, several
from core.advice.introductions import Home, introduced
from core.advice.livestock import plain_name
from core.message import doubts, first_evening, parse
from core.message.deed_asked import begins_as_question
from core.message.fold import fold
from core.message.model import Parsed

_VOLUME: Final = re.compile(r"\d\s{0,2}(?:l|lt|ltrs?|lit\w*|gal\w*)\b", re.IGNORECASE)
_TANK_OF_G: Final = re.compile(
    r"\b(\d{1,3}) ?g ((?:[^\W\d_]{3,} ){0,2}(?:tank|aquarium|cube|nano)\b)", re.IGNORECASE
)
_CLAUSES: Final = re.compile(r"[;\n]|[,.](?!\d)")


class Told(NamedTuple):
    """The tanks of a message, and the readings beside them."""

    homes: tuple[Home, ...] = ()
    beside: Parsed | None = None


def has_volume(text: str) -> bool:
    """Whether a text has a number of litres or gallons."""
    return _VOLUME.search(text) is not None


def in_gallons(text: str) -> str:
    """A text in which the `g` of a tank's size is a gallon: no tank is so many grams.

    Examples
    --------
    >>> in_gallons("got a 10g shrimp tank"), in_gallons("10 g of salt in the tank")
    ('got a 10 gal shrimp tank', '10 g of salt in the tank')
    """
    return _TANK_OF_G.sub(r"\1 gal \2", text)


def told_in(turn: Turn) -> Told:
    """The tanks that a message introduces; none where it is about anything else."""
    text, gallons = in_gallons(turn.incoming.text), turn.chat.us_gallons
    if not has_volume(text) or "?" in text or text.startswith("/") or begins_as_question(text):
        return Told()
    if named := by_name(turn, text):
        return Told(named)
    if homes := several(text, us_gallons=gallons) or introduced(text, us_gallons=gallons):
        return Told(homes)
    rest, beside = _without_readings(turn, text)
    homes = by_name(turn, rest) or introduced(rest, us_gallons=gallons)
    if not homes and not _is_read_elsewhere(turn):
        homes = introduced_loosely(rest, us_gallons=gallons)
        if not homes and beside is not None and turn.tanks:
            homes = _of_other_volume(turn, rest)
    return Told(homes, beside) if len(homes) == 1 or beside is None else Told()


def by_name(turn: Turn, text: str) -> tuple[Home, ...]:
    """The tanks of a list of names with volumes, or the one that a place tells.

    None of them is on record, or all are as they are told. Whether one is told beside a tank
    without a name, of another volume, is not sure; `rack 3` is one more beside `Rack 2`.
    """
    homes = introduced_by_name(text, us_gallons=turn.chat.us_gallons)
    names = [home.name or "" for home in homes]
    known = [turn.tank_named(name) for name in names]
    told = [
        each and each.tank.volume_l == home.volume_l
        for each, home in zip(known, homes, strict=True)
    ]
    if len(homes) > 1 and all(told):
        return homes  # told again
    if any(known) or any(fold(name) in tank_words.HOLDS for name in names):
        return ()
    nameless = {tank.tank.volume_l for tank in turn.tanks if not tank.tank.named} - {None}
    stems = {fold(tank.name).rstrip(" 0123456789") for tank in turn.tanks}
    found: list[Home] = []
    for home in homes:
        name = home.name or ""
        further = name[-1:].isdigit() and fold(name).rstrip(" 0123456789") in stems
        unsure = (home.loosely and not further) or bool(nameless - {home.volume_l})
        found.append(replace(home, loosely=bool(turn.tanks) and unsure))
    return tuple(found)


def _of_other_volume(turn: Turn, text: str) -> tuple[Home, ...]:
    """A tank of another volume than any on record, told beside readings: they may be its own."""
    homes = beside_values(text, us_gallons=turn.chat.us_gallons)
    held = {tank.tank.volume_l for tank in turn.tanks}
    return () if None in held or any(home.volume_l in held for home in homes) else homes


def _is_read_elsewhere(turn: Turn) -> bool:
    """Whether other looks read all of a text, or it tells of a tank on record by its name."""
    text, gallons = turn.incoming.text, turn.chat.us_gallons
    words = f" {plain_name(text)} "
    if any(f" {plain_name(tank.name)} " in words for tank in turn.tanks if tank.tank.named):
        return True
    whole = tank_words.whole(text, us_gallons=gallons)
    return whole is not None or first_evening.told(text, us_gallons=gallons) is not None


def _without_readings(turn: Turn, text: str) -> tuple[str, Parsed | None]:
    """A text without the clauses, or ends of clauses, that are readings; and those, as one."""
    rest: list[str] = []
    values: Parsed | None = None
    for clause in _CLAUSES.split(text):
        words = clause.split()
        cut = len(words)
        read = None
        for start in range(len(words)) if any(map(str.isdigit, clause)) else ():
            before = words[start - 1] if start else ""
            if has_volume(f"{before} {words[start]}") and not has_volume(before):
                continue  # 90 l ph 7: its unit belongs to the number
            if (read := _readings(turn, " ".join(words[start:]))) is not None:
                cut = start
                break
        if read is not None:
            values = read if values is None else _both(values, read)
        rest += [" ".join(words[:cut])] if cut else []
    return ", ".join(rest), values


_ASKED_BESIDE: Final = frozenset({doubts.IMPLAUSIBLE, doubts.AMBIGUOUS_NAME})
"""Why readings of strips beside a tank are asked about, with the tank made: kh 80, cl 0."""


def _readings(turn: Turn, text: str) -> Parsed | None:
    if not any(map(str.isdigit, text)) or has_volume(text):
        return None
    read = parse(text, turn.context())
    else_said = read.events or read.question or read.command
    unclear = any(doubt.reason not in _ASKED_BESIDE for doubt in read.doubts)
    return None if else_said or unclear or not (read.values or read.doubts) else read


def _both(one: Parsed, other: Parsed) -> Parsed:
    return replace(one, values=one.values + other.values, doubts=one.doubts + other.doubts)
