"""What is said right after a plan to have it another way: the grammar of a follow-up.

followup = {lead} ["with" | "only have"] substance ["instead"] | "have" substance "only"
         | {lead} ["into"] number ("parts" | "days")
         | {lead} ["half of that" | "twice that" | "slower"]
         | {lead} ["same"] "for" (volume | tank) ["too"]
         | {lead} ["to"] (reading | number | share | analyte) "?"
         | {lead} ["with"] water | {lead} name "?"

It is read only where a plan was just asked for; alone none of it says what is meant.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from typing import Final

from core.message import bought, quantities
from core.message.amends import corrected
from core.message.amounts import grams, volume_litres
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Context
from core.message.parser import parse
from core.message.tank_by_tank import without_place
from core.message.tanks import marked
from core.message.tokens import Token, cut
from core.message.waters import mentioned, one_of
from core.message.wordfile import spelt

LONGEST: Final = 70
"""A longer text says more than a change of plan. [characters]"""

MOST_PARTS: Final = 60
"""More parts than this are a slip."""

_EDGES: Final = " \t\n¿?¡!.,;:"


@dataclass(frozen=True, slots=True)
class Followup:
    """What is to be otherwise; what stays is None. Canonical units, litres, grams.

    `factor` is of the wish (a half, a double), `parts` how many there shall be, `slower` that
    there shall be more of them. `analyte` without `target` is what is asked about, `number` one
    that names nothing, `water` new water as said, and `name` words that may be animals.
    """

    substance: str | None = None
    volume_l: float | None = None
    tank: str | None = None
    analyte: str | None = None
    target: float | None = None
    percent: float | None = None
    grams: float | None = None
    factor: float | None = None
    parts: int | None = None
    slower: bool = False
    again: bool = False
    number: float | None = None
    water: str | None = None
    name: str | None = None


@cache
def _words() -> dict[str, dict[str, set[str]]]:
    """Section → meaning → its plain words.

    Raises
    ------
    ValueError
        If a line has no ``=``.
    """
    found: dict[str, dict[str, set[str]]] = {}
    sections = {"head", "tail", "whole", "parts", "aside"}
    for section, meaning, told in spelt("followups.txt", sections):
        found.setdefault(section, {}).setdefault(meaning, set()).update(told)
    return found


@cache
def _patterns() -> tuple[re.Pattern[str], re.Pattern[str], re.Pattern[str]]:
    """One word of the head, one of the tail, and a number of parts."""
    words = _words()
    every = {name: set().union(*words[name].values()) for name in ("head", "tail", "parts")}
    return (
        re.compile(rf"(?:{one_of(every['head'])})(?!\w)[\s,:]*"),
        re.compile(rf"[\s,]+({one_of(every['tail'])})$"),
        re.compile(rf"(\S+)\s+(?:{one_of(every['parts'])})"),
    )


def _meanings(section: str, said: str) -> set[str]:
    plain = " ".join(said.split())
    return {name for name, told in _words()[section].items() if plain in told}


def read(text: str, context: Context) -> Followup | None:
    """The follow-up that a text is; None where it is none, or says more.

    Examples
    --------
    >>> from datetime import datetime, UTC
    >>> context = Context(now=datetime(2026, 3, 1, tzinfo=UTC), tanks=("Fern", "Quarry"))
    >>> read("and with potassium bicarbonate instead?", context).substance
    'potassium bicarbonate'
    >>> read("make it 3 parts", context).parts, read("for quarry too", context).tank
    (3, 'Quarry')
    >>> read("i have no potassium bicarbonate", context) is None
    True
    """
    if len(text) > LONGEST:
        return None
    asks = "?" in text
    if (anew := corrected(text)) is not None:
        return _core(fold(anew), {"lead"}, True, context)
    for rest, marks in heads(text):
        if (found := _core(rest, marks, asks, context)) is not None:
            return found
    return None


def again(text: str) -> bool:
    """Whether the same is asked once more, of the water as it is now: `how much more`.

    Examples
    --------
    >>> again("and how much more?"), again("wie viel noch?"), again("how much more salt")
    (True, True, False)
    """
    return len(text) <= LONGEST and any(
        "again" in _meanings("whole", rest) for rest, _ in heads(text)
    )


def unchanged(text: str, tank: str = "") -> bool:
    """Whether all is told to be as it was, beside the name of a tank at most.

    Examples
    --------
    >>> unchanged("quarry: same", "Quarry"), unchanged("unverändert"), unchanged("same fish")
    (True, True, False)
    """
    rest = fold(text).strip(_EDGES).removeprefix("@").removeprefix(fold(tank)).strip(_EDGES)
    return rest in _words()["aside"]["unchanged"]


def should_be(text: str) -> str | None:
    """What is behind words that it should be so: `should be kh 8`, which may be a correction."""
    found = _asides("should").match(fold(text))
    rest = "" if found is None else text[found.end() :].strip(_EDGES)
    return rest or None


def was_slip(text: str) -> bool:
    """Whether a text says that what was told before was a slip of the thumb or the eye.

    Examples
    --------
    >>> was_slip("should be kh 0.4, dropped the dot"), was_slip("should be kh 8")
    (True, False)
    """
    phrase = one_of(_words()["aside"]["slip"])
    return re.search(rf"(?<!\w)(?:{phrase})(?!\w)", fold(text)) is not None and "?" not in text


def should_have_been(text: str) -> str | None:
    """What is left of ``nitrate should've been 100`` without these words; None without them."""
    phrase = one_of(_words()["aside"]["should_have"])
    found = re.search(rf"(?<!\w)(?:{phrase})(?!\w)", fold(text))
    if found is None or "?" in text or len(fold(text)) != len(text):
        return None
    return f"{text[: found.start()].strip()} {text[found.end() :].strip()}".strip(_EDGES)


@cache
def _asides(meaning: str) -> re.Pattern[str]:
    return re.compile(rf"(?:{one_of(_words()['aside'][meaning])})(?!\w)[\s,:]*")


def heads(text: str) -> Iterator[tuple[str, set[str]]]:
    """The plain text without words behind it, then word by word of its head less; and which."""
    rest = fold(text).strip(_EDGES)
    marks: set[str] = set()
    tail = _patterns()[1]
    while (ending := tail.search(rest)) is not None:
        marks |= _meanings("tail", ending[1])
        rest = rest[: ending.start()]
    while True:
        yield rest, marks
        head = _patterns()[0].match(rest)
        if head is None or head.end() == len(rest):
            return
        marks |= _meanings("head", head[0].strip(_EDGES))
        rest = rest[head.end() :]


def _core(rest: str, marks: set[str], asks: bool, context: Context) -> Followup | None:
    """What is left when the words before and behind it are taken off."""
    whole = _meanings("whole", rest)
    if whole:
        factor = {"half": 0.5, "double": 2.0}.get(next(iter(whole)))
        return Followup(factor=factor, slower="slower" in whole, again="again" in whole)
    if (count := _parts(rest, marks)) is not None:
        return Followup(parts=count)
    if "have" in marks:  # what else a keeper has is told, not asked for
        name = _substance(rest, context) if "only" in marks else None
        return None if name is None else Followup(substance=name)
    if marks & {"with", "only_have", "instead"} and (name := _substance(rest, context)) is not None:
        return Followup(substance=name)
    leading = bool(marks) and (asks or "lead" in marks)
    if marks & {"for", "into", "same", "too"} or leading:
        if (volume := volume_litres(rest, context.us_gallons)) is not None:
            return Followup(volume_l=volume) if asks or marks & {"for", "into"} else None
        if (tank := _tank(rest, context.tanks) or _described(rest, context)) is not None:
            return Followup(tank=tank)
    if marks & {"with", "lead", "only_have"} and _is_water(rest):
        return Followup(water=rest)
    share = re.fullmatch(r"(\d{1,2}(?:[.,]\d)?) ?%", rest)
    if share is not None and (asks or marks & {"lead", "instead", "to"}):
        return Followup(percent=float(share[1].replace(",", ".")))
    if (asks or "lead" in marks) and marks and (mass := grams(rest)) is not None:
        return Followup(grams=mass)
    if "to" not in marks and not (asks and marks):
        return None
    return _value(rest, context) or (_asked_about(rest) if leading else None)


def _is_water(rest: str) -> bool:
    """Whether a text is new water alone: its names, shares and the words between."""
    named = mentioned(rest)
    tokens = cut(rest, lexicon(), rest)
    return bool(named) and all(
        token.kind in {"mark", "number", "p", "fill", "unit"}
        or any(start <= token.start < end for start, end, _ in named)
        for token in tokens
    )


def _asked_about(rest: str) -> Followup | None:
    """Another analyte, a number that names nothing, or words that may be animals."""
    tokens = [token for token in cut(rest, lexicon(), rest) if token.kind != "fill"]
    if (number := _number(tokens)) is not None:
        return Followup(number=number)
    if len(tokens) == 1 and tokens[0].kind == "analyte":
        return Followup(analyte=str(tokens[0].value).partition("@")[0])
    unknown = bool(tokens) and all(token.kind in {"word", "number", "count"} for token in tokens)
    return Followup(name=rest) if unknown else None


def _parts(rest: str, marks: set[str]) -> int | None:
    """In how many parts, one a day; weeks count where it is said into how many."""
    found = _patterns()[2].fullmatch(rest)
    if found is None:
        return None
    number = _number(cut(found[1], lexicon(), found[1]))
    if "weeks" in _meanings("parts", rest[found.end(1) :].strip()):
        number = 7.0 * (number or 0.0) if "into" in marks else None
    if number is None or number != int(number) or not 1 <= number <= MOST_PARTS:
        return None
    return int(number)


def _number(tokens: list[Token]) -> float | None:
    if len(tokens) != 1:
        return None
    if tokens[0].kind == "several":
        told = {
            name for _, (kind, name) in lexicon().several[str(tokens[0].value)] if kind == "count"
        }
        return float(told.pop()) if len(told) == 1 else None
    if tokens[0].value == "one":
        return 1.0  # a week
    if tokens[0].kind == "count":
        return float(str(tokens[0].value)) if str(tokens[0].value).isdigit() else None
    found = quantities.read(tokens, 0)
    return found.value if found is not None and found.unit is None else None


def _substance(rest: str, context: Context) -> str | None:
    tokens = cut(rest, lexicon(), rest)
    if context.products:
        tokens = bought.mark(tokens, rest, context.products, None)
    named = [str(token.value) for token in tokens if token.kind == "substance"]
    light = all(token.kind in {"substance", "fill"} or token.value in _LIGHT for token in tokens)
    return named[0] if len(named) == 1 and light else None


_LIGHT: Final = frozenset({"some", "of", "link", "at_hour", "to"})


def _tank(rest: str, tanks: Iterable[str]) -> str | None:
    words = cut(rest, lexicon(), rest)
    named = next((token for token in words if token.kind != "fill"), None)
    said = rest if named is None else rest[named.start :]
    ways = {rest, said, without_place(rest)}
    return next((name for name in tanks if fold(name) in ways), None)


def _described(rest: str, context: Context) -> str | None:
    """The tank that is told by its size, or by how its name and no other's begins: the kids one."""
    tokens = [
        token for token in marked(cut(rest, lexicon(), rest), rest, context) if token.kind != "fill"
    ]
    if len(tokens) == 1 and tokens[0].kind == "tank":
        return str(tokens[0].value)
    if len(tokens) != 2 or tokens[1].value not in {"one", "home"}:
        return None
    said = tokens[0].text
    begun = [name for name in context.tanks if fold(name).startswith(f"{said} ")]
    return begun[0] if len(begun) == 1 else None


def _value(rest: str, context: Context) -> Followup | None:
    """What is wished now."""
    parsed = parse(rest, context)
    if parsed.intent != "reading" or len(parsed.values) != 1 or parsed.doubts or parsed.events:
        return None
    value = parsed.values[0]
    if value.qualifier != "=" or not isinstance(value.canonical, float) or parsed.at is not None:
        return None
    return Followup(analyte=value.analyte, target=value.canonical)
