"""Plant food that is no known salt, told as given: `3 ml dünger rein`, `ferts 5 ml went in`.

told = amount thing | thing amount      beside a word that tells that it went in
     | "fed" thing | fed "with" amount value
     | "dosed" amount value      `dosed 5 ml alk`: the bottle is called by the value

Its strength is unknown: it is kept as told, by the name that it was told by.
"""

from __future__ import annotations

from functools import cache
from typing import Final

from core.message import bought, quantities
from core.message.token import Token
from core.message.wordfile import spelt

_LONGEST: Final = 3
"""Words of the longest phrase."""
_WEIGHED: Final = frozenset({"mL", "g"})
_GIVING: Final = frozenset({"dose", "added"})
_LEFT: Final = frozenset({"wish", "if", "not", "may", "does", "whether", "every"})
"""Marks with which nothing is told as done."""


@cache
def _ways() -> dict[str, frozenset[str]]:
    """Each class with its phrases.

    Raises
    ------
    ValueError
        As `spelt`.
    """
    found: dict[str, set[str]] = {}
    for _section, meaning, told in spelt("fertilisers.txt", {"word"}):
        found.setdefault(meaning, set()).update(told)
    return {meaning: frozenset(ways) for meaning, ways in found.items()}


def told(tokens: list[Token], source: str) -> None:
    """Make what went in a substance, and the word that tells it the word for a dose, in place."""
    if any(t.kind == "ask" or t.text == "?" or t.value in _LEFT for t in tokens):
        return
    if any(t.kind == "substance" for t in tokens):
        return
    _called_by_value(tokens, source)
    _fed_with(tokens, source)
    place, size = next(
        ((at, size) for at in range(len(tokens)) if (size := _at(tokens, at, "thing"))), (0, 0)
    )
    if not size:
        return
    amount = _amount(tokens)
    if amount is None:
        if place and tokens[place - 1].value == "fed" and _ends(tokens, place + size):
            tokens[place - 1].value = "dose"
            _named(tokens, place, size, source)
        return
    first, last = amount
    if not _beside(tokens, first, last, place, size):
        return
    begin, end = min(first, place), max(last, place + size)
    verb = next((n for n in range(begin) if _gives(tokens[n])), None)
    behind = _at(tokens, end, "done") if verb is None else 0
    if verb is None and not (behind and _ends(tokens, end + behind)):
        return
    thing = tokens[place]
    thing.end = tokens[place + size - 1].end
    thing.kind, thing.value = "substance", source[thing.start : thing.end]
    given = tokens[end if verb is None else verb]
    given.kind, given.value = "event", "dose"
    led = [given] if verb is None else []
    tokens[begin : end + behind] = [*led, *tokens[first:last], thing]


def _gives(token: Token) -> bool:
    """Whether a word before the amount tells that it was given."""
    if token.kind == "event":
        return token.value in _GIVING
    return bought.is_word("give", token.text) or token.text in _ways()["deed"]


def _amount(tokens: list[Token]) -> tuple[int, int] | None:
    """Where the only amount of the line begins and ends; None for none, or more."""
    found: list[tuple[int, int]] = []
    place = 0
    while place < len(tokens):
        amount = quantities.read(tokens, place) if quantities.is_number(tokens[place]) else None
        if amount is not None and amount.value and amount.unit in _WEIGHED:
            found.append((place, amount.last))
        place = max(place + 1, 0 if amount is None else amount.last)
    return found[0] if len(found) == 1 else None


def _beside(tokens: list[Token], first: int, last: int, place: int, size: int) -> bool:
    """Whether only light words stand between an amount and its thing."""
    between = tokens[last:place] if place >= last else tokens[place + size : first]
    return all(t.kind == "fill" or t.text in _OF for t in between)


_OF: Final = frozenset({"of", "de", "di", "von", "van", "av", "d", "'", "do"})


def _at(tokens: list[Token], place: int, meaning: str) -> int:
    """How many tokens the longest phrase of a class takes from a place on; 0 for none."""
    for size in range(_LONGEST, 0, -1):
        if place + size > len(tokens):
            continue
        said = " ".join(token.text for token in tokens[place : place + size])
        if said in _ways()[meaning]:
            return size
    return 0


def _named(tokens: list[Token], place: int, size: int, source: str) -> None:
    """Make a phrase one token: a substance by the name that it was typed by."""
    thing = tokens[place]
    thing.end = tokens[place + size - 1].end
    thing.kind, thing.value = "substance", source[thing.start : thing.end]
    del tokens[place + 1 : place + size]


def _fed_with(tokens: list[Token], source: str) -> None:
    """`gedüngt mit 5 ml eisen`, `düngen mit 5 ml eisen erledigt`: the food by what it brings."""
    for place in range(len(tokens)):
        past, doing = _at(tokens, place, "deed"), _at(tokens, place, "doing")
        size = past or doing
        amount = (
            quantities.read(tokens, place + size) if size and place + size < len(tokens) else None
        )
        if amount is None or not amount.value or amount.unit not in _WEIGHED:
            continue
        name = amount.last
        if name >= len(tokens) or not _bottled(tokens[name]):
            continue
        done = _at(tokens, name + 1, "done")
        if (past or done) and _ends(tokens, name + 1 + done):
            _named(tokens, name, 1, source)
            del tokens[name + 1 : name + 1 + done]
            tokens[place].kind, tokens[place].value = "event", "dose"
            del tokens[place + 1 : place + size]
            return


def _bottled(token: Token) -> bool:
    """Whether a value's name is what a bottle that raises it is called by."""
    return token.kind == "analyte" and str(token.value).partition("@")[0] in _BOTTLED


_BOTTLED: Final = frozenset(
    {"kh", "gh", "calcium", "magnesium", "potassium", "nitrate", "phosphate", "iron"}
)


def _ends(tokens: list[Token], place: int) -> bool:
    """Whether nothing of weight stands there, or the tank."""
    while place + 1 < len(tokens) and tokens[place].kind == "fill":
        place += 1
    behind = tokens[place] if place < len(tokens) else None
    if behind is None or behind.text in {".", "!", ","}:
        return True
    light = behind.kind == "fill" or (behind.kind == "time" and behind.value != "one")
    return light or behind.kind in {"nl", "tank"}


def _called_by_value(tokens: list[Token], source: str) -> None:
    """`dosed 5 ml alk`: a bottle called by the value that it raises."""
    for place, token in enumerate(tokens):
        if token.kind != "event" or token.value != "dose" or place + 1 >= len(tokens):
            continue
        amount = quantities.read(tokens, place + 1)
        if amount is None or not amount.value or amount.unit != "mL":
            continue
        name = amount.last
        while name < len(tokens) and (tokens[name].kind == "fill" or tokens[name].text in _OF):
            name += 1
        if name >= len(tokens) or not _bottled(tokens[name]):
            continue
        size = 1 + _at(tokens, name + 1, "solution")
        if _ends(tokens, name + size):
            _named(tokens, name, size, source)
            return
