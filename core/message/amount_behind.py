"""An amount behind a comma, a colon or a dash is of what was put in: `added baking soda, 3 g`.

behind = giving word, thing told without amount, light words, ( "," | ":" | "-" | "(" ) amount end

The amount is put before its thing, where the other readers look for it. So is one that a day parts
from its deed (`wasserwechsel gestern 30%`, `dosed yesterday 5 g soda`).
"""

from __future__ import annotations

from collections.abc import Collection
from typing import Final

from core.message import bought, deed_asked, deed_told, deeds, quantities
from core.message.amounts import LITRES
from core.message.token import Token

_PARTS: Final = frozenset({",", ":", "-", "–", "—", "(", "="})
_ENDS: Final = frozenset({",", ".", "!", ";", ")"})
_GIVING: Final = frozenset({"dose", "added"})
_UNSURE: Final = frozenset({"if", "wish", "not", "may", "does", "whether", "every"})


def brought_forward(tokens: list[Token]) -> None:
    """Put each amount told behind a thing that was put in before that thing, in place."""
    floor = 0
    """Behind the last thing that got its amount: the next needs no word of giving."""
    for place in range(2, len(tokens) - 1):
        if place >= len(tokens) - 1:
            return  # a bracket was taken out
        if tokens[place].text not in _PARTS or not quantities.is_number(tokens[place + 1]):
            continue
        amount = quantities.read(tokens, place + 1)
        if amount is None or amount.value is None or amount.unit not in deed_asked.WEIGHED:
            continue
        if not _ends(tokens, amount.last):
            continue
        thing = _thing(tokens, place, floor)
        if thing is not None:
            told = tokens[place + 1 : amount.last]
            closed = tokens[place].text == "(" and amount.last < len(tokens)
            closed = closed and tokens[amount.last].text == ")"
            tokens[thing : amount.last + closed] = [*told, *tokens[thing:place]]
            floor = thing + len(told) + 1


_DEEDS: Final = {
    "water_change": frozenset({"%", *LITRES}),
    "top_up": frozenset(LITRES),
    "dose": deed_asked.WEIGHED,
    "added": deed_asked.WEIGHED,
}
"""Deeds told by how much → the units of that."""
_DAYS: Final = frozenset({"time", "clock", "iso"})


def before_day(tokens: list[Token]) -> None:
    """Put each amount that a day or an hour parts from its deed beside the deed, in place."""
    for place, token in enumerate(tokens):
        units = _DEEDS.get(str(token.value)) if token.kind == "event" else None
        if units is None:
            continue
        first = place + 1
        done = first < len(tokens) and tokens[first].value == "done"  # changement d'eau fait hier
        behind = _behind_times(tokens, first + done)
        told = first < behind < len(tokens)
        parted = told and tokens[behind].text in _PARTS and behind + 1 < len(tokens)
        amount = quantities.read(tokens, behind + parted) if told else None
        if amount is not None and amount.value is not None and amount.unit in units:
            last = _with_thing(tokens, amount.last, str(token.value))
            if last and (not parted or _ends(tokens, last)):
                tokens[first:last] = [*tokens[behind + parted : last], *tokens[first:behind]]
            continue
        _led_by_amount(tokens, place, units)


def _behind_times(tokens: list[Token], first: int) -> int:
    """Behind the days and hours that begin there, light words before them; `first` for none."""
    place = last = first
    while place < len(tokens):
        token = tokens[place]
        ahead = tokens[place + 1] if place + 1 < len(tokens) else token
        numbered = quantities.is_number(token) and ahead.kind == "time" and ahead.value != "one"
        if (token.kind in _DAYS and token.value != "one") or numbered:
            place += 1 + numbered
            last = place
        elif token.kind == "fill":
            place += 1
        else:
            break
    return last


def _with_thing(tokens: list[Token], place: int, deed: str) -> int:
    """Behind an amount that ends there, with what went in; 0 where it may be of anything else."""
    if deed in _GIVING:
        while place < len(tokens) and tokens[place].kind == "fill":
            place += 1
        named = place < len(tokens) and tokens[place].kind == "substance"
        return place + 1 if named and _ends(tokens, place + 1) else 0
    told = place < len(tokens) and tokens[place].kind == "analyte"
    return place if told or _ends(tokens, place) else 0


def _led_by_amount(tokens: list[Token], deed: int, units: Collection[str]) -> None:
    """`30% gestern gewechselt`: put the day behind the deed where the amount opens the line."""
    amount = quantities.read(tokens, 0) if deed and quantities.is_number(tokens[0]) else None
    if amount is None or amount.value is None or amount.unit not in units:
        return
    if tokens[deed].value in _GIVING or _behind_times(tokens, amount.last) != deed:
        return
    tokens[amount.last : deed + 1] = [tokens[deed], *tokens[amount.last : deed]]


def _ends(tokens: list[Token], place: int) -> bool:
    """Whether nothing stands there that the amount before may belong to."""
    if place >= len(tokens):
        return True
    token = tokens[place]
    if token.kind in {"nl", "time", "tank"} or token.text in _ENDS or token.value == "and":
        return True
    following = tokens[place + 1] if place + 1 < len(tokens) else token
    return following.kind == "tank" or deed_told.at(tokens, place, "then") > 0


def _thing(tokens: list[Token], end: int, floor: int) -> int | None:
    """The only thing of the clause that ends there, given and without an amount; else None."""
    first = end
    while first > floor and tokens[first - 1].kind != "nl" and tokens[first - 1].text not in _STOPS:
        first -= 1
    clause = tokens[first:end]
    if any(quantities.is_number(t) or t.kind in {"ask", "analyte", "count"} for t in clause):
        return None
    if any(t.value in _UNSURE or t.value == "one" for t in clause):
        return None
    given = floor > 0 and first <= floor + 1
    given = given or any(
        (t.kind == "event" and t.value in _GIVING)
        or bought.is_word("give", t.text)
        or t.text in deeds.INTO
        for t in clause
    )
    things = [n for n in range(first, end) if tokens[n].kind == "substance"]
    return things[0] if given and len(things) == 1 else None


_STOPS: Final = frozenset({*_ENDS, *_PARTS, "?", "|", "•"}) - {"-"}
