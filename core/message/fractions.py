"""Fractions and dotted runs in a number's place: 1/2, 1 1/2, 1½, `4.3.`."""

from __future__ import annotations

from core.message import doubts
from core.message.quantity import Quantity
from core.message.tokens import Token


def written(token: Token, found: Quantity) -> None:
    """A dotted or slashed run in a number's place: "4.3." or a fraction."""
    if token.kind == "dotted":
        run = token.text.rstrip(".")
        if run.count(".") == 1:
            found.value = float(run)
            found.end = token.start + len(run)
            if len(run) > 1 and run[0] == "0" and run[1] != ".":
                found.problem = doubts.BAD_NUMBER
        else:
            found.problem = doubts.BAD_NUMBER
        return
    above, _, below = token.text.partition("/")
    if not below.isdigit() or not above.isdigit() or below not in {"2", "3", "4", "8"}:
        found.problem = doubts.BAD_NUMBER
        return
    found.value = int(above) / int(below)
    # n/(n+1) is also how "between n and n+1" is written, save for a half.
    if not 0 < int(above) < int(below) or (int(above) + 1 == int(below) and above != "1"):
        found.problem = doubts.BAD_NUMBER


def after(tokens: list[Token], found: Quantity) -> None:
    """1 1/2 and 1½."""
    token = tokens[found.last]
    if token.kind == "fraction" and isinstance(token.value, float):
        part = token.value
    elif token.kind == "slashed" and found.integer:
        scratch = Quantity(0, 0)
        written(token, scratch)
        if scratch.value is None or not 0 < scratch.value < 1:
            return
        part = scratch.value
    else:
        return
    if found.value is not None and found.value == int(found.value):
        found.value += part
        found.integer = False
        found.end = token.end
        found.last += 1
