"""A deed whose amount its own message puts right: the amount told last counts.

amended = amount { thing | deed } regret { regret | was | only | light } amount

`changed 50%, i mean 30` is a change of 30 %, `added 6 g baking soda, sorry 3` 3 g of it. The words
are those of ``put_right.txt``. In a reading, `core.message.pairs` takes the first value back.
"""

from __future__ import annotations

from typing import Final

from core.message import quantities
from core.message.amounts import GRAMS, LITRES, MILLILITRES, SPOONS
from core.message.quantities import Quantity
from core.message.right_pieces import class_of
from core.message.token import Token

_OF_WATER: Final = frozenset({"%", *LITRES}) - {"mL"}
_OF_DOSE: Final = frozenset({*GRAMS, *MILLILITRES, *SPOONS})
_PHRASE: Final = 5
"""Words of the longest phrase that is looked for."""
_BETWEEN: Final = 8
"""Words from an amount to what regrets it."""
_APART: Final = frozenset({"number", "slashed", "fraction", "analyte", "nl"})
"""What parts an amount from a regret behind it: `changed 50%, kh 5 sorry 6`."""
_WISHED: Final = frozenset({"should be", "should have been"})
"""What was meant to be done, and was not."""
_BEFORE: Final = frozenset({"regret", "was", "is", "only", "light", "deed", "have"})
_INTO: Final = frozenset({"no", "na", "do"})
"""Words that mean into as well: no regret of `troquei 50% no aquario 2`."""
_AND: Final = frozenset({"and", "und", "et", "y", "e", "en", "och", "oraz", "also"})
_SHORT: Final = 3
"""Letters of a word that may be a mere sigh: oh, ach, no."""
_BEHIND: Final = frozenset({"fill", "time", "substance", "p", "tank", "event"})


def put_right(tokens: list[Token]) -> None:
    """Put the amount of a deed that is told last in the place of the one before, in place."""
    if not any(t.kind in {"event", "substance"} or t.value == "changing" for t in tokens):
        return
    if any(token.text == "?" for token in tokens):
        return
    place = 0
    while place < len(tokens):
        amount = _amount(tokens, place)
        behind = None if amount is None else _amended(tokens, place, amount)
        place = behind or (place + 1 if amount is None else amount.last)


def or_was_it(tokens: list[Token]) -> None:
    """Leave only the "or" of `temp 25 or was it 29`, in place: neither is told."""
    for place in range(len(tokens) - 2, 0, -1):
        if tokens[place].value != "or" or not quantities.is_number(tokens[place - 1]):
            continue
        last = place + 1
        while last < len(tokens) and (size := _class_at(tokens, last, {"was", "is", "light"})):
            last += size
        if place + 1 < last < len(tokens) and quantities.is_number(tokens[last]):
            del tokens[place + 1 : last]


def _amount(tokens: list[Token], place: int) -> Quantity | None:
    """The amount of a deed that begins here."""
    if not quantities.is_number(tokens[place]):
        return None
    found = quantities.read(tokens, place)
    if found is None or found.value is None or found.problem:
        return None
    return found if found.unit in _OF_WATER | _OF_DOSE else None


def _amended(tokens: list[Token], first: int, amount: Quantity) -> int | None:
    """Put in the place of an amount the one that puts it right; behind which, None for none."""
    regret = amount.last
    while not (size := _class_at(tokens, regret, {"regret"})):
        regret += 1
        if regret - amount.last > _BETWEEN or regret >= len(tokens):
            return None
        if tokens[regret - 1].kind in _APART:
            return None
    place, size_of_regret = regret + size, size
    into = size == 1 and tokens[regret].text in _INTO
    leads = _BEFORE - {"light"} if into else _BEFORE
    while place < len(tokens) and not quantities.is_number(tokens[place]):
        if tokens[place].value == "and" or tokens[place].text in _AND:
            return None  # oh and 3 g epsom: one more
        size = 1 if tokens[place].kind == "p" else _class_at(tokens, place, leads)
        if not size:
            return None
        place += size
    if place >= len(tokens):
        return None
    meant = quantities.read(tokens, place)
    if meant is None or meant.value is None or meant.problem or not _same(amount, meant):
        return None
    rest = tokens[meant.last :]
    if rest and (rest[0].kind not in _BEHIND or (meant.unit is None and rest[0].kind != "p")):
        return None  # changed 30%, wait 2 days
    slight = size_of_regret == 1 and len(tokens[regret].text) <= _SHORT
    if slight and _another(tokens[amount.last : regret], rest):
        return None  # oh, 3 g epsom too
    behind_number = tokens[first + 1 : amount.last] if meant.unit is None else None
    number, unit = tokens[first], tokens[amount.last - 1]
    digits = tokens[place : meant.last]
    said = [_at(token, number if not n else unit) for n, token in enumerate(digits)]
    said += behind_number or []
    rest = _without_thing(tokens[amount.last : regret], rest)
    tokens[first:] = [*said, *_open(tokens[amount.last : regret]), *rest]
    return first + len(said)


def _at(token: Token, where: Token) -> Token:
    """A token in the place of another."""
    return Token(token.kind, token.value, token.text, where.start, where.end)


def _same(amount: Quantity, meant: Quantity) -> bool:
    """Whether both may be of one deed."""
    if meant.unit is None:
        return True
    return any({amount.unit, meant.unit} <= units for units in (_OF_WATER, _OF_DOSE))


def _open(between: list[Token]) -> list[Token]:
    """What stands between an amount and its regret, without the marks at its end."""
    while between and between[-1].kind == "p":
        between.pop()
    return between


def _another(before: list[Token], rest: list[Token]) -> bool:
    """Whether another thing than the one told already is named behind."""
    told = {token.value for token in before if token.kind == "substance"}
    return any(token.kind == "substance" and token.value not in told for token in rest[:2])


def _without_thing(before: list[Token], rest: list[Token]) -> list[Token]:
    """What follows the amount that was meant, without the name of the thing told already."""
    told = {token.value for token in before if token.kind in {"substance", "event"}}
    while rest and rest[0].kind in {"fill", "substance", "event"}:
        if rest[0].kind != "fill" and rest[0].value not in told:
            break
        rest = rest[1:]
    return rest


def _class_at(tokens: list[Token], place: int, classes: set[str] | frozenset[str]) -> int:
    """How many tokens the longest phrase of some classes takes from a place on; 0 for none."""
    for size in range(min(_PHRASE, len(tokens) - place), 0, -1):
        said = " ".join(token.text for token in tokens[place : place + size])
        if said not in _WISHED and class_of(said) in classes:
            return size
    return 0
