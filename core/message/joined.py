"""Names told together before what they share: `ammonia and nitrite 0`, `kh/gh 4/8`.

run = name { ("," | "/" | "and") name } [ "is" ] ( zero | number { ("/" | "and") number } )

A zero, or that nothing was found, is of each name; of other numbers there must be as many as names.
A list with nothing but commas is none, since a name in it may have lost its number.
"""

from __future__ import annotations

from core.message import numbers, quantities
from core.message.tokens import Token

_SLASH = frozenset({"/"})
_AND = frozenset({"and", "and_or"})


def part(tokens: list[Token]) -> list[Token]:
    """The tokens of a line with its numbers behind each of the names that share them."""
    out: list[Token] = []
    place = 0
    while place < len(tokens):
        found = _run(tokens, place) if tokens[place].kind == "analyte" else None
        if found is None:
            out.append(tokens[place])
            place += 1
            continue
        told, place = found
        out += told
    return out


def _run(tokens: list[Token], place: int) -> tuple[list[Token], int] | None:
    """The names that begin at `place` with what is told of each, and the index behind."""
    before = tokens[place - 1] if place else None
    if before is not None and before.kind in {"number", "unit", "slashed"}:
        return None  # `4 kh and gh 0`: the first has its number before it
    names, joints = [tokens[place]], set()
    while place + 2 < len(tokens) and tokens[place + 2].kind == "analyte":
        joint = tokens[place + 1]
        if joint.text not in "/," and joint.value not in _AND:
            break
        joints.add("and" if joint.value in _AND else joint.text)
        place += 2
        names.append(tokens[place])
    if len({name.value for name in names}) < 2 or joints == {","} or not joints:
        return None
    place += 1
    while place < len(tokens) and (tokens[place].value == "link" or tokens[place].kind == "fill"):
        place += 1
    if place == len(tokens):
        return None
    each, end = _each(tokens, place, len(names))
    if not each:
        return None
    out: list[Token] = []
    for name, told in zip(names, each, strict=True):
        start = told[0].start
        shown = name if name is names[0] else Token("analyte", name.value, name.text, start, start)
        out += [shown, *told]
    return out, end


def _each(tokens: list[Token], place: int, count: int) -> tuple[list[list[Token]], int]:
    """What is told of each of so many names, and the index behind; nothing where it is unclear."""
    found = quantities.read(tokens, place)
    none = found is not None and found.high is None and not found.problem
    if found is not None and none and (found.value == 0 or tokens[place].value == "nd"):
        return [tokens[place : found.last]] * count, found.last
    if tokens[place].kind == "slashed":
        parts = tokens[place].text.split("/")
        start = tokens[place].start
        several = [[Token("number", numbers.read(p), p, start, tokens[place].end)] for p in parts]
        return (several, place + 1) if len(several) == count else ([], place)
    several = []
    while place < len(tokens) and tokens[place].kind == "number":
        several.append([tokens[place]])
        place += 1
        joint = tokens[place] if place + 1 < len(tokens) else None
        if len(several) == count or joint is None:
            break
        if joint.text not in _SLASH and joint.value not in _AND:
            break
        place += 1
    return (several, place) if len(several) == count else ([], place)
