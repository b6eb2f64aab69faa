"""The words of a product's label, which are no reading: `5 g per 80 l raises kh 1`.

label = [ product ":" ] amount "per" volume "raises" ( name number | number name )
amount = quantity in g, kg, oz, mL or spoons
"""

from __future__ import annotations

from core.message import quantities
from core.message.amounts import GRAMS, MILLILITRES, SPOONS, litres
from core.message.model import Command, Context
from core.message.quantities import Quantity
from core.message.slots import read as read_slots
from core.message.tokens import Token

_RAISING = frozenset({"up", "rose_to", "raise"})
_AMOUNTS = frozenset({*GRAMS, *MILLILITRES, *SPOONS})


def read(source: str, tokens: list[Token], context: Context) -> Command | None:
    """The label that a message tells, as a command with its words in the usual order.

    Examples
    --------
    ``5 g per 80 l raises kh 1``, ``10 ml auf 100 l erhöht die KH um 1``
    """
    if len(tokens) < 6 or any(token.kind in {"event", "nl"} for token in tokens):
        return None
    if tokens[-1].text == "?" or not any(token.kind == "unit" for token in tokens[:6]):
        return None
    named = _behind_name(tokens)
    raising = next((i for i, t in enumerate(tokens) if i >= named and t.value in _RAISING), 0)
    if not 3 < raising < len(tokens) - 1:
        return None
    amount, volume = _amounts(tokens[named:raising], context)
    found = read_slots(tokens[raising + 1 :], context, source)
    if amount is None or volume is None or len(found.numbers) != 1:
        return None
    number = found.numbers[0]
    if number.analyte is None or found.unplaced or number.value <= 0:
        return None
    said = f"{amount.value:.6g} {amount.unit} per {volume:.6g} l"
    return Command("label", f"{said} raises {number.analyte} {number.value:.4g}")


def _behind_name(tokens: list[Token]) -> int:
    """The index behind a product's name and its colon (`kh plus: 5 g …`); 0 without one."""
    colon = next((i for i, t in enumerate(tokens) if t.text == ":"), 0)
    if colon > 1 and all(token.kind != "number" for token in tokens[:colon]):
        return colon + 1
    return 0


def _amounts(tokens: list[Token], context: Context) -> tuple[Quantity | None, float | None]:
    """An amount, then a volume, and no other number before the word of raising."""
    found: list[Quantity] = []
    index = 0
    while index < len(tokens):
        quantity = quantities.single(tokens, index)
        if quantity is not None:
            found.append(quantity)
            index = quantity.last
        elif tokens[index].kind in {"analyte", "ask", "command"}:
            return None, None
        else:
            index += 1
    if len(found) != 2 or any(quantity.problem for quantity in found):
        return None, None
    amount, volume = found
    if amount.value is None or amount.unit not in _AMOUNTS:
        return None, None
    return amount, litres(volume, us_gallons=context.us_gallons)
