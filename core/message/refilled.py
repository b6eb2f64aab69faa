"""A change told as water let out and filled up again, and as so many buckets of so much.

change  = out amount { light word } refill | out { light word } refill amount
amount  = number vessel ( of | "," ) litres | number vessel "," litres each

`took out 2 buckets, 10 l each, and refilled` is a change of 20 l, no topping up: what left the
tank was not evaporated. The words stand in ``deed_told.txt``. What it was filled with may stand
apart: `did a 40 l change, all ro`.
"""

from __future__ import annotations

from typing import Final

from core.message import quantities
from core.message.amounts import LITRES
from core.message.deed_told import UNSURE, at
from core.message.numbers import Number
from core.message.quantity import Quantity
from core.message.token import Token
from core.message.waters import kind_of

MOST_VESSELS: Final = 40
"""More buckets than these nobody carries; common practice."""

_LIGHT: Final = frozenset({"fill", "p"})
_LIGHT_VALUES: Final = frozenset({"and", "in", "water", "one", "up", "new", "now"})
_KEPT: Final = frozenset({"tank", "time", "nl", "clock"})
_NEAR: Final = 3
"""Words between a vessel and what it holds."""


def vessels(tokens: list[Token]) -> None:
    """Make one amount of so many vessels of so much each, in place: `3 buckets of 12 l`."""
    for place, token in enumerate(tokens[:-2]):
        count = _whole(token)
        size = 0 if count is None else at(tokens, place + 1, "vessel")
        if count is None or not size or not 1 <= count <= MOST_VESSELS:
            continue
        first = place + 1 + size
        each = False
        while first < min(len(tokens), place + 1 + size + _NEAR) and not _starts(tokens[first]):
            each = each or bool(at(tokens, first, "of") or at(tokens, first, "each"))
            if not (at(tokens, first, "of") or at(tokens, first, "each") or _light(tokens[first])):
                break
            first += 1
        held = quantities.single(tokens, first) if first < len(tokens) else None
        if held is None or held.unit not in LITRES or not held.value or held.low is not None:
            continue
        behind = held.last < len(tokens) and at(tokens, held.last, "each")
        if not (each or behind):
            continue  # 2 buckets, 10 l: it may be both together
        tokens[first].kind, tokens[first].value = "number", Number(count * held.value)
        last = held.last + (behind or 0)
        tokens[place:last] = tokens[first : held.last]
        return


def _whole(token: Token) -> float | None:
    if token.kind == "count":
        return float(str(token.value))
    number = token.value if token.kind == "number" else None
    return number.value if isinstance(number, Number) and token.text.isdigit() else None


def _starts(token: Token) -> bool:
    return quantities.is_number(token)


def _light(token: Token) -> bool:
    return token.kind in _LIGHT or token.value in _LIGHT_VALUES


def with_water(tokens: list[Token]) -> None:
    """Join the water that a change was made with, told behind it, in place: `…, all ro`.

    Only where nothing else stands behind it: `changed 40 l, ro kh 0` tells of the water itself.
    """
    if any(t.value in UNSURE or t.kind == "ask" or t.text == "?" for t in tokens):
        return
    change = next((n for n, each in enumerate(tokens) if each.value in _CHANGES), None)
    if change is None:
        return
    water = next((n for n in range(change + 1, len(tokens)) if _is_water(tokens, n)), None)
    if water is None:
        return
    first = water
    while first - 1 > change and _is_between(tokens[first - 1]):
        first -= 1
    if _all_of_it(tokens, first):
        first -= 2
    gap, behind = tokens[first:water], tokens[water + 1 :]
    if tokens[first - 1].text == "with" and first - 1 > change:
        first -= 1
    elif not gap and tokens[change].value != "changing":
        return
    while behind and (behind[0].text in _ONLY or behind[0].text in _SIGNS):
        behind = behind[1:]
    if behind and (behind[0].kind != "nl"):
        return
    start = tokens[first].start
    joined = [Token("mark", "and", "with", start, start), tokens[water]]
    place = first
    while place - 1 > change and tokens[place - 1].kind in {"time", "clock"}:
        place -= 1  # a change yesterday, all ro
    tokens[place:] = [*joined, *tokens[place:first], *behind]


_CHANGES: Final = frozenset({"water_change", "changing"})
_SIGNS: Final = frozenset({".", "!", ","})
_ONLY: Final = frozenset(
    """only all just pure purely straight solely entirely completely 100% nur alles rein reines
    reinem komplett que tout uniquement seulement pur pure solo todo toda pura puro só tudo apenas
    tutta tutto soltanto alleen allemaal puur zuiver tylko sama samą czysta bara allt ren rent
    """.split()  # noqa: SIM905
)
"""Words for nothing else than this water."""


_LEADS: Final = _ONLY | {"it", "was", "of", "used", "using", "from", "the"}


def _is_water(tokens: list[Token], place: int) -> bool:
    return tokens[place].value == "other" and kind_of(tokens[place].text) is not None


def _is_between(token: Token) -> bool:
    """Whether a token tells no more than that what follows is what it was."""
    return token.text in _SIGNS or all(word in _LEADS for word in token.text.split())


def _all_of_it(tokens: list[Token], place: int) -> bool:
    """Whether `100 %` stands right before a place."""
    before = tokens[max(0, place - 2) : place]
    if len(before) < 2 or before[1].value != "%":
        return False
    return before[0].text == "100" and place - 3 >= 0 and tokens[place - 3].text in _SIGNS


def out_and_up(tokens: list[Token]) -> None:
    """Make a change of water that went out where it was filled up again, in place."""
    out = next((n for n, _ in enumerate(tokens) if at(tokens, n, "out")), None)
    if out is None or any(t.value in UNSURE or t.kind == "ask" or t.text == "?" for t in tokens):
        return
    amounts = [(n, found) for n in range(len(tokens)) if (found := _amount(tokens, n)) is not None]
    if len(amounts) != 1 or sum(map(quantities.is_number, tokens)) > 1:
        return
    first, amount = amounts[0]
    behind = max(out + at(tokens, out, "out"), amount if first < out else 0)
    refill = _refill(tokens, behind, range(first, amount))
    if refill is None or any(t.kind == "nl" for t in tokens[min(first, out) : refill]):
        return
    last = refill + at(tokens, refill, "refill")
    others = [*tokens[:out], *tokens[behind:refill], *tokens[last:]]
    if any(token.kind == "event" for token in others):
        return
    word = tokens[refill]
    word.kind, word.value = "event", "water_change"
    before = [token for token in tokens[: min(first, out)] if token.kind in _KEPT]
    if first < refill:
        tokens[:] = [*before, *tokens[first:amount], word, *tokens[last:]]
    else:
        tokens[:] = [*before, word, *tokens[last:]]


def _amount(tokens: list[Token], place: int) -> int | None:
    """Behind an amount of water that begins here, litres or percent; None for none."""
    if not quantities.is_number(tokens[place]):
        return None
    found: Quantity | None = quantities.read(tokens, place)
    told = found is not None and found.value and found.unit in {"%", *LITRES}
    return found.last if found is not None and told else None


def _refill(tokens: list[Token], place: int, amount: range) -> int | None:
    """Where it is told that it was filled up again: only light words may stand before it."""
    for here in range(place, len(tokens)):
        if at(tokens, here, "refill"):
            return here
        if here not in amount and not _light(tokens[here]):
            return None
    return None
