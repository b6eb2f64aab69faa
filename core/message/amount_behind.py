"""An amount behind a comma, a colon or a dash is of what was put in: `added baking soda, 3 g`.

behind = giving word, thing told without amount, light words, ( "," | ":" | "-" | "(" ) amount end

The amount is put before its thing, where the other readers look for it.
"""

from __future__ import annotations

from typing import Final

from core.message import bought, deed_asked, deed_told, deeds, quantities
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
