"""What a label says that its product does: `raises kh 1, gh 2`."""

from __future__ import annotations

from typing import Final

from core.errors import CoreError
from core.message import quantities
from core.message.amounts import SHARES
from core.message.quantity import Quantity
from core.message.tokens import Token
from core.units import to_canonical

_ENDS: Final = frozenset({",", ";", ".", "(", "!", "|"})


def effects(tokens: list[Token], way: str) -> str:
    """What is moved by how much, as `raises kh 1, gh 2`; "" where a number is of nothing."""
    pairs: list[tuple[str, Quantity, str | None]] = []
    name: tuple[str, str | None] | None = None
    number: Quantity | None = None
    place = 0
    while place < len(tokens):
        token = tokens[place]
        if token.text in _ENDS and pairs and not has_values(tokens[place:]):
            break
        found = _degrees(tokens, place)
        if found is not None:
            of: tuple[str, str | None] | None = (found.of, None) if found.of else None
            of = name if name is not None and (of is None or of[0] == name[0]) else of
            if number is not None:
                return ""
            if of is not None:
                pairs.append((of[0], found, of[1]))
                name = None
            else:
                number = found
            place = found.last
            continue
        if token.kind == "analyte":
            analyte, _, basis = str(token.value).partition("@")
            last = pairs[-1] if pairs else None
            if number is not None:
                pairs.append((analyte, number, basis or None))
                number = None
            elif last is None or last[0] != analyte or name is not None:
                name = analyte, basis or None
        place += 1
    said = [_moved(*pair) for pair in pairs]
    distinct = {pair[0] for pair in pairs}
    if number is not None or not said or None in said or len(distinct) < len(pairs):
        return ""
    down = way == "lowers" or any(pair[1].sign == "-" for pair in pairs)
    return f"{'lowers' if down else 'raises'} {', '.join(filter(None, said))}"


def has_values(tokens: list[Token]) -> bool:
    """Whether a name of what is measured and a number stand together."""
    return {"analyte", "number"} <= {token.kind for token in tokens}


def _degrees(tokens: list[Token], place: int) -> Quantity | None:
    """The quantity that begins here, with its sign; `half a degree` too."""
    token = tokens[place]
    if token.value in SHARES and token.value != "whole":
        unit = next((t for t in tokens[place + 1 : place + 3] if t.kind == "unit"), None)
        if unit is None:
            return None
        found = Quantity(place, token.start)
        found.value = SHARES[str(token.value)] / 100.0
        name, _, of = str(unit.value).partition("@")
        found.unit, found.of = name, of or None
        found.last = tokens.index(unit) + 1
        return found
    if not quantities.is_number(token) and token.text not in {"+", "-"}:
        return None
    return quantities.read(tokens, place)


def _moved(analyte: str, by: Quantity, basis: str | None) -> str | None:
    """An analyte and by how much, in its canonical unit; None where that is no one number."""
    if by.value is None or by.value <= 0 or by.problem or by.grouped is not None:
        return None
    unit = None if by.unit == "°" else by.unit
    try:
        return f"{analyte} {to_canonical(analyte, by.value, unit, by.basis or basis):.4g}"
    except (CoreError, KeyError):
        return None
