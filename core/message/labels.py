"""The words of a product's label, which are no reading: `5 g per 80 l raises kh 1`.

label  = [ product [":"] ] amount "per" volume [ effect ]
       | product effect ( "with" | "by" | "for" ) amount "per" volume
amount = quantity in g, kg, oz, mL or spoons
effect = ( "raises" | "lowers" | "adds" ) ( name number | number name )

Whatever stands behind an amount, a volume and a word of moving is what the product does, so that
no value of it is ever stored; what it does is told only where it is one number of one analyte.
"""

from __future__ import annotations

from typing import Final

from core.message import quantities
from core.message.amounts import GRAMS, MILLILITRES, SPOONS, litres
from core.message.model import Command, Context
from core.message.slots import read as read_slots
from core.message.tokens import Token

_RAISING = frozenset({"up", "rose_to", "raise"})
MOVING: Final = {
    **dict.fromkeys(_RAISING | {"adding"}, "raises"),
    **dict.fromkeys(("down", "fell_to", "change"), "lowers"),
}
_AMOUNTS = frozenset({*GRAMS, *MILLILITRES, *SPOONS})
_NAMING: Final = frozenset({"word", "several", "analyte", "substance", "own"})
"""Tokens that can be a product's name; "i raised" has none."""
_BETWEEN: Final = 4
"""Words at most between an amount, its volume and what it does."""


def read(source: str, tokens: list[Token], context: Context) -> Command | None:
    """The label that a message tells, as a command with its words in the usual order.

    Examples
    --------
    ``5 g per 80 l raises kh 1``, ``10 ml auf 100 l erhöht die KH um 1``
    """
    if len(tokens) < 5 or any(token.kind in {"event", "nl"} for token in tokens):
        return None
    if tokens[0].kind == "ask" or tokens[-1].text == "?":
        return None
    if (first := _effect_first(tokens, context, source)) is not None:
        return first
    amount = _next(tokens, 0, len(tokens))
    volume = None if amount is None else _next(tokens, amount.last, _BETWEEN)
    if amount is None or volume is None:
        return None
    each, whole = amount.value, litres(volume, us_gallons=context.us_gallons)
    if each is None or amount.unit not in _AMOUNTS or whole is None:
        return None
    said = f"{each:.6g} {amount.unit} per {whole:.6g} l"
    moving = _moving(tokens, volume.last)
    if moving is None:
        # conditioner: 5 ml per 50 l
        alone = volume.last == len(tokens) and not context.group
        return Command("label", said) if alone and _has_name(tokens, amount.first) else None
    return _command(said, tokens[moving : len(tokens)], context, source)


def _effect_first(tokens: list[Token], context: Context, source: str) -> Command | None:
    """`my kh plus raises kh by 1 with 5 g per 80 l`: the product, what it does, how much of it."""
    moving = next((i for i, token in enumerate(tokens) if token.value in MOVING), 0)
    amount = None
    for index in range(moving + 1, len(tokens)):
        found = quantities.single(tokens, index) if quantities.is_number(tokens[index]) else None
        if found is not None and found.unit in _AMOUNTS and not found.problem:
            amount = found
            break
    volume = None if amount is None else _next(tokens, amount.last, _BETWEEN)
    named = any(token.kind in _NAMING for token in tokens[:moving])
    if not named or amount is None or volume is None or volume.last != len(tokens):
        return None
    whole = litres(volume, us_gallons=context.us_gallons)
    if amount.value is None or whole is None or not _moves_one(tokens[moving : amount.first]):
        return None
    said = f"{amount.value:.6g} {amount.unit} per {whole:.6g} l"
    return _command(said, tokens[moving : amount.first], context, source)


def _moves_one(tokens: list[Token]) -> bool:
    """Whether a value and its number stand behind the word of moving."""
    kinds = {token.kind for token in tokens}
    return {"analyte", "number"} <= kinds


def _command(said: str, effect: list[Token], context: Context, source: str) -> Command:
    """A label whose effect begins with its word of moving."""
    found = read_slots(effect[1:], context, source)
    number = found.numbers[0] if len(found.numbers) == 1 and not found.unplaced else None
    if number is None or number.analyte is None or number.value <= 0:
        return Command("label", said)
    way = MOVING[str(effect[0].value)]
    return Command("label", f"{said} {way} {number.analyte} {number.value:.4g}")


def _next(tokens: list[Token], start: int, within: int) -> quantities.Quantity | None:
    """The next quantity, of a unit and sound, so many words on at most."""
    for index in range(start, min(len(tokens), start + within)):
        if not quantities.is_number(tokens[index]):
            continue
        found = quantities.single(tokens, index)
        return None if found is None or found.problem or found.unit is None else found
    return None


def _moving(tokens: list[Token], start: int) -> int | None:
    """Where a word of raising or lowering stands behind a volume."""
    near = range(start, min(len(tokens) - 1, start + _BETWEEN))
    return next((i for i in near if tokens[i].value in MOVING), None)


def _has_name(tokens: list[Token], first: int) -> bool:
    """Whether a name and a colon stand before the amount, and no tank's."""
    return first > 1 and tokens[first - 1].text == ":" and tokens[0].kind != "tank"
