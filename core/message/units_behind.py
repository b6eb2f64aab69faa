"""The unit and the basis that stand behind a number: `20 mg/l`, `5 ppm as CaCO3`, `1 mg/l N`.

unit  = a unit of the word files, or "mg" where no value of magnesium begins
basis = "as" ( N | P | NH3 | NH4 | CaCO3 )
"""

from __future__ import annotations

from core.message import doubts
from core.message.numbers import Number
from core.message.quantity import Quantity
from core.message.token import Token, is_number

_BASES = {
    "n": "N",
    "nitrogen": "N",
    "p": "P",
    "phosphorus": "P",
    "nh3": "NH3",
    "nh4": "NH4",
    "caco3": "CaCO3",
    "no3": "ion",
    "no2": "ion",
    "po4": "ion",
    "ion": "ion",
}


def take(tokens: list[Token], found: Quantity) -> None:
    """Take the unit and the basis that follow a number into its quantity."""
    token = tokens[found.last]
    if token.kind == "unit":
        unit, _, of = str(token.value).partition("@")
        if unit == "SG" and _names_next(tokens, found):
            return
        found.unit = unit
        found.unit_text = token.text
        found.of = of or None
        found.end = token.end
        found.last += 1
    elif token.text == "mg" and not _starts_value(tokens, found.last + 1):
        found.unit = "mg"
        found.unit_text = "mg"
        found.end = token.end
        found.last += 1
    if found.last < len(tokens):
        _basis(tokens, found)


def _names_next(tokens: list[Token], found: Quantity) -> bool:
    """Whether "sg" belongs to the number behind it (`ammonia 0 sg 1.025`): gravities are near 1."""
    value = found.value
    gravity = value is not None and (0.9 < value < 1.5 or 900 < value < 1500)
    if gravity and value is not None and value > 2 and found.last + 1 < len(tokens):
        number = tokens[found.last + 1].value
        ahead = number.value if isinstance(number, Number) else None
        gravity = ahead is None or not 0.9 < ahead < 1.5  # "mg 1200 sg 1.024"
    return not gravity and _starts_value(tokens, found.last + 1)


def _starts_value(tokens: list[Token], index: int) -> bool:
    if index >= len(tokens):
        return False
    token = tokens[index]
    return is_number(token) or (
        token.kind == "mark" and token.value in {"link", "less", "under", "more", "approx"}
    )


def _basis(tokens: list[Token], found: Quantity) -> None:
    """["("] "as" basis [")"]."""
    place = found.last
    if tokens[place].text in {"n", "p"} and found.unit in {"mg/L", "ppm"}:
        if place + 1 == len(tokens) or not _starts_value(tokens, place + 1):
            found.basis = _BASES[tokens[place].text]
            found.end, found.last = tokens[place].end, place + 1
        return
    if tokens[place].text == "(":
        place += 1
    if place >= len(tokens):
        return
    if tokens[place].text == "caco3" and found.unit is not None:
        found.basis = "CaCO3"
        found.end = tokens[place].end
        found.last = place + 1
        return
    if place + 1 >= len(tokens) or tokens[place].kind != "mark" or tokens[place].value != "as":
        return
    named = tokens[place + 1]
    text = named.text.rstrip("+-")
    basis = _BASES.get(text)
    if basis is None and found.unit is None:
        return
    if basis is None:
        found.problem = found.problem or doubts.UNKNOWN_UNIT
    found.basis = basis
    found.end = named.end
    found.last = place + 2
    if found.last < len(tokens) and tokens[place].text == "(" and tokens[found.last].text == ")":
        found.last += 1
