"""Degrees that name nothing: warmth, or hardness where they follow its name (`kh 4 grad`).

A number of degrees that no name waits for is the temperature: `ph 7 25 grados`, `25 degrees kh 4`.
One too small for that right behind a hardness may be the rest of its number, and stays in doubt.
"""

from __future__ import annotations

from core.message.clauses import Clause, Item

_HARD = frozenset({"kh", "gh"})
_COLD = 10.0
"""Under so many degrees a number behind a hardness may be of it (`kh 3, 5 grad`). [°C]"""


def name(clauses: list[Clause], *, listed: bool, tank: bool = False) -> None:
    """Give the warmth in a line of readings its name, and take off its own name behind it.

    `listed` tells that the line is one of several, where it may stand alone, `tank` that one is
    named in it.
    """
    last = ""
    for place, clause in enumerate(clauses):
        items = clause.items
        alone = [item for item in items if item.quantity is not None and item.quantity.unit == "°"]
        names = [item.analyte for item in items if item.kind == "N"]
        named = names or last or _of_tank(clause, named=tank) or _heads(clauses[place:], listed)
        if alone and named:  # it's 25 degrees outside
            for item in alone:
                _one(item, items, last)
        last = names[-1] if names else last


def _of_tank(clause: Clause, *, named: bool) -> bool:
    """Whether a clause tells of the own tank no more than so many degrees: `tank is 17 degrees`."""
    return (clause.home or named) and len(clause.items) == 1 and not clause.other


def _heads(clauses: list[Clause], listed: bool) -> bool:
    """Whether a clause of one number goes before readings: `25 degrees, ph 7`."""
    named = any(item.kind == "N" for clause in clauses[1:] for item in clause.items)
    return (named or (listed and len(clauses) == 1)) and len(clauses[0].items) == 1


def _one(item: Item, items: list[Item], last: str) -> None:
    """One number of degrees; `last` is what was named before its clause."""
    index = items.index(item)
    if _waited_for(items, index) or not _is_warmth(items, index, last):
        return
    assert item.quantity is not None  # noqa: S101 - narrows for the type checker
    item.quantity.of = "temperature"
    if index and index + 1 < len(items) and items[index + 1].analyte == "temperature":
        item.end = items.pop(index + 1).end  # kh 4 25 grad temp


def _waited_for(items: list[Item], index: int) -> bool:
    """Whether a name beside the number has no other: before it, or behind in `4 grad kh 8 gh`."""
    names = [item.kind == "N" for item in items]
    values = [item.kind == "V" for item in items]
    if values[0]:
        after = items[index + 1] if index + 1 < len(items) else None
        spare = index == 0 and values[2:3] == [True] and sum(values) > sum(names)
        return after is not None and after.analyte in _HARD and not (spare or values == [True])
    return sum(names[:index]) > sum(values[:index])


def _is_warmth(items: list[Item], index: int, last: str) -> bool:
    """Whether it is no rest of a hardness."""
    quantity = items[index].quantity
    assert quantity is not None  # noqa: S101 - narrows for the type checker
    degrees = quantity.value if quantity.value is not None else quantity.low
    if degrees is None or degrees >= _COLD:
        return degrees is not None
    before = [item.analyte for item in items[:index] if item.kind == "N"]
    return (before[-1] if before else last) not in _HARD
