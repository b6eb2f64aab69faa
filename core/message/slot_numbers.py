"""A number of a question: the amount that it is, or whose number, in which role.

name number | number name | amount
"""

from __future__ import annotations

from dataclasses import replace

from core.errors import CoreError
from core.message import doubts, quantities
from core.message.amounts import GRAMS, SPOONS, litres
from core.message.candidates import Candidate
from core.message.model import Context, Value
from core.message.quantity import Quantity
from core.message.sea_slips import EQUIVALENTS
from core.message.settling import settle
from core.message.slot import Number, Slots
from core.message.tokens import Token
from core.units import to_canonical

VOLUMES = frozenset({"L", "gal", "uk gal"})
_AMOUNTS = VOLUMES | GRAMS.keys() | SPOONS.keys() | {"mL"}


def take(
    tokens: list[Token],
    index: int,
    quantity: Quantity,
    role: str,
    slots: Slots,
    context: Context,
    source: str,
) -> None:
    """Put the quantity at `index` into the slots: an amount, or a number of an analyte."""
    if quantity.sign == "-" and quantity.unit in _AMOUNTS | {"%"}:
        slots.unplaced.append(quantity)  # less than nothing can be put in
        return
    if _amount(quantity, slots, context):
        return
    name = _name(tokens, index, quantity, slots)
    if role == "raise":
        # "raise kh 2" may be to 2 or by 2; "2 degrees" is by.
        if quantity.low is None and not quantity.sign and quantity.qualifier == "=":
            if quantity.unit != "°":
                slots.unplaced.append(quantity)
                return
            role = "by"
        else:
            role = ""
    analyte, basis = name if name is not None else (quantity.of or slots.default, None)
    if analyte is None and not slots.names and is_gravity(quantity):
        analyte = "salinity"
    if quantity.low is not None and quantity.high is not None:
        for number, part in ((quantity.low, "from"), (quantity.high, "to")):
            _number(number, part, analyte, basis, quantity, slots, context, source)
    elif quantity.value is not None and _fit(quantity, analyte):
        if quantity.sign:
            role = "by"
            number = -quantity.value if quantity.sign == "-" else quantity.value
        else:
            number = -quantity.value if role == "by" and slots.lowered else quantity.value
            role = "to" if quantity.qualifier == "<" else role
        _number(number, role, analyte, basis, quantity, slots, context, source)
    else:
        slots.unplaced.append(quantity)


def is_gravity(quantity: Quantity) -> bool:
    """Whether a bare number can only be a specific gravity: `how much salt for 40 l to 1.025`.

    A whole 1 is none, nor is a range with an end that is none: `from 1 to 3` is in g/kg.
    """
    values = [v for v in (quantity.value, quantity.low, quantity.high) if v is not None]
    if quantity.unit is not None or quantity.integer or not values:
        return False
    return all(1.0 <= v < 1.05 for v in values) and max(values) > 1.0


def _fit(quantity: Quantity, analyte: str | None) -> bool:
    """Whether a number can be taken; a mark that may divide thousands needs its analyte."""
    return quantity.problem is None and (quantity.grouped is None or analyte is not None)


def _amount(quantity: Quantity, slots: Slots, context: Context) -> bool:
    """Take a volume, mass, spoon or share; whether it was one."""
    value, unit = quantity.value, quantity.unit
    if value is None or unit is None or quantity.problem or quantity.grouped is not None:
        return False
    if unit == "g/L":
        slots.a_litre = value
    if unit in VOLUMES:
        slots.volume_l = litres(quantity, us_gallons=context.us_gallons)
    elif unit in GRAMS:
        slots.grams = value * GRAMS[unit]
    elif unit == "mL":
        slots.millilitres = value
    elif unit in SPOONS:
        slots.spoons = value * SPOONS[unit]
    elif unit == "%":
        slots.percent = value
    else:
        return False
    slots.amount = slots.amount or quantity
    return True


def _name(
    tokens: list[Token], index: int, quantity: Quantity, slots: Slots
) -> tuple[str, str | None] | None:
    """The name that a number belongs to: the one before it, or the one right behind."""
    if quantity.of is not None:
        same = [name for name in slots.names if name[0] == quantity.of]
        return same[-1] if same else (quantity.of, None)
    before = index - 1
    while before >= 0 and tokens[before].kind in {"mark", "fill", "p", "time"}:
        before -= 1
    naming = before >= 0 and (tokens[before].kind == "analyte" or names_next(tokens, before))
    if naming and slots.names:
        return _basis_behind(tokens, quantity, slots.names[-1])
    beside = tokens[index - 1] if index and quantity.unit == "°" else None
    if beside is not None and (beside.kind in {"number", "unit"} or beside.value == "at"):
        return "temperature", None  # ph 7 25 degrees: no name waits for it
    if quantity.last < len(tokens) and tokens[quantity.last].kind == "analyte":
        analyte, _, basis = str(tokens[quantity.last].value).partition("@")
        following = quantity.last + 1
        if following >= len(tokens) or not quantities.is_number(tokens[following]):
            return analyte, basis or None
    aimed = slots.aimed
    if aimed is not None:
        return (aimed.analyte, aimed.basis) if aimed.analyte else None
    return slots.names[-1] if slots.names else None


def _basis_behind(
    tokens: list[Token], quantity: Quantity, name: tuple[str, str | None]
) -> tuple[str, str | None]:
    """The name with the basis that its other name behind the number states (`1 nh4-n`)."""
    if quantity.last < len(tokens) and tokens[quantity.last].kind == "analyte":
        analyte, _, basis = str(tokens[quantity.last].value).partition("@")
        if analyte == name[0]:
            return analyte, basis or name[1]
    return name


def _number(
    number: float,
    role: str,
    analyte: str | None,
    basis: str | None,
    quantity: Quantity,
    slots: Slots,
    context: Context,
    source: str,
) -> None:
    if analyte is not None:
        canonical = _canonical(number, role, analyte, basis, quantity, context, source, slots)
        if canonical is None:
            slots.unplaced.append(quantity)
            return
        number = canonical
    said = Number(analyte, quantity.basis or basis, role, number, quantity)
    slots.numbers.append(said)
    if role in {"from", "to", "by"}:
        slots.aimed = said


def _canonical(
    number: float,
    role: str,
    analyte: str,
    basis: str | None,
    quantity: Quantity,
    context: Context,
    source: str,
    slots: Slots,
) -> float | None:
    """In the analyte's own unit; a difference of temperature in °F is scaled only."""
    if role == "by":
        try:
            if analyte == "temperature" and quantity.unit == "°F":
                return number / 1.8
            unit = None if quantity.unit == "°" else quantity.unit
            return to_canonical(analyte, number, unit, quantity.basis or basis)
        except (CoreError, KeyError):
            return None
    single = Quantity(quantity.first, quantity.start)
    single.value, single.unit, single.of = number, quantity.unit, quantity.of
    single.unit_text, single.basis = quantity.unit_text, quantity.basis
    single.grouped, single.mark, single.integer = quantity.grouped, quantity.mark, quantity.integer
    if analyte == "salinity" and quantity.low is not None and not is_gravity(quantity):
        single.unit = single.unit or "g/kg"  # each end of a range is in the unit of both
    if any(each.analyte == analyte and each.value > EQUIVALENTS[1] for each in slots.numbers):
        context = replace(context, seas=frozenset())  # the other number tells the unit of both
    settled = settle(
        Candidate(analyte, basis, single, quantity.start, quantity.end), context, source
    )
    if isinstance(settled, Value) and isinstance(settled.canonical, float):
        return settled.canonical
    if not isinstance(settled, Value) and settled.reason in _ASKED_BACK:
        guesses = settled.choices or (settled.suggestion or "",)
        slots.guessed[quantity.start] = tuple(each.partition(" ")[2] for each in guesses if each)
    return None


_ASKED_BACK = frozenset({doubts.IMPLAUSIBLE, doubts.SEA_ALKALINITY})


def names_next(tokens: list[Token], index: int) -> bool:
    """Whether a unit names the number behind it (`sg 1.025`)."""
    named = "@" in str(tokens[index].value) and index + 1 < len(tokens)
    return named and quantities.is_number(tokens[index + 1])
