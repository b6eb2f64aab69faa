"""What touches the end of a number and is no part of it, so that the whole run is doubtful."""

from __future__ import annotations

from core.message import doubts
from core.message.quantity import Quantity
from core.message.tokens import Token


def _letter_for_digit(tokens: list[Token], point: int) -> bool:
    """Whether one letter stands where a decimal belongs (`7.z`)."""
    before, dot, letter = tokens[point - 1 : point + 2]
    close = before.end == dot.start and dot.end == letter.start
    return close and len(letter.text) == 1 and letter.text.isalpha()


def _unit_misspelt(tokens: list[Token], place: int) -> bool:
    """Letters, a slash and litres in one run where the unit belongs (`5 mag/l`)."""
    if place + 2 >= len(tokens) or tokens[place + 1].text != "/":
        return False
    word, slash, litre = tokens[place : place + 3]
    litres = litre.text in {"l", "ltr", "litre", "liter"}
    return litres and word.text.isalpha() and word.end == slash.start and slash.end == litre.start


ODD = frozenset("*^$#%\\÷×¹²³_")


def run_on(tokens: list[Token], quantity: Quantity) -> tuple[int, int]:
    """The index behind a quantity with all that is glued to it, and where that ends in the text."""
    after, end = quantity.last, quantity.end
    if quantity.unit is not None and after < len(tokens) and tokens[after].kind == "unit":
        quantity.problem = doubts.UNKNOWN_UNIT  # two units in a row
    if after + 1 < len(tokens) and tokens[after].text == "/" and quantity.unit is not None:
        following = tokens[after + 1]
        touching = tokens[after].start == end
        named = following.kind == "analyte" and quantity.unit != "mg"
        if (touching or following.text == "/") and not named and following.kind != "number":
            quantity.problem = doubts.UNKNOWN_UNIT  # "mg/ll"
    if quantity.unit is None and _unit_misspelt(tokens, after):
        quantity.problem = doubts.UNKNOWN_UNIT
        return after + 3, tokens[after + 2].end
    if after + 1 < len(tokens) and tokens[after].text == "." and _letter_for_digit(tokens, after):
        quantity.problem = doubts.BAD_NUMBER
        return after + 2, tokens[after + 1].end
    while after < len(tokens) and tokens[after].start == end:
        following = tokens[after]
        if following.kind == "tank":
            break
        named = following.kind in {"analyte", "unit"} and following.text[0] != "o"
        letters = following.text[0].isalpha() and not named  # "7o2" may be 702 or 7.2
        if not letters and following.kind != "number" and following.text not in ODD:
            break
        unit = letters and not quantity.problem
        quantity.problem = doubts.UNKNOWN_UNIT if unit else doubts.BAD_NUMBER
        end = following.end
        after += 1
    return after, end
