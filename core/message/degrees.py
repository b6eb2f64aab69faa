"""Degrees that name nothing: warmth, or hardness where they follow its name (`kh 4 grad`).

A number of degrees that no name waits for is the temperature: `ph 7 25 grados`, `25 degrees kh 4`.
One too small for that right behind a hardness may be the rest of its number, and stays in doubt.
"""

from __future__ import annotations

from core.message.candidates import Candidate
from core.message.clauses import Item

_HARD = frozenset({"kh", "gh"})
_COLD = 10.0
"""Under so many degrees a number behind a hardness may be of it (`kh 3, 5 grad`). [°C]"""


def name(items: list[Item], previous: Candidate | None) -> None:
    """Give the warmth among the items its name, and take off its own name behind it.

    `previous` is the value before the clause.
    """
    alone = [item for item in items if item.quantity is not None and item.quantity.unit == "°"]
    for item in alone:
        index = items.index(item)
        if not _waited_for(items, index) and _is_warmth(items, index, previous):
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


def _is_warmth(items: list[Item], index: int, previous: Candidate | None) -> bool:
    """Whether it is no rest of a hardness."""
    quantity = items[index].quantity
    assert quantity is not None  # noqa: S101
    degrees = quantity.value if quantity.value is not None else quantity.low
    if degrees is None or degrees >= _COLD:
        return degrees is not None
    before = [item.analyte for item in items[:index] if item.kind == "N"]
    last = before[-1] if before else previous.analyte if previous is not None else ""
    return last not in _HARD
