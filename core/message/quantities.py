"""One quantity: a number with its qualifier, range and unit, wherever it stands.

quantity  = [ qualifier ] ( range | "between" number "and" number | number ) [ unit ] [ basis ]
          | "nd" | "zero" | "trace"
range     = number [ unit ] ( "-" | "to" | ".." ) number
number    = digits | fraction | digits fraction | n "/" m
qualifier = "<" | ">" | "~" | sign
basis     = "as" ( N | P | NH3 | NH4 | CaCO3 )
"""

from __future__ import annotations

from core.message import doubts, fractions, spoken, units_behind
from core.message.numbers import Number
from core.message.quantity import Quantity as Quantity
from core.message.token import Token
from core.message.token import is_number as is_number

_QUALIFIERS = {"less": "<", "under": "<", "more": ">", "approx": "~"}
_RANGE_MARKS = frozenset({"-", "..", "...", "to", "at_to"})
_ARROWS = frozenset({"->", "=>", "→"})


def read(tokens: list[Token], index: int) -> Quantity | None:
    """The quantity that begins at `index`; None where none begins there.

    `Quantity.last` is the index of the token after it.
    """
    token = tokens[index]
    kind = token.kind
    if kind == "number":
        return _number_first(tokens, index)
    if kind == "mark":
        return _marked(tokens, index, str(token.value))
    if kind == "fraction" or kind == "slashed":
        return _number_first(tokens, index)
    if kind == "dotted":
        return _number_first(tokens, index)
    if kind == "count":
        counted = index + 1 < len(tokens) and tokens[index + 1].kind == "unit"
        told = counted or spoken.is_number_of_name(tokens, index)
        return _number_first(tokens, index) if told else None
    if kind == "p" and token.text in "+-":
        return _signed(tokens, index)
    return None


def _marked(tokens: list[Token], index: int, mark: str) -> Quantity | None:
    if mark in _QUALIFIERS:
        if index + 1 < len(tokens) and is_number(tokens[index + 1]):
            found = _number_first(tokens, index + 1)
            if found is not None:
                found.first = index
                found.start = tokens[index].start
                found.qualifier = _QUALIFIERS[mark]
                if found.low is not None:
                    found.problem = found.problem or doubts.BAD_NUMBER
            return found
        return None
    if mark == "between":
        return _between(tokens, index)
    if mark in _PARTS:
        return _part_of_unit(tokens, index, _PARTS[mark])
    if mark in {"nd", "zero", "trace"}:
        found = Quantity(index, tokens[index].start)
        found.end = tokens[index].end
        found.last = index + 1
        if mark == "zero":
            found.value = 0.0
        elif mark == "trace":
            found.problem = doubts.TRACE
        else:
            found.qualifier = "<"
        return found
    return None


_PARTS = {"half": 0.5, "third": 1.0 / 3.0, "quarter": 0.25}
_WEIGHED = frozenset({"g", "kg", "mg", "oz", "lb", "tsp", "tbsp"})


def weighs(tokens: list[Token], grain: Token) -> bool:
    """Whether a bare grain is one of mass: `20 grains of baking soda`; of hardness it is else."""
    behind = tokens[tokens.index(grain) + 1 :]
    behind = [token for token in behind[:2] if token.text != "of"]
    return grain.text in _GRAINS and bool(behind) and behind[0].kind == "substance"


_GRAINS = frozenset({"grain", "grains"})


def _part_of_unit(tokens: list[Token], index: int, part: float) -> Quantity | None:
    """`half a pound`, `half a teaspoon`: a part of one such unit; of all else it is a share."""
    place = index + 1
    place += place < len(tokens) and tokens[place].value == "one"
    if place >= len(tokens) or tokens[place].value not in _WEIGHED:
        return None
    found = Quantity(index, tokens[index].start)
    found.value, found.unit, found.unit_text = part, str(tokens[place].value), tokens[place].text
    found.last, found.end = place + 1, tokens[place].end
    return found


def _between(tokens: list[Token], index: int) -> Quantity | None:
    """Between number and number."""
    if index + 3 >= len(tokens) or not is_number(tokens[index + 1]):
        return None
    low = _number_first(tokens, index + 1, ranges=False)
    if low is None or low.last >= len(tokens):
        return None
    joint = tokens[low.last]
    if (
        not (joint.kind == "mark" and joint.value in {"and", "and_or", "to", "at_to"})
        and joint.text != "-"
    ):
        return low if low.low is not None else None
    if low.last + 1 >= len(tokens) or not is_number(tokens[low.last + 1]):
        return None
    high = _number_first(tokens, low.last + 1, ranges=False)
    if high is None:
        return None
    return _join(low, high, index, tokens[index].start)


def _signed(tokens: list[Token], index: int) -> Quantity | None:
    """A sign that touches its number and does not touch what stands before it."""
    token = tokens[index]
    if index + 1 >= len(tokens) or not is_number(tokens[index + 1]):
        return None
    if tokens[index + 1].start != token.end:
        return None
    found = _number_first(tokens, index + 1)
    if found is not None:
        found.first = index
        found.start = token.start
        found.sign = token.text
    return found


def single(tokens: list[Token], index: int) -> Quantity | None:
    """One number with its unit at `index`, whatever joins it to another; None where none is."""
    return _number_first(tokens, index, ranges=False) if is_number(tokens[index]) else None


def _number_first(tokens: list[Token], index: int, *, ranges: bool = True) -> Quantity | None:
    token = tokens[index]
    found = Quantity(index, token.start)
    found.end = token.end
    found.last = index + 1
    if token.kind == "number":
        number = token.value
        assert isinstance(number, Number)  # noqa: S101 - narrows for the type checker
        found.value = number.value
        found.problem = number.problem
        found.grouped = number.grouped
        found.mark = number.mark
        found.integer = "." not in token.text and "," not in token.text
    elif token.kind == "count":
        found.value = float(str(token.value))
    elif token.kind == "fraction":
        assert isinstance(token.value, float)  # noqa: S101
        found.value = token.value
    else:
        fractions.written(token, found)
    count = len(tokens)
    if found.last < count and tokens[found.last].kind in {"mark", "count"}:
        spoken.more(tokens, found)
    if found.last < count:
        fractions.after(tokens, found)
    if found.last < count:
        units_behind.take(tokens, found)
    if ranges and found.last < count:
        found = _range(tokens, found)
    if ranges and found.last < count:
        if tokens[found.last].value == "plusminus":
            _tolerance(tokens, found)
        elif tokens[found.last].value in _BEHIND:
            _qualified_behind(tokens, found)
        else:
            _open_end(tokens, found)
    return found


def _range(tokens: list[Token], low: Quantity) -> Quantity:
    token = tokens[low.last]
    mark = str(token.value) if token.kind == "mark" else token.text
    if mark not in _RANGE_MARKS or low.last + 1 >= len(tokens):
        return low
    if not is_number(tokens[low.last + 1]):
        return low
    high = _number_first(tokens, low.last + 1, ranges=False)
    if high is None or _of_two_kinds(low, high):
        return low
    joined = _join(low, high, low.first, low.start)
    joined.arrow = token.text in _ARROWS
    return joined


def _of_two_kinds(low: Quantity, high: Quantity) -> bool:
    """Whether an amount stands before something else's number: `for 60 l to 2 g/kg`."""
    return low.unit in _AMOUNTS and high.unit not in {None, *_AMOUNTS}


_AMOUNTS = frozenset({"L", "gal", "uk gal", "mL", "g", "kg", "oz", "%"})


def _join(low: Quantity, high: Quantity, first: int, start: int) -> Quantity:
    """Two numbers as the ends of a range, in the unit of the second or of both."""
    joined = Quantity(first, start)
    joined.end = high.end
    joined.last = high.last
    joined.low = low.value
    joined.high = high.value
    joined.unit = high.unit or low.unit
    joined.unit_text = high.unit_text or low.unit_text
    joined.of = high.of or low.of
    joined.basis = high.basis or low.basis
    joined.problem = low.problem or high.problem
    joined.grouped = low.grouped or high.grouped
    if low.value is None or high.value is None:
        joined.problem = joined.problem or doubts.BAD_NUMBER
    elif low.unit and high.unit and low.unit != high.unit:
        joined.problem = joined.problem or doubts.UNKNOWN_UNIT
    elif low.value >= high.value:
        joined.problem = joined.problem or doubts.BAD_NUMBER
    return joined


def _open_end(tokens: list[Token], found: Quantity) -> None:
    """40+ is 40 or more; a plus that a number follows is no end."""
    plus = tokens[found.last]
    if plus.text != "+" or plus.start != found.end or found.value is None:
        return
    if found.last + 1 < len(tokens) and is_number(tokens[found.last + 1]):
        return
    found.qualifier = ">"
    found.end = plus.end
    found.last += 1
    if found.unit is None and found.last < len(tokens):
        units_behind.take(tokens, found)


_BEHIND = {"or_less": "<", "or_more": ">", "ish": "~", "hedge": "~"}


def _qualified_behind(tokens: list[Token], found: Quantity) -> None:
    """A qualifier behind its number: `0.25 or less`, `7.2ish`."""
    token = tokens[found.last]
    if found.value is None or (token.value == "ish" and token.start != found.end):
        return
    found.qualifier = _BEHIND[str(token.value)]
    found.end = token.end
    found.last += 1


def _tolerance(tokens: list[Token], found: Quantity) -> None:
    place = found.last + 1
    if place >= len(tokens) or tokens[place].kind != "number":
        return
    by = _number_first(tokens, place, ranges=False)
    if by is None or by.value is None or found.value is None:
        return
    found.plus = by.value
    found.end = by.end
    found.last = by.last
    found.unit = found.unit or by.unit
    found.of = found.of or by.of
    found.problem = found.problem or by.problem
